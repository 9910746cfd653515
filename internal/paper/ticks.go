package paper

import (
	"fmt"
	"strconv"

	"thenar/internal/draw"
	"thenar/internal/stitch"
)

// ticks sets a box to tick for every round, with the count on the needles below it
// where that changes.
func (h *handout) ticks() []block {
	head := keptWith(h.headingPart("Rounds to tick"), h.paragraphs([]string{"A heavy box is a round that changes the count; below it stands the count after it."}))
	list := []block{one("ticks", aboveHeading, head)}
	list[0].withNext = true
	long := h.lengthsByPart()
	for _, s := range h.Out.Mitt.Sections {
		if l, ok := long[s.Part]; ok {
			name := fmt.Sprintf("%s: %s", s.Part.Title(), l.Words())
			again := name
			if draw.Measure(goesOn(name), h.body, draw.Semibold) > h.width() {
				again = s.Part.Title()
			}
			b := one(name, abovePassage, keptWith(h.headingPart(name), goingOn(h.boxes(s), again)))
			list = append(list, b)
		}
	}
	return list
}

// boxes sets the boxes of a section in rows.
func (h *handout) boxes(s stitch.Section) []part {
	size := max(9, 2*h.body)
	across := int(h.width() / size)
	var rows []part
	for from := 0; from < len(s.Rounds); from += across {
		rows = append(rows, drawn(tenths(size+h.small+2), func(p *draw.Scene, x, y float64) {
			for i := from; i < min(from+across, len(s.Rounds)); i++ {
				h.box(p, s, i, x+float64(i-from)*size, y, size)
			}
		}))
	}
	return rows
}

// box draws the box of one round.
func (h *handout) box(p *draw.Scene, s stitch.Section, i int, x, y, size float64) {
	r, width := s.Rounds[i], 0.25
	if before, after := r.In(), r.Out(); before != after {
		width = 0.7
		p.Text(x+size/2, y+size+h.small*0.9, strconv.Itoa(after), draw.TextStyle{Size: h.small, Anchor: draw.Middle})
	}
	p.Rect(x+0.5, y, size-1, size-1, draw.Style{Stroke: ink, Width: width})
	p.Text(x+size/2, y+size/2+h.small*0.35, strconv.Itoa(i+1), draw.TextStyle{Size: h.small, Anchor: draw.Middle})
}
