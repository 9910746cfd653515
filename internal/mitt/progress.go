package mitt

import (
	"cmp"

	"thenar/internal/division"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Progress is what is knitted already: Round rounds of Part, and all parts
// before it. A plan made with it keeps what is knitted, round for round, and is
// free only in the rest.
//
// Its numbers are those of the plan by which the mitt was knitted; those that
// lie beyond the present round are ignored.
type Progress struct {
	Part  stitch.Part
	Round int
	Down  bool // it is knitted from the fingertips
	// BaseAbove is how far the gusset's base sits above its place on the hand
	// (negative: below it): the gusset has that much less to cover.
	BaseAbove units.Length

	Rib                                  int
	OneSided                             bool
	Flat                                 bool         // in rows, with a seam
	Construction                         Construction // empty: by a gusset, or without a thumb
	Increase                             Increase     // of the gusset
	Knits                                int          // of each repeat of the rib; 0: half of it
	Cuff                                 CuffKind
	Facing                               int // rounds of a hem that lie inside
	CuffEdge, CuffStep                   int // of a gauntlet: rounds of garter stitch, stitches of a decrease round
	CuffDecreases                        []int
	Top                                  TopKind
	Band, Wedges                         int // of the top; 0: as usual, or none
	Place                                ThumbPlace
	Inset                                int
	CastOn, CuffRounds, CuffPlainRounds  int
	HandStitches, GussetBase             int
	Increases                            []int // rounds of the gusset
	GussetRounds, Kept, Held, Bridge     int
	RoundsAbove, EdgingRounds, Edging    int
	TopRounds                            int
	Decreases                            []int // rounds of the top
	PickedUp, ThumbDecreases, Thumb      int
	ThumbRounds, ThumbEdging, ThumbEdged int // rounds in all, of the edging, and the edging's stitches

	// ThumbCorners are the rounds of the thumb's decreases. A thumb knitted by
	// the earlier rule has none recorded; corners works them out.
	ThumbCorners []int
	// CuffRib, EdgingRib and ThumbRib are the multiples of these ribs where they
	// differ from Rib, else 0.
	CuffRib, EdgingRib, ThumbRib int
	// CuffTurned, HandTurned and ThumbTurned say whether the part's change of
	// count is turned by half a run. By the earlier rule it was not: a whole run
	// came before the first stitch made or taken off.
	CuffTurned, HandTurned, ThumbTurned bool
	// Fingers are those of a glove, from the index on, FingerBridges the stitches between
	// them, LowerRounds those of the upper hand.
	Fingers       [division.Fingers]FingerWorked
	FingerBridges [division.Bridges]int
	LowerRounds   int
	Cap           CapWorked
	ThumbEnd      FingerEnd
	// JoinsAbove says whether the hand's first round brings the cuff to the
	// hand's count.
	JoinsAbove bool
}

// ProgressAt returns the progress of a mitt that is knitted by this plan up to a
// round of a part.
func (p *Plan) ProgressAt(part stitch.Part, round int) *Progress {
	k := &Progress{
		Part: part, Round: round, Down: p.Down(), OneSided: p.Stitch.OneSided, Flat: p.Make.Flat, Increase: p.Make.Increase, Cuff: p.Make.Cuff, Top: p.Make.Top, Place: p.Make.Place, BaseAbove: p.BaseAbove, JoinsAbove: p.Cuff.JoinsAbove,
		Construction: p.recorded(), CuffTurned: p.turned(stitch.Cuff), HandTurned: p.turned(stitch.Hand), ThumbTurned: p.turned(stitch.Thumb),
	}
	for _, n := range knittable {
		switch r := &table[n]; {
		case !p.has(n):
		case r.listed != nil:
			*r.listed(k) = r.list(p)
		default:
			*r.worked(k) = r.count(p)
		}
	}
	if p.Fingered() {
		k.ThumbEnd = p.Make.ThumbEnd
		for i := range k.Fingers {
			k.Fingers[i].End = p.Make.Fingers[i]
		}
	}
	return k
}

// recorded returns the construction as it is recorded of what is knitted: that by a
// gusset and that without a thumb are told by their numbers.
func (p *Plan) recorded() Construction {
	if c := p.Construction(); c != ByGusset && c != NoThumb {
		return c
	}
	return ""
}

// construction returns how what is knitted is made round the thumb. Below the base of
// the thumb that is not settled.
func (k *Progress) construction() Construction {
	switch {
	case k.Construction != "":
		return k.Construction
	case k.GussetBase > 0:
		return ByGusset
	}
	return NoThumb
}

// Number returns where n is held, or nil if n is a list or is not recorded of
// what is knitted.
func (k *Progress) Number(n Number) *int {
	if at := table[n].worked; at != nil {
		return at(k)
	}
	return nil
}

// Numbers returns where the list n is held, or nil if n is not a recorded list.
func (k *Progress) Numbers(n Number) *[]int {
	if at := table[n].listed; at != nil {
		return at(k)
	}
	return nil
}

// ownRib returns the multiple of a rib, or 0 if it is the sheet's.
func (p *Plan) ownRib(rib int) int {
	if rib == p.Stitch.Rib {
		return 0
	}
	return rib
}

// past reports whether all of a part is knitted. Like in and begun it takes nil
// for nothing knitted.
func (k *Progress) past(part stitch.Part) bool { return k != nil && k.order(k.Part) > k.order(part) }

// in returns the number of knitted rounds of part if it is the present one,
// else 0.
func (k *Progress) in(part stitch.Part) int {
	if k == nil || k.Part != part {
		return 0
	}
	return k.Round
}

// begun reports whether any round of a part is knitted.
func (k *Progress) begun(part stitch.Part) bool { return k.past(part) || k.in(part) > 0 }

// changed returns the rounds of a part's list that are knitted.
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

// joined reports whether the cuff has been brought to the hand's count. That
// happens in its first plain round; if it has none, in its last round of ribbing
// or in the hand's first round. From the fingertips the hand's count is there at once.
func (k *Progress) joined() bool {
	if k != nil && k.Down {
		return k.tubed()
	}
	return k.begun(stitch.CuffPlain) ||
		k.in(stitch.Cuff) > 0 && k.in(stitch.Cuff) >= k.CuffRounds-k.pace().rest() && k.CuffPlainRounds == 0 && !k.JoinsAbove
}

// madeTop returns how the top is made.
func (k *Progress) madeTop() *Make {
	m := Make{Top: k.Top}
	if k.Band > 0 {
		m.Band = Fix(k.Band)
	}
	if k.Wedges > 0 {
		m.Wedges = Fix(k.Wedges)
	}
	return &m
}

// topSettled reports whether the hand's last round is knitted, which may take off
// stitches for the top.
func (k *Progress) topSettled() bool {
	if k.Down {
		return k.begun(stitch.Top)
	}
	return k.TopRounds > 0 && (k.past(stitch.Hand) || k.begun(stitch.Hand) && k.in(stitch.Hand) >= k.RoundsAbove-k.pace().rest())
}

// placed reports whether what is knitted shows where the thumb sits: a top by its side
// lines, a row of a gusset by where that stands in it.
func (k *Progress) placed() bool {
	return k.topSettled() || k.Flat && (k.begun(stitch.Gusset) || k.Down && k.handDone())
}

// hold fixes the numbers that are knitted; where the person fixed another value,
// it gives way.
func (k *Progress) hold(p *Pins) {
	if k.Down {
		k.holdDown(p)
		return
	}
	least := func(pin *Pin, n int) {
		if pin.On {
			pin.N = max(pin.N, n)
		}
	}
	rounds := func(part stitch.Part) int { return k.pace().up(k.in(part)) }
	p.CastOn = Fix(k.CastOn)
	least(&p.CuffRounds, rounds(stitch.Cuff))
	least(&p.CuffPlainRounds, rounds(stitch.CuffPlain))
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
	if k.fingered() {
		k.holdFingers(p)
	}
	switch k.construction() {
	case Straight:
		k.holdStraight(p)
		return
	case Slit:
		k.holdOpening(p)
		return
	}
	if k.begun(stitch.Gusset) && k.GussetBase > 0 {
		p.GussetBase = Fix(k.GussetBase)
		least(&p.Increases, len(k.changed(stitch.Gusset, k.Increases)))
		least(&p.GussetRounds, rounds(stitch.Gusset))
		k.holdIncreases(p)
	}
	if k.begun(stitch.Hand) {
		k.holdDivision(p)
	}
	if k.begun(stitch.Thumb) {
		p.PickedUp = Fix(k.PickedUp)
		if k.thumb().cornered() {
			p.ThumbDecreases, p.ThumbStitches = Fix(k.ThumbDecreases), Fix(k.Thumb)
		}
	}
}

// holdStraight is hold above the plain cuff for a thumb without a gusset.
func (k *Progress) holdStraight(p *Pins) {
	if n := k.in(stitch.BelowThumb); p.GussetRounds.On {
		p.GussetRounds.N = max(p.GussetRounds.N, n)
	}
	if k.begun(stitch.Hand) {
		p.GussetRounds, p.Held = Fix(k.GussetRounds), Fix(k.Held)
	}
	if k.begun(stitch.Thumb) && k.thumb().cornered() {
		p.ThumbDecreases, p.ThumbStitches = Fix(k.ThumbDecreases), Fix(k.Thumb)
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

// turned reports whether a part's change of count is turned by half a run. It is
// not if the change was knitted by the earlier rule.
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
	return part != stitch.Thumb || k.ThumbTurned || k.in(stitch.Thumb) == 0 || !k.thumb().edgeBegun()
}

// cuffRib returns the multiple of the cuff's rib.
func (k *Progress) cuffRib() int { return cmp.Or(k.CuffRib, k.Rib) }

// edgingRib returns the multiple of the rib of the hand's edging.
func (k *Progress) edgingRib() int { return cmp.Or(k.EdgingRib, k.Rib) }
