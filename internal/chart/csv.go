package chart

import (
	"encoding/csv"
	"fmt"
	"io"
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
	out := csv.NewWriter(w)
	out.UseCRLF = true
	for i := len(g.Rows) - 1; i >= 0; i-- {
		line := make([]string, g.Width+1)
		for _, c := range g.Rows[i].Cells {
			if c.Shown() {
				line[c.X] = g.text(c)
			}
		}
		line[g.Width] = strings.TrimSpace(strconv.Itoa(g.Rows[i].Round) + " " + g.Rows[i].Side.Words())
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
	if c.Op == stitch.NoStitch {
		return ""
	}
	if c.Yarn == "" || c.Yarn == ID(0) {
		return c.Op.Abbr()
	}
	return c.Op.Abbr() + "/" + strings.TrimSpace(g.Palette.Or(c.Yarn).Name)
}
