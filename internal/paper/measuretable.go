package paper

import (
	"thenar/internal/draw"
)

// measureRow is a measure in letters: a row of a table, or a column of one that lies.
type measureRow struct{ name, hand, mitt, ease string }

// measureRows returns the girths, with their ease, and the lengths.
func (h *handout) measureRows() (groups [2][]measureRow) {
	for _, m := range h.measured() {
		if m.hand > 0 {
			groups[0] = append(groups[0], measureRow{m.name, h.measureText(m.hand, m.doubt[0]), h.measureText(m.mitt, false), h.ease(&m)})
		}
		if m.along > 0 || m.long > 0 {
			groups[1] = append(groups[1], measureRow{name: m.name, hand: h.measureText(m.along, m.doubt[1]), mitt: h.measureText(m.long, false)})
		}
	}
	return groups
}

// groupNames head the girths and the lengths.
var groupNames = [2]string{"around", "length"}

// measureTable sets the measures over the width: your hand above, the mitt below and the
// ease last, first around, then the lengths.
func (h *handout) measureTable() part {
	size, unit := h.small, ", "+string(h.Doc.Sheet.Unit())
	groups := h.measureRows()
	hand, mitt := "your hand"+unit, "finished"+unit
	name := max(draw.Measure(hand, size, draw.Regular), draw.Measure(mitt, size, draw.Semibold))
	wide := func(r measureRow) float64 {
		return max(draw.Measure(r.name, size, draw.Regular), draw.Measure(r.hand, size, draw.Regular), draw.Measure(r.mitt, size, draw.Semibold))
	}
	rest := h.width() - name
	for _, g := range groups {
		for _, r := range g {
			rest -= wide(r)
		}
	}
	gap := min(rest/float64(len(groups[0])+len(groups[1])+1), 16)
	line := float64(lineHeight(size)) / 10
	return drawn(tenths(5*line+0.8), func(p *draw.Scene, x, y float64) {
		row := func(n int) float64 { return y + size + float64(n)*line }
		p.Text(x, row(2), hand, draw.TextStyle{Size: size})
		p.Text(x, row(3), mitt, draw.TextStyle{Size: size, Face: draw.Semibold})
		p.Text(x, row(4), "ease"+unit, draw.TextStyle{Size: size})
		at := x + name
		for k, g := range groups {
			at += float64(k) * gap // twice as much between girths and lengths
			from := at + gap
			for _, r := range g {
				at += gap + wide(r)
				end := draw.TextStyle{Size: size, Anchor: draw.End}
				p.Text(at, row(1), r.name, end)
				p.Text(at, row(2), r.hand, end)
				p.Text(at, row(4), r.ease, end)
				end.Face = draw.Semibold
				p.Text(at, row(3), r.mitt, end)
			}
			p.Text(from, row(0), groupNames[k], draw.TextStyle{Size: size, Face: draw.Semibold})
			p.Line(from, row(0)+0.3*size, at, row(0)+0.3*size, draw.Style{Stroke: ink, Width: 0.2})
			if k == 1 {
				said := h.easeWords() + "."
				p.Text(min(from, x+h.width()-draw.Measure(said, size, draw.Regular)), row(4), said, draw.TextStyle{Size: size})
			}
		}
	})
}

// measureColumns sets the measures below each other in a narrow column: around, then
// length. The ease stands in the words below the drawing.
func (h *handout) measureColumns(width float64) part {
	size, unit, list := h.note(), ", "+string(h.Doc.Sheet.Unit()), h.measured()
	if n := len(list) - 1; list[n].long == 0 { // only the hand's, and no girth
		list = list[:n]
	}
	line := float64(lineHeight(size)) / 10
	name := 0.0
	for _, m := range list {
		name = max(name, draw.Measure(m.name, size, draw.Regular))
	}
	heads := []string{"hand", h.noun(), "hand", h.noun()}
	ends := columnEnds(name, width, h.widestMeasures(heads, list, size))
	return drawn(tenths(line*float64(len(list)+2)+0.8), func(p *draw.Scene, x, y float64) {
		cell := func(k, row int, text string) {
			p.Text(x+ends[k], y+size+float64(row)*line, text, draw.TextStyle{Size: size, Anchor: draw.End, Face: measureFace(k)})
		}
		for k, head := range heads {
			cell(k, 1, head)
		}
		for k, head := range groupNames {
			p.Text(x+ends[2*k+1], y+size, head+unit, draw.TextStyle{Size: size, Anchor: draw.End, Face: draw.Semibold})
		}
		p.Line(x, y+2*line+0.1, x+width, y+2*line+0.1, draw.Style{Stroke: ink, Width: 0.2})
		y += 0.8
		for i, m := range list {
			p.Text(x, y+size+float64(i+2)*line, m.name, draw.TextStyle{Size: size})
			for k := range heads {
				cell(k, i+2, h.measureCell(k, m))
			}
		}
	})
}

// measureFace returns the face of a column of measures: the mitt's are bold.
func measureFace(k int) draw.Face { return [...]draw.Face{draw.Regular, draw.Semibold}[k%2] }

// measureCell returns what a column of measures says of one: hand and mitt around, hand
// and mitt along.
func (h *handout) measureCell(k int, m measure) string {
	mm := [...]float64{m.hand, m.mitt, m.along, m.long}[k]
	return h.measureText(mm, k%2 == 0 && m.doubt[k/2])
}

// widestMeasures returns the widths in mm of the columns of measures.
func (h *handout) widestMeasures(heads []string, list []measure, size float64) []float64 {
	widest := make([]float64, len(heads))
	for k, head := range heads {
		widest[k] = draw.Measure(head, size, measureFace(k))
		for _, m := range list {
			widest[k] = max(widest[k], draw.Measure(h.measureCell(k, m), size, measureFace(k)))
		}
	}
	return widest
}

// columnEnds returns where columns of widths end that are set to the right edge of a
// width in mm, with equal gaps between them and after what stands before them.
func columnEnds(before, width float64, widths []float64) (ends []float64) {
	gap := width - before
	for _, w := range widths {
		gap -= w
	}
	gap /= float64(len(widths))
	at := before
	for _, w := range widths {
		at += gap + w
		ends = append(ends, at)
	}
	return ends
}

// measurePair sets the measures as measureColumns does, in large print as narrow as they
// can be, and returns their width. The ease stands in the words below the drawing, and the
// whole mitt's length in the drawing.
func (h *handout) measurePair() (both part, width float64) {
	groups := h.measureRows()
	wide := func(text string, face draw.Face) float64 { return draw.Measure(spelt(text), h.body, face) }
	unit := ", " + string(h.Doc.Sheet.Unit())
	name, hand, mitt := wide(groupNames[0]+unit, draw.Semibold), wide("hand", draw.Regular), wide(h.noun(), draw.Semibold)
	for k, g := range groups {
		var list []measureRow
		for _, r := range g {
			if r.name = inLarge(r.name); k == 1 && (r.hand == "" || r.mitt == "" && len(list) > 0) {
				continue
			}
			list = append(list, r)
			name, hand, mitt = max(name, wide(r.name, draw.Regular)), max(hand, wide(r.hand, draw.Regular)), max(mitt, wide(r.mitt, draw.Semibold))
		}
		groups[k] = list
	}
	const gap = 3.0
	width = name + gap + hand + gap + mitt
	return stack([]part{h.measureColumn(0, groups[0], h.body, width, mitt+gap), h.measureColumn(1, groups[1], h.body, width, mitt+gap)}), width
}

// inLarge returns the name of a measure as it stands in large print.
func inLarge(name string) string {
	switch name {
	case "bone to thumb":
		return "gusset"
	case "wrist, cuff":
		return "wrist"
	}
	return name
}

// measureColumn sets what the hand and the mitt measure around, or along, in rows below a
// heading. The mitt’s column takes so much of the width.
func (h *handout) measureColumn(k int, list []measureRow, size, width, column float64) part {
	line := float64(lineHeight(size)) / 10
	head := measureRow{groupNames[k] + ", " + string(h.Doc.Sheet.Unit()), "hand", h.noun(), ""}
	return drawn(tenths(line*float64(len(list)+1)+0.3*size+1), func(p *draw.Scene, x, y float64) {
		row := func(y float64, r measureRow, face draw.Face) {
			end := draw.TextStyle{Size: size, Anchor: draw.End}
			p.Text(x, y, r.name, draw.TextStyle{Size: size, Face: face})
			p.Text(x+width-column, y, h.inLetters(r.hand), end)
			end.Face = draw.Semibold
			p.Text(x+width, y, h.inLetters(r.mitt), end)
		}
		row(y+size, head, draw.Semibold)
		p.Line(x, y+line+0.1, x+width, y+line+0.1, draw.Style{Stroke: ink, Width: 0.3})
		y++
		for i, r := range list {
			row(y+size+float64(i+1)*line, r, draw.Regular)
		}
	})
}
