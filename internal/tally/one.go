package tally

import (
	"fmt"

	"thenar/internal/written"
)

// one works a single round, and reports whether it came out.
func (w *needles) one(s *written.Statement) bool {
	now := w.size
	defer func() { w.size = now }()
	if at := placeOf(s, w.index); at >= 0 {
		w.size = at
	}
	if !w.live && !w.ever && w.n == 0 && len(w.held) == 0 {
		w.beside = true
		w.known = false // nobody told how many are cast on
	}
	w.ever = true
	w.rejoins(s)
	before := w.n
	p, ok := w.going, false
	if w.going = nil; p != nil {
		ok = w.items(p, s.Items) && w.whole(p, s)
	} else {
		p, ok = w.tried(s)
	}
	if !ok {
		w.failed(p, s)
		return false
	}
	if w.going = w.unfinished(p, s); w.going != nil {
		return true
	}
	w.done(p, s, before)
	return true
}

// agrees reports whether a round comes to the count that it states.
func (w *needles) agrees(p *pass, s *written.Statement) bool {
	for _, c := range s.Counts {
		if n := c.For(w.size); !c.Inside && n != p.out+p.in-p.at {
			return false
		}
	}
	return true
}

// hasEither reports whether something in a list can be read in two ways.
func hasEither(list []written.Item) bool {
	for i := range list {
		if list[i].Either || hasEither(list[i].Items) {
			return true
		}
	}
	return false
}

// whole reports whether all stitches of the round below were worked, or the round may go on
// in the next sentence.
func (w *needles) whole(p *pass, s *written.Statement) bool {
	if p.open || p.loose || p.turning || p.at >= p.end {
		return true
	}
	if !s.Label.Written() && !s.Many.Written() || p.idle {
		return true
	}
	f := p.leftOver(s.At, s.To)
	if n := len(s.Items); n > 0 {
		f.At, f.To = s.Items[n-1].At, s.Items[n-1].To
	}
	f.Cure = w.cure(s.Items, p.in-p.at)
	p.failed = &f
	return false
}

// leftOver tells of stitches that a round leaves.
func (p *pass) leftOver(at, to written.Spot) Finding {
	return Finding{
		Kind: LeftOver, At: at, To: to, Found: p.at, Expected: p.in,
		Message: fmt.Sprintf("%s left over: the round takes %d, and there are %d.", stitches(p.in-p.at, "is", "are"), p.at, p.in),
	}
}

// unfinished returns a round that the next sentence may go on with.
func (w *needles) unfinished(p *pass, s *written.Statement) *pass {
	if p.open || p.loose || p.turning || p.at >= p.end && p.in > 0 || p.at == 0 && p.in == 0 && p.out == 0 {
		return nil
	}
	if s.Label.Written() && !p.idle || s.Many.Written() {
		return nil
	}
	return p
}

// settle ends a round that no sentence goes on with: what isn't worked stays as it is.
func (w *needles) settle() {
	p := w.going
	if p == nil {
		return
	}
	w.going = nil
	before := w.n
	if p.at < p.end && !p.idle && !p.open {
		w.tell(w.placed(p.leftOver(p.from.At, p.from.To)))
	}
	p.does(Run{Does: written.Leave, Times: p.in - p.at, In: 1, Out: 1})
	p.many(max(0, p.in-p.at), 1, 1)
	w.done(p, p.from, before)
	if w.n == 0 {
		w.live = false
	}
}

// done takes a round over.
func (w *needles) done(p *pass, s *written.Statement, before int) {
	w.end(p)
	w.edges.CastOn, w.edges.CastOff, w.edges.Rows = w.edges.CastOn+p.on, w.edges.CastOff+p.off, w.edges.Rows || w.rows
	if !w.live {
		w.live, w.began = true, s.At
	}
	if w.n == 0 && p.in > 0 { // all of it waits
		w.live = false
		w.edges.Ends++
	}
	if p.idle && !s.Label.Written() {
		w.worked(p, s, true)
		w.since = s.At
		return // stitches were only put aside
	}
	w.report.steps += roundSteps
	w.round++
	w.past = append(w.past, s)
	if w.bodies == nil {
		w.bodies = map[int]*written.Statement{}
	}
	w.bodies[w.round] = s
	in, ok := w.inside()
	if !ok {
		in = -1
	}
	after := w.n
	if !w.known {
		w.unsure, after = true, -1
	}
	w.through, w.line = w.round, s.At
	if w.n != before {
		w.since = s.At
		w.shaped = append(w.shaped, shaped{w.round, w.n, max(0, in)})
	}
	w.rounds = append(w.rounds, Round{w.section, w.round, before, after, in, s.At.Line, w.rows})
	w.worked(p, s, false)
}

// failed tells what went wrong in a round. What follows goes on with the count that is
// stated, or else with the stitches that are really on the needles.
func (w *needles) failed(p *pass, s *written.Statement) {
	if p.failed != nil {
		f := *p.failed
		if all := eaten(s.Items, w.size); f.Kind == Short && all > p.in && f.Cure == "" {
			f.Found, f.Expected = all, p.in
			f.Cure = w.cure(s.Items, p.in-all)
		}
		if f.Look = w.since; f.Kind == Misplaced && w.marked.Line > 0 {
			f.Look = w.marked
		}
		if f.Look.Line == f.At.Line || f.Kind == Unread {
			f.Look = written.Spot{}
		}
		w.round++
		w.tell(w.placed(f))
		w.round--
		if f.Kind == Unread {
			w.doubts()
		}
	}
	w.unsure = true
	stated := written.None
	for _, c := range s.Counts {
		if n := c.For(w.size); !c.Inside && c.Change == 0 && n != written.None {
			stated = n
		}
	}
	if left := p.in - p.at; left > 0 && !p.open && !p.loose {
		p.does(Run{Does: written.Unread, Times: left, In: 1, Out: 1})
		p.many(left, 1, 1)
	}
	before := w.n
	w.going, w.other = nil, nil
	loose := w.partial || p.stretch != nil || p.turning
	p.stretch, p.turning = nil, false
	w.done(p, s, before)
	w.partial = w.partial || loose
	if stated != written.None {
		if w.known {
			w.other = &fork{n: w.n, markers: w.markers, lost: w.lost}
		}
		w.n, w.known, w.markers, w.lost = stated, true, nil, true
		if at := len(w.rounds) - 1; at >= 0 {
			w.rounds[at].After = stated
		}
		w.now(stated)
	}
}

// placed tells in which round a finding is.
func (w *needles) placed(f Finding) Finding {
	if w.round > 0 {
		noun := "round"
		if w.rows {
			noun = "row"
		}
		f.Round, f.Number = fmt.Sprintf("%s %d", noun, w.round), w.round
	}
	return f
}
