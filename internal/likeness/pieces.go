package likeness

import (
	"slices"
	"strings"

	"thenar/internal/tally"
	"thenar/internal/written"
)

// row is a round or row of a piece, as it was worked.
type row struct {
	section       string
	line          int
	before, after int
	inside        int // between the markers after it; -1: without
	runs          []tally.Run
	flat, wrong   bool // a row, and its wrong side faces
	seam          int  // stitches of the seam, which are not in the counts
}

// piece is what is worked from stitches that are cast on, or taken up, to their end.
type piece struct {
	castOn, taken int
	sets          []int // which it was taken from
	line          int
	rows          []row
	held          []tally.Run // put aside at its end, after its last row
	over          bool        // nothing is left of it
	bound         bool        // it ends bound off; else drawn up, grafted or put aside
	ended, endsAt int         // so many stitches end, in that line
	lengths       int         // so many of its rows are told by a length
}

// piecesOf takes a trace apart. why says what keeps it from that; empty: nothing.
func piecesOf(trace *tally.Trace, size *tally.Size, lines Lines, perMM float64) (list []piece, why string) {
	var now *piece
	var aside []tally.Run // put aside between rounds, and not worked yet
	at, long := 0, size.Long
	extra, ok := lines.Rounds(long, perMM)
	if !ok {
		return nil, "some rounds are told by a length that can’t be told in rounds"
	}
	lasts := func(s *tally.Step) {
		now.lasts(long[0], s, extra[0])
		long, extra = long[1:], extra[1:]
	}
	for i := range trace.Steps {
		s := &trace.Steps[i]
		switch {
		case s.Does == tally.Jumps, s.Open, s.Failed, s.Before < 0 || s.After < 0:
			return nil, "not every round is told stitch by stitch, or comes out"
		case s.Long && s.Round == 0:
			if len(long) > 0 {
				lasts(s)
			}
		case s.Does == tally.Casts, s.Does == tally.Takes:
			list = append(list, piece{line: s.Line})
			now, aside = &list[len(list)-1], nil
			for _, r := range s.Runs {
				if now.sets = append(now.sets, r.Set); r.Does == written.CastOn {
					now.castOn += r.Times
				} else {
					now.taken += r.Times
				}
			}
		case now == nil:
			return nil, "it begins with stitches that nobody cast on"
		case s.Does == tally.Ends && now.ended > 0 && now.over:
		case s.Does == tally.Ends:
			now.over = s.After == 0
			now.ended, now.endsAt = s.Before-s.After, s.Line
			now.bound = len(s.Runs) > 0 && s.Runs[0].Name == ""
		case s.Does == tally.Shifts:
		case s.Round == 0:
			aside = append(aside, waiting(s.Runs)...)
			now.held = aside
		default:
			if at >= len(size.Rounds) {
				return nil, "not every round was counted"
			}
			r := row{s.Section, s.Line, s.Before, s.After, size.Rounds[at].Inside, s.Runs, s.Side != written.NoSide, s.Side == written.Wrong, 0}
			if before := len(now.rows) - 1; before >= 0 && now.rows[before].picksOnly() { // that belongs to the round
				r.before, r.runs = now.rows[before].before, append(append([]tally.Run{}, now.rows[before].runs...), r.runs...)
				now.rows = now.rows[:before]
			}
			if len(aside) > 0 {
				for _, w := range aside {
					r.before += w.Times
				}
				r.runs, aside, now.held = append(append([]tally.Run{}, aside...), r.runs...), nil, nil
			}
			now.rows = append(now.rows, r)
			if at++; s.Long && len(long) > 0 && long[0].At == at {
				lasts(s)
			}
		}
	}
	if trace.Cut {
		why = "there are more rounds than anybody knits"
	}
	return list, why
}

// lasts adds the rounds that a length is told of.
func (p *piece) lasts(l tally.Long, s *tally.Step, n int) {
	p.lengths += n
	for range n {
		r := row{s.Section, s.Line, s.After, s.After, -1, s.Runs, s.Side != written.NoSide, s.Side == written.Wrong, 0}
		if l.Again > 1 && len(p.rows) >= l.Again {
			r = p.rows[len(p.rows)-l.Again]
		}
		p.rows = append(p.rows, r)
	}
}

// waiting returns what of runs is put aside.
func waiting(runs []tally.Run) (list []tally.Run) {
	for _, r := range runs {
		if r.Does == written.Hold {
			list = append(list, r)
		}
	}
	return list
}

// sum returns how many stitches of a row are worked in a way.
func (r *row) sum(does written.Does) (n int) {
	for _, run := range r.runs {
		if run.Does == does {
			n += run.Times
		}
	}
	return n
}

// picksOnly reports whether stitches are picked up in a row, and none is worked.
func (r *row) picksOnly() bool {
	return r.sum(written.PickUp) > 0 && !slices.ContainsFunc(r.runs, func(run tally.Run) bool {
		return run.Does != written.PickUp && run.Does != written.Leave
	})
}

// purls reports whether some of a row are purled, and whether all are.
func (r *row) purls() (some, all bool) {
	all = true
	for _, run := range r.runs {
		if run.Does != written.Stitch {
			continue
		}
		purl := strings.HasPrefix(run.Name, "p") != r.wrong
		some, all = some || purl, all && purl
	}
	return some, all && some
}

// rib returns the knits and purls of a ribbed row; 0: it is none.
func (r *row) rib() (knits, purls int) {
	for _, run := range r.runs {
		purl := strings.HasPrefix(run.Name, "p") != r.wrong
		switch {
		case run.Does != written.Stitch || run.In != 1 || run.Out != 1 || run.Even:
			return 0, 0
		case !purl && purls == 0:
			knits += run.Times
		case purl && knits > 0:
			purls += run.Times
		case !purl:
			return knits, purls
		default:
			return 0, 0
		}
	}
	if knits == 0 || purls == 0 {
		return 0, 0
	}
	return knits, purls
}

// grows returns the stitches of the row below that lie between its first and its last
// increase, and how many it makes; within is -1 with one alone.
func (r *row) grows() (within, made int) {
	at, first := 0, -1
	last := 0
	for _, run := range r.runs {
		if run.Out > run.In && run.Does == written.Stitch {
			if first < 0 {
				first = at
			}
			last = at + run.In*(run.Times-1)
			made += (run.Out - run.In) * run.Times
		}
		at += run.In * run.Times
		if run.Does == written.Hold {
			at += run.Times * (1 - run.In)
		}
	}
	if made < 2 {
		return -1, made
	}
	return last - first, made
}
