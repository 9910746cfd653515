package pdf

import (
	"bytes"
	"compress/zlib"
	"image"
	"io"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
)

// unpacked returns the decompressed content of a file's pages.
func unpacked(t testing.TB, raw []byte) string {
	t.Helper()
	var out bytes.Buffer
	for {
		_, rest, ok := bytes.Cut(raw, []byte("stream\n"))
		if !ok {
			return out.String()
		}
		packed, after, _ := bytes.Cut(rest, []byte("\nendstream"))
		raw = after
		if r, err := zlib.NewReader(bytes.NewReader(packed)); err == nil {
			plain, err := io.ReadAll(r)
			require.NoError(t, err)
			if bytes.Contains(plain, []byte(" J\n")) {
				out.Write(plain)
			}
		}
	}
}

// isPaper reports whether the dot at a place in mm is white.
func isPaper(img image.Image, x, y float64) bool {
	r, g, b, _ := img.At(px(x), px(y)).RGBA()
	return r&g&b == 0xFFFF
}

// A window of other proportions than the page is centred and as large as fits;
// what lies beside it shows as far as there is room. This is SVG's default
// preserveAspectRatio, xMidYMid meet.
func TestWindowIsCentred(t *testing.T) {
	page := &draw.Scene{Width: 100, Height: 60, Window: &draw.Box{X: 10, Y: 10, Width: 20, Height: 20}}
	page.Rect(10, 10, 20, 20, draw.Style{Fill: "#000000"})
	page.Rect(2, 10, 4, 4, draw.Style{Fill: "#000000"})
	img := picture(t, made(t, page))
	at := lines(img, px(55), true)
	require.Len(t, at, 1)
	assert.InDelta(t, 50, at[0], 0.1, "in the middle")
	assert.True(t, isPaper(img, 19.7, 55))
	assert.True(t, dark(img, px(20.3), px(0.3)) && dark(img, px(79.7), px(59.7)), "3 times as large")
	assert.True(t, isPaper(img, 80.3, 55))
	assert.True(t, dark(img, px(2), px(6)), "what lies beside it")

	page = &draw.Scene{Width: 30, Height: 90, Window: &draw.Box{Width: 30, Height: 30}}
	page.Rect(0, 0, 30, 30, draw.Style{Fill: "#000000"})
	at = lines(picture(t, made(t, page)), px(15), false)
	require.Len(t, at, 1)
	assert.InDelta(t, 45, at[0], 0.1)
}

// Ends and corners of lines are SVG's defaults, or round. The sharpest corner that
// keeps its point has 2·asin(1/4) = 28.96° (SVG 2, stroke-miterlimit, default 4;
// PDF's default is 10).
func TestEndsAndCornersAreThoseOfSVG(t *testing.T) {
	page := &draw.Scene{Width: 100, Height: 60}
	black := draw.Style{Stroke: "#000000", Width: 4}
	page.Line(10, 10, 30, 10, black)
	page.Path("M 50 40 L 55 20 L 60 40", black) // 28.1°
	page.Path("M 75 40 L 82 20 L 89 40", black) // 38.6°
	round := black
	round.Round = true
	page.Line(10, 50, 30, 50, round)
	page.Path("M 45 56 L 55 56 L 55 50", round)
	img := picture(t, made(t, page))
	assert.False(t, isPaper(img, 29.8, 10))
	assert.True(t, isPaper(img, 30.2, 10), "a blunt end")
	assert.False(t, isPaper(img, 31.8, 50), "a round end")
	assert.True(t, isPaper(img, 31.8, 51.8), "and no square one")
	assert.True(t, isPaper(img, 55, 18), "a sharp corner is cut off")
	assert.False(t, isPaper(img, 82, 16), "another has its point, 6 mm out")
	assert.False(t, isPaper(img, 56.2, 57.2), "a round corner")
	assert.True(t, isPaper(img, 56.8, 57.8), "and no pointed one")
}

// Shapes without fill and line, empty paths and empty groups draw nothing.
func TestInvisibleItemsDrawNothing(t *testing.T) {
	page := &draw.Scene{Width: 50, Height: 50}
	page.Rect(5, 5, 40, 40, draw.Style{})
	page.Rect(5, 5, 40, 40, draw.Style{Stroke: "#000000"})
	page.Rect(5, 5, 40, 40, draw.Style{Width: 3})
	page.Path("", draw.Style{Fill: "#000000", Stroke: "#000000", Width: 1})
	page.Group("g")
	page.End()
	raw := made(t, page)
	assert.Equal(t, made(t, &draw.Scene{Width: 50, Height: 50}), raw)
}

// Scales of nested groups multiply, for places, widths, dashes and letters.
func TestNestedScalesMultiply(t *testing.T) {
	inner := &draw.Scene{}
	inner.Line(0, 0, 20, 0, draw.Style{Stroke: "#000000", Width: 0.5, Dash: "2 1"})
	inner.Text(0, 10, "wide", draw.TextStyle{Size: 2})
	middle := &draw.Scene{}
	middle.Add(inner, 1, 2, 3)
	page := &draw.Scene{Width: 210, Height: 100}
	page.Add(middle, 10, 20, 2) // 10 + 2·1, 20 + 2·2; six times as large
	page.Text(10, 95, "beside", draw.TextStyle{Size: 2})
	raw := made(t, page)
	img := picture(t, raw)
	at := lines(img, px(24), true)
	require.Len(t, at, 7, "dashes of 12 mm, gaps of 6")
	for i, x := range at {
		assert.InDelta(t, 12+6+18*float64(i), x, 0.1)
	}
	across := lines(img, px(13), false)
	assert.InDelta(t, 24, across[0], 0.1)
	assert.True(t, dark(img, px(13), px(25.4)) && isPaper(img, 13, 25.6), "3 mm wide")
	wide := widths(run(t, raw, "pdftotext", "-bbox", "FILE", "-"))
	assert.InEpsilon(t, draw.Measure("wide", 12, draw.Regular), wide["wide"], 0.01)
	assert.InEpsilon(t, draw.Measure("beside", 2, draw.Regular), wide["beside"], 0.01)
}
