// Package picture draws the hand with the mitt on it, the stitch chart, its
// key and the small picture of the shelf, as scenes in millimetres.
package picture

import (
	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/stitch"
)

// Circles of symbols, as four cubics with control points at 0.5523 of the radius. The
// dots are so small that the line fills them.
const (
	dotMiddle = "M 55 50 C 55 52.76 52.76 55 50 55 C 47.24 55 45 52.76 45 50 C 45 47.24 47.24 45 50 45 C 52.76 45 55 47.24 55 50 Z"
	dotRight  = "M 78 74 C 78 76.21 76.21 78 74 78 C 71.79 78 70 76.21 70 74 C 70 71.79 71.79 70 74 70 C 76.21 70 78 71.79 78 74 Z"
	dotLeft   = "M 30 74 C 30 76.21 28.21 78 26 78 C 23.79 78 22 76.21 22 74 C 22 71.79 23.79 70 26 70 C 28.21 70 30 71.79 30 74 Z"
	ring      = "M 80 50 C 80 66.57 66.57 80 50 80 C 33.43 80 20 66.57 20 50 C 20 33.43 33.43 20 50 20 C 66.57 20 80 33.43 80 50 Z"
)

// Convention is a published set of chart symbols.
type Convention string

// The conventions: the common symbols of the trade's standards body, and those of
// JIS L 0201. Both show a stitch as it lies on the right side. All drawings here are
// from memory; none was verified against its standard.
const (
	Trade Convention = "trade"
	JIS   Convention = "jis"
)

// Conventions holds all conventions.
var Conventions = []Convention{Trade, JIS}

// Words returns the convention's name as it is shown.
func (c Convention) Words() string {
	if c == JIS {
		return "JIS L 0201"
	}
	return "the trade’s common symbols"
}

// symbols holds path data in a cell of 100 by 100, of M, L, C and Z only. An empty
// square is knit, a dot purl, a circle a yarn over; a line rises to the right for
// k2tog and to the left for ssk; the centred double decrease is an upright with two
// legs, a twisted knit a crossed loop, a slipped stitch a V. These are the trade's,
// from memory. Symbols that no standard settles (leaning make ones, lifted increases,
// gap strands, held stitches) are our own.
var symbols = map[stitch.Op]string{
	stitch.Knit:     "",
	stitch.NoStitch: "",
	stitch.Marker:   "",
	stitch.Purl:     dotMiddle,
	stitch.YarnOver: ring,
	stitch.K2tog:    "M 20 85 L 80 15",
	stitch.SSK:      "M 80 85 L 20 15",
	stitch.P2tog:    "M 20 85 L 80 15 " + dotRight,
	stitch.SSP:      "M 80 85 L 20 15 " + dotLeft,
	stitch.K3tog:    "M 20 85 L 80 15 M 52 85 L 66 40",
	stitch.SK2P:     "M 80 85 L 20 15 M 48 85 L 34 40",
	stitch.S2KP:     "M 50 12 L 50 85 M 50 35 L 20 85 M 50 35 L 80 85",
	stitch.KnitTBL:  "M 25 85 L 60 45 C 75 28 65 12 50 12 C 35 12 25 28 40 45 L 75 85",
	stitch.PurlTBL:  "M 25 75 L 60 40 C 75 25 65 12 50 12 C 35 12 25 25 40 40 L 75 75 M 20 90 L 80 90",
	stitch.Slip:     "M 20 15 L 50 85 L 80 15",
	// Make one: a post with a foot towards the side to which it leans.
	stitch.M1:  "M 50 15 L 50 85 M 25 85 L 75 85",
	stitch.M1L: "M 65 85 C 65 50 55 30 25 18 M 25 18 L 45 14 M 25 18 L 32 36",
	stitch.M1R: "M 35 85 C 35 50 45 30 75 18 M 75 18 L 55 14 M 75 18 L 68 36",
	// Lifted increase: an upright with a branch to the side that grows.
	stitch.LLI: "M 60 85 L 60 15 M 60 65 L 22 30",
	stitch.RLI: "M 40 85 L 40 15 M 40 65 L 78 30",
	stitch.KFB: "M 50 88 L 50 50 L 22 15 M 50 50 L 78 15",
	// Loops that come and go at an edge.
	stitch.CastOn:   "M 15 75 C 15 20 85 20 85 75",
	stitch.BindOff:  "M 20 50 C 30 25 70 25 80 50 C 70 75 30 75 20 50 Z",
	stitch.DrawUp:   "M 10 50 C 30 25 45 75 60 50 C 70 35 80 40 90 50",
	stitch.Graft:    "M 15 35 L 85 35 M 15 65 L 85 65 M 50 35 L 50 65",
	stitch.JoinHem:  "M 20 45 C 20 88 80 88 80 45 M 50 18 L 50 77",
	stitch.Hold:     "M 15 30 L 15 70 L 85 70 L 85 30",
	stitch.Take:     "M 15 70 L 15 30 L 85 30 L 85 70 M 50 30 L 50 70",
	stitch.PickUp:   "M 15 80 L 85 80 M 50 80 L 50 20 M 32 40 L 50 20 L 68 40",
	stitch.GapK2tog: "M 20 85 L 80 15 M 15 30 C 25 15 40 15 45 30",
	stitch.GapSSK:   "M 80 85 L 20 15 M 55 30 C 60 15 75 15 85 30",
	// A knit stitch over one of waste yarn; a make one with the strand beside it.
	stitch.Waste:    "M 10 68 C 30 50 40 86 60 68 C 72 58 80 60 90 68 M 30 20 L 50 44 L 70 20",
	stitch.CornerM1: "M 55 15 L 55 85 M 32 85 L 78 85 M 15 40 C 18 22 38 22 42 40",
}

// jis holds the symbols in which JIS L 0201:1995 differs, from memory. Its knit stitch
// is an upright stroke, which is left blank here, as in most charts, and explained in
// the key. Purl is a level stroke. The strokes of a decrease lie as its stitches do,
// the upper one unbroken, with a bar underneath if it is purled; a double decrease has
// an upright between them. The twisted make one is the loop of the twisted stitch; the
// stroke for its lean is our own.
var jis = map[stitch.Op]string{
	stitch.Purl:    "M 18 50 L 82 50",
	stitch.K2tog:   "M 75 15 L 15 85 M 52 42 L 85 85",
	stitch.SSK:     "M 25 15 L 85 85 M 48 42 L 15 85",
	stitch.P2tog:   "M 75 12 L 15 76 M 52 37 L 85 76 M 25 92 L 75 92",
	stitch.SSP:     "M 25 12 L 85 76 M 48 37 L 15 76 M 25 92 L 75 92",
	stitch.K3tog:   "M 75 15 L 15 85 M 52 42 L 85 85 M 52 42 L 50 85",
	stitch.SK2P:    "M 25 15 L 85 85 M 48 42 L 15 85 M 48 42 L 50 85",
	stitch.M1:      "M 25 80 L 60 45 C 75 28 65 18 50 18 C 35 18 25 28 40 45 L 75 80 M 50 80 L 50 92",
	stitch.M1L:     "M 25 80 L 60 45 C 75 28 65 18 50 18 C 35 18 25 28 40 45 L 75 80 M 8 40 L 22 20",
	stitch.M1R:     "M 25 80 L 60 45 C 75 28 65 18 50 18 C 35 18 25 28 40 45 L 75 80 M 92 40 L 78 20",
	stitch.CastOn:  "M 30 85 L 30 40 C 30 10 75 10 75 40 C 75 62 48 62 48 45",
	stitch.BindOff: disc,
}

// disc is a filled dot: rings so close that their lines meet.
const disc = "M 68 50 C 68 59.94 59.94 68 50 68 C 40.06 68 32 59.94 32 50 C 32 40.06 40.06 32 50 32 C 59.94 32 68 40.06 68 50 Z " +
	"M 60 50 C 60 55.52 55.52 60 50 60 C 44.48 60 40 55.52 40 50 C 40 44.48 44.48 40 50 40 C 55.52 40 60 44.48 60 50 Z " + dotMiddle

// Symbol returns the path of an operation in a cell of 100 by 100, y downwards; ""
// for an empty cell, such as knit.
func (c Convention) Symbol(op stitch.Op) string {
	if d, ok := jis[op]; ok && c == JIS {
		return d
	}
	return symbols[op]
}

// symbolIn returns the symbol of an operation in a chart; mirrored if the chart is read
// from left to right.
func (c Convention) symbolIn(g chart.Grid, op stitch.Op) string {
	d := c.Symbol(op)
	if !g.FromLeft || d == "" {
		return d
	}
	return mirrored[d]
}

// mirrored maps each symbol to its mirror image, for knitting from left to right.
var mirrored = func() map[string]string {
	all := map[string]string{}
	for _, table := range []map[stitch.Op]string{symbols, jis} {
		for _, d := range table {
			all[d] = flip(d)
		}
	}
	return all
}()

// flip mirrors a symbol: in its cell of 100, x becomes 100 − x.
func flip(d string) string {
	return draw.Map(d, func(x, y float64) (float64, float64) { return 100 - x, y })
}

// meaningIn returns the abbreviation and the words for an operation in the key of a
// chart.
func (c Convention) meaningIn(g chart.Grid, op stitch.Op) (abbr, words string) {
	if g.FromLeft {
		op = op.FromLeft()
	}
	words = op.Words()
	if op == stitch.Knit && c == JIS {
		words += " (an empty square stands for the upright stroke)"
	}
	return op.Abbr(), words
}
