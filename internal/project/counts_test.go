package project

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/mitt"
	"thenar/internal/repeat"
)

// The counts that take a motif whole are multiples of it, each with what a plan that has it
// fixed comes to.
func TestCountsThatTakeAMotif(t *testing.T) {
	pl := NewPlanner()
	d := squares(nil)
	out, err := pl.Derive(d, nil)
	require.NoError(t, err)
	counts := pl.CountsOf(d, out)[0].List
	require.Len(t, counts, 3, "those further off than an inch are another size")
	for i, c := range counts {
		assert.Equal(t, c.Stitches, 4*c.Times)
		assert.Equal(t, 4*(i-1), c.Stitches-counts[1].Stitches)
		fixed := d
		fixed.Sheet = d.Sheet.Clone()
		fixed.Sheet["pins.hand_stitches"] = strconv.Itoa(c.Stitches)
		p, err := pl.Plan(fixed.Effective())
		require.NoError(t, err)
		assert.InDelta(t, p.Residual.Hand, c.Off, 1e-9)
		assert.Equal(t, p.Gusset.Stitches, c.Gusset)
	}
	assert.Less(t, math.Abs(counts[1].Off), 4/out.Plan.Gauge.Stitches, "the nearest is in the middle")
}

// Whatever a motif goes round, what is offered cures it: with the count fixed, or the hand
// kept, no stitch is left over. The hand's multiple is offered for what goes round the hand.
func TestCountsThatAreOfferedCure(t *testing.T) {
	pl := NewPlanner()
	glove := map[string]string{"kind": "glove", "pins.fingers.index.stitches": "14"}
	seen := map[mitt.Number]int{}
	for _, c := range []struct {
		section string
		kept    bool
		sheet   map[string]string
	}{
		{"", true, nil},
		{"cuff_plain", true, nil},
		{"gusset", true, nil},
		{"hand", true, map[string]string{"repeats[1].motif": "bcbcbc", "repeats[1].set": "multiple"}},
		{"hand", false, map[string]string{"pins.hand_stitches": "43"}},
		{"hand", true, map[string]string{"piece.flat": "true"}},
		{"cuff", false, nil},
		{"cuff", false, map[string]string{"pins.cast_on": "38"}},
		{"cuff", false, map[string]string{"piece.flat": "true"}},
		{"thumb", false, nil},
		{"thumb", false, map[string]string{"pins.thumb_stitches": "15"}},
		{"thumb", false, map[string]string{"piece.direction": "down"}},
		{"index", false, glove},
		{"little", false, glove},
		{"ring", false, glove},
	} {
		d := squares(c.sheet)
		for path, text := range c.sheet {
			delete(d.Sheet, "repeats[0]."+path)
			d.Sheet[path] = text
		}
		d.Sheet["repeats[0].section"] = c.section
		out, err := pl.Derive(d, nil)
		require.NoError(t, err, "%s %v", c.section, c.sheet)
		counts := pl.CountsOf(d, out)[0]
		assert.Equal(t, c.kept, counts.Kept != nil, "%s %v", c.section, c.sheet)
		cured := func(path, text string, to WholeCount) {
			with := d
			with.Sheet = d.Sheet.Clone()
			with.Sheet[path] = text
			after, err := pl.Derive(with, nil)
			require.NoError(t, err, "%s=%s", path, text)
			came := after.Repeats[0].Came
			assert.Zero(t, came.Plain(), "%s %v, %s=%s", c.section, c.sheet, path, text)
			assert.Equal(t, to.Times, came.Across, "%s %v, %s=%s", c.section, c.sheet, path, text)
			assert.Equal(t, to.Stitches, after.Plan.Count(to.Number))
			assert.LessOrEqual(t, math.Abs(to.Off), mostOffRound)
			if to.Number != mitt.HandStitches {
				most := mostOffRound * float64(out.Plan.Count(to.Number)) / float64(out.Plan.Body.Stitches.N)
				assert.LessOrEqual(t, math.Abs(to.Off), most, "an inch is too much for a %s", c.section)
			}
			seen[to.Number]++
		}
		for _, one := range counts.List {
			if one.Why == "" && !one.Now {
				cured(one.Number.Path(), strconv.Itoa(one.Stitches), one)
			}
		}
		if counts.Kept != nil {
			cured("repeats[0].set", string(repeat.KeptMultiple), *counts.Kept)
		}
	}
	for _, n := range []mitt.Number{mitt.HandStitches, mitt.CastOn, mitt.ThumbStitches, mitt.OfFinger(mitt.FingerStitches, 0)} {
		assert.Positive(t, seen[n], n)
	}
}
