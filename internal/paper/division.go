package paper

import (
	"slices"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/project"
)

// division sets how the hand is divided into fingers: drawn, and finger by finger in a table.
// In large print the counts stand with those of the other parts, so that the table has only
// girths and lengths.
func (h *handout) division() []block {
	if len(h.fingers()) == 0 {
		return nil
	}
	const head = "Fingers"
	b := block{name: "fingers", above: aboveHeading}
	caption := setLines(h.Out.Terms.Say(picture.DivisionWords(h.Out.Planned)), h.width(), draw.TextStyle{Size: h.note()})
	for s, share := range shrinking() {
		o := picture.DivisionOptions{Left: h.Doc.Side == project.Left, Width: share * h.width(), Letter: h.small, Say: h.Out.Terms.Say}
		if h.o.Large {
			o.Letter = h.body
		}
		drawn := picture.Division(h.Out.Planned, o)
		rows := []part{scene(drawn.Height, 1, func() *draw.Scene { return drawn }, (h.width()-drawn.Width)/2)}
		rows[0].Keep = true
		rows = append(rows, stack(append(slices.Clone(caption), space(10))))
		if h.o.Large {
			rows = append(rows, h.fingerSizes()...)
			if f := h.fixedOfFingers(); f != "" {
				rows = append(rows, setLines("Fixed: "+f+".", h.width(), draw.TextStyle{Size: h.body})...)
			}
		} else {
			rows[1].Keep = true
			rows = append(rows, h.fingerTable()...)
		}
		b.ways = append(b.ways, way{s, keptWith(h.headingPart(head), rows)})
	}
	return []block{b}
}

// fingerSizes sets a row for each finger with its girth and length, and those of its tube.
func (h *handout) fingerSizes() []part {
	columns := slices.Clone(fingerColumns[:5])
	columns[0].head += ", " + string(h.Doc.Sheet.Unit())
	t := table{handout: h}
	t.first, t.second = h.twoLines(columns)
	var rows []row
	for _, f := range h.fingers() {
		rows = append(rows, row{cells: h.sizesOf(&f)})
	}
	list := t.rows(t.inLines(rows), "")
	for i := range list[:len(list)-1] { // it stays in one piece
		list[i].Keep = true
	}
	return list
}

// sizesOf returns the first cells of a finger's row: its name, girth and length.
func (h *handout) sizesOf(f *fingerRow) []string {
	return []string{
		strings.TrimSuffix(f.share.Part.Words(), " finger"), h.inLetters(h.measureText(f.girth, f.doubt[0])), h.inLetters(h.measureText(f.mm, false)),
		h.inLetters(h.measureText(f.long, f.doubt[1])), h.inLetters(h.measureText(f.tube, false)),
	}
}
