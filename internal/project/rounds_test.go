package project

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/stitch"
)

// carry puts the edits of a change into the document and the marks.
func carry(t *testing.T, d Document, marks chart.Marks, edits []chart.Edit) (Document, chart.Marks) {
	t.Helper()
	raw, err := d.Encode()
	require.NoError(t, err)
	raw, inverse, err := Rewrite(raw, chart.OfSheet(edits))
	require.NoError(t, err)
	after, err := Decode(raw)
	require.NoError(t, err)
	back, _, err := Rewrite(raw, inverse)
	require.NoError(t, err)
	first, _ := d.Encode()
	require.JSONEq(t, string(first), string(back), "the inverse takes it back")
	now := chart.Marks{}
	now.Apply(marks.Edits())
	now.Apply(edits)
	return after, now
}

// Wherever a round goes in, comes out, or an increase moves on the sample
// mitts: either the plan is the old one with exactly that change, and every
// mark stays on its stitch, or it is refused with a reason.
func TestReshapeKeepsTheRestStill(t *testing.T) {
	pl := NewPlanner()
	done := map[chart.ChangeKind]int{}
	for _, d := range Samples() {
		before, err := pl.Plan(d.Sheet)
		require.NoError(t, err)
		for _, s := range before.Mitt().Sections {
			for r := 1; r <= len(s.Rounds); r++ {
				marks := chart.Marks{}
				above := chart.Edit{Section: s.Part, Round: r + 1, Column: "H1", Layer: chart.Colours, Value: "b"}
				marks.Apply([]chart.Edit{above})
				for _, kind := range []chart.ChangeKind{chart.Insert, chart.Remove, chart.Move} {
					c := chart.Change{Kind: kind, Section: s.Part, Round: r, To: r + 1}
					edits, err := pl.Reshape(d, marks, c)
					if err != nil {
						assert.Equal(t, fault.Invalid, fault.KindOf(err))
						continue
					}
					done[kind]++
					after, now := carry(t, d, marks, edits)
					plan, err := pl.Plan(after.Sheet)
					require.NoError(t, err)
					require.Empty(t, stitch.Ledger(plan.Mitt()))
					step := map[chart.ChangeKind]int{chart.Insert: 1, chart.Remove: -1}[kind]
					assert.Len(t, plan.Mitt().Section(s.Part).Rounds, len(s.Rounds)+step)
					above.Round = r + 1 + step
					assert.Contains(t, now, above.Anchor(), "%v", c)
				}
			}
		}
	}
	for kind, n := range done {
		t.Logf("%s: %d done", kind, n)
		assert.Greater(t, n, 5)
	}
}

// An increase goes to another round and is fixed there; what can't be is told
// in words.
func TestMoveAnIncrease(t *testing.T) {
	pl := NewPlanner()
	d := Samples()[0]
	plan, err := pl.Plan(d.Sheet)
	require.NoError(t, err)
	list := plan.Gusset.IncreaseRounds
	marks := chart.Marks{}
	painted := chart.Edit{Section: stitch.Gusset, Round: list[2], Column: "A3", Layer: chart.Colours, Value: "b"}
	plain := chart.Edit{Section: stitch.Gusset, Round: list[2], Column: "B2", Layer: chart.Colours, Value: "b"}
	marks.Apply([]chart.Edit{painted, plain})
	edits, err := pl.Reshape(d, marks, chart.Change{Kind: chart.Move, Section: stitch.Gusset, Round: list[2], To: list[2] + 1})
	require.NoError(t, err)
	after, now := carry(t, d, marks, edits)
	painted.Round++
	assert.Equal(t, []chart.Edit{plain, painted}, now.Edits(), "what is painted on the increase goes along, the base stays")
	moved, err := pl.Plan(after.Sheet)
	require.NoError(t, err)
	want := append([]int(nil), list...)
	want[2]++
	assert.Equal(t, want, moved.Gusset.IncreaseRounds)
	for says, c := range map[string]chart.Change{
		"no increase to move":    {Kind: chart.Move, Section: stitch.Gusset, Round: 2, To: 3},
		"between its neighbours": {Kind: chart.Move, Section: stitch.Gusset, Round: list[1], To: list[2]},
		"its increases stay":     {Kind: chart.Move, Section: stitch.Gusset, Round: list[len(list)-1], To: 99},
		"has no round 99":        {Kind: chart.Insert, Section: stitch.Gusset, Round: 99},
		"needs. Move":            {Kind: chart.Remove, Section: stitch.Gusset, Round: list[1]},
	} {
		_, err := pl.Reshape(d, nil, c)
		assert.ErrorContains(t, err, says)
	}
}

// Bringing a moment back is the difference of two documents.
func TestDocumentDifference(t *testing.T) {
	a, b := Samples()[0], Samples()[1]
	edits := a.Difference(b)
	after, _ := carry(t, a, chart.Marks{}, edits)
	assert.Equal(t, b.Sheet, after.Sheet)
	assert.Equal(t, b.Side, after.Side)
	assert.Equal(t, a.Name, after.Name)
	assert.Empty(t, after.Difference(b))
}
