package project

import (
	"maps"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Rows of a flat mitt, and of an opening, go in and come out in pairs: wherever two are put
// in, the part has two rows more and still begins on the right side, every mark above moves
// along by two, and taking the two out again gives the first plan back. Only what would
// change more than that is refused.
func TestRowsGoInAndComeOutInPairs(t *testing.T) {
	pl := NewPlanner()
	for name, sets := range map[string]map[string]string{
		"flat":          {mitt.PathFlat: "true"},
		"flat mitten":   {mitt.PathFlat: "true", "kind": "mitten"},
		"flat, yo":      {mitt.PathFlat: "true", mitt.PathIncrease: "yo_closed"},
		"flat, fixed":   {mitt.PathFlat: "true", "pins.rhythm": "2"},
		"slit":          {mitt.PathConstruction: "slit"},
		"flat wristlet": {mitt.PathFlat: "true", mitt.PathConstruction: "none"},
	} {
		d := Samples()[0]
		d.Sheet = d.Sheet.Clone()
		maps.Copy(d.Sheet, sets)
		before, err := pl.Plan(d.Sheet)
		require.NoError(t, err, name)
		in, out := map[stitch.Part]int{}, map[stitch.Part]int{}
		for _, s := range before.Mitt().Sections {
			if s.Noun() != "row" {
				continue
			}
			for r := 1; r <= len(s.Rounds); r++ {
				marks := chart.Marks{}
				marks.Apply([]chart.Edit{{Section: s.Part, Round: r/2*2 + 3, Column: "H1", Layer: chart.Colours, Value: "b"}})
				edits, err := pl.Reshape(d, marks, chart.Change{Kind: chart.Insert, Section: s.Part, Round: r})
				if err != nil {
					assert.Equal(t, fault.Invalid, fault.KindOf(err))
					continue
				}
				in[s.Part]++
				after, now := carry(t, d, marks, edits)
				more, err := pl.Plan(after.Sheet)
				require.NoError(t, err, "%s, %s %d", name, s.Part, r)
				require.Empty(t, stitch.Ledger(more.Mitt()))
				part := more.Mitt().Section(s.Part)
				assert.Len(t, part.Rounds, len(s.Rounds)+2)
				assert.Equal(t, stitch.RightSide, part.Rounds[0].Side)
				pair := (r - 1) / 2 * 2
				mark, moved := now[chart.Anchor{Section: s.Part, Round: pair + 3 + 2, Column: "H1"}]
				if r%2 == 1 {
					assert.True(t, moved && mark.Colour == "b", "%s, %s %d: the mark goes along", name, s.Part, r)
				}
				back, err := pl.Reshape(after, now, chart.Change{Kind: chart.Remove, Section: s.Part, Round: pair + 3})
				require.NoError(t, err, "%s, %s %d", name, s.Part, r)
				again, marked := carry(t, after, now, back)
				first, err := pl.Plan(again.Sheet)
				require.NoError(t, err)
				assert.Zero(t, Differing(before.Mitt(), first.Mitt()).Count()+Differing(first.Mitt(), before.Mitt()).Count(), "%s, %s %d: as it was", name, s.Part, r)
				assert.Len(t, marked, 1)
				out[s.Part]++
			}
		}
		for _, s := range before.Mitt().Sections {
			if s.Noun() == "row" && s.Part != stitch.Top {
				assert.Positive(t, in[s.Part], "%s: nowhere in the %s", name, s.Part)
				assert.Equal(t, in[s.Part], out[s.Part], "%s: %s", name, s.Part)
			}
		}
	}
}

// In a flat gusset two rows go in at every row, also where it grows: what is above goes up
// by two, its increases with it.
func TestTwoRowsGoInAnywhereInAFlatGusset(t *testing.T) {
	pl := NewPlanner()
	d := Samples()[0]
	d.Sheet = d.Sheet.Clone()
	d.Sheet[mitt.PathFlat] = "true"
	p, err := pl.Plan(d.Sheet)
	require.NoError(t, err)
	grows := p.Gusset.IncreaseRounds
	for r := 1; r <= p.Gusset.Rounds.N; r++ {
		edits, err := pl.Reshape(d, nil, chart.Change{Kind: chart.Insert, Section: stitch.Gusset, Round: r})
		require.NoError(t, err, "row %d", r)
		after, _ := carry(t, d, chart.Marks{}, edits)
		now, err := pl.Plan(after.Sheet)
		require.NoError(t, err)
		last := (r-1)/2*2 + 2
		for i, at := range grows {
			if at > last {
				at += 2
			}
			assert.Equal(t, at, now.Gusset.IncreaseRounds[i], "row %d: increase %s", r, strconv.Itoa(i))
		}
	}
	_, err = pl.Reshape(d, nil, chart.Change{Kind: chart.Remove, Section: stitch.Gusset, Round: grows[0]})
	assert.ErrorContains(t, err, "change the stitches. Rows come out two by two")
	_, err = pl.Reshape(d, nil, chart.Change{Kind: chart.Move, Section: stitch.Gusset, Round: grows[len(grows)-1], To: grows[len(grows)-1] + 1})
	assert.Error(t, err, "only the right side grows")
}
