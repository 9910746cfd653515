package picture

import (
	"fmt"

	"thenar/internal/chart"
	"thenar/internal/draw"
)

// waitingLine is the room for what waits beside a finger, below the cells, by Edge.
const waitingLine = 1.3

// belowCells returns the room below the cells of a chart, by Edge.
func belowCells(g chart.Grid) float64 {
	below := roomBelow
	if len(g.Areas()) > 0 {
		below = roomBelowAreas
	}
	if len(waiting(g)) > 0 {
		below += waitingLine
	}
	return below
}

// waiting returns the stitches that wait in the first round of a finger's chart.
func waiting(g chart.Grid) []chart.Waiting {
	if len(g.Rows) == 0 {
		return nil
	}
	return g.Rows[0].Waiting(g.FromLeft)
}

// nameWaiting draws a line below the cells where stitches of the first round wait, and says how many, on a
// line that ends at y.
func nameWaiting(s *draw.Scene, g chart.Grid, at Geometry, y float64) {
	edge, style := Edge(at.CellWidth), draw.TextStyle{Class: "area", Size: numberSize(at), Anchor: draw.Middle}
	for _, w := range waiting(g) {
		text := fmt.Sprintf("%d stitches wait here", w.Count)
		if w.Count == 1 {
			text = "1 stitch waits here"
		}
		x, half := at.x(w.X), draw.Measure(text, style.Size, draw.Regular)/2
		s.Path(new(draw.Pen).Move(x, at.Bottom).Line(x, y-1.15*style.Size).String(), draw.Style{Class: "areas", Stroke: fifthColour, Width: edge / 12})
		s.Text(max(half, min(x, s.Width-half)), y-0.25*style.Size, text, style)
	}
}
