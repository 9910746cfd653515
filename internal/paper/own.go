package paper

import (
	"fmt"
	"slices"

	"thenar/internal/draw"
	"thenar/internal/project"
	"thenar/internal/units"
	"thenar/internal/words"
)

// ownNumbers sets lines for the knitter's own numbers, each with the plan's beside it.
func (h *handout) ownNumbers() block {
	p, unit := h.Out.Plan, h.Doc.Sheet.Unit()
	over, ten := "10 cm", 100.0
	if unit == units.IN {
		over, ten = "4 in", 4*units.Inch.MM()
	}
	edge := "Cast on"
	if p.Down() {
		edge = h.Out.Terms.Say("Bind off")
	}
	lines := [][2]string{
		{"Stitches over " + over, project.Tenths(p.Gauge.Stitches * ten)},
		{"Rounds over " + over, project.Tenths(p.Gauge.Rounds * ten)},
		{"Hand, around", h.inLetters(p.Hand.Circumference.With(unit))},
		{edge, stitchesOn(p, p.Cuff.CastOn.N)},
	}
	switch {
	case p.Gusseted() && p.Down():
		lines = append(lines, [2]string{"Gusset", words.Plural(p.Gusset.Rounds.N, "round")}, [2]string{"Gusset at its start", words.Plural(p.Gusset.Stitches, "stitch")},
			[2]string{"Out of the thumb", words.Plural(p.Thumb.Held, "stitch")}, [2]string{"Wait for the gap", words.Plural(p.Bridge.CastOn, "stitch") + " of each"})
	case p.Gusseted():
		lines = append(lines, [2]string{"Gusset", words.Plural(p.Gusset.Rounds.N, "round")}, [2]string{"Gusset at its end", words.Plural(p.Gusset.Stitches, "stitch")},
			[2]string{"Held for the thumb", words.Plural(p.Thumb.Held, "stitch")}, [2]string{"Bridge", words.Plural(p.Bridge.CastOn, "stitch")})
	}
	if w := p.Thumb.OnWaste; w > 0 {
		lines = append(lines, [2]string{"To the thumb", words.Plural(p.Gusset.Rounds.N, "round")}, [2]string{"With waste yarn", words.Plural(w, "stitch")})
	}
	if rows := p.OpeningRows(); rows > 0 {
		lines = append(lines, [2]string{"Opening", words.Plural(rows, "row")})
	}
	lines = append(lines, [2]string{"Hand", words.Plural(p.Body.RoundsAbove, "round")})
	if p.Fingered() && p.Fingers.Lower > 0 {
		lines = append(lines, [2]string{"Upper hand", words.Plural(p.Fingers.Lower, "round")})
	}
	for _, f := range h.fingers() {
		lines = append(lines, [2]string{f.share.Part.Title(), fmt.Sprintf("%s stitches, %s", f.count(), words.Plural(f.of.Rounds, "round"))})
	}
	if p.Thumbed() {
		lines = append(lines, [2]string{"Thumb", stitchesOn(p, p.Thumb.Stitches.N) + ", " + words.Plural(p.Thumb.Rounds, "round")})
	} else if p.Top != nil {
		lines = append(lines, [2]string{"Top", words.Plural(p.Top.Rounds, "round")})
	}
	for i := range lines {
		lines[i] = [2]string{h.said(lines[i][0]), h.said(lines[i][1])}
	}
	return h.ownRows(append(lines, [2]string{"Needles", ""}, [2]string{"Begun, finished", ""}))
}

// ownRows sets the lines in three columns, or in two where they are too long for that.
// They stay together, unless they are in large print.
func (h *handout) ownRows(lines [][2]string) block {
	n := 3
	if !h.ownFit(lines, h.columnWidth(n)) {
		n = 2
	}
	for _, more := range []string{"Yarn and colour", "Changed on the way"} {
		if len(lines)%n != 0 { // every row is full
			lines = append(lines, [2]string{more, ""})
		}
	}
	var rows []part
	for row := range slices.Chunk(lines, n) {
		line := h.ownRow(row, h.columnWidth(n))
		line.Keep = true
		rows = append(rows, line)
	}
	rows[len(rows)-1].Keep = false
	const head, how = "My own numbers", "printed: the plan; yours on the line"
	b := h.headed(head, keptLines(rows))
	if first := &b.ways[0].parts[0]; draw.Measure(head, h.heading, draw.Serif)+draw.Measure(how, h.small, draw.Regular)+5 <= h.width() {
		titled := first.draw
		first.draw = func(p *draw.Scene, x, y float64) {
			titled(p, x, y)
			p.Text(x+h.width(), y+h.heading, how, draw.TextStyle{Size: h.small, Anchor: draw.End})
		}
	}
	return b
}

// inLetters returns a text as it is set: in large print with its fractions spelt.
func (h *handout) inLetters(text string) string {
	if h.o.Large {
		return spelt(text)
	}
	return text
}

// toWriteOn returns the room in mm below a text, down to the line that is written on.
func (h *handout) toWriteOn() float64 {
	if h.o.Large {
		return 6.2
	}
	return 3.7
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
	height := all.Height + tenths(h.toWriteOn())
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
const caution = "Tingling, cold or pale fingers: too tight, take it off. Babies: no loose thread, tight elastic, neck cord. Not medical advice."

// cautions sets the plan's warnings and the usual cautions.
func (h *handout) cautions() block {
	list := []string{}
	for _, w := range h.Out.Plan.Warnings {
		list = append(list, words.Caution(w.Message))
	}
	if n := len(h.Out.Plan.Filled); n > 0 {
		list = append(list, fmt.Sprintf("≈ marks what is estimated, %s: measure when you can.", words.Plural(n, "length")))
	}
	list = append(list, h.offBy(), caution)
	var rows []part
	for _, text := range list {
		rows = append(rows, h.bullet(text))
	}
	return h.headed("Cautions", h.keptRows(rows))
}

// offBy says by how much the hand's girth may come out wider or narrower, 19 times in 20,
// and when to try the mitt on for it.
func (h *handout) offBy() string {
	p := h.Out.Plan
	try := "before the top"
	switch {
	case p.Down() && p.Parted():
		try = "before the thumb is joined"
	case p.Down():
		try = "before the cuff"
	case p.Gusseted():
		try = "half-way up the gusset"
	case p.Parted():
		try = "just below the thumb"
	case p.Top == nil:
		try = "before the edging"
	}
	off := float64(p.Body.Stitches.N) / p.Gauge.Stitches * h.Out.Summary.Half
	return fmt.Sprintf("Girths may come out %s off: try it on %s.", words.UpTo(off, h.Out.Unit), try)
}

// bullet sets a text behind a dot.
func (h *handout) bullet(text string) part {
	style := draw.TextStyle{Size: h.small}
	indent := draw.Measure("•  ", h.small, draw.Regular)
	return beside(indent, setLines("•", indent, style), setLines(text, h.width()-indent, style))
}
