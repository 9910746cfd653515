package picture

import (
	"math"
	"sort"

	"thenar/internal/draw"
	"thenar/internal/hand"
	"thenar/internal/units"
)

// tape is where one measurement is taken: a line, where its label's leader
// begins, and what is said.
type tape struct {
	field string
	name  string
	value units.Length
	path  string
	fromX float64
	fromY float64
}

// tapes draws where each tape goes, with its label at the thumb's side. What
// is not measured is dotted and its value marked as about.
func tapes(s *draw.Scene, f *frame, o HandOptions, filled map[string]bool, letter float64) {
	list := tapeList(f, letter)
	sort.SliceStable(list, func(i, j int) bool { return list[i].fromY < list[j].fromY })
	ys := make([]float64, len(list))
	for i, t := range list {
		ys[i] = f.Y(t.fromY)
	}
	places := apart(ys, 2.5*letter)
	// What was pushed over the upper edge moves the whole column down.
	if over := 2.2*letter - places[len(places)-1]; over > 0 {
		for i := range places {
			places[i] += over
		}
	}
	for i, t := range list {
		value := t.value.With(o.Unit)
		switch {
		case o.Example:
			value = "to measure"
		case filled[t.field]:
			value = "≈ " + value
		}
		drawTape(s, f, t, value, filled[t.field] || o.Example, places[i], letter)
	}
}

func drawTape(s *draw.Scene, f *frame, t tape, value string, filled bool, y, letter float64) {
	class, dash := "tape", ""
	if filled {
		class, dash = "tape filled", "0.8 1.2"
	}
	s.Group(class, draw.Attr{Name: "data-field", Value: t.field})
	s.Path(t.path, draw.Style{Class: "tape-line", Stroke: markColour, Width: 0.6, Dash: dash})
	x := f.right + 1.2*letter
	s.Path(new(draw.Pen).Move(f.X(t.fromX), f.Y(t.fromY)).Line(f.X(x), y-0.3*letter).String(), draw.Style{Class: "leader", Stroke: lineColour, Width: 0.2})
	s.Text(f.X(x+0.4*letter), y, t.name, draw.TextStyle{Class: "tape-name", Size: letter * 0.85, Anchor: f.anchor(draw.Start)})
	s.Text(f.X(x+0.4*letter), y+letter, value, draw.TextStyle{Class: "tape-value", Size: letter * 0.85, Bold: true, Anchor: f.anchor(draw.Start)})
	s.End()
}

// tapeList places the tapes on a hand.
func tapeList(f *frame, letter float64) []tape {
	h, l := f.h, f.h.Length.MM()
	across := func(left, right, y float64) string {
		p := &pen{f: f}
		p.move(left, y)
		p.curve(left+(right-left)*0.3, y-0.012*l, left+(right-left)*0.7, y-0.012*l, right, y)
		return p.String()
	}
	straight := func(x1, y1, x2, y2 float64) string {
		p := &pen{f: f}
		end := 0.4 * letter
		dx, dy := y2-y1, x1-x2 // across the line
		n := math.Hypot(dx, dy)
		dx, dy = dx/n*end, dy/n*end
		p.move(x1-dx, y1-dy)
		p.line(x1+dx, y1+dy)
		p.move(x1, y1)
		p.line(x2, y2)
		p.move(x2-dx, y2-dy)
		p.line(x2+dx, y2+dy)
		return p.String()
	}
	outer, outerY := f.thumbAt(0, 2*f.thumbR)
	palmRight := outer
	jointInX, jointInY := f.thumbAt(0.53*h.ThumbLength.MM(), 0)
	jointOutX, jointOutY := f.thumbAt(0.53*h.ThumbLength.MM(), 2*f.thumbR)
	rootX, rootY := f.thumbAt(0, 2*f.thumbR+0.9*letter)
	tipX, tipY := f.thumbAt(h.ThumbLength.MM(), 2*f.thumbR+0.9*letter)
	side := f.wrist + 1.6*letter
	hip := -0.45 * f.palm
	list := []tape{
		{field: hand.FieldWrist, name: "wrist", value: h.Wrist, path: across(-f.wrist, f.wrist, 0), fromX: f.wrist, fromY: 0},
		{field: hand.FieldCircumference, name: "hand", value: h.Circumference, path: across(-f.palm, f.palm, 0.50*l), fromX: f.palm, fromY: 0.50 * l},
		{field: hand.FieldPalm, name: "palm with thumb", value: h.Palm, path: across(-f.palm, palmRight, (f.crotch+outerY)/2), fromX: palmRight, fromY: (f.crotch + outerY) / 2},
		{field: hand.FieldThumb, name: "thumb", value: h.Thumb, path: straight(jointInX, jointInY, jointOutX, jointOutY), fromX: jointOutX, fromY: jointOutY},
		{field: hand.FieldThumbLength, name: "thumb length", value: h.ThumbLength, path: straight(rootX, rootY, tipX, tipY), fromX: tipX, fromY: tipY},
		{field: hand.FieldGussetLength, name: "gusset length", value: h.GussetLength, path: straight(side, f.base, outer, outerY), fromX: (side + outer) / 2, fromY: (f.base + outerY) / 2},
		{field: hand.FieldWristToCrotch, name: "wrist to thumb", value: h.WristToCrotch, path: straight(hip, 0, hip, f.crotch), fromX: hip, fromY: f.crotch * 0.35},
		{field: hand.FieldLength, name: "hand length", value: h.Length, path: straight(hip*0.1, 0, hip*0.1, l), fromX: hip * 0.1, fromY: 0.9 * l},
	}
	return list
}
