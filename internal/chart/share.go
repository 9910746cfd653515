package chart

import "thenar/internal/stitch"

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

// Catch is a strand that passes behind more stitches than the rule allows, from an
// operation of a round on, counted from 0.
type Catch struct {
	At   int
	Yarn string
}

// Catches returns the strands of a part that have to be caught, by round from 1; not those
// that are meant to be long. One that goes on from a round into the next is in both.
func (s Source) Catches(part stitch.Part) map[int][]Catch {
	section := s.worked.Section(part)
	if s.bare() || section == nil {
		return nil
	}
	g := Grid{Rows: s.rows(*section), Rules: s.Rules, Mirrored: s.Mirrored}
	g.checkYarns(s.Marks)
	of := map[int][]Catch{}
	for _, f := range g.Floats {
		from, to := &g.Rows[f.Row], &g.Rows[f.To]
		if next := from.worked(f.At) + 1; next < len(from.Cells) && (f.Row != f.To || from.worked(next) != f.Next) {
			of[f.Row+1] = append(of[f.Row+1], Catch{from.worked(next), f.Yarn})
		}
		if first := to.worked(0); f.To != f.Row && first != f.Next {
			of[f.To+1] = append(of[f.To+1], Catch{first, f.Yarn})
		}
	}
	return of
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
