package picture

import (
	"slices"

	"thenar/internal/draw"
	"thenar/internal/hand"
	"thenar/internal/units"
)

// tape is one measurement drawn where it is taken.
type tape struct {
	field string
	name  string
	short string // where there is little room beside the hand
	value units.Length
	named bool // the label has room for the name
	round bool // a girth, from one side of what it goes round to the other
	still bool // of a finger, on which there is no room to write: it says its value only while it is read
	from  point
	to    point
	label label
}

// drawTapes draws every tape with its value. Filled values are dotted and marked "≈"; an
// example is dotted, with names in place of values. Letters of a size of their own may be
// large for the hand: then the values are drawn last, so that no tape runs through them.
func (f *figure) drawTapes(c *canvas, o HandOptions, filled map[string]bool) {
	drawTapes(c, f.tapes(c.letter), o, filled)
}

func drawTapes(c *canvas, list []tape, o HandOptions, filled map[string]bool) {
	var last []func()
	for _, t := range list {
		class, text := "tape", t.value.With(o.unit())
		style := draw.Style{Class: "tape-line", Stroke: chalkColour, Width: c.letter / 10, Round: true}
		if filled[t.field] || o.Example {
			class, text = "tape filled", "≈ "+text
			style.Dash = dotted(c.letter)
		}
		if t.named || o.Named && t.label.anchor == draw.Start && !t.round { // beside the hand
			t.label.name = t.name
			if o.Named && t.short != "" {
				t.label.name = t.short
			}
		} else if o.Named && !t.still {
			text = t.name + " " + text
		}
		if o.Example {
			t.label.name, text = "", t.name
			if t.named { // one line instead of two
				t.label.at.y -= leading * c.letter
			}
		}
		if t.still {
			class += " of-finger"
		}
		c.s.Group(class, draw.Attr{Name: "data-field", Value: t.field})
		if c.ribbons {
			t.ribbon(c)
		}
		p := c.pen()
		t.line(p)
		p.ends(t.from, t.to, c.letter)
		if o.Worn != nil {
			p.path(draw.Style{Class: "edge", Stroke: edgeColour, Width: 2.5 * style.Width, Round: true})
		}
		p.path(style)
		t.label.value = text
		switch {
		case t.still && c.ribbons:
			t.label.over = true
			c.put(t.label)
		case t.still:
		case o.Letter == 0:
			c.place(t.label)
		default:
			last = append(last, func() { c.place(t.label) })
		}
		c.s.End()
	}
	for _, label := range last {
		label()
	}
}

// dotted returns the dash pattern of dots for a line of a tenth of the letters' size.
func dotted(letter float64) string {
	return draw.Number(0.01*letter) + " " + draw.Number(0.22*letter)
}

// tapes returns the tapes of all measurements, without those of a thumb that is tucked
// in. Girths are arcs, as a tape lies round; lengths are straight, beside what they
// measure.
func (f *figure) tapes(letter float64) []tape {
	if f.apart {
		return f.fingerTapes(letter)
	}
	all := append(f.girths(letter), f.lengths(letter)...)
	if f.fingered {
		all = append(all, f.fingerTapes(letter)...)
	}
	if f.tucked {
		all = slices.DeleteFunc(all, func(t tape) bool {
			return t.field != hand.FieldCircumference && t.field != hand.FieldWrist && t.field != hand.FieldLength
		})
	}
	return all
}

// girths returns the tapes of girths. On the palm and wrist their labels are under them.
func (f *figure) girths(letter float64) []tape {
	under := func(x, y float64) label {
		return label{at: point{x, y - 1.35*letter}, anchor: draw.Middle, slide: point{0, -0.3 * letter}, over: true}
	}
	joint := 0.53 * f.h.ThumbLength.MM() // of the thumb, from its crotch
	in, out := f.onThumb(joint, -1.04*f.thumb), f.onThumb(joint, 1.04*f.thumb)
	laid := [2]point{{-1.02 * f.palm, f.crotch.y - 0.02*f.long}, f.onThumb(-0.03*f.long, f.room.thumb)}
	knuckles := max(0.455*f.long, f.crotch.y+0.04*f.long)
	return []tape{
		{
			field: hand.FieldCircumference, name: "hand", value: f.h.Circumference,
			round: true, from: point{-1.01 * f.palm, knuckles}, to: point{f.palm, knuckles},
			label: under(-0.12*f.palm, knuckles),
		},
		{
			field: hand.FieldPalm, name: "with thumb", value: f.h.Palm,
			round: true, from: laid[0], to: laid[1],
			label: under(-0.12*f.palm, laid[0].to(laid[1], 0.4).y-0.02*f.long),
		},
		{
			field: hand.FieldWrist, name: "wrist", value: f.h.Wrist,
			round: true, from: point{-f.wrist, 0}, to: point{f.wrist, 0},
			label: under(0, 0),
		},
		{
			field: hand.FieldThumb, name: "thumb", named: true, value: f.h.Thumb,
			round: true, from: in, to: out,
			label: label{at: f.onThumb(f.room.tip, 0).plus(point{-1.5 * letter, 2.2 * letter}), anchor: draw.Start, slide: point{0, 0.5 * letter}},
		},
	}
}

// lengths returns the tapes of lengths.
func (f *figure) lengths(letter float64) []tape {
	side := -1.06*f.palm - 1.6*letter
	for _, p := range f.outline(0) {
		side = min(side, p.x-0.9*letter)
	}
	off := f.room.thumb + 1.1*letter
	root, tip := f.onThumb(0, off), f.onThumb(f.h.ThumbLength.MM(), off)
	top := f.onThumb(-0.05*f.long, off)
	base := point{f.room.base + 1.4*letter, f.crotch.y - f.h.GussetLength.MM()}
	inner := point{0.52 * f.palm, 0}
	crotch := point{inner.x, f.crotch.y}
	return []tape{
		{
			field: hand.FieldLength, name: "hand length", named: true, value: f.h.Length,
			from: point{side, 0}, to: point{side, f.long},
			label: label{at: point{side - 0.5*letter, f.long + 2*letter}, anchor: draw.Start, slide: point{0, 0.5 * letter}},
		},
		{
			field: hand.FieldThumbLength, name: "thumb length", short: "length", named: true, value: f.h.ThumbLength,
			from: root, to: tip,
			label: label{at: root.to(tip, 0.45).plus(point{letter, 0}), anchor: draw.Start, slide: point{0.2 * letter, -0.5 * letter}},
		},
		{
			field: hand.FieldGussetLength, name: f.bone, named: true, value: f.h.GussetLength,
			from: base, to: top,
			label: label{at: base.to(top, 0.35).plus(point{letter, 0}), anchor: draw.Start, slide: point{0.2 * letter, -0.5 * letter}},
		},
		{
			field: hand.FieldWristToCrotch, name: "to thumb", value: f.h.WristToCrotch,
			from: inner, to: crotch,
			label: label{at: inner.to(crotch, 0.30).plus(point{-0.6 * letter, 0}), anchor: draw.End, slide: point{0, -0.3 * letter}, over: true},
		},
	}
}

// line draws the tape itself: a sagging arc round what lies between its ends, or straight along
// it.
func (t *tape) line(p *pen) {
	p.move(t.from)
	if t.round {
		p.bow(t.from, t.to, -0.035)
	} else {
		p.line(t.to)
	}
}

// ribbon draws the tape as broad as a tape is, with a mark at every centimetre of the drawing,
// for the one that is being read.
func (t *tape) ribbon(c *canvas) {
	const broad, edge = 8, 0.8
	for _, style := range []draw.Style{
		{Class: "tape-ribbon edge", Stroke: inkColour, Width: broad + edge},
		{Class: "tape-ribbon", Stroke: cardColour, Width: broad},
		{Class: "tape-ribbon marks", Stroke: inkColour, Width: broad / 3, Dash: "0.5 4.5"},
	} {
		p := c.pen()
		t.line(p)
		p.path(style)
	}
}

// ends draws a small mark at each end of a tape.
func (p *pen) ends(a, b point, letter float64) {
	way := unit(b.plus(a.times(-1)))
	half := point{-way.y, way.x}.times(0.35 * letter)
	for _, at := range []point{a, b} {
		p.move(at.plus(half)).line(at.plus(half.times(-1)))
	}
}
