package words

import (
	"fmt"
	"strings"

	"thenar/internal/stitch"
)

// motifRow names a row of a motif where it is told: "Motif 1 (birds), row 3".
func (d *dyer) motifRow(motif, row int) string {
	name := d.Motifs[motif-1].Name
	if name != "" {
		name = " (" + name + ")"
	}
	return fmt.Sprintf("Motif %d%s, row %d", motif, name, row)
}

// rowWords returns the row of a motif in words.
func rowWords(list []Worked) string {
	r, of := stitch.Round{}, RoundDyed{}
	for _, w := range list {
		r.Ops, of.Yarns = append(r.Ops, w.Op), append(of.Yarns, w.Yarn)
	}
	return strings.Join(inColours(colouredRuns(r, of, 0, len(r.Ops))), ", ")
}

// isWide reports whether the row of a motif, both from 1, takes long to tell.
func (d *dyer) isWide(motif, row int) bool {
	key := [2]int{motif, row}
	wide, known := d.wide[key]
	if !known {
		wide = len(rowWords(d.Motifs[motif-1].Rows[row-1])) > longRow
		d.wide[key] = wide
	}
	return wide
}

// byRows returns a part of a round with the rows of motifs where they stand whole, and those
// rows.
func (d *dyer) byRows(r stitch.Round, of RoundDyed) (tokens []dyedRun, rows [][2]int) {
	for i := 0; i < len(r.Ops); {
		if n := d.motifAt(r, of, i); n > 0 {
			motif, row, times := of.Motif[i], of.Row[i], 0
			for ; i < len(r.Ops) && of.Motif[i] == motif && of.Row[i] == row && d.motifAt(r, of, i) == n; i += n {
				times++
			}
			text := fmt.Sprintf("row %d of motif %d", row, motif)
			if times > 1 {
				text = fmt.Sprintf("(%s) %s", text, Times(times))
			}
			tokens, rows = append(tokens, dyedRun{head: text, whole: true}), append(rows, [2]int{motif, row})
			continue
		}
		from := i
		for i < len(r.Ops) && d.motifAt(r, of, i) == 0 {
			i++
		}
		tokens = append(tokens, colouredRuns(r, of, from, i)...)
	}
	return tokens, rows
}

// motifAt returns how many operations from the ith on are a whole row of their motif; 0 if
// they are none.
func (d *dyer) motifAt(r stitch.Round, of RoundDyed, i int) int {
	m, row := of.Motif[i], of.Row[i]
	if m == 0 || !d.isWide(m, row) {
		return 0
	}
	list := d.Motifs[m-1].Rows[row-1]
	if i+len(list) > len(r.Ops) {
		return 0
	}
	for k, w := range list {
		j := i + k
		if of.Motif[j] != m || of.Row[j] != row || r.Ops[j] != w.Op || of.Yarns[j] != w.Yarn || r.SetAt(j) != "" {
			return 0
		}
	}
	return len(list)
}
