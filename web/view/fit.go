package view

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"thenar/internal/fit"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
	"thenar/internal/words"
)

// length returns a length in mm as text, in the unit of the sheet.
func (a Answer) length(mm float64) string { return units.FromMM(mm).With(a.Unit) }

// half returns half the width of a place's interval, rounded up.
func (a Answer) half(s fit.Site) string {
	return units.FromMM((s.High - s.Low) / 2).RoundUp(a.Unit).With(a.Unit)
}

// percent returns a chance in whole percent, but never 0 or 100.
func percent(chance float64) string {
	switch {
	case chance < 0.005:
		return "under 1\u00a0%"
	case chance > 0.995:
		return "over 99\u00a0%"
	}
	return fmt.Sprintf("%.0f\u00a0%%", chance*100)
}

// fitWords sums up the fit in a few sentences: the chance of the whole is less
// than that of any place, and says little of how well the mitt will be worn.
func (a Answer) fitWords() string {
	s := &a.Out.Summary
	text := fmt.Sprintf("Each place has its chance below. All of them within %s at once is rarer, %s: hence the trying on. On average the fabric is %s off, at worst %s, in %s %d of the %s.",
		words.Size(a.Out.Tolerance, a.Unit), percent(s.Chance), words.Size(s.Mean, a.Unit), words.Size(s.Worst, a.Unit), s.WorstAt.Side.Noun(), s.WorstAt.Round, s.WorstAt.Section.Words())
	return text
}

// tightWords warns of rounds that are stretched too much.
func (a Answer) tightWords() string {
	tight := a.Out.Summary.Tight
	parts := map[stitch.Part]bool{}
	var names []string
	for _, r := range tight {
		if !parts[r.Section] {
			parts[r.Section] = true
			names = append(names, r.Section.Words())
		}
	}
	are := "are"
	if len(tight) == 1 {
		are = "is"
	}
	return fmt.Sprintf("%s %s stretched by more than %.0f\u00a0%% (%s). Tingling, cold or pale fingers mean that it is too tight: take it off. This is general caution, not medical advice.",
		words.Plural(len(tight), a.Names.NounOf(tight[0].Section)), are, a.Out.Bands.Tight*100, strings.Join(names, ", "))
}

// doubtWords says how far off the palm may come out, and what a larger swatch
// would gain.
func (a Answer) doubtWords() string {
	p := a.Out.Plan
	girth, where := p.Hand.Palm.MM(), "palm"
	if !p.Parted() {
		girth, where = p.Hand.Circumference.MM(), "hand"
	}
	text := fmt.Sprintf(a.Out.Terms.Say("Gauge")+a.Names.InRows(" %s stitches and %s rounds over 10 cm, ± %.1f\u00a0%% (95\u00a0%%). The %s may come out up to %s off."),
		tenths(p.Gauge.Stitches*100), tenths(p.Gauge.Rounds*100), p.Gauge.StitchDoubt.Half()*100, where, units.FromMM(girth*p.Gauge.StitchDoubt.Half()).RoundUp(a.Unit).With(a.Unit))
	if now, then, over, ok := p.Gauge.WiderSwatch(girth); ok && then < now {
		text += fmt.Sprintf(" Counting over %[2]s makes %[1]s of that; over %[3]s it would be %[4]s.",
			words.Size(now, a.Unit), p.Gauge.Widest().With(a.Unit), over.With(a.Unit), words.Size(then, a.Unit))
	}
	return text
}

// weighed returns the price of a changed rhythm in words.
func (a Answer) weighed() string {
	return lambdaSteps[nearest(lambdaSteps, a.Lambda)].Words
}

// taken reports whether the plan takes this way.
func (a Answer) taken(w mitt.Way) bool {
	way := a.Out.Plan.Gusset.Way
	return w.Follows == way.Follows && w.Fixed == way.Fixed
}

// rhythmCost says what the plain rhythm costs compared with the hand's own
// shape.
func (a Answer) rhythmCost() string {
	var shape, rhythm mitt.Way
	for _, w := range a.Out.Plan.Gusset.Ways {
		switch {
		case w.Fixed:
		case w.Follows == mitt.FollowProfile:
			shape = w
		default:
			rhythm = w
		}
	}
	more := rhythm.Mean - shape.Mean
	switch size := func(mm float64) string { return words.Size(mm, a.Unit) }; {
	case math.Abs(more) < 0.05:
		return "Both fit alike: the rhythm that is easier to remember costs nothing."
	case more < 0:
		return fmt.Sprintf("The plain rhythm is %s nearer on average: at this price the shape is not followed closely.", size(-more))
	case size(shape.Worst) == size(0):
		return fmt.Sprintf("A plain rhythm is easier to remember, but misses your hand by up to %s. The hand’s own shape misses it nowhere.", size(rhythm.Worst))
	default:
		return fmt.Sprintf("A plain rhythm is easier to remember, but misses your hand by up to %s; the hand’s shape by %s.", size(rhythm.Worst), size(shape.Worst))
	}
}

// rounds joins round numbers.
func rounds(numbers []int) string {
	parts := make([]string, len(numbers))
	for i, r := range numbers {
		parts[i] = strconv.Itoa(r)
	}
	return strings.Join(parts, ", ")
}
