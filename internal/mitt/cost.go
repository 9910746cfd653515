package mitt

import (
	"math"

	"thenar/internal/fault"
	"thenar/internal/hand"
)

// Place is a place of the mitt at which the fabric is compared with the wish.
type Place int

// The places, girths and lengths, in the order in which they are knitted.
const (
	PlaceCuff Place = iota
	PlaceCuffUpper
	PlaceCuffLength
	PlaceCuffPlain
	PlaceGussetShape
	PlaceGussetLength
	PlaceCrotch
	PlaceHand
	PlaceHandLength
	PlaceTop
	PlaceLittle
	PlaceLittleLength
	PlaceUpperHand
	PlaceRing
	PlaceRingLength
	PlaceMiddle
	PlaceMiddleLength
	PlaceIndex
	PlaceIndexLength
	PlaceThumb
	PlaceThumbLength
	PlaceCap
	PlaceCapLength
	places
)

// Words returns what the place is called in the mitt of a plan.
func (p Place) Words(of *Plan) string {
	switch {
	case p == PlaceHandLength && !of.Parted():
		return "length above the cuff"
	case p == PlaceHandLength && !of.Gusseted():
		return "length above the thumb"
	case p == PlaceGussetLength && of.OpeningRows() > 0:
		return "opening’s length"
	case p == PlaceGussetLength && !of.Gusseted():
		return "length to the thumb"
	}
	return [places]string{
		"cuff", "cuff’s upper edge", "length of the cuff’s edge", "plain cuff’s length", "gusset’s shape", "gusset’s length", "palm with thumb",
		"hand", "length above the gusset", "top’s length", "little finger", "little finger’s length", "upper hand’s length", "ring finger", "ring finger’s length",
		"middle finger", "middle finger’s length", "index finger", "index finger’s length", "thumb", "thumb’s length", "cap", "cap’s length",
	}[p]
}

// PlacesOfFinger returns the places of a finger, its girth and its length.
func PlacesOfFinger(f hand.Finger) (girth, length Place) {
	girth = [...]Place{PlaceIndex, PlaceMiddle, PlaceRing, PlaceLittle}[f]
	return girth, girth + 1
}

// castOnPlace returns the place whose width the stitches cast on are.
func (p *Plan) castOnPlace() Place {
	if p.Cuff.Flare != nil {
		return PlaceCuffUpper
	}
	return PlaceCuff
}

// Offs holds fabric minus wish at each place, in mm. For the gusset's shape it is
// the mean distance over the rounds, without a sign.
type Offs [places]float64

// Sum returns the sum of the distances at all places, in mm.
func (o *Offs) Sum() (mm float64) {
	for _, off := range o {
		mm += math.Abs(off)
	}
	return mm
}

// offs works out how far the plan is off the wish at every place.
func (d *draft) offs() {
	p, l := &d.plan, &d.len
	length := func(rounds int, wanted float64) float64 { return float64(rounds)/d.q - wanted }
	p.Off = Offs{
		PlaceCuff:       float64(p.Cuff.Wrist.N)/d.g - p.Hand.Wrist.MM()*(1+p.Ease.Cuff),
		PlaceCuffLength: p.Cuff.Length() - l.cuff*d.req.Make.Cuff.info().reaches(),
		PlaceCuffPlain:  length(p.Cuff.PlainRounds, l.cuffPlain),
		PlaceHand:       p.Residual.Hand,
	}
	if f := p.Cuff.Flare; f != nil {
		p.Off[PlaceCuffUpper] = float64(p.Cuff.CastOn.N)/d.g - f.Girth
	}
	above := l.above
	if p.Top != nil {
		wish := l.top
		if !p.Make.TopRounded() { // its length follows from its count
			wish = float64(d.topRounds(d.req.Make.closes(p.Bridge.HandAfter))) / d.q
		}
		p.Off[PlaceTop] = length(p.Top.Rounds, wish)
		if d.req.Lengths.AboveGusset == 0 {
			above -= float64(p.Top.Rounds) / d.q
		} else {
			above = d.req.Lengths.AboveGusset.MM()
		}
	}
	p.Off[PlaceHandLength] = length(p.Body.RoundsAbove, above)
	if p.Gusset.Rounds.N == 0 {
		return
	}
	p.Off[PlaceGussetShape] = p.Gusset.Way.Mean
	p.Off[PlaceGussetLength], p.Off[PlaceCrotch] = p.Residual.GussetLength, p.Residual.Crotch
	p.Off[PlaceThumb], p.Off[PlaceThumbLength] = p.Residual.Thumb, length(p.Thumb.Rounds, l.thumb)
	if p.Fingered() {
		d.offsOfFingers()
	}
}

// PinCost is what one fixed number costs: the plan as it is, compared with the
// plan in which only this number is free.
type PinCost struct {
	Number  Number
	Value   string
	Free    string  // what the number would be if free; empty if there is no such plan
	MM      float64 // how much further off all places are together; negative: nearer
	Changes []Change
}

// Change is a place that a fixed number moves: its distance from the wish in mm
// with the number fixed and with it free.
type Change struct {
	Place      Place
	With, Free float64
}

// noticed is the least change at a place that is listed, in mm.
const noticed = 0.05

// PinCosts says what each fixed number of a plan's request costs in mm.
func (pl *Planner) PinCosts(req *Request, p *Plan) []PinCost {
	var costs []PinCost
	for _, n := range req.Pins.fixed() {
		if p.Number(n) == "" {
			continue // of no use to this kind
		}
		trial := *req
		trial.Pins.clear(n)
		c := PinCost{Number: n, Value: p.Number(n)}
		free, err := pl.Plan(&trial)
		if err == nil {
			c.Free = free.Number(n)
			c.MM = p.Off.Sum() - free.Off.Sum()
			for place := range places {
				if math.Abs(p.Off[place]-free.Off[place]) >= noticed {
					c.Changes = append(c.Changes, Change{place, p.Off[place], free.Off[place]})
				}
			}
		}
		costs = append(costs, c)
	}
	return costs
}

// rhythmOf returns the intervals of a schedule as a rhythm: a single one if all
// are alike. It returns nil if there are fewer than two increase rounds or if
// they don't begin in round first, as a fixed rhythm does.
func rhythmOf(rounds []int, first int) []int {
	if len(rounds) < 2 || rounds[0] != first {
		return nil
	}
	even := true
	list := make([]int, 0, len(rounds)-1)
	for i := 1; i < len(rounds); i++ {
		even = even && rounds[i]-rounds[i-1] == rounds[1]-rounds[0]
		list = append(list, rounds[i]-rounds[i-1])
	}
	if even {
		return list[:1]
	}
	return list
}

// checkSchedule refuses an unknown way of increasing and a price out of range.
func (r *Request) checkSchedule(faults *fault.Fields) {
	switch r.Follow {
	case FollowDefault, FollowProfile, FollowRhythm:
	default:
		faults.Add("schedule.follows", "is %q; write profile or rhythm", r.Follow)
	}
	if l := r.Lambda; l != nil && !(*l >= 0 && *l <= MaxLambda) {
		faults.Add("schedule.lambda", "is %g; write 0 to follow the hand as closely as it goes, up to %g for an even rhythm", *l, MaxLambda)
	}
}
