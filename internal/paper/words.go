package paper

import (
	"fmt"
	"slices"
	"strings"

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

// unsound lists the rounds that don't add up.
func (h *handout) unsound() block {
	return h.headed("What does not add up", keptLines(h.unsoundLines()))
}

// lengthsByPart returns the lengths of the parts.
func (h *handout) lengthsByPart() map[stitch.Part]words.Length {
	m := map[stitch.Part]words.Length{}
	for _, l := range words.Lengths(h.Out.Plan, h.Out.Mitt, h.Out.Unit) {
		m[l.Part] = l
	}
	return m
}

// words sets the instructions, section by section.
func (h *handout) words() []block {
	list := []block{one("words", aboveHeading, keptWith(h.wordsHead(), h.unsoundLines()))}
	list[0].withNext = true
	return append(list, h.passages()...)
}

// wordsHead sets the heading with how the rounds are read, beside it where that takes
// no more than two lines.
func (h *handout) wordsHead() []part {
	const heading = "Words"
	small, head := draw.TextStyle{Size: h.small}, h.headingPart(heading)
	column := draw.Measure(heading, h.heading, draw.Serif) + columnGap
	if lines := setLines(strings.Join(h.howToRead(), " "), h.width()-column, small); len(lines) <= 2 {
		return []part{stack([]part{beside(column, head, lines), space(8)})}
	}
	for _, text := range h.howToRead() {
		head = append(head, stack(append(setLines(text, h.width(), small), space(4))))
	}
	return head
}

// toMeet says what may be changed to meet a measure. Rows come in pairs, so that what is
// worked on the right side stays there.
func (h *handout) toMeet() string {
	if h.Out.Plan.Make.Flat {
		return " To meet a measure, add or drop plain rows two at a time."
	}
	return " To meet a measure, add or drop only the last plain rounds."
}

// howToRead says how the rounds are set, and what rules where they differ from the
// measures.
func (h *handout) howToRead() []string {
	text := "Grey: stitches change; count at right."
	for _, l := range h.lengthsByPart() {
		if l.Until != "" {
			text += h.toMeet()
			break
		}
	}
	list := []string{h.Out.Terms.Say(text)}
	if h.Out.Changed.Count() > 0 {
		list = append(list, "A star marks the rounds that the last try changed; the charts have a bar beside them.")
	}
	return list
}

// abovePassage is the room above a section of the words, in tenths of a millimetre.
const abovePassage = 25

// passages sets the sections of the words, short neighbours side by side where that
// saves the most.
func (h *handout) passages() (list []block) {
	all := sections{h, h.pairsByPart(), h.lengthsByPart(), map[setIn][]part{}}
	passages := words.Merged(h.Out.Words)
	chosen := all.chosen(passages)
	for i := 0; i < len(passages); i += max(1, chosen[i].n) {
		b := one(passages[i].Title, abovePassage, all.once(passages[i], h.width()))
		if chosen[i].n > 0 {
			b.ways = chosen[i].ways
		}
		list = append(list, b)
	}
	return list
}

// neighbours are sections that stand side by side: their ways, how many they are, and how
// much of the height they save; none if the first stands alone.
type neighbours struct {
	ways     []way
	n, saves int
}

// chosen returns for each section with which of those after it it stands side by side. It
// stands alone if they then save more among themselves.
func (s sections) chosen(list []words.Passage) []neighbours {
	chosen := make([]neighbours, len(list))
	saved := make([]int, len(list)+1) // by a section and all after it
	for i := len(list) - 1; i >= 0; i-- {
		saved[i] = saved[i+1]
		if with := s.beside(list[i:]); with.n > 0 && with.saves+saved[i+with.n] >= saved[i] {
			chosen[i], saved[i] = with, with.saves+saved[i+with.n]
		}
	}
	return chosen
}

// sections sets sections of the words.
type sections struct {
	*handout
	pairs map[stitch.Part]int // the numbers of the charts of their rounds
	long  map[stitch.Part]words.Length
	done  map[setIn][]part
}

// Sections stand side by side where that takes at most so much of the height that they
// take one below the other, in percent. Where it saves little, or they are higher than
// so many tenths of a millimetre, both are ways.
const (
	savesMuch, savesLittle = 78, 90
	highBeside             = 1300
)

// tableRoom is the least width of a column, by the size of its letters, in which the
// rounds of a gusset stand in a line each.
const tableRoom = 28

// beside returns the ways of the first of some sections with those that may stand beside
// it, one below the other: as many as save the largest share of the height. A gusset, or a
// section with a chart, needs more room; those of two charts don't stand together.
func (s sections) beside(list []words.Passage) (with neighbours) {
	half, best := s.columnWidth(2), 100
	fits := func(p words.Passage) bool {
		return s.roomFor(half) && (s.pairs[p.Part] == 0 && !p.Part.Marked() || half > tableRoom*s.body)
	}
	of, mixed := s.pairs[list[0].Part], false
	for k := 2; k <= len(list) && fits(list[0]) && fits(list[k-1]); k++ {
		pair := s.pairs[list[k-1].Part]
		if pair > 0 && pair != of {
			break
		}
		mixed = mixed || pair != of // of which there is but one way
		together := beside(half+columnGap, s.column(list[:1], half), s.column(list[1:k], half))
		apart := s.column(list[:k], s.flow.width())
		share := 100 * together.Height / stack(apart).Height
		if together.Height > s.area().Page || share > savesLittle || share >= best {
			continue
		}
		best, with = share, neighbours{[]way{{parts: []part{together}}}, k, stack(apart).Height - together.Height}
		if !mixed && (share > savesMuch || together.Height > highBeside) {
			with.ways = append(with.ways, way{parts: apart})
		}
	}
	return with
}

// once returns a section as it is set in a width, which is done once.
func (s sections) once(p words.Passage, width float64) []part {
	key := setIn{p.Part, width}
	if s.done[key] == nil {
		s.done[key] = s.set(p, width)
	}
	return s.done[key]
}

// setIn names a section and the width in mm that it is set in.
type setIn struct {
	part  stitch.Part
	width float64
}

// column sets sections one below the other.
func (s sections) column(list []words.Passage, width float64) (rows []part) {
	for i, p := range list {
		more := slices.Clone(s.once(p, width))
		if i > 0 {
			more[0].Above, more[0].goesOn = abovePassage, ""
		}
		rows = append(rows, more...)
	}
	return rows
}

// set sets a section in a width: its heading with how long it is, its rounds, where to
// stop.
func (s sections) set(p words.Passage, width float64) []part {
	head := s.head(p, width)
	var rows []part
	t := s.table(p, width)
	stop := p.StopAfter(s.long[p.Part])
	first, last := -1, 0 // of the rows, where the first and the last round begin
	for i, r := range t.rows {
		if r.From == 0 {
			rows = append(rows, t.aside(i)...)
			continue
		}
		if t.inside > 0 && r.From == 1 {
			rows = t.named(rows)
		}
		if last = len(rows); first < 0 {
			first = last
		}
		rows = append(rows, t.row(r)...)
		if i == stop {
			rows = append(rows, stack(append([]part{space(6)}, setLines(s.long[p.Part].Stop(), width, draw.TextStyle{Size: s.body})...)))
		}
	}
	for i := range max(first, 0) { // what is said before the first round stays with it
		rows[i].Keep = true
	}
	if first >= 0 && last > first { // nor does the last one begin a page
		rows[last-1].Keep = true
	}
	rows = keptWith([]part{head}, goingOn(s.keptRows(rows), p.Title))
	for i := range rows {
		rows[i].Words = s.pairs[p.Part]
	}
	return rows
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
		if s.o.Large {
			text = spelt(text)
		}
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
	whole := marked(2, p.Title, []part{stack(append(list, space(8)))})[0]
	texts := whole.draw
	whole.draw = func(page *draw.Scene, x, y float64) {
		texts(page, x, y)
		draws(page, x, y)
	}
	return whole
}

// noted returns the notes on cells and rounds, in the order of the chart's edits.
func (h *handout) noted() []string {
	var list []string
	for _, e := range h.Out.Charts.Marks.Edits() {
		if e.Layer != chart.Notes {
			continue
		}
		at := fmt.Sprintf("%s, %s %d", e.Section.Words(), h.Out.Planned.Noun(e.Section), e.Round)
		if e.Column != "" {
			at += ", column " + e.Column
		}
		list = append(list, at+": "+e.Value)
	}
	return list
}
