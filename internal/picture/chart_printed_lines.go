package picture

import (
	"thenar/internal/chart"
	"thenar/internal/draw"
)

// The lines of a printed chart in mm: between stitches, after every fifth round, and at
// the gusset's edges. The edge where rounds begin is a whole line, that of the second
// marker a broken one. Thin grey has 3 : 1 on paper (WCAG 2.2, 1.4.11).
const (
	fineLine   = 0.15
	fifthWidth = 0.35
	firstEdge  = 0.7
	fineColour = "#8A8A8A"
	secondDash = "1.6 0.8"
)

// lines draws the lines between the stitches. The outer edges of a row stay open.
func (p *printed) lines(s *draw.Scene) {
	var fine, first, second draw.Pen
	open := make([]int, p.g.Width+1) // row at which the upright line at x began; 0: none
	for i := 0; i <= len(p.g.Rows); i++ {
		stands := make([]bool, p.g.Width+1)
		if i < len(p.g.Rows) {
			p.uprights(p.g.Rows[i], i+1, stands, &first, &second)
		}
		for x := range stands {
			switch {
			case stands[x] && open[x] == 0:
				open[x] = i + 1
			case !stands[x] && open[x] > 0:
				fine.Move(p.at.x(x), p.at.y(open[x]-1)).Line(p.at.x(x), p.at.y(i))
				open[x] = 0
			}
		}
		p.level(i, &fine)
	}
	s.Path(fine.String(), draw.Style{Stroke: fineColour, Width: fineLine})
	drawFurrows(s, p.g, p.at, fineLine)
	for _, dark := range []bool{false, true} {
		colour := outlineColour
		if dark {
			colour = edgeColour
		}
		for i, row := range p.g.Rows {
			if d := fifthLine(p.g, row, i+1, p.at, dark); d != "" {
				s.Path(d, draw.Style{Stroke: colour, Width: fifthWidth})
			}
		}
	}
	if IsKnitted(p.g) {
		s.Path(first.String()+" "+second.String(), draw.Style{Stroke: edgeColour, Width: 2 * firstEdge})
	}
	s.Path(first.String(), draw.Style{Stroke: outlineColour, Width: firstEdge})
	s.Path(second.String(), secondEdgeStyle)
}

var secondEdgeStyle = draw.Style{Stroke: outlineColour, Width: firstEdge, Dash: secondDash}

// level draws the level line between row i and the next, as far as either reaches.
func (p *printed) level(i int, fine *draw.Pen) {
	low, high := 1<<30, -1
	for k := max(i-1, 0); k <= min(i, len(p.g.Rows)-1); k++ {
		if l, h, ok := shownRange(p.g.Rows[k]); ok {
			low, high = min(low, l), max(high, h)
		}
	}
	if high >= low {
		fine.Move(p.at.x(low), p.at.y(i)).Line(p.at.x(high+1), p.at.y(i))
	}
}

// uprights notes where a row's upright lines stand, and draws those at the edges of the
// gusset.
func (p *printed) uprights(row chart.Row, y int, stands []bool, first, second *draw.Pen) {
	low, high, ok := shownRange(row)
	if !ok {
		return
	}
	for x := low + 1; x <= high; x++ {
		stands[x] = true
	}
	of := gussetOf(row)
	if of[1] < of[0] {
		return
	}
	right, left := first, second // the round begins at the right
	if p.g.FromLeft {
		right, left = left, right
	}
	left.Move(p.at.x(of[0]), p.at.y(y-1)).Line(p.at.x(of[0]), p.at.y(y))
	right.Move(p.at.x(of[1]+1), p.at.y(y-1)).Line(p.at.x(of[1]+1), p.at.y(y))
}
