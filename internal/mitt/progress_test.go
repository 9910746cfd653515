package mitt

import (
	"errors"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/shaping"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/units"
)

// stands is a place in a mitt: a part, and how many of its rounds are knitted.
type stands struct {
	part  stitch.Part
	round int
}

// standings are all places in the order knitted.
func standings(m stitch.Mitt) []stands {
	var all []stands
	for _, s := range m.Sections {
		for r := range s.Rounds {
			all = append(all, stands{s.Part, r + 1})
		}
	}
	return all
}

// requireRoundsKept holds the rounds up to a place to be the same in both.
func requireRoundsKept(t *testing.T, was, is stitch.Mitt, at stands, about any) {
	t.Helper()
	for _, s := range was.Sections {
		now := is.Section(s.Part)
		require.NotNil(t, now, "%s is gone: %+v", s.Part, about)
		require.Equal(t, s.CastOn, now.CastOn, "%+v", about)
		n := len(s.Rounds)
		if s.Part == at.part {
			n = at.round
		} else {
			require.Len(t, now.Rounds, n, "%s at %v: %+v", s.Part, at, about)
		}
		require.GreaterOrEqual(t, len(now.Rounds), n, "%s at %v: %+v", s.Part, at, about)
		for i := range n {
			require.Equal(t, s.Rounds[i].Ops, now.Rounds[i].Ops, "%s, round %d, at %v: %+v", s.Part, i+1, at, about)
		}
		if s.Part == at.part {
			return
		}
	}
}

// likely is a request as people make them.
func likely(rng *rand.Rand) *Request {
	size := 0.7 + 0.6*rng.Float64()
	mmOf := func(low, high float64) units.Length { return units.FromMM((low + (high-low)*rng.Float64()) * size) }
	h := hand.Hand{Circumference: mmOf(170, 215), Length: mmOf(165, 200), Thumb: mmOf(58, 75)}
	if rng.IntN(2) == 0 {
		h.Palm = units.FromMM(h.Circumference.MM() + (0.35+0.4*rng.Float64())*h.Thumb.MM())
	}
	if rng.IntN(3) == 0 {
		h.GussetLength = mmOf(50, 70)
	}
	g := 14 + 24*rng.Float64()
	r := request([]Kind{Fingerless, Mitten, Thumbless}[rng.IntN(5)%3], per10(g, g*(1.2+0.4*rng.Float64())), h)
	r.Stitch.Rib = 1 + rng.IntN(4)
	r.Stitch.Repeat = 1 + rng.IntN(3)
	r.Stitch.OneSided = rng.IntN(8) == 0
	r.Make.Increase = anyIncrease(rng, r.Stitch.OneSided)
	r.anyCuff(rng)
	r.anyTop(rng)
	r.anyPlace(rng)
	r.anyThumb(rng)
	return r
}

// another is the same request after a try: another gauge, other eases and
// heights, and now and then a number that is fixed.
func another(rng *rand.Rand, r *Request) *Request {
	next := *r
	near := func(x float64) float64 { return x * (0.93 + 0.14*rng.Float64()) }
	next.Gauge = per10(near(r.Gauge.Stitches*100), near(r.Gauge.Rounds*100))
	share := func() *float64 {
		if rng.IntN(3) > 0 {
			return nil
		}
		e := 0.2*rng.Float64() - 0.1
		return &e
	}
	next.Ease = Ease{Hand: share(), Cuff: share(), Gusset: share(), Palm: share()}
	next.Hand.GussetLength = units.FromMM(45 + 30*rng.Float64())
	next.Lengths = r.Lengths
	if rng.IntN(3) == 0 {
		next.Lengths.AboveGusset = units.FromMM(20 + 60*rng.Float64())
	}
	if rng.IntN(4) == 0 {
		next.Follow = []Follow{FollowProfile, FollowRhythm}[rng.IntN(2)]
	}
	if rng.IntN(4) == 0 {
		next.Make.CuffDepth = 0
		next.anyCuff(rng)
	}
	if rng.IntN(4) == 0 {
		next.anyTop(rng)
	}
	if rng.IntN(4) == 0 {
		next.anyPlace(rng)
	}
	if rng.IntN(4) == 0 {
		next.Stitch.OneSided = rng.IntN(2) == 0
		next.Make.Increase = anyIncrease(rng, next.Stitch.OneSided)
	}
	for _, n := range Fixable() {
		if pin := next.Pins.Pin(n); pin != nil && next.may(n) && rng.IntN(40) == 0 {
			low, high := n.Range()
			*pin = Fix(low + rng.IntN(min(high-low, 60)+1))
		}
	}
	if rng.IntN(20) == 0 {
		next.Pins.Rhythm = []int{2 + rng.IntN(3)}
	}
	if rng.IntN(20) == 0 {
		next.Pins.IncreaseRounds = nil
		for r := 1 + rng.IntN(3); r < 20; r += 1 + rng.IntN(5) {
			next.Pins.IncreaseRounds = append(next.Pins.IncreaseRounds, r)
		}
	}
	return &next
}

// Random plans from random present rounds: what is knitted stays, round for
// round, the new mitt is sound, and only numbers that the person fixed are
// ever in the way.
func TestWorkedStays(t *testing.T) {
	workedStays(t, testenv.Cases(1_000, 10_000), func(*Request) {}, fingersOnly...)
}

// workedStays plans random mitts on from random rounds; of says how each is made.
func workedStays(t *testing.T, plans int, of func(*Request), without ...stitch.Part) {
	t.Helper()
	rng := rand.New(rand.NewPCG(17, 5))
	pl := New()
	refused, small, parts := 0, 0, map[stitch.Part]int{}
	for i := range plans {
		first := likely(rng)
		if i%5 == 4 {
			first = wild(rng)
		}
		of(first)
		p, err := pl.Plan(first)
		if err != nil {
			continue
		}
		was := p.Mitt()
		all := standings(was)
		at := all[rng.IntN(len(all))]
		next := another(rng, first)
		of(next)
		next.Progress = p.ProgressAt(at.part, at.round)
		again, err := pl.Plan(next)
		if err != nil {
			var fields fault.Fields
			require.True(t, errors.As(err, &fields), "%v", err)
			refused++
			if reflect.DeepEqual(Pins{}, next.Pins) { // then a mitt begun anew would be refused too
				fresh := *next
				fresh.Progress = nil
				_, err2 := pl.Plan(&fresh)
				require.Error(t, err2, "%v at %v: %+v", err, at, next)
			}
			continue
		}
		parts[at.part]++
		is := again.Mitt()
		require.Empty(t, stitch.Ledger(is), "at %v: %+v", at, next)
		requireRoundsKept(t, was, is, at, next)
		small += requireCheapest(t, again, at, next)
		if at.part == stitch.Gusset {
			third := another(rng, next) // and once more, from further on
			of(third)
			r := at.round + rng.IntN(again.Gusset.Rounds.N-at.round+1)
			third.Progress = again.ProgressAt(at.part, r)
			if p, err := pl.Plan(third); err == nil {
				requireRoundsKept(t, is, p.Mitt(), stands{at.part, r}, third)
			}
		}
	}
	t.Logf("planned on from %v, refused for fixed numbers %d, enumerated %d", parts, refused, small)
	require.Greater(t, small, plans/40)
	for _, part := range stitch.Parts() {
		if slices.Contains(without, part) {
			continue
		}
		require.Greater(t, parts[part], plans/200, "%s", part)
	}
}

// requireCheapest holds the cost of a gusset that is on the needles against
// every way to place what increase rounds are left, where these are few.
func requireCheapest(t *testing.T, p *Plan, at stands, about any) int {
	t.Helper()
	if at.part != stitch.Gusset || at.round == p.Gusset.Rounds.N || p.Gusset.Way.Follows != FollowRhythm || p.Gusset.Way.Fixed {
		return 0
	}
	g, lambda := &p.Gusset, int64(DefaultLambda*1000)
	problem := shaping.Problem{
		From: g.Base, To: g.Stitches, Step: g.Step, Rounds: g.Rounds.N, Gap: 2, LeadOut: 1, Lambda: lambda, Only: p.Make.pace().only(),
		Worked: at.round, Changed: p.Progress.changed(stitch.Gusset, p.Progress.Increases),
	}
	best, seen := math.Inf(1), 0
	var place func(rounds []int)
	place = func(rounds []int) {
		if len(rounds) == g.Increases {
			cost, err := shaping.CostOf(problem, rounds)
			require.NoError(t, err, "%v of %+v", rounds, about)
			best = min(best, cost.Float())
			seen++
			return
		}
		first := at.round + 1
		if n := len(rounds); n > 0 {
			first = max(first, rounds[n-1]+2)
		}
		pin := p.Pins.FirstIncrease
		fixed := len(rounds) == 0 && pin.On && pin.N >= first
		if fixed {
			first = pin.N
		}
		step := int(p.Make.pace())
		for r := p.Make.pace().shaped(first); (r == first || !fixed) && r <= g.Rounds.N-1-2*(g.Increases-len(rounds)-1) && seen < 1000; r += step {
			place(append(rounds[:len(rounds):len(rounds)], r))
		}
	}
	place(problem.Changed)
	if seen >= 1000 {
		return 0
	}
	require.InDelta(t, best, g.Cost, 1e-9, "%v of %+v", g.IncreaseRounds, about)
	return 1
}

// A try that changes nothing changes no round, wherever the work stands.
func TestWorkedAsPlannedGoesOnAsPlanned(t *testing.T) {
	asPlanned(t, testenv.Cases(30, 300), func(*Request) {})
}

// asPlanned is that for mitts that of makes in one way.
func asPlanned(t *testing.T, plans int, of func(*Request)) {
	t.Helper()
	rng := rand.New(rand.NewPCG(17, 6))
	pl := New()
	for range plans {
		r := likely(rng)
		of(r)
		p, err := pl.Plan(r)
		require.NoError(t, err)
		was := p.Mitt()
		for _, at := range standings(was) {
			on := *r
			on.Progress = p.ProgressAt(at.part, at.round)
			again, err := pl.Plan(&on)
			require.NoError(t, err)
			require.Equal(t, was, again.Mitt(), "at %v: %+v", at, r)
		}
	}
}

// What is written of the work may be wrong in any number: it is refused, or
// the plan keeps it and is sound.
func TestWorkedAnything(t *testing.T) {
	workedAnything(t, testenv.Cases(2_000, 20_000), func(*Request) {})
}

// workedAnything is that for mitts that of makes in one way.
func workedAnything(t *testing.T, cases int, of func(*Request)) {
	t.Helper()
	rng := rand.New(rand.NewPCG(17, 7))
	pl := New()
	planned := 0
	for range cases {
		r := likely(rng)
		of(r)
		p, err := pl.Plan(r)
		require.NoError(t, err)
		all := standings(p.Mitt())
		at := all[rng.IntN(len(all))]
		k := p.ProgressAt(at.part, at.round)
		k.Increases, k.Decreases, k.ThumbCorners = slices.Clone(k.Increases), slices.Clone(k.Decreases), slices.Clone(k.ThumbCorners)
		if rng.IntN(6) == 0 {
			k.ThumbCorners = nil
		}
		numbers := []*int{
			&k.Round, &k.Rib, &k.CastOn, &k.CuffRounds, &k.CuffPlainRounds, &k.HandStitches, &k.GussetBase, &k.GussetRounds,
			&k.Kept, &k.Held, &k.Bridge, &k.RoundsAbove, &k.EdgingRounds, &k.Edging, &k.TopRounds, &k.PickedUp, &k.ThumbDecreases, &k.Thumb,
			&k.ThumbRounds, &k.ThumbEdging, &k.ThumbEdged, &k.CuffRib, &k.EdgingRib, &k.ThumbRib,
		}
		miswrite(rng, numbers, k.Increases, k.Decreases, k.ThumbCorners)
		if rng.IntN(6) == 0 {
			k.OneSided = !k.OneSided
		}
		r.Progress = k
		again, err := pl.Plan(r)
		if err != nil {
			continue
		}
		planned++
		require.Empty(t, stitch.Ledger(again.Mitt()), "%+v", k)
		is := again.ProgressAt(k.Part, k.Round)
		require.Equal(t, k.changed(stitch.Gusset, k.Increases), is.changed(stitch.Gusset, is.Increases), "%+v", k)
	}
	t.Logf("planned %d of %d", planned, cases)
	require.Greater(t, planned, cases/10)
}

// miswrite makes one number or two wrong, of numbers and of those in lists.
func miswrite(rng *rand.Rand, numbers []*int, lists ...[]int) {
	for _, list := range lists {
		for i := range list {
			numbers = append(numbers, &list[i])
		}
	}
	for range 1 + rng.IntN(2) {
		n := numbers[rng.IntN(len(numbers))]
		*n += []int{-1, 1, 2, -*n, 1000, -5}[rng.IntN(6)]
	}
}
