package division

import (
	"encoding/csv"
	"encoding/json"
	"math"
	"math/rand/v2"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The ease of a glove's hand, and what a finger has beyond its girth, as in the engine
// (common practice, no source): 2 % and 1.6 stitches.
const (
	handEase       = -0.05
	fingerEase     = 0.02
	fingerAddition = 1.6
	girthsSpread   = 0.04 // standard deviation of a filled girth
	rightWithin    = 0.75
)

// byPercentages divides a hand that is so many stitches round by a rule of the trade
// (testdata/gloves.json, "percentages"): nine tenths of it are the palm, and of
// these and 24 each finger has its share.
func byPercentages(round float64) (n [Fingers]int) {
	for i, share := range [Fingers]float64{0.26, 0.27, 0.25, 0.22} {
		n[i] = int(math.Round(share * (math.Round(0.9*round) + 24)))
	}
	return n
}

// girthOverHand reads the usual girth of each finger as a share of the hand's.
func girthOverHand(t testing.TB) [Fingers]float64 {
	t.Helper()
	text, err := os.ReadFile("testdata/fingers.json")
	require.NoError(t, err)
	var data struct {
		GirthOverHand [Fingers]float64 `json:"girth_over_hand"`
	}
	require.NoError(t, json.Unmarshal(text, &data))
	return data.GirthOverHand
}

// wanted returns t for a finger of a girth in mm at g stitches per mm.
func wanted(girth, g float64) int64 {
	return int64(math.Round(PerStitch * (g*(1+fingerEase)*girth + fingerAddition)))
}

// surveyed returns the circumferences of the hands of ANSUR II in mm (Gordon et al.
// 2014, NATICK/TR-15/007; 6,068 adults).
func surveyed(t *testing.T) []float64 {
	t.Helper()
	f, err := os.Open("../../testdata/ansur2-hand.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	var list []float64
	for _, row := range rows[1:] {
		girth, err := strconv.ParseFloat(row[2], 64)
		require.NoError(t, err)
		list = append(list, girth)
	}
	require.Len(t, list, 6068)
	return list
}

// fitted counts hands by how far their worst finger is off.
type fitted struct{ right, half, fiveMM int }

func (f *fitted) note(worst, g float64) {
	if worst <= rightWithin {
		f.right++
	}
	if worst <= 0.5 {
		f.half++
	}
	if worst/g <= 5 {
		f.fiveMM++
	}
}

// Every hand of the survey, its fingers' girths filled with a spread: at each of four
// gauges all four fingers are within ¾ stitch for at least nine hands of ten. A rule
// of the trade, fixed shares of the palm, is held beside it.
func TestTheSurveyFits(t *testing.T) {
	hands, ratio := surveyed(t), girthOverHand(t)
	for _, over10cm := range []float64{22, 28, 32, 36} {
		g := over10cm / 100
		rng := rand.New(rand.NewPCG(2014, uint64(over10cm)))
		var ours, theirs fitted
		for _, girth := range hands {
			p := Problem{Stitches: 2 * int(math.Floor(g*girth*(1+handEase)/2+0.5))}
			for i := range ratio {
				p.Wanted[i] = wanted(ratio[i]*girth*(1+girthsSpread*rng.NormFloat64()), g)
			}
			d, err := Solve(&p)
			require.NoError(t, err)
			ours.note(worst(d.Stitches, &p), g)
			theirs.note(worst(byPercentages(g*girth), &p), g)
		}
		share := func(n int) float64 { return 100 * float64(n) / float64(len(hands)) }
		t.Logf("%.0f stitches over 10 cm: all fingers within ¾ stitch %.1f %% (by percentages %.1f), ½ stitch %.1f (%.1f), 5 mm %.1f (%.1f)", over10cm,
			share(ours.right), share(theirs.right), share(ours.half), share(theirs.half), share(ours.fiveMM), share(theirs.fiveMM))
		assert.GreaterOrEqual(t, share(ours.right), 90.0, "%.0f stitches over 10 cm", over10cm)
		assert.Greater(t, ours.half, theirs.half)
		assert.Greater(t, ours.fiveMM, theirs.fiveMM)
	}
}

// worst returns how far the worst finger is off, in stitches.
func worst(n [Fingers]int, p *Problem) (off float64) {
	for i := range n {
		off = max(off, math.Abs(float64(n[i])-float64(p.Wanted[i])/PerStitch))
	}
	return off
}
