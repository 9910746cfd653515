package view

import (
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/project"
	"thenar/internal/stitch"
)

// On Pattern the words say the colours, explain each term of the trade
// where it is first used, and can be put into the terms of the other side.
func TestPatternWords(t *testing.T) {
	doc := sampleWith("terms", "uk")
	marks := chart.Marks{{Section: stitch.Hand, Round: 2, Column: "H3"}: {Colour: "b"}}
	out, err := project.NewPlanner().Derive(doc, marks)
	require.NoError(t, err)
	words := parsed(t, patternWords(Answer{Out: out, Side: doc.Side, Fit: "/mitts/3/desk/fit"}))

	said := words.Find(`[data-section=hand][data-from="2"]`).Text()
	assert.Contains(t, said, " k1 rust")
	assert.Contains(t, words.Text(), "Yarns: main colour, rust. Where no yarn is named")
	terms := words.Find("details.term > summary").Map(func(_ int, s *goquery.Selection) string { return strings.ToLower(s.Text()) })
	assert.Contains(t, terms, "cast off", "in the terms of the side")
	assert.Subset(t, terms, []string{"tail", "m1l", "m1r", "gusset"})
	seen := map[string]bool{}
	for _, term := range terms {
		assert.False(t, seen[term], "%s is explained twice", term)
		seen[term] = true
	}
	assert.Equal(t, "Words of the left hand side=left", words.Find(".other-words button").Text()+" "+words.Find(".other-words button").AttrOr("value", ""), "where the other hand has words of its own")
	assert.Equal(t, "UK terms: cast off", words.Find(`[role=group] button[aria-pressed="true"]`).Text())
	assert.Equal(t, "terms=us", words.Find(`[role=group] button[aria-pressed="false"]`).AttrOr("value", ""))
}
