package project

import (
	"fmt"
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/tryon"
	"thenar/internal/units"
)

// gloveKnitter is a knitter of gloves, made in any of the usual ways.
func gloveKnitter(rng *rand.Rand) Document {
	d := knitter(rng)
	d.Sheet["kind"] = "glove"
	ends := []string{"", "full", "half", "open"}
	for _, name := range []string{"index", "middle", "ring", "little", "thumb"} {
		if end := ends[rng.IntN(4)]; end != "" && rng.IntN(2) == 0 {
			d.Sheet["fingers."+name] = end
		}
	}
	if rng.IntN(2) == 0 {
		for _, name := range []string{"index", "middle", "ring", "little"} {
			d.Sheet["fingers."+name] = "half"
		}
		d.Sheet["fingers.cap"] = "true"
	}
	switch rng.IntN(4) {
	case 0:
		d.Sheet[mitt.PathConstruction] = "straight"
	case 1:
		d.Sheet[mitt.PathPlace] = "palm"
	}
	return d
}

// gloveTrial is a try of a glove at a place, with anything to see and to feel.
func gloveTrial(rng *rand.Rand, p *Planned, at tryon.Place) tryon.Try {
	t := tryon.Try{
		Key: "k", Date: "2026-03-01", Side: "right", Section: string(at.Part), Round: strconv.Itoa(at.Round),
		Feel: map[tryon.Zone]string{}, Ends: map[tryon.Zone]string{},
	}
	if rng.IntN(3) == 0 {
		off := func() float64 { return 0.95 + 0.1*rng.Float64() }
		t.Stitches, t.Width = fmt.Sprintf("%.1f", p.Gauge.Stitches*80*off()), "80"
		t.Rounds, t.Height = fmt.Sprintf("%.1f", p.Gauge.Rounds*50*off()), "50"
	}
	for _, zone := range tryon.KnittedZones(at.Part, false, at.Down) {
		if zone.Fingered() && p.Mitt().Section(stitch.Part(zone)) == nil {
			continue
		}
		if rng.IntN(4) == 0 {
			t.Feel[zone] = strconv.Itoa(rng.IntN(5) - 2)
		}
		for _, m := range tryon.Measured() {
			if zone == m && rng.IntN(4) == 0 && p.Fingered() {
				t.Ends[zone] = strconv.Itoa(rng.IntN(17) - 8)
			}
		}
	}
	return t
}

// requireStays checks that what is knitted up to a place stays round for round.
func requireStays(t *testing.T, was, is stitch.Mitt, upTo int, why any) {
	t.Helper()
	require.Empty(t, stitch.Ledger(is), "%+v", why)
	require.Empty(t, stitch.Ledger(stitch.Mirror(is)), "%+v", why)
	places := tryon.Places(is)
	require.GreaterOrEqual(t, len(places), upTo)
	for i, at := range tryon.Places(was)[:upTo] {
		require.Equal(t, at, places[i], "%+v", why)
		require.Equal(t, was.Section(at.Part).Rounds[at.Round-1].Ops, is.Section(at.Part).Rounds[at.Round-1].Ops, "round %d of %s: %+v", at.Round, at.Part, why)
	}
}

// A glove is knitted some rounds on, tried on, corrected, and gone on with or ripped back,
// again and again: what is knitted stays round for round, and the ledger stays sound.
func TestAGloveOnTheWay(t *testing.T) {
	rng := rand.New(rand.NewPCG(24, 5))
	pl := NewPlanner()
	on, ripped, stuck := 0, 0, map[string]int{}
	for range testenv.Cases(2, 1_500) {
		d := gloveKnitter(rng)
		p, err := pl.Plan(d.Sheet)
		if err != nil {
			continue // a small hand on thick yarn
		}
		for nth := 0; ; {
			places := tryon.Places(p.Mitt())
			if nth += 1 + rng.IntN(60); nth > len(places) {
				break
			}
			at := places[nth-1]
			at.Ended = rng.IntN(2) == 0 && nth < len(places) && places[nth].Part != at.Part && len(p.Mitt().Section(at.Part).Finish.Ops) > 0
			s := seen(t, gloveTrial(rng, p, at), p, units.MM)
			require.NoError(t, s.CheckZones(places))
			s.Place = at
			list, err := tryon.Correct(s, d.Sheet, p.Plan)
			require.NoError(t, err)
			var accepted []tryon.Correction
			for _, c := range list {
				if rng.IntN(4) > 0 {
					accepted = append(accepted, c)
				}
			}
			out, err := pl.Onward(d, s, Progress{}, accepted)
			require.NoError(t, err)
			if out.Is == nil {
				stuck[out.Fault.Error()]++
				if out.Rip == nil {
					break
				}
			} else {
				requireStays(t, p.Mitt(), out.Is.Mitt(), nth, []any{s.Try, s.Place, d.Sheet})
				require.Equal(t, at.Ended, at.Ended && len(out.Is.Mitt().Section(at.Part).Rounds) == at.Round, "nothing is added to what is ended: %+v %v", s.Try, d.Sheet)
			}
			if out.Rip != nil {
				requireStays(t, p.Mitt(), out.Rip.Is.Mitt(), out.Rip.To.Nth, []any{s.Try, d.Sheet})
				if out.Is == nil || rng.IntN(2) == 0 {
					ripped++
					d, p, nth = out.Rip.Next, out.Rip.Is, out.Rip.To.Nth
					continue
				}
			}
			on++
			d, p = out.Next, out.Is
		}
	}
	t.Logf("gone on %d, ripped %d, no plan %v", on, ripped, stuck)
	assert.Greater(t, ripped, on/12)
}

// A finger that is a stitch too tight can't be widened on its needles. It is ripped back to
// before its first round, since what it stands on is picked up and put aside there; with it
// go the fingers that were worked after it, and no others.
func TestATightFingerIsRippedFromItsFirstRound(t *testing.T) {
	rng := rand.New(rand.NewPCG(24, 6))
	pl := NewPlanner()
	begun, cases, wider := 0, 0, 0
	for range testenv.Cases(25, 600) {
		d := knitter(rng)
		d.Sheet["kind"] = "glove"
		p, err := pl.Plan(d.Sheet)
		if err != nil {
			continue
		}
		f := hand.Finger(rng.IntN(4))
		part := mitt.PartOfFinger(f)
		s := seen(t, tryon.Try{
			Key: "k", Date: "2026-03-01", Side: "right", Section: string(stitch.Index), Round: "3",
			Feel: map[tryon.Zone]string{tryon.Zone(part): "1"},
		}, p, units.MM)
		list, err := tryon.Correct(s, d.Sheet, p.Plan)
		require.NoError(t, err)
		out, err := pl.Onward(d, s, Progress{}, list)
		require.NoError(t, err)
		cases++
		require.Zero(t, out.Changed.Count(), "what is knitted can't become wider")
		if out.Rip == nil {
			continue
		}
		begun++
		require.Contains(t, out.Rip.Zones, part.Words())
		to := out.Rip.To
		require.Less(t, stitch.Order(to.Part, false), stitch.Order(part, false), "its first round is ripped as well")
		if out.Rip.Is.Fingers.Each[f].Stitches.N > p.Fingers.Each[f].Stitches.N {
			wider++
		}
	}
	t.Logf("%d of %d tight fingers are ripped back, %d are wider then", begun, cases, wider)
	assert.Greater(t, begun, cases/2)
	assert.Equal(t, begun, wider)
}

// After a try at the palm of a mitt with a straight thumb, and of a glove with one, the
// mitt goes on, or is ripped back into the palm: what is left stays round for round.
func TestRippingInThePalmOfAStraightThumb(t *testing.T) {
	for _, kind := range []string{"mitten", "glove"} {
		rng := rand.New(rand.NewPCG(24, 7))
		pl := NewPlanner()
		ripped := 0
		for range testenv.Cases(30, 1_000) {
			d := knitter(rng)
			d.Sheet["kind"], d.Sheet[mitt.PathConstruction] = kind, "straight"
			p, err := pl.Plan(d.Sheet)
			if err != nil {
				continue
			}
			m := p.Mitt()
			below := m.Section(stitch.BelowThumb)
			require.NotNil(t, below)
			part := []stitch.Part{stitch.BelowThumb, stitch.Hand}[rng.IntN(2)]
			s := seen(t, tryon.Try{
				Key: "k", Date: "2026-03-01", Side: "right", Section: string(part), Round: strconv.Itoa(1 + rng.IntN(len(m.Section(part).Rounds))),
				Feel: map[tryon.Zone]string{tryon.Hand: []string{"-2", "2"}[rng.IntN(2)]}, Top: strconv.Itoa(rng.IntN(25) - 12),
			}, p, units.MM)
			list, err := tryon.Correct(s, d.Sheet, p.Plan)
			require.NoError(t, err)
			out, err := pl.Onward(d, s, Progress{}, list)
			require.NoError(t, err)
			require.NoError(t, out.Fault, "%v", d.Sheet)
			requireStays(t, m, out.Is.Mitt(), s.Place.Nth, []any{s.Try, d.Sheet})
			if out.Rip == nil {
				continue
			}
			ripped++
			requireStays(t, m, out.Rip.Is.Mitt(), out.Rip.To.Nth, []any{s.Try, d.Sheet})
			require.NotEmpty(t, Differing(m, out.Rip.Is.Mitt()).Count())
			next := out.Rip.Next
			require.Equal(t, string(out.Rip.To.Part), next.Sheet.Given(sheet.PathSection))
		}
		t.Logf("%s: %d ripped back", kind, ripped)
		assert.Greater(t, ripped, 10)
	}
}

// A finger that is finished and too short or too long is ripped back by itself, above its
// first round, while the work is further on. All else that is knitted stays round for
// round, and so does what is left of the finger; it comes out as long as was wished, to
// half a round. What is knitted on afterwards keeps it.
func TestOneFingerIsRippedByItself(t *testing.T) {
	rng := rand.New(rand.NewPCG(24, 8))
	pl := NewPlanner()
	offered, cases := 0, 0
	for range testenv.Cases(25, 600) {
		d := gloveKnitter(rng)
		p, err := pl.Plan(d.Sheet)
		if err != nil {
			continue
		}
		m := p.Mitt()
		f := hand.Finger(1 + rng.IntN(3))
		part, zone := mitt.PartOfFinger(f), tryon.Zone(mitt.PartOfFinger(f))
		at := []stitch.Part{stitch.Index, stitch.Thumb}[rng.IntN(2)]
		off := []string{"-5", "-3", "3", "5"}[rng.IntN(4)]
		s := seen(t, tryon.Try{
			Key: "k", Date: "2026-03-01", Side: "right", Section: string(at), Round: strconv.Itoa(1 + rng.IntN(len(m.Section(at).Rounds))),
			Ends: map[tryon.Zone]string{zone: off},
		}, p, units.MM)
		list, err := tryon.Correct(s, d.Sheet, p.Plan)
		require.NoError(t, err)
		out, err := pl.Onward(d, s, Progress{}, list)
		require.NoError(t, err)
		cases++
		require.LessOrEqual(t, len(out.Fingers), 1)
		if len(out.Fingers) == 0 {
			continue
		}
		offered++
		rip := out.Fingers[0]
		require.Equal(t, part, rip.Part)
		require.GreaterOrEqual(t, rip.To, 1)
		is := rip.Is.Mitt()
		require.Empty(t, stitch.Ledger(is))
		require.Empty(t, stitch.Ledger(stitch.Mirror(is)))
		for _, at := range tryon.Places(m)[:s.Place.Nth] {
			if at.Part == part && at.Round > rip.To {
				continue
			}
			require.Equal(t, m.Section(at.Part).Rounds[at.Round-1].Ops, is.Section(at.Part).Rounds[at.Round-1].Ops, "round %d of %s: %v", at.Round, at.Part, d.Sheet)
		}
		by := len(is.Section(part).Rounds) - len(m.Section(part).Rounds)
		require.Equal(t, off[0] == '-', by > 0, "%d rounds more by %s mm", by, off)
		require.Equal(t, len(is.Section(part).Rounds), rip.To+rip.Again)
		require.Equal(t, s.Place.Part, rip.At.Part)
		require.Equal(t, s.Place.Round, rip.At.Round)
		require.Equal(t, s.Place.Nth+by, rip.At.Nth)

		kept := pl.Keep(rip.Next, []Progress{{Right, rip.Is, rip.At}})
		again, err := pl.Plan(kept.Effective())
		require.NoError(t, err)
		requireStays(t, is, again.Mitt(), rip.At.Nth, d.Sheet)
	}
	t.Logf("%d of %d fingers can be ripped by themselves", offered, cases)
	assert.Greater(t, offered, cases/2)
}

// A finger that is drawn up or bound off gets no more rounds, though it is too short: its
// length tells for the other hand. While its last round is still on the needles it does.
func TestAFinishedFingerIsNotKnittedOn(t *testing.T) {
	d := knitter(rand.New(rand.NewPCG(24, 9)))
	d.Sheet["kind"], d.Sheet["fingers.ring"] = "glove", "half"
	pl := NewPlanner()
	p, err := pl.Plan(d.Sheet)
	require.NoError(t, err)
	for _, part := range []stitch.Part{stitch.Little, stitch.Ring, stitch.Index} {
		rounds := len(p.Mitt().Section(part).Rounds)
		s := seen(t, tryon.Try{
			Key: "k", Date: "2026-03-01", Side: "right", Section: string(part), Round: strconv.Itoa(rounds),
			Ends: map[tryon.Zone]string{tryon.Zone(part): "-6"},
		}, p, units.MM)
		for _, ended := range []bool{true, false} {
			s.Place.Ended = ended
			list, err := tryon.Correct(s, d.Sheet, p.Plan)
			require.NoError(t, err)
			require.Equal(t, ended, list[0].Later, "%s", part)
			out, err := pl.Onward(d, s, Progress{}, list)
			require.NoError(t, err)
			require.NoError(t, out.Fault)
			is := len(out.Is.Mitt().Section(part).Rounds)
			if ended {
				assert.Equal(t, rounds, is, "%s", part)
			} else {
				assert.GreaterOrEqual(t, is, rounds, "%s", part)
			}
		}
	}
}
