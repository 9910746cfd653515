package paper

import (
	"fmt"
	"strconv"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// unsound writes which painted rounds do not add up.
func (h *handout) unsound() {
	for _, u := range h.Out.Unsound {
		h.text(margin, h.width(), "Does not add up: "+u.Words+".", draw.TextStyle{Size: h.body, Face: draw.Semibold})
	}
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
		h.unsound()
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

// words writes the instructions, section by section. A step stays on one page with
// its label.
func (h *handout) words() {
	h.freshPage()
	h.text(margin, h.width(), "Words", draw.TextStyle{Size: h.heading, Face: draw.Serif})
	h.unsound()
	if h.Out.Changed.Count() > 0 {
		h.say("A star marks the rounds that the last try changed; the charts have a bar beside them.", h.body)
	}
	long := h.lengthsByPart()
	for _, passage := range h.Out.Words {
		h.head(passage.Title, 0)
		if l, ok := long[passage.Part]; ok {
			h.say(l.Words()+".", h.body)
		}
		if text := h.Out.InColours(passage.Part); text != "" {
			h.say(text+": take them from the chart of the "+passage.Part.Words()+".", h.body)
		}
		for _, s := range passage.Steps {
			h.step(passage.Part, s)
		}
	}
}

func (h *handout) step(part stitch.Part, s words.Step) {
	if s.From == 0 {
		h.need(h.textHeight(s.Text, h.width(), h.body))
		h.say(s.Text, h.body)
		h.y += 0.8
		return
	}
	name := s.Label()
	if h.Out.Changed.Any(part, s.From, s.To) {
		name += " *"
	}
	label := draw.Measure("Rounds 88–88 *", h.body*0.9, draw.Semibold) + 2
	h.need(h.textHeight(s.Text, h.width()-label, h.body))
	h.page().Text(margin, h.y+h.body, name, draw.TextStyle{Size: h.body * 0.9, Face: draw.Semibold})
	h.text(margin+label, h.width()-label, s.Text, draw.TextStyle{Size: h.body})
}

// ticks draws a box to tick for every round, with the count on the needles after it
// where that changes.
func (h *handout) ticks() {
	h.freshPage()
	h.text(margin, h.width(), "Rounds to tick", draw.TextStyle{Size: h.heading, Face: draw.Serif})
	h.say("A heavy box is a round that changes the count; below it stands the count after it.", h.body)
	size := max(9, 2*h.body)
	across := int(h.width() / size)
	long := h.lengthsByPart()
	for _, s := range h.Out.Mitt.Sections {
		l, ok := long[s.Part]
		if !ok {
			continue
		}
		h.head(fmt.Sprintf("%s: %s", s.Part.Title(), l.Words()), size+h.body)
		for from := 0; from < len(s.Rounds); from += across {
			h.need(size + h.small + 3)
			for i := from; i < min(from+across, len(s.Rounds)); i++ {
				h.box(s, i, margin+float64(i-from)*size, size)
			}
			h.y += size + h.small + 2
		}
	}
}

// box draws the box of one round.
func (h *handout) box(s stitch.Section, i int, x, size float64) {
	r, width := s.Rounds[i], 0.25
	if before, after := r.In(), r.Out(); before != after {
		width = 0.7
		h.page().Text(x+size/2, h.y+size+h.small*0.9, strconv.Itoa(after), draw.TextStyle{Size: h.small * 0.9, Anchor: draw.Middle})
	}
	h.page().Rect(x+0.5, h.y, size-1, size-1, draw.Style{Stroke: ink, Width: width})
	h.page().Text(x+size/2, h.y+size/2+h.small*0.35, strconv.Itoa(i+1), draw.TextStyle{Size: h.small, Anchor: draw.Middle})
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
