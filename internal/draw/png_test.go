package draw

import (
	"bytes"
	"context"
	"image"
	"image/color"
	"image/png"
	"io"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func picture(t *testing.T, s *Scene) image.Image {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, WritePNG(t.Context(), &b, s))
	img, err := png.Decode(&b)
	require.NoError(t, err)
	return img
}

func near(t *testing.T, want color.RGBA, got color.Color, msg string) {
	t.Helper()
	r, g, b, _ := got.RGBA()
	for i, pair := range [][2]uint32{{uint32(want.R), r >> 8}, {uint32(want.G), g >> 8}, {uint32(want.B), b >> 8}} {
		assert.InDelta(t, pair[0], pair[1], 3, "%s, channel %d", msg, i)
	}
}

// 25.4 mm are 300 dots; a square, a line and a moved square stand where the
// scene says, to the dot.
func TestPNG(t *testing.T) {
	s := &Scene{Width: 25.4, Height: 12.7}
	s.Rect(2, 2, 4, 4, Style{Fill: "#FF0000"})
	s.Line(0, 10, 25.4, 10, Style{Stroke: "#0000FF", Width: 1})
	sub := &Scene{Width: 4, Height: 4}
	sub.Rect(0, 0, 4, 4, Style{Fill: "#00FF00"})
	s.Add(sub, 20, 2, 0.5)
	s.Text(12, 6, "HHH", TextStyle{Size: 4, Halo: "#FFFF00"})
	img := picture(t, s)
	assert.Equal(t, image.Rect(0, 0, 300, 150), img.Bounds())
	at := func(x, y float64) color.Color { return img.At(int(x*dotsPerMM), int(y*dotsPerMM)) }
	near(t, color.RGBA{255, 0, 0, 255}, at(2.1, 2.1), "inside the square")
	near(t, color.RGBA{255, 255, 255, 255}, at(1.8, 4), "left of it")
	near(t, color.RGBA{0, 0, 255, 255}, at(24, 10.3), "the line is 1 mm wide")
	near(t, color.RGBA{255, 255, 255, 255}, at(24, 10.7), "and no wider")
	near(t, color.RGBA{0, 255, 0, 255}, at(21.8, 3.8), "half as large, moved")
	near(t, color.RGBA{255, 255, 255, 255}, at(22.3, 3), "beyond it")
	dark := 0
	for x := 12.0; x < 20; x += 0.1 {
		if r, g, _, _ := at(x, 5).RGBA(); r>>8 < 80 && g>>8 < 80 {
			dark++
		}
	}
	assert.Greater(t, dark, 10, "letters are written")
}

// A very large chart stays a picture that programs open.
func TestPNGIsBounded(t *testing.T) {
	img := picture(t, &Scene{Width: 3000, Height: 100})
	assert.Equal(t, maxDots, img.Bounds().Dx())
	img = picture(t, &Scene{Width: 900, Height: 800})
	assert.InDelta(t, maxInAll, img.Bounds().Dx()*img.Bounds().Dy(), 20_000)
	gone, cancel := context.WithCancel(t.Context())
	cancel()
	s := &Scene{Width: 10, Height: 10}
	s.Line(0, 0, 9, 9, Style{Stroke: "#000000", Width: 1})
	assert.ErrorIs(t, WritePNG(gone, io.Discard, s), context.Canceled)
}
