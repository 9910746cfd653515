package mitt

import (
	"cmp"

	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Worked is what is knitted already: Round rounds of Part, and all that comes
// before it. A plan of a request with it keeps that part, round for round, and
// is free only in what is still to be knitted.
//
// The counts are those of the plan by which it was knitted; of these, the ones
// that lie beyond the present round are not looked at.
type Worked struct {
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

// Worked is the plan's mitt knitted up to a round of a part.
func (p *Plan) Worked(part stitch.Part, round int) *Worked {
	w := &Worked{
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
func (w *Worked) Number(n Number) *int {
	if at := table[n].worked; at != nil {
		return at(w)
	}
	return nil
}

// Numbers returns the place of a list; nil for what is none.
func (w *Worked) Numbers(n Number) *[]int {
	if at := table[n].listed; at != nil {
		return at(w)
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

// past tells whether a part is knitted whole; nothing is where nothing is
// knitted.
func (w *Worked) past(part stitch.Part) bool { return w != nil && w.Part.Order() > part.Order() }

// in is how many rounds of the present part are knitted, if it is this one.
func (w *Worked) in(part stitch.Part) int {
	if w == nil || w.Part != part {
		return 0
	}
	return w.Round
}

// begun tells whether any round of a part is knitted.
func (w *Worked) begun(part stitch.Part) bool { return w.past(part) || w.in(part) > 0 }

// changed are the rounds of a list that are knitted.
func (w *Worked) changed(part stitch.Part, list []int) []int {
	if w.past(part) {
		return list
	}
	n := 0
	for n < len(list) && list[n] <= w.in(part) {
		n++
	}
	return list[:n]
}

// joined tells whether the cuff has come to the hand's count: in its first
// plain round, or, where it has none, in its last of ribbing, or in the hand's
// first.
func (w *Worked) joined() bool {
	return w.begun(stitch.CuffPlain) ||
		w.in(stitch.Cuff) > 0 && w.in(stitch.Cuff) == w.CuffRounds && w.CuffPlainRounds == 0 && !w.JoinsAbove
}

// hold fixes what is knitted; a number that the person fixed gives way to it.
func (w *Worked) hold(p *Pins) {
	least := func(pin *Pin, n int) {
		if pin.On {
			pin.N = max(pin.N, n)
		}
	}
	p.CastOn = Fix(w.CastOn)
	least(&p.CuffRounds, w.in(stitch.Cuff))
	least(&p.CuffPlainRounds, w.in(stitch.CuffPlain))
	if w.past(stitch.Cuff) {
		p.CuffRounds = Fix(w.CuffRounds)
	}
	if w.joined() {
		p.HandStitches, p.CuffRounds = Fix(w.HandStitches), Fix(w.CuffRounds)
		if w.Part == stitch.Cuff {
			p.CuffPlainRounds = Fix(0)
		}
	}
	if w.past(stitch.CuffPlain) {
		p.CuffPlainRounds = Fix(w.CuffPlainRounds)
	}
	if w.begun(stitch.Gusset) && w.GussetBase > 0 {
		p.GussetBase = Fix(w.GussetBase)
		least(&p.Increases, len(w.changed(stitch.Gusset, w.Increases)))
		least(&p.GussetRounds, w.in(stitch.Gusset))
		w.holdIncreases(p)
	}
	if w.begun(stitch.Hand) {
		w.holdDivision(p)
	}
	if w.begun(stitch.Thumb) {
		p.PickedUp = Fix(w.PickedUp)
		if w.cornered() {
			p.ThumbDecreases, p.ThumbStitches = Fix(w.ThumbDecreases), Fix(w.Thumb)
		}
	}
}

func (w *Worked) holdDivision(p *Pins) {
	if w.GussetBase == 0 {
		return
	}
	p.Increases, p.GussetRounds, p.Rhythm = Fix(len(w.Increases)), Fix(w.GussetRounds), nil
	p.FirstIncrease, p.IncreaseRounds = Pin{}, nil
	p.KeptOnHand, p.Held, p.Bridge = Fix(w.Kept), Fix(w.Held), Fix(w.Bridge)
}

// cornered tells whether the thumb's decreases are begun, so that their number
// is settled. Where there are none, or the thumb is closed, it is settled with
// the second round or the edging.
func (w *Worked) cornered() bool {
	if w.TopRounds > 0 || w.ThumbEdging == 0 {
		return w.in(stitch.Thumb) > 1
	}
	if list := w.corners(); len(list) > 0 {
		return w.in(stitch.Thumb) >= list[0]
	}
	return w.edged()
}

// edged tells whether an open thumb's edging is begun, or the change to its
// count, so that what lies below it is settled; a thumb without an edging has
// only that.
func (w *Worked) edged() bool {
	if w.ThumbEdging == 0 {
		return w.in(stitch.Thumb) > 1
	}
	return w.in(stitch.Thumb) > w.thumbPlain()-boolInt(w.ThumbEdged != w.Thumb)
}

// corners are the rounds of the thumb's decreases as they were planned. By the
// earlier rule those of a closed thumb followed its first round, those of an
// open one ended under the change to the edging's count.
func (w *Worked) corners() []int {
	rounds := decreaseRounds(min(max(w.ThumbDecreases, 0), maxDecreases))
	if len(w.ThumbCorners) > 0 || rounds == 0 {
		return w.ThumbCorners
	}
	first := 2
	if w.TopRounds == 0 {
		first = w.thumbPlain() - boolInt(w.ThumbEdged != w.Thumb) - rounds + 1
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
	k := p.Knitted
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
func (w *Worked) cuffRib() int { return cmp.Or(w.CuffRib, w.Rib) }

func (w *Worked) edgingRib() int { return cmp.Or(w.EdgingRib, w.Rib) }

func (w *Worked) thumbRib() int { return cmp.Or(w.ThumbRib, w.Rib) }
