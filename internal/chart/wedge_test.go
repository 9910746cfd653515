package chart

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// places is where each column of a row stands, counted from the left.
func places(r Row) map[string]int {
	at := map[string]int{}
	for _, c := range r.Shown() {
		at[c.Column] = c.X
	}
	return at
}

// wedges are gussets of every build: base, and rounds as worked.
var wedges = map[string]struct {
	base   int
	rounds []string
}{
	"base of one":  {1, []string{"m1l k m1r | k k k k k k", "k k k | k k k k k k", "k m1l k m1r k | k k k k k k"}},
	"base of two":  {2, []string{"k k | k k k k k k", "m1l k k m1r | k k k k k k", "k m1l k k m1r k | k k k k k k"}},
	"base of four": {4, []string{"k m1l k k m1r k | k k k k k k", "k k k k k k | k k k k k k"}},
	"one-sided": {3, []string{
		"k k k | k k k k k k", "k m1l k k | k k k k k k", "k k k k | k k k k k k",
		"k m1l k k k | k k k k k k", "k m1l k k k k | k k k k k k",
	}},
}

// The base keeps its place from the first round to the last (but for its
// outer stitches, which the made ones push out), so that the gusset grows
// outward from it; the hand beside an edge without increases keeps its own.
func TestTheWedgeStandsOnItsBase(t *testing.T) {
	for name, c := range wedges {
		t.Run(name, func(t *testing.T) {
			g := wedge(typed(t, c.rounds...), c.base, 99, nil, false)
			first := places(g.Rows[0])
			middle := "B" + string(rune('0'+(c.base+1)/2))
			for _, row := range g.Rows {
				at := places(row)
				assert.Equal(t, first[middle], at[middle], "round %d", row.Round)
				if name == "one-sided" {
					assert.Equal(t, first["H1"], at["H1"], "round %d", row.Round)
				}
				for _, cell := range row.Shown() {
					assert.True(t, 0 <= cell.X && cell.X < g.Width, "round %d, %s at %d", row.Round, cell.Column, cell.X)
				}
			}
		})
	}
}

// The left hand's chart is the right hand's, seen in a mirror, neighbours and
// all.
func TestTheLeftHandIsTheMirrorImage(t *testing.T) {
	for name, c := range wedges {
		t.Run(name, func(t *testing.T) {
			s := typed(t, c.rounds...)
			right, left := wedge(s, c.base, 99, nil, false), wedge(s, c.base, 99, nil, true)
			require.Equal(t, right.Width, left.Width)
			for i := range right.Rows {
				want := places(right.Rows[i])
				for column, x := range want {
					want[column] = right.Width - 1 - x
				}
				assert.Equal(t, want, places(left.Rows[i]), "round %d", i+1)
			}
		})
	}
}
