package paper

import (
	"fmt"

	"thenar/internal/draw"
	"thenar/internal/words"
)

// ownNumbers draws lines for the knitter's own numbers, each with the plan's beside
// it.
func (h *handout) ownNumbers() {
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
	step := 1.95 * h.body
	h.head("My own numbers", 3*step)
	half := (h.width() - 6) / 2
	across := 2
	if h.o.Large {
		half, across = h.width(), 1
	}
	for i, l := range lines {
		if i%across == 0 {
			h.need(step)
			h.y += step
		}
		x := margin + float64(i%across)*(half+6)
		text := l[0]
		if l[1] != "" {
			text += " (plan: " + l[1] + ")"
		}
		h.page().Text(x, h.y-1, text, draw.TextStyle{Size: h.small})
		h.line(x+draw.Measure(text, h.small, draw.Regular)+1.5, x+half, h.y-0.6)
	}
	h.y += 2
}

// notes writes the notes of the chart, and ruled lines down to the foot of the page,
// at least eight.
func (h *handout) notes() {
	const step = 9.0
	h.head("Notes", 8*step)
	for _, n := range h.noted() {
		h.say(n, h.body)
	}
	for n := 0; n < 8 || h.heightLeft() >= step; n++ {
		h.need(step)
		h.y += step
		h.line(margin, h.size.Width-margin, h.y-0.6)
	}
}

// caution is printed on everything that is handed out.
const caution = "A cuff or mitt that is too tight shows in tingling, cold or pale fingers: take it off. For babies: no loose threads inside, no tight elastic, no cord round the neck. General caution, not medical advice."

// cautions writes the plan's warnings and the usual cautions.
func (h *handout) cautions() {
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
	h.head("Cautions", 0)
	for _, text := range list {
		h.need(h.textHeight("• "+text, h.width(), h.small))
		h.say("• "+text, h.small)
	}
}
