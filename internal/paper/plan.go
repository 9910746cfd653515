package paper

import (
	"fmt"

	"thenar/internal/draw"
	"thenar/internal/project"
	"thenar/internal/words"
)

// plan sets the first piece: what is made for whom, materials, the numbers beside the
// drawn hand, the length of every part.
func (h *handout) plan() []block {
	head := one("name", 0, append(together(h.planHead()), h.doubts()...))
	head.withNext = true
	list := append([]block{head, h.materials()}, h.numbers()...)
	if h.o.Has(Words) { // which say it where it is worked
		return list
	}
	return append(list, h.lengths())
}

// planHead sets the name, and what is made.
func (h *handout) planHead() []part {
	p, unit := h.Out.Plan, h.Doc.Sheet.Unit()
	list := setLines(h.headline(), h.width(), draw.TextStyle{Size: h.title, Face: draw.Serif})
	if h.About != "" {
		list = append(list, setLines(h.About, h.width(), draw.TextStyle{Size: h.body})...)
	}
	line := fmt.Sprintf("%s, %s hand · hand %s · %s", p.Kind.Words(), h.Doc.Side, p.Hand.Circumference.With(unit), project.Gauge(p.Gauge))
	if h.Doc.FromLeft {
		line += " · knitted from left to right"
	}
	return append(list, setLines(line, h.width(), draw.TextStyle{Size: h.body})...)
}

// doubts sets what to look at before the cast-on.
func (h *handout) doubts() (list []part) {
	for _, d := range h.Doubts {
		list = append(list, setWhole("Look at this first: "+d, h.width(), draw.TextStyle{Size: h.body, Face: draw.Semibold}))
	}
	return list
}

// materials sets what is needed, over the whole width or in two columns.
func (h *handout) materials() block {
	var list [][2]string
	for _, m := range h.Out.Materials(h.Yarn, h.Needle) {
		list = append(list, [2]string{m.Name, m.Text})
	}
	b := one("materials", 15, keptLines(h.pairs(list, h.width())))
	if half := h.columnWidth(2); h.roomFor(half) {
		two := inColumns(h.pairs(list, half), 2, half+columnGap)
		b.ways = append([]way{{parts: []part{two}}}, b.ways...)
	}
	return b
}

// roomFor reports whether a column is wide enough for running text: some 20 letters'
// heights.
func (h *handout) roomFor(column float64) bool { return column > 20*h.body }

// columnGap is the room between two columns of text in mm.
const columnGap = 6.0

// betweenPairs is the room between two pairs, so that a text of several lines does not
// run into the next, in tenths of a millimetre.
const betweenPairs = 10

// pairs sets names in bold, each with its text beside it.
func (h *handout) pairs(list [][2]string, width float64) []part {
	column := 0.0
	for _, p := range list {
		column = min(max(column, draw.Measure(p[0], h.small, draw.Semibold)+3), 0.4*width)
	}
	rows := make([]part, len(list))
	for i, p := range list {
		name := setLines(p[0], column-2, draw.TextStyle{Size: h.small, Face: draw.Semibold})
		rows[i] = beside(column, name, setLines(p[1], width-column, draw.TextStyle{Size: h.small}))
		if i > 0 {
			rows[i].Above = betweenPairs
		}
	}
	return rows
}

// heading sets a heading with a little room below it.
func (h *handout) headingPart(text string) []part {
	list := setLines(text, h.width(), draw.TextStyle{Size: h.heading, Face: draw.Serif})
	return []part{stack(append(list, space(10)))}
}

// aboveHeading is the room above a heading, in tenths of a millimetre.
const aboveHeading = 45

// headed returns a block of rows under a heading that is repeated where they go on.
func (h *handout) headed(text string, rows []part) block {
	return one(text, aboveHeading, keptWith(h.headingPart(text), goingOn(rows, text)))
}

// lengths sets the length of every part, in rounds, in both units, and by the hand.
func (h *handout) lengths() block {
	var list [][2]string
	for _, l := range words.Lengths(h.Out.Plan, h.Out.Mitt) {
		list = append(list, [2]string{l.Part.Title(), l.Words() + "."})
	}
	return h.headed("How long", keptLines(h.pairs(list, h.width())))
}
