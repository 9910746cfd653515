package view

import (
	"maps"
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

// baby is a hand for which no glove is made.
var baby = map[string]string{"hand.hand_circumference": "11", "hand.hand_length": "8", "hand.wrist_circumference": "", "hand.thumb_circumference": ""}

// kindsOf returns the answer to a sheet beside the kinds that it may be, with their keys.
func kindsOf(t *testing.T, texts map[string]string) (a Answer, keys []string) {
	t.Helper()
	d, _ := fitAnswer(t, texts)
	pl := project.NewPlanner()
	out, err := pl.Derive(d, nil)
	require.NoError(t, err)
	out.Kinds = pl.Kinds(d, nil, out)
	a = NewAnswer(d, out, FitDesk, ChartAsk{}, nil)
	for _, c := range a.kinds() {
		assert.True(t, c.Picture != nil || c.Refused != "", c.Key)
		if c.Chosen {
			c.Key += " chosen"
		}
		keys = append(keys, c.Key)
	}
	return a, keys
}

// Every kind that this hand can have is drawn and planned.
func TestKindsAreDrawn(t *testing.T) {
	for kind, want := range map[string][]string{
		"fingerless":           {"fingerless chosen", "mitten", "glove"},
		"mitten":               {"fingerless", "mitten chosen", "glove"},
		"mitten_without_thumb": {"fingerless", "mitten chosen", "glove"},
		"glove":                {"fingerless", "mitten", "glove chosen"},
	} {
		_, keys := kindsOf(t, map[string]string{"kind": kind})
		assert.Equal(t, want, keys)
	}
	a, _ := kindsOf(t, map[string]string{"kind": "mitten", mitt.PathDirection: "down"})
	text := parsed(t, kindsFragment(a)).Text()
	assert.Contains(t, text, "Begun is at the fingertips, but a glove is worked from the cuff to its fingers; choose at the cuff.", "why it can’t be")
	a, _ = kindsOf(t, map[string]string{"kind": "fingerless", mitt.PathConstruction: "none"})
	assert.Equal(t, []string{"wristlet", "mitten without a thumb", "glove"}, []string{a.kinds()[0].Name, a.kinds()[1].Name, a.kinds()[2].Name})
}

// In place of a glove, a baby's hand is offered what is usual for it. The form's list
// leaves the glove out, too, with the caution beside it.
func TestABabyIsOfferedAMittenWithoutAThumb(t *testing.T) {
	for kind, want := range map[string][]string{
		"fingerless":           {"fingerless chosen", "mitten", "mitten_without_thumb"},
		"mitten":               {"fingerless", "mitten chosen", "mitten_without_thumb"},
		"mitten_without_thumb": {"fingerless", "mitten", "mitten_without_thumb chosen"},
	} {
		texts := maps.Clone(baby)
		texts["kind"] = kind
		a, keys := kindsOf(t, texts)
		assert.Equal(t, want, keys)
		assert.Equal(t, []string{"glove"}, a.named(groups[0], groups[0].Fields[0]).Without)
		assert.Equal(t, []string{"glove"}, a.allCalled()["kind"].Without)
		assert.Contains(t, parsed(t, warnings(a)).Text(), "For a baby or small child")
	}
	texts := maps.Clone(baby)
	texts["kind"], texts[mitt.PathConstruction] = "mitten", "none"
	a, keys := kindsOf(t, texts)
	assert.Equal(t, []string{"fingerless", "mitten", "mitten_without_thumb chosen"}, keys)
	assert.Equal(t, "mitten", a.kinds()[1].Name, "with a thumb again")
	a, _ = kindsOf(t, nil)
	assert.Empty(t, a.named(groups[0], groups[0].Fields[0]).Without)
}

// What loses its use is told at each kind before it is chosen, and in a list after it, with a
// press that goes back. The plan's own sentences of it don't say it twice.
func TestWhatLosesItsUseIsListed(t *testing.T) {
	_, keys := kindsOf(t, nil)
	assert.Len(t, keys, 3)
	texts := map[string]string{"kind": "glove", "pins.fingers.index.palm": "6", mitt.PathLower: "false"}
	a, _ := kindsOf(t, texts)
	assert.Equal(t, "No use here for fixed index finger, of the palm and that the fingers part at one height.", a.kinds()[1].Loses)
	assert.Empty(t, a.kinds()[2].Loses)
	assert.Empty(t, parsed(t, idleFragment(a)).Find("#idle").Nodes)
	texts["kind"] = "mitten"
	a, _ = kindsOf(t, texts)
	doc := parsed(t, planFragment(a))
	list := doc.Find("#idle")
	assert.Contains(t, list.Text(), "this mitten has no use for these")
	assert.Equal(t, 2, list.Find("li").Length())
	assert.Contains(t, list.Text(), "Fixed: index finger, of the palm, 6")
	assert.Contains(t, list.Text(), "That the fingers part at one height")
	assert.Equal(t, 1, list.Find(`[name="set"][value="kind=glove"]`).Length())
	assert.Equal(t, 1, list.Find(`[name="set"][value="pins.fingers.index.palm="]`).Length())
	assert.Empty(t, doc.Find(`[data-code$="without_effect"]`).Nodes)
}
