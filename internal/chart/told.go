package chart

import (
	"cmp"
	"maps"
	"slices"
)

// Told returns a chart of rows whose cells were laid out by somebody else, in so many columns:
// of a piece that lies nobody knows where on a hand.
func Told(view View, rows []Row, width int) Grid {
	g := Grid{Options: Options{View: view, Layout: Columns}, Rows: rows, Width: width, placeless: true}
	if len(rows) > 0 {
		g.Start, g.End = rows[0].In, rows[len(rows)-1].Out
	}
	g.show()
	return g
}

// Signs returns the abbreviations of stitches in the chart that the table of operations
// doesn't have, in the order of the letters.
func (g Grid) Signs() (list []string) {
	for _, row := range g.Rows {
		for _, c := range row.Cells {
			if c.Said != "" && c.Shown() && !slices.Contains(list, c.Said) {
				list = append(list, c.Said)
			}
		}
	}
	slices.Sort(list)
	return list
}

// meanings are the full words of abbreviations in common use that the table of operations
// doesn't have (common practice, from memory).
var meanings = map[string]string{
	"…":         "in pattern: its stitches are told elsewhere",
	"?":         "left over: the text doesn’t say what becomes of it",
	"M1P":       "make one, purled",
	"inc":       "increase in the stitch",
	"dec":       "decrease, however it is worked",
	"pfb":       "purl into the front and the back",
	"kfbf":      "knit into the front, the back and the front again",
	"skp":       "slip one, knit one, pass the slipped stitch over",
	"k2tog tbl": "knit two together through the back loops",
	"k3tog tbl": "knit three together through the back loops",
	"p2tog tbl": "purl two together through the back loops",
	"sssk":      "slip three, knit the three together through the back loops",
	"p3tog":     "purl three together",
	"k4tog":     "knit four together",
	"p4tog":     "purl four together",
	"sk3p":      "slip one, knit three together, pass the slipped stitch over",
}

// Meaning returns what an abbreviation means that the table of operations doesn't have.
func Meaning(said string) string {
	return cmp.Or(meanings[said], "as the text calls it")
}

// Meanings lists the abbreviations in common use that the table of operations doesn't have.
func Meanings() []string { return slices.Sorted(maps.Keys(meanings)) }
