package project

import (
	"maps"
	"reflect"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
)

// From one kind to another and back: nothing is deleted, the list names exactly what is out of
// use, before the change as after it, and all comes back (our own promise, no source).
func TestWhatLosesItsUseComesBack(t *testing.T) {
	pl := NewPlanner()
	palm := mitt.OfFinger(mitt.FingerPalm, hand.Index)
	onTop := chart.Anchor{Section: stitch.Top, Round: 1, Column: "H3"}
	onIndex := chart.Anchor{Section: stitch.Index, Round: 2}
	for _, c := range []struct {
		kind, other mitt.Kind
		texts       map[string]string
		told        []tryon.Zone
		at          chart.Anchor
		want        Idle
	}{
		{
			kind: mitt.Mitten, other: mitt.Glove,
			texts: map[string]string{mitt.TopRounds.Path(): "12", mitt.CastOn.Path(): "36", mitt.PathTop: "banded", mitt.PathBand: "2"},
			at:    onTop,
			want:  Idle{Unused: []mitt.Number{mitt.TopRounds}, Choices: []string{"how the top is closed", "the stitches of a band"}},
		},
		{
			kind: mitt.Glove, other: mitt.Mitten,
			texts: map[string]string{palm.Path(): "6", mitt.CastOn.Path(): "36", "fingers.index": "half", "fingers.middle": "half", "fingers.ring": "half", "fingers.little": "half", mitt.PathCap: "true"},
			told:  []tryon.Zone{tryon.Hand, tryon.Index, tryon.Thumb},
			at:    onIndex,
			want:  Idle{Unused: []mitt.Number{palm}, Choices: []string{"how far the fingers are covered", "a cap over the fingers"}, Told: []tryon.Zone{tryon.Index}},
		},
		{
			kind: mitt.Mitten, other: mitt.Thumbless,
			texts: map[string]string{mitt.GussetBase.Path(): "3", mitt.CastOn.Path(): "36", mitt.PathIncrease: "lifted"},
			told:  []tryon.Zone{tryon.Hand, tryon.Thumb},
			at:    chart.Anchor{Section: stitch.Gusset, Round: 2, Column: "A1"},
			want:  Idle{Unused: []mitt.Number{mitt.GussetBase}, Choices: []string{"how the gusset grows"}, Told: []tryon.Zone{tryon.Thumb}},
		},
	} {
		d := Samples()[0]
		d.Sheet = d.Sheet.Clone()
		d.Sheet[sheet.PathKind] = string(c.kind)
		maps.Copy(d.Sheet, c.texts)
		plain, err := pl.Derive(d, nil)
		require.NoError(t, err)
		if c.at.Column == "" {
			c.at.Column = firstColumn(t, plain, c.at)
		}
		marks := chart.Marks{c.at: {Colour: chart.ID(1)}}
		c.want.Lost = marks.Edits()
		show := func(kind mitt.Kind) *Outputs {
			d.Sheet = d.Sheet.Clone()
			d.Sheet[sheet.PathKind] = string(kind)
			out, err := pl.Derive(d, marks)
			require.NoError(t, err)
			out.Told = c.told
			out.Kinds, out.Thumbs = pl.Kinds(d, marks, out), pl.Thumbs(d, marks, out)
			return out
		}
		was := show(c.kind)
		assert.Zero(t, Now(was.Kinds).Count(), "%s: %v", c.kind, Now(was.Kinds).Idle)
		assert.Nil(t, was.Back())
		for _, w := range append(was.Kinds, was.Thumbs...) {
			if w.Kind == c.other || c.other == mitt.Thumbless && w.Construction == mitt.NoThumb {
				assert.Equal(t, c.want, w.Idle, "before: %s to %s", c.kind, c.other)
			}
		}
		is := show(c.other)
		assert.Equal(t, c.want, Now(is.Kinds).Idle, "after: %s to %s", c.kind, c.other)
		back := is.Back()
		require.NotNil(t, back)
		assert.Zero(t, back.Count())
		for _, s := range back.Sets {
			d.Sheet.Put(s.Path, s.Text)
		}
		for path, text := range c.texts {
			assert.Equal(t, text, d.Sheet.Given(path))
		}
		again := show(mitt.Kind(d.Sheet.Given(sheet.PathKind)))
		assert.Zero(t, Now(again.Kinds).Count())
		assert.Equal(t, c.kind, again.Plan.Kind)
		assert.True(t, reflect.DeepEqual(was.Mitt, again.Mitt), "%s: every round is as it was", c.kind)
		assert.Equal(t, was.Charts.Shares(), again.Charts.Shares(), "what was painted is back")
	}
}

// firstColumn returns the name of a cell in a round of the chart.
func firstColumn(t *testing.T, out *Outputs, at chart.Anchor) string {
	t.Helper()
	for _, v := range out.Charts.Views() {
		for _, row := range out.Grid(chart.Options{View: v}).Rows {
			if row.Section == at.Section && row.Round == at.Round {
				return row.Cells[0].Column
			}
		}
	}
	require.Fail(t, "no such round")
	return ""
}
