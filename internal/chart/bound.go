package chart

import (
	"fmt"
	"regexp"
	"slices"

	"thenar/internal/repeat"
	"thenar/internal/stitch"
)

// A stitch that is painted over a motif stays where it is on the mitt when the motif comes to
// lie elsewhere. Its mark has on which stitch of the motif it was painted, so that this can
// be told, and the stitch taken along.

// onMotif matches the value of such a mark, as in "r8x6.3.5": the hand that was shown, the
// motif's width and height, and the stitch from the right and the round, both from 0.
var onMotif = regexp.MustCompile(`^[rl][1-9][0-9]{0,2}x[1-9][0-9]{0,2}\.[0-9]{1,3}\.[0-9]{1,3}$`)

// Drift is a painted stitch under which its motif came to lie otherwise.
type Drift struct {
	At    Anchor
	To    Anchor // the nearest place in its part where its stitch of the motif lies; none without a column
	Which int    // the motif, by its place in the list
}

// Drifted returns the painted stitches of this hand that no longer lie on the stitch of the
// motif on which they were painted, in the order of the marks. Knitted rounds are settled.
func (s Source) Drifted() []Drift {
	if s.laid == nil {
		return nil
	}
	var list []Drift
	values := map[string][]int{} // the motifs of a size
	for _, e := range s.Marks.Edits() {
		if e.Layer != Motifs || !s.has(e.Anchor()) || !s.drifts(e) {
			continue
		}
		of, ok := values[e.Value]
		if !ok {
			of = s.sized(e.Value)
			values[e.Value] = of
		}
		if len(of) > 0 {
			list = append(list, Drift{At: e.Anchor(), To: s.nearest(e), Which: of[len(of)-1]})
		}
	}
	return list
}

// drifts reports whether a mark is one of this hand that is not knitted yet, and no motif has
// on it the stitch that it names.
func (s *Source) drifts(e Edit) bool {
	mark := s.Marks[e.Anchor()]
	if e.Value[:1] != s.hand() || mark.Stitch == "" && mark.Colour == "" {
		return false
	}
	on := s.motifsOn(e.Section, e.Round)
	j := slices.Index(s.names[e.Section][e.Round-1], e.Column)
	return s.keptRound(e.Section, e.Round-1, len(s.names[e.Section][e.Round-1])) == nil && !slices.Contains(on[j], e.Value)
}

// hand is the letter of the hand that is shown.
func (s *Source) hand() string {
	if s.Mirrored {
		return "l"
	}
	return "r"
}

// motifsOn returns of each column of a round, from 1, the stitches of motifs that lie on it, as
// marks have them.
func (s *Source) motifsOn(part stitch.Part, round int) map[int][]string {
	on := map[int][]string{}
	s.laid.Lies(part, round-1, s.names[part][round-1], func(j int, c repeat.Cell) {
		m := s.Repeats[c.Which].Motif
		on[j] = append(on[j], fmt.Sprintf("%s%dx%d.%d.%d", s.hand(), m.Wide, m.High, c.Right, c.Up))
	})
	return on
}

// sized returns the motifs that lie somewhere and have the size that a mark names.
func (s *Source) sized(value string) (list []int) {
	for i, r := range s.Repeats {
		var hand string
		var wide, high, right, up int
		if _, err := fmt.Sscanf(value, "%1s%dx%d.%d.%d", &hand, &wide, &high, &right, &up); err != nil {
			return nil
		}
		if s.laid.Came[i].Nowhere == "" && r.Motif.Wide == wide && r.Motif.High == high {
			list = append(list, i)
		}
	}
	return list
}

// nearest returns the nearest place in the part of a mark where the stitch lies that it names,
// rounds and stitches counted alike.
func (s *Source) nearest(e Edit) (to Anchor) {
	rounds := s.names[e.Section]
	from := slices.Index(rounds[e.Round-1], e.Column)
	best := -1
	for i, names := range rounds {
		far := max(i+1-e.Round, e.Round-i-1)
		if best >= 0 && far >= best || s.keptRound(e.Section, i, len(names)) != nil {
			continue
		}
		on := s.motifsOn(e.Section, i+1)
		for j, name := range names {
			if away := far + max(j-from, from-j); slices.Contains(on[j], e.Value) && (best < 0 || away < best) {
				best, to = away, Anchor{e.Section, i + 1, name}
			}
		}
	}
	return to
}
