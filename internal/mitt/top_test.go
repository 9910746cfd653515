package mitt

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/wale"
)

// topped is an adult's mitten of 44 stitches and a base of 3, with a top.
func topped(kind TopKind) *Request {
	r := request(Mitten, per10(22, 32), hand.Hand{Circumference: 190 * mm, Length: 180 * mm, Thumb: 65 * mm})
	r.Make.Top, r.Pins.HandStitches, r.Pins.GussetBase = kind, Fix(44), Fix(3)
	return r
}

// Worked by hand for 44 stitches and a hand of 180 mm at 32 rounds over 10 cm, where a
// rounded top takes 13 rounds. A point: 44 to 8 by fours, every 2nd round. Bands of 3:
// the last decrease round needs 3 and 4 a side, so 44 to 12. Five wedges: 4 go before, 40
// to 10. Eight wedges: 4 go, 40 to 8 in 4 rounds, which every 2nd round are 7. Gathered: 22,
// 11, 6.
func TestTopsByHand(t *testing.T) {
	for name, c := range map[string]struct {
		kind         TopKind
		band, wedges Pin
		odd, end     int
		rounds       []int
		first        string // its first decrease round
	}{
		"pointed":     {PointedTop, Pin{}, Pin{}, 0, 8, []int{1, 3, 5, 7, 9, 11, 13, 15, 17}, "k ssk k17 k2tog k ssk k17 k2tog"},
		"banded by 3": {BandedTop, Fix(3), Pin{}, 0, 12, []int{2, 4, 6, 8, 10, 11, 12, 13}, "k3 ssk k15 k2tog k3 ssk k15 k2tog"},
		"five wedges": {WedgesTop, Pin{}, Fix(5), 4, 10, []int{1, 3, 5, 7, 9, 11}, "k6 k2tog k6 k2tog k6 k2tog k6 k2tog k6 k2tog"},
		"8 wedges":    {WedgesTop, Pin{}, Fix(8), 4, 8, []int{1, 3, 5, 7}, "k3 k2tog k3 k2tog k3 k2tog k3 k2tog k3 k2tog k3 k2tog k3 k2tog k3 k2tog"},
		"gathered":    {GatheredTop, Pin{}, Pin{}, 0, 6, []int{1, 3, 5}, "k2tog22"},
	} {
		t.Run(name, func(t *testing.T) {
			r := topped(c.kind)
			r.Make.Band, r.Make.Wedges = c.band, c.wedges
			p := must(t, r)
			require.Equal(t, 44, p.Bridge.HandAfter)
			assert.Equal(t, c.odd, p.Top.Odd)
			assert.Equal(t, c.end, p.Top.End)
			assert.Equal(t, c.rounds, p.Top.DecreaseRounds)
			top := p.Mitt().Section(stitch.Top)
			assert.Equal(t, typed(t, c.first).Ops, top.Rounds[c.rounds[0]-1].Ops)
			assert.Len(t, top.Finish.Ops, c.end)
		})
	}
}

// Every top, of every width of band and number of wedges, on any hand: it is sound on
// both hands, ends as it is planned, is drawn up if it can be, never after a plain
// round, and its rhythm never slows down.
func TestEveryTop(t *testing.T) {
	t.Parallel()
	seen := map[TopKind]int{}
	eachMitt(t, 6, testenv.Cases(1500, 15000), func(r *Request, p *Plan, m stitch.Mitt) {
		if p.Top == nil {
			return
		}
		seen[or(p.Make.Top, RoundedTop)]++
		top, list := m.Section(stitch.Top), p.Top.DecreaseRounds
		require.Empty(t, stitch.Ledger(m), "%+v", r)
		require.Empty(t, stitch.Ledger(stitch.Mirror(m)), "%+v", r)
		require.Equal(t, m, stitch.Mirror(stitch.Mirror(m)))
		require.Equal(t, p.Top.Stitches, top.Rounds[0].In())
		requireMirroredTop(t, p, m, r)
		require.Equal(t, p.Top.End, top.Finish.In())
		require.Equal(t, p.Top.End <= 12, top.Finish.Ops[0] == stitch.DrawUp)
		if len(list) == 0 {
			return
		}
		if !r.Pins.TopRounds.On {
			require.Equal(t, len(top.Rounds), last(list), "%+v", r)
		}
		for i := 2; i < len(list); i++ {
			require.LessOrEqual(t, list[i]-list[i-1], list[i-1]-list[i-2], "%v", list)
		}
	})
	t.Log(seen)
	require.Len(t, seen, 5)
}

// requireMirroredTop asks that the columns of a top with side lines lie in mirror on the
// other hand, from the first stitch of the round on.
func requireMirroredTop(t *testing.T, p *Plan, m stitch.Mitt, r *Request) {
	t.Helper()
	round := m.Section(stitch.Top).Rounds[0]
	if round.Even || !p.Parted() || p.Top.Odd > 0 || round.In() != round.Out() {
		return
	}
	want := wale.Mitt(m, p.UnderThumb())[stitch.Top][0]
	slices.Reverse(want[:round.Lead])
	slices.Reverse(want[round.Lead:])
	require.Equal(t, want, wale.Mirror(m, p.UnderThumb())[stitch.Top][0], "%+v", r)
}

// Eight stitches in repeats of 7 leave one above a thumb without a bridge: nothing that a
// top could close, which is told at the bridge.
func TestOneStitchIsNotClosed(t *testing.T) {
	r := request(Mitten, per10(6.1, 3.75), hand.Hand{Circumference: 100 * mm, Wrist: 36 * mm, Palm: 448 * mm})
	r.Stitch, r.Pins.Bridge = Stitches{Repeat: 7, Offset: -6, Rib: 5, OneSided: true}, Fix(0)
	_, err := New().Plan(r)
	var fields fault.Fields
	require.ErrorAs(t, err, &fields)
	require.True(t, fields.Has(BridgeStitches.Path()), "%v", err)
}

// A top that is begun, or for which the hand took off stitches, stays what it is; until
// then it may become another.
func TestKnittedTopsStay(t *testing.T) {
	p := must(t, func() *Request {
		r := topped(WedgesTop)
		r.Make.Wedges = Fix(5)
		return r
	}())
	hand := len(p.Mitt().Section(stitch.Hand).Rounds)
	for _, c := range []struct {
		part  stitch.Part
		round int
		is    TopKind
	}{{stitch.Hand, 1, PointedTop}, {stitch.Hand, hand - 1, PointedTop}, {stitch.Hand, hand, WedgesTop}, {stitch.Top, 0, WedgesTop}, {stitch.Top, 4, WedgesTop}} {
		next := topped(PointedTop)
		next.Gauge = per10(22, 38)
		next.Progress = p.ProgressAt(c.part, c.round)
		again := must(t, next)
		assert.Equal(t, c.is, again.Make.Top, "%v", c)
		if c.part == stitch.Top {
			assert.Equal(t, p.Mitt().Section(stitch.Top).Rounds[:c.round], again.Mitt().Section(stitch.Top).Rounds[:c.round])
		}
	}
}
