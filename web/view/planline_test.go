package view

import (
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every number in a line that sums up the plan leads to its place on the
// ladder, on Fit and on the other desks, with a thumb and without.
func TestEveryNumberOfThePlansLineLeadsToTheLadder(t *testing.T) {
	for name, of := range map[string]struct {
		texts map[string]string
		line  string
	}{
		"with a thumb":    {nil, "cast on 36 · hand 42 · gusset 3→15 in 18 · thumb 18"},
		"without a thumb": {map[string]string{"kind": "mitten_without_thumb"}, "cast on 36 · hand 56 · top in 18 rounds"},
		"on waste yarn":   {map[string]string{"kind": "mitten", "thumb.construction": "straight"}, "cast on 36 · hand 46 · with waste yarn 9 · thumb 18"},
		"a wristlet":      {map[string]string{"kind": "fingerless", "thumb.construction": "none"}, "cast on 36 · hand 42 · 22 rounds"},
	} {
		t.Run(name, func(t *testing.T) {
			d, a := fitAnswer(t, of.texts)
			require.NotNil(t, a.Out)
			m := Mitt{ID: 7, Doc: d, Answer: a, Desk: FitDesk}
			ladder := parsed(t, benchFragment(a))
			at := parsed(t, bar(m.Bar()))
			assert.Equal(t, of.line, at.Find(".plan-line").Text())
			links := at.Find(".plan-line a").AddSelection(parsed(t, planFragment(a)).Find(".summary a"))
			assert.Greater(t, links.Length(), 5)
			links.Each(func(_ int, link *goquery.Selection) {
				_, id, _ := strings.Cut(link.AttrOr("href", ""), "#")
				number := ladder.Find(`[id="` + id + `"]`)
				assert.Equal(t, 1, number.Length(), "%s leads to %s", link.Text(), id)
				assert.NotZero(t, number.Find("input[data-keep]").Length(), "where it can be typed over")
			})
			assert.Equal(t, "/mitts/7/desk/fit#at-cast_on", at.Find(".plan-line a").First().AttrOr("href", ""))
		})
	}
}

// Beside the form stands the way to the plan, at its top and above its foot, as
// soon as there is one. The boxes of fixed numbers show what the plan takes.
func TestTheFormLeadsToThePlan(t *testing.T) {
	d, a := fitAnswer(t, nil)
	doc := parsed(t, FitPage(Mitt{ID: 7, Doc: d, Answer: a, Desk: FitDesk}))
	assert.Equal(t, 2, doc.Find(`.to-plan a[href="#ladder"][data-opens]`).Length())
	assert.Equal(t, "Your plan: cast on 36 · hand 42 · gusset 3→15 in 18 · thumb 18", doc.Find(".drawer > .to-plan").Text())
	assert.Equal(t, 1, doc.Find("#ladder").Length())
	assert.Equal(t, 1, doc.Find(`form a[href="#ladder"]`).Length(), "so does the note on fixed numbers")
	box := doc.Find(`input[name="pins.hand_stitches"]`)
	assert.Equal(t, "42", box.AttrOr("placeholder", ""))
	assert.Empty(t, box.AttrOr("value", ""))
	assert.Equal(t, "42", a.state().Planned["pins.hand_stitches"])

	d, a = fitAnswer(t, map[string]string{"hand.hand_circumference": ""})
	doc = parsed(t, FitPage(Mitt{ID: 7, Doc: d, Answer: a, Desk: FitDesk}))
	assert.Empty(t, doc.Find(".to-plan a").Nodes, "there is no plan yet")
}
