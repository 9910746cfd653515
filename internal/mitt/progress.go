package mitt

import (
	"cmp"

	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Progress is what is knitted already: Round rounds of Part, and all that comes
// before it. A plan of a request with it keeps that part, round for round, and
// is free only in what is still to be knitted.
//
// The counts are those of the plan by which it was knitted; of these, the ones
// that lie beyond the present round are not looked at.
type Progress struct {
	Part  stitch.Part
	Round int
	// BaseAbove is how far the base of the gusset sits above its place on the
	// hand, in either direction: by so much the gusset has less to cover.
	BaseAbove units.Length

	Rib                                  int
	OneSided                             bool
	CastOn, CuffRounds, CuffPlainRounds  int
	HandStitches, GussetBase             int
	Increases                            []int // rounds of the gusset
	GussetRounds, Kept, Held, Bridge     int
	RoundsAbove, EdgingRounds, Edging    int
	TopRounds                            int
	Decreases                            []int // rounds of the top
	PickedUp, ThumbDecreases, Thumb      int
	ThumbRounds, ThumbEdging, ThumbEdged int // rounds in all, of the edging, and the edging's stitches

	// ThumbCorners are the rounds of the thumb's decreases. A thumb of an
	// earlier rule has none written down: it was decreased under its edging.
	ThumbCorners []int
	// The multiples of the ribs where they are not Rib; else 0.
	CuffRib, EdgingRib, ThumbRib int
	// The parts whose change of count is turned by half a run; by the earlier
	// rule a whole run stood before the first stitch made or taken off.
	CuffTurned, HandTurned, ThumbTurned bool
	// JoinsAbove says that the cuff comes to the hand's count in the hand's
	// first round.
	JoinsAbove bool
}

// ProgressAt is the plan's mitt knitted up to a round of a part.
func (p *Plan) ProgressAt(part stitch.Part, round int) *Progress {
	w := &Progress{
		Part: part, Round: round, OneSided: p.Stitch.OneSided, BaseAbove: p.BaseAbove, JoinsAbove: p.Cuff.JoinsAbove,
		CuffTurned: p.turned(stitch.Cuff), HandTurned: p.turned(stitch.Hand), ThumbTurned: p.turned(stitch.Thumb),
	}
	for _, n := range knittable {
		switch r := &table[n]; {
		case !p.had(n):
		case r.listed != nil:
			*r.listed(w) = r.list(p)
		default:
			*r.worked(w) = r.count(p)
		}
	}
	return w
}

// Number returns the place of a number; nil for a list, and for what is not
// kept of what is knitted.
func (k *Progress) Number(n Number) *int {
	if at := table[n].worked; at != nil {
		return at(k)
	}
	return nil
}

// Numbers returns the place of a list; nil for what is none.
func (k *Progress) Numbers(n Number) *[]int {
	if at := table[n].listed; at != nil {
		return at(k)
	}
	return nil
}

// ownRib is the multiple of a rib where it is not the sheet's, else 0.
func (p *Plan) ownRib(rib int) int {
	if rib == p.Stitch.Rib {
		return 0
	}
	return rib
}

// past reports whether a part is knitted whole; false for nil.
func (k *Progress) past(part stitch.Part) bool { return k != nil && k.Part.Order() > part.Order() }

// in is how many rounds of the present part are knitted, if it is this one.
func (k *Progress) in(part stitch.Part) int {
	if k == nil || k.Part != part {
		return 0
	}
	return k.Round
}

// begun reports whether any round of a part is knitted.
func (k *Progress) begun(part stitch.Part) bool { return k.past(part) || k.in(part) > 0 }

// changed are the rounds of a list that are knitted.
func (k *Progress) changed(part stitch.Part, list []int) []int {
	if k.past(part) {
		return list
	}
	n := 0
	for n < len(list) && list[n] <= k.in(part) {
		n++
	}
	return list[:n]
}

// joined reports whether the cuff has come to the hand's count: in its first
// plain round, or, where it has none, in its last of ribbing, or in the hand's
// first.
func (k *Progress) joined() bool {
	return k.begun(stitch.CuffPlain) ||
		k.in(stitch.Cuff) > 0 && k.in(stitch.Cuff) == k.CuffRounds && k.CuffPlainRounds == 0 && !k.JoinsAbove
}

// hold fixes what is knitted; a number that the person fixed gives way to it.
func (k *Progress) hold(p *Pins) {
	least := func(pin *Pin, n int) {
		if pin.On {
			pin.N = max(pin.N, n)
		}
	}
	p.CastOn = Fix(k.CastOn)
	least(&p.CuffRounds, k.in(stitch.Cuff))
	least(&p.CuffPlainRounds, k.in(stitch.CuffPlain))
	if k.past(stitch.Cuff) {
		p.CuffRounds = Fix(k.CuffRounds)
	}
	if k.joined() {
		p.HandStitches, p.CuffRounds = Fix(k.HandStitches), Fix(k.CuffRounds)
		if k.Part == stitch.Cuff {
			p.CuffPlainRounds = Fix(0)
		}
	}
	if k.past(stitch.CuffPlain) {
		p.CuffPlainRounds = Fix(k.CuffPlainRounds)
	}
	if k.begun(stitch.Gusset) && k.GussetBase > 0 {
		p.GussetBase = Fix(k.GussetBase)
		least(&p.Increases, len(k.changed(stitch.Gusset, k.Increases)))
		least(&p.GussetRounds, k.in(stitch.Gusset))
		k.holdIncreases(p)
	}
	if k.begun(stitch.Hand) {
		k.holdDivision(p)
	}
	if k.begun(stitch.Thumb) {
		p.PickedUp = Fix(k.PickedUp)
		if k.cornered() {
			p.ThumbDecreases, p.ThumbStitches = Fix(k.ThumbDecreases), Fix(k.Thumb)
		}
	}
}

func (k *Progress) holdDivision(p *Pins) {
	if k.GussetBase == 0 {
		return
	}
	p.Increases, p.GussetRounds, p.Rhythm = Fix(len(k.Increases)), Fix(k.GussetRounds), nil
	p.FirstIncrease, p.IncreaseRounds = Pin{}, nil
	p.KeptOnHand, p.Held, p.Bridge = Fix(k.Kept), Fix(k.Held), Fix(k.Bridge)
}

// cornered reports whether the thumb's decreases are begun, so that their number
// is settled. Where there are none, or the thumb is closed, it is settled with
// the second round or the edging.
func (k *Progress) cornered() bool {
	if k.TopRounds > 0 || k.ThumbEdging == 0 {
		return k.in(stitch.Thumb) > 1
	}
	if list := k.corners(); len(list) > 0 {
		return k.in(stitch.Thumb) >= list[0]
	}
	return k.edged()
}

// edged reports whether an open thumb's edging is begun, or the change to its
// count, so that what lies below it is settled; a thumb without an edging has
// only that.
func (k *Progress) edged() bool {
	if k.ThumbEdging == 0 {
		return k.in(stitch.Thumb) > 1
	}
	return k.in(stitch.Thumb) > k.thumbPlain()-boolInt(k.ThumbEdged != k.Thumb)
}

// corners are the rounds of the thumb's decreases as they were planned. By the
// earlier rule those of a closed thumb followed its first round, those of an
// open one ended under the change to the edging's count.
func (k *Progress) corners() []int {
	rounds := decreaseRounds(min(max(k.ThumbDecreases, 0), maxDecreases))
	if len(k.ThumbCorners) > 0 || rounds == 0 {
		return k.ThumbCorners
	}
	first := 2
	if k.TopRounds == 0 {
		first = k.thumbPlain() - boolInt(k.ThumbEdged != k.Thumb) - rounds + 1
	}
	list := make([]int, rounds)
	for i := range list {
		list[i] = first + i
	}
	return list
}

// turned reports whether a part's change of count is turned by half a run: not
// where it was knitted by the earlier rule.
func (p *Plan) turned(part stitch.Part) bool {
	k := p.Progress
	switch {
	case k == nil:
		return true
	case part == stitch.Cuff:
		return k.CuffTurned || !k.joined()
	case part == stitch.Hand:
		return k.HandTurned || !k.past(stitch.Hand) && (k.in(stitch.Hand) == 0 || k.in(stitch.Hand) < k.RoundsAbove-k.EdgingRounds)
	}
	return k.ThumbTurned || k.in(stitch.Thumb) == 0 || !k.edged()
}

// cuffRib, edgingRib and thumbRib are the multiples of the three ribs.
func (k *Progress) cuffRib() int { return cmp.Or(k.CuffRib, k.Rib) }

func (k *Progress) edgingRib() int { return cmp.Or(k.EdgingRib, k.Rib) }

func (k *Progress) thumbRib() int { return cmp.Or(k.ThumbRib, k.Rib) }
