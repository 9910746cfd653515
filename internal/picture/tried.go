package picture

import (
	"fmt"
	"math"
	"strconv"

	"thenar/internal/draw"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Pull is a tape laid round the mitt, whose end is drawn out to say how tight a place
// feels. At is the share of the part's rounds below it.
type Pull struct {
	Name string
	Part stitch.Part
	At   float64
}

// Seat is an end of the gusset, which can be moved to where it should sit. At is as for a
// Pull.
type Seat struct {
	Name string
	Part stitch.Part
	At   float64
}

// Measures of the tapes in mm: their breadth, the way from the mitt to the first stop,
// from stop to stop, and how many stops there are.
const (
	pullBreadth = 7.0
	pullFirst   = 14.0
	pullStep    = 14.0
	pullStops   = 5
	seatHandle  = 10.0 // from the thumb to a seat's handle, and on to the page's edge
)

// Tried draws the hand with what is knitted so far, and the rest of the mitt in dashes,
// where a person tries it on. Round it lie tapes.
//
// For a page's script, each tape is a group of class "pull" with its name in data-name,
// the place of its first stop on the page in data-x and data-y, and the way from stop to
// stop in data-step: outward, where it is pulled tighter. The path of class "pull-tail"
// leads from data-from to the end of the tape. Each seat is a group of class "seat", with
// its place in data-y and that of its handle in data-x; in it, the group of class
// "seat-line" is what is moved.
func Tried(p *mitt.Plan, at Progress, pulls []Pull, seats []Seat, o HandOptions) *draw.Scene {
	f := posed(p)
	m := newFabric(p, f)
	letter := letterSize(&p.Hand)
	c := fitCanvas(o.Left, letter, letter, letter, func(c *canvas) {
		c.ground = cardColour
		f.drawHand(c, m.foot().y-0.10*f.long)
		m.drawKnitted(c, at, o.Worn)
		m.drawAhead(c, at, draw.Style{Class: "as-planned", Stroke: bastingColour, Width: c.letter / 8, Dash: draw.Number(c.letter/2) + " " + draw.Number(c.letter/3)})
		for _, one := range pulls {
			m.drawPull(c, one)
		}
		for _, one := range seats {
			m.drawSeat(c, one, o.Worn != nil)
		}
	})
	c.s.Width, c.s.Height = c.drawn.right+letter, c.drawn.bottom+letter
	c.s.Label = fmt.Sprintf("%s hand, palm towards you, with the mitt as far as it is knitted. A tape lies round each place that can be felt.", o.side())
	return c.s
}

// drawPull draws a tape round the mitt, with its end at the middle stop.
func (m *fabric) drawPull(c *canvas, one Pull) {
	t := m.tube(one.Part)
	if t == nil {
		return
	}
	e := t.edges[int(math.Round(one.At*float64(t.rounds())))]
	near, far, way := e.left, e.out, -1.0
	if t.over == stitch.OverDigit && !m.littleSide(t) { // the hand is on the other side
		near, far, way = e.out, e.left, 1
	}
	first := near.plus(point{way * pullFirst, 0})
	number := func(name string, mm float64) draw.Attr {
		return draw.Attr{Name: "data-" + name, Value: strconv.FormatFloat(math.Round(mm*100)/100, 'f', -1, 64)}
	}
	c.s.Group("pull", draw.Attr{Name: "data-name", Value: one.Name}, number("x", c.x(first)), number("y", c.y(first)),
		number("step", c.sign*way*pullStep), number("from", c.x(near)))
	up, down := point{0, pullBreadth / 2}, point{0, -pullBreadth / 2}
	band := c.pen()
	band.move(near.plus(up)).bow(near.plus(up), far.plus(up), way*nearEdge)
	band.line(far.plus(down)).bow(far.plus(down), near.plus(down), -way*nearEdge)
	band.Close()
	band.path(draw.Style{Class: "pull-tape", Fill: cardColour, Stroke: chalkColour, Width: c.letter / 10, Round: true})
	end := first.plus(point{way * pullStep * (pullStops - 1) / 2, 0})
	tail := c.pen()
	tail.move(near.plus(up)).line(end.plus(up), end.plus(down), near.plus(down))
	tail.Close()
	tail.path(draw.Style{Class: "pull-tail", Fill: cardColour, Stroke: chalkColour, Width: c.letter / 10})
	ticks := c.pen()
	for i := range pullStops {
		stop := first.plus(point{way * pullStep * float64(i), -pullBreadth})
		ticks.move(stop).line(stop.plus(down))
	}
	ticks.path(draw.Style{Class: "pull-stops", Stroke: pencilColour, Width: c.letter / 14})
	last := first.plus(point{way * pullStep * (pullStops - 1), 0})
	under := point{0, -pullBreadth/2 - 0.9*pullStep}
	small := draw.TextStyle{Class: "soft", Size: 0.62 * c.letter, Anchor: draw.Middle}
	c.s.Text(c.x(first), c.y(first.plus(under)), "loose", small)
	c.s.Text(c.x(last), c.y(last.plus(under)), "tight", small)
	c.include(last.plus(point{way * pullFirst / 2, 0}))
	c.s.End()
}

// drawSeat draws the height of an end of the gusset across the hand, dashed as planned, and
// over it the line to be moved, whose handle is beyond the thumb. On fabric both have a light
// edge.
func (m *fabric) drawSeat(c *canvas, one Seat, onFabric bool) {
	t := m.tube(one.Part)
	if t == nil {
		return
	}
	e := t.edges[int(math.Round(one.At*float64(t.rounds())))]
	y := e.left.y
	near := point{(e.left.x + e.out.x) / 2, y}
	number := func(name string, mm float64) draw.Attr {
		return draw.Attr{Name: "data-" + name, Value: strconv.FormatFloat(math.Round(mm*100)/100, 'f', -1, 64)}
	}
	x := near.x
	for _, e := range m.thumb().edges {
		x = max(x, e.in.x, e.out.x, e.left.x)
	}
	far := point{x + seatHandle, y}
	c.include(far.plus(point{seatHandle, 0}))
	c.s.Group("seat", draw.Attr{Name: "data-name", Value: one.Name}, number("x", c.x(far)), number("y", c.y(far)))
	line := func(style draw.Style) {
		if onFabric {
			c.pen().move(near).line(far).path(draw.Style{Class: "edge", Stroke: edgeColour, Width: 2 * style.Width})
		}
		c.pen().move(near).line(far).path(style)
	}
	line(draw.Style{Class: "seat-plan", Stroke: bastingColour, Width: c.letter / 10, Dash: draw.Number(c.letter/3) + " " + draw.Number(c.letter/4)})
	c.s.Group("seat-line")
	line(draw.Style{Class: "seat-moved", Stroke: chalkColour, Width: c.letter / 8})
	c.s.End()
	c.s.End()
}

// tube returns the tube of a part, or nil.
func (m *fabric) tube(part stitch.Part) *tube {
	for i := range m.tubes {
		if m.tubes[i].part == part {
			return &m.tubes[i]
		}
	}
	for i := range m.caps {
		if m.caps[i].part == part {
			return &m.caps[i]
		}
	}
	return nil
}
