package chart

import "thenar/internal/stitch"

// Share is the use of one yarn in a mitt: the number of stitches worked in it,
// and of stitches that its strands pass behind.
type Share struct{ Stitches, Passed int }

// InWork returns the yarn of each operation of a round, in the order in which
// this hand works them; nil if the round is all in the main colour.
func (s Source) InWork(part stitch.Part, round int) []Yarn {
	section := s.worked.Section(part)
	if section == nil || round < 1 || round > len(section.Rounds) {
		return nil
	}
	cells := make([]Cell, len(section.Rounds[round-1].Ops))
	s.row(section, round-1, cells)
	yarns, painted := make([]Yarn, len(cells)), false
	for i, c := range cells {
		yarns[i] = s.Palette.Or(c.Yarn)
		painted = painted || worked(c.Op) && c.Yarn != Yarns[0].ID
	}
	if !painted {
		return nil
	}
	return yarns
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
