package chart

import (
	"encoding/csv"
	"fmt"
	"io"
	"strconv"
	"strings"

	"thenar/internal/stitch"
)

// CSV writes a grid as it looks: one line for each round, the last at the
// top, one field for each column from left to right, and the number of the
// round at the right, where it stands on the chart. A field is the stitch's
// abbreviation, with its yarn after a stroke where that is not the main
// colour ("k/rust"); a place without a stitch is empty. Lines end in CRLF
// (RFC 4180).
func CSV(w io.Writer, g Grid) error {
	out := csv.NewWriter(w)
	out.UseCRLF = true
	for i := len(g.Rows) - 1; i >= 0; i-- {
		line := make([]string, g.Width+1)
		for _, c := range g.Rows[i].Cells {
			if c.Shown() {
				line[c.X] = g.text(c)
			}
		}
		line[g.Width] = strconv.Itoa(g.Rows[i].Round)
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

// text is a cell in a word. Nothing in it can begin a formula of a
// spreadsheet: it begins with the abbreviation of a stitch.
func (g Grid) text(c Cell) string {
	if c.Op == stitch.NoStitch {
		return ""
	}
	if c.Yarn == "" || c.Yarn == ID(0) {
		return c.Op.Abbr()
	}
	return c.Op.Abbr() + "/" + strings.TrimSpace(g.Palette.Or(c.Yarn).Name)
}
