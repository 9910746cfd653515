package project

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/repeat"
	"thenar/internal/stitch"
)

// squares is a sample with a motif of 4 stitches and 4 rounds, laid as asked.
func squares(with map[string]string) Document {
	d := Samples()[0]
	d.Sheet["repeats[0].motif"] = "...b/..bc/.bca/bcad"
	for key, text := range with {
		d.Sheet["repeats[0]."+key] = text
	}
	return d
}

// yarnsOf returns the yarns of a round, a letter each, from the left; the main one is a point.
func yarnsOf(g chart.Grid, part stitch.Part, round int) string {
	for _, row := range g.Rows {
		if row.Section != part || row.Round != round {
			continue
		}
		text := ""
		for _, c := range row.Shown() {
			if c.Laid == 0 {
				text += "."
			} else {
				text += c.Yarn
			}
		}
		return text
	}
	return ""
}

// The first sample has 42 stitches, of which 3 lie under the gusset: its motif of 4 stands
// 10 times on them, whatever the gusset does beside it.
func TestMotifsOnAMitt(t *testing.T) {
	for name, c := range map[string]struct {
		with  map[string]string
		side  Side
		came  repeat.Came
		round string // the gusset's 8th
	}{
		"beside the gusset": {nil, Right, repeat.Came{Stitches: 42, Across: 10, After: 2, Rounds: 41, Up: 10, Left: 1}, "adbcadbcadbcadbcadb...........bcadbcadbcadbcadbc"},
		"on the left hand":  {nil, Left, repeat.Came{Stitches: 42, Across: 10, After: 2, Rounds: 41, Up: 10, Left: 1}, "cbdacbdacbdacbdacb...........bdacbdacbdacbdacbda"},
		"through it":        {map[string]string{"gusset": "grow", "set": "centred"}, Right, repeat.Came{Stitches: 42, Across: 10, Before: 1, After: 1, Rounds: 41, Up: 10, Left: 1}, ""},
		"to a multiple":     {map[string]string{"set": "multiple"}, Right, repeat.Came{Stitches: 44, Across: 11, Rounds: 41, Up: 10, Left: 1}, ""},
		"over the back":     {map[string]string{"over": "back", "section": "hand", "set": "centred"}, Right, repeat.Came{Stitches: 20, Across: 5, Rounds: 12, Up: 3}, ""},
		"over the palm":     {map[string]string{"over": "palm", "section": "hand", "set": "centred"}, Right, repeat.Came{Stitches: 19, Across: 4, Before: 2, After: 1, Rounds: 12, Up: 3}, ""},
	} {
		t.Run(name, func(t *testing.T) {
			d := squares(c.with)
			d.Side = c.side
			out, err := NewPlanner().Derive(d, nil)
			require.NoError(t, err)
			assert.Equal(t, c.came, out.Repeats[0].Came)
			if c.round != "" {
				assert.Equal(t, c.round, yarnsOf(out.Charts.Grid(chart.Options{View: chart.TubeView}), stitch.Gusset, 8))
			}
		})
	}
}

// A motif is not laid on what waits on waste yarn, and what is painted by hand lies over it.
func TestStrokesLieOverMotifs(t *testing.T) {
	d := squares(nil)
	at := chart.Anchor{Section: stitch.Hand, Round: 5, Column: "H1"}
	for _, side := range []Side{Right, Left} {
		d.Side = side
		out, err := NewPlanner().Derive(d, chart.Marks{at: {Colour: "d"}})
		require.NoError(t, err)
		for _, row := range out.Charts.Grid(chart.Options{View: chart.TubeView}).Rows {
			for _, c := range row.Cells {
				if c.Op == stitch.Hold {
					assert.Zero(t, c.Laid)
				}
				if row.Section == at.Section && row.Round == at.Round && c.Column == at.Column {
					assert.Equal(t, "d", c.Yarn)
					assert.True(t, c.Painted)
				}
			}
		}
	}
}

// What became of a motif is noted when somebody changes it, and stays when the gauge does, so
// that the difference is told.
func TestWhatAMotifCameTo(t *testing.T) {
	pl := NewPlanner()
	bare := Samples()[0]
	d := pl.Noted(bare, squares(nil))
	assert.Equal(t, "10 across, 10 up, 2 plain, 1 left", d.Sheet["repeats[0].was"])
	other := d
	other.Sheet = d.Sheet.Clone()
	other.Sheet["gauge.swatches[0].stitches"] = "20"
	other = pl.Noted(d, other)
	assert.Equal(t, d.Sheet["repeats[0].was"], other.Sheet["repeats[0].was"], "another gauge notes nothing")
	out, err := pl.Derive(other, nil)
	require.NoError(t, err)
	assert.Regexp(t, `^10 → \d+ times`, out.Repeats[0].Since())
	so := other
	so.Sheet = other.Sheet.Clone()
	delete(so.Sheet, "repeats[0].was")
	so = pl.Noted(other, so)
	out, err = pl.Derive(so, nil)
	require.NoError(t, err)
	assert.Empty(t, out.Repeats[0].Since(), "right so")
}

func TestWordsOfMotifs(t *testing.T) {
	var l Laid
	for want, c := range map[string]repeat.Came{
		"7 times, twice up": {Across: 7, Up: 2},
		"6 times, once up; 5 plain stitches, 3 before and 2 after; 1 round left over":               {Across: 6, Up: 1, Before: 3, After: 2, Left: 1},
		"once, 4 times up; 1 plain stitch at the end; 2 rounds left over":                           {Across: 1, Up: 4, After: 1, Left: 2},
		"twice, 4 times up; 2 plain stitches at the beginning":                                      {Across: 2, Up: 4, Before: 2},
		"4 times, once up; 10 plain stitches, 4 before and 6 after; so set, 1 fewer than have room": {Across: 4, Up: 1, Before: 4, After: 6, Fewer: 1},
		"laid nowhere: it is turned off":                                                            {Nowhere: "it is turned off"},
	} {
		l.Came = c
		assert.Equal(t, want, l.Words("round"))
	}
	l.Cut, l.Came = true, repeat.Came{Across: 7, Up: 2, Left: 1}
	assert.Equal(t, "7 times, twice up; the uppermost is cut after 1 row", l.Words("row"))
	l.Over, l.Came = repeat.Gusset, repeat.Came{Across: 1, Up: 2}
	assert.Equal(t, "in the gusset, twice up", l.Words("round"))
	l.Came.Beside = true
	assert.Equal(t, "in the gusset, twice up; half a stitch off the gusset’s middle", l.Words("round"))
}

// Where the bridge gives the hand another count than it has under the gusset, what the list
// says of that hand is what its rounds show, stitch by stitch.
func TestMotifsAreToldPerStretch(t *testing.T) {
	t.Parallel()
	pl, told := NewPlanner(), 0
	for girth := 150; girth < 250; girth += 4 {
		d := squares(map[string]string{"motif": "bbbbbbba", "set": "multiple"})
		d.Sheet["kind"], d.Sheet["pins.gusset_base"] = "mitten", "4"
		d.Sheet["pins.bridge"] = "2"
		d.Sheet["hand.hand_circumference"] = fmt.Sprintf("%.1f", float64(girth)/10)
		out, err := pl.Derive(d, nil)
		require.NoError(t, err)
		l := out.Repeats[0]
		cells := out.Charts.Dyed(stitch.Hand, 3)
		require.NotNil(t, cells)
		if l.Above == nil {
			assert.Len(t, cells, l.Came.Stitches)
			continue
		}
		told++
		require.NotEqual(t, l.Came.Stitches, len(cells))
		assert.Equal(t, len(cells), l.Above.Stitches)
		seen, plain := make([]int, 8), 0
		for _, c := range cells {
			if c.Laid == 0 {
				plain++
			} else {
				seen[c.Right]++
			}
		}
		assert.Equal(t, slices.Min(seen), l.Above.Whole, "whole ones have all of their stitches")
		assert.Equal(t, plain, l.Above.Plain)
		assert.Contains(t, l.Words("round"), fmt.Sprintf("; after the bridge, on %d stitches, ", len(cells)))
	}
	assert.Positive(t, told)
}

// Moved on beside plain stitches, the first and the last motif are pieces, and the list says
// so; all round, the pieces meet.
func TestPiecesOfMotifsAreTold(t *testing.T) {
	t.Parallel()
	for set, says := range map[string]string{
		"centred":  "9 times and cut at both ends, 10 times up; 2 plain stitches, 1 before and 1 after",
		"multiple": "11 times, 10 times up",
	} {
		out, err := NewPlanner().Derive(squares(map[string]string{"set": set, "offset": "2"}), nil)
		require.NoError(t, err)
		words := out.Repeats[0].Words("round")
		assert.True(t, strings.HasPrefix(words, says), "%s: %s", set, words)
	}
}

// A motif of an odd number of stitches has no middle in a gusset of an even number.
func TestAMotifOffTheGussetsMiddleIsTold(t *testing.T) {
	t.Parallel()
	for motif, off := range map[string]bool{"bbb": true, "bbbb": false} {
		out, err := NewPlanner().Derive(squares(map[string]string{"motif": motif, "over": "gusset", "gusset": "grow"}), nil)
		require.NoError(t, err)
		l := out.Repeats[0]
		off = off == (l.Came.Stitches%2 == 0)
		assert.Equal(t, off, strings.Contains(l.Words("round"), "half a stitch off the gusset’s middle"), "%s on %d", motif, l.Came.Stitches)
	}
}
