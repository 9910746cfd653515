package division

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Each rung of a ladder is the best division with that value, by enumeration, and no rung
// costs less than the division itself.
func TestLadder(t *testing.T) {
	p := Problem{Stitches: 32, Wanted: [Fingers]int64{131_000, 133_000, 124_000, 108_000}}
	d := solved(t, p)
	for _, n := range []Number{{OfFinger, Middle}, {OfPalm, Index}, {OfBack, Little}, {OfBoth, Ring}, {OfBridge, RingLittle}} {
		rungs := Ladder(nil, &p, &d, n, 2)
		require.Len(t, rungs, 5)
		for at, r := range rungs {
			assert.Equal(t, d.Of(n)-2+at, r.Value, n.Key())
			q := p.With(n, r.Value)
			want, can := Division{}, false
			if r.Value > 0 {
				want, can = enumerate(&q)
			}
			assert.Equal(t, can, r.Can, "%s %d", n.Key(), r.Value)
			assert.Equal(t, want, r.Division, "%s %d", n.Key(), r.Value)
			if !r.Can {
				continue
			}
			assert.Equal(t, r.Value, r.Division.Of(n))
			assert.GreaterOrEqual(t, r.Division.Cost, d.Cost)
			var more int64
			for i := range Fingers {
				more += distance(&r.Division, &p, i) - distance(&d, &p, i)
			}
			assert.Equal(t, more, r.More)
		}
		assert.Equal(t, d, rungs[2].Division)
		assert.Zero(t, rungs[2].More)
	}
	assert.False(t, Ladder(nil, &p, &d, Number{OfBridge, IndexMiddle}, 5)[0].Can, "no bridge at all")
}

// distance returns how far a finger is from its wish, in 1/10 000 stitch.
func distance(d *Division, p *Problem, i int) int64 {
	off := int64(d.Stitches[i])*10_000 - p.Wanted[i]
	return max(off, -off)
}

// A ladder keeps what is fixed: with the bridges fixed only the hand's stitches give
// way, and a pin of the number itself gives way to each rung.
func TestLadderKeepsPins(t *testing.T) {
	p := anAdult.With(Number{OfBridge, 0}, 4).With(Number{OfBridge, 1}, 4).With(Number{OfBridge, 2}, 4).With(Number{OfFinger, Index}, 26)
	d := solved(t, p)
	for _, r := range Ladder(nil, &p, &d, Number{OfFinger, Index}, 2) {
		require.True(t, r.Can)
		assert.Equal(t, [Bridges]int{4, 4, 4}, r.Division.Bridge)
		assert.Equal(t, r.Value, r.Division.Stitches[Index])
	}
}
