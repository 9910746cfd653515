package paper

import (
	"fmt"
	"slices"

	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/words"
)

// plan prints the first page: materials, the numbers beside the drawn hand, the
// length of every part.
func (h *handout) plan() {
	p, unit := h.Out.Plan, h.Doc.Sheet.Unit()
	h.freshPage()
	h.text(margin, h.width(), h.headline(), draw.TextStyle{Size: h.title, Face: draw.Serif})
	if h.About != "" {
		h.say(h.About, h.body)
	}
	line := fmt.Sprintf("%s, %s hand · hand %s · %s", p.Kind.Words(), h.Doc.Side, p.Hand.Circumference.With(unit), project.Gauge(p.Gauge))
	if h.Doc.FromLeft {
		line += " · knitted from left to right"
	}
	h.say(line, h.body)
	for _, d := range h.Doubts {
		h.text(margin, h.width(), "Look at this first: "+d, draw.TextStyle{Size: h.body, Face: draw.Semibold})
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

// pairs writes names in bold, each with its text beside it.
func (f *flow) pairs(list [][2]string) {
	column := 0.0
	for _, p := range list {
		column = min(max(column, draw.Measure(p[0], f.small, draw.Semibold)+3), 0.4*f.width())
	}
	for _, p := range list {
		name := draw.Wrap(p[0], column-2, f.small, draw.Semibold)
		high := max(f.textHeight(p[1], f.width()-column, f.small), float64(len(name))*f.small*leading)
		f.need(high)
		top := f.y
		for i, line := range name {
			f.page().Text(margin, top+f.small+float64(i)*f.small*leading, line, draw.TextStyle{Size: f.small, Face: draw.Semibold})
		}
		f.text(margin+column, f.width()-column, p[1], draw.TextStyle{Size: f.small})
		f.y = max(f.y, top+high)
	}
}

// numbers prints the plan's numbers at the left and the hand at the right. In large
// print the hand stands below them, on a page of its own where its letters would be
// much smaller otherwise.
func (h *handout) numbers() {
	p := h.Out.Plan
	hand := picture.Hand(p, picture.HandOptions{Left: h.Doc.Side == project.Left, Unit: h.Doc.Sheet.Unit(), Worn: h.worn()})
	if h.o.Large {
		var list [][2]string
		for _, r := range h.reasons() {
			list = append(list, [2]string{r.Name, valueText(r)})
		}
		h.pairs(list)
		h.y += 2
		whole := min(h.width()/hand.Width, h.pageHeight()/hand.Height)
		if min(h.width()/hand.Width, h.heightLeft()/hand.Height) < smallestHand*whole {
			h.freshPage()
		}
		scale := min(h.width()/hand.Width, h.heightLeft()/hand.Height)
		h.put(hand, margin+(h.width()-hand.Width*scale)/2, scale)
		return
	}
	h.numbersBeside(hand)
}

// smallestHand is how large the hand is at least in large print, as a share of what a
// page of its own would give it.
const smallestHand = 0.85

// numbersBeside prints the numbers in one column to the left of the hand, or in two
// on a lower page. Those for which there is no room go below the hand.
func (h *handout) numbersBeside(hand *draw.Scene) {
	const gap = 4
	list := h.reasons()
	column, columns := 0.29*h.width(), 1
	if h.numbersHeight(list, column) > h.pageHeight() {
		column, columns = 0.2*h.width(), 2
	}
	for _, r := range list {
		column = max(column, draw.Measure(r.Name, h.small, draw.Regular))
	}
	if h.heightLeft() < minBeside*h.columnsHeight(inColumns(list, columns), column) {
		h.turnPage()
	}
	n := len(list)
	for h.columnsHeight(inColumns(list[:n], columns), column) > h.heightLeft() {
		n--
	}
	high := h.columnsHeight(inColumns(list[:n], columns), column)
	left := margin + float64(columns)*(column+gap)
	room := margin + h.width() - left
	under := slices.Collect(slices.Chunk(list[n:], max(int((room+gap)/(column+gap)), 1)))
	foot := 0.0
	for _, row := range under {
		foot += gap/float64(len(under)) + h.columnsHeight(inColumns(row, len(row)), column)
	}
	top := h.y
	scale := min(room/hand.Width, (max(h.heightLeft()-2, high)-foot)/hand.Height)
	h.page().Add(hand, left+(room-hand.Width*scale)/2, top, scale)
	for i, group := range inColumns(list[:n], columns) {
		y := top
		for _, r := range group {
			y = h.drawNumber(r, margin+float64(i)*(column+gap), y, column)
		}
	}
	below := top + hand.Height*scale + gap
	for _, row := range under {
		y := below
		for i, r := range row {
			below = max(below, h.drawNumber(r, left+float64(i)*(column+gap), y, column))
		}
	}
	h.y = top + max(high, hand.Height*scale+foot) + 1
}

// inColumns divides numbers into columns; the last may be shorter.
func inColumns(list []words.Reason, columns int) [][]words.Reason {
	return slices.Collect(slices.Chunk(list, max((len(list)+columns-1)/columns, 1)))
}

// minBeside is the share of the numbers' height that has to fit on this page;
// otherwise they begin on a new one.
const minBeside = 0.6

// drawNumber writes a number with its name above it, and returns where the next one
// begins.
func (h *handout) drawNumber(r words.Reason, x, y, column float64) float64 {
	h.page().Text(x, y+h.small, r.Name, draw.TextStyle{Size: h.small})
	for i, line := range draw.Wrap(valueText(r), column, h.body, draw.Semibold) {
		h.page().Text(x, y+h.small*1.25+h.body+float64(i)*h.body*leading, line, draw.TextStyle{Size: h.body, Face: draw.Semibold})
	}
	return y + h.numbersHeight([]words.Reason{r}, column)
}

// reasons returns the numbers that are printed: all but zeros that are not fixed.
func (h *handout) reasons() []words.Reason {
	var list []words.Reason
	for _, r := range h.Out.Reasons {
		if r.Number != "0" || r.Fixed {
			list = append(list, r)
		}
	}
	return list
}

func valueText(r words.Reason) string {
	if r.Fixed {
		return r.Value + " (fixed)"
	}
	return r.Value
}

// numbersHeight returns the height of numbers one below the other.
func (h *handout) numbersHeight(list []words.Reason, column float64) float64 {
	sum := 0.0
	for _, r := range list {
		sum += h.small*1.25 + float64(len(draw.Wrap(valueText(r), column, h.body, draw.Semibold)))*h.body*leading + 0.6
	}
	return sum
}

// columnsHeight returns the height of columns of numbers side by side.
func (h *handout) columnsHeight(groups [][]words.Reason, column float64) float64 {
	highest := 0.0
	for _, group := range groups {
		highest = max(highest, h.numbersHeight(group, column))
	}
	return highest
}

// lengths prints the length of every part, in rounds, in both units, and by the
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
