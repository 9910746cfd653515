package view

import (
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/mitt"
	"thenar/internal/project"
	"thenar/internal/stitch"
)

// choice returns the answer to a sheet beside the ways to make it, with marks.
func choice(t *testing.T, texts map[string]string, marks chart.Marks) Answer {
	t.Helper()
	d, _ := fitAnswer(t, texts)
	pl := project.NewPlanner()
	out, err := pl.Derive(d, marks)
	require.NoError(t, err)
	out.Thumbs = pl.Thumbs(d, marks, out)
	return NewAnswer(d, out, FitDesk, ChartAsk{}, nil)
}

// Every way that is planned is drawn as this very mitt would be, with its cost in mm and
// in technique; one is chosen. The drawings differ.
func TestThumbsAreDrawn(t *testing.T) {
	a := choice(t, nil, nil)
	doc := parsed(t, thumbsFragment(a))
	ways := doc.Find(".thumb-way")
	require.GreaterOrEqual(t, ways.Length(), 3)
	assert.LessOrEqual(t, ways.Length(), 5)
	drawn := map[string]bool{}
	for i := range ways.Length() {
		way := ways.Eq(i)
		if way.Find("input").Is("[disabled]") {
			assert.NotEmpty(t, way.Find(".costs").Text(), "it says why")
			continue
		}
		svg, err := way.Find(".drawn").Html()
		require.NoError(t, err)
		assert.Contains(t, svg, "<svg")
		drawn[svg] = true
		assert.Regexp(t, `off; stretched by \d+\x{a0}% at most\.`, way.Find(".costs").Text())
	}
	assert.GreaterOrEqual(t, len(drawn), 3, "each has a drawing of its own")
	chosen := doc.Find("input[checked]")
	require.Equal(t, 1, chosen.Length())
	key, _ := chosen.Attr("value")
	assert.Equal(t, "gussetside", key)
	assert.Contains(t, doc.Find("summary").Text(), "Gusset at the side")
	assert.Contains(t, doc.Find(".terms").Text(), "kept by waste yarn", "a word that a way is named by is explained")
}

// Each way writes what chooses it: planned so, it is the one that is chosen, and the
// fixed numbers are as they were.
func TestAChosenThumbIsPlanned(t *testing.T) {
	for _, kind := range []string{"fingerless", "mitten", "mitten_without_thumb"} {
		for _, w := range choice(t, map[string]string{"kind": kind}, nil).Out.Thumbs {
			if w.Plan == nil {
				require.NotEmpty(t, w.Refused)
				continue
			}
			sets, err := url.ParseQuery(setsOf(w))
			require.NoError(t, err)
			texts := map[string]string{"kind": kind, "pins.gusset_base": "3"}
			for path := range sets {
				texts[path] = sets.Get(path)
			}
			for _, now := range choice(t, texts, nil).Out.Thumbs {
				same := now.Construction == w.Construction && now.Place == w.Place
				assert.Equal(t, same, now.Chosen, "%s: %v", kind, texts)
				if same && w.Construction == mitt.ByGusset {
					assert.True(t, now.Plan.Pins.Fixed(mitt.GussetBase))
					assert.Empty(t, now.Unused)
				}
			}
		}
	}
}

// What has no use or place without a thumb is listed before it is chosen: fixed numbers
// and painted marks; at the side and in the palm all of it stays.
func TestLossesAreListed(t *testing.T) {
	marks := chart.Marks{
		{Section: stitch.Gusset, Round: 2, Column: "A1"}: {Colour: chart.ID(1)},
	}
	a := choice(t, map[string]string{"pins.gusset_base": "3", "pins.cast_on": "38"}, marks)
	require.Empty(t, a.Out.Lost)
	for _, w := range a.Out.Thumbs {
		switch w.Construction {
		case mitt.ByGusset:
			assert.Empty(t, (Answer{}).losesWords(w))
		case mitt.NoThumb:
			assert.Equal(t, "No use here for fixed gusset base and 1 mark on the gusset.", (Answer{}).losesWords(w))
		}
	}
	none := choice(t, map[string]string{"pins.gusset_base": "3", mitt.PathConstruction: "none"}, marks)
	doc := parsed(t, thumbsFragment(none))
	assert.Contains(t, doc.Find(".thumb-way:has([checked])").Text(), "No use here for fixed gusset base and 1 mark on the gusset.", "and after it")
	assert.Contains(t, doc.Text(), "is back when you choose the other again")
}

// A flat piece is offered the same ways, each planned in rows, with its costs. An opening
// is then left in the seam, so that nothing is joined again.
func TestAFlatPieceHasTheSameWays(t *testing.T) {
	a := choice(t, map[string]string{mitt.PathFlat: "true"}, nil)
	require.Len(t, a.Out.Thumbs, 5)
	for _, w := range a.Out.Thumbs {
		require.NotNil(t, w.Plan, "%s: %v", w.Construction, w.Refused)
		assert.True(t, w.Plan.Make.Flat)
		assert.NotEmpty(t, a.thumbFit(w))
		assert.Equal(t, w.Construction == mitt.Slit, thumbNamed(w) == inSeam)
	}
	text := parsed(t, thumbsFragment(a)).Text()
	assert.Contains(t, text, "A stretch of the seam stays open")
	assert.NotContains(t, text, "then joined again")
}
