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

// wanted is T(1) … T(R) of a gusset in 1/10 000 stitch, worked out from the
// definition: T(r) = b + g(1 + e)·C(r/q) − N within b … b + sK. Two girths
// have a straight line between them, which is drawn here; the curve through
// more of them has its own tests in internal/hand.
func wanted(t *testing.T, p *Plan) []int64 {
	t.Helper()
	g := &p.Gusset
	curve, err := p.Hand.Girths()
	require.NoError(t, err)
	girth := curve.At
	if points := p.Hand.Profile; len(points) == 2 {
		low, high := points[0], points[1]
		girth = func(h float64) float64 {
			share := min(max((h-low.Height.MM())/(high.Height-low.Height).MM(), 0), 1)
			return low.Girth.MM() + share*(high.Girth-low.Girth).MM()
		}
	}
	target := make([]int64, g.Rounds.N)
	for i := range target {
		h := float64(i+1) / p.Gauge.Rounds
		ease := p.Ease.Hand + min(h/p.Hand.GussetLength.MM(), 1)*(max(p.Ease.Hand, 0)-p.Ease.Hand)
		count := float64(g.Base) + p.Gauge.Stitches*(1+ease)*girth(h) - float64(p.Body.Stitches.N)
		target[i] = int64(math.Round(10_000 * min(max(count, float64(g.Base)), float64(g.Stitches))))
	}
	return target
}

// offs are S(r) − T(r) of a list of increase rounds, in 1/10 000 stitch.
func offs(p *Plan, target []int64, rounds []int) []int64 {
	out := make([]int64, len(target))
	for i, t := range target {
		worked, here := slices.BinarySearch(rounds, i+1)
		if here {
			worked++
		}
		out[i] = int64(p.Gusset.Base+worked*p.Gusset.Step)*10_000 - t
	}
	return out
}

// squares is Σ (S(r) − T(r))² in 10⁻⁸ stitch².
func squares(offs []int64) (sum int64) {
	for _, off := range offs {
		sum += off * off
	}
	return sum
}

// changes counts the intervals that differ from the one before.
func changes(rounds []int) (n int64) {
	for i := 2; i < len(rounds); i++ {
		if rounds[i]-rounds[i-1] != rounds[i-1]-rounds[i-2] {
			n++
		}
	}
	return n
}

// listed is a list of rounds with its cost in 10⁻⁸ stitch².
type listed struct {
	cost   int64
	rounds []int
}

// prices are those of a changed rhythm, in stitches², that are compared.
var prices = []float64{0, 2, 8, 32, 128}

// followed tries every list of increase rounds, two or more apart, none in
// the last round, and gives for each price the first that has the least
// Σ (S(r) − T(r))² + λ · changes of rhythm, in whole numbers.
func followed(p *Plan, target []int64) []listed {
	g := &p.Gusset
	best := make([]listed, len(prices))
	var try func(rounds []int)
	try = func(rounds []int) {
		if len(rounds) == g.Increases {
			off, changed := squares(offs(p, target, rounds)), changes(rounds)
			for i, price := range prices {
				if cost := off + int64(price)*1e8*changed; best[i].rounds == nil || cost < best[i].cost {
					best[i] = listed{cost, slices.Clone(rounds)}
				}
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
	return best
}

// small draws a hand on a coarse gauge, so that every list can be tried: two
// to six girths that climb, the first not always at the base, the gusset not
// always as long as they go; increases at one edge or at both.
func small(rng *rand.Rand) *Request {
	h := 120 + 80*rng.Float64()
	n := 2 + rng.IntN(5)
	height, girth := 8*rng.Float64()*float64(rng.IntN(2)), h*(0.86+0.14*rng.Float64())
	points := make([]hand.Point, 0, n)
	for range n {
		points = append(points, hand.Point{Height: units.FromMM(height), Girth: units.FromMM(girth)})
		height += (25 + 35*rng.Float64()) / float64(n-1)
		girth += h * 0.4 * rng.Float64() / float64(n-1)
	}
	r := request([]Kind{Fingerless, Mitten}[rng.IntN(2)], per10(14+10*rng.Float64(), 18+16*rng.Float64()), hand.Hand{
		Circumference: units.FromMM(h), Profile: points,
	})
	if rng.IntN(3) == 0 {
		r.Hand.GussetLength = units.FromMM(30 + 30*rng.Float64())
	}
	r.Stitch.OneSided = rng.IntN(4) == 0
	return r
}

// A gusset that follows the hand costs exactly what the best of all lists
// costs, and is the first of the best, on 1,200 small hands at five prices of
// a changed rhythm. Only gussets of three increases or more count, since
// fewer have no rhythm to change.
func TestFollowsTheHandAsWellAsItGoes(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 14))
	pl := New()
	compared, matters := 0, 0
	for compared < 1200 {
		r := small(rng)
		p, err := pl.Plan(r)
		require.NoError(t, err)
		if p.Gusset.Rounds.N > 22 || p.Gusset.Increases < 3 {
			continue
		}
		best := followed(p, wanted(t, p))
		for i, price := range prices {
			r.Lambda = &price
			p, err := pl.Plan(r)
			require.NoError(t, err)
			way := p.Gusset.Way
			require.Equal(t, FollowProfile, way.Follows)
			require.Equal(t, best[i].rounds, way.Rounds, "λ %v", price)
			require.InDelta(t, float64(best[i].cost)/1e8, way.Cost, 1e-9, "λ %v, %v", price, way.Rounds)
		}
		if !slices.Equal(best[0].rounds, best[len(best)-1].rounds) {
			matters++
		}
		compared++
	}
	t.Logf("%d gussets at %d prices; the price changes %d of them", compared, len(prices), matters)
	assert.Greater(t, matters, compared/4, "the price of a changed rhythm is put to the test")
}
