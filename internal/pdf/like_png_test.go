package pdf

import (
	"bytes"
	"image/color"
	"image/png"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
)

// drawing has lines of every kind: bent, closed, folded back, dashed, dotted,
// thinner than a dot; shapes with a hole, with an edge under them, and in groups.
func drawing() *draw.Scene {
	wide := draw.Style{Stroke: "#23272E", Width: 1.5, Round: true}
	sub := &draw.Scene{}
	sub.Path(new(draw.Pen).Move(2, 2).Curve(2, 30, 30, -10, 30, 18).Line(6, 20).String(), wide)
	sub.Path(new(draw.Pen).Rect(36, 4, 14, 14).String(), draw.Style{Fill: "#C8B08A", Stroke: "#2A5CA8", Width: 2, Round: true})
	sub.Path(new(draw.Pen).Move(2, 28).Line(40, 28).Line(4, 31).Line(40, 34).String(), wide)
	sub.Path(new(draw.Pen).Move(48, 24).Curve(70, 24, 70, 44, 48, 44).Curve(26, 44, 60, 34, 48, 24).Close().String(), draw.Style{Stroke: "#2A5CA8", Width: 0.8, Dash: "2.5 1.5"})
	sub.Path(new(draw.Pen).Move(2, 40).Line(40, 44).String(), draw.Style{Stroke: "#23272E", Width: 1.2, Dash: "0 2.4", Round: true})
	hole := new(draw.Pen).Move(2, 48).Line(24, 48).Line(24, 60).Line(2, 60).Close().Move(7, 51).Line(7, 57).Line(19, 57).Line(19, 51).Close()
	sub.Path(hole.String(), draw.Style{Fill: "#7A3E2B"})
	star := new(draw.Pen).Move(40, 47).Line(44, 59).Line(33, 51).Line(47, 51).Line(36, 59).Close()
	sub.Path(star.String(), draw.Style{Fill: "#7A3E2B"})
	sub.Path(new(draw.Pen).Rect(54, 46, 8, 12).String(), draw.Style{Fill: "#2B4A78", Stroke: "#FFD27F", Width: 4, Under: true})
	s := &draw.Scene{Width: 80, Height: 80}
	s.Add(sub, 3, 5, 1.1)
	return s
}

// A picture of dots is the page as an independent program (poppler) draws it
// at as many dots. Where an edge lies, the two may weigh a dot otherwise.
func TestDotsAreThePage(t *testing.T) {
	want := picture(t, made(t, drawing()))
	var b bytes.Buffer
	require.NoError(t, draw.WritePNG(t.Context(), &b, drawing()))
	got, err := png.Decode(&b)
	require.NoError(t, err)
	require.Equal(t, want.Bounds(), got.Bounds())
	inked, off, far := 0, 0.0, 0
	for y := range want.Bounds().Dy() {
		for x := range want.Bounds().Dx() {
			if isWhite(want.At(x, y)) && isWhite(got.At(x, y)) {
				continue
			}
			d := apart(want.At(x, y), got.At(x, y))
			inked, off = inked+1, off+d
			if d > 128 {
				far++
			}
		}
	}
	assert.Less(t, off/float64(inked), 2.0, "of 255, in the mean of %d dots", inked)
	assert.Less(t, float64(far)/float64(inked), 0.001)
}

func isWhite(c color.Color) bool {
	r, g, b, _ := c.RGBA()
	return r&g&b == 0xFFFF
}

// apart is how far the most different channel of two colours is apart, of 255.
func apart(a, b color.Color) float64 {
	r1, g1, b1, _ := a.RGBA()
	r2, g2, b2, _ := b.RGBA()
	return max(math.Abs(float64(r1)-float64(r2)), math.Abs(float64(g1)-float64(g2)), math.Abs(float64(b1)-float64(b2))) / 257
}
