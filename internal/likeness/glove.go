package likeness

import (
	"slices"

	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/written"
)

// bridges are those between the fingers, from that beside the little finger on.
var bridges = [3]int{2, 1, 0}

// glove reads the fingers of a glove, the little one first, and its thumb.
func (d *draft) glove(s *shaft, pieces []piece) (why string) {
	thumb := -1
	set := s.rows[s.divides].set()
	for i := 1; i < len(pieces); i++ {
		if slices.Contains(pieces[i].sets, set) {
			thumb = i
		}
	}
	if thumb < 0 {
		return "no thumb is worked on what was put aside for it"
	}
	d.kind, d.topped, d.tops = mitt.Glove, false, nil
	parts := slices.IndexFunc(s.rows[s.divides+1:], func(r row) bool { return r.sum(written.Hold) > 0 })
	if parts < 0 || len(pieces) != 5 {
		return "the fingers are not worked as a glove of ours has them"
	}
	parts += s.divides + 1
	d.fix(mitt.RoundsAboveGusset, s.rows[s.divides].line, parts-s.divides)
	tip := pieces[0]
	tip.rows = tip.rows[parts:]
	d.finger(hand.Little, &tip)
	d.bridge(0, &tip.rows[0])
	f := hand.Ring
	for i := 1; i < len(pieces); i++ {
		p := pieces[i]
		if i == thumb || len(p.rows) == 0 {
			continue
		}
		d.groups = append(d.groups, p.rows)
		if f == hand.Ring {
			lower := slices.IndexFunc(p.rows, func(r row) bool { return r.sum(written.CastOn) > 0 })
			if lower < 0 {
				return "the fingers are not worked as a glove of ours has them"
			}
			d.fix(mitt.LittleLowerRounds, p.rows[0].line, lower)
			if lower == 0 {
				d.sheet[mitt.PathLower] = "false"
			}
			p.rows = p.rows[lower:]
		}
		d.finger(f, &p)
		if f > hand.Index {
			d.bridge(int(hand.Little-f), &p.rows[0])
		}
		f--
	}
	if why := d.thumb(&pieces[thumb], s); why != "" {
		return why
	}
	d.end(mitt.PathThumbEnd, &pieces[thumb])
	return ""
}

// set returns the set that a row puts aside; 0: none.
func (r *row) set() int {
	for _, run := range r.runs {
		if run.Does == written.Hold || run.Does == written.Waste {
			return run.Set
		}
	}
	return 0
}

func (d *draft) bridge(i int, r *row) {
	d.fix(mitt.OfBridge(bridges[i]), r.line, r.sum(written.CastOn))
}

// finger fixes the numbers of a finger.
func (d *draft) finger(f hand.Finger, p *piece) {
	t := tubeOf(p)
	d.fix(mitt.OfFinger(mitt.FingerStitches, f), p.rows[0].line, t.first)
	d.fix(mitt.OfFinger(mitt.FingerRounds, f), p.rows[0].line, len(p.rows))
	if t.first != t.stitches || t.other != t.stitches {
		d.fix(mitt.OfFinger(mitt.FingerDecreases, f), p.rows[0].line, t.first-t.stitches)
		d.or(mitt.OfFinger(mitt.FingerDecreases, f), t.first-t.other)
	}
	if d.end(mitt.PathFinger(f), p); !t.closed && d.sheet["length.edging"] == "" && d.sheet[mitt.PathFinger(f)] == string(mitt.HalfFinger) {
		d.long("length.edging", t.edging)
	}
}

// end notes how far a finger is covered.
func (d *draft) end(path string, p *piece) {
	t := tubeOf(p)
	switch {
	case t.closed:
		d.sheet[path] = string(mitt.FullFinger)
	case t.edging <= 2:
		d.sheet[path] = string(mitt.OpenFinger)
		d.ways = append(d.ways, func(s sheet.Sheet) {
			s[path] = string(mitt.HalfFinger)
			if s["length.edging"] == "" {
				s["length.edging"] = cm(float64(max(1, t.edging)) / d.roundsPerMM)
			}
		})
	default:
		d.sheet[path] = string(mitt.HalfFinger)
		d.ways = append(d.ways, func(s sheet.Sheet) { s[path] = string(mitt.OpenFinger) })
	}
}
