package picture

import (
	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/stitch"
)

// The sizes of a key, in mm.
const (
	keyCell   = 5.0
	keyLetter = 3.8
	keyGap    = 2.0
)

// Key draws the symbols in use, each with its abbreviation and its full
// words, and the yarns with their textures, within a width in mm.
func Key(ops []stitch.Op, yarns []chart.Yarn, width float64) *draw.Scene {
	var list []keyLine
	for _, op := range ops {
		list = append(list, keyLine{op: op, yarn: "a", text: op.Abbr() + ": " + op.Words()})
	}
	for _, y := range yarns {
		list = append(list, keyLine{op: stitch.Knit, yarn: y.ID, text: y.Name})
	}
	s := &draw.Scene{Width: width, Label: "Key to the symbols"}
	y := 0.5
	for _, line := range list {
		y = drawKeyLine(s, line, y, width)
	}
	s.Height = y
	return s
}

// drawKeyLine draws one line at a height and gives the height of the next.
func drawKeyLine(s *draw.Scene, line keyLine, y, width float64) float64 {
	yarn, _ := chart.YarnNamed(line.yarn)
	fill := yarn.Fill
	if fill == "" {
		fill = groundColour
	}
	s.Rect(0.5, y, keyCell, keyCell, draw.Style{Class: "yarn yarn-" + yarn.ID, Fill: fill})
	if t := Texture(yarn.ID, 0.5, y, keyCell, keyCell, keyCell/4); t != "" {
		s.Path(t, draw.Style{Class: "texture", Stroke: inkColour, Width: 0.15})
	}
	s.Rect(0.5, y, keyCell, keyCell, draw.Style{Class: "border", Stroke: lineColour, Width: 0.25})
	if path := placed(Symbol(line.op), 0.5, y, keyCell, keyCell); path != "" {
		s.Path(path, draw.Style{Class: "symbol", Stroke: inkColour, Width: 0.4})
	}
	x := 0.5 + keyCell + keyGap
	lines := draw.Wrap(line.text, (width-x)/wider, keyLetter, false)
	for i, text := range lines {
		s.Text(x, y+keyCell*0.7+float64(i)*keyLetter*1.3, text, draw.TextStyle{Size: keyLetter})
	}
	return y + max(keyCell+keyGap/2, float64(len(lines))*keyLetter*1.3+keyGap)
}

// keyLine is one line of a key.
type keyLine struct {
	op   stitch.Op
	yarn string
	text string
}
