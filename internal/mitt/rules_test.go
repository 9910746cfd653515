package mitt

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
)

// eachMitt plans requests as people make them, every fifth from all over what
// may be asked.
func eachMitt(t *testing.T, seed uint64, cases int, look func(r *Request, p *Plan, m stitch.Mitt)) {
	t.Helper()
	rng := rand.New(rand.NewPCG(19, seed))
	pl := New()
	planned := 0
	for i := range cases {
		r := likely(rng)
		if i%5 == 4 {
			r = wild(rng)
		} else if rng.IntN(4) == 0 {
			r.Stitch.Rib = 4
		}
		p, err := pl.Plan(r)
		if err != nil {
			continue
		}
		planned++
		look(r, p, p.Mitt())
	}
	require.Greater(t, planned, cases/2)
}

// A tube that was begun only draws in: from the division to the last round of
// the hand, and from the thumb's first round to its last, no round has more
// stitches than the one before it. So no edging flares, and no increase
// follows a decrease.
func TestNothingFlaresAboveTheGusset(t *testing.T) {
	t.Parallel()
	eachMitt(t, 1, testenv.Cases(600, 6000), func(r *Request, p *Plan, m stitch.Mitt) {
		for _, part := range []stitch.Part{stitch.Hand, stitch.Top, stitch.Thumb} {
			s := m.Section(part)
			if s == nil || len(s.Rounds) == 0 {
				continue
			}
			for i, round := range s.Rounds[1:] {
				require.LessOrEqual(t, round.Out(), s.Rounds[i].Out(), "%s, round %d: %+v", part, i+2, r)
				require.Equal(t, s.Rounds[i].Out(), round.In(), "%s, round %d: %+v", part, i+2, r)
			}
			if n := len(s.Finish.Ops); n > 0 {
				require.LessOrEqual(t, n, s.Rounds[0].Out())
			}
		}
	})
}

// lastBeforeTheEnd is the last round of a thumb that is neither its edging, nor
// the change to it, nor a round that closes it.
func lastBeforeTheEnd(p *Plan, thumb *stitch.Section) int {
	n := len(thumb.Rounds) - p.Thumb.EdgingRounds
	if p.Kind == Mitten {
		for i, round := range thumb.Rounds {
			if len(round.Ops) > 1 && round.Ops[0] == stitch.K2tog && round.Ops[1] == stitch.K2tog {
				return i
			}
		}
		return n
	}
	if p.Thumb.EdgingStitches != p.Thumb.Stitches.N {
		n--
	}
	return n
}

// The decreases of a thumb stand at its corners, where the hole would be: one
// at the second in round 2; two, one at each, in round 2; three, both in round
// 2 and the second again in round 4; four, both in rounds 2 and 4; in round 3
// where the thumb is short. k2tog stands at the first corner, ssk at the
// second, and from the last of them to the edging the thumb has its own count.
func TestDecreasesStandAtTheCorners(t *testing.T) {
	t.Parallel()
	seen := map[int]int{}
	short := 0
	eachMitt(t, 2, testenv.Cases(2000, 6000), func(r *Request, p *Plan, m stitch.Mitt) {
		thumb := m.Section(stitch.Thumb)
		if thumb == nil {
			return
		}
		d, last := p.Thumb.Decreased, lastBeforeTheEnd(p, thumb)
		seen[d]++
		if p.Thumb.EdgingRounds > 0 {
			require.GreaterOrEqual(t, last, 1+(d+1)/2, "before the edging: %+v", r)
		}
		want := make([]int, len(thumb.Rounds)+5) // decreases of each round, from 1
		if want[2] = min(d, 2); d > 2 {
			second := 4
			if last < 4 {
				second = 3
				short++
			}
			want[second] = d - 2
		}
		require.Equal(t, p.Thumb.Held+p.Thumb.PickedUp, thumb.Rounds[0].Out())
		for i := 1; i < last; i++ {
			round := thumb.Rounds[i]
			require.Equal(t, want[i+1], round.In()-round.Out(), "round %d, %d decreased, %d before the end: %+v", i+1, d, last, r)
			if want[i+1] > 0 {
				require.Equal(t, stitch.SSK, round.Ops[len(round.Ops)-1])
			}
			if at := p.Thumb.PickedUp - 1; want[i+1] == 2 && at >= 0 && at+2 < len(round.Ops) {
				require.Equal(t, stitch.K2tog, round.Ops[at], "round %d: %+v", i+1, r)
			}
			if i+1 >= 4 {
				require.Equal(t, p.Thumb.Stitches.N, round.Out(), "round %d: %+v", i+1, r)
			}
		}
		if last > 0 {
			require.Equal(t, p.Thumb.Stitches.N, thumb.Rounds[last-1].Out(), "%+v", r)
		}
	})
	t.Logf("decreases %v, in a short thumb %d", seen, short)
	for d := range 4 {
		require.Positive(t, seen[d], "%d decreases", d)
	}
}

// From the corners to the edging a thumb is as wide as it was planned: to a
// stitch of its own girth with the room added. At least half of its plain
// rounds have that girth (before, the decreases stood under the edging, and
// only the edging had it).
func TestThePlainThumbHasItsGirth(t *testing.T) {
	t.Parallel()
	eachMitt(t, 3, testenv.Cases(400, 4000), func(r *Request, p *Plan, m stitch.Mitt) {
		thumb := m.Section(stitch.Thumb)
		if thumb == nil || slices.Contains(codes(p), "thumb_count") || r.Pins.ThumbStitches.On {
			return
		}
		last := lastBeforeTheEnd(p, thumb)
		if last < 5 {
			return
		}
		wanted := p.Hand.Thumb.MM() + p.Ease.ThumbAdded
		for i := 4; i < last; i++ {
			fabric := float64(thumb.Rounds[i].Out()) / p.Gauge.Stitches
			require.LessOrEqual(t, math.Abs(fabric-wanted), 1/p.Gauge.Stitches+1e-9, "round %d: %+v", i+1, r)
		}
	})
}

// Worked by hand from the rule: the largest multiple of the rib not above the
// count; where nothing is left, or more than 15 % would go, 1 × 1 rib on the
// largest even count.
func TestEdgingCounts(t *testing.T) {
	for _, c := range [][4]int{
		{18, 4, 16, 4},
		{20, 4, 20, 4},
		{22, 4, 20, 4},
		{44, 4, 44, 4},
		{46, 4, 44, 4},
		{14, 4, 12, 4},
		{13, 2, 12, 2},
		{19, 1, 19, 1},
		{21, 3, 21, 3},
		{20, 3, 18, 3},
		{10, 4, 10, 2}, // 8 would take 20 %
		{11, 4, 10, 2}, // 8 would take 27 %
		{3, 4, 2, 2},   // nothing would be left
		{7, 6, 6, 6},   // 14.3 %
		{20, 9, 18, 9},
		{20, 17, 17, 17}, // 15 % is not more than 15 %
		{26, 22, 26, 2},  // 15.4 %
	} {
		n, rib := edgingCount(c[0], c[1])
		require.Equal(t, [2]int{c[2], c[3]}, [2]int{n, rib}, "%d stitches, rib %d", c[0], c[1])
	}
}

// Where another rib than the sheet's is worked, the plan says so, and the
// rounds have it.
func TestAnotherRibIsSaid(t *testing.T) {
	r := request(Fingerless, per10(20, 28), hand.Hand{Circumference: 142 * mm, Length: 127 * mm, Thumb: 38 * mm})
	r.Stitch.Rib = 4
	p := must(t, r)
	require.Equal(t, 10, p.Thumb.Stitches.N)
	require.Equal(t, 10, p.Thumb.EdgingStitches)
	require.Contains(t, codes(p), "edging_rib")
	rounds := p.Mitt().Section(stitch.Thumb).Rounds
	require.Equal(t, Stitches{}.ribbing(10, 2), rounds[len(rounds)-1].Ops)

	r.Hand.Thumb = 48 * mm
	p = must(t, r)
	require.Equal(t, 12, p.Thumb.EdgingStitches)
	require.NotContains(t, codes(p), "edging_rib")

	r.Stitch = Stitches{Repeat: 1, Rib: 6}
	r.Pins.HandStitches = Fix(17) // 14 to 17: no multiple of 6
	p = must(t, r)
	require.Equal(t, oneByOne, p.Cuff.Rib)
	require.Zero(t, p.Cuff.CastOn.N%2)
	require.Contains(t, codes(p), "cuff_rib")
	require.Equal(t, Stitches{}.ribbing(p.Cuff.CastOn.N, 2), p.Mitt().Sections[0].Rounds[0].Ops)
}

// A cuff that nothing fixes is never over the hand's count and never under
// 0.78 of it; one without a thumb never under 0.78 g·H. That of a closed kind
// grips: 0.33 L + 8 mm of rib, which for hands of 75, 127, 181 and 194 mm are
// 33, 50, 68 and 72 mm, and hardly a plain round (common practice, from
// memory).
func TestCuffsGrip(t *testing.T) {
	t.Parallel()
	for long, cuff := range map[float64]float64{75: 33, 127: 50, 181: 68, 194: 72} {
		require.InDelta(t, cuff, Mitten.info().ribbing.of(long), 0.5)
		require.InDelta(t, cuff, Thumbless.info().ribbing.of(long), 0.5)
	}
	eachMitt(t, 4, testenv.Cases(400, 4000), func(r *Request, p *Plan, m stitch.Mitt) {
		c, n := p.Cuff.Wrist.N, float64(p.Body.Stitches.N)
		if !r.Pins.CastOn.On && p.Cuff.Rounds+p.Cuff.PlainRounds > 0 {
			least := 0.78 * n
			if p.Tucked() {
				least = min(0.78*p.Gauge.Stitches*p.Hand.Circumference.MM(), n)
			}
			require.GreaterOrEqual(t, float64(c), least-1e-9, "%+v", r)
			require.LessOrEqual(t, float64(c), n, "%+v", r)
			require.Zero(t, c%p.Cuff.Rib, "%+v", r)
		}
		if !r.Kind.Closed() || r.Lengths.Cuff != 0 || r.Lengths.CuffPlain != 0 || r.Pins.CuffRounds.On || r.Pins.CuffPlainRounds.On || !r.Make.Cuff.info().ribbed {
			return
		}
		long, per := p.Hand.Length.MM(), p.Gauge.Rounds
		require.InDelta(t, max(per*(0.33*long+8), 1), float64(p.Cuff.Rounds), 0.5+1e-6, "%+v", r)
		if r.Kind == Thumbless {
			require.Zero(t, p.Cuff.PlainRounds)
		} else {
			require.InDelta(t, max(per*0.05*long, 1), float64(p.Cuff.PlainRounds), 0.5+1e-6, "%+v", r)
		}
	})
}

// Without a thumb the mitten goes round hand and thumb: 5 % more than the palm
// with the thumb laid in, to half a repeat; 0.05 H more in thick yarn.
func TestAThumblessMittGoesRoundBoth(t *testing.T) {
	t.Parallel()
	seen := 0
	eachMitt(t, 5, testenv.Cases(400, 4000), func(r *Request, p *Plan, m stitch.Mitt) {
		if r.Kind != Thumbless || r.Ease.Hand != nil || r.Pins.HandStitches.On || slices.Contains(codes(p), "hand_count") {
			return
		}
		wanted := 1.05 * max(p.Hand.Palm.MM(), p.Hand.Circumference.MM())
		if p.Gauge.Stitches < 0.16 {
			wanted += 0.05 * p.Hand.Circumference.MM()
		}
		fabric := float64(p.Body.Stitches.N) / p.Gauge.Stitches
		require.LessOrEqual(t, math.Abs(fabric-wanted), float64(r.Stitch.Repeat)/2/p.Gauge.Stitches+1e-9, "%+v", r)
		seen++
	})
	require.Greater(t, seen, 20)
}
