package chart

// Share is what of a mitt is worked in one yarn: stitches, and stitches that
// its strands pass behind.
type Share struct{ Stitches, Passed int }

// Shares counts over the whole mitt what each yarn of the chart works. A
// strand is carried where its yarn is used again in the same round or the
// next.
func (s Source) Shares() map[string]Share {
	shares := map[string]Share{}
	for _, section := range s.Mitt.Sections {
		if len(section.Rounds) == 0 {
			continue
		}
		g := Grid{}
		for i := range section.Rounds {
			g.Rows = append(g.Rows, s.row(section, i))
		}
		g.strands(func(f Float) {
			share := shares[f.Yarn]
			share.Passed += f.Length
			shares[f.Yarn] = share
		})
		for _, row := range g.Rows {
			for _, c := range row.Cells {
				if worked(c.Op) {
					share := shares[c.Yarn]
					share.Stitches += c.Op.Out()
					shares[c.Yarn] = share
				}
			}
		}
	}
	return shares
}
