package picture

import (
	"cmp"
	"fmt"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/repeat"
	"thenar/internal/stitch"
)

// The measures of a strip, in mm of the drawing.
const (
	stripStitch = 3.0
	stripRound  = 2.4
	stripLetter = 3.2
	stripMargin = 4.0
)

// MotifStrip draws one height of a motif all along what it is laid across, twice over, so
// that its end meets its beginning in the middle; knitted from the right, as on a chart.
// Below it stand the beginning, the thumb, the side line and the middle of the back.
func MotifStrip(s repeat.Strip, p chart.Palette) *draw.Scene {
	n := s.Stitches
	wide, high := 2*float64(n)*stripStitch, float64(len(s.Rows))*stripRound
	scene := &draw.Scene{Width: wide + 2*stripMargin, Height: high + 4*stripLetter, Label: stripWords(s)}
	x := func(k float64, round int) float64 { // of the left edge of place k
		return stripMargin + wide - (float64(round*n)+k)*stripStitch
	}
	b := block{
		wide: 2 * n, high: len(s.Rows), yarn: p.Or, w: stripStitch, h: stripRound,
		at: func(x, up int) (string, stitch.Op) {
			c := s.Rows[up][n-1-x%n]
			return cmp.Or(c.Yarn, chart.ID(0)), c.Op
		},
	}
	b.draw(scene, stripMargin, 0)
	mark := func(k float64, words string, strong bool) {
		for round := range 2 {
			at := x(k, round)
			style := draw.Style{Class: "strip-mark", Stroke: pencilColour, Width: 0.25}
			if strong {
				style.Width = 0.5
			}
			scene.Line(at, 0, at, high+1, style)
			scene.Text(at, high+1.3*stripLetter, words, draw.TextStyle{Class: "strip-word", Size: stripLetter, Anchor: draw.Middle})
		}
	}
	mark(0, "beginning", true)
	if s.Thumb > 0 {
		mark(float64(s.Thumb)/2, "", false)
		for round := range 2 {
			scene.Text(x(float64(s.Thumb)/2, round), high+2.6*stripLetter, "thumb", draw.TextStyle{Class: "strip-word", Size: stripLetter, Anchor: draw.Middle})
		}
	}
	if s.Side > 0 {
		mark(s.Side, "side", false)
	}
	if s.Back >= 0 {
		mark(s.Back, "back", true)
	}
	if s.Palm >= 0 {
		mark(s.Palm, "palm", false)
	}
	return scene
}

// stripWords says what a strip shows.
func stripWords(s repeat.Strip) string {
	text := fmt.Sprintf("The motif along %d stitches, twice over.", s.Stitches)
	if s.Of > 0 {
		text += fmt.Sprintf(" Moved on by %d, %d of %d pairs are the same on both sides of the middle of the back.", s.Best, s.Same, s.Of)
	}
	return text
}
