package tryon

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
)

// cappedSheet is a glove with half fingers and a cap over them.
func cappedSheet(rng *rand.Rand) sheet.Sheet {
	s := gloveSheet(rng)
	for _, name := range []string{"index", "middle", "ring", "little"} {
		s["fingers."+name] = "half"
	}
	s["fingers.cap"] = "true"
	return s
}

// A cap that felt tight is wider in a glove begun anew, by a repeat of its palm's rib; one that
// felt much too loose narrower; one a little loose only where that is the nearest. The hand
// and the fingers stay. Tight is told first, with the caution.
func TestACapIsCorrectedByItself(t *testing.T) {
	rng := rand.New(rand.NewPCG(24, 11))
	stays, narrower := 0, 0
	for range testenv.Cases(150, 2_000) {
		s := cappedSheet(rng)
		p := glovePlan(t, s)
		step := []int{-2, -1, 1, 2}[rng.IntN(4)]
		seen := gloveReading(t, p, stitch.CapTop, 2, Try{Feel: map[Zone]string{Cuff: "1", Cap: strconv.Itoa(step)}})
		list, err := Correct(seen, s, p)
		require.NoError(t, err)
		require.Len(t, list, 2)
		one := list[0]
		if step < 0 {
			one = list[1]
			require.Empty(t, one.Caution)
		} else {
			require.Contains(t, one.Caution, "take it off")
		}
		require.Equal(t, string(Cap), one.Key)
		require.True(t, one.Later)
		after := s.Clone()
		Put(after, one.Edits)
		is := glovePlan(t, after)
		by := is.Fingers.Cap.Stitches() - p.Fingers.Cap.Stitches()
		switch {
		case step > 0:
			require.Equal(t, mitt.CapStep*int(math.Ceil(easeStep*float64(step*p.Fingers.Cap.Stitches())/mitt.CapStep)), by, "%v", s)
		case step == -2:
			require.Equal(t, -mitt.CapStep, by, "%v", s)
		case by == 0:
			require.False(t, one.Changes())
			require.Equal(t, one.Was, one.Is)
			stays++
		default:
			require.Equal(t, -mitt.CapStep, by)
			narrower++
		}
		require.Equal(t, p.Bridge.HandAfter, is.Bridge.HandAfter)
		for _, zone := range []Zone{Hand, Little, UpperHand, Ring, Middle, Index, Thumb} {
			require.Equal(t, p.Mitt().Section(stitch.Part(zone)).Rounds, is.Mitt().Section(stitch.Part(zone)).Rounds, "%s", zone)
		}
	}
	t.Logf("a little loose: %d stay, %d become narrower", stays, narrower)
	assert.Positive(t, stays)
}

// What the measured gauge explains of a tight cap is not corrected twice.
func TestTheGaugeExplainsATightCap(t *testing.T) {
	s := cappedSheet(rand.New(rand.NewPCG(24, 12)))
	p := glovePlan(t, s)
	seen := gloveReading(t, p, stitch.Cap, 9, Try{Feel: map[Zone]string{Cap: "1"}, Stitches: "30", Width: strconv.FormatFloat(30/p.Gauge.Stitches/1.06, 'f', 1, 64)})
	list, err := Correct(seen, s, p)
	require.NoError(t, err)
	require.Equal(t, string(Cap), list[0].Key)
	assert.Contains(t, list[0].Because, "the measured gauge explains 2.5")
	assert.False(t, list[0].Changes())
}

// A cap that is too long or too short on the hand is so much shorter or longer when it is
// begun anew, to a round and what its top allows; nothing else changes. Once its last round
// below the top is knitted, that tells for another one.
func TestACapIsCorrectedInLength(t *testing.T) {
	rng := rand.New(rand.NewPCG(24, 13))
	for range testenv.Cases(100, 2_000) {
		s := cappedSheet(rng)
		p := glovePlan(t, s)
		of := p.Fingers.Cap
		off := []int{-9, -5, -3, 3, 5, 9}[rng.IntN(6)]
		part, round := stitch.Cap, 1+rng.IntN(of.Rounds)
		if rng.IntN(2) == 0 {
			part, round = stitch.CapTop, of.Top.Rounds
		}
		seen := gloveReading(t, p, part, round, Try{Ends: map[Zone]string{Cap: strconv.Itoa(off)}})
		list, err := Correct(seen, s, p)
		require.NoError(t, err)
		require.Len(t, list, 1)
		require.Equal(t, part == stitch.CapTop || round == of.Rounds, list[0].Later)
		require.Equal(t, mitt.PathCapLength, list[0].Edits[0].Path)
		after := s.Clone()
		Put(after, list[0].Edits)
		is := glovePlan(t, after)
		by := is.Fingers.Cap.Rounds + is.Fingers.Cap.Top.Rounds - of.Rounds - of.Top.Rounds
		require.InDelta(t, -float64(off)*p.Gauge.Rounds, by, 1, "%d mm off: %v", off, s)
		require.Equal(t, of.Stitches(), is.Fingers.Cap.Stitches())
		for _, zone := range []Zone{Hand, Little, UpperHand, Ring, Middle, Index, Thumb} {
			require.Equal(t, p.Mitt().Section(stitch.Part(zone)).Rounds, is.Mitt().Section(stitch.Part(zone)).Rounds, "%s", zone)
		}
	}
}

// A cap can be felt from its first round on; a glove without one has none.
func TestACapThatIsNotThere(t *testing.T) {
	assert.Contains(t, KnittedZones(stitch.Cap, false, false), Cap)
	assert.Contains(t, KnittedZones(stitch.CapTop, false, false), Cap)
	assert.NotContains(t, KnittedZones(stitch.Thumb, true, false), Cap)
	s := gloveSheet(rand.New(rand.NewPCG(24, 14)))
	p := glovePlan(t, s)
	seen, err := Try{Date: "2026-03-01", Side: "right", Section: "thumb", Round: "2", Feel: map[Zone]string{Cap: "1"}, Ends: map[Zone]string{Cap: "3"}}.Read(Places(p.Mitt()), 0, s.Unit())
	require.NoError(t, err)
	err = seen.CheckZones(Places(p.Mitt()))
	assert.ErrorContains(t, err, "feel.cap: is no part of this mitt")
	assert.ErrorContains(t, err, "end.cap: is no part of this mitt")
	list, err := Correct(seen, s, p)
	require.NoError(t, err)
	assert.Empty(t, list)
}
