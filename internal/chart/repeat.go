package chart

import (
	"slices"

	"thenar/internal/repeat"
	"thenar/internal/stitch"
	"thenar/internal/wale"
)

// A repeat lies between the plan and the marks: it is worked out anew on every plan, and
// what is painted by hand lies over it.

// Strip returns the strip of a repeat, as the right hand has it; ok is false if there is none.
func (s Source) Strip(r repeat.Repeat) (strip repeat.Strip, ok bool) {
	if s.fabric == nil {
		return repeat.Strip{}, false
	}
	right := *s.fabric
	right.Left = nil
	return repeat.StripOf(r, right)
}

// under returns what repeats are laid on; edges are those of the hand that is worked.
func (s *Source) under(edges map[stitch.Part]wale.Edge) *repeat.Fabric {
	f := &repeat.Fabric{Mitt: s.Mitt, InPalm: s.palm, Areas: map[stitch.Part]map[string]string{}}
	if s.Mirrored {
		f.Left = &repeat.Hand{Names: s.names, Edges: edges}
		f.Names, f.Edges = wale.Trace(s.Mitt, s.Base, false)
	} else {
		f.Names, f.Edges = s.names, edges
	}
	right := *s
	right.Mirrored, right.FromLeft, right.Marks, right.laid, right.Kept = false, false, nil, nil, nil
	right.worked, right.names = s.Mitt, f.Names
	g := Grid{base: s.Base, palm: s.palm, inset: s.inset, down: s.Mitt.Down(), byThumb: s.Mitt.SeamByThumb()}
	g.fingerSides(&right, s.Mitt.Sections)
	for i := range s.Mitt.Sections {
		if section := &s.Mitt.Sections[i]; len(section.Rounds) > 0 {
			f.Areas[section.Part] = g.areaOfColumns(&right, section)
		}
	}
	return f
}

// areaOfColumns returns on which area of the hand each column of a section lies in the round
// at which they are counted.
func (g Grid) areaOfColumns(s *Source, section *stitch.Section) map[string]string {
	i := repeat.CountedAt(section)
	row := s.row(section, i, make([]Cell, len(section.Rounds[i].Ops)))
	of, at := map[string]string{}, 0
	for _, area := range g.areasOf(row) {
		for range area.Count {
			of[row.Cells[at].Column] = area.Words
			at++
		}
	}
	return of
}

// bare reports whether nothing lies on the plan, so that all is in one yarn.
func (s *Source) bare() bool {
	return len(s.Marks) == 0 && s.laid == nil && len(s.Kept[s.Mirrored]) == 0
}

// LaysColour reports whether a repeat lays a yarn that has a colour.
func (s Source) LaysColour() bool {
	for _, r := range s.Repeats {
		colour := func(yarn string) bool { return s.Palette.Or(yarn).Fill != "" }
		if !r.Off && slices.ContainsFunc(r.Motif.Yarns(), colour) {
			return true
		}
	}
	return slices.ContainsFunc(s.Kept[s.Mirrored].Yarns(), func(yarn string) bool { return s.Palette.Or(yarn).Fill != "" })
}

// Came returns what became of each repeat on this plan.
func (s Source) Came() []repeat.Came {
	if s.laid == nil {
		return nil
	}
	return s.laid.Came
}

// Stands returns how the motifs of a repeat stand across what it is laid along, and, where
// the hand above the thumb has another count, across that; each is nil if there is none.
func (s Source) Stands(which int) (along, above *repeat.Stands) {
	if s.laid == nil {
		return nil, nil
	}
	if of, ok := s.laid.Stands(which); ok {
		along = &of
	}
	if of, ok := s.laid.Above(which, s.fabric); ok {
		above = &of
	}
	return along, above
}

// repeatOn puts what repeats set on the planned cells of a round, counted from 0, and over it
// how the round was worked, if that is kept.
func (s *Source) repeatOn(part stitch.Part, i int, names []string, cells []Cell) {
	s.lay(part, i, names, cells)
	if looks := s.keptRound(part, i, len(cells)); looks != nil {
		keep(cells, looks)
	}
}

// lay puts what repeats set on the planned cells of a round, counted from 0.
func (s *Source) lay(part stitch.Part, i int, names []string, cells []Cell) {
	if s.laid == nil {
		return
	}
	s.laid.Cells(part, i, names, func(j int, at repeat.Cell) {
		c := &cells[j]
		if !worked(c.Planned) {
			return
		}
		sets := false
		if at.Yarn != "" {
			c.Yarn, sets = at.Yarn, true
		}
		if at.Op != stitch.NoStitch && textured(c.Planned) {
			c.Op, sets = at.Op, true
		}
		if sets {
			c.Laid, c.Right, c.Up = uint8(at.Which+1), uint8(at.Right), uint8(at.Up)
		}
	})
}

// textured reports whether a repeat may set another stitch in place of a planned one. On
// increases, decreases and edges it sets only the yarn.
func textured(planned stitch.Op) bool { return planned == stitch.Knit || planned == stitch.Purl }

// motifWidth returns the width of the motif of a repeat, by its place in the list.
func (g Grid) motifWidth(which int) int { return g.repeats[which].Motif.Wide }
