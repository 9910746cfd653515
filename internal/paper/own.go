package paper

import (
	"fmt"
	"slices"

	"thenar/internal/draw"
	"thenar/internal/words"
)

// ownNumbers sets lines for the knitter's own numbers, each with the plan's beside it.
func (h *handout) ownNumbers() block {
	p := h.Out.Plan
	lines := [][2]string{
		{"Stitches over 10 cm", fmt.Sprintf("%.1f", p.Gauge.Stitches*100)},
		{"Rounds over 10 cm", fmt.Sprintf("%.1f", p.Gauge.Rounds*100)},
		{"Hand, round the knuckles", p.Hand.Circumference.With(h.Doc.Sheet.Unit())},
		{"I cast on", words.Plural(p.Cuff.CastOn.N, "stitch")},
	}
	if p.Thumbed() {
		lines = append(lines, [2]string{"Gusset, rounds", fmt.Sprint(p.Gusset.Rounds.N)}, [2]string{"Gusset, stitches at its end", fmt.Sprint(p.Gusset.Stitches)},
			[2]string{"Held for the thumb", fmt.Sprint(p.Thumb.Held)}, [2]string{"Cast on over the gap", fmt.Sprint(p.Bridge.CastOn)})
	}
	lines = append(lines, [2]string{"Rounds of the hand", fmt.Sprint(p.Body.RoundsAbove)})
	if p.Thumbed() {
		lines = append(lines, [2]string{"Thumb, stitches and rounds", fmt.Sprintf("%d, %d", p.Thumb.Stitches.N, p.Thumb.Rounds)})
	}
	lines = append(lines, [2]string{"Needles that I used", ""}, [2]string{"Begun on, finished on", ""})
	if h.o.Large {
		for i, l := range lines {
			if short := shortOwn[l[0]]; short != "" {
				lines[i][0] = short
			}
		}
	}
	return h.ownRows(lines)
}

// shortOwn holds names that fit one line in large print.
var shortOwn = map[string]string{
	"Hand, round the knuckles": "Hand round", "Gusset, stitches at its end": "Gusset, stitches", "Thumb, stitches and rounds": "Thumb",
}

// ownRows sets the lines in three columns, or in two where they are too long for that.
// They stay together, unless they are in large print.
func (h *handout) ownRows(lines [][2]string) block {
	n := 3
	if !h.ownFit(lines, h.columnWidth(n)) {
		n = 2
	}
	var rows []part
	for row := range slices.Chunk(lines, n) {
		line := h.ownRow(row, h.columnWidth(n))
		line.Keep = !h.o.Large
		rows = append(rows, line)
	}
	rows[len(rows)-1].Keep = false
	return h.headed("My own numbers", keptLines(rows))
}

// columnWidth returns the width of one of n columns in mm.
func (h *handout) columnWidth(n int) float64 {
	return (h.width() - float64(n-1)*columnGap) / float64(n)
}

// ownFit reports whether every line has room in a width for its text and value.
func (h *handout) ownFit(lines [][2]string, width float64) bool {
	return !slices.ContainsFunc(lines, func(l [2]string) bool {
		return draw.Measure(l[0], h.small, draw.Regular)+h.valueWidth(l[1]) > width
	})
}

// valueWidth returns the room for a plan's number beside its text.
func (h *handout) valueWidth(text string) float64 {
	return draw.Measure(text, h.small, draw.Semibold) + 2
}

// ownRow sets texts side by side, each with the plan's number at its right and a rule
// below it to write on.
func (h *handout) ownRow(row [][2]string, width float64) part {
	texts := make([][]part, len(row))
	for i, l := range row {
		texts[i] = setLines(l[0], width-h.valueWidth(l[1]), draw.TextStyle{Size: h.small})
	}
	all := beside(width+columnGap, texts...)
	height := all.Height + tenths(min(1.15*h.body, 6.6))
	return drawn(height, func(p *draw.Scene, x, y float64) {
		all.draw(p, x, y)
		for _, l := range row {
			p.Text(x+width, y+h.small, l[1], draw.TextStyle{Size: h.small, Face: draw.Semibold, Anchor: draw.End})
			foot := y + float64(height)/10 - 0.6
			p.Line(x, foot, x+width, foot, draw.Style{Stroke: ink, Width: 0.25})
			x += width + columnGap
		}
	})
}

// ruledStep is the height of a ruled line in mm, and leastRuled how many there are at
// least.
const (
	ruledStep  = 9.0
	leastRuled = 8
)

// notes sets the notes of the chart, and ruled lines down to the foot of the page, at
// least eight.
func (h *handout) notes() block {
	rows := h.paragraphs(h.noted())
	rule := func(p *draw.Scene, x, y float64) {
		p.Line(x, y+ruledStep-0.6, x+h.width(), y+ruledStep-0.6, draw.Style{Stroke: ink, Width: 0.25})
	}
	for range leastRuled {
		line := drawn(tenths(ruledStep), rule)
		line.Keep = true
		rows = append(rows, line)
	}
	rows[len(rows)-1].Keep = false
	b := h.headed("Notes", rows)
	b.fill = func(p *draw.Scene, x, y, room float64) {
		for ; room >= ruledStep; room -= ruledStep {
			rule(p, x, y)
			y += ruledStep
		}
	}
	return b
}

// caution is printed on everything that is handed out.
const caution = "A cuff or mitt that is too tight shows in tingling, cold or pale fingers: take it off. For babies: no loose threads inside, no tight elastic, no cord round the neck. General caution, not medical advice."

// cautions sets the plan's warnings and the usual cautions.
func (h *handout) cautions() block {
	list := []string{}
	for _, w := range h.Out.Plan.Warnings {
		list = append(list, words.Caution(w.Message))
	}
	if n := len(h.Out.Plan.Filled); n > 0 {
		list = append(list, fmt.Sprintf("Filled from ratios, not measured (dotted on the drawing): %s. Measure when you can.", words.Plural(n, "value")))
	}
	try := "on before the top"
	if h.Out.Plan.Thumbed() {
		try = "on half-way up the gusset"
	}
	list = append(list, fmt.Sprintf("Every girth may come out %.1f %% wider or narrower (95 %%): try the mitt %s.", h.Out.Summary.Half*100, try), caution)
	var rows []part
	for _, text := range list {
		rows = append(rows, h.bullet(text))
	}
	return h.headed("Cautions", h.keptRows(rows))
}

// bullet sets a text behind a dot.
func (h *handout) bullet(text string) part {
	style := draw.TextStyle{Size: h.small}
	indent := draw.Measure("•  ", h.small, draw.Regular)
	return beside(indent, setLines("•", indent, style), setLines(text, h.width()-indent, style))
}
