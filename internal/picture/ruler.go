package picture

import (
	"strconv"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/units"
)

// tick returns the length of fabric in mm from one tick of a ruler to the next, and what
// is counted on with each.
func (l Look) tick() (unit float64, step int) {
	switch l.Unit {
	case units.IN:
		return 25.4, 1
	case units.MM:
		return 10, 10
	}
	return 10, 1
}

func rulerLine(at Geometry) draw.Style {
	return draw.Style{Class: "ruler", Stroke: fifthColour, Width: at.CellWidth / 20}
}

// drawUprightRuler draws the length of the fabric up the left side, from the first round,
// with a tick at every centimetre or inch.
func drawUprightRuler(s *draw.Scene, g chart.Grid, at Geometry, l Look) {
	unit, step := l.tick()
	size := numberSize(at)
	var p draw.Pen
	x := at.Left - 1.1*at.CellWidth
	p.Move(x, at.Bottom).Line(x, at.y(len(g.Rows)))
	for i := 0; float64(i)*unit*l.Gauge.Rounds <= float64(len(g.Rows)); i++ {
		y := at.Bottom - float64(i)*unit*l.Gauge.Rounds*at.CellHeight
		p.Move(x, y).Line(x-at.CellWidth/4, y)
		s.Text(x-at.CellWidth*0.35, y+size*0.35, strconv.Itoa(i*step), draw.TextStyle{Class: "soft", Size: size, Anchor: draw.End})
	}
	s.Path(p.String(), rulerLine(at))
}

// drawLevelRuler draws it along the foot, from the right.
func drawLevelRuler(s *draw.Scene, g chart.Grid, at Geometry, l Look) {
	unit, step := l.tick()
	size := numberSize(at)
	style := draw.TextStyle{Class: "soft", Size: size, Anchor: draw.Middle}
	var p draw.Pen
	y := at.Bottom + 1.6*at.CellWidth
	p.Move(at.x(0), y).Line(at.x(g.Width), y)
	for i := 0; float64(i)*unit*l.Gauge.Stitches <= float64(g.Width); i++ {
		x := at.x(g.Width) - float64(i)*unit*l.Gauge.Stitches*at.CellWidth
		p.Move(x, y).Line(x, y+at.CellWidth/4)
		s.Text(x, y+at.CellWidth*0.35+size, strconv.Itoa(i*step), style)
	}
	s.Path(p.String(), rulerLine(at))
	style.Anchor = draw.Start
	s.Text(at.x(g.Width)+at.CellWidth*0.6, y+at.CellWidth*0.35+size, string(l.Unit), style)
}
