package picture

import (
	"thenar/internal/draw"
)

// point is a place in the hand's own coordinates: mm from the middle of the
// wrist crease, x towards the thumb, y towards the fingers.
type point struct{ x, y float64 }

func (p point) plus(q point) point          { return point{p.x + q.x, p.y + q.y} }
func (p point) times(k float64) point       { return point{p.x * k, p.y * k} }
func (p point) to(q point, k float64) point { return p.plus(q.plus(p.times(-1)).times(k)) }

// area is a rectangle of the page.
type area struct{ left, top, right, bottom float64 }

func (a area) meets(b area) bool {
	return a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom
}

func (a area) with(b area) area {
	return area{min(a.left, b.left), min(a.top, b.top), max(a.right, b.right), max(a.bottom, b.bottom)}
}

// canvas is a page on which a hand is drawn. A left hand is drawn by mirroring the hand's
// coordinates, not the page, so that words stay readable.
type canvas struct {
	s       *draw.Scene
	sign    float64 // 1, or −1 for a left hand
	dx, dy  float64 // place of the hand's origin on the page
	letter  float64 // size of the letters in mm
	even    bool    // no text is smaller than that
	ground  string  // colour under the labels on the hand
	ribbons bool    // a page's script can show a tape as broad as it is
	rough   bool    // it is shown so small that tenths of a mm are enough
	drawn   area    // the area drawn on so far
	texts   []area  // the areas of labels, so that none covers another
}

// fitCanvas paints twice: first to find the area of the drawing, then in its place, with
// margins at the left and above.
func fitCanvas(left bool, letter, marginLeft, marginTop float64, paint func(*canvas)) *canvas {
	c := &canvas{sign: 1, letter: letter}
	if left {
		c.sign = -1
	}
	c.clear()
	paint(c)
	c.dx, c.dy = marginLeft-c.drawn.left, marginTop-c.drawn.top
	c.clear()
	paint(c)
	return c
}

func (c *canvas) clear() {
	const far = 1e6
	c.s, c.texts, c.drawn = &draw.Scene{}, nil, area{far, far, -far, -far}
}

// soft returns the size of the letters of what matters less.
func (c *canvas) soft() float64 {
	if c.even {
		return c.letter
	}
	return 0.9 * c.letter
}

func (c *canvas) x(p point) float64 { return c.dx + c.sign*p.x }
func (c *canvas) y(p point) float64 { return c.dy - p.y }

func (c *canvas) include(p point) (x, y float64) {
	x, y = c.x(p), c.y(p)
	c.drawn = c.drawn.with(area{x, y, x, y})
	return x, y
}

func (c *canvas) pen() *pen {
	p := &pen{c: c}
	if c.rough {
		p.Rough()
	}
	return p
}

// pen writes paths in the hand's coordinates.
type pen struct {
	c *canvas
	draw.Pen
}

func (p *pen) move(at point) *pen {
	p.Move(p.c.include(at))
	return p
}

func (p *pen) line(points ...point) *pen {
	for _, at := range points {
		p.Line(p.c.include(at))
	}
	return p
}

func (p *pen) curve(a, b, to point) *pen {
	ax, ay := p.c.include(a)
	bx, by := p.c.include(b)
	x, y := p.c.include(to)
	p.Curve(ax, ay, bx, by, x, y)
	return p
}

// smooth draws a line through points without a corner. At each point it is parallel to the
// line between the two neighbours, with control points at 0.35 of the way, which makes
// points 45° apart a round arc.
func (p *pen) smooth(points []point) *pen {
	const pull = 0.35
	along := func(i int) point {
		a, b := points[max(i-1, 0)], points[min(i+1, len(points)-1)]
		return unit(b.plus(a.times(-1)))
	}
	p.move(points[0])
	for i := 1; i < len(points); i++ {
		a, b := points[i-1], points[i]
		k := pull * length(b.plus(a.times(-1)))
		p.curve(a.plus(along(i-1).times(k)), b.plus(along(i).times(-k)), b)
	}
	return p
}

// path puts the pen's path on the page.
func (p *pen) path(style draw.Style, attrs ...draw.Attr) {
	p.c.s.PathWith(p.String(), style, attrs...)
}

// label is a text of one or two lines: the name, if there is one, above the value.
type label struct {
	name, value string
	at          point       // of the first base line
	anchor      draw.Anchor // as on a right hand
	slide       point       // step by which to move if another label is in the way
	over        bool        // on the hand, so it needs a halo
}

// put writes a label over whatever is there: a page shows one of those at a time.
func (c *canvas) put(l label) {
	texts := c.texts
	c.texts = nil
	c.place(l)
	c.texts = texts
}

// place writes a label, moved along its slide until it covers no other.
func (c *canvas) place(l label) {
	anchor := l.anchor
	if c.sign < 0 && anchor != draw.Middle {
		anchor = draw.End - anchor
	}
	lines := []string{l.value}
	if l.name != "" {
		lines = []string{l.name, l.value}
	}
	width := 0.0
	for _, t := range lines {
		width = max(width, draw.Measure(t, c.letter, draw.Regular))
	}
	at := l.at
	for tries := 0; c.isCovered(c.labelArea(at, anchor, width, len(lines))) && tries < 40; tries++ {
		at = at.plus(l.slide)
	}
	b := c.labelArea(at, anchor, width, len(lines))
	c.texts = append(c.texts, b)
	c.drawn = c.drawn.with(b)
	for i, t := range lines {
		style := draw.TextStyle{Class: "tape-value", Size: c.letter, Anchor: anchor}
		if i < len(lines)-1 {
			style.Class = "soft"
		}
		if l.over {
			style.Class, style.Halo = "tape-value over", c.ground
		}
		c.s.Text(c.x(at), c.y(at)+float64(i)*leading*c.letter, t, style)
	}
}

// leading is the distance of base lines as a multiple of the size of the letters.
const leading = 1.2

// labelArea returns the area of so many lines whose first base line begins at a point.
func (c *canvas) labelArea(at point, anchor draw.Anchor, width float64, lines int) area {
	x, y := c.x(at), c.y(at)
	switch anchor {
	case draw.Middle:
		x -= width / 2
	case draw.End:
		x -= width
	}
	return area{x, y - 0.9*c.letter, x + width, y + (float64(lines-1)*leading+0.3)*c.letter}
}

func (c *canvas) isCovered(b area) bool {
	for _, t := range c.texts {
		if t.meets(b) {
			return true
		}
	}
	return false
}
