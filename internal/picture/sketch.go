package picture

import (
	"math"

	"thenar/internal/draw"
)

// sketch draws yarn and needles within a panel, mirrored for knitting from left to right.
type sketch struct {
	s        *draw.Scene
	width    float64 // of the panel
	mirrored bool
	letter   float64 // size of the letters in mm of the panel at least
}

// Measures in mm and tones of yarn and needles. Lines are thick enough for a bad printer.
const (
	yarnWidth   = 2.6
	yarnOutline = 0.4
	needleWidth = 3.4
	pale        = "#FFFFFF"
	steel       = "#D9D9D9"
	dark        = "#6E6E6E" // the strand or stitch that matters
)

func (k *sketch) x(x float64) float64 {
	if k.mirrored {
		return k.width - x
	}
	return x
}

// curve returns a smooth line through points: a Catmull–Rom spline as cubics.
func (k *sketch) curve(points ...point) string { return k.stretch(points, 0, len(points)-1) }

// stretch returns a part of the smooth line through points, from one of them to another.
func (k *sketch) stretch(points []point, from, to int) string {
	var p draw.Pen
	at := func(i int) point {
		q := points[min(max(i, 0), len(points)-1)]
		return point{k.x(q.x), q.y}
	}
	first := at(from)
	p.Move(first.x, first.y)
	for i := from; i < to; i++ {
		a, b, c, d := at(i-1), at(i), at(i+1), at(i+2)
		p.Curve(b.x+(c.x-a.x)/6, b.y+(c.y-a.y)/6, c.x-(d.x-b.x)/6, c.y-(d.y-b.y)/6, c.x, c.y)
	}
	return p.String()
}

// yarn draws a piece of yarn through points. Whatever is drawn later lies over it.
func (k *sketch) yarn(fill string, points ...point) { k.strand(fill, yarnWidth, points...) }

// strand draws yarn of a width in mm.
func (k *sketch) strand(fill string, wide float64, points ...point) {
	k.outlined(fill, wide, k.curve(points...))
}

// outlined draws a path as yarn of a width in mm.
func (k *sketch) outlined(fill string, wide float64, d string) {
	k.s.Path(d, draw.Style{Stroke: outlineColour, Width: wide})
	k.s.Path(d, draw.Style{Stroke: fill, Width: wide - 2*yarnOutline, Round: true})
}

const outlineColour = "#000000"

// needle draws a needle from its shaft to its point.
func (k *sketch) needle(from, to point) {
	dx, dy := to.x-from.x, to.y-from.y
	l := math.Hypot(dx, dy)
	ux, uy := dx/l, dy/l
	nx, ny := -uy*needleWidth/2, ux*needleWidth/2
	neck := point{to.x - 5*ux, to.y - 5*uy}
	var p draw.Pen
	p.Move(k.x(from.x+nx), from.y+ny).Line(k.x(neck.x+nx), neck.y+ny).
		Curve(k.x(neck.x+nx+2*ux), neck.y+ny+2*uy, k.x(to.x+nx*0.3), to.y+ny*0.3, k.x(to.x), to.y).
		Curve(k.x(to.x-nx*0.3), to.y-ny*0.3, k.x(neck.x-nx+2*ux), neck.y-ny+2*uy, k.x(neck.x-nx), neck.y-ny).
		Line(k.x(from.x-nx), from.y-ny).Close()
	k.s.Path(p.String(), draw.Style{Fill: steel, Stroke: outlineColour, Width: 0.35, Round: true})
}

// shaft draws a needle's shaft again, over what lies on it, up to the y at which it goes
// behind something.
func (k *sketch) shaft(from, to point, dive float64) {
	dx, dy := to.x-from.x, to.y-from.y
	l := math.Hypot(dx, dy)
	nx, ny := -dy/l*needleWidth/2, dx/l*needleWidth/2
	at := func(sx, sy float64) point { // where a side of the shaft reaches that y
		share := (dive - from.y - sy) / dy
		return point{from.x + sx + share*dx, dive}
	}
	a, b := at(nx, ny), at(-nx, -ny)
	var fill, one, other draw.Pen
	fill.Move(k.x(from.x+nx), from.y+ny).Line(k.x(a.x), a.y).Line(k.x(b.x), b.y).Line(k.x(from.x-nx), from.y-ny).Close()
	one.Move(k.x(from.x+nx), from.y+ny).Line(k.x(a.x), a.y)
	other.Move(k.x(from.x-nx), from.y-ny).Line(k.x(b.x), b.y)
	k.s.Path(fill.String(), draw.Style{Fill: steel})
	for _, side := range []string{one.String(), other.String()} {
		k.s.Path(side, draw.Style{Stroke: outlineColour, Width: 0.35, Round: true})
	}
}

// arrow draws a line with a head at its last point.
func (k *sketch) arrow(points ...point) {
	k.s.Path(k.curve(points...), draw.Style{Stroke: outlineColour, Width: 0.5, Round: true})
	a, b := points[len(points)-2], points[len(points)-1]
	l := math.Hypot(b.x-a.x, b.y-a.y)
	ux, uy := (b.x-a.x)/l*2.4, (b.y-a.y)/l*2.4
	var p draw.Pen
	p.Move(k.x(b.x), b.y).Line(k.x(b.x-ux-uy*0.5), b.y-uy+ux*0.5).Line(k.x(b.x-ux+uy*0.5), b.y-uy-ux*0.5).Close()
	k.s.Path(p.String(), draw.Style{Fill: outlineColour})
}

// leg draws one half of a loop on a needle at y, from above the needle at x to its foot at
// to. Draw the leg behind the needle first, then the needle, then the other leg.
func (k *sketch) leg(fill string, x, y, foot, to float64) {
	k.yarn(fill, point{x, y - needleWidth/2 - yarnWidth/2 + 0.3}, point{x + 0.62*(to-x), y - needleWidth/2 + 0.2}, point{x + 0.95*(to-x), y + 2.5}, point{to, y + foot*0.6}, point{to, y + foot})
}

// note writes a word centred at a place.
func (k *sketch) note(x, y float64, text string, size float64) {
	k.s.Text(k.x(x), y, text, draw.TextStyle{Size: max(size, k.letter), Anchor: draw.Middle, Face: draw.Semibold, Halo: pale})
}
