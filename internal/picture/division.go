package picture

import (
	"fmt"
	"strconv"

	"thenar/internal/draw"
	"thenar/internal/stitch"
)

// DivisionOptions says how the division of a hand into fingers is drawn.
type DivisionOptions struct {
	Left          bool                // the left hand
	Width, Letter float64             // of the page and of its letters, in mm
	Say           func(string) string // puts a text into the person's terms; nil: it stays as it is
}

// FingerShare is what a finger takes of the hand, and the bridge that is cast on beside it
// for the next finger.
type FingerShare struct {
	Part                       stitch.Part
	Palm, Back, Cast, Stitches int
	Wait                       int // how many stitches of the hand wait while it is worked
}

// FingerShares returns the shares of a mitt's fingers in the order worked, the little finger
// first; none if its hand is not divided.
func FingerShares(m stitch.Mitt) (list []FingerShare) {
	outer := 0 // picked up along the finger before it
	for i := range m.Sections {
		s := &m.Sections[i]
		if !s.OfFinger() {
			continue
		}
		one := FingerShare{Part: s.Part, Palm: s.About.Digit.Palm, Stitches: s.Rounds[0].Out(), Wait: s.Rounds[0].Held()}
		for _, op := range s.Rounds[0].Ops {
			if op == stitch.CastOn {
				one.Cast++
			}
		}
		one.Back = one.Stitches - one.Palm - one.Cast - outer
		outer = one.Cast
		list = append(list, one)
	}
	return list
}

// Division draws how the hand of a glove is divided into fingers, as it lies before the
// knitter with the palm towards them, seen from the fingertips: every stitch of the palm and
// of the back, whose it is, the bridges cast on between, and below, finger by finger in the
// order worked, what waits on a holder meanwhile. The sections are those of the right hand,
// as a plan has them; nil if they have no fingers. Its height follows from its width.
func Division(m stitch.Mitt, o DivisionOptions) *draw.Scene {
	shares := FingerShares(m)
	if len(shares) == 0 {
		return nil
	}
	d := &divided{s: &draw.Scene{Width: o.Width}, o: o, shares: shares, letter: o.Letter}
	d.find(m)
	d.layOut()
	d.draw()
	d.s.Label = d.label()
	return d.s
}

// divided draws a division. Its x runs from the little finger's side to the thumb's.
type divided struct {
	s      *draw.Scene
	o      DivisionOptions
	shares []FingerShare
	letter float64
	round

	left, pitch float64 // the first stitch's left edge, the breadth of a stitch
	gap         float64 // between two fingers, where a bridge is cast on
	back, palm  float64 // y of the two rows of stitches
}

// Measures of the drawing, as multiples of the letters' size.
const (
	divideEnd   = 3.2 // from the page's edge to the fingers, for the bend of the ring
	divideThumb = 5.2 // the same at the thumb's side, where its name stands
	divideGap   = 1.9 // between two fingers
	divideDeep  = 6.4 // from the row of the back to that of the palm
	divideRow   = 2.1 // from one finger's line of the order to the next
	divideStair = 1.5 // between the drawing and that order
)

func (d *divided) layOut() {
	l := d.letter
	d.left, d.gap = divideEnd*l, divideGap*l
	sum := 0
	for _, one := range d.shares {
		sum += max(one.Palm, one.Back)
	}
	room := d.o.Width - d.left - divideThumb*l - d.gap*float64(len(d.shares)-1)
	d.pitch = min(room/float64(sum), 2.2*l)
	d.left += (room - d.pitch*float64(sum)) / 2
	d.back = 2.2 * l
	d.palm = d.back + divideDeep*l
	if d.o.Left || d.before > 0 {
		d.back += 1.3 * l // the way runs above it
		d.palm += 1.3 * l
	}
}

// x returns the x on the page: a left hand has its thumb at the left.
func (d *divided) x(x float64) float64 {
	if d.o.Left {
		return d.o.Width - x
	}
	return x
}

func (d *divided) say(text string) string {
	if d.o.Say == nil {
		return text
	}
	return d.o.Say(text)
}

// reach returns the left and right edge of a finger.
func (d *divided) reach(i int) (from, to float64) {
	from = d.left
	for k := range i {
		from += float64(max(d.shares[k].Palm, d.shares[k].Back))*d.pitch + d.gap
	}
	return from, from + float64(max(d.shares[i].Palm, d.shares[i].Back))*d.pitch
}

func (d *divided) text(x, y float64, text string, style draw.TextStyle) {
	if style.Size == 0 {
		style.Size = d.letter
	}
	if style.Anchor == draw.Start && d.o.Left {
		style.Anchor = draw.End
	} else if style.Anchor == draw.End && d.o.Left {
		style.Anchor = draw.Start
	}
	d.s.Text(d.x(x), y, text, style)
}

func (d *divided) line(style draw.Style, points ...point) {
	var p draw.Pen
	for i, at := range points {
		if i == 0 {
			p.Move(d.x(at.x), at.y)
		} else {
			p.Line(d.x(at.x), at.y)
		}
	}
	d.s.Path(p.String(), style)
}

func (d *divided) draw() {
	l := d.letter
	d.ring()
	for i, one := range d.shares {
		from, to := d.reach(i)
		d.finger(i)
		middle := (from + to) / 2
		d.text(middle, d.back-1.1*l, strconv.Itoa(one.Back), draw.TextStyle{Anchor: draw.Middle, Face: draw.Semibold})
		d.text(middle, d.palm+1.8*l, strconv.Itoa(one.Palm), draw.TextStyle{Anchor: draw.Middle, Face: draw.Semibold})
		if one.Cast > 0 {
			d.bridge(to+d.gap/2, one.Cast)
		}
	}
	first, _ := d.reach(0)
	_, last := d.reach(len(d.shares) - 1)
	soft := draw.TextStyle{Class: "soft", Anchor: draw.End, Size: d.soft()}
	d.text(first-0.9*l, d.back-1.1*l, "back", soft)
	d.text(first-0.9*l, d.palm+1.8*l, "palm", soft)
	soft.Anchor = draw.Start
	d.text(last+2.5*l, (d.back+d.palm)/2+0.3*l, "thumb", soft)
	d.knitOn(last)
	d.stairs()
}

func (d *divided) soft() float64 { return 0.9 * d.letter }

// ring draws the bends at both ends, where palm and back go over into each other, and the
// line through all stitches.
func (d *divided) ring() {
	first, _ := d.reach(0)
	_, last := d.reach(len(d.shares) - 1)
	deep := (d.palm - d.back) / 2
	var p draw.Pen
	bend := 0.55 * deep
	p.Move(d.x(first), d.back).Line(d.x(last), d.back)
	p.Curve(d.x(last+1.3*bend), d.back, d.x(last+1.3*bend), d.palm, d.x(last), d.palm)
	p.Line(d.x(first), d.palm)
	p.Curve(d.x(first-1.3*bend), d.palm, d.x(first-1.3*bend), d.back, d.x(first), d.back)
	p.Close()
	d.s.Path(p.String(), draw.Style{Class: "division-ring", Stroke: pencilColour, Width: d.letter / 14, Round: true})
}

// finger draws a finger's stitches within a contour, and writes its name and count. Every
// other finger's are filled, so that neighbours differ without colour.
func (d *divided) finger(i int) {
	l, one := d.letter, d.shares[i]
	from, to := d.reach(i)
	high := 0.85 * l
	d.capsule(from, d.back-high, to, d.palm+high, 1.1*l)
	radius := min(0.36*d.pitch, 0.55*l)
	style := draw.Style{Class: "division-stitch", Fill: cardColour, Stroke: inkColour, Width: l / 12}
	if i%2 == 0 {
		style.Class, style.Fill = "division-stitch full", inkColour
	}
	for _, palm := range []bool{false, true} {
		for k, x := range d.stitches(i, palm) {
			if d.overThumb(i, palm, k) {
				over := style
				over.Class += " over-thumb"
				d.s.Path(d.square(x, d.row(palm), radius), over)
				continue
			}
			d.s.Path(ringAt(d.x(x), d.row(palm), radius), style)
		}
	}
	middle, y := (from+to)/2, (d.back+d.palm)/2
	lines := append(draw.Wrap(one.Part.Words(), to-from-0.4*l, d.soft(), draw.Regular), strconv.Itoa(one.Stitches)+" sts")
	y -= (float64(len(lines))*leading - 1.2) / 2 * l
	for k, text := range lines {
		style := draw.TextStyle{Anchor: draw.Middle, Size: d.soft(), Class: "soft"}
		if k == len(lines)-1 {
			style = draw.TextStyle{Anchor: draw.Middle, Size: l, Face: draw.Semibold}
		}
		d.text(middle, y+0.3*l+float64(k)*leading*l, text, style)
	}
}

// capsule draws the round contour of a finger.
func (d *divided) capsule(left, top, right, foot, round float64) {
	round = min(round, (right-left)/2)
	k := 0.45 * round
	var p draw.Pen
	x := d.x
	p.Move(x(left), top+round).Curve(x(left), top+k, x(left+k), top, x(left+round), top)
	p.Line(x(right-round), top).Curve(x(right-k), top, x(right), top+k, x(right), top+round)
	p.Line(x(right), foot-round).Curve(x(right), foot-k, x(right-k), foot, x(right-round), foot)
	p.Line(x(left+round), foot).Curve(x(left+k), foot, x(left), foot-k, x(left), foot-round)
	p.Close()
	d.s.Path(p.String(), draw.Style{Class: "division-finger", Fill: groundColour, Stroke: inkColour, Width: d.letter / 9, Round: true})
}

// bridge draws the stitches that are cast on between palm and back, and their number.
func (d *divided) bridge(x float64, n int) {
	l := d.letter
	room := d.palm - d.back - 2.2*l
	step := min(room/float64(n+1), 0.95*l)
	y := (d.back+d.palm)/2 - step*float64(n-1)/2
	for k := range n {
		d.s.Path(ringAt(d.x(x), y+float64(k)*step, min(0.36*step, 0.3*l)), draw.Style{Class: "division-cast", Fill: cardColour, Stroke: chalkColour, Width: l / 12})
	}
	d.text(x, d.back-1.1*l, "+"+strconv.Itoa(n), draw.TextStyle{Class: "division-bridge", Anchor: draw.Middle, Size: d.soft()})
}

// broken draws a level line from left to right with a text in its middle.
func (d *divided) broken(style draw.Style, left, right, y float64, text string) {
	middle := (left + right) / 2
	half := draw.Measure(text, d.soft(), draw.Regular)/2 + 0.35*d.letter
	d.line(style, point{left, y}, point{middle - half, y})
	d.line(style, point{middle + half, y}, point{right, y})
	d.text(middle, y+0.33*d.letter, text, draw.TextStyle{Anchor: draw.Middle, Size: d.soft()})
}

// stairs draws the order of work: under each finger the number of its turn, and the thread on
// which the stitches beside it wait meanwhile.
func (d *divided) stairs() {
	l := d.letter
	_, last := d.reach(len(d.shares) - 1)
	y := d.palm + (4.4+divideStair)*l
	if d.o.Left && d.before <= 0 { // no way runs below the palm
		y = d.palm + (3.1+divideStair)*l
	}
	for i, one := range d.shares {
		from, to := d.reach(i)
		middle := (from + to) / 2
		d.s.Path(ringAt(d.x(middle), y-0.33*l, 0.75*l), draw.Style{Class: "division-turn", Fill: groundColour, Stroke: inkColour, Width: l / 12})
		d.text(middle, y, strconv.Itoa(i+1), draw.TextStyle{Anchor: draw.Middle, Size: d.soft(), Face: draw.Semibold})
		if one.Wait > 0 {
			next, _ := d.reach(i + 1)
			at := y - 0.33*l
			thread := draw.Style{Class: "holder", Stroke: bastingColour, Width: l / 8, Round: true}
			d.broken(thread, next, last, at, d.say(fmt.Sprintf("%d wait", one.Wait)))
			for _, x := range []float64{next, last} {
				d.s.Path(ringAt(d.x(x), at, l/5), draw.Style{Class: "holder-end", Fill: bastingColour})
			}
		}
		y += divideRow * l
	}
	d.s.Height = y - (divideRow-0.9)*l
}

// label describes the division in words.
func (d *divided) label() string {
	text := "The hand divided into fingers, seen from the fingertips with the palm towards you."
	for i, one := range d.shares {
		text += fmt.Sprintf(" %d: %s, %d of the palm and %d of the back", i+1, one.Part.Words(), one.Palm, one.Back)
		if one.Cast > 0 {
			text += fmt.Sprintf(", %d cast on beside it", one.Cast)
		}
		text += fmt.Sprintf(": %d stitches.", one.Stitches)
		if one.Wait > 0 {
			text += fmt.Sprintf(" %d wait.", one.Wait)
		}
	}
	return d.say(text)
}
