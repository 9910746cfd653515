package mitt

import (
	"fmt"
	"slices"

	"thenar/internal/fault"
	"thenar/internal/stitch"
)

// checkWorked refuses progress that can't have been knitted, and a kind of mitt
// other than the one on the needles.
func (d *draft) checkWorked(faults *fault.Fields) {
	k := d.progress
	if k == nil {
		return
	}
	if k.Part.Order() == 0 {
		faults.Add("worked.section", "is %q; write a part of the mitt, such as cuff, gusset, hand, ring or thumb", k.Part)
		return
	}
	if rounds := k.rounds(); k.Round < 0 || k.Round > rounds {
		faults.Add("worked.round", "is %d; what is knitted has 0 to %d there", k.Round, max(0, rounds))
	}
	for _, b := range k.bounds() {
		if n := k.value(b.of); n < b.low || n > b.high {
			faults.Add(b.of.knittedPath(), "is %d; what is knitted has %d to %d there", n, b.low, max(b.low, b.high))
		}
	}
	for _, of := range []Number{CuffRib, EdgingRib, ThumbEdgingRib} {
		if n := k.value(of); n < 0 || n > maxStitches {
			faults.Add(of.knittedPath(), "is %d; write a whole number from 1 to %d, or leave it out for the rib", n, maxStitches)
		}
	}
	k.checkGrowth(faults)
	k.checkFlare(faults)
	if k.Band < 0 || k.Band > MaxBand {
		faults.Add(TopBand.knittedPath(), "is %d; write a whole number from 1 to %d, or leave it out", k.Band, MaxBand)
	}
	if k.Wedges != 0 && (k.Wedges < FewestWedges || k.Wedges > MaxWedge) {
		faults.Add(TopWedges.knittedPath(), "is %d; write a whole number from %d to %d, or leave it out", k.Wedges, FewestWedges, MaxWedge)
	}
	if k.Knits < 0 || k.Knits > 0 && k.Knits >= k.Rib {
		faults.Add(RibKnits.knittedPath(), "is %d of a rib of %d; write a number below that, or leave it out for half", k.Knits, k.Rib)
	}
	if of, wrong := k.unordered(); wrong {
		faults.Add(of.knittedPath(), "are not in order, or beyond the last round; write the rounds from the first to the last")
	}
	k.checkPairs(faults)
	k.checkKind(d.req, faults)
}

// checkGrowth refuses a knitted gusset that can't have grown in its way.
func (k *Progress) checkGrowth(faults *fault.Fields) {
	grow, kept := k.Increase.growth(), 0
	if !k.begun(stitch.Gusset) || k.GussetBase == 0 {
		return
	}
	if k.begun(stitch.Hand) {
		kept = k.Kept
	}
	if grow.middle && k.OneSided || !grow.allows(k.GussetBase, kept) {
		faults.Add("worked.increase", "is %s, which goes with other counts of the gusset; write how it grew", k.Increase)
	}
	made := k.changed(stitch.Gusset, k.Increases)
	for i := 1; i < len(made); i++ {
		if made[i]-made[i-1] < grow.closest {
			faults.Add("worked.increase", "is %s, which rounds %d and %d can't both have; write how it grew", k.Increase, made[i-1], made[i])
			return
		}
	}
	if k.past(stitch.Gusset) && last(made) > k.GussetRounds-grow.leadOut {
		faults.Add("worked.increase", "is %s, which the gusset's last round can't have; write how it grew", k.Increase)
	}
}

// checkFlare refuses decreases of a gauntlet that can't have been knitted.
func (k *Progress) checkFlare(faults *fault.Fields) {
	if !k.Cuff.info().flares {
		if len(k.CuffDecreases) > 0 {
			faults.Add(CuffDecreases.knittedPath(), "are of a gauntlet; leave them out, or write gauntlet for the cuff")
		}
		return
	}
	if k.CuffEdge < 0 || k.CuffEdge > k.CuffRounds {
		faults.Add(CuffEdge.knittedPath(), "is %d; what is knitted has 0 to %d there", k.CuffEdge, max(0, k.CuffRounds))
		return
	}
	count := k.CastOn
	for _, r := range k.narrowed() {
		if k.CuffStep < 1 || 2*k.CuffStep > count || r <= k.CuffEdge {
			faults.Add(CuffStep.knittedPath(), "is %d, which round %d of the gauntlet can't take off; write what is knitted", k.CuffStep, r)
			return
		}
		count -= k.CuffStep
	}
	if k.Down && k.cuffed() && count < 1 {
		faults.Add(CastOn.knittedPath(), "is %d; write the stitches of the gauntlet's edge", k.CastOn)
	}
}

// checkKind refuses a kind of mitt other than the one on the needles, as soon as
// the knitting shows which it is.
func (k *Progress) checkKind(req *Request, faults *fault.Fields) {
	kind, wanted, is := req.Kind, req.Construction(), k.construction()
	settled := k.Part.Order() > stitch.CuffPlain.Order()
	switch {
	case k.Down && ((k.GussetBase > 0) != kind.info().parts || k.tubed() && (k.TopRounds > 0) != kind.info().topped):
		faults.Add("kind", "is %s, but another kind is on the needles; choose that one, or rip back", kind.Words())
	case k.Down:
	case settled && is != NoThumb && wanted != NoThumb && is != wanted:
		works(faults, PathConstruction, string(is), "is %s, but the mitt on the needles is made the other way; write %s, or rip back", wanted, is)
	case k.Part == stitch.Gusset && wanted != ByGusset,
		k.Part == stitch.BelowThumb && wanted != Straight,
		k.Part == stitch.Opening && wanted != Slit,
		k.Part.Order() >= stitch.Hand.Order() && is != wanted,
		k.Part == stitch.Thumb && !is.thumbs():
		faults.Add("kind", "is %s, but another kind is on the needles; choose that one, or rip back", kind.Words())
	case k.Part.Order() >= stitch.Hand.Order() && ((k.TopRounds > 0) != kind.info().topped || k.fingered() != kind.info().fingered):
		faults.Add("kind", "is %s, but another kind is on the needles; choose that one, or rip back", kind.Words())
	}
}

// knittedPath returns the field of a sheet that holds the knitted value of n.
func (n Number) knittedPath() string { return "worked." + table[n].key }

// value returns the knitted value of a number, or the length of a list.
func (k *Progress) value(n Number) int {
	if list := k.Numbers(n); list != nil {
		return len(*list)
	}
	return *k.Number(n)
}

// bound is the range that a knitted number may have.
type bound struct {
	of        Number
	low, high int
}

// bounds returns the bounds of all numbers at or below the present round.
func (k *Progress) bounds() []bound {
	if k.Down {
		return k.boundsDown()
	}
	list := []bound{
		{Rib, 1, maxStitches},
		{CastOn, 1, maxStitches},
		{CuffRounds, 0, maxRounds},
		{CuffPlainRounds, 0, maxRounds},
	}
	if k.joined() {
		list = append(list, bound{HandStitches, max(fewestStitches, (k.wrist()+1)/2), min(maxStitches, 2*k.wrist())})
		if k.CuffRounds+k.CuffPlainRounds == 0 {
			list = append(list, bound{HandStitches, k.CastOn, k.CastOn})
		}
	}
	if k.begun(stitch.Gusset) && k.GussetBase != 0 {
		list = append(list, bound{GussetBase, 1, min(maxBase, k.HandStitches-1)},
			bound{GussetRounds, 1 + gussetLeadOut, maxRounds})
	}
	if k.begun(stitch.Opening) && k.construction() == Slit {
		list = append(list, bound{GussetRounds, fewestRows, maxRounds})
	}
	if k.begun(stitch.BelowThumb) && k.construction() == Straight {
		list = append(list, bound{GussetRounds, 1 + gussetLeadOut, maxRounds})
	}
	if k.begun(stitch.Hand) {
		list = append(list, k.boundsAbove()...)
	}
	if k.fingered() {
		list = append(append(list, k.boundsOfFingers()...), k.boundsOfCap()...)
	}
	if k.begun(stitch.Thumb) {
		first, most := k.Held+k.PickedUp, maxDecreases
		if k.construction() == Straight {
			first, most = 2*k.Held+1, widestStraight
		}
		list = append(list, bound{PickedUp, 0, maxBridge + maxExtra},
			bound{ThumbDecreases, 0, most},
			bound{ThumbStitches, max(1, first-k.ThumbDecreases), first - k.ThumbDecreases},
			bound{ThumbEdgingRounds, 0, k.ThumbRounds - 1},
			bound{ThumbEdgingStitches, (k.Thumb + 1) / 2, 2 * k.Thumb})
	}
	return list
}

// boundsAbove returns the bounds of the division and what lies above it.
func (k *Progress) boundsAbove() []bound {
	list := []bound{{RoundsAboveGusset, 1, maxRounds}}
	after := k.after()
	if k.GussetBase > 0 {
		made := k.made()
		list = append(list,
			bound{IncreaseRounds, 1, maxRounds},
			bound{KeptOnHand, 0, made},
			bound{Held, max(1, k.GussetBase+made-k.Kept), k.GussetBase + made - k.Kept},
			bound{BridgeStitches, 0, maxBridge})
	}
	if k.construction() == Straight {
		list = append(list, bound{Held, 1, k.HandStitches / 2})
	}
	if k.TopRounds > 0 {
		c := k.madeTop().closes(after)
		return append(list, bound{DecreaseRounds, c.k, c.k})
	}
	// The round that divides the thumb off can't change to the edging's count as well.
	return append(list, bound{EdgingRounds, 0, k.RoundsAbove - 1 - boolInt(k.Edging != after)},
		bound{EdgingStitches, (after + 1) / 2, 2 * after})
}

// after returns the hand's stitches above where the thumb parts.
func (k *Progress) after() int {
	if k.GussetBase > 0 {
		return k.HandStitches + k.Kept + k.Bridge - k.GussetBase
	}
	return k.HandStitches
}

// made returns the number of stitches that the gusset's increases made.
func (k *Progress) made() int {
	return len(k.Increases) * Stitches{OneSided: k.OneSided}.step()
}

// rounds returns the number of rounds of the present part.
func (k *Progress) rounds() int {
	if n, ok := RoundsOf(k.Part); ok {
		return *k.Number(n)
	}
	return 0
}

// unordered returns the first list of rounds that is out of order or goes beyond
// its part's last round, and whether there is one.
func (k *Progress) unordered() (of Number, wrong bool) {
	for _, l := range []struct {
		of        Number
		gap, most int
	}{
		{CuffDecreases, 1, k.CuffRounds},
		{IncreaseRounds, 1, k.GussetRounds}, // a fixed list may have broken the gap
		{DecreaseRounds, topGap, k.TopRounds},
		{capDecreases, topGap, k.Cap.TopRounds},
	} {
		before := 1 - l.gap
		for _, r := range *k.Numbers(l.of) {
			if r < before+l.gap || r > l.most {
				return l.of, true
			}
			before = r
		}
	}
	return ThumbDecreaseRounds, !k.Down && k.begun(stitch.Thumb) && !k.thumb().inOrder()
}

// keepsWorked refuses a plan that differs from what is knitted. That happens only
// if the knitted numbers contradict each other.
func (d *draft) keepsWorked() error {
	k := d.progress
	if k == nil {
		return nil
	}
	if k.Down {
		return d.keepsDown()
	}
	planned := d.plan.ProgressAt(k.Part, k.Round)
	for _, b := range k.bounds() {
		if was, now := k.value(b.of), planned.value(b.of); was != now && !k.ahead(b.of) {
			return fault.Fields{{Path: b.of.knittedPath(), Message: fmt.Sprintf("is %d, but by the other counts it can only be %d; write what is on the needles", was, now)}}
		}
	}
	for _, part := range []stitch.Part{stitch.Cuff, stitch.Gusset, stitch.Top, stitch.Thumb, stitch.CapTop} {
		if !k.begun(part) {
			continue
		}
		was, now := k.list(part), planned.list(part)
		if !slices.Equal(k.changed(part, was), planned.changed(part, now)) {
			return fault.Fields{{Path: "worked.round", Message: "doesn't go with the increase and decrease rounds; write those of the mitt on the needles"}}
		}
	}
	return nil
}

// list returns the rounds of a part that change its count.
func (k *Progress) list(part stitch.Part) []int {
	switch part {
	case stitch.Cuff:
		return k.CuffDecreases
	case stitch.Top:
		return k.Decreases
	case stitch.CapTop:
		return k.Cap.Decreases
	case stitch.Thumb:
		return k.thumb().corners()
	}
	return k.Increases
}

// ahead reports whether a number is still free although its part is begun.
func (k *Progress) ahead(n Number) bool {
	switch n {
	case CuffRounds:
		return k.Part == stitch.Cuff
	case CuffPlainRounds:
		return k.Part.Order() <= stitch.CuffPlain.Order()
	case GussetRounds:
		return k.Part == stitch.Gusset || k.Part == stitch.BelowThumb || k.Part == stitch.Opening
	case RoundsAboveGusset, EdgingRounds, EdgingStitches, DecreaseRounds:
		return k.Part.Order() <= stitch.Top.Order() && !k.past(stitch.Top)
	case ThumbEdgingRounds, ThumbEdgingStitches, ThumbDecreases, ThumbStitches:
		return true
	case CapRounds, capRibbed:
		return k.Part == stitch.Cap
	case LittleLowerRounds:
		return k.Part.Order() <= stitch.UpperHand.Order()
	}
	return n >= firstOfFingers && k.aheadInFinger(n)
}
