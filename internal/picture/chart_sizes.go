package picture

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/draw"
)

// SizesLook is how a chart of several sizes is drawn.
type SizesLook struct {
	Look
	Letter float64  // size of its letters in mm
	Names  []string // of all sizes
}

// sizesChart is a chart of several sizes as it is laid out.
type sizesChart struct {
	*draw.Scene
	c     *chart.Sizes
	l     SizesLook
	at    Geometry
	says  []saying // beside rows at the left
	left  float64  // room for what is said at the left
	right float64  // room for the numbers of rounds
}

// SizesChart draws a chart of several sizes for paper. Each size has a line round what of it
// is its own. Rounds that change the count have their numbers on a grey tab, with the sizes
// that change it, if not all do; where sizes begin and end is said at the left, and above a
// box how often each of them works it.
func SizesChart(c *chart.Sizes, l SizesLook) *draw.Scene {
	s := &sizesChart{Scene: &draw.Scene{}, c: c, l: l}
	s.says = s.sayings()
	for _, say := range s.says {
		s.left = max(s.left, draw.Measure(say.text, l.Letter, draw.Semibold)+1.9*l.Letter)
	}
	for y := range c.Rows {
		only := 0.0
		if text := s.only(y); text != "" {
			only = draw.Measure(text, l.Letter, draw.Regular) + 0.5*l.Letter
		}
		s.right = max(s.right, only+s.numberWide()+0.9*l.Letter)
	}
	if c.Grid.BothWays() {
		s.left += s.numberWide() + 0.9*l.Letter
	}
	above := 0.4 * l.Letter
	if c.Folded {
		above = 1.9 * l.Letter
	}
	s.at = Geometry{Left: s.left, CellWidth: l.Cell, CellHeight: l.Cell * l.Gauge.Stitches / l.Gauge.Rounds}
	s.at.Bottom = above + float64(len(c.Rows))*s.at.CellHeight
	if at := s.said(); len(at) > 0 { // those that end together at the top need room above it
		s.at.Bottom += max(0, 0.6*l.Letter-slices.Min(at))
	}
	s.Width = max(s.at.x(c.Grid.Width)+s.right, s.foldsReach())
	s.Height = s.at.Bottom + 1.5*l.Letter
	for _, y := range s.said() {
		s.Height = max(s.Height, y+0.6*l.Letter)
	}
	s.Label = s.label()
	s.tabs()
	drawColours(s.Scene, c.Grid, s.at, l.Look)
	drawGapCells(s.Scene, c.Grid, s.at)
	s.grid()
	drawSymbols(s.Scene, c.Grid, s.at, l.Look)
	s.outlines()
	s.boxes()
	s.numbers()
	s.beside()
	s.under()
	return s.Scene
}

func (s *sizesChart) numberWide() float64 {
	return draw.Measure(strconv.Itoa(len(s.c.Rows)), s.l.Letter, draw.Semibold)
}

// label says in words what the chart shows.
func (s *sizesChart) label() string {
	what := s.c.Part.Words()
	return fmt.Sprintf("Chart of the %s, sizes %s, %d %ss, %s", what, strings.Join(s.names(s.c.Of), ", "), len(s.c.Rows), s.c.Grid.Noun(), Reading(s.c.Grid))
}

func (s *sizesChart) names(of []int) []string {
	list := make([]string, len(of))
	for i, k := range of {
		list[i] = s.l.Names[k]
	}
	return list
}

// tabs draws the grey behind the numbers of the rounds that change the count.
func (s *sizesChart) tabs() {
	var tab draw.Pen
	for y := range s.c.Rows {
		if !s.c.Rows[y].Changes() {
			continue
		}
		_, high, ok := shownRange(s.c.Grid.Rows[y])
		if !ok {
			continue
		}
		x := s.at.x(high+1) + 0.35*s.l.Letter
		tab.Rect(x, s.at.y(y+1), s.at.x(s.c.Grid.Width)+s.right-x, s.at.CellHeight)
	}
	s.Path(tab.String(), draw.Style{Fill: bandColour})
}

// grid draws the lines between the stitches, heavier above every fifth round.
func (s *sizesChart) grid() {
	var fine, fifth draw.Pen
	for y, row := range s.c.Grid.Rows {
		low, high, ok := shownRange(row)
		if !ok {
			continue
		}
		for x := low; x <= high+1; x++ {
			fine.Move(s.at.x(x), s.at.y(y)).Line(s.at.x(x), s.at.y(y+1))
		}
		for _, level := range []int{y, y + 1} {
			fine.Move(s.at.x(low), s.at.y(level)).Line(s.at.x(high+1), s.at.y(level))
		}
		if (y+1)%5 == 0 {
			fifth.Move(s.at.x(low), s.at.y(y+1)).Line(s.at.x(high+1), s.at.y(y+1))
		}
	}
	s.Path(fine.String(), draw.Style{Stroke: fineColour, Width: fineLine})
	drawFurrows(s.Scene, s.c.Grid, s.at, fineLine)
	s.Path(fifth.String(), draw.Style{Stroke: outlineColour, Width: fifthWidth})
}

// outline returns the line round a size's stitches.
func (s *sizesChart) outline(i int) string {
	var p, back []([2]float64)
	for y, r := range s.c.Rows {
		if !r.Has(i) {
			continue
		}
		left, right := s.at.x(r.Spans[i][0]-s.c.Low), s.at.x(r.Spans[i][1]-s.c.Low+1)
		p = append(p, [2]float64{right, s.at.y(y)}, [2]float64{right, s.at.y(y + 1)})
		back = append(back, [2]float64{left, s.at.y(y)}, [2]float64{left, s.at.y(y + 1)})
	}
	slices.Reverse(back)
	var pen draw.Pen
	for k, at := range append(p, back...) {
		if k == 0 {
			pen.Move(at[0], at[1])
		} else {
			pen.Line(at[0], at[1])
		}
	}
	return pen.Close().String()
}

// sizeEdge is the width in mm of the line round a size's stitches.
const sizeEdge = 0.55

// outlines draws the line of each size.
func (s *sizesChart) outlines() {
	seen := map[string]bool{}
	for i := range s.c.Of {
		d := s.outline(i)
		if seen[d] {
			continue
		}
		seen[d] = true
		if IsKnitted(s.c.Grid) {
			s.Path(d, draw.Style{Stroke: edgeColour, Width: 2 * sizeEdge})
		}
		s.Path(d, draw.Style{Stroke: outlineColour, Width: sizeEdge})
	}
}

// boxes draws the edges of what is boxed, and how often each size works it.
func (s *sizesChart) boxes() {
	for _, f := range s.c.Folds {
		left, right := s.at.x(f.From-s.c.Low), s.at.x(f.From+f.Count-s.c.Low)
		top := s.at.y(len(s.c.Rows))
		s.Path(new(draw.Pen).Rect(left, top, right-left, s.at.Bottom-top).String(), draw.Style{Stroke: edgeColour, Width: 2.4 * sizeEdge})
		s.Path(new(draw.Pen).Rect(left, top, right-left, s.at.Bottom-top).String(), draw.Style{Stroke: outlineColour, Width: 1.2 * sizeEdge})
		x, anchor := (left+right)/2, draw.Middle
		if draw.Measure(foldTimes(f), s.l.Letter, draw.Semibold) > right-left { // what is said at the left has its own room
			x, anchor = left, draw.Start
		}
		s.Text(x, top-0.5*s.l.Letter, foldTimes(f), draw.TextStyle{Size: s.l.Letter, Face: draw.Semibold, Anchor: anchor})
	}
}

// foldsReach returns how far to the right what stands above the boxes reaches.
func (s *sizesChart) foldsReach() (most float64) {
	for _, f := range s.c.Folds {
		wide := draw.Measure(foldTimes(f), s.l.Letter, draw.Semibold)
		left := s.at.x(f.From - s.c.Low)
		most = max(most, left+max(wide, float64(f.Count)*s.at.CellWidth))
	}
	return most
}
