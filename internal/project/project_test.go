package project

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
)

// Every sample is at a plan that is sound, on both hands.
func TestSamples(t *testing.T) {
	pl := NewPlanner()
	for _, doc := range Samples() {
		require.NoError(t, doc.Check())
		for _, doc.Side = range []Side{Right, Left} {
			out, err := pl.Derive(doc, nil)
			require.NoError(t, err, doc.Name)
			assert.Empty(t, out.Unsound)
			assert.Empty(t, stitch.Ledger(out.Mitt))
			assert.NotEmpty(t, out.Words)
			assert.NotEmpty(t, out.Reasons)
		}
	}
}

// The left hand is the right one mirrored, strokes and all.
func TestLeftIsMirrored(t *testing.T) {
	doc := Samples()[0]
	marks := chart.Marks{}
	marks.Apply([]chart.Edit{{Section: stitch.Gusset, Round: 2, Column: "A1", Layer: chart.Stitches, Value: "ktbl"}, {Section: stitch.Gusset, Round: 3, Column: "B1", Layer: chart.Stitches, Value: "ssk"}})
	pl := NewPlanner()
	right, err := pl.Derive(doc, marks)
	require.NoError(t, err)
	doc.Side = Left
	left, err := pl.Derive(doc, marks)
	require.NoError(t, err)
	assert.Equal(t, stitch.Mirror(right.Mitt), left.Mitt)
	assert.Equal(t, right.Unsound, left.Unsound)
	assert.NotEmpty(t, left.Unsound, "an ssk more makes its round unsound")
	assert.True(t, left.Charts.Mirrored)
}

func TestDocumentRoundTrip(t *testing.T) {
	doc := Samples()[1]
	raw, err := doc.Encode()
	require.NoError(t, err)
	again, err := Decode(raw)
	require.NoError(t, err)
	assert.Equal(t, doc, again)
	empty, err := Decode([]byte(`{"name":"x"}`))
	require.NoError(t, err)
	assert.NotNil(t, empty.Sheet)
	_, err = Decode([]byte(`[`))
	assert.Error(t, err)
}

func TestCheck(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Document)
		path   string
	}{
		"no name":      {func(d *Document) { d.Name = "  " }, "name"},
		"long name":    {func(d *Document) { d.Name = strings.Repeat("ö", LongestName+1) }, "name"},
		"line break":   {func(d *Document) { d.Name = "a\nb" }, "name"},
		"not text":     {func(d *Document) { d.Name = "\xff" }, "name"},
		"side":         {func(d *Document) { d.Side = "middle" }, "side"},
		"unknown path": {func(d *Document) { d.Sheet["hand.elbow"] = "9" }, "sheet"},
		"long text":    {func(d *Document) { d.Sheet["length.cuff"] = strings.Repeat("9", sheet.LongestText+1) }, "length.cuff"},
		"control":      {func(d *Document) { d.Sheet["length.cuff"] = "3\x07" }, "length.cuff"},
	} {
		t.Run(name, func(t *testing.T) {
			doc := Samples()[0]
			c.change(&doc)
			var fields fault.Fields
			require.ErrorAs(t, doc.Check(), &fields)
			assert.True(t, fields.Has(c.path))
		})
	}
}

// What is wrong with the hand and with the bands of the fit is told at once.
func TestAllFaultsAtOnce(t *testing.T) {
	_, err := NewPlanner().Plan(sheet.Sheet{
		"gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10", "hand.size": "3.3", "fit.tight_above": "-0.5",
	})
	var fields fault.Fields
	require.ErrorAs(t, err, &fields)
	assert.True(t, fields.Has("hand.size"))
	assert.True(t, fields.Has("fit.tight_above"))
}

// A mitten without a thumb is worked alike for both hands, stitch for stitch:
// also where an odd stitch of the hand goes, and the cuff is wider than it.
func TestWithoutAThumbBothHandsAreAlike(t *testing.T) {
	doc := Samples()[1]
	doc.Sheet = doc.Sheet.Clone()
	doc.Sheet["kind"], doc.Sheet["stitch.repeat"] = "mitten_without_thumb", "1"
	doc.Sheet["pins.hand_stitches"], doc.Sheet["pins.cast_on"] = "31", "34"
	var both [2]*Outputs
	for i, side := range []Side{Right, Left} {
		doc.Side = side
		out, err := NewPlanner().Derive(doc, nil)
		require.NoError(t, err)
		assert.Empty(t, out.Unsound)
		assert.Equal(t, chart.TubeView, out.Charts.Views()[0], "there is no gusset")
		both[i] = out
	}
	assert.Equal(t, both[0].Mitt, both[1].Mitt)
	assert.Equal(t, both[0].Words, both[1].Words)
}
