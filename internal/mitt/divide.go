package mitt

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"thenar/internal/division"
	"thenar/internal/fault"
	"thenar/internal/hand"
)

// A finger's tube is this much wider than the finger (common practice, no source).
const (
	fingerShare  = 0.02 // of its girth
	fingerStitch = 1.6  // stitches
)

// openRounds is after how many rounds an open finger is bound off; those of its edging
// are one fewer.
const openRounds = 3

// divide divides the hand into four fingers, each as near as can be to
//
//	t = g · 1.02 F + 1.6
//
// with the girth F of the finger. One that is decreased on purpose is wanted as much wider
// where it begins.
func (d *draft) divide() error {
	p := &d.plan
	problem := division.Problem{Stitches: p.Bridge.HandAfter}
	for i := range problem.Wanted {
		pins := &d.pins.Fingers[i]
		wish := d.fingerWish(i)
		problem.Wanted[i] = int64(math.Round(wish*division.PerStitch)) + int64(pins.Decreases.Or(0))*division.PerStitch
		problem.Pins.Palm[i], problem.Pins.Back[i] = pins.Palm.Or(0), pins.Back.Or(0)
		problem.Pins.Stitches[i] = pins.Stitches.Or(0)
	}
	for i := range problem.Pins.Bridge {
		problem.Pins.Bridge[i] = d.pins.FingerBridges[i].Or(0)
	}
	found, err := division.Solve(&problem)
	if err != nil {
		return d.divisionFaults(err)
	}
	p.Fingers = &Fingers{Bridge: found.Bridge, Lower: d.lowerRounds(), Cost: found.Cost.Float()}
	for i := range p.Fingers.Each {
		if err := d.finger(i, &found); err != nil {
			return err
		}
	}
	return nil
}

// fingerWish returns how many stitches should cover a finger.
func (d *draft) fingerWish(i int) float64 {
	return d.g*(1+fingerShare)*d.plan.Hand.Fingers.Girth[i].MM() + fingerStitch
}

// fingerAdded returns how much wider than a finger its tube should be, in mm.
func (p *Plan) fingerAdded(i int) float64 {
	return fingerShare*p.Hand.Fingers.Girth[i].MM() + fingerStitch/p.Gauge.Stitches
}

// finger sets the counts and the rounds of one finger.
func (d *draft) finger(i int, of *division.Division) error {
	f, pins, k := &d.plan.Fingers.Each[i], &d.pins.Fingers[i], d.progress
	f.Palm, f.Back, f.End = of.Palm[i], of.Back[i], or(d.req.Make.Fingers[i], FullFinger)
	f.FirstRound, f.Closed = of.Stitches[i], f.End.closed()
	if i < division.Little {
		f.PickedUp = of.Bridge[i] // along the finger that is worked before it
	}
	f.Decreased = pins.Decreases.Or(0)
	n := f.FirstRound - f.Decreased
	if n < leastThumb(f.Decreased) || n < fewestOfFinger {
		return fault.Fields{{
			Path: OfFinger(FingerDecreases, hand.Finger(i)).Path(), Works: fmt.Sprint(max(0, f.FirstRound-fewestOfFinger)),
			Message: fmt.Sprintf("is %d, which leaves too little of %d stitches; write %d or less", f.Decreased, f.FirstRound, max(0, f.FirstRound-fewestOfFinger)),
		}}
	}
	f.Stitches = Count{N: n, Exact: d.fingerWish(i), Below: n - 1, Above: n + 1, Pinned: pins.Stitches.On}
	var was *tubeWorked
	if k.begun(fingerParts[i]) {
		was = k.finger(i)
	}
	wish := d.fingerRounds(i, f)
	wish.rounds = max(wish.rounds, d.req.Make.pace().cornered(1, f.Decreased))
	if d.req.Lengths.Edging == 0 || f.End != HalfFinger {
		wish.makeRoom(&f.Tube, d.req.Make.pace(), d.plan.Stitch.Rib)
	}
	rounds := d.tubeRounds(was, wish)
	d.tube(&f.Tube, was, rounds, wish.edging)
	if f.Closed {
		f.Closing = max(0, f.Rounds-f.lastCorner(d.req.Make.pace()))
	}
	return nil
}

// fewestOfFinger is the least that a finger may have.
const fewestOfFinger = 6

// divisionFaults says at its field what keeps a hand from being divided.
func (d *draft) divisionFaults(err error) error {
	var why *division.Impossible
	if !errors.As(err, &why) {
		return err
	}
	var faults fault.Fields
	for _, f := range why.Faults {
		if f.Number.Of == division.OfHand {
			path := hand.FieldCircumference
			if d.pins.HandStitches.On {
				path = HandStitches.Path()
			}
			works(&faults, path, "", "makes %d stitches above the thumb; four fingers need %d or more", f.Value, division.LeastHand)
			continue
		}
		beside := ""
		if len(f.With) > 0 {
			names := make([]string, len(f.With))
			for i, n := range f.With {
				names[i] = divisionPath(n)
			}
			beside = " beside " + strings.Join(names, ", ")
		}
		text := "is %d, which can't be%s; write %d"
		if f.Number.Of == division.OfFinger && f.Works < f.Value && f.Value <= f.Works+d.widerBeside(f.Number.At) {
			text += ", or fix a wider bridge beside it"
		}
		if why.Together && len(why.Faults) > 1 {
			text += ", with the other changes"
		}
		works(&faults, divisionPath(f.Number), fmt.Sprint(f.Works), text, f.Value, beside, f.Works)
	}
	return faults.Err()
}

// widerBeside returns by how much the bridges beside a finger can be fixed wider than they
// are chosen.
func (d *draft) widerBeside(i int) (more int) {
	for j := max(0, i-1); j <= min(i, division.Bridges-1); j++ {
		if !d.pins.FingerBridges[j].On {
			more += widestFingerBridge - division.WidestBridge
		}
	}
	return more
}

// divisionPath returns the field of a sheet that holds a number of a division.
func divisionPath(n division.Number) string {
	f := hand.Finger(n.At)
	switch n.Of {
	case division.OfPalm:
		return OfFinger(FingerPalm, f).Path()
	case division.OfBack, division.OfBoth:
		return OfFinger(FingerBack, f).Path()
	case division.OfFinger:
		return OfFinger(FingerStitches, f).Path()
	case division.OfWish:
		return f.FieldGirth()
	}
	return OfBridge(n.At).Path()
}
