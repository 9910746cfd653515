package project

import (
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/tryon"
	"thenar/internal/units"
)

// capKnitter is a knitter of gloves with half fingers and a cap over them.
func capKnitter(rng *rand.Rand) Document {
	d := knitter(rng)
	d.Sheet["kind"], d.Sheet["fingers.cap"] = "glove", "true"
	for _, name := range []string{"index", "middle", "ring", "little"} {
		d.Sheet["fingers."+name] = "half"
	}
	return d
}

// capTried is what follows from a try of a glove with a cap.
func capTried(t *testing.T, pl *Planner, d Document, p *Planned, part stitch.Part, round int, feel, ends map[tryon.Zone]string) (Onward, tryon.Reading) {
	t.Helper()
	s := seen(t, tryon.Try{Key: "k", Date: "2026-03-01", Side: "right", Section: string(part), Round: strconv.Itoa(round), Feel: feel, Ends: ends}, p, units.MM)
	require.NoError(t, s.CheckZones(tryon.Places(p.Mitt())))
	list, err := tryon.Correct(s, d.Sheet, p.Plan)
	require.NoError(t, err)
	out, err := pl.Onward(d, s, Progress{}, list)
	require.NoError(t, err)
	require.NoError(t, out.Fault, "%v", d.Sheet)
	requireStays(t, p.Mitt(), out.Is.Mitt(), s.Place.Nth, []any{s.Try, d.Sheet})
	return out, s
}

// While the hand of a cap is on the needles, a cap that would end too high or too low on the
// hand gets fewer or more rounds from there, to one round; what is knitted stays.
func TestACapOnTheNeedlesIsCorrectedInLength(t *testing.T) {
	rng := rand.New(rand.NewPCG(24, 21))
	pl := NewPlanner()
	for range testenv.Cases(20, 600) {
		d := capKnitter(rng)
		p, err := pl.Plan(d.Sheet)
		if err != nil {
			continue
		}
		of := p.Fingers.Cap
		off := []int{-7, -4, 4, 7}[rng.IntN(4)]
		at := 1 + rng.IntN(of.Rounds-1)
		out, _ := capTried(t, pl, d, p, stitch.Cap, at, nil, map[tryon.Zone]string{tryon.Cap: strconv.Itoa(off)})
		is := out.Is.Fingers.Cap
		wished := float64(of.Rounds+of.Top.Rounds) - float64(off)*p.Gauge.Rounds
		require.InDelta(t, max(wished, float64(at+is.Top.Rounds)), is.Rounds+is.Top.Rounds, 2, "%d mm off after %d of %d: %v", off, at, of.Rounds, d.Sheet)
		require.Equal(t, of.Back+of.Palm, is.Back+is.Palm)
	}
}

// A cap that is tight can't be widened on its needles: it is ripped back to before its first
// round, and no further. Then it is wider.
func TestATightCapIsRippedFromItsFirstRound(t *testing.T) {
	rng := rand.New(rand.NewPCG(24, 22))
	pl := NewPlanner()
	ripped, cases := 0, 0
	for range testenv.Cases(20, 600) {
		d := capKnitter(rng)
		p, err := pl.Plan(d.Sheet)
		if err != nil {
			continue
		}
		cases++
		out, s := capTried(t, pl, d, p, stitch.Cap, 1+rng.IntN(p.Fingers.Cap.Rounds), map[tryon.Zone]string{tryon.Cap: "1"}, nil)
		require.Zero(t, out.Changed.Count(), "what is knitted can't become wider")
		if out.Rip == nil {
			continue
		}
		ripped++
		require.Contains(t, out.Rip.Zones, "cap")
		require.Equal(t, s.Place.Round, out.Rip.Rounds, "all of the cap, and nothing else")
		require.NotEqual(t, stitch.Cap, out.Rip.To.Part)
		require.Equal(t, p.Fingers.Cap.Stitches()+mitt.CapStep, out.Rip.Is.Fingers.Cap.Stitches())
		requireStays(t, p.Mitt(), out.Rip.Is.Mitt(), out.Rip.To.Nth, d.Sheet)
	}
	t.Logf("%d of %d tight caps are ripped back", ripped, cases)
	assert.Greater(t, ripped, cases*9/10)
}

// A cap whose top is begun keeps its length. What that leaves is told, and where it is much
// it is ripped back to below its top, and comes out as long as was wished.
func TestACapIsRippedBackBelowItsTop(t *testing.T) {
	rng := rand.New(rand.NewPCG(24, 23))
	pl := NewPlanner()
	for range testenv.Cases(15, 400) {
		d := capKnitter(rng)
		p, err := pl.Plan(d.Sheet)
		if err != nil {
			continue
		}
		of := p.Fingers.Cap
		off := []int{-12, 12}[rng.IntN(2)]
		out, _ := capTried(t, pl, d, p, stitch.CapTop, 1+rng.IntN(of.Top.Rounds), nil, map[tryon.Zone]string{tryon.Cap: strconv.Itoa(off)})
		require.Zero(t, out.Changed.Count())
		require.Len(t, out.Leaves.Lengths, 1, "%v", d.Sheet)
		left := out.Leaves.Lengths[0]
		require.Equal(t, stitch.Cap, left.Section)
		require.Equal(t, off > 0, left.MM > 0)
		require.NotNil(t, out.Rip, "%v", d.Sheet)
		require.Contains(t, out.Rip.Zones, "cap’s length")
		require.Equal(t, stitch.Cap, out.Rip.To.Part)
		require.Less(t, out.Rip.To.Round, of.Rounds)
		requireStays(t, p.Mitt(), out.Rip.Is.Mitt(), out.Rip.To.Nth, d.Sheet)
		is := out.Rip.Is.Fingers.Cap
		require.Equal(t, off < 0, is.Rounds+is.Top.Rounds > of.Rounds+of.Top.Rounds)
		require.Empty(t, out.Rip.Leaves.Lengths, "%v", d.Sheet)
	}
}

// A finger is ripped back by itself also while the cap hangs on the back of the hand: what
// is knitted of that stays round for round.
func TestOneFingerIsRippedUnderACap(t *testing.T) {
	rng := rand.New(rand.NewPCG(24, 24))
	pl := NewPlanner()
	offered, cases := 0, 0
	for range testenv.Cases(15, 400) {
		d := capKnitter(rng)
		p, err := pl.Plan(d.Sheet)
		if err != nil {
			continue
		}
		cases++
		part := mitt.PartOfFinger(hand.Finger(rng.IntN(4)))
		at := []stitch.Part{stitch.Cap, stitch.CapTop}[rng.IntN(2)]
		out, s := capTried(t, pl, d, p, at, 3, nil, map[tryon.Zone]string{tryon.Zone(part): []string{"-5", "5"}[rng.IntN(2)]})
		if len(out.Fingers) == 0 {
			continue
		}
		offered++
		rip := out.Fingers[0]
		is, m := rip.Is.Mitt(), p.Mitt()
		require.Empty(t, stitch.Ledger(is))
		for _, at := range tryon.Places(m)[:s.Place.Nth] {
			if at.Part != part || at.Round <= rip.To {
				require.Equal(t, m.Section(at.Part).Rounds[at.Round-1].Ops, is.Section(at.Part).Rounds[at.Round-1].Ops, "round %d of %s: %v", at.Round, at.Part, d.Sheet)
			}
		}
		require.Equal(t, at, rip.At.Part)
		again, err := pl.Plan(pl.Keep(rip.Next, []Progress{{Right, rip.Is, rip.At}}).Effective())
		require.NoError(t, err)
		requireStays(t, is, again.Mitt(), rip.At.Nth, d.Sheet)
	}
	t.Logf("%d of %d", offered, cases)
	assert.Greater(t, offered, cases/2)
}
