package words

import (
	"slices"

	"thenar/internal/stitch"
)

// StopAfter returns the step after which a section says where on the hand it ends: the
// last that is a round, or the last before its end is begun; −1 if it doesn't say that, as
// where that end is worked like the rounds before it, in one step with them.
func (p Passage) StopAfter(l Length) int {
	last := -1
	for i, step := range p.Steps {
		if step.From < l.End && l.End <= step.To {
			return -1
		}
		if step.From > 0 && l.Until != "" && (l.End == 0 || step.To < l.End) {
			last = i
		}
	}
	return last
}

// WithStops returns instructions that say, once for each section, where on the hand it
// ends.
func WithStops(passages []Passage, lengths []Length) []Passage {
	by := map[stitch.Part]Length{}
	for _, l := range lengths {
		by[l.Part] = l
	}
	list := slices.Clone(passages)
	for i, p := range list {
		if l := by[p.Part]; p.StopAfter(l) >= 0 {
			list[i].Steps = slices.Insert(slices.Clone(p.Steps), p.StopAfter(l)+1, Step{Text: l.Stop(), Stop: true})
		}
	}
	return list
}
