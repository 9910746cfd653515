package paper

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/mitt"
	"thenar/internal/words"
)

// plan sets the first piece: what is made for whom, materials, the measures of hand and
// mitt, and every number in the drawing.
func (h *handout) plan() []block {
	head := one("name", 0, append(together(h.planHead()), h.doubts()...))
	head.withNext = true
	switch {
	case h.o.Large:
		return append(append([]block{head, h.materials()}, h.numbers()...), h.division()...)
	case h.o.Sideways:
		return append([]block{head, h.sideways(h.areaHeight() - float64(stack(head.ways[0].parts).Height)/10 - 3)}, h.division()...)
	}
	return append([]block{head, h.materials(), one("measures", 15, []part{h.measureTable()}), h.figures(h.width(), h.areaHeight())}, h.division()...)
}

// sideways sets materials and measures in a column to the left of the drawing, which is no
// higher than the room in mm if that can be.
func (h *handout) sideways(high float64) block {
	const least, most, room = 58.0, 76.0, 7.0
	column := min(max(h.width()-188-room, least), most)
	left := stack(append(h.pairs(h.materialList(), column), space(35), h.measureColumns(column)))
	b := h.figures(h.width()-column-room, high)
	for i := range b.ways {
		drawing := b.ways[i].parts
		b.ways[i].parts = []part{beside(column+room, []part{left}, drawing)}
	}
	return b
}

// planHead sets the name; for whom, and for which hand; and the main counts.
func (h *handout) planHead() []part {
	p := h.Out.Plan
	list := h.setTitle(h.headline())
	hand := fmt.Sprintf("%s hand", h.Doc.Side)
	if h.Doc.FromLeft {
		hand += ", knitted from left to right"
	}
	about, style := h.About, draw.TextStyle{Size: h.body, Face: draw.Semibold}
	if about == "" {
		about = p.Kind.Words()
	}
	room := h.width() - draw.Measure(hand, h.body, draw.Regular) - 5
	lines := setLines(about, room, style)
	first := lines[0].draw
	lines[0].draw = func(s *draw.Scene, x, y float64) {
		s.Text(x+h.width(), y+h.body, hand, draw.TextStyle{Size: h.body, Anchor: draw.End})
		first(s, x, y)
	}
	list = append(list, lines...)
	return append(list, setLines(h.mainCounts(), h.width(), draw.TextStyle{Size: h.body})...)
}

// mainCounts names what is made and its main counts.
func (h *handout) mainCounts() string {
	p := h.Out.Plan
	var list []string
	if h.About != "" {
		list = append(list, p.Kind.Words())
	}
	list = append(list, p.Said(mitt.CastOn)+" "+seamed(p, p.Cuff.CastOn.N), "hand "+onNeedles(p, p.Body.Stitches.N))
	if p.Gusseted() {
		list = append(list, fmt.Sprintf("gusset %d to %d in %s", p.Gusset.Base, p.Gusset.Stitches, words.Plural(p.Gusset.Rounds.N, "round")))
	}
	if rows := p.OpeningRows(); rows > 0 {
		list = append(list, fmt.Sprintf("opening in %s", words.Plural(rows, "row")))
	}
	if of := h.fingers(); len(of) > 0 {
		var counts []string
		for _, f := range slices.Backward(of) { // from the index on
			counts = append(counts, f.count())
		}
		list = append(list, "fingers "+strings.Join(counts, ", "))
	}
	if p.Thumbed() {
		list = append(list, "thumb "+onNeedles(p, p.Thumb.Stitches.N))
	}
	return h.said(strings.Join(list, " · "))
}

// doubts sets what to look at before the cast-on.
func (h *handout) doubts() (list []part) {
	doubts := h.Doubts
	if text := h.Out.Plan.Passes(); text != "" {
		doubts = append(slices.Clip(doubts), h.Out.Terms.Say(text))
	}
	for _, d := range doubts {
		list = append(list, setWhole("Look at this first: "+d, h.width(), draw.TextStyle{Size: h.body, Face: draw.Semibold}))
	}
	return list
}

// materials sets what is needed, over the whole width or in two columns.
func (h *handout) materials() block {
	list := h.materialList()
	b := one("materials", 15, keptLines(h.pairs(list, h.width())))
	if half := h.columnWidth(2); h.roomFor(half) {
		two := inColumns(h.pairs(list, half), 2, half+columnGap)
		b.ways = append([]way{{parts: []part{two}}}, b.ways...)
	}
	return b
}

// materialList returns the materials: their names and texts.
func (h *handout) materialList() (list [][2]string) {
	for _, m := range h.Out.Materials(h.Yarn, h.Needle) {
		list = append(list, [2]string{m.Name, m.Text})
	}
	return list
}

// roomFor reports whether a column is wide enough for running text: some 20 letters'
// heights.
func (h *handout) roomFor(column float64) bool { return column > 20*h.body }

// columnGap is the room between two columns of text in mm.
const columnGap = 6.0

// betweenPairs is the room between two pairs, so that a text of several lines does not
// run into the next, in tenths of a millimetre.
const betweenPairs = 6

// pairs sets names in bold, each with its text beside it.
func (h *handout) pairs(list [][2]string, width float64) []part {
	column := 0.0
	for _, p := range list {
		column = min(max(column, draw.Measure(p[0], h.note(), draw.Semibold)+3), 0.4*width)
	}
	rows := make([]part, len(list))
	for i, p := range list {
		name := setLines(p[0], column-2, draw.TextStyle{Size: h.note(), Face: draw.Semibold})
		rows[i] = beside(column, name, setLines(p[1], width-column, draw.TextStyle{Size: h.note()}))
		if i > 0 {
			rows[i].Above = betweenPairs
		}
	}
	return rows
}

// heading sets a heading with a little room below it.
func (h *handout) headingPart(text string) []part {
	list := setLines(text, h.width(), draw.TextStyle{Size: h.heading, Face: draw.Serif})
	return marked(2, text, []part{stack(append(list, space(10)))})
}

// aboveHeading is the room above a heading, in tenths of a millimetre.
const aboveHeading = 45

// headed returns a block of rows under a heading that is repeated where they go on.
func (h *handout) headed(text string, rows []part) block {
	return one(text, aboveHeading, keptWith(h.headingPart(text), goingOn(rows, text)))
}
