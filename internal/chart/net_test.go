package chart

import (
	"maps"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What strokes come to altogether is what turns the marks before them into the
// marks after them, however often a cell was painted.
func TestNetIsTheDifferenceOfTheMarks(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(3, 8))
	for range 300 {
		marks := Marks{}
		scribble := func() []Edit {
			var edits []Edit
			for range 1 + r.IntN(6) {
				edits = append(edits, Edit{"hand", 1 + r.IntN(2), []string{"", "H1", "H2"}[r.IntN(3)], layers[r.IntN(3)], []string{"", "p", "b"}[r.IntN(3)]})
			}
			return append(edits, Edit{Layer: Sheet, Column: "unit", Value: "mm"})
		}
		marks.Apply(scribble())
		before, net := maps.Clone(marks), Net{}
		for range r.IntN(5) {
			edits := scribble()
			net.Add(edits, marks.Apply(edits))
		}
		assert.ElementsMatch(t, before.Difference(marks), net.Edits())
	}
}
