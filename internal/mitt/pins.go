package mitt

import (
	"strconv"

	"thenar/internal/fault"
)

// pinRange is what a pin may be at all.
type pinRange struct{ low, high int }

var pinRanges = map[string]pinRange{
	"cast_on":             {fewestStitches, maxStitches},
	"cuff_rounds":         {0, maxRounds},
	"cuff_plain_rounds":   {0, maxRounds},
	"hand_stitches":       {fewestStitches, maxStitches},
	"gusset_base":         {1, maxBase},
	"increases":           {1, maxRounds},
	"first_increase":      {1, maxRounds},
	"gusset_rounds":       {1 + gussetLeadOut, maxRounds},
	"kept_on_hand":        {0, maxStitches},
	"held":                {1, maxStitches},
	"bridge":              {0, maxBridge},
	"rounds_above_gusset": {1, maxRounds},
	"top_rounds":          {1, maxRounds},
	"picked_up":           {0, maxBridge + maxExtra},
	"thumb_decreases":     {0, maxDecreases},
	"thumb_stitches":      {1, maxStitches},
	"thumb_rounds":        {1, maxRounds},
}

// PinRange is what a pin may be by itself; 0, 0 for a name that is not known.
func PinRange(name string) (low, high int) {
	r := pinRanges[name]
	return r.low, r.high
}

// Set fixes a number by its name in a sheet; a name that is not known is left
// alone.
func (p *Pins) Set(name string, n int) {
	for _, e := range p.all() {
		if e.name == name {
			*e.pin = Fix(n)
		}
	}
}

// Fixed tells whether the number of a name is fixed.
func (p *Pins) Fixed(name string) bool {
	switch name {
	case rhythmPin:
		return len(p.Rhythm) > 0
	case listPin:
		return len(p.IncreaseRounds) > 0
	}
	for _, e := range p.all() {
		if e.name == name {
			return e.pin.On
		}
	}
	return false
}

func (p Pin) text() string { return strconv.Itoa(p.N) }

// ShortestInterval is the least that a rhythm may ask for.
const ShortestInterval = gussetGap

// check refuses pins that are out of range by themselves.
func (p *Pins) check(faults *fault.Fields) {
	for _, e := range p.all() {
		r := pinRanges[e.name]
		if e.pin.On && (e.pin.N < r.low || e.pin.N > r.high) {
			faults.Add("pins."+e.name, "is %d; write a whole number from %d to %d", e.pin.N, r.low, r.high)
		}
	}
	for i, r := range p.IncreaseRounds {
		if r < 1 || r > maxRounds || i > 0 && r <= p.IncreaseRounds[i-1] {
			faults.Add("pins."+listPin, "has round %d out of order; write the increase rounds from the first to the last: 1, 4, 7", r)
			break
		}
	}
	for _, n := range p.Rhythm {
		if n < ShortestInterval || n > maxRounds {
			faults.Add("pins.rhythm", "has an interval of %d; every 2nd round (2) is the closest", n)
			return
		}
	}
}
