package picture

import (
	"strconv"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/units"
)

// drawRulers draws the lengths of the fabric with a tick at every centimetre or inch:
// up the left side from the first round, and along the foot from the right.
func drawRulers(s *draw.Scene, g chart.Grid, at Geometry, l Look) {
	if len(g.Rows) == 0 {
		return
	}
	unit, step := 10.0, 1
	if l.Unit == units.IN {
		unit = 25.4
	}
	if l.Unit == units.MM {
		step = 10
	}
	size := min(at.CellWidth*0.62, at.CellHeight*0.8)
	style := draw.TextStyle{Class: "soft", Size: size, Anchor: draw.End}
	var p draw.Pen
	x := at.Left - 1.1*at.CellWidth
	p.Move(x, at.Bottom).Line(x, at.y(len(g.Rows)))
	for i := 0; float64(i)*unit*l.Gauge.Rounds <= float64(len(g.Rows)); i++ {
		y := at.Bottom - float64(i)*unit*l.Gauge.Rounds*at.CellHeight
		p.Move(x, y).Line(x-at.CellWidth/4, y)
		s.Text(x-at.CellWidth*0.35, y+size*0.35, strconv.Itoa(i*step), style)
	}
	y := at.Bottom + 1.6*at.CellWidth
	style.Anchor = draw.Middle
	p.Move(at.x(0), y).Line(at.x(g.Width), y)
	for i := 0; float64(i)*unit*l.Gauge.Stitches <= float64(g.Width); i++ {
		x := at.x(g.Width) - float64(i)*unit*l.Gauge.Stitches*at.CellWidth
		p.Move(x, y).Line(x, y+at.CellWidth/4)
		s.Text(x, y+at.CellWidth*0.35+size, strconv.Itoa(i*step), style)
	}
	s.Path(p.String(), draw.Style{Class: "ruler", Stroke: lineColour, Width: at.CellWidth / 20})
	style.Anchor = draw.Start
	s.Text(at.x(g.Width)+at.CellWidth*0.6, y+at.CellWidth*0.35+size, string(l.Unit), style)
}
