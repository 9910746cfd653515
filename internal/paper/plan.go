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
	h.beside(hand)
}

// beside writes the numbers in a column with the hand to the right of it, or in
// two on a page that holds less; those that there is no room for stand below
// the hand.
func (h *handout) beside(hand *draw.Scene) {
	const gap = 4
	list := h.reasons()
	column, columns := 0.29*h.width(), 1
	if h.tall(list, column) > h.whole() {
		column, columns = 0.2*h.width(), 2
	}
	for _, r := range list {
		column = max(column, draw.Measure(r.Name, h.small, false))
	}
	if h.left() < leastBeside*h.tallest(grouped(list, columns), column) {
		h.turn()
	}
	n := len(list)
	for h.tallest(grouped(list[:n], columns), column) > h.left() {
		n--
	}
	high := h.tallest(grouped(list[:n], columns), column)
	left := margin + float64(columns)*(column+gap)
	room := margin + h.width() - left
	under := slices.Collect(slices.Chunk(list[n:], max(int((room+gap)/(column+gap)), 1)))
	foot := 0.0
	for _, row := range under {
		foot += gap/float64(len(under)) + h.tallest(grouped(row, len(row)), column)
	}
	top := h.y
	scale := min(room/hand.Width, (max(h.left()-2, high)-foot)/hand.Height)
	h.page().Add(hand, left+(room-hand.Width*scale)/2, top, scale)
	for i, group := range grouped(list[:n], columns) {
		y := top
		for _, r := range group {
			y = h.number(r, margin+float64(i)*(column+gap), y, column)
		}
	}
	below := top + hand.Height*scale + gap
	for _, row := range under {
		y := below
		for i, r := range row {
			below = max(below, h.number(r, left+float64(i)*(column+gap), y, column))
		}
	}
	h.y = top + max(high, hand.Height*scale+foot) + 1
}

// grouped are numbers in so many columns, the first ones the longer.
func grouped(list []words.Reason, columns int) [][]words.Reason {
	return slices.Collect(slices.Chunk(list, max((len(list)+columns-1)/columns, 1)))
}

// leastBeside is the share of the numbers that has to stand beside the hand:
// where less fits, they begin on a page of their own.
const leastBeside = 0.6

// number writes a number, its name above it, and gives where the next begins.
func (h *handout) number(r words.Reason, x, y, column float64) float64 {
	h.page().Text(x, y+h.small, r.Name, draw.TextStyle{Size: h.small})
	for i, line := range draw.Wrap(value(r), column, h.body, true) {
		h.page().Text(x, y+h.small*1.25+h.body+float64(i)*h.body*leading, line, draw.TextStyle{Size: h.body, Bold: true})
	}
	return y + h.tall([]words.Reason{r}, column)
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

// tall is the height of numbers in a column, one below the other.
func (h *handout) tall(list []words.Reason, column float64) float64 {
	sum := 0.0
	for _, r := range list {
		sum += h.small*1.25 + float64(len(draw.Wrap(value(r), column, h.body, true)))*h.body*leading + 0.6
	}
	return sum
}

// tallest is the height of columns of numbers side by side.
func (h *handout) tallest(groups [][]words.Reason, column float64) float64 {
	most := 0.0
	for _, group := range groups {
		most = max(most, h.tall(group, column))
	}
	return most
}

// lengths tell how long every part is, in rounds, in both units, and by the
// hand.
func (h *handout) lengths() {
	list := words.Lengths(h.Out.Plan, h.Out.Mitt)
	h.head("How long", float64(len(list))*h.body*leading)
	var lines [][2]string
	for _, l := range list {
		lines = append(lines, [2]string{l.Part.Title(), l.Words() + "."})
	}
	h.pairs(lines)
}
