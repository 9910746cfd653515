package chart

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/stitch"
)

// The rounds of two parts are one spiral: a strand from the last round of the one into the
// first of the other is caught in both, and what is knitted on between them lies behind it.
// A part that begins with yarn of its own has none (common practice, no source).
func TestStrandsAcrossASeam(t *testing.T) {
	in := func(part stitch.Part, shift int, from ...stitch.Set) stitch.Section {
		s := stitch.Section{Part: part, Shift: shift, From: from, Rounds: []stitch.Round{{Ops: make([]stitch.Op, 8)}}}
		for i := range s.Rounds[0].Ops {
			s.Rounds[0].Ops[i] = stitch.Knit
		}
		return s
	}
	for name, c := range map[string]struct {
		next stitch.Section
		want map[stitch.Part]map[int][]Catch
	}{
		"goes on":    {in(stitch.Top, 0), map[stitch.Part]map[int][]Catch{stitch.Hand: {1: {{"b", 8}}}, stitch.Top: {1: {{"b", 8}}}}},
		"knitted on": {in(stitch.Top, 1), map[stitch.Part]map[int][]Catch{stitch.Hand: {1: {{"b", 9}}}, stitch.Top: {1: {{"b", 9}}}}},
		"joined":     {in(stitch.Top, 0, stitch.ThumbSet), map[stitch.Part]map[int][]Catch{}},
	} {
		hand := in(stitch.Hand, 0)
		marks := Marks{}
		s := Source{Mitt: stitch.Mitt{Sections: []stitch.Section{hand, c.next}}, Rules: Rules{Float: 5}}.Prepare()
		paintAt := func(part stitch.Part, place int) {
			marks.Apply([]Edit{{part, 1, s.names[part][0][place], Colours, "b"}})
		}
		for i := range 4 {
			paintAt(stitch.Hand, i)
			paintAt(stitch.Top, 4+i)
		}
		s.Marks = marks
		assert.Equal(t, c.want, s.Catches(), name)
	}
}
