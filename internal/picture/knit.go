package picture

import (
	"math"
	"strconv"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/stitch"
)

// How far a knit stitch rises above its row, as a share of the row: behind the stitch
// above, or at an upper edge.
const (
	leafRise = 0.36
	leafEnd  = 0.04
)

// Knitting is the one drawing of stitches that page, paper and the drawn mitt share.
var Knitting = chart.Shapes{Knit: leaves(leafRise), End: leaves(leafEnd), Purl: bumps()}

// leaves returns a knit stitch that rises by a share of a row above its cell: two leaves
// that lean towards each other at the foot (our own drawing, after knitting as it lies).
// Each is at most 0.43 of the stitch wide. The middle of the left one is at 21 % of the
// stitch where it comes out from behind the stitch above, and at 36 % towards its foot.
func leaves(rise float64) string {
	var p draw.Pen
	high := -100 * rise
	for _, side := range []float64{-1, 1} {
		x := func(v float64) float64 { return 50 + side*(50-v) } // v as on the left leaf
		p.Move(x(4), high)
		p.Curve(x(-10), high+46, x(6), 73, x(46), 108)
		p.Curve(x(57), 79, x(54), high+40, x(4), high)
		p.Close()
	}
	return p.String()
}

// bumps returns a purl: the heads of two loops that lie across.
func bumps() string {
	var p draw.Pen
	for _, b := range []struct{ in, foot, high float64 }{{-1, 54, 66}, {5, 102, 62}} {
		p.Move(b.in, b.foot)
		p.Curve(b.in+10, b.foot-b.high, 90-b.in, b.foot-b.high, 100-b.in, b.foot)
		p.Curve(80-b.in, b.foot-22, 20+b.in, b.foot-22, b.in, b.foot)
		p.Close()
	}
	return p.String()
}

// shapeOf returns the shape of an operation's stitch. An upper edge has none above it.
func shapeOf(op stitch.Op, edge bool) string {
	switch {
	case op.Purled():
		return Knitting.Purl
	case edge:
		return Knitting.End
	}
	return Knitting.Knit
}

// IsKnitted reports whether a chart is drawn as knitting: where any of its stitches has a
// colour.
func IsKnitted(g chart.Grid) bool {
	for _, row := range g.Rows {
		for _, c := range row.Cells {
			if c.Shown() && g.Palette.Or(c.Yarn).Fill != "" {
				return true
			}
		}
	}
	return false
}

// stitchIn puts the shape of a stitch into a cell.
func stitchIn(shape string, x, y, w, h float64) string {
	return draw.Map(shape, func(u, v float64) (float64, float64) { return x + u*w/100, y + v*h/100 })
}

// Cloth returns the colour of a yarn's stitches; an undyed one has that of the sheet.
func Cloth(fill string) string {
	if fill == "" {
		return cardColour
	}
	return fill
}

// furrowContrast is the contrast of a yarn with the furrow between its stitches (WCAG
// 2.2); 1.5 would do, and rounding takes some.
const furrowContrast = 1.9

// Furrow returns the tone between the stitches of a yarn: the same hue, darker by
// furrowContrast, or lighter where the yarn is nearly black.
func Furrow(fill string) string {
	l, ok := Luminance(fill)
	if !ok {
		return gridColour
	}
	n, _ := strconv.ParseUint(fill[1:], 16, 32) // Luminance has read it
	parts := [3]float64{linear(n >> 16), linear(n >> 8 & 0xFF), linear(n & 0xFF)}
	low := (l+0.05)/furrowContrast - 0.05
	high := (l+0.05)*furrowContrast - 0.05
	out := "#"
	for _, part := range parts {
		if low > 0 {
			part *= low / l
		} else {
			part += (1 - part) * (high - l) / (1 - l)
		}
		out += hexPair(part)
	}
	return out
}

// hexPair returns a share of linear light as two hexadecimal digits of sRGB.
func hexPair(l float64) string {
	v := 12.92 * l
	if l > 0.0031308 {
		v = 1.055*math.Pow(l, 1/2.4) - 0.055
	}
	n := uint64(math.Round(min(max(v, 0), 1) * 255))
	return strings.ToUpper(strconv.FormatUint(0x100|n, 16)[1:])
}
