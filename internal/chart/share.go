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
	cells := s.row(*section, round-1).Cells
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
	for _, section := range s.worked.Sections {
		if len(section.Rounds) == 0 {
			continue
		}
		g := Grid{}
		for i := range section.Rounds {
			g.Rows = append(g.Rows, s.row(section, i))
		}
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
