package woff2

import "encoding/binary"

// streams are the parts of the glyf table as it is packed: like beside like
// (section 5.1).
type streams struct {
	contours []byte // number of contours of each glyph, -1 for a composite one
	points   []byte // number of points of each contour
	flags    []byte // how each point's step is written
	steps    []byte // the steps, and the lengths of programs
	parts    []byte // what composite glyphs are put together from
	hasBox   []byte // one bit a glyph: whether its box is written
	boxes    []byte
	programs []byte
	overlap  []byte // one bit a glyph: whether its contours may overlap
}

// overlapBitmap is the option that the bits of overlap follow (section 5.1).
const overlapBitmap = 1

// glyf returns the outlines as they are packed (section 5.1).
func (f outlines) glyf() []byte {
	n := len(f.glyphs)
	s := streams{hasBox: make([]byte, 4*((n+31)/32)), overlap: make([]byte, (n+7)/8)}
	var option, format uint16
	for i, g := range f.glyphs {
		s.add(i, g)
		if g.overlap {
			option = overlapBitmap
		}
	}
	if f.long {
		format = 1
	}
	var b []byte
	for _, n := range []uint16{0, option, uint16(n), format} {
		b = binary.BigEndian.AppendUint16(b, n)
	}
	boxes := append(s.hasBox, s.boxes...)
	all := [][]byte{s.contours, s.points, s.flags, s.steps, s.parts, boxes, s.programs}
	for _, stream := range all {
		b = binary.BigEndian.AppendUint32(b, uint32(len(stream)))
	}
	for _, stream := range all {
		b = append(b, stream...)
	}
	if option == overlapBitmap {
		b = append(b, s.overlap...)
	}
	return b
}

// add appends a glyph, the i-th, to the streams (section 5.1).
func (s *streams) add(i int, g glyph) {
	count := int16(len(g.contours))
	if g.composite() {
		count = -1
	}
	s.contours = binary.BigEndian.AppendUint16(s.contours, uint16(count))
	if g.overlap {
		s.overlap[i/8] |= 0x80 >> (i % 8)
	}
	s.parts = append(s.parts, g.parts...)
	for _, c := range g.contours {
		s.points = append255(s.points, uint16(len(c)))
		for _, p := range c {
			s.addPoint(p)
		}
	}
	if len(g.contours) > 0 || g.hinted {
		s.steps = append255(s.steps, uint16(len(g.program)))
		s.programs = append(s.programs, g.program...)
	}
	if g.composite() || len(g.contours) > 0 && g.box != g.bounds() {
		s.hasBox[i/8] |= 0x80 >> (i % 8)
		for _, n := range g.box {
			s.boxes = binary.BigEndian.AppendUint16(s.boxes, uint16(n))
		}
	}
}

// addPoint appends a point's step from the point before it in the smallest of
// the ways of section 5.2, "Decoding of variable-length X and Y coordinates".
func (s *streams) addPoint(p point) {
	x, y := max(p.dx, -p.dx), max(p.dy, -p.dy)
	signs := positive(p.dx) + 2*positive(p.dy)
	var way int
	switch {
	case x == 0 && y < 1280: // upright: eight bits, from one of five bases
		way = y>>8<<1 + positive(p.dy)
		s.steps = append(s.steps, byte(y))
	case y == 0 && x < 1280: // level
		way = 10 + x>>8<<1 + positive(p.dx)
		s.steps = append(s.steps, byte(x))
	case x <= 64 && y <= 64: // four bits each, from one of four bases
		x, y = x-1, y-1
		way = 20 + x>>4<<4 + y>>4<<2 + signs
		s.steps = append(s.steps, byte(x&15<<4|y&15))
	case x <= 768 && y <= 768: // eight bits each, from one of three bases
		x, y = x-1, y-1
		way = 84 + 12*(x>>8) + y>>8<<2 + signs
		s.steps = append(s.steps, byte(x), byte(y))
	case x < 4096 && y < 4096: // twelve bits each
		way = 120 + signs
		s.steps = append(s.steps, byte(x>>4), byte(x&15<<4|y>>8), byte(y))
	default: // sixteen bits each
		way = 124 + signs
		s.steps = append(s.steps, byte(x>>8), byte(x), byte(y>>8), byte(y))
	}
	if !p.on {
		way |= 0x80
	}
	s.flags = append(s.flags, byte(way))
}

// positive returns the bit of a sign: 0 if n is below zero, else 1.
func positive(n int) int {
	if n < 0 {
		return 0
	}
	return 1
}
