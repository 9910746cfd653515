package picture

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/stitch"
)

// contrast returns the contrast of WCAG 2.2: (L₁ + 0.05)/(L₂ + 0.05).
func contrast(t *testing.T, a, b string) float64 {
	t.Helper()
	la, ok := Luminance(a)
	require.True(t, ok, a)
	lb, ok := Luminance(b)
	require.True(t, ok, b)
	return (max(la, lb) + 0.05) / (min(la, lb) + 0.05)
}

// Whatever the colours, the greys of any two used yarns have a contrast of at least 1.5 to 1,
// in the order of their lightness, and symbols on each have 3 to 1 (WCAG 2.2, 1.4.11, for
// graphics).
func TestGreysAreApart(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 1))
	for n := 1; n <= chart.MaxYarns; n++ {
		for range 50 {
			var p chart.Palette
			for i := range n {
				y := chart.Yarn{ID: chart.ID(i), Name: fmt.Sprint(i), Fill: fmt.Sprintf("#%06X", r.IntN(1<<24))}
				if i == 0 && r.IntN(2) == 0 {
					y.Fill = "" // the ground
				}
				p = append(p, y)
			}
			grey := Greys(p, p)
			for i, a := range grey {
				symbol := inkColour
				if Dark(a.Fill) {
					symbol = edgeColour
				}
				assert.GreaterOrEqual(t, contrast(t, a.Fill, symbol), 3.0, "symbols on %s", a.Fill)
				for _, b := range grey[i+1:] {
					assert.GreaterOrEqual(t, contrast(t, a.Fill, b.Fill), 1.5, "%s beside %s", a.Fill, b.Fill)
				}
			}
		}
	}
}

func TestToneHasItsLuminance(t *testing.T) {
	assert.Equal(t, "#FFFFFF", Tone(1))
	assert.Equal(t, "#000000", Tone(0))
	for l := 0.0; l <= 1; l += 0.01 {
		back, ok := Luminance(Tone(l))
		require.True(t, ok)
		assert.InDelta(t, l, back, 0.006)
	}
}

// Any two symbols of a convention, printed in cells of 4 mm at 300 dots an inch, differ by at
// least a twentieth of the cell's dots, or by their own ink if that is less.
func TestSymbolsDifferInInk(t *testing.T) {
	for _, by := range Conventions {
		ink := map[stitch.Op]*image.Gray{}
		for _, op := range stitch.All() {
			if d := by.Symbol(op); d != "" {
				ink[op] = inked(t, d)
			}
		}
		for a, x := range ink {
			for b, y := range ink {
				if a >= b || by.Symbol(a) == by.Symbol(b) {
					continue
				}
				differ, most := 0, 0
				for i := range x.Pix {
					if (x.Pix[i] < 128) != (y.Pix[i] < 128) {
						differ++
					}
					if x.Pix[i] < 128 || y.Pix[i] < 128 {
						most++
					}
				}
				assert.Greater(t, float64(differ), 0.12*float64(most), "%s and %s of %s", a, b, by)
			}
		}
	}
}

func inked(t *testing.T, d string) *image.Gray {
	t.Helper()
	s := &draw.Scene{Width: 4, Height: 4}
	s.Path(symbolInCell(d, 0, 0, 4, 4), draw.Style{Stroke: inkColour, Width: 4.0 / 12})
	var b bytes.Buffer
	require.NoError(t, draw.WritePNG(t.Context(), &b, s))
	img, err := png.Decode(&b)
	require.NoError(t, err)
	g := image.NewGray(img.Bounds())
	for y := range g.Rect.Dy() {
		for x := range g.Rect.Dx() {
			r, _, _, _ := img.At(x, y).RGBA()
			g.Pix[y*g.Stride+x] = uint8(math.Round(float64(r) / 257))
		}
	}
	return g
}
