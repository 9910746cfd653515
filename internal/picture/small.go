package picture

import (
	"fmt"
	"strconv"

	"thenar/internal/draw"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// SmallOptions say how a mitt lies on the shelf.
type SmallOptions struct {
	Left    bool
	Yarn    string // the colour of its cloth; empty: undyed
	Worn    *Worn  // the other colours that it wears; nil: none
	Needles bool   // it is on the needles
	Knitted int    // the number of its rounds that are knitted, in the order worked; on the needles only
}

// smallMargin is the room around a small picture in mm, for half of the outline.
const smallMargin = 2.0

// Small draws the mitt alone, as it lies on a shelf: its size in mm is that of the
// picture, so that mitts can be compared, and its foot is at the lower edge. What is not
// knitted yet of a mitt on the needles is dashed, and the yarn hangs where the knitting
// stopped.
func Small(p *mitt.Plan, o SmallOptions) *draw.Scene {
	if o.Worn != nil {
		return o.Worn.kept(o, func() *draw.Scene { return drawSmall(p, o) })
	}
	return drawSmall(p, o)
}

func drawSmall(p *mitt.Plan, o SmallOptions) *draw.Scene {
	m := newFabric(p, onTable(p))
	const letter = 5.0
	c := fitCanvas(o.Left, letter, smallMargin, smallMargin, func(c *canvas) {
		c.rough = true // a mm is a px
		if o.Needles {
			m.onNeedles(c, o)
			return
		}
		m.lay(c, o.cloth("cloth", 2))
		if m.tint(c, o.Worn, clothTone) {
			m.lay(c, draw.Style{Class: "worn-edge", Stroke: inkColour, Width: 2, Round: true})
		}
		m.ribs(c, o.Yarn)
		m.seams(c)
		m.farEdge(c)
		m.sewn(c)
		m.drawCap(c, m.caps, o.sheer())
	})
	s := c.s
	s.Width, s.Height = c.drawn.right+smallMargin, c.drawn.bottom+smallMargin
	s.Root = []draw.Attr{{Name: "width", Value: px(s.Width)}, {Name: "height", Value: px(s.Height)}}
	s.Label = fmt.Sprintf("%s hand: %s", HandOptions{Left: o.Left}.side(), p.Kind.Words())
	return s
}

// onTable is the hand in a mitt that lies on a table.
func onTable(p *mitt.Plan) *figure {
	f := newFigure(&p.Hand)
	if f.tucked, f.lying = p.Tucked(), true; p.Fingered() {
		f.leans = gloved(p)
	}
	return f
}

func px(mm float64) string { return strconv.FormatFloat(mm, 'f', 1, 64) }

// cloth returns the style of cloth with an outline of a width. A class gives undyed cloth
// the colour of the page.
func (o SmallOptions) cloth(class string, width float64) draw.Style {
	s := draw.Style{Class: class, Fill: cardColour, Stroke: inkColour, Width: width, Round: true}
	if o.Yarn != "" {
		s.Class, s.Fill = "dyed", o.Yarn
	}
	return s
}

// sheer is the cloth of a cap, which has no outline of its own.
func (o SmallOptions) sheer() draw.Style {
	s := o.cloth("cloth-in", 0)
	s.Stroke = ""
	return s
}

// onNeedles draws a mitt as far as it is knitted, the needle through its last round, and
// the yarn.
func (m *fabric) onNeedles(c *canvas, o SmallOptions) {
	m.lay(c, draw.Style{Class: "to-come", Stroke: fifthColour, Width: 1, Dash: "4 3"})
	if len(m.caps) > 0 {
		m.capOutline(c, m.caps).path(draw.Style{Class: "to-come", Stroke: fifthColour, Width: 1, Dash: "4 3"})
	}
	done := m.upTo(o.Knitted)
	edges, cloth := c.pen(), c.pen()
	for i := range done.tubes {
		t := &done.tubes[i]
		t.draw(edges, done)
		t.draw(cloth, done)
	}
	// The outlines first, then the cloth over their inner halves: one piece.
	edges.path(draw.Style{Class: "cloth-edge", Stroke: inkColour, Width: 3.2, Round: true})
	cloth.path(o.sheer())
	done.tint(c, o.Worn, clothTone)
	done.ribs(c, o.Yarn)
	m.hold(c, done)
	m.drawCap(c, done.caps, o.sheer())
	stop := done.stop()
	way := unit(stop.out.plus(stop.left.times(-1)))
	m.tail(c, stop.out, o)
	needle := func() *pen { return c.pen().move(stop.left.plus(way.times(-9))).line(stop.out.plus(way.times(9))) }
	needle().path(draw.Style{Class: "cloth-edge", Stroke: inkColour, Width: 4, Round: true})
	needle().path(draw.Style{Class: "needle", Stroke: cardColour, Width: 2, Round: true})
}

// draw draws a tube as a closed shape.
func (t *tube) draw(p *pen, m *fabric) {
	first, last := t.edges[0], t.last()
	p.move(first.left)
	for _, e := range t.edges[1:] {
		p.line(e.left)
	}
	if t.above == 0 && t.closed {
		m.drawEnd(p, t)
	} else {
		p.line(last.in, last.out)
	}
	for i := t.rounds(); i >= 0; i-- {
		p.line(t.edges[i].out)
	}
	if t.over == stitch.OverWrist {
		p.bow(first.out, first.left, nearEdge)
	} else {
		p.line(first.in)
	}
	p.Close()
}

// upTo returns the mitt with its first so many rounds, at least the cast-on.
func (m *fabric) upTo(knitted int) *fabric {
	if m.down() {
		return m.downTo(knitted)
	}
	done := &fabric{p: m.p, stopped: true}
	for i, t := range m.inOrder() {
		rounds := min(knitted, t.rounds())
		if i > 0 && rounds <= 0 {
			break
		}
		rounds = max(rounds, 0)
		knitted -= t.rounds()
		t.ribbed = max(t.ribbed-(t.rounds()-rounds), 0)
		t.above = t.rounds() - rounds
		t.edges = t.edges[:rounds+1]
		done.tubes = append(done.tubes, t)
	}
	done.caps = m.capTo(knitted)
	done.upwards()
	return done
}

// tail lets the yarn hang from a point, at most down to the cast-on.
func (m *fabric) tail(c *canvas, from point, o SmallOptions) {
	const longest = 56.0
	down := min(longest, from.y-m.foot().y) / longest
	at := func(x, y float64) point { return from.plus(point{x, y * down}) }
	yarn := func() *pen {
		return c.pen().move(from).curve(at(16, 2), at(6, -18), at(14, -30)).curve(at(20, -40), at(10, -46), at(18, -56))
	}
	yarn().path(draw.Style{Class: "cloth-edge", Stroke: inkColour, Width: 3.6, Round: true})
	style := draw.Style{Class: "tail", Stroke: cardColour, Width: 2.2, Round: true}
	if o.Yarn != "" {
		style.Class, style.Stroke = "", o.Yarn
	}
	yarn().path(style)
}
