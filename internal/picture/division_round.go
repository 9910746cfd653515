package picture

import (
	"fmt"
	"slices"

	"thenar/internal/draw"
	"thenar/internal/stitch"
)

// round is how the hand's round lies on the drawing. Of palm and back it crosses the nearer
// one first, from the side line at the thumb to the little finger: the palm of a right hand,
// the back of a left one.
type round struct {
	on     int // stitches that are knitted on to the little finger
	before int // how many stitches before the side line the round begins; negative: after it
	thumb  int // how many of its first stitches lie over the thumb
}

// find finds how the round lies: what is knitted on to the little finger and is not the other
// fingers' part of the nearer side lies before the side line.
func (d *divided) find(m stitch.Mitt) {
	first := m.Section(d.shares[0].Part)
	if d.on = first.Shift; d.o.Left {
		d.on = first.Across
	}
	d.before = d.on
	for _, one := range d.shares[1:] {
		if d.o.Left {
			d.before -= one.Back
		} else {
			d.before -= one.Palm
		}
	}
	if hand := m.Section(stitch.Hand); hand != nil {
		d.thumb = hand.Rounds[0].LeadOut()
	}
}

// row returns the y of the palm's stitches, or the back's.
func (d *divided) row(palm bool) float64 {
	if palm {
		return d.palm
	}
	return d.back
}

// stitches returns the x of a finger's stitches of the palm or the back, from the little
// finger's side on.
func (d *divided) stitches(i int, palm bool) []float64 {
	from, to := d.reach(i)
	n := d.shares[i].Back
	if palm {
		n = d.shares[i].Palm
	}
	list := make([]float64, n)
	for k := range list {
		list[k] = (from+to)/2 + (float64(k)+0.5-float64(n)/2)*d.pitch
	}
	return list
}

// along returns the x of all stitches of the palm or the back, from the thumb on.
func (d *divided) along(palm bool) (list []float64) {
	for i := range d.shares {
		list = append(list, d.stitches(i, palm)...)
	}
	slices.Reverse(list)
	return list
}

// overThumb reports whether the kth stitch of a finger's palm or back, from the little
// finger's side on, lies over the thumb.
func (d *divided) overThumb(i int, palm bool, k int) bool {
	at := len(d.stitches(i, palm)) - 1 - k // from the side line at the thumb
	for _, one := range d.shares[i+1:] {
		if palm {
			at += one.Palm
		} else {
			at += one.Back
		}
	}
	if palm == d.o.Left { // on the side that is crossed last
		at = -1 - at
	}
	return at >= -d.before && at < d.thumb-d.before
}

// square returns the contour of a stitch over the thumb, as broad as the ring of another.
func (d *divided) square(x, y, radius float64) string {
	r := 0.95 * radius
	return new(draw.Pen).Rect(d.x(x)-r, y-r, 2*r, 2*r).String()
}

// knitOn draws where the hand's round begins, and the way from there to the little finger,
// past as many stitches as are knitted.
func (d *divided) knitOn(last float64) {
	if d.on <= 0 {
		return
	}
	l := d.letter
	style := draw.Style{Class: "division-way", Stroke: chalkColour, Width: l / 9, Round: true}
	_, to := d.reach(0)
	near, far := d.palm+3.1*l, d.back-2.6*l // of the way, beside the side that is crossed first, and the other
	if d.o.Left {
		near, far = far, near
	}
	end, start, outer := to+d.gap/2, last, last+2*l
	switch list := d.along(d.o.Left == (d.before > 0)); {
	case d.before > 0: // round the bend at the thumb
		start = outer
		from := beforeStitch(list, d.before, last)
		d.bar(from, d.row(d.o.Left))
		d.line(style, point{from, far - 0.4*l}, point{from, far + 0.4*l})
		d.line(style, point{from, far}, point{outer, far}, point{outer, near}, point{start, near})
	case d.before < 0:
		start = beforeStitch(list, -d.before, last)
		d.bar(start, d.row(!d.o.Left))
	default:
		d.bar(last+0.6*l, d.row(!d.o.Left))
	}
	d.broken(style, end, start, near, d.say(fmt.Sprintf("knit on %d", d.on)))
	d.line(style, point{end + 0.6*l, near - 0.4*l}, point{end, near}, point{end + 0.6*l, near + 0.4*l})
	if d.before <= 0 {
		d.line(style, point{start, near - 0.4*l}, point{start, near + 0.4*l})
	}
}

// beforeStitch returns the x between the nth stitch and the one after it.
func beforeStitch(list []float64, n int, last float64) float64 {
	switch {
	case n >= len(list):
		return list[len(list)-1]
	case n == 0:
		return last
	}
	return (list[n-1] + list[n]) / 2
}

// bar draws where the round begins, across a row of stitches.
func (d *divided) bar(x, y float64) {
	d.line(draw.Style{Class: "division-begin", Stroke: chalkColour, Width: d.letter / 6, Round: true}, point{x, y - 0.75*d.letter}, point{x, y + 0.75*d.letter})
}

// DivisionWords explains the drawing of a division, with what it has.
func DivisionWords(m stitch.Mitt) string {
	text := "Seen from the fingertips, palm towards you. The numbers in rings are the order of work. The bar is where the round begins."
	if hand := m.Section(stitch.Hand); hand != nil && hand.Rounds[0].LeadOut() > 0 {
		text += " Squares lie over the thumb."
	}
	return text
}
