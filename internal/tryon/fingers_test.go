package tryon

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/units"
)

// gloveSheet is a glove of a hand and a gauge as they are met, in mm.
func gloveSheet(rng *rand.Rand) sheet.Sheet {
	size := 0.9 + 0.25*rng.Float64()
	length := func(low, high float64) string { return strconv.Itoa(int((low + (high-low)*rng.Float64()) * size)) }
	g := 20 + 14*rng.Float64()
	return sheet.Sheet{
		"kind": "glove", "unit": "mm", "stitch.repeat": "1",
		"hand.hand_circumference": length(175, 205), "hand.hand_length": length(170, 195),
		"gauge.swatches[0].stitches": fmt.Sprintf("%.1f", g), "gauge.swatches[0].width": "100",
		"gauge.swatches[0].rounds": fmt.Sprintf("%.1f", g*1.35), "gauge.swatches[0].height": "100", "gauge.swatches[0].washed": "true",
	}
}

func glovePlan(t *testing.T, s sheet.Sheet) *mitt.Plan {
	t.Helper()
	req, err := s.Request()
	require.NoError(t, err)
	p, err := mitt.New().Plan(req)
	require.NoError(t, err)
	return p
}

func gloveReading(t *testing.T, p *mitt.Plan, part stitch.Part, round int, try Try) Reading {
	t.Helper()
	try.Date, try.Side, try.Section, try.Round = "2026-03-01", "right", string(part), strconv.Itoa(round)
	seen, err := try.Read(Places(p.Mitt()), 0, units.MM)
	require.NoError(t, err)
	require.NoError(t, seen.CheckZones(Places(p.Mitt())))
	return seen
}

// A finger that felt tight has a girth that makes its tube wider in a glove begun anew, one
// that felt loose narrower, and by a stitch or two; neither changes the hand. It is told
// first, with the caution.
func TestAFingerIsCorrectedByItself(t *testing.T) {
	rng := rand.New(rand.NewPCG(24, 1))
	moved, cases := 0, testenv.Cases(150, 2_000)
	for range cases {
		s := gloveSheet(rng)
		p := glovePlan(t, s)
		f := hand.Finger(rng.IntN(4))
		zone, step := Zone(mitt.PartOfFinger(f)), []int{-2, -1, 1, 2}[rng.IntN(4)]
		feel := map[Zone]string{Cuff: "1", zone: strconv.Itoa(step)}
		seen := gloveReading(t, p, stitch.Part(zone), 3, Try{Feel: feel, Stitches: "20", Width: fmt.Sprintf("%.1f", 20/p.Gauge.Stitches)})
		list, err := Correct(seen, s, p)
		require.NoError(t, err)
		var one Correction
		for _, c := range list {
			if c.Key == string(zone) {
				one = c
			}
		}
		require.Len(t, one.Edits, 1)
		require.Equal(t, f.FieldGirth(), one.Edits[0].Path)
		require.True(t, one.Later, "it is worked on stitches that are knitted")
		if step > 0 {
			require.Equal(t, string(zone), list[0].Key, "a tight finger is told first")
			require.Contains(t, list[0].Caution, "take it off")
		} else {
			require.Empty(t, one.Caution)
			require.Equal(t, Fabric, list[0].Key)
		}
		after := s.Clone()
		Put(after, one.Edits)
		is := glovePlan(t, after)
		require.Equal(t, p.Bridge.HandAfter, is.Bridge.HandAfter)
		require.Equal(t, p.Cuff.CastOn.N, is.Cuff.CastOn.N)
		by := is.Fingers.Each[f].Stitches.N - p.Fingers.Each[f].Stitches.N
		require.GreaterOrEqual(t, by*step, 0, "%v: %d by a step of %d", s, by, step)
		require.LessOrEqual(t, max(by, -by), 4, "%v", s)
		if by != 0 {
			moved++
		}
	}
	t.Logf("%d of %d fingers get another count", moved, cases)
	assert.Greater(t, moved, cases*9/10)
}

// A length that is off on the hand is off no more in a glove begun anew, to half a round,
// or to what whole rounds and the ends of a half finger allow; and only what was looked at
// changes its length.
func TestALengthIsCorrectedByItself(t *testing.T) {
	rng := rand.New(rand.NewPCG(24, 2))
	ends := []string{"full", "half", "open", ""}
	for range testenv.Cases(150, 2_000) {
		s := gloveSheet(rng)
		for _, name := range []string{"index", "middle", "ring", "little", "thumb"} {
			if text := ends[rng.IntN(4)]; text != "" {
				s["fingers."+name] = text
			}
		}
		p := glovePlan(t, s)
		zone := measured[rng.IntN(len(measured)-1)] // the last is a cap
		off := []int{-6, -4, -2, 2, 4, 6}[rng.IntN(6)]
		last := 0
		m := p.Mitt()
		for _, at := range Places(m) {
			if at.Part == stitch.Part(zone) {
				last = at.Round
			}
		}
		seen := gloveReading(t, p, stitch.Part(zone), last, Try{Ends: map[Zone]string{zone: strconv.Itoa(off)}})
		list, err := Correct(seen, s, p)
		require.NoError(t, err)
		require.Len(t, list, 1)
		after := s.Clone()
		Put(after, list[0].Edits)
		is := glovePlan(t, after)
		was, now := roundsOf(m, zone), roundsOf(is.Mitt(), zone)
		wished := was - int(float64(off)*p.Gauge.Rounds+0.5)
		if off < 0 {
			wished = was + int(float64(-off)*p.Gauge.Rounds+0.5)
		}
		require.InDelta(t, max(1, wished), now, 1, "%s of %d rounds, %d mm off: %v, %+v", zone, was, off, s, list[0])
		if list[0].Changes() && (zone.finger() || zone == Thumb) {
			require.Equal(t, p.Bridge.HandAfter, is.Bridge.HandAfter)
			for _, other := range []Zone{Hand, Little, UpperHand, Ring, Middle, Index, Thumb} {
				if other != zone {
					require.Equal(t, roundsOf(m, other), roundsOf(is.Mitt(), other), "%s → %s", zone, other)
				}
			}
		}
	}
}

// roundsOf returns the rounds of a zone that has a part of its name.
func roundsOf(m stitch.Mitt, zone Zone) int {
	if s := m.Section(stitch.Part(zone)); s != nil {
		return len(s.Rounds)
	}
	return 0
}

// What is not knitted yet is refused, and so is a finger that the mitt doesn't have.
func TestFingersThatAreNotThere(t *testing.T) {
	p := glovePlan(t, gloveSheet(rand.New(rand.NewPCG(24, 3))))
	refused := func(p *mitt.Plan, part stitch.Part, try Try) (paths []string) {
		try.Date, try.Side, try.Section, try.Round = "2026-03-01", "right", string(part), "1"
		list := Places(p.Mitt())
		seen, err := try.Read(list, 0, units.MM)
		require.NoError(t, err)
		var faults fault.Fields
		errors.As(seen.CheckZones(list), &faults)
		for _, f := range faults {
			paths = append(paths, f.Path)
		}
		return paths
	}
	early := Try{Feel: map[Zone]string{Little: "1", Index: "1"}, Ends: map[Zone]string{Ring: "-4"}}
	assert.Equal(t, []string{"end.ring", "feel.index"}, refused(p, stitch.Little, early))
	_, adult := adult(t)
	assert.Equal(t, []string{"feel.little", "end.ring", "feel.index"}, refused(adult, stitch.Thumb, early))
	_, faults := Try{Ends: map[Zone]string{Index: "4"}}.Sided(true)
	assert.Equal(t, fault.Fields{{Path: "end.index", Message: `is "4"; choose too long or too short, too`}}, faults)
	sided, faults := Try{Ends: map[Zone]string{Index: "4"}, EndsWays: map[Zone]Way{Index: TooShort}}.Sided(true)
	assert.Empty(t, faults)
	assert.Equal(t, Try{Ends: map[Zone]string{Index: "-4"}}, sided)
}
