package mitt

import (
	"fmt"
	"strings"

	"thenar/internal/fault"
)

// pinRange is what a pin may be at all.
type pinRange struct{ low, high int }

var pinRanges = map[string]pinRange{
	"cast_on":             {fewestStitches, mostStitches},
	"cuff_rounds":         {0, mostRounds},
	"cuff_plain_rounds":   {0, mostRounds},
	"hand_stitches":       {fewestStitches, mostStitches},
	"gusset_base":         {1, mostBase},
	"increases":           {1, mostRounds},
	"gusset_rounds":       {1 + gussetLeadOut, mostRounds},
	"kept_on_hand":        {0, mostStitches},
	"held":                {1, mostStitches},
	"bridge":              {0, mostBridge},
	"rounds_above_gusset": {1, mostRounds},
	"top_rounds":          {1, mostRounds},
	"picked_up":           {0, mostBridge + mostExtra},
	"thumb_decreases":     {0, mostDecreases},
	"thumb_stitches":      {1, mostStitches},
	"thumb_rounds":        {1, mostRounds},
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
	for _, n := range p.Rhythm {
		if n < ShortestInterval || n > mostRounds {
			faults.Add("pins.rhythm", "has an interval of %d; every 2nd round (2) is the closest", n)
			return
		}
	}
}

// conflict says why nothing was found: the smallest set of pins that can't
// stand together, each with the nearest number that the others leave; or,
// without pins, the rounds.
func (w *work) conflict(s *search) error {
	culprits := w.culprits(s)
	var faults fault.Fields
	if len(culprits) == 0 {
		faults.Add("hand.gusset_length", "leaves no room for a gusset; give a longer gusset or a finer gauge")
		return faults
	}
	var names []string
	for _, e := range culprits {
		names = append(names, fmt.Sprintf("%s %s", e.name, w.pinText(e.name)))
	}
	for _, e := range culprits {
		faults.Add("pins."+e.name, "%s can't stand together with the rest of: %s; %s",
			w.pinText(e.name), strings.Join(names, ", "), w.nearestFor(s, e.name))
	}
	return faults
}

// culprits drops one pin after another; a pin without which there is still
// nothing is not in the way. What stays is a smallest set: without any of
// them there is a choice.
func (w *work) culprits(s *search) []pinEntry {
	pins, rhythm := *s.pins, s.pins.Rhythm
	trial := *s
	trial.pins = &pins
	var in []pinEntry
	for _, e := range pins.all() {
		if !e.pin.On || !isGussetPin(e.name) {
			continue
		}
		kept := *e.pin
		*e.pin = Pin{}
		if trial.solvable(w) {
			*e.pin = kept
			in = append(in, pinEntry{e.name, &kept})
		}
	}
	if len(rhythm) > 0 {
		pins.Rhythm = nil
		if trial.solvable(w) {
			pins.Rhythm = rhythm
			in = append(in, pinEntry{"rhythm", nil})
		}
	}
	return in
}

// solvable tells whether the search finds anything with the pins it holds,
// with the rounds and the room that those pins leave.
func (s *search) solvable(w *work) bool {
	s.n = s.pins.HandStitches.Or(w.plan.Body.Stitches.N)
	s.most = room(s.pins.GussetRounds.Or(max(nearest(w.plan.Gusset.Rounds.Exact), 1+gussetLeadOut)), s.pins.Rhythm)
	s.mostCorners = corners(s.pins.ThumbRounds.Or(w.thumbRoundsFree()))
	_, ok := s.choose()
	return ok
}

// isGussetPin tells whether a pin has a say in the search.
func isGussetPin(name string) bool {
	switch name {
	case "hand_stitches", "gusset_base", "increases", "gusset_rounds", "kept_on_hand", "held",
		"bridge", "picked_up", "thumb_decreases", "thumb_stitches", "thumb_rounds":
		return true
	}
	return false
}

// pinText is the pinned value as the person wrote it.
func (w *work) pinText(name string) string {
	if name == "rhythm" {
		return strings.Trim(strings.ReplaceAll(fmt.Sprint(w.pins.Rhythm), " ", ", "), "[]")
	}
	for _, e := range w.pins.all() {
		if e.name == name {
			return fmt.Sprint(e.pin.N)
		}
	}
	return ""
}

// nearestFor says which value of one pin would work beside all others.
func (w *work) nearestFor(s *search, name string) string {
	if name == "rhythm" {
		return "a shorter interval, or none, would work"
	}
	pins := *w.pins
	trial := *s
	trial.pins = &pins
	r := pinRanges[name]
	for _, e := range pins.all() {
		if e.name != name {
			continue
		}
		was := e.pin.N
		for off := 1; off <= r.high-r.low; off++ {
			for _, n := range [2]int{was + off, was - off} {
				if n < r.low || n > r.high {
					continue
				}
				e.pin.N = n
				if trial.solvable(w) {
					return fmt.Sprintf("with the others kept, %d would work", n)
				}
			}
		}
	}
	return "no other number of it works with the others kept"
}
