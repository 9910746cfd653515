package project

import (
	"fmt"
	"strings"

	"thenar/internal/gauge"
	"thenar/internal/mitt"
	"thenar/internal/words"
	"thenar/internal/yarn"
)

// Material is something to have at hand before the cast-on.
type Material struct{ Name, Text string }

// Materials lists yarn, needles, markers, holder and tails for a mitt. ownYarn
// and ownNeedle are what the person says of them, or empty.
func (o *Outputs) Materials(ownYarn, ownNeedle string) []Material {
	p := o.Plan
	weight := yarn.WeightOf(p.Gauge.Stitches)
	needle := o.Terms.Say("often " + needleOf(weight, o.Terms) + " at this gauge")
	if ownNeedle != "" {
		needle = ownNeedle
	}
	needle += ", or whatever gives " + Gauge(p.Gauge)
	list := []Material{
		{"Yarn", o.yarnText(ownYarn, weight)},
		{"Needles", needle + "; double-pointed, or a long circular one for small rounds."},
	}
	if p.Thumbed() {
		list = append(list,
			Material{"Markers", "2, unlike each other: the first where the round begins, the second at the gusset’s other edge."},
			Material{"Holder", fmt.Sprintf("smooth waste yarn, some 20 cm / 8 in, for %s.", words.Plural(p.Thumb.Held, "stitch"))})
	} else {
		list = append(list, Material{"Markers", "1, where the round begins."})
	}
	return append(list, Material{"Tails", o.Terms.Say(tails(p))})
}

// needleOf returns the needles of a weight: in mm, and in the US by number too.
func needleOf(w yarn.Weight, t words.Terms) string {
	if t == words.UK {
		return w.Needle
	}
	return w.Needle + " (" + w.NeedleUS + ")"
}

// Gauge returns a gauge in words, over 10 cm and over 4 in. The numbers differ,
// since 4 in are 101.6 mm.
func Gauge(g gauge.Gauge) string {
	const inches = 4 * 25.4
	return fmt.Sprintf("%.1f stitches and %.1f rounds over 10 cm (%.1f and %.1f over 4 in)", g.Stitches*100, g.Rounds*100, g.Stitches*inches, g.Rounds*inches)
}

// yarnText returns the yarn, and how much of it the pair takes.
func (o *Outputs) yarnText(own string, weight yarn.Weight) string {
	pair := o.Yarn.Pair
	metres, least, most := pair.Metres().Rounded()
	yards, _, _ := pair.Yards().Rounded()
	text := fmt.Sprintf("some %d m / %d yd for the pair (%d to %d m)", metres, yards, least, most)
	if g := pair.Grams(o.Ball); g.Mean > 0 {
		_, _, most := g.Rounded()
		text += fmt.Sprintf(", %d g", most)
	}
	if o.Yarn.Balls > 0 {
		text += ", " + words.Plural(o.Yarn.Balls, "ball")
	}
	if parts := o.ByColour(); len(parts) > 0 {
		text += ": " + strings.Join(parts, ", ")
	}
	if own == "" {
		own = o.Terms.Say(fmt.Sprintf("of weight %d, %s, by the gauge", weight.Number, weight.Name))
	}
	return strings.TrimRight(own, ". ") + "; " + text + "."
}

// ByColour says how much of each yarn the pair takes: "moss green 83 m". It is
// empty if there is only one.
func (o *Outputs) ByColour() []string {
	var pairs []yarn.Amount
	for _, c := range o.Colours {
		pairs = append(pairs, c.Pair.Metres())
	}
	var list []string
	for i, metres := range yarn.Whole(pairs) {
		list = append(list, fmt.Sprintf("%s %d m", o.Charts.Palette.Or(o.Colours[i].ID).Name, metres))
	}
	return list
}

// tails says how long the ends of yarn should be left.
func tails(p *mitt.Plan) string {
	t := yarn.TailsOf(p)
	text := fmt.Sprintf("%s for the long-tail cast-on; %s at all other starts and ends", words.Tail(t.CastOn), words.Tail(t.End))
	if t.Hand > 0 {
		text += fmt.Sprintf("; to bind off, %s for the hand", words.Tail(t.Hand))
		if t.Thumb > t.End {
			text += fmt.Sprintf(" and %s for the thumb", words.Tail(t.Thumb))
		}
	}
	return text + "."
}
