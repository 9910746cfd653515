package photo

import (
	"context"
	"image"
	"image/color"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/draw"
)

// speckled is a picture in which no two neighbours are alike.
func speckled(width, height int) *image.RGBA {
	im := image.NewRGBA(image.Rect(0, 0, width, height))
	for i := range width * height {
		x, y := i%width, i/width
		im.SetRGBA(x, y, color.RGBA{uint8(x * x), uint8(x*y + y), uint8(3*x + 7*y), 255})
	}
	return im
}

// Strip by strip a picture is scaled as it is whole, but for rounding between
// the rows and the columns; sides that are no multiple of a strip, too.
func TestStripsAreTheWhole(t *testing.T) {
	for _, size := range []image.Point{{301, 203}, {200, 333}, {161, 7}, {100, 101}} {
		from := speckled(size.X, size.Y)
		got, err := fitted(t.Context(), from, 100)
		require.NoError(t, err)
		require.Equal(t, 100, max(got.Rect.Dx(), got.Rect.Dy()))
		want := image.NewRGBA(got.Rect)
		draw.CatmullRom.Scale(want, want.Rect, from, from.Rect, draw.Src, nil)
		assert.Less(t, apart(got, want), 2.0, size)
	}
}

// What is small enough keeps its dots; a very thin picture keeps one.
func TestFittedSides(t *testing.T) {
	same := speckled(100, 60)
	got, err := fitted(t.Context(), same, 100)
	require.NoError(t, err)
	assert.Equal(t, same, got)
	for size, want := range map[image.Point]image.Point{{400, 300}: {100, 75}, {300, 400}: {75, 100}, {2999, 1001}: {100, 33}, {900, 1}: {100, 1}, {1, 900}: {1, 100}} {
		got, err := fitted(t.Context(), image.NewGray(image.Rect(0, 0, size.X, size.Y)), 100)
		require.NoError(t, err)
		assert.Equal(t, want, got.Rect.Size(), size)
	}
	gone, cancel := context.WithCancel(t.Context())
	cancel()
	_, err = fitted(gone, speckled(400, 300), 100)
	assert.ErrorIs(t, err, context.Canceled, "nobody waits for it")
}
