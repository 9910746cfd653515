package hand_test

import (
	"encoding/csv"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/units"
)

// greiner reads the mean of each measurement of women and men.
func greiner(t *testing.T) map[string][2]float64 {
	t.Helper()
	f, err := os.Open("testdata/greiner-fingers.csv")
	require.NoError(t, err)
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	require.NoError(t, err)
	means := map[string][2]float64{}
	for _, row := range rows[1:] {
		means[row[0]] = [2]float64{number(t, row[1]), number(t, row[2])}
	}
	return means
}

var fingers = map[hand.Finger]string{hand.Index: "index", hand.Middle: "middle", hand.Ring: "ring", hand.Little: "little"}

// The fingers that are filled for a hand of Greiner's mean sizes are the mean fingers,
// girths within 1½ mm, tips and crotches within 4 mm.
func TestFilledFingersAreGreiners(t *testing.T) {
	means := greiner(t)
	for sex, who := range [2]string{"women", "men"} {
		mean := func(what string) float64 { return means[what][sex] }
		h := hand.Hand{Circumference: units.FromMM(mean("hand circumference")), Length: units.FromMM(mean("hand length"))}
		f, filled := h.FillFingers()
		require.Len(t, filled, 11)
		for i, name := range fingers {
			assert.InDelta(t, mean(name+" girth"), f.Girth[i].MM(), 1.5, "%s of %s", name, who)
			assert.InDelta(t, mean(name+" tip"), f.Tip(i).MM(), 4, "%s of %s", name, who)
		}
		for i, name := range [3]string{"index_middle", "middle_ring", "ring_little"} {
			assert.InDelta(t, mean(name+" crotch"), f.Crotch[i].MM(), 2, "%s of %s", name, who)
		}
	}
}

// By hand: a hand of 200 mm that is 180 mm long. The ring finger's tip is as much below
// the mean of its crotches at 0.56 and 0.49 as its length tells.
func TestFillFingers(t *testing.T) {
	h := hand.Hand{
		Circumference: 200 * mm, Length: 180 * mm,
		Fingers: hand.Fingers{Girth: [4]units.Length{0, 70 * mm}, Crotch: [3]units.Length{0, 0, 85 * mm}},
	}
	f, filled := h.FillFingers()
	assert.Equal(t, [4]units.Length{64_800, 70_000, 61_200, 54_200}, f.Girth)
	assert.Equal(t, [4]units.Length{69_300, 77_940, 75_240, 57_960}, f.Length)
	assert.Equal(t, [3]units.Length{100_800, 100_800, 85_000}, f.Crotch)
	assert.Equal(t, units.Length(170_100), f.Tip(hand.Index))
	assert.Equal(t, units.Length(178_740), f.Tip(hand.Middle))
	assert.Equal(t, units.Length(92_900+75_240), f.Tip(hand.Ring))
	assert.Equal(t, units.Length(142_960), f.Tip(hand.Little))
	assert.Equal(t, "0.306 × hand circumference", entry(t, filled, "hand.fingers.ring.girth").From)
	assert.Equal(t, "0.56 × hand length", entry(t, filled, "hand.crotches.index_middle").From)
	for _, e := range filled {
		assert.NotEqual(t, "hand.fingers.middle.girth", e.Field, "measured")
		assert.NotEqual(t, "hand.crotches.ring_little", e.Field, "measured")
		assert.Contains(t, e.Source, "Greiner 1991")
	}

	_, filled = hand.Hand{Length: 90 * mm}.FillFingers()
	for _, e := range filled {
		assert.True(t, strings.HasPrefix(e.Source, "not sourced under 2 years"), e.Field)
	}
}

func TestCheckFingers(t *testing.T) {
	h := hand.Hand{Size: 8} // 203 and 182 mm
	for field, f := range map[string]hand.Fingers{
		"hand.fingers.index.girth":   {Girth: [4]units.Length{203 * mm}},
		"hand.fingers.little.girth":  {Girth: [4]units.Length{0, 0, 0, -1}},
		"hand.fingers.middle.length": {Length: [4]units.Length{0, -1}},
		"hand.crotches.ring_little":  {Crotch: [3]units.Length{0, 0, 182 * mm}},
		"hand.crotches.middle_ring":  {Crotch: [3]units.Length{0, -1}},
	} {
		h.Fingers = f
		for _, faults := range []fault.Fields{h.CheckFingers(), h.Check(), h.CheckGiven()} {
			require.Len(t, faults, 1, field)
			assert.Equal(t, field, faults[0].Path)
		}
	}
	h.Fingers, _ = hand.Hand{Size: 8}.FillFingers()
	assert.Empty(t, h.Check())
	h.Fingers = hand.Fingers{Girth: [4]units.Length{203*mm - 1}, Crotch: [3]units.Length{182*mm - 1}}
	assert.Empty(t, h.Check())
	h = hand.Hand{Fingers: hand.Fingers{Girth: [4]units.Length{203 * mm}}}
	assert.Empty(t, h.CheckGiven(), "a hand without circumference is compared with nothing")
}

// A finger in another unit is asked about: 6.5 inches where 6.5 cm are meant. What may be
// meant is told.
func TestQueryFingers(t *testing.T) {
	h := hand.Hand{Size: 8}
	assert.Empty(t, h.QueryFingers(), "not measured")
	h.Fingers, _ = h.FillFingers()
	assert.Empty(t, h.QueryFingers())
	for field, f := range map[string]hand.Fingers{
		"hand.fingers.index.girth":  {Girth: [4]units.Length{165_100}},
		"hand.fingers.ring.length":  {Length: [4]units.Length{0, 0, 7 * mm}},
		"hand.crotches.middle_ring": {Crotch: [3]units.Length{0, 10 * mm}},
	} {
		h.Fingers = f
		queries := h.Queries()
		require.Len(t, queries, 1, field)
		assert.Equal(t, queries, h.QueryFingers())
		assert.Equal(t, field, queries[0].Field)
		assert.True(t, queries[0].Outside())
		assert.Contains(t, queries[0].Message, "It is used as it is.")
	}
	h.Fingers = hand.Fingers{Girth: [4]units.Length{165_100}}
	assert.Equal(t, 65*mm, h.Instead(h.Queries()[0], units.IN))
}
