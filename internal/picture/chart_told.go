package picture

import (
	"thenar/internal/chart"
	"thenar/internal/draw"
)

// saidSize is the size of an abbreviation in a cell, by the cell's shorter side; one that is
// wider than its cell is smaller.
const saidSize = 0.6

// writeIn writes an abbreviation into the middle of a cell, in place of a symbol.
func writeIn(s *draw.Scene, said string, x, y, w, h float64) {
	size := saidSize * min(w, h)
	if wide := draw.Measure(said, size, draw.Semibold); wide > 0.9*w {
		size *= 0.9 * w / wide
	}
	s.Text(x+w/2, y+h/2+0.35*size, said, draw.TextStyle{Class: "in-cell", Size: size, Anchor: draw.Middle, Face: draw.Semibold})
}

// drawSaid writes the abbreviations of stitches that have no symbol into their cells.
func drawSaid(s *draw.Scene, g chart.Grid, at Geometry) {
	for i, row := range g.Rows {
		for _, c := range row.Shown() {
			if c.Said != "" {
				writeIn(s, c.Said, at.x(c.X), at.y(i+1), at.CellWidth, at.CellHeight)
			}
		}
	}
}

// drawUnread draws the rounds of which nobody knows the stitches: a blank line that says so.
func drawUnread(s *draw.Scene, g chart.Grid, at Geometry) {
	for i, row := range g.Rows {
		if row.Unread == "" || g.Width == 0 {
			continue
		}
		x, y, w := at.x(0), at.y(i+1), at.x(g.Width)-at.x(0)
		dash := draw.Number(at.CellWidth/5) + " " + draw.Number(at.CellWidth/5)
		s.Path(new(draw.Pen).Rect(x, y, w, at.CellHeight).String(), draw.Style{Class: "unread", Stroke: pencilColour, Width: at.CellWidth / 14, Dash: dash})
		size := min(numberSize(at), 0.8*at.CellHeight)
		s.Text(x+w-size/2, y+at.CellHeight/2+0.35*size, row.Unread, draw.TextStyle{Class: "soft", Size: size, Anchor: draw.End})
	}
}

// drawSaid writes the abbreviation of a line of a key into its cell.
func (l keyLine) drawSaid(s *draw.Scene, x, y float64) {
	if l.said != "" {
		writeIn(s, l.said, x, y, keyCell, keyCell)
	}
}
