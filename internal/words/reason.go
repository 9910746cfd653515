package words

import (
	"fmt"
	"math"
	"strings"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Reason is a sentence on where a number of the plan comes from. Key is stable,
// so that a page can place it beside its number.
type Reason struct {
	Key   string // as in a plan's JSON: "cuff.cast_on"
	Part  stitch.Part
	Round int    // the round of the part at which the number matters
	Name  string // of the number
	Value string
	Why   string

	Of     mitt.Number // which can be fixed
	Number string      // as it would be fixed
	Fixed  bool
}

// Reasons returns a reason for every number of the plan, in the order knitted,
// with its residual in the unit and the two neighbouring choices.
func Reasons(p *mitt.Plan, u units.Unit, t Terms) []Reason {
	r := reasons{p: p, u: u}
	r.cuff()
	r.body()
	switch {
	case p.Gusseted():
		r.gusset()
		r.division()
	case p.Thumbed():
		r.straight()
	case p.Parted():
		r.opening()
	}
	r.above()
	if p.Fingered() {
		r.fingers()
	}
	if p.Thumbed() {
		r.thumb()
	}
	if p.Fingered() && p.Fingers.Cap != nil {
		r.cap()
	}
	for i := range r.list {
		one := &r.list[i]
		if p.Make.Flat {
			one.flat(p)
		}
		one.Why = t.Say(one.Why)
	}
	return r.list
}

type reasons struct {
	p    *mitt.Plan
	u    units.Unit
	list []Reason
}

// add adds the reason of a count.
func (r *reasons) add(n mitt.Number, why string) {
	count := r.p.Count(n)
	value := fmt.Sprint(count)
	if noun := r.p.Names().Noun(n); noun != "" {
		value = Plural(count, noun)
	}
	r.put(n, value, why)
}

// put adds the reason of a number that is given in words. In a mitt without a
// thumb, the numbers of the gusset belong to the hand, which begins above the
// cuff.
func (r *reasons) put(n mitt.Number, value, why string) {
	part, said := r.p.PartOf(n), r.p.Said(n)
	r.list = append(r.list, Reason{n.Reason(), part, 1, said, value, why, n, r.p.Number(n), r.p.Pins.Fixed(n)})
}

// within returns the width of some stitches, with the interval of the gauge.
func (r *reasons) within(stitches int) string {
	mm := float64(stitches) / r.p.Gauge.Stitches
	half := r.p.Gauge.StitchDoubt.Half()
	if half == 0 {
		return r.length(mm)
	}
	return r.length(mm) + " ± " + units.FromMM(mm*half).RoundUp(r.u).With(r.u)
}

// near returns the end of a sentence on a count: the exact value, and what the
// neighbouring choices would give.
func (r *reasons) near(c mitt.Count, perMM float64) string {
	text := fmt.Sprintf("%.1f would be exact", c.Exact)
	switch {
	case c.Knitted:
		return text + "; this is on the needles"
	case c.Pinned:
		return text + "; this number is fixed"
	}
	return fmt.Sprintf("%s. %d is %s; %d would be %s, and %d %s", text, c.N,
		r.off(c, c.N, perMM), c.Below, r.off(c, c.Below, perMM), c.Above, r.off(c, c.Above, perMM))
}

// off returns the distance of a count from its target, as a signed length.
func (r *reasons) off(c mitt.Count, n int, perMM float64) string {
	return Signed((float64(n)-c.Exact)/perMM, r.u)
}

// Signed returns a difference in mm as a signed length in the unit. Inches have
// two decimals, since an eighth is too coarse for a residual.
func Signed(mm float64, u units.Unit) string {
	sign := "+"
	if mm < 0 && Size(-mm, u) != Size(0, u) {
		sign = "−"
	}
	return sign + Size(math.Abs(mm), u)
}

// Size returns a small length in mm as a length in the unit, without a sign.
func Size(mm float64, u units.Unit) string {
	switch u {
	case units.IN:
		return fmt.Sprintf("%.2f in", mm/units.Inch.MM())
	case units.CM:
		return fmt.Sprintf("%.1f cm", mm/10)
	}
	return fmt.Sprintf("%.0f mm", mm)
}

func (r *reasons) length(mm float64) string { return units.FromMM(mm).With(r.u) }

// percent returns an ease in words: "+5 %", or "no" for none.
func percent(e float64) string {
	if e > -0.005 && e < 0.005 {
		return "no"
	}
	return strings.Replace(fmt.Sprintf("%+.0f\u00a0%%", e*100), "-", "−", 1)
}

func (r *reasons) cuff() {
	p := r.p
	q := p.Gauge.Rounds
	if p.Cuff.Flare != nil {
		r.gauntlet()
	} else {
		r.add(mitt.CastOn, r.wrist(p.Cuff.CastOn))
		r.add(mitt.CuffRounds,
			fmt.Sprintf("%s at %.1f rounds over 10 cm%s.", r.length(p.Cuff.Length()), p.Cuff.PerMM*100, cuffLies(p)))
	}
	change := "the count stays."
	if p.Cuff.Change != 0 && p.Cuff.JoinsAbove {
		change = brings(p, "the hand's first")
	} else if p.Cuff.Change != 0 && p.Cuff.PlainRounds == 0 {
		change = brings(p, "the last of the "+p.Make.Cuff.Words())
	} else if p.Cuff.Change != 0 {
		change = brings(p, "the first")
	}
	to := "gusset"
	if !p.Gusseted() {
		to = "hand"
	}
	r.add(mitt.CuffPlainRounds,
		fmt.Sprintf("%s to the %s; %s", r.length(float64(p.Cuff.PlainRounds)/q), to, change))
}

// wrist says where a count at the wrist comes from.
func (r *reasons) wrist(n mitt.Count) string {
	p, g := r.p, r.p.Gauge.Stitches
	multiples := "From"
	if p.Cuff.Rib > 1 {
		multiples = fmt.Sprintf("In multiples of %d, and from", p.Cuff.Rib)
	}
	return fmt.Sprintf("wrist %s with %s ease at %.1f stitches over 10 cm. %s 78\u00a0%% to all of the hand's %d: %s. The fabric is %s.",
		p.Hand.Wrist.With(r.u), percent(p.Ease.Cuff), g*100, multiples, p.Body.Stitches.N, r.near(n, g), r.within(n.N))
}

// gauntlet adds the reasons of a cuff that narrows to the wrist.
func (r *reasons) gauntlet() {
	p, f := r.p, r.p.Cuff.Flare
	r.add(mitt.CastOn, fmt.Sprintf("upper edge %s round at %.1f stitches over 10 cm: %s. The fabric is %s.",
		r.length(f.Girth), p.Gauge.Stitches*100, r.near(p.Cuff.CastOn, p.Gauge.Stitches), r.within(p.Cuff.CastOn.N)))
	first, off, to, rounds := "first", "taken off", "down to", p.FromBase(p.Cuff.Rounds, f.Rounds)
	if p.Down() {
		first, off, to = "last", "made", "from"
	}
	edge := ""
	if f.Edge > 0 {
		edge = fmt.Sprintf(" The %s %d are garter stitch, an edge that lies flat.", first, f.Edge)
	}
	narrow := fmt.Sprintf("It goes straight down with %s.", Plural(p.Cuff.Wrist.N, "stitch"))
	if len(f.Rounds) > 0 {
		narrow = fmt.Sprintf("%d stitches each are %s in rounds %s, evenly round the arm.", f.Step, off, List(rounds))
		if len(rounds) == 1 {
			narrow = fmt.Sprintf("%d stitches are %s in round %d, evenly round the arm.", f.Step, off, rounds[0])
		}
	}
	r.add(mitt.CuffRounds, fmt.Sprintf("%s deep, %s %d stitches at the wrist.%s %s At the wrist: %s",
		r.length(p.Cuff.Length()), to, p.Cuff.Wrist.N, edge, narrow, r.wrist(p.Cuff.Wrist)))
}

// body adds the reason of the hand's count.
func (r *reasons) body() {
	p, g, n := r.p, r.p.Gauge.Stitches, r.p.Body.Stitches
	r.add(mitt.HandStitches,
		fmt.Sprintf("hand %s with %s ease at %.1f stitches over 10 cm, in repeats of %d: %s. The fabric is %s.",
			p.Hand.Circumference.With(r.u), percent(p.Ease.Hand), g*100, p.Stitch.Repeat, r.near(n, g), r.within(n.N)))
}

func (r *reasons) gusset() {
	p := r.p
	r.add(mitt.GussetBase, baseWhy(p.Gusset.Base, p.Thumb.Stitches.N))
	r.add(mitt.GussetRounds,
		fmt.Sprintf("gusset length %s at %.1f rounds over 10 cm: %s.", p.Hand.GussetLength.With(r.u), p.Gauge.Rounds*100, r.near(p.Gusset.Rounds, p.Gauge.Rounds)))
	r.add(mitt.Increases,
		fmt.Sprintf("%s %s Where the thumb parts, hand and gusset are %s: %s against the palm with thumb.",
			Gusset(p), followWords(p),
			r.within(p.Body.Stitches.N+p.Gusset.Stitches-p.Gusset.Base), Signed(p.Residual.Crotch, r.u)))
	first := p.Gusset.IncreaseRounds[0]
	list, why := "all of them, counted from the gusset’s first round.", firstWhy(p, first)
	if p.Down() {
		list = fmt.Sprintf("all of them, counted up from the cuff. As they are worked these are %s.", listValue(p.FromBase(p.Gusset.Rounds.N, p.Gusset.IncreaseRounds)))
		why = fmt.Sprintf("counted up from the cuff; as it is worked, round %d.", p.FromBase(p.Gusset.Rounds.N, []int{first})[0])
	}
	r.put(mitt.FirstIncrease, fmt.Sprintf("round %d", first), why)
	r.put(mitt.Rhythm, rhythmValue(&p.Gusset), rhythmWhy(p, r.u))
	r.put(mitt.IncreaseRounds, listValue(p.Gusset.IncreaseRounds), list)
}

// Gusset returns in which rounds a gusset changes its count, as they are worked.
func Gusset(p *mitt.Plan) string {
	g := &p.Gusset
	if p.Down() {
		return Schedule(p.FromBase(g.Rounds.N, g.IncreaseRounds), g.Stitches, g.Base, -g.Step, g.Rounds.N)
	}
	return Schedule(g.IncreaseRounds, g.Base, g.Stitches, g.Step, g.Rounds.N)
}

// straight adds the reasons of a thumb without a gusset.
func (r *reasons) straight() {
	p := r.p
	r.add(mitt.GussetRounds,
		fmt.Sprintf("%s from the bone at the wrist to where the thumb parts, at %.1f rounds over 10 cm: %s. Over the thumb’s base the hand stretches by %.1f\u00a0%%.",
			p.Hand.GussetLength.With(r.u), p.Gauge.Rounds*100, r.near(p.Gusset.Rounds, p.Gauge.Rounds), p.MoundStretch*100))
	r.add(mitt.Held, fmt.Sprintf("half of the thumb’s %d. They are knitted with waste yarn, in the palm, %s from the side line.",
		p.Thumb.Stitches.N, Plural(p.Gusset.Inset, "stitch")))
}

// opening adds the reason of an opening for the thumb.
func (r *reasons) opening() {
	p := r.p
	r.add(mitt.GussetRounds,
		fmt.Sprintf("0.28 × hand length, up to where the thumb parts, at %.1f rounds over 10 cm: %s. Over the thumb’s base the hand stretches by %.0f\u00a0%%.",
			p.Gauge.Rounds*100, r.near(p.Gusset.Rounds, p.Gauge.Rounds), p.MoundStretch*100))
}

// followWords returns the line that the increases follow, unless they are
// fixed.
func followWords(p *mitt.Plan) string {
	if p.Gusset.Way.Fixed {
		return "Their rounds are fixed."
	}
	return fmt.Sprintf("They follow %s from %d to %d stitches most closely.", lineWords(p), p.Gusset.Base, p.Gusset.Stitches)
}

// lineWords returns the name of the line that the increases follow.
func lineWords(p *mitt.Plan) string {
	switch {
	case p.Gusset.Way.Follows != mitt.FollowProfile:
	case len(p.Hand.Profile) == 0:
		return "the hand’s shape, as far as it is known,"
	default:
		return "the girths measured on the hand"
	}
	return "the straight line"
}

func baseWhy(b, thumb int) string {
	switch b {
	case 3:
		return "a middle column between the two edges: the gusset grows on both sides of it."
	case 1:
		return fmt.Sprintf("one stitch makes the finest point; with it the thumb's %d stitches come out best.", thumb)
	}
	return fmt.Sprintf("three is usual. With %d the thumb's %d stitches and the palm fit better, or a fixed number asks for it.", b, thumb)
}

func (r *reasons) division() {
	p := r.p
	g := p.Gauge.Stitches
	r.add(mitt.Held,
		fmt.Sprintf("the gusset's %d%s; %.0f\u00a0%% of the hand.", p.Gusset.Stitches, kept(p.Gusset.Kept), 100*float64(p.Thumb.Held)/float64(p.Body.Stitches.N)))
	if p.Down() {
		r.add(mitt.BridgeStitches, fmt.Sprintf("%s wide: as many of the thumb and of the hand wait there and are joined at the end. The hand has %d above it: %s against what was wanted.",
			r.length(float64(p.Bridge.CastOn)/g), p.Bridge.HandAfter, Signed(p.Residual.Hand, r.u)))
		return
	}
	r.add(mitt.KeptOnHand,
		"increased stitches that stay with the hand. Usually none; an older way leaves two.")
	wide, again := "nothing is cast on over the gap", ""
	if p.Bridge.CastOn > 0 {
		wide = r.length(float64(p.Bridge.CastOn)/g) + " wide, cast on over the gap"
	}
	if p.Bridge.HandAfter == p.Body.Stitches.N {
		again = " again"
	}
	r.add(mitt.BridgeStitches, fmt.Sprintf("%s. The hand has %d%s: %s against what was wanted.",
		wide, p.Bridge.HandAfter, again, Signed(p.Residual.Hand, r.u)))
}

// above adds the reasons of what lies above the division or the cuff.
func (r *reasons) above() {
	p, q := r.p, r.p.Gauge.Rounds
	r.add(mitt.RoundsAboveGusset,
		fmt.Sprintf("%s, %s.", r.length(float64(p.Body.RoundsAbove)/q), aboveWhy(p)))
	if p.Top != nil {
		r.add(mitt.TopRounds, topWhy(p))
	}
}

func aboveWhy(p *mitt.Plan) string {
	if p.Top != nil {
		return "to where the top begins"
	}
	if p.Fingered() {
		return "to where the little finger parts"
	}
	if p.Body.EdgingRounds == 0 {
		if p.Down() {
			return "plain from the cast-on"
		}
		return "plain to the bind-off"
	}
	return inEdging(p, p.Body.EdgingRounds, p.Body.EdgingStitches)
}

// inEdging returns how many of a tube's last rounds are ribbed: "the last 3 in rib
// over 44 stitches"; from the tip they are its first.
func inEdging(p *mitt.Plan, rounds, stitches int) string {
	which, n := "last", fmt.Sprint(rounds)
	if p.Down() {
		which = "first"
	}
	if rounds == 1 {
		n = "one"
	}
	return fmt.Sprintf("the %s %s in rib over %s", which, n, Plural(stitches, "stitch"))
}

// pickedWhy returns how the picked-up stitches lie along the bridge.
func pickedWhy(bridge, picked int) string {
	if picked == 0 {
		return "none: over the gap nothing is cast on. The strand at each corner is worked in, so no hole stays."
	}
	where := fmt.Sprintf("along the %d of the bridge: between them lie %s and two halves.", bridge, Plural(bridge-1, "whole column"))
	switch bridge {
	case 0:
		where = "at the top of the gap, over which nothing is cast on."
	case 1:
		where = "along the bridge’s one stitch: half a column lies on either side of it."
	}
	return where + " The strand at each corner is worked in, so no hole stays."
}

func (r *reasons) thumb() {
	p, t := r.p, &r.p.Thumb
	if p.Down() {
		r.thumbDown()
		return
	}
	first := fmt.Sprintf("%d held and %d picked up", t.Held, t.PickedUp)
	if p.Gusseted() {
		r.add(mitt.PickedUp, pickedWhy(p.Bridge.CastOn, t.PickedUp))
	} else {
		first = fmt.Sprintf("%d below the waste yarn, %d above it and one at each corner", t.Held, t.Held-1)
	}
	r.add(mitt.ThumbStitches,
		fmt.Sprintf("thumb %s and %s room to move: %s. %s make %d; decreased at the corners: %d. The fabric is %s.",
			p.Hand.Thumb.With(r.u), r.length(p.Ease.ThumbAdded), r.near(t.Stitches, p.Gauge.Stitches), first, t.FirstRound, t.Decreased, r.within(t.Stitches.N)))
	r.add(mitt.ThumbDecreases,
		"more than the thumb needs, so they go. One or two close the corners best.")
	r.add(mitt.ThumbRounds,
		fmt.Sprintf("%s from the first full round%s.", r.length(float64(t.Rounds)/p.Gauge.Rounds), thumbEnd(p)))
}

func thumbEnd(p *mitt.Plan) string {
	t := &p.Thumb
	if t.EdgingRounds == 0 {
		return ""
	}
	return ", " + inEdging(p, t.EdgingRounds, t.EdgingStitches)
}
