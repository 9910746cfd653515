package chart

import (
	"thenar/internal/repeat"
	"thenar/internal/stitch"
)

// Kept are rounds that are knitted and stay as they were worked, whatever is laid now: of the
// hand that is mirrored, and of the one that is not.
type Kept map[bool]repeat.Worked

// keptRound returns a round, from 0, as it was worked; nil if it goes by what is laid now.
func (s *Source) keptRound(part stitch.Part, i, operations int) []repeat.Look {
	if looks := s.Kept[s.Mirrored][part][i+1]; len(looks) == operations {
		return looks
	}
	return nil
}

// keep puts a round as it was worked over what is laid on its planned cells now. What is
// alike stays with its motif.
func keep(cells []Cell, looks []repeat.Look) {
	for j := range cells {
		c := &cells[j]
		op := c.Planned
		if looks[j].Op != stitch.NoStitch && textured(c.Planned) {
			op = looks[j].Op
		}
		if c.Op != op || c.Yarn != looks[j].Yarn {
			c.Op, c.Yarn, c.Laid, c.Right, c.Up = op, looks[j].Yarn, 0, 0, 0
		}
	}
}

// Looks returns a round, from 1, as this hand works it under its marks; nil if the mitt has no
// such round.
func (s Source) Looks(part stitch.Part, round int) []repeat.Look {
	section := s.worked.Section(part)
	if section == nil || round < 1 || round > len(section.Rounds) {
		return nil
	}
	cells := s.unpainted(section, round-1)
	looks := make([]repeat.Look, len(cells))
	for j, c := range cells {
		looks[j].Yarn = c.Yarn
		if c.Op != c.Planned {
			looks[j].Op = c.Op
		}
	}
	return looks
}

// unpainted returns the cells of a round, from 0, without their marks.
func (s *Source) unpainted(section *stitch.Section, i int) []Cell {
	cells := make([]Cell, len(section.Rounds[i].Ops))
	for j, op := range section.Rounds[i].Ops {
		cells[j].plan(op, s.names[section.Part][i][j])
	}
	s.repeatOn(section.Part, i, s.names[section.Part][i], cells)
	return cells
}

// PageKept is a run of a row's cells that look as they were worked, and that no repeat sets:
// N of them from I on, counted from 0 in the order in which they are listed.
type PageKept struct {
	I      int    `json:"i"`
	N      int    `json:"n"`
	Yarn   string `json:"yarn"`
	Stitch string `json:"stitch,omitempty"` // empty: as planned
}

// keptRuns packs what a row keeps of how it was worked; kept is false if it goes by what is
// laid now.
func (s *Source) keptRuns(row Row) (list []PageKept, kept bool) {
	section := s.worked.Section(row.Section)
	if section == nil || s.keptRound(row.Section, row.Round-1, len(row.Cells)) == nil {
		return nil, false
	}
	for i, c := range s.unpainted(section, row.Round-1) {
		of := PageKept{I: i, N: 1, Yarn: c.Yarn}
		if c.Op != c.Planned {
			of.Stitch = c.Op.Code()
		}
		if c.Laid > 0 || of.Stitch == "" && c.Yarn == Yarns[0].ID {
			continue
		}
		if n := len(list); n > 0 && list[n-1].I+list[n-1].N == i && list[n-1].Yarn == of.Yarn && list[n-1].Stitch == of.Stitch {
			list[n-1].N++
			continue
		}
		list = append(list, of)
	}
	return list, true
}
