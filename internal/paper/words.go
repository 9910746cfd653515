package paper

import (
	"fmt"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// unsoundLines sets which painted rounds do not add up.
func (h *handout) unsoundLines() []part {
	var list []part
	for _, u := range h.Out.Unsound {
		list = append(list, keptLines(setLines("Does not add up: "+u.Words+".", h.width(), draw.TextStyle{Size: h.body, Face: draw.Semibold}))...)
	}
	return list
}

// maxUnsoundBelow is the most rounds that don't add up that are written below every
// part of a chart. More would take the chart's room, so they are listed once after
// the charts.
const maxUnsoundBelow = 3

func (h *handout) hasManyUnsound() bool { return len(h.Out.Unsound) > maxUnsoundBelow }

// listUnsound lists the rounds that don't add up if there are too many to be
// written below each part.
func (h *handout) listUnsound() {
	if h.hasManyUnsound() {
		h.head("What does not add up", 0)
		for _, u := range h.Out.Unsound {
			h.text(margin, h.width(), "Does not add up: "+u.Words+".", draw.TextStyle{Size: h.body, Face: draw.Semibold})
		}
		h.done()
	}
}

// lengthsByPart returns the lengths of the parts.
func (h *handout) lengthsByPart() map[stitch.Part]words.Length {
	m := map[stitch.Part]words.Length{}
	for _, l := range words.Lengths(h.Out.Plan, h.Out.Mitt) {
		m[l.Part] = l
	}
	return m
}

// words sets the instructions, section by section.
func (h *handout) words() []block {
	first := h.unsoundLines()
	if h.Out.Changed.Count() > 0 {
		first = append(first, h.paragraphs([]string{"A star marks the rounds that the last try changed; the charts have a bar beside them."})...)
	}
	list := []block{one("words", aboveHeading, keptWith(h.headingPart("Words"), first))}
	list[0].withNext = true
	return append(list, h.passages()...)
}

// abovePassage is the room above a section of the words, in tenths of a millimetre.
const abovePassage = 35

// passages sets the sections of the words, short neighbours side by side.
func (h *handout) passages() (list []block) {
	all := sections{h, h.pairsByPart(), h.lengthsByPart()}
	passages := words.Merged(h.Out.Words)
	for i := 0; i < len(passages); i++ {
		p := passages[i]
		b := one(p.Title, abovePassage, all.set(p, h.width()))
		if i+1 < len(passages) {
			if beside, ok := all.beside(p, passages[i+1]); ok {
				b.ways = beside
				i++
			}
		}
		list = append(list, b)
	}
	return list
}

// sections sets sections of the words.
type sections struct {
	*handout
	pairs map[stitch.Part]int // the numbers of the charts of their rounds
	long  map[stitch.Part]words.Length
}

// Two sections stand side by side where that takes at most so much of the height that
// they take one below the other, in percent, and at most so many tenths of a
// millimetre. Where it saves little, both are ways.
const (
	savesMuch, savesLittle = 78, 90
	mostBeside             = 1300
)

// beside returns the ways of two sections that may stand side by side; ok is false if
// they are too long for that, or have charts of their own.
func (s sections) beside(a, b words.Passage) (ways []way, ok bool) {
	half := s.columnWidth(2)
	if s.pairs[a.Part] != s.pairs[b.Part] || s.pairs[a.Part] > 0 || !s.roomFor(half) {
		return nil, false
	}
	together := beside(half+columnGap, s.set(a, half), s.set(b, half))
	second := s.set(b, s.flow.width())
	second[0].Above, second[0].goesOn = abovePassage, ""
	apart := append(s.set(a, s.flow.width()), second...)
	high := stack(apart).Height
	switch {
	case together.Height > mostBeside || 100*together.Height > savesLittle*high:
		return nil, false
	case 100*together.Height > savesMuch*high:
		return []way{{parts: []part{together}}, {parts: apart}}, true
	}
	return []way{{parts: []part{together}}}, true
}

// set sets a section in a width: its heading with how long it is, its rounds, where to
// stop.
func (s sections) set(p words.Passage, width float64) []part {
	head := s.head(p, width)
	var rows []part
	if text := s.Out.InColours(p.Part); text != "" {
		rows = append(rows, setWhole(text+": take them from the chart of the "+p.Part.Words()+".", width, draw.TextStyle{Size: s.body}))
	}
	label := s.labelWidth(p)
	stop := s.stopAfter(p)
	for i, step := range p.Steps {
		rows = append(rows, s.step(p.Part, step, width, label)...)
		if i == stop {
			rows = append(rows, setWhole(s.long[p.Part].Stop(), width, draw.TextStyle{Size: s.body}))
		}
	}
	rows = keptWith([]part{head}, goingOn(s.keptRows(rows), p.Title))
	for i := range rows {
		rows[i].Words = s.pairs[p.Part]
	}
	return rows
}

// stopAfter returns the step after which a section says where on the hand it ends: the
// last that is a round; −1 if it doesn't say that.
func (s sections) stopAfter(p words.Passage) int {
	last := -1
	for i, step := range p.Steps {
		if step.From > 0 && s.long[p.Part].Until != "" {
			last = i
		}
	}
	return last
}

// head sets the heading of a section below a rule, with its rounds and length at the
// right, or below it where there is no room.
func (s sections) head(p words.Passage, width float64) part {
	title, small := draw.TextStyle{Size: s.heading, Face: draw.Serif}, draw.TextStyle{Size: s.small}
	list := append([]part{space(20)}, setLines(p.Title, width, title)...)
	rule := func(page *draw.Scene, x, y float64) {
		page.Line(x, y, x+width, y, draw.Style{Stroke: ink, Width: 0.25})
	}
	draws := rule
	if l, ok := s.long[p.Part]; ok {
		l.Until = ""
		text := l.Words()
		if draw.Measure(p.Title, s.heading, draw.Serif)+4+draw.Measure(text, s.small, draw.Regular) > width {
			list = append(list, setLines(text, width, small)...)
		} else {
			small.Anchor = draw.End
			draws = func(page *draw.Scene, x, y float64) {
				rule(page, x, y)
				page.Text(x+width, y+2+s.heading, text, small)
			}
		}
	}
	whole := stack(append(list, space(8)))
	texts := whole.draw
	whole.draw = func(page *draw.Scene, x, y float64) {
		texts(page, x, y)
		draws(page, x, y)
	}
	return whole
}

// label returns the label of a step, with a star if it is worked otherwise since the
// last try.
func (s sections) label(part stitch.Part, step words.Step) string {
	if name := step.Label(); name == "" || !s.Out.Changed.Any(part, step.From, step.To) {
		return name
	}
	return step.Label() + " *"
}

func (s sections) labelStyle() draw.TextStyle {
	return draw.TextStyle{Size: min(s.body, max(s.small, 0.9*s.body)), Face: draw.Semibold}
}

// labelWidth returns the width in mm of the labels of a section.
func (s sections) labelWidth(p words.Passage) float64 {
	widest := 0.0
	for _, step := range p.Steps {
		widest = max(widest, draw.Measure(s.label(p.Part, step), s.labelStyle().Size, draw.Semibold))
	}
	return widest + 3
}

// step sets a round beside its label, whole unless it is very long.
func (s sections) step(of stitch.Part, step words.Step, width, label float64) []part {
	name := s.label(of, step)
	if name == "" {
		return []part{stack(append(setLines(step.Text, width, draw.TextStyle{Size: s.body}), space(8)))}
	}
	lines := setLines(step.Text, width-label, draw.TextStyle{Size: s.body})
	if len(lines) == 0 {
		lines = []part{space(lineHeight(s.body))}
	}
	for i, line := range lines {
		lines[i].draw = func(p *draw.Scene, x, y float64) {
			if i == 0 {
				p.Text(x, y+s.body, name, s.labelStyle())
			}
			line.draw(p, x+label, y)
		}
	}
	return together(lines)
}

// noted returns the notes on cells and rounds, in the order of the chart's edits.
func (h *handout) noted() []string {
	var list []string
	for _, e := range h.Out.Charts.Marks.Edits() {
		if e.Layer != chart.Notes {
			continue
		}
		at := fmt.Sprintf("%s, round %d", e.Section.Words(), e.Round)
		if e.Column != "" {
			at += ", column " + e.Column
		}
		list = append(list, at+": "+e.Value)
	}
	return list
}
