package mitt

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/units"
)

// The spread of a finger's girth and length beside what fills them, as a standard
// deviation (assumed: no source gives one that can be trusted).
const (
	girthSpread  = 0.04
	lengthSpread = 0.03
)

// spreadFingers measures the fingers of a hand: what would fill them, with a spread.
func spreadFingers(rng *rand.Rand, h *hand.Hand) {
	f, _ := h.FillFingers()
	for i := range f.Girth {
		f.Girth[i] = units.FromMM(f.Girth[i].MM() * (1 + girthSpread*rng.NormFloat64()))
		f.Length[i] = units.FromMM(f.Length[i].MM() * (1 + lengthSpread*rng.NormFloat64()))
	}
	h.Fingers = f
}

// byPercentages is a rule of the trade (a designer's public notes): nine tenths of the
// stitches round the hand are the palm, and of these and 24 each finger has its share.
func byPercentages(round float64) (n [4]int) {
	for i, share := range [4]float64{0.26, 0.27, 0.25, 0.22} {
		n[i] = int(math.Round(share * (math.Round(0.9*round) + 24)))
	}
	return n
}

// gloveFit counts hands by how far their worst digit is off.
type gloveFit struct{ fingersRight, digitsHalf, digitsFive int }

func (f *gloveFit) note(fingers, thumb, g float64) {
	worst := max(fingers, thumb)
	if fingers <= 0.75 {
		f.fingersRight++
	}
	if worst <= 0.5 {
		f.digitsHalf++
	}
	if worst/g <= 5 {
		f.digitsFive++
	}
}

// A glove for every hand of ANSUR II (Gordon et al. 2014, 6,068 adults), at four gauges:
// each finger is within ¾ stitch of its wish for at least nine hands of ten, and its tube
// within half a round of its length. A rule of the trade is held beside it.
func TestTheSurveyInGloves(t *testing.T) {
	t.Parallel()
	hands, pl := testenv.Some(500, ansur(t)), New()
	for _, g := range gauges[1:] {
		rng := rand.New(rand.NewPCG(2014, uint64(g.Stitches*100)))
		var ours, theirs gloveFit
		for i, h := range hands {
			spreadFingers(rng, &h)
			p, err := pl.Plan(request(Glove, g, h))
			require.NoError(t, err, "hand %d", i)
			if i%50 == 0 {
				require.Empty(t, stitch.Ledger(p.Mitt()), "hand %d", i)
			}
			rule := byPercentages(g.Stitches * h.Circumference.MM())
			thumb := math.Abs(float64(p.Thumb.Stitches.N) - p.Thumb.Stitches.Exact)
			var worst, byRule float64
			for k := range p.Fingers.Each {
				f := &p.Fingers.Each[k]
				worst = max(worst, math.Abs(float64(f.Stitches.N)-f.Stitches.Exact))
				byRule = max(byRule, math.Abs(float64(rule[k])-f.Stitches.Exact))
				_, place := PlacesOfFinger(hand.Finger(k))
				require.LessOrEqual(t, math.Abs(p.Off[place]), 0.5/g.Rounds+1e-9, "hand %d, finger %d", i, k)
			}
			ours.note(worst, thumb, g.Stitches)
			theirs.note(byRule, thumb, g.Stitches)
		}
		share := func(n int) float64 { return 100 * float64(n) / float64(len(hands)) }
		t.Logf("%.0f stitches over 10 cm: four fingers within ¾ stitch %.1f %% (by percentages %.1f); all five digits within ½ stitch %.1f (%.1f), within 5 mm %.1f (%.1f)",
			g.Stitches*100, share(ours.fingersRight), share(theirs.fingersRight), share(ours.digitsHalf), share(theirs.digitsHalf), share(ours.digitsFive), share(theirs.digitsFive))
		assert.GreaterOrEqual(t, share(ours.fingersRight), 90.0)
		assert.Greater(t, share(ours.digitsFive), share(theirs.digitsFive))
	}
}

// The plain glove of the Handbook of Wool Knitting and Crochet (Needlecraft Publishing
// Company 1918, Project Gutenberg 26113): with its numbers fixed every finger comes out as
// printed, stitch by stitch and round by round. Hand and gauge are assumed: 190 mm at the
// ease of a glove.
func TestThe1918Glove(t *testing.T) {
	palm, back := [4]int{6, 6, 6, 6}, [4]int{6, 7, 6, 5}
	first, after := [4]int{15, 19, 18, 14}, [4]int{15, 16, 15, 14}
	rounds := [4]int{30, 34, 31, 26}
	g := 48 / (190 * 0.95) * 100
	r := request(Glove, per10(g, g*1.36), hand.Hand{Circumference: 190 * mm, Length: 180 * mm})
	r.Pins.HandStitches = Fix(48)
	for i := range rounds {
		r.Pins.Fingers[i] = FingerPins{Palm: Fix(palm[i]), Back: Fix(back[i]), Decreases: Fix(first[i] - after[i]), Rounds: Fix(rounds[i])}
	}
	r.Pins.FingerBridges = [3]Pin{Fix(3), Fix(3), Fix(3)}
	p := must(t, r)
	require.Equal(t, 48, p.Bridge.HandAfter)
	m := p.Mitt()
	for i, part := range fingerParts {
		s := m.Section(part)
		assert.Len(t, s.Rounds, rounds[i], "%s", part)
		assert.Equal(t, first[i], s.Rounds[0].Out(), "%s", part)
		if d := first[i] - after[i]; d > 0 {
			assert.Equal(t, first[i]-2, s.Rounds[1].Out(), "decreased from round 2")
			assert.Equal(t, after[i], s.Rounds[3].Out(), "%s", part)
		}
		assert.Equal(t, palm[i], s.About.Digit.Palm)
	}
	// The order of its stitches: what is picked up, the back, the bridge that is cast on,
	// the palm.
	ring := m.Section(stitch.Ring).Rounds[0]
	assert.Equal(t, 3+6+25+3+6, len(ring.Ops))
	assert.Equal(t, 25, ring.Held(), "6 + 6 of the index, 6 + 7 of the middle finger")
	assert.Equal(t, 18, ring.Out())
}

func BenchmarkPlanGlove(b *testing.B) {
	hands := ansur(b)
	pl := New()
	requests := make([]*Request, 0, len(gauges)*100)
	for _, g := range gauges {
		for i := range 100 {
			requests = append(requests, request(Glove, g, hands[i*60]))
		}
	}
	b.ReportAllocs()
	i := 0
	for b.Loop() {
		if _, err := pl.Plan(requests[i%len(requests)]); err != nil {
			b.Fatal(err)
		}
		i++
	}
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "plans/s")
}
