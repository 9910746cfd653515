package project

import (
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

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
