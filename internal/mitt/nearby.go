package mitt

import (
	"thenar/internal/division"
	"thenar/internal/hand"
)

// Neighbour is a value next to that of a number of a plan.
type Neighbour struct {
	Value int
	Can   bool    // whether there is a plan with it
	MM    float64 // how much further off all places are together; negative: nearer
}

// Divided lists the numbers by which a hand is divided into fingers: what each takes of palm
// and back, its stitches, the bridges.
func Divided() []Number {
	var list []Number
	for i := range hand.Finger(division.Fingers) {
		list = append(list, OfFinger(FingerPalm, i), OfFinger(FingerBack, i), OfFinger(FingerStitches, i))
	}
	for j := range division.Bridges {
		list = append(list, OfBridge(j))
	}
	return list
}

// Beside returns the values one below and one above that of a count in the plan of a
// request, each with what it costs to fix it so. What is fixed beside it stays.
func (pl *Planner) Beside(req *Request, p *Plan, n Number) [2]Neighbour {
	var list [2]Neighbour
	for i, by := range []int{-1, 1} {
		v := p.Count(n) + by
		list[i].Value = v
		if low, high := n.Range(); v < low || v > high {
			continue
		}
		trial := *req
		trial.Pins.Set(n, v)
		if with, err := pl.Plan(&trial); err == nil && with.Count(n) == v {
			list[i].Can, list[i].MM = true, with.Off.Sum()-p.Off.Sum()
		}
	}
	return list
}
