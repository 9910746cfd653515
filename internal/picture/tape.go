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
	value units.Length
	named bool       // the label has room for the name
	lines func(*pen) // draws it in the hand's coordinates
	label label
}

// drawTapes draws every tape with its value. Filled values are dotted and marked "≈"; an
// example is dotted, with names in place of values.
func (f *figure) drawTapes(c *canvas, o HandOptions, filled map[string]bool) {
	for _, t := range f.tapes(c.letter) {
		class, text := "tape", t.value.With(o.unit())
		style := draw.Style{Class: "tape-line", Stroke: tapeColour, Width: c.letter / 10, Round: true}
		if filled[t.field] || o.Example {
			class, text = "tape filled", "≈ "+text
			style.Dash = dotted(c.letter)
		}
		if t.named {
			t.label.name = t.name
		}
		if o.Example {
			t.label.name, text = "", t.name
			if t.named { // one line instead of two
				t.label.at.y -= leading * c.letter
			}
		}
		c.s.Group(class, draw.Attr{Name: "data-field", Value: t.field})
		p := c.pen()
		t.lines(p)
		p.path(style)
		t.label.value = text
		c.place(t.label)
		c.s.End()
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
	all := append(f.girths(letter), f.lengths(letter)...)
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
			lines: func(p *pen) { p.round(point{-1.01 * f.palm, knuckles}, point{f.palm, knuckles}, letter) },
			label: under(-0.12*f.palm, knuckles),
		},
		{
			field: hand.FieldPalm, name: "with thumb", value: f.h.Palm,
			lines: func(p *pen) { p.round(laid[0], laid[1], letter) },
			label: under(-0.12*f.palm, laid[0].to(laid[1], 0.4).y-0.02*f.long),
		},
		{
			field: hand.FieldWrist, name: "wrist", value: f.h.Wrist,
			lines: func(p *pen) { p.round(point{-f.wrist, 0}, point{f.wrist, 0}, letter) },
			label: under(0, 0),
		},
		{
			field: hand.FieldThumb, name: "thumb", named: true, value: f.h.Thumb,
			lines: func(p *pen) { p.round(in, out, letter) },
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
			lines: func(p *pen) { p.straight(point{side, 0}, point{side, f.long}, letter) },
			label: label{at: point{side - 0.5*letter, f.long + 2*letter}, anchor: draw.Start, slide: point{0, 0.5 * letter}},
		},
		{
			field: hand.FieldThumbLength, name: "thumb length", named: true, value: f.h.ThumbLength,
			lines: func(p *pen) { p.straight(root, tip, letter) },
			label: label{at: root.to(tip, 0.45).plus(point{letter, 0}), anchor: draw.Start, slide: point{0.2 * letter, -0.5 * letter}},
		},
		{
			field: hand.FieldGussetLength, name: "gusset length", named: true, value: f.h.GussetLength,
			lines: func(p *pen) { p.straight(base, top, letter) },
			label: label{at: base.to(top, 0.35).plus(point{letter, 0}), anchor: draw.Start, slide: point{0.2 * letter, -0.5 * letter}},
		},
		{
			field: hand.FieldWristToCrotch, name: "to thumb", value: f.h.WristToCrotch,
			lines: func(p *pen) { p.straight(inner, crotch, letter) },
			label: label{at: inner.to(crotch, 0.30).plus(point{-0.6 * letter, 0}), anchor: draw.End, slide: point{0, -0.3 * letter}, over: true},
		},
	}
}

// round draws a tape round what lies between a and b: a sagging arc with a small mark at
// each end.
func (p *pen) round(a, b point, letter float64) {
	p.move(a)
	p.bow(a, b, -0.035)
	p.ends(a, b, letter)
}

// straight draws a tape along a line, with a small mark at each end.
func (p *pen) straight(a, b point, letter float64) {
	p.move(a).line(b)
	p.ends(a, b, letter)
}

func (p *pen) ends(a, b point, letter float64) {
	way := unit(b.plus(a.times(-1)))
	half := point{-way.y, way.x}.times(0.35 * letter)
	for _, at := range []point{a, b} {
		p.move(at.plus(half)).line(at.plus(half.times(-1)))
	}
}
