package mitt

import (
	"fmt"
	"slices"

	"thenar/internal/fault"
	"thenar/internal/stitch"
)

// checkWorked refuses what can't have been knitted, and a kind that what is
// knitted is not.
func (w *work) checkWorked(faults *fault.Fields) {
	k := w.worked
	if k == nil {
		return
	}
	if k.Part.Order() == 0 {
		faults.Add("worked.section", "is %q; write a part of the mitt: cuff, cuff_plain, gusset, hand, top or thumb", k.Part)
		return
	}
	for _, c := range k.bounds() {
		if c.n < c.low || c.n > c.high {
			faults.Add("worked."+c.name, "is %d; what is knitted has %d to %d there", c.n, c.low, max(c.low, c.high))
		}
	}
	for _, c := range k.ribs() {
		if c.n < c.low || c.n > c.high {
			faults.Add("worked."+c.name, "is %d; write a whole number from 1 to %d, or leave it out for the rib", c.n, c.high)
		}
	}
	if name := k.unordered(); name != "" {
		faults.Add("worked."+name, "are not in order, or beyond the last round; write the rounds from the first to the last")
	}
	k.checkKind(w.req.Kind, faults)
}

// checkKind refuses another kind than the one that is on the needles, as far
// as it shows already.
func (k *Worked) checkKind(kind Kind, faults *fault.Fields) {
	switch {
	case k.Part == stitch.Gusset && !kind.info().thumbed,
		k.Part.Order() >= stitch.Hand.Order() && (k.GussetBase > 0) != kind.info().thumbed,
		k.Part == stitch.Thumb && k.GussetBase == 0:
		faults.Add("kind", "is %s, but what is on the needles is not: its thumb is begun, or left out; choose the kind that is knitted, or rip back", kind.Words())
	case k.Part.Order() >= stitch.Hand.Order() && (k.TopRounds > 0) != kind.info().topped:
		faults.Add("kind", "is %s, but the hand on the needles is another; choose the kind that is knitted, or rip back", kind.Words())
	}
}

// bound is what a number of what is knitted may be.
type bound struct {
	name         string
	n, low, high int
}

// bounds are those of all numbers that lie at or below the present round.
func (k *Worked) bounds() []bound {
	list := []bound{
		{"round", k.Round, 0, k.rounds()},
		{"rib", k.Rib, 1, maxStitches},
		{"cast_on", k.CastOn, 1, maxStitches},
		{"cuff_rounds", k.CuffRounds, 0, maxRounds},
		{"cuff_plain_rounds", k.CuffPlainRounds, 0, maxRounds},
	}
	if k.joined() {
		list = append(list, bound{"hand_stitches", k.HandStitches, max(fewestStitches, (k.CastOn+1)/2), min(maxStitches, 2*k.CastOn)})
		if k.CuffRounds+k.CuffPlainRounds == 0 {
			list = append(list, bound{"hand_stitches", k.HandStitches, k.CastOn, k.CastOn})
		}
	}
	if k.begun(stitch.Gusset) && k.GussetBase != 0 {
		list = append(list, bound{"gusset_base", k.GussetBase, 1, min(maxBase, k.HandStitches-1)},
			bound{"gusset_rounds", k.GussetRounds, 1 + gussetLeadOut, maxRounds})
	}
	if k.begun(stitch.Hand) {
		list = append(list, k.boundsAbove()...)
	}
	if k.begun(stitch.Thumb) {
		list = append(list, bound{"picked_up", k.PickedUp, 0, maxBridge + maxExtra},
			bound{"thumb_decreases", k.ThumbDecreases, 0, maxDecreases},
			bound{"thumb_stitches", k.Thumb, max(1, k.Held+k.PickedUp-k.ThumbDecreases), k.Held + k.PickedUp - k.ThumbDecreases},
			bound{"thumb_edging_rounds", k.ThumbEdging, 0, k.ThumbRounds - 1},
			bound{"thumb_edging", k.ThumbEdged, (k.Thumb + 1) / 2, 2 * k.Thumb})
	}
	return list
}

// ribs are the bounds of the multiples that are not the sheet's.
func (k *Worked) ribs() []bound {
	return []bound{
		{"cuff_rib", k.CuffRib, 0, maxStitches}, {"edging_rib", k.EdgingRib, 0, maxStitches}, {"thumb_edging_rib", k.ThumbRib, 0, maxStitches},
	}
}

// boundsAbove are those of the division and what lies above it.
func (k *Worked) boundsAbove() []bound {
	list := []bound{{"rounds_above_gusset", k.RoundsAbove, 1, maxRounds}}
	after := k.HandStitches
	if k.GussetBase > 0 {
		made := k.made()
		after += k.Kept + k.Bridge - k.GussetBase
		list = append(list,
			bound{"increase_rounds", len(k.Increases), 1, maxRounds},
			bound{"kept_on_hand", k.Kept, 0, made},
			bound{"held", k.Held, max(1, k.GussetBase+made-k.Kept), k.GussetBase + made - k.Kept},
			bound{"bridge", k.Bridge, 0, maxBridge})
	}
	if k.TopRounds > 0 {
		return append(list, bound{"decrease_rounds", len(k.Decreases), topDecreases(after - after%2), topDecreases(after - after%2)})
	}
	return append(list, bound{"edging_rounds", k.EdgingRounds, 0, k.RoundsAbove - 1},
		bound{"edging", k.Edging, (after + 1) / 2, 2 * after})
}

// made is the stitches that the gusset's increases made.
func (k *Worked) made() int {
	return len(k.Increases) * Stitches{OneSided: k.OneSided}.step()
}

// rounds is how many rounds the present part has.
func (k *Worked) rounds() int {
	return map[stitch.Part]int{
		stitch.Cuff: k.CuffRounds, stitch.CuffPlain: k.CuffPlainRounds, stitch.Gusset: k.GussetRounds,
		stitch.Hand: k.RoundsAbove, stitch.Top: k.TopRounds, stitch.Thumb: k.ThumbRounds,
	}[k.Part]
}

// unordered names a list of rounds that can't be one.
func (k *Worked) unordered() string {
	for _, l := range []struct {
		name      string
		list      []int
		gap, most int
	}{
		{"increase_rounds", k.Increases, 1, k.GussetRounds}, // a fixed list may have broken the gap
		{"decrease_rounds", k.Decreases, topGap, k.TopRounds},
	} {
		before := 1 - l.gap
		for _, r := range l.list {
			if r < before+l.gap || r > l.most {
				return l.name
			}
			before = r
		}
	}
	if k.begun(stitch.Thumb) && !k.corneredInOrder() {
		return "thumb_decrease_rounds"
	}
	return ""
}

// corneredInOrder tells whether the rounds of the thumb's decreases follow each
// other between its first round and its end, as many as its decreases take.
func (k *Worked) corneredInOrder() bool {
	list, before := k.corners(), 1
	for _, r := range list {
		if r <= before {
			return false
		}
		before = r
	}
	end := k.thumbPlain()
	if k.TopRounds == 0 && k.ThumbEdged != k.Thumb {
		end--
	}
	d := min(max(k.ThumbDecreases, 0), maxDecreases) // what lies outside is told by its bound
	return len(list) == decreaseRounds(d) && before <= max(end, 1)
}

// keepsWorked refuses a plan that would have what is knitted otherwise: the
// numbers of what is knitted contradict each other.
func (w *work) keepsWorked() error {
	k := w.worked
	if k == nil {
		return nil
	}
	is := w.plan.Worked(k.Part, k.Round)
	now := is.bounds()
	for i, b := range k.bounds() {
		if b.n != now[i].n && b.name != "round" && !k.ahead(b.name) {
			return fault.Fields{{Path: "worked." + b.name, Message: fmt.Sprintf("is %d, but with the rest of what is knitted it can only be %d; write the counts of the mitt that is on the needles", b.n, now[i].n)}}
		}
	}
	for _, part := range []stitch.Part{stitch.Gusset, stitch.Top, stitch.Thumb} {
		if !k.begun(part) {
			continue
		}
		was, now := k.list(part), is.list(part)
		if !slices.Equal(k.changed(part, was), is.changed(part, now)) {
			return fault.Fields{{Path: "worked.round", Message: "contradicts the increase and decrease rounds that are knitted; write the rounds of the mitt that is on the needles"}}
		}
	}
	return nil
}

func (k *Worked) list(part stitch.Part) []int {
	switch part {
	case stitch.Top:
		return k.Decreases
	case stitch.Thumb:
		return k.corners()
	}
	return k.Increases
}

// ahead tells whether a number is still free, although its part is begun.
func (k *Worked) ahead(name string) bool {
	switch name {
	case "cuff_rounds":
		return k.Part == stitch.Cuff
	case "cuff_plain_rounds":
		return k.Part.Order() <= stitch.CuffPlain.Order()
	case "gusset_rounds":
		return k.Part == stitch.Gusset
	case "rounds_above_gusset", "edging_rounds", "edging", "decrease_rounds":
		return k.Part.Order() <= stitch.Top.Order() && !k.past(stitch.Top)
	case "thumb_edging_rounds", "thumb_edging", "thumb_decreases", "thumb_stitches":
		return true
	}
	return false
}
