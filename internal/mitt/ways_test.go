package mitt

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/units"
)

// followed tries every list of increase rounds, two or more apart, none in
// the last round, and gives the least Σ (S(r) − T(r))² + λ · changes of rhythm
// with the first list that has it. T is worked out from the definition: on a
// straight line between two girths, no curve is involved.
func followed(p *Plan, low, high hand.Point, lambda float64) (float64, []int) {
	g := &p.Gusset
	target := make([]float64, g.Rounds.N+1)
	for r := 1; r <= g.Rounds.N; r++ {
		h := float64(r) / p.Gauge.Rounds
		share := min(max((h-low.Height.MM())/(high.Height-low.Height).MM(), 0), 1)
		girth := low.Girth.MM() + share*(high.Girth-low.Girth).MM()
		ease := p.Ease.Hand + min(h/p.Hand.GussetLength.MM(), 1)*(max(p.Ease.Hand, 0)-p.Ease.Hand)
		t := float64(g.Base) + p.Gauge.Stitches*(1+ease)*girth - float64(p.Body.Stitches.N)
		target[r] = math.Round(10_000*min(max(t, float64(g.Base)), float64(g.Stitches))) / 10_000
	}
	best, list := math.Inf(1), []int(nil)
	var try func(rounds []int)
	try = func(rounds []int) {
		if len(rounds) == g.Increases {
			cost := 0.0
			for i := 2; i < len(rounds); i++ {
				if rounds[i]-rounds[i-1] != rounds[i-1]-rounds[i-2] {
					cost += lambda
				}
			}
			count, done := g.Base, 0
			for r := 1; r <= g.Rounds.N; r++ {
				if done < len(rounds) && rounds[done] == r {
					count += g.Step
					done++
				}
				cost += math.Pow(float64(count)-target[r], 2)
			}
			if cost < best-1e-9 {
				best, list = cost, slices.Clone(rounds)
			}
			return
		}
		from := 1
		if n := len(rounds); n > 0 {
			from = rounds[n-1] + 2
		}
		for r := from; r <= g.Rounds.N-1; r++ {
			try(append(rounds, r))
		}
	}
	try(nil)
	return best, list
}

// A gusset that follows the hand is the best of all lists there are, on small
// hands and coarse gauges at five prices of a changed rhythm.
func TestFollowsTheHandAsWellAsItGoes(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 14))
	pl := New()
	compared := 0
	for compared < 1200 {
		h := 120 + 80*rng.Float64()
		low := hand.Point{Height: 0, Girth: units.FromMM(h * (0.86 + 0.14*rng.Float64()))}
		high := hand.Point{Height: units.FromMM(30 + 30*rng.Float64()), Girth: units.FromMM(h * (1.05 + 0.2*rng.Float64()))}
		r := request([]Kind{Fingerless, Mitten}[rng.IntN(2)], per10(14+8*rng.Float64(), 18+12*rng.Float64()), hand.Hand{
			Circumference: units.FromMM(h), Profile: []hand.Point{low, high},
		})
		lambda := []float64{0, 2, 8, 32, 128}[rng.IntN(5)]
		r.Lambda = &lambda
		p, err := pl.Plan(r)
		require.NoError(t, err)
		if p.Gusset.Rounds.N > 22 {
			continue
		}
		cost, rounds := followed(p, low, high, lambda)
		require.Equal(t, FollowProfile, p.Gusset.Way.Follows)
		require.InDelta(t, cost, p.Gusset.Way.Cost, 1e-6, "λ %v, %v by trying all, %v planned", lambda, rounds, p.Gusset.Way.Rounds)
		require.Equal(t, rounds, p.Gusset.Way.Rounds)
		compared++
	}
}

// shaped is a hand of the survey with girths measured at some heights of its
// mound, drawn at random: up to 8 % bulge over the straight line, and the
// palm with the thumb of common practice, 0.55 of the thumb, give or take
// 5 % of the whole.
func shaped(rng *rand.Rand, h hand.Hand) hand.Hand {
	full, _ := h.Fill()
	low := full.Circumference.MM() * (0.90 + 0.10*rng.Float64())
	high := full.Palm.MM() * (0.95 + 0.10*rng.Float64())
	bulge, n := 0.08*rng.Float64(), 3+rng.IntN(4)
	for i := range n {
		x := float64(i) / float64(n-1)
		girth := low + x*(high-low) + bulge*high*math.Sin(math.Pi*x)*(1-x)
		h.Profile = append(h.Profile, hand.Point{Height: units.FromMM(x * full.GussetLength.MM()), Girth: units.FromMM(girth)})
	}
	return h
}

// What following the hand saves against a plain rhythm on 1,000 hands of the
// survey (ANSUR II, Gordon et al. 2014) with mounds of our own drawing, in mm
// of girth. It is never further off in squares: that is what it minimises, and
// the plain rhythm is one of the lists it may choose.
func TestSavingOverARhythm(t *testing.T) {
	rng := rand.New(rand.NewPCG(1000, 8))
	hands := ansur(t)
	pl := New()
	for _, lambda := range []float64{0, DefaultLambda} {
		var mean, worst []float64
		for range 1000 {
			r := request(Fingerless, per10(18+18*rng.Float64(), 24+26*rng.Float64()), shaped(rng, hands[rng.IntN(len(hands))]))
			r.Lambda = &lambda
			p, err := pl.Plan(r)
			require.NoError(t, err)
			require.Len(t, p.Gusset.Ways, 2)
			shape, rhythm := p.Gusset.Ways[0], p.Gusset.Ways[1]
			require.Equal(t, FollowProfile, shape.Follows)
			price := func(w Way) float64 { return squares(p, w) + lambda*float64(w.Changes) }
			require.LessOrEqual(t, price(shape), price(rhythm)+1e-6)
			mean, worst = append(mean, rhythm.Mean-shape.Mean), append(worst, rhythm.Worst-shape.Worst)
		}
		slices.Sort(mean)
		slices.Sort(worst)
		t.Logf("λ %v: mean off saved: median %.2f mm, least %.2f, most %.2f; worst round: median %.2f mm, least %.2f, most %.2f",
			lambda, mean[500], mean[0], mean[999], worst[500], worst[0], worst[999])
		assert.Positive(t, mean[500], "the half of all hands gains")
	}
}

// squares is Σ (S(r) − T(r))² of a way against the hand's own shape.
func squares(p *Plan, way Way) (sum float64) {
	w := work{plan: *p, q: p.Gauge.Rounds, g: p.Gauge.Stitches}
	target, err := w.profileTarget(nil)
	if err != nil {
		panic(err)
	}
	count, done := p.Gusset.Base, 0
	for r, t := range target {
		if done < len(way.Rounds) && way.Rounds[done] == r+1 {
			count += p.Gusset.Step
			done++
		}
		sum += math.Pow(float64(count)-float64(t)/10_000, 2)
	}
	return sum
}
