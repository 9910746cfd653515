package project

import (
	"slices"

	"thenar/internal/chart"
	"thenar/internal/mitt"
	"thenar/internal/tryon"
)

// Idle is what a person decided or noted, and what a mitt that is made in one way has no use
// or place for. It is kept, and is back with a way that has it.
type Idle struct {
	Unused  []mitt.Number // fixed
	Choices []string      // of how it is made, by what they are called
	Told    []tryon.Zone  // of which a try said something
	Lost    []chart.Edit  // painted cells
}

// Count returns how much it is.
func (i *Idle) Count() int { return len(i.Unused) + len(i.Choices) + len(i.Told) + len(i.Lost) }

// idle returns what a plan has no use for. told are the zones of which a try said something,
// lost the painted cells that have no place in it.
func idle(p *mitt.Plan, told []tryon.Zone, lost []chart.Edit) Idle {
	i := Idle{Choices: p.Unused, Lost: lost}
	i.Unused = slices.DeleteFunc(mitt.Fixable(), func(n mitt.Number) bool { return !p.Pins.Fixed(n) || p.Number(n) != "" })
	for _, z := range told {
		if !z.In(p) {
			i.Told = append(i.Told, z)
		}
	}
	return i
}

// Now returns the way that a mitt is made among those that it may be made; nil if none is
// listed.
func Now(list []ThumbWay) *ThumbWay {
	if i := slices.IndexFunc(list, func(w ThumbWay) bool { return w.Chosen }); i >= 0 {
		return &list[i]
	}
	return nil
}

// Back returns the way that has a use for the most of what has none now; nil if there is
// none with more. Where two have the same, the kind stays.
func (out *Outputs) Back() *ThumbWay {
	best := Now(out.Kinds)
	now := best
	for _, list := range [][]ThumbWay{out.Thumbs, out.Kinds} {
		for i := range list {
			if w := &list[i]; best != nil && !w.Chosen && w.Plan != nil && w.Count() < best.Count() {
				best = w
			}
		}
	}
	if best == now {
		return nil
	}
	return best
}
