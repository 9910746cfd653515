package picture

import (
	"thenar/internal/chart"
	"thenar/internal/draw"
)

// The sizes of a key, in mm.
const (
	keyCell   = 5.0
	keyLetter = 3.8
	keyGap    = 2.0
)

// Key draws the key of a chart in a width in mm: each symbol with abbreviation and
// words, and each yarn with its texture.
func Key(g chart.Grid, by Convention, width float64) *draw.Scene {
	var list []keyLine
	main := g.Palette.Or(chart.ID(0))
	for _, op := range g.Used() {
		list = append(list, keyLine{path: by.symbolIn(g, op), yarn: main, text: by.meaningIn(g, op)})
	}
	if g.NoStitch() {
		list = append(list, keyLine{gap: true, yarn: main, text: "no stitch: go on with the next"})
	}
	for _, y := range g.YarnsUsed() {
		list = append(list, keyLine{yarn: y, text: yarnWords(y)})
	}
	s := &draw.Scene{Width: width, Label: "Key to the symbols"}
	y := 0.5
	for _, line := range list {
		y = line.draw(s, y, width)
	}
	s.Height = y
	return s
}

// keyLine is one line of a key.
type keyLine struct {
	path string
	yarn chart.Yarn
	gap  bool
	text string
}

func yarnWords(y chart.Yarn) string {
	if y.Held == "" {
		return y.Name
	}
	return y.Name + ", held in the " + string(y.Held) + " hand"
}

// draw draws the line at y and returns the y of the next.
func (l keyLine) draw(s *draw.Scene, y, width float64) float64 {
	s.Rect(0.5, y, keyCell, keyCell, yarnStyle(l.yarn))
	if l.gap {
		s.Rect(0.5, y, keyCell, keyCell, draw.Style{Class: "gap", Fill: gapColour})
	}
	if t := Texture(l.yarn.ID, 0.5, y, keyCell, keyCell, keyCell/4); t != "" {
		s.Path(t, textureStyle(l.yarn, 0.15))
	}
	s.Rect(0.5, y, keyCell, keyCell, draw.Style{Class: "border", Stroke: fifthColour, Width: 0.25})
	if path := symbolInCell(l.path, 0.5, y, keyCell, keyCell); path != "" {
		style := draw.Style{Class: "symbol", Stroke: inkColour, Width: 0.4}
		if Dark(l.yarn.Fill) {
			style.Class, style.Stroke = "symbol light", lightColour
		}
		s.Path(path, style)
	}
	x := 0.5 + keyCell + keyGap
	lines := draw.Wrap(l.text, width-x, keyLetter, draw.Regular)
	for i, text := range lines {
		s.Text(x, y+keyCell*0.7+float64(i)*keyLetter*1.3, text, draw.TextStyle{Size: keyLetter})
	}
	return y + max(keyCell+keyGap/2, float64(len(lines))*keyLetter*1.3+keyGap)
}
