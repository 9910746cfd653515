package woff2

import (
	"errors"
	"math"
)

// Bits of the flags of a point of a simple glyph (OpenType, "glyf").
const (
	onCurve  = 0x01
	xShort   = 0x02
	yShort   = 0x04
	repeated = 0x08
	xSame    = 0x10 // the same x as before, or a short one to the right
	ySame    = 0x20
	overlaps = 0x40 // in the first flag: the contours may overlap
)

// Bits of the flags of a part of a composite glyph (OpenType, "glyf").
const (
	wordArguments = 0x0001
	oneScale      = 0x0008
	moreParts     = 0x0020
	twoScales     = 0x0040
	matrix        = 0x0080
	hasProgram    = 0x0100
)

// point is a point of a contour, by its distance from the point before it.
type point struct {
	dx, dy int
	on     bool // on the curve
}

// glyph is one outline: contours or parts, or nothing.
type glyph struct {
	box      [4]int16 // xMin, yMin, xMax, yMax; zero without an outline
	contours [][]point
	overlap  bool
	parts    []byte // a composite glyph's, as they are in the font
	program  []byte // its instructions
	hinted   bool   // whether a composite glyph says that it has a program
}

// composite reports whether the glyph is put together from others.
func (g glyph) composite() bool { return len(g.parts) > 0 }

// readGlyph reads a glyph of the table glyf.
func readGlyph(data []byte) (glyph, error) {
	if len(data) == 0 {
		return glyph{}, nil
	}
	r := reader{data: data}
	count := r.i16()
	g := glyph{box: [4]int16{r.i16(), r.i16(), r.i16(), r.i16()}}
	switch {
	case count > 0:
		g.readContours(&r, int(count))
	case count < 0:
		g.readParts(&r)
	default:
		return glyph{}, errors.New("an outline of no contours should take no bytes")
	}
	return g, r.err("its outline")
}

// readContours reads the rest of a simple glyph.
func (g *glyph) readContours(r *reader, count int) {
	g.contours = make([][]point, count)
	end := 0 // the point after the last
	for i := range g.contours {
		next := int(r.u16()) + 1
		if next < end || next > math.MaxUint16 {
			r.short = true
			return
		}
		g.contours[i] = make([]point, next-end)
		end = next
	}
	g.program = r.bytes(int(r.u16()))
	flags := readFlags(r, end)
	g.overlap = len(flags) > 0 && flags[0]&overlaps != 0
	dx, dy := readSteps(r, flags, xShort, xSame), readSteps(r, flags, yShort, ySame)
	at := 0
	for _, c := range g.contours {
		for i := range c {
			c[i] = point{dx[at], dy[at], flags[at]&onCurve != 0}
			at++
		}
	}
}

// readFlags reads the flags of so many points.
func readFlags(r *reader, count int) []byte {
	flags := make([]byte, 0, count)
	for len(flags) < count {
		flag, times := r.u8(), 1
		if flag&repeated != 0 {
			times += int(r.u8())
		}
		for ; times > 0 && len(flags) < count; times-- {
			flags = append(flags, flag)
		}
	}
	return flags
}

// readSteps reads one coordinate of all points, each from the point before it.
func readSteps(r *reader, flags []byte, short, same byte) []int {
	steps := make([]int, len(flags))
	for i, flag := range flags {
		switch {
		case flag&short != 0 && flag&same != 0:
			steps[i] = int(r.u8())
		case flag&short != 0:
			steps[i] = -int(r.u8())
		case flag&same == 0:
			steps[i] = int(r.i16())
		}
	}
	return steps
}

// readParts reads the rest of a composite glyph.
func (g *glyph) readParts(r *reader) {
	whole := r.data
	for more := true; more; {
		flags := r.u16()
		size := 4 // the part's number, and two bytes for its place
		if flags&wordArguments != 0 {
			size += 2
		}
		switch {
		case flags&oneScale != 0:
			size += 2
		case flags&twoScales != 0:
			size += 4
		case flags&matrix != 0:
			size += 8
		}
		r.bytes(size)
		g.hinted = g.hinted || flags&hasProgram != 0
		more = flags&moreParts != 0
	}
	g.parts = whole[:len(whole)-len(r.data)]
	if g.hinted {
		g.program = r.bytes(int(r.u16()))
	}
}

// bounds returns the box around the points of a simple glyph.
func (g glyph) bounds() [4]int16 {
	x, y := 0, 0
	box := [4]int{math.MaxInt, math.MaxInt, math.MinInt, math.MinInt}
	for _, c := range g.contours {
		for _, p := range c {
			x, y = x+p.dx, y+p.dy
			box = [4]int{min(box[0], x), min(box[1], y), max(box[2], x), max(box[3], y)}
		}
	}
	return [4]int16{int16(box[0]), int16(box[1]), int16(box[2]), int16(box[3])}
}
