package project

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/fault"
)

// The texts of a pattern are bounded, and a fault names the one that it is about.
func TestCheckPatternTexts(t *testing.T) {
	good := PatternTexts{
		PatternTitle: "Ear", PatternStory: "One.\n\nTwo.", PatternWording: "both", PatternHands: "both", PatternTold: "rounds",
		"line gusset/increase/1": "Grow to {to stitches}.", "after hand/take-off/1": "Rest.", "was after hand/take-off/1": "x", "photo 1": "x", "caption 20": "Here",
	}
	var faults fault.Fields
	good.Check(&faults)
	require.Empty(t, faults)
	many := PatternTexts{}
	for i := range MostPatternTexts + 1 {
		many[fmt.Sprintf("line a/%d", i)] = "x"
	}
	long := PatternTexts{}
	for i := range 31 {
		long[fmt.Sprintf("line a/%d", i)] = strings.Repeat("ö", LongestSentence)
	}
	for path, bad := range map[string]PatternTexts{
		"pattern":      {"colour": "red"},
		"title":        {PatternTitle: "two\nlines"},
		"about":        {PatternAbout: strings.Repeat("ö", 201)},
		"line a/1":     {"line a/1": strings.Repeat("ö", LongestSentence+1)},
		"after a/1":    {"after a/1": "a\x07"},
		"story":        {PatternStory: "a\x00"},
		"wording":      {PatternWording: "long"},
		"designer":     {PatternDesigner: "\xff"},
		"caption 2":    {"caption 2": "a\tb"},
		"pattern ":     {"line ": "x"},
		"pattern  ":    {"photo 0": "x"},
		"pattern   ":   {"line A B": "x"},
		"pattern    ":  many,
		"pattern     ": long,
	} {
		faults = nil
		bad.Check(&faults)
		require.Len(t, faults, 1, "%s: %v", path, faults)
		assert.True(t, faults.Has(strings.TrimRight(path, " ")), "%s: %v", path, faults)
		doc := New("x")
		doc.Pattern = bad
		assert.Error(t, doc.Check())
	}
}

// A pattern's texts are stored, and edits of them are applied and taken back.
func TestPatternTextsAreEdited(t *testing.T) {
	doc := New("x")
	raw, err := doc.Encode()
	require.NoError(t, err)
	assert.NotContains(t, string(raw), "pattern")
	to := PatternTexts{PatternTitle: "Ear", "line cuff/cast-on/1": "Begin.", PatternNotes: "a\nb"}
	edits := doc.Pattern.Difference(to)
	require.Len(t, edits, 3)
	changed, inverse, err := Rewrite(raw, edits)
	require.NoError(t, err)
	now, err := Decode(changed)
	require.NoError(t, err)
	assert.Equal(t, to, now.Pattern)
	back, _, err := Rewrite(changed, inverse)
	require.NoError(t, err)
	was, err := Decode(back)
	require.NoError(t, err)
	assert.Empty(t, was.Pattern)
	assert.NotEmpty(t, to["title"], "the texts that were edited from stay as they were")
	_, _, err = Rewrite(raw, []chart.Edit{{Layer: chart.Sheet, Column: "pattern.colour", Value: "red"}})
	assert.Error(t, err)
}
