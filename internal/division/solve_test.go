package division

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Worked by hand. Fingers of 70 stitches want 11 of a hand of 48 to be cast on: 3, 4
// and 4, since one bridge that differs costs least at an end, and the smaller comes
// first. Where all want half a stitch, bridges alike cost least; with these fixed so that
// two fingers have to give way, the first keep theirs.
func TestChoiceByHand(t *testing.T) {
	p := Problem{Stitches: 48, Wanted: [Fingers]int64{180_000, 180_000, 180_000, 160_000}}
	d := solved(t, p)
	assert.Equal(t, [Fingers]int{18, 18, 18, 16}, d.Stitches)
	assert.Equal(t, [Bridges]int{3, 4, 4}, d.Bridge)
	assert.Equal(t, Cost(costOfUnequal), d.Cost)
	assert.InDelta(t, 0.25, d.Cost.Float(), 0)

	p = Problem{Stitches: 48, Wanted: [Fingers]int64{175_000, 175_000, 175_000, 175_000}} // all want half a stitch
	d = solved(t, p)
	assert.Equal(t, [Fingers]int{18, 18, 18, 18}, d.Stitches)
	assert.Equal(t, [Bridges]int{4, 4, 4}, d.Bridge)
	p.Pins.Bridge = [Bridges]int{3, 4, 4}
	d = solved(t, p)
	assert.Equal(t, [Fingers]int{18, 18, 17, 17}, d.Stitches)
	assert.Equal(t, [Fingers]int64{5_000, 5_000, -5_000, -5_000}, d.Off(&p))
}

// Sides take turns from the index finger on: back, palm, back, palm. With one side
// fixed as few as possible leave their turn, the last first.
func TestSidesTakeTurns(t *testing.T) {
	for _, c := range []struct {
		name       string
		both       [Fingers]int
		pins       Pins
		palm, back [Fingers]int
	}{
		{"1918", [Fingers]int{12, 13, 12, 11}, Pins{}, [Fingers]int{6, 6, 6, 6}, [Fingers]int{6, 7, 6, 5}},
		{"all odd", [Fingers]int{13, 13, 11, 11}, Pins{}, [Fingers]int{6, 7, 5, 6}, [Fingers]int{7, 6, 6, 5}},
		{"an odd hand", [Fingers]int{13, 12, 12, 12}, Pins{}, [Fingers]int{6, 6, 6, 6}, [Fingers]int{7, 6, 6, 6}},
		{"the back fixed", [Fingers]int{13, 13, 11, 11}, Pins{Back: [Fingers]int{6}}, [Fingers]int{7, 7, 5, 5}, [Fingers]int{6, 6, 6, 6}},
		{"the palm fixed", [Fingers]int{12, 13, 12, 11}, Pins{Palm: [Fingers]int{0, 0, 0, 5}}, [Fingers]int{6, 7, 6, 5}, [Fingers]int{6, 6, 6, 6}},
	} {
		p := Problem{Pins: c.pins}
		for _, h := range c.both {
			p.Stitches += h
		}
		palm, back, ok := p.sides(c.both)
		require.True(t, ok, c.name)
		assert.Equal(t, c.palm, palm, c.name)
		assert.Equal(t, c.back, back, c.name)
	}
}

// What is refused says what works.
func TestImpossible(t *testing.T) {
	for _, c := range []struct {
		name string
		p    Problem
		says string
	}{
		{
			"palm and back two apart", fixed(anAdult, Pins{Palm: [Fingers]int{8}, Back: [Fingers]int{10}}),
			"index.palm: 8 can't be beside index.back; 9 works\nindex.back: 10 can't be beside index.palm; 9 works",
		},
		{
			"a finger too narrow", fixed(anAdult, Pins{Stitches: [Fingers]int{0, 0, 0, 5}}),
			"little.stitches: 5 can't be; 6 works",
		},
		{
			"a finger narrower than its bridges", fixed(anAdult, Pins{Stitches: [Fingers]int{0, 14}, Bridge: [Bridges]int{6, 7}}),
			"middle.stitches: 14 can't be beside index_middle, middle_ring; 15 works\n" +
				"index_middle: 6 can't be beside middle.stitches, middle_ring; 5 works\n" +
				"middle_ring: 7 can't be beside middle.stitches, index_middle; 6 works",
		},
		{
			"two contradictions", fixed(anAdult, Pins{Palm: [Fingers]int{8, 0, 0, 9}, Back: [Fingers]int{10, 0, 0, 6}}),
			"index.back: 10 can't be beside index.palm; 9 works with the other changes\n" +
				"little.back: 6 can't be beside little.palm; 8 works with the other changes",
		},
		{
			"more than the hand has", fixed(anAdult, Pins{Both: [Fingers]int{20, 20, 20, 20}}),
			"index.palm_and_back: 20 can't be beside middle.palm_and_back, ring.palm_and_back, little.palm_and_back; 6 works\n" +
				"middle.palm_and_back: 20 can't be beside index.palm_and_back, ring.palm_and_back, little.palm_and_back; 6 works\n" +
				"ring.palm_and_back: 20 can't be beside index.palm_and_back, middle.palm_and_back, little.palm_and_back; 6 works\n" +
				"little.palm_and_back: 20 can't be beside index.palm_and_back, middle.palm_and_back, ring.palm_and_back; 6 works",
		},
		{"a hand too small", Problem{Stitches: 7}, "hand_stitches: 7 can't be; 8 works"},
		{"a hand too large", Problem{Stitches: MaxStitches + 1}, "hand_stitches: 10001 can't be; 10000 works"},
		{"a wish too large", Problem{Stitches: 8, Wanted: [Fingers]int64{0, 0, MaxStitches*PerStitch + 1}}, "ring.wanted: 10001 can't be; 10000 works"},
		{"a wish too small", Problem{Stitches: 8, Wanted: [Fingers]int64{0, -MaxStitches*PerStitch - 1}}, "middle.wanted: -10001 can't be; -10000 works"},
		{"below nothing", fixed(anAdult, Pins{Bridge: [Bridges]int{0, -2, 0}}), "middle_ring: -2 can't be; 1 works"},
		{
			"beyond counting", fixed(anAdult, Pins{Palm: [Fingers]int{1 << 60}, Bridge: [Bridges]int{4, 4, 4}}),
			"index.palm: 1152921504606846976 can't be; 30 works",
		},
	} {
		_, err := Solve(&c.p)
		require.Error(t, err, c.name)
		assert.Equal(t, c.says, err.Error(), c.name)
	}
}

// A division takes no memory that is given back later.
func TestSolvesWithoutAllocating(t *testing.T) {
	for _, p := range []Problem{anAdult, anAdult.With(Number{OfFinger, Middle}, 24), bySide()} {
		assert.Zero(t, testing.AllocsPerRun(10, func() {
			if _, ok := p.solve(); !ok {
				t.Error("no division")
			}
		}))
	}
}
