package paper

import (
	"fmt"
	"slices"

	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/words"
)

// plan is the first page: what to have at hand, the numbers beside the hand,
// how long every part is.
func (h *handout) plan() {
	p, unit := h.Out.Plan, h.Doc.Sheet.Unit()
	h.fresh()
	h.text(margin, h.width(), h.headline(), draw.TextStyle{Size: h.title, Bold: true})
	if h.About != "" {
		h.say(h.About, h.body)
	}
	line := fmt.Sprintf("%s, %s hand · hand %s · %s", p.Kind.Words(), h.Doc.Side, p.Hand.Circumference.With(unit), project.Gauge(p.Gauge))
	if h.Doc.FromLeft {
		line += " · knitted from left to right"
	}
	h.say(line, h.body)
	for _, d := range h.Doubts {
		h.text(margin, h.width(), "Look at this first: "+d, draw.TextStyle{Size: h.body, Bold: true})
	}
	h.y++
	var list [][2]string
	for _, m := range h.Out.Materials(h.Yarn, h.Needle) {
		list = append(list, [2]string{m.Name, m.Text})
	}
	h.pairs(list)
	h.y += 2
	h.numbers()
	h.lengths()
}

// pairs write names in bold and what belongs to each beside it.
func (f *flow) pairs(list [][2]string) {
	column := 0.0
	for _, p := range list {
		column = min(max(column, draw.Measure(p[0], f.small, true)+3), 0.4*f.width())
	}
	for _, p := range list {
		name := draw.Wrap(p[0], column-2, f.small, true)
		high := max(f.high(p[1], f.width()-column, f.small), float64(len(name))*f.small*leading)
		f.need(high)
		top := f.y
		for i, line := range name {
			f.page().Text(margin, top+f.small+float64(i)*f.small*leading, line, draw.TextStyle{Size: f.small, Bold: true})
		}
		f.text(margin+column, f.width()-column, p[1], draw.TextStyle{Size: f.small})
		f.y = max(f.y, top+high)
	}
}

// numbers are those of the plan at the left and the hand at the right; in
// large print the hand has a page by itself, so that its letters are large,
// too.
func (h *handout) numbers() {
	p := h.Out.Plan
	hand := picture.Hand(p, picture.HandOptions{Left: h.Doc.Side == project.Left, Unit: h.Doc.Sheet.Unit()})
	if h.o.Large {
		var list [][2]string
		for _, r := range h.reasons() {
			list = append(list, [2]string{r.Name, value(r)})
		}
		h.pairs(list)
		h.fresh()
		scale := min(h.width()/hand.Width, h.left()/hand.Height)
		h.put(hand, margin+(h.width()-hand.Width*scale)/2, scale)
		return
	}
	column := 0.29 * h.width()
	columns := 1
	if h.high2(column, 1) > h.whole() { // a page on its side holds fewer
		column, columns = 0.2*h.width(), 2
	}
	list := h.high2(column, columns)
	if h.left() < list {
		h.turn()
	}
	beside := float64(columns) * (column + 4)
	room := h.width() - beside
	top := h.y
	scale := min(room/hand.Width, max(h.left()-2, list)/hand.Height)
	h.page().Add(hand, margin+beside+(room-hand.Width*scale)/2, top, scale)
	for i, group := range h.grouped(columns) {
		h.y = top
		at := margin + float64(i)*(column+4)
		for _, r := range group {
			h.page().Text(at, h.y+h.small, r.Name, draw.TextStyle{Size: h.small})
			h.y += h.small * 1.25
			h.text(at, column, value(r), draw.TextStyle{Size: h.body, Bold: true})
			h.y += 0.6
		}
	}
	h.y = top + max(list, hand.Height*scale) + 1
}

// grouped are the numbers in so many columns, the first ones the longer.
func (h *handout) grouped(columns int) (groups [][]words.Reason) {
	list := h.reasons()
	return slices.Collect(slices.Chunk(list, (len(list)+columns-1)/columns))
}

// reasons are the numbers that are printed: those that are not nothing.
func (h *handout) reasons() []words.Reason {
	var list []words.Reason
	for _, r := range h.Out.Reasons {
		if r.Number != "0" || r.Fixed {
			list = append(list, r)
		}
	}
	return list
}

func value(r words.Reason) string {
	if r.Fixed {
		return r.Value + " (fixed)"
	}
	return r.Value
}

// high2 is the height of the numbers in so many columns of a width.
func (h *handout) high2(column float64, columns int) float64 {
	high := 0.0
	for _, group := range h.grouped(columns) {
		sum := 0.0
		for _, r := range group {
			sum += h.small*1.25 + float64(len(draw.Wrap(value(r), column, h.body, true)))*h.body*leading + 0.6
		}
		high = max(high, sum)
	}
	return high
}

// lengths tell how long every part is, in rounds, in both units, and by the
// hand.
func (h *handout) lengths() {
	list := words.Lengths(h.Out.Plan)
	h.head("How long", float64(len(list))*h.body*leading)
	var lines [][2]string
	for _, l := range list {
		lines = append(lines, [2]string{title(l.Part), l.Words() + "."})
	}
	h.pairs(lines)
}
