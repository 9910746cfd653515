package paper

import (
	"thenar/internal/draw"
	"thenar/internal/units"
)

// measure is what was measured on the hand, and what the mitt has there: girths and
// lengths in mm, 0 where there is none.
type measure struct {
	name        string
	hand, mitt  float64 // round
	along, long float64 // of the hand and the mitt
	doubt       [2]bool // the girth or the length of the hand was filled in
}

// measured lists the measures of hand and mitt.
func (h *handout) measured() []measure {
	p := h.Out.Plan
	round := func(stitches int) float64 { return float64(stitches) / p.Gauge.Stitches }
	whole := 0
	for i := range h.Out.Mitt.Sections {
		if s := &h.Out.Mitt.Sections[i]; s.Part != thumbPart {
			whole += len(s.Rounds)
		}
	}
	long := func(rounds int) float64 { return float64(rounds) / p.Gauge.Rounds }
	list := []measure{{
		name: "hand", hand: p.Hand.Circumference.MM(), mitt: round(p.Body.Stitches.N),
		along: p.Hand.Length.MM(), long: long(whole), doubt: h.filled("hand.hand_circumference", "hand.hand_length"),
	}}
	if p.Thumbed() {
		list = append(list, measure{
			name: "with the thumb", hand: p.Hand.Palm.MM(), mitt: round(p.Body.Stitches.N + p.Gusset.Stitches - p.Gusset.Base),
			doubt: h.filled("hand.palm_and_thumb_circumference", ""),
		})
	}
	list = append(list, measure{name: "wrist, cuff", hand: p.Hand.Wrist.MM(), mitt: round(p.Cuff.CastOn.N), doubt: h.filled("hand.wrist_circumference", "")})
	if p.Thumbed() {
		list = append(list, measure{
			name: "thumb", hand: p.Hand.Thumb.MM(), mitt: round(p.Thumb.Stitches.N),
			along: p.Hand.ThumbLength.MM(), long: long(p.Thumb.Rounds), doubt: h.filled("hand.thumb_circumference", "hand.thumb_length"),
		}, measure{
			name: "gusset", along: p.Hand.GussetLength.MM(), long: long(p.Gusset.Rounds.N), doubt: h.filled("", "hand.gusset_length"),
		}, measure{
			name: "wrist to thumb", along: p.Hand.WristToCrotch.MM(), doubt: h.filled("", "hand.wrist_to_crotch"),
		})
	}
	return list
}

// filled reports which of two measures of the hand were filled in.
func (h *handout) filled(girth, length string) (doubt [2]bool) {
	for _, f := range h.Out.Plan.Filled {
		doubt[0] = doubt[0] || f.Field == girth
		doubt[1] = doubt[1] || f.Field == length
	}
	return doubt
}

// measureTable sets the measures over the width: your hand above, the mitt below, first
// round, then long.
func (h *handout) measureTable() part {
	unit := h.Doc.Sheet.Unit()
	type column struct {
		name, hand, mitt string
		wide             float64
	}
	size := h.small
	var groups [2][]column // round, long
	wide := 0.0
	for _, m := range h.measured() {
		for k, c := range []column{
			{name: m.name, hand: h.measureText(m.hand, m.doubt[0]), mitt: h.measureText(m.mitt, false)},
			{name: m.name, hand: h.measureText(m.along, m.doubt[1]), mitt: h.measureText(m.long, false)},
		} {
			if c.hand == "" {
				continue
			}
			c.wide = max(draw.Measure(c.name, size, draw.Regular), draw.Measure(c.hand, size, draw.Regular), draw.Measure(c.mitt, size, draw.Semibold))
			wide += c.wide
			groups[k] = append(groups[k], c)
		}
	}
	name := draw.Measure("finished mitt, "+string(unit), size, draw.Semibold)
	gap := min((h.width()-name-wide)/float64(len(groups[0])+len(groups[1])), 16)
	line := float64(lineHeight(size)) / 10
	rule := draw.Style{Stroke: ink, Width: 0.2}
	return drawn(tenths(4*line+0.8), func(p *draw.Scene, x, y float64) {
		row := func(n int) float64 { return y + size + float64(n)*line }
		p.Text(x, row(2), "your hand, "+string(unit), draw.TextStyle{Size: size})
		p.Text(x, row(3), "finished mitt, "+string(unit), draw.TextStyle{Size: size, Face: draw.Semibold})
		at := x + name
		for k, head := range []string{"round", "long"} {
			from := at + gap
			for _, c := range groups[k] {
				at += gap + c.wide
				end := draw.TextStyle{Size: size, Anchor: draw.End}
				p.Text(at, row(1), c.name, end)
				p.Text(at, row(2), c.hand, end)
				end.Face = draw.Semibold
				p.Text(at, row(3), c.mitt, end)
			}
			if len(groups[k]) > 0 {
				p.Text(from, row(0), head, draw.TextStyle{Size: size, Face: draw.Semibold})
				p.Line(from, row(0)+0.3*size, at, row(0)+0.3*size, rule)
			}
		}
	})
}

// measureRows sets the measures below each other, for a narrow column.
func (h *handout) measureRows(width float64) part {
	size, list := h.note(), h.measured()
	heads := [2]string{"round, " + string(h.Doc.Sheet.Unit()), "long, " + string(h.Doc.Sheet.Unit())}
	line := float64(lineHeight(size)) / 10
	name := 0.0
	for _, m := range list {
		name = max(name, draw.Measure(m.name, size, draw.Regular))
	}
	column := (width - name) / 4
	return drawn(tenths(line*float64(len(list)+2)+0.8), func(p *draw.Scene, x, y float64) {
		end := func(k int) float64 { return x + name + float64(k+1)*column }
		cell := func(k, row int, text string, face draw.Face) {
			p.Text(end(k), y+size+float64(row)*line, text, draw.TextStyle{Size: size, Anchor: draw.End, Face: face})
		}
		for k, head := range []string{"hand", "mitt", "hand", "mitt"} {
			cell(k, 1, head, [...]draw.Face{draw.Regular, draw.Semibold}[k%2])
		}
		cell(1, 0, heads[0], draw.Semibold)
		cell(3, 0, heads[1], draw.Semibold)
		p.Line(x, y+2*line+0.1, x+width, y+2*line+0.1, draw.Style{Stroke: ink, Width: 0.2})
		y += 0.8
		for i, m := range list {
			p.Text(x, y+size+float64(i+2)*line, m.name, draw.TextStyle{Size: size})
			for k, mm := range []float64{m.hand, m.mitt, m.along, m.long} {
				cell(k, i+2, h.measureText(mm, k%2 == 0 && m.doubt[k/2]), [...]draw.Face{draw.Regular, draw.Semibold}[k%2])
			}
		}
	})
}

// measureText returns a measure without its unit, marked if it was filled in; empty if
// there is none.
func (h *handout) measureText(mm float64, doubt bool) string {
	switch unit := h.Doc.Sheet.Unit(); {
	case mm == 0:
		return ""
	case doubt:
		return "≈ " + units.FromMM(mm).Format(unit)
	default:
		return units.FromMM(mm).Format(unit)
	}
}

// measurePair sets the measures as two tables below each other, round and long, and
// returns their width.
func (h *handout) measurePair() (both part, width float64) {
	var round, long []measure
	mark := 0.0
	wide := func(text string, face draw.Face) float64 { return draw.Measure(spelt(text), h.body, face) }
	unit := string(h.Doc.Sheet.Unit())
	name, hand, mitt := wide("round, "+unit, draw.Semibold), wide("hand", draw.Regular), wide("mitt", draw.Semibold)
	for _, m := range h.measured() {
		m.name = shorter(m.name)
		if m.hand > 0 {
			round = append(round, m)
		}
		if m.along > 0 {
			long = append(long, measure{name: m.name, hand: m.along, mitt: m.long, doubt: [2]bool{m.doubt[1]}})
		}
		if m.doubt[0] || m.doubt[1] {
			mark = wide("≈ ", draw.Regular)
		}
		name = max(name, wide(m.name, draw.Regular))
		for _, mm := range []float64{m.hand, m.along} {
			hand = max(hand, wide(h.measureText(mm, false), draw.Regular))
		}
		for _, mm := range []float64{m.mitt, m.long} {
			mitt = max(mitt, wide(h.measureText(mm, false), draw.Semibold))
		}
	}
	const gap = 3.0
	width = name + gap + mark + hand + gap + mitt
	return stack(append([]part{h.measureColumn("round, "+unit, round, width, mitt+gap)}, h.measureColumn("long, "+unit, long, width, mitt+gap))), width
}

// shorter returns the name of a measure as it stands in large print.
func shorter(name string) string {
	switch name {
	case "with the thumb":
		return "with thumb"
	case "wrist to thumb":
		return "to thumb"
	case "wrist, cuff":
		return "wrist"
	}
	return name
}

// measureColumn sets what the hand and the mitt measure below a heading. The mitt's column
// takes so much of the width.
func (h *handout) measureColumn(head string, list []measure, width, mitt float64) part {
	size := h.body
	line := float64(lineHeight(size)) / 10
	return drawn(tenths(line*float64(len(list)+1)+3), func(p *draw.Scene, x, y float64) {
		row := func(y float64, name, hand, of string, face draw.Face) {
			p.Text(x, y, name, draw.TextStyle{Size: size, Face: face})
			p.Text(x+width-mitt, y, spelt(hand), draw.TextStyle{Size: size, Anchor: draw.End})
			p.Text(x+width, y, spelt(of), draw.TextStyle{Size: size, Anchor: draw.End, Face: draw.Semibold})
		}
		row(y+size, head, "hand", "mitt", draw.Semibold)
		p.Line(x, y+line+0.1, x+width, y+line+0.1, draw.Style{Stroke: ink, Width: 0.3})
		y++
		for i, m := range list {
			row(y+size+float64(i+1)*line, m.name, h.measureText(m.hand, m.doubt[0]), h.measureText(m.mitt, false), draw.Regular)
		}
	})
}
