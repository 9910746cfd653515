package chart

import (
	"slices"
	"strings"

	"thenar/internal/stitch"
)

// Share is the use of one yarn in a mitt: the number of stitches worked in it,
// and of stitches that its strands pass behind.
type Share struct{ Stitches, Passed int }

// InWork returns the yarn of each operation of a round, in the order in which
// this hand works them; nil if the round is all in the main colour.
func (s Source) InWork(part stitch.Part, round int) []Yarn {
	cells := s.Dyed(part, round)
	if cells == nil {
		return nil
	}
	yarns := make([]Yarn, len(cells))
	for i, c := range cells {
		yarns[i] = s.Palette.Or(c.Yarn)
	}
	return yarns
}

// Dyed returns the cells of a round, counted from 1, in the order of its operations; nil if
// it is all in the main colour.
func (s Source) Dyed(part stitch.Part, round int) []Cell {
	section := s.worked.Section(part)
	if s.bare() || section == nil || round < 1 || round > len(section.Rounds) {
		return nil
	}
	cells := make([]Cell, len(section.Rounds[round-1].Ops))
	s.row(section, round-1, cells)
	for _, c := range cells {
		if worked(c.Op) && c.Yarn != Yarns[0].ID {
			return cells
		}
	}
	return nil
}

// Catch is a yarn whose strand passes behind more stitches than the rule allows in a round:
// behind so many where it is longest.
type Catch struct {
	Yarn   string
	Length int
}

// Catches returns the strands that have to be caught, by part and round from 1, of each yarn
// in the order of the palette; not those that are meant to be long. One that goes on from a
// round into the next is in both, and sections that go on from each other are one spiral.
func (s Source) Catches() map[stitch.Part]map[int][]Catch {
	if s.bare() {
		return nil
	}
	g := Grid{Rows: s.rows(s.worked.Sections...), Rules: s.Rules, Mirrored: s.Mirrored}
	g.checkYarns(s.Marks)
	of := map[stitch.Part]map[int][]Catch{}
	add := func(row int, f Float) {
		at := &g.Rows[row]
		if of[at.Section] == nil {
			of[at.Section] = map[int][]Catch{}
		}
		list := of[at.Section][at.Round]
		i, known := slices.BinarySearchFunc(list, f.Yarn, func(c Catch, yarn string) int { return strings.Compare(c.Yarn, yarn) })
		if known {
			list[i].Length = max(list[i].Length, f.Length)
			return
		}
		of[at.Section][at.Round] = slices.Insert(list, i, Catch{f.Yarn, f.Length})
	}
	for _, f := range g.Floats {
		if f.Row == f.To || f.At != g.Rows[f.Row].ends()[1] {
			add(f.Row, f)
		}
		if f.Row != f.To && f.Next != g.Rows[f.To].ends()[0] {
			add(f.To, f)
		}
	}
	return of
}

// ends returns the first and the last cell of a row that is worked, as it is worked.
func (r *Row) ends() [2]int {
	at := [2]int{-1, -1}
	for k := range r.Cells {
		if j := r.worked(k); worked(r.Cells[j].Op) {
			if at[0] < 0 {
				at[0] = j
			}
			at[1] = j
		}
	}
	return at
}

// Shares returns the share of each yarn in the whole mitt. A strand is carried
// if its yarn is used again in the same round or the next.
func (s Source) Shares() map[string]Share {
	var shares [MaxYarns]Share
	for i := range s.worked.Sections {
		if s.bare() { // all is in one yarn, and nothing is carried
			shares[0].Stitches += worksOut(&s.worked.Sections[i])
			continue
		}
		g := Grid{Rows: s.rows(s.worked.Sections[i])}
		g.strands(func(f Float) {
			shares[place(f.Yarn)].Passed += f.Length
		})
		for _, row := range g.Rows {
			for _, c := range row.Cells {
				if worked(c.Op) {
					shares[place(c.Yarn)].Stitches += c.Op.Out()
				}
			}
		}
	}
	used := map[string]Share{}
	for i, share := range shares {
		if share != (Share{}) {
			used[ID(i)] = share
		}
	}
	return used
}

// worksOut returns the number of stitches that a section's rounds work.
func worksOut(s *stitch.Section) int {
	n := 0
	for _, r := range s.Rounds {
		for _, op := range r.Ops {
			if worked(op) {
				n += op.Out()
			}
		}
	}
	return n
}
