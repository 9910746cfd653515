package chart

import (
	"cmp"
	"encoding/csv"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/stitch"
)

// CSV writes a grid as it looks: one line for each round, the last round first;
// one field for each column from left to right; then the number of the round, or of a row
// with the side that faces ("2 wrong side"), whose fields are as they look on the right
// side. A
// field is the stitch's abbreviation, followed by a slash and its yarn if that
// is not the main colour ("k/rust"). A place without a stitch is empty. Lines
// end in CRLF (RFC 4180).
func CSV(w io.Writer, g Grid) error {
	return TableOf(w, []Grid{g})
}

// The words of the line below the rounds of a boxed chart, which counts its columns.
const timesLine = "times"

// BoxedCSV writes the charts of a boxed view as CSV does, the last first, with two fields
// more in each line: the count of the round's box, and the section. "6x3" says that this
// round and the others of its box, 6 in all, are worked 3 times; an empty field that it is
// worked once. Below the rounds of each chart stands a line "times" with the counts of the
// columns: "8x5" in each of 8 columns that are worked 5 times. Narrower charts have empty
// fields at the side where no round begins.
func BoxedCSV(w io.Writer, list []Grid) error {
	width := widest(list)
	var lines [][]string
	for _, g := range slices.Backward(list) {
		pad := g.pad(width)
		for i := len(g.Rows) - 1; i >= 0; i-- {
			lines = append(lines, append(g.line(i, width, pad), countOf(g.Up, i), g.Rows[i].Section.Words()))
		}
		times := make([]string, width, width+3)
		for x := range g.Width {
			times[pad+x] = countOf(g.Across, x)
		}
		lines = append(lines, append(times, timesLine, "", g.Rows[0].Section.Words()))
	}
	return writeLines(w, lines)
}

// TableOf writes charts as CSV does, the last first. Narrower ones have empty fields at the
// side where no round begins.
func TableOf(w io.Writer, list []Grid) error {
	width := widest(list)
	var lines [][]string
	for _, g := range slices.Backward(list) {
		pad := g.pad(width)
		for i := range slices.Backward(g.Rows) {
			lines = append(lines, g.line(i, width, pad))
		}
	}
	return writeLines(w, lines)
}

// widest returns the columns of the widest of several charts.
func widest(list []Grid) (width int) {
	for _, g := range list {
		width = max(width, g.Width)
	}
	return width
}

// pad returns how many empty fields stand before a chart's in a wider table.
func (g Grid) pad(width int) int {
	if g.FromLeft {
		return 0
	}
	return width - g.Width
}

// countOf returns the count of the box in which a column or a round stands.
func countOf(folds []Fold, at int) string {
	for _, f := range folds {
		if at >= f.From && at < f.From+f.Count {
			return fmt.Sprintf("%dx%d", f.Count, f.Times)
		}
	}
	return ""
}

// line returns the fields of a row in so many columns, with so many empty ones before it,
// and the name of the round.
func (g Grid) line(i, width, pad int) []string {
	line := make([]string, width+1, width+3)
	for _, c := range g.Rows[i].Cells {
		if c.Shown() {
			line[pad+c.X] = g.text(c)
		}
	}
	line[width] = g.Rows[i].called()
	return line
}

// called returns what the last field of a row says: its number, the side of a row, and why its
// stitches aren't there if nobody knows them.
func (r Row) called() string {
	parts := []string{cmp.Or(r.Said, strconv.Itoa(r.Round)), r.Side.Words()}
	if r.Unread != r.Said {
		parts = append(parts, r.Unread)
	}
	return strings.Join(slices.DeleteFunc(parts, func(p string) bool { return p == "" }), " ")
}

func writeLines(w io.Writer, lines [][]string) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	for _, line := range lines {
		if err := out.Write(line); err != nil {
			return fmt.Errorf("chart.CSV: %w", err)
		}
	}
	out.Flush()
	if err := out.Error(); err != nil {
		return fmt.Errorf("chart.CSV: %w", err)
	}
	return nil
}

// text returns the field of a cell. A spreadsheet can't take it for a formula,
// since it begins with the abbreviation of a stitch.
func (g Grid) text(c Cell) string {
	if c.Said != "" {
		return c.Said
	}
	if c.Op == stitch.NoStitch {
		return ""
	}
	if c.Yarn == "" || c.Yarn == ID(0) {
		return c.Op.Abbr()
	}
	return c.Op.Abbr() + "/" + strings.TrimSpace(g.Palette.Or(c.Yarn).Name)
}
