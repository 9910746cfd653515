package picture

import (
	"strconv"

	"thenar/internal/chart"
	"thenar/internal/draw"
)

// twoTone returns the style of a mark that can be seen on any yarn: a shape with a light
// edge, for cells of a width.
func twoTone(class, fill string, cell float64) draw.Style {
	return draw.Style{Class: class, Fill: fill, Stroke: edgeColour, Width: cell / 7, Round: true, Under: true}
}

// drawCursor draws what the page's script moves, empty: the lines along the round in
// hand, the notches of what is marked off, the frame of the cell in hand.
func drawCursor(s *draw.Scene, cell float64) {
	layer(s, "cursor")
	s.Path("", twoTone("thread", chalkColour, cell))
	s.Path("", twoTone("chosen", inkColour, cell))
	s.Path("", twoTone("cursor", chalkColour, cell))
	s.End()
}

// drawMarks draws what a chart shows to the person who works on it: what is changed from
// the plan, noted and unsound, and the round on the needles, with an arrow so many cells
// beside it.
func drawMarks(s *draw.Scene, g chart.Grid, at Geometry, arrow float64) {
	w := at.CellWidth
	rowPaths(s, g, "painted", twoTone("painted", bastingColour, w), func(y int, r chart.Row) string { return basting(r, y, at) })
	rowPaths(s, g, "fault", twoTone("fault", pinColour, w), func(y int, r chart.Row) string { return faultFrame(r, y, at) })
	drawNotes(s, g, at)
	layer(s, "needles")
	s.Path(needleMark(g, at, arrow), twoTone("needles", chalkColour, w))
	s.End()
}

// basting returns a stitch of basting thread along the foot of every cell whose stitch is
// not the planned one. A colour is no change: the plan has none.
func basting(row chart.Row, y int, at Geometry) string {
	var p draw.Pen
	w, h := at.CellWidth, at.CellHeight
	for _, c := range row.Shown() {
		if c.Painted && c.Op != c.Planned {
			p.Rect(at.x(c.X)+0.16*w, at.y(y)+0.8*h, 0.68*w, 0.1*w)
		}
	}
	return p.String()
}

// faultFrame returns the frame of a row that does not add up; "" for others.
func faultFrame(row chart.Row, y int, at Geometry) string {
	low, high, ok := shownRange(row)
	if row.Fault == "" || !ok {
		return ""
	}
	return frame(at.x(low), at.y(y), at.x(high+1)-at.x(low), at.CellHeight, at.CellWidth/8)
}

// frame returns a frame of a thickness, half of it outside a rectangle.
func frame(x, y, w, h, thick float64) string {
	d := thick / 2
	p := new(draw.Pen).Rect(x-d, y-d, w+thick, h+thick)
	return p.Move(x+d, y+d).Line(x+d, y+h-d).Line(x+w-d, y+h-d).Line(x+w-d, y+d).Close().String()
}

// note is one note of a chart: on a cell, or on a round, where it stands at its end.
type note struct {
	x    int
	y    int
	cell bool
}

// notes returns the notes of a chart in the order of their numbers: from the foot up, in
// each round its own, then those of its cells from the left.
func notes(g chart.Grid) []note {
	var list []note
	for i, row := range g.Rows {
		low, high, ok := shownRange(row)
		if row.Note != "" && ok {
			end := low
			if g.BeginsLeft(row) {
				end = high
			}
			list = append(list, note{end, i + 1, false})
		}
		for _, c := range row.Shown() {
			if c.Note != "" {
				list = append(list, note{c.X, i + 1, true})
			}
		}
	}
	return list
}

// drawNotes draws every note as a pin with a flag that carries its number.
func drawNotes(s *draw.Scene, g chart.Grid, at Geometry) {
	layer(s, "note")
	size := min(at.CellWidth, at.CellHeight)
	for i, n := range notes(g) {
		x, y := at.x(n.x)+0.3*at.CellWidth, at.y(n.y)+0.75*at.CellHeight
		if !n.cell {
			x = at.x(n.x)
			if g.BeginsLeft(g.Rows[n.y-1]) {
				x += at.CellWidth
			}
		}
		side := 1.0
		if n.x > g.Width-3 {
			side = -1
		}
		flag, pin := pinWithFlag(x, y, side, size)
		s.Path(flag, draw.Style{Class: "note-flag", Fill: edgeColour, Stroke: inkColour, Width: size / 12, Round: true})
		s.Path(pin, twoTone("note-pin", pinColour, at.CellWidth))
		s.Text(x+side*1.06*size, y-1.02*size, strconv.Itoa(i+1), draw.TextStyle{Class: "note-number", Size: 0.85 * size, Anchor: draw.Middle, Face: draw.Semibold})
	}
	s.End()
}

// pinWithFlag returns a pin that is stuck in at a point, with a flag to the right (side
// 1) or the left (−1), for cells of a size.
func pinWithFlag(x, y, side, size float64) (flag, pin string) {
	at := func(u, v float64) (float64, float64) { return x + side*u*size, y + v*size }
	var f, p draw.Pen
	f.Move(at(0.34, -1.8))
	for _, c := range [][2]float64{{1.85, -1.8}, {1.6, -1.32}, {1.85, -0.84}, {0.18, -0.84}} {
		f.Line(at(c[0], c[1]))
	}
	p.Move(at(0, 0))
	p.Line(at(0.3, -1.9)).Line(at(0.42, -1.88)).Close()
	knob(&p, x+side*0.37*size, y-2*size, 0.22*size)
	return f.Close().String(), p.String()
}

// knob adds a disc: four cubics with control points at 0.5523 of the radius.
func knob(p *draw.Pen, x, y, r float64) {
	const k = 0.5523
	p.Move(x+r, y).Curve(x+r, y+k*r, x+k*r, y+r, x, y+r).Curve(x-k*r, y+r, x-r, y+k*r, x-r, y)
	p.Curve(x-r, y-k*r, x-k*r, y-r, x, y-r).Curve(x+k*r, y-r, x+r, y-k*r, x+r, y).Close()
}

// pastNumber is how many cells beside its round an arrow stands beyond the round's number.
const pastNumber = 1.8

// needleMark marks the round that is on the needles: a needle below it, pointed at both
// ends, and an arrow so many cells beside it where the round begins.
func needleMark(g chart.Grid, at Geometry, arrow float64) string {
	var p draw.Pen
	for i, row := range g.Rows {
		low, high, ok := shownRange(row)
		if !row.Needles || !ok {
			continue
		}
		out := (arrow + 0.5) * at.CellWidth
		foot, mid, x, to := at.y(i), at.y(i+1)+at.CellHeight/2, at.x(high+1)+out, -at.CellWidth/2
		if g.BeginsLeft(row) {
			x, to = at.x(low)-out, -to
		}
		left, right, half, tip := at.x(low), at.x(high+1), at.CellWidth/12, at.CellWidth/2
		p.Move(left-tip, foot).Line(left, foot-half).Line(right, foot-half).Line(right+tip, foot).Line(right, foot+half).Line(left, foot+half).Close()
		p.Move(x, mid-at.CellHeight/3).Line(x+to, mid).Line(x, mid+at.CellHeight/3).Close()
	}
	return p.String()
}
