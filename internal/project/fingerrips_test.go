package project

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
	"thenar/internal/units"
)

// A half finger that is too short gets its rounds below the edging, which is undone for it
// and knitted again as wide as before, whether it is bound off or not. The rounds that the
// person asked for are no fault of the plan.
func TestAShortHalfFingerIsRippedBelowItsEdging(t *testing.T) {
	pl := NewPlanner()
	d := outsiders()
	d.Sheet["fingers.index"] = "half"
	p, err := pl.Plan(d.Sheet)
	require.NoError(t, err)
	f := &p.Fingers.Each[hand.Index]
	plain := f.Rounds - f.EdgingRounds
	for _, c := range []struct {
		round int
		ended bool
	}{{f.Rounds, true}, {f.Rounds, false}, {plain + 1, false}, {plain - 2, false}} {
		s := seen(t, tryon.Try{
			Key: "k", Date: "2026-03-01", Side: "right", Section: string(stitch.Index), Round: strconv.Itoa(c.round),
			Ends: map[tryon.Zone]string{tryon.Index: "-6"},
		}, p, units.MM)
		s.Place.Ended = c.ended
		list, err := tryon.Correct(s, d.Sheet, p.Plan)
		require.NoError(t, err)
		require.Equal(t, "14 rounds", list[0].Is)
		out, err := pl.Onward(d, s, Progress{}, list)
		require.NoError(t, err)
		if c.round < plain {
			require.Empty(t, out.Leaves.Lengths, "the cure is no fault")
			require.Empty(t, out.Fingers, "it is not too late")
			require.Nil(t, out.Rip)
			continue
		}
		require.Len(t, out.Fingers, 1, "%+v", c)
		require.Nil(t, out.Rip, "the finger alone serves")
		rip := out.Fingers[0]
		to, is := rip.At, rip.Is
		require.Equal(t, c.round-to.Round, rip.Rounds)
		require.Equal(t, is.Fingers.Each[hand.Index].Rounds-to.Round, rip.Again)
		g := &is.Fingers.Each[hand.Index]
		assert.Equal(t, stitch.Index, to.Part)
		assert.LessOrEqual(t, to.Round, plain)
		assert.Equal(t, []int{14, f.EdgingRounds}, []int{g.Rounds, g.EdgingRounds})
		requireStays(t, p.Mitt(), is.Mitt(), to.Nth, c)
	}
}

// A finger that is knitted too tight is told of among what stays off, to the stitch. What
// was so before the try, and of which nobody spoke, is only counted.
func TestWhatATightFingerLeaves(t *testing.T) {
	pl := NewPlanner()
	d := outsiders()
	p, err := pl.Plan(d.Sheet)
	require.NoError(t, err)
	all, err := allLeft(p)
	require.NoError(t, err)
	s := seen(t, tryon.Try{
		Key: "k", Date: "2026-03-01", Side: "right", Section: "ring", Round: strconv.Itoa(p.Fingers.Each[hand.Ring].Rounds),
		Feel: map[tryon.Zone]string{tryon.Ring: "2"},
	}, p, units.MM)
	list, err := tryon.Correct(s, d.Sheet, p.Plan)
	require.NoError(t, err)
	out, err := pl.Onward(d, s, Progress{}, list)
	require.NoError(t, err)
	require.Len(t, out.Leaves.Girths, 1)
	assert.Equal(t, stitch.Ring, out.Leaves.Girths[0].Section)
	assert.Negative(t, out.Leaves.Girths[0].MM)
	assert.Equal(t, stitch.Gusset, all.Girths[0].Section, "it was planned wide")
	assert.Positive(t, out.Leaves.AsPlanned)
	require.NotNil(t, out.Rip)
	assert.Equal(t, []string{"ring finger"}, out.Rip.Zones)
	for _, w := range out.Is.Warnings {
		assert.NotContains(t, w.Message, "fixed numbers")
	}
}

// A finger that is too loose is ripped to its first round by itself, though others are
// knitted after it, and decreased at its corners: all else stays. One that is too tight
// can't be widened so, since its first round is joined to what came after it.
func TestALooseFingerIsNarrowedAtItsCorners(t *testing.T) {
	pl := NewPlanner()
	d := outsiders()
	p, err := pl.Plan(d.Sheet)
	require.NoError(t, err)
	m := p.Mitt()
	for _, part := range []stitch.Part{stitch.Little, stitch.Ring, stitch.Middle} {
		f, _ := mitt.FingerOf(part)
		for _, step := range []string{"-2", "2"} {
			s := seen(t, tryon.Try{
				Key: "k", Date: "2026-03-01", Side: "right", Section: "thumb", Round: "3", Feel: map[tryon.Zone]string{tryon.Zone(part): step},
			}, p, units.MM)
			list, err := tryon.Correct(s, d.Sheet, p.Plan)
			require.NoError(t, err)
			out, err := pl.Onward(d, s, Progress{}, list)
			require.NoError(t, err)
			if step == "2" {
				require.Empty(t, out.Fingers)
				continue
			}
			require.Len(t, out.Fingers, 1, "%s", part)
			rip := out.Fingers[0]
			is := rip.Is.Mitt()
			require.Empty(t, stitch.Ledger(is))
			require.Empty(t, stitch.Ledger(stitch.Mirror(is)))
			require.Equal(t, 1, rip.To)
			require.Positive(t, rip.Corners)
			require.Contains(t, rip.Line, "at its corners.")
			require.Equal(t, p.Fingers.Each[f].FirstRound-rip.Corners, rip.Is.Fingers.Each[f].Stitches.N)
			for _, at := range tryon.Places(m)[:s.Place.Nth] {
				if at.Part != part || at.Round == 1 {
					require.Equal(t, m.Section(at.Part).Rounds[at.Round-1].Ops, is.Section(at.Part).Rounds[at.Round-1].Ops, "round %d of %s", at.Round, at.Part)
				}
			}
			kept := pl.Keep(rip.Next, []Progress{{Right, rip.Is, rip.At}})
			again, err := pl.Plan(kept.Effective())
			require.NoError(t, err)
			requireStays(t, is, again.Mitt(), rip.At.Nth, part)
		}
	}
}

// outsiders is a glove for a hand whose middle finger is not measured.
func outsiders() Document {
	return Document{Name: "x", Side: Right, Sheet: sheet.Sheet{
		"kind": "glove", "unit": "mm", "hand.hand_circumference": "190", "hand.hand_length": "185",
		"hand.fingers.index.girth": "66", "hand.fingers.index.length": "70", "hand.fingers.ring.girth": "62", "hand.fingers.ring.length": "72",
		"hand.fingers.little.girth": "54", "hand.fingers.little.length": "56",
		"gauge.swatches[0].stitches": "28", "gauge.swatches[0].width": "100", "gauge.swatches[0].rounds": "38", "gauge.swatches[0].height": "100",
		"gauge.swatches[0].washed": "true",
	}}
}
