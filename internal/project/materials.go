package project

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/gauge"
	"thenar/internal/stitch"
	"thenar/internal/units"
	"thenar/internal/words"
	"thenar/internal/yarn"
)

// Material is something to have at hand before the cast-on.
type Material struct{ Name, Text string }

// Materials lists gauge, yarn, needles, markers, holder and tails for a mitt. ownYarn
// and ownNeedle are what the person says of them, or empty.
func (o *Outputs) Materials(ownYarn, ownNeedle string) []Material {
	p := o.Plan
	weight := yarn.WeightOf(p.Gauge.Stitches)
	needle := o.Terms.Say("try " + needleOf(weight, o.Terms))
	if ownNeedle != "" {
		needle = ownNeedle
	}
	list := []Material{
		{"Yarn", o.yarnText(ownYarn, weight)},
		{o.Terms.Say("Gauge"), o.Terms.Say(o.gauge())},
		{"Needles", needle + o.Terms.Say(o.needles())},
	}
	switch w := p.Thumb.OnWaste; {
	case p.Make.Flat:
		if p.Gusseted() {
			list = append(list, Material{"Markers", "2, for both edges of the gusset."}, o.holder())
		}
	case p.Gusseted():
		list = append(list,
			Material{"Markers", "2, unlike each other: the first where the round begins, the second at the gusset’s other edge."},
			o.holder())
	case w > 0:
		list = append(list, Material{"Markers", "1, where the round begins."},
			Material{"Waste yarn", fmt.Sprintf("smooth, as thick as yours and of another colour: %s, to knit %s.",
				words.Tail(holder+o.Yarn.Loop*float64(w), o.Unit), words.Plural(w, "stitch"))})
	default:
		list = append(list, Material{"Markers", "1, where the round begins."})
	}
	return append(list, Material{"Tails", o.Terms.Say(o.tails())})
}

// gauge returns the gauge, and in what it is counted.
func (o *Outputs) gauge() string {
	text := Gauge(o.Plan.Gauge, o.Unit)
	if o.Plan.Make.Flat {
		return stitch.InRows(text) + ", in stockinette, worked flat and washed."
	}
	return text + ", in stockinette in the round, washed."
}

// needles returns what needles there may be beside those of the yarn.
func (o *Outputs) needles() string {
	if o.Plan.Make.Flat {
		return ", or what gives the gauge: straight or circular; a darning needle for the seams."
	}
	return ", or what gives the gauge: double-pointed or a long circular; a darning needle."
}

// holder returns what keeps the stitches that wait: a length of yarn for each set of them.
func (o *Outputs) holder() Material {
	waits := o.Mitt.SetAside()
	if n := len(waits); n > 1 {
		texts := make([]string, n)
		for i, k := range waits {
			texts[i] = fmt.Sprint(k)
		}
		return Material{"Holders", fmt.Sprintf("smooth waste yarn, %d times %s, for %s stitches.", n, words.Tail(holder, o.Unit), words.Listed(texts))}
	}
	return Material{"Holder", fmt.Sprintf("smooth waste yarn, %s, for %s.", words.Tail(holder, o.Unit), words.Plural(o.Plan.Thumb.Held, "stitch"))}
}

// holder is the length in mm of the yarn that holds stitches (common
// practice, no source).
const holder = 200

// needleOf returns the needles of a weight: in mm, and in the US by number too.
func needleOf(w yarn.Weight, t words.Terms) string {
	if t == words.UK {
		return w.Needle
	}
	return w.Needle + " (" + w.NeedleUS + ")"
}

// Gauge returns a gauge in words, over 10 cm and over 4 in, that of the sheet's unit
// first. The numbers differ, since 4 in are 101.6 mm.
func Gauge(g gauge.Gauge, first units.Unit) string {
	ways := []struct {
		mm   float64
		name string
	}{{100, "10 cm"}, {4 * units.Inch.MM(), "4 in"}}
	if first == units.IN {
		slices.Reverse(ways)
	}
	a, b := ways[0], ways[1]
	return fmt.Sprintf("%s stitches and %s rounds over %s (%s and %s over %s)", Tenths(g.Stitches*a.mm), Tenths(g.Rounds*a.mm), a.name,
		Tenths(g.Stitches*b.mm), Tenths(g.Rounds*b.mm), b.name)
}

// Tenths returns a number with one decimal, or none if that is a zero: "24", "32.5".
func Tenths(x float64) string { return strings.TrimSuffix(fmt.Sprintf("%.1f", x), ".0") }

// yarnText returns the yarn, and how much of it the pair takes.
func (o *Outputs) yarnText(own string, weight yarn.Weight) string {
	pair := o.Yarn.Pair
	metres, least, most := pair.Metres().Rounded()
	text := fmt.Sprintf("about %d m / %d yd for the pair (%d to %d m, %d to %d yd)", metres, yards(metres), least, most, yards(least), yards(most))
	if o.Unit == units.IN {
		text = fmt.Sprintf("about %d yd / %d m for the pair (%d to %d yd, %d to %d m)", yards(metres), metres, yards(least), yards(most), least, most)
	}
	if g := pair.Grams(o.Ball); g.Mean > 0 {
		_, _, most := g.Rounded()
		text += fmt.Sprintf(", at most %d g", most)
	}
	if o.Yarn.Balls > 0 {
		text += ", " + words.Plural(o.Yarn.Balls, "ball")
	}
	if parts := o.ByColour(); len(parts) > 0 {
		text += ": " + strings.Join(parts, ", ")
	}
	if own == "" {
		own = o.Terms.Say(fmt.Sprintf("%s (weight %d, Craft Yarn Council)", weight.Name, weight.Number))
	}
	return strings.TrimRight(own, ". ") + "; " + text + "."
}

// yards returns the whole yards that are no shorter than some metres: 1 yd is 0.9144 m
// (international yard and pound agreement, 1959).
func yards(metres int) int { return (10000*metres + 9143) / 9144 }

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

// tails says how long the ends of yarn should be left, and what for.
func (o *Outputs) tails() string {
	t := yarn.TailsOf(o.Plan, o.Mitt)
	tail := func(mm float64) string { return words.Tail(mm, o.Unit) }
	text := tail(t.CastOn) + " to cast on. "
	if o.Plan.Down() {
		if t.Thumb > t.End {
			text = fmt.Sprintf("%s to cast on the hand, %s the thumb. ", tail(t.CastOn), tail(t.Thumb))
		}
		text += fmt.Sprintf("Binding off takes %s. ", tail(t.Hand))
	} else if t.Hand > 0 {
		text += fmt.Sprintf("Binding off takes %s for the hand", tail(t.Hand))
		if t.Thumb > t.End {
			text += fmt.Sprintf(", %s for the thumb", tail(t.Thumb))
		}
		text += ". "
	}
	if bound := boundFingers(t); len(bound) > 0 {
		least, most := tail(slices.Min(bound)), tail(slices.Max(bound))
		if least != most {
			most = least + " to " + most
		}
		text += fmt.Sprintf("Binding off a finger takes %s. ", most)
		if t.Thumb > t.End {
			text += fmt.Sprintf("The thumb takes %s. ", tail(t.Thumb))
		}
	} else if t.Hand == 0 && !o.Plan.Down() && t.Thumb > t.End {
		text += fmt.Sprintf("Binding off the thumb takes %s. ", tail(t.Thumb))
	}
	switch {
	case t.ThumbSeam > 0:
		text += fmt.Sprintf("The seams take %s and, for the thumb, %s. ", tail(t.Seam), tail(t.ThumbSeam))
	case t.SeamAbove > 0:
		text += fmt.Sprintf("The seam takes %s below the opening, %s above. ", tail(t.Seam), tail(t.SeamAbove))
	case t.Seam > 0:
		text += fmt.Sprintf("The seam takes %s. ", tail(t.Seam))
	}
	return text + fmt.Sprintf("All other ends: %s.", tail(t.End))
}

// boundFingers returns what it takes to bind off each of the fingers that are.
func boundFingers(t yarn.Tails) []float64 {
	return slices.DeleteFunc(slices.Clone(t.Fingers[:]), func(mm float64) bool { return mm == 0 })
}
