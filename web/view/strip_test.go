package view

import (
	"fmt"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/stitch"
)

// rowsIn returns what a strip draws in each row that has a stitch.
func rowsIn(strip *goquery.Selection) map[string][]string {
	rows := map[string][]string{}
	strip.Find("[data-row]").Each(func(_ int, s *goquery.Selection) {
		html, _ := goquery.OuterHtml(s) // of a node that was parsed
		rows[s.AttrOr("data-row", "")] = append(rows[s.AttrOr("data-row", "")], html)
	})
	return rows
}

// The page holds the rows about the present round, each as the whole chart has
// it and in the same place; its other strips are empty.
func TestPageHoldsTheRowsAboutTheRound(t *testing.T) {
	marks := chart.Marks{chart.Anchor{Section: stitch.Gusset, Round: 8, Column: "A1"}: {Colour: "b"}}
	nth := nthOf(t, needlesAt(t, 0, nil), stitch.Gusset, 8)
	n, whole := needlesAt(t, nth, marks), WholeStrips(handAt(t, nth, marks))
	page := shown(t, NeedlesPage(n))
	data := page.Find("#strips").Text()
	require.Len(t, whole, len(n.Strips))
	on := 0
	for i, s := range n.Strips {
		all, err := goquery.NewDocumentFromReader(strings.NewReader(whole[i].SVG))
		require.NoError(t, err)
		want := rowsIn(all.Selection)
		assert.Len(t, want, s.Rows, s.View)
		assert.Equal(t, []int{1, s.Rows}, []int{whole[i].From, whole[i].To}, s.View)
		assert.Equal(t, 1, all.Find(".now").Length(), "to be lit by the script")
		place := page.Find(`[data-strip="` + s.View + `"]`)
		if s.On == "" {
			assert.Zero(t, place.Children().Length(), s.View)
			assert.NotContains(t, data, `"view":"`+s.View+`"`)
			continue
		}
		on++
		assert.Equal(t, []float64{whole[i].Width, whole[i].Bottom, whole[i].CellHeight}, []float64{s.Width, s.Bottom, s.CellHeight}, s.View)
		assert.Contains(t, data, fmt.Sprintf(`"from":%d,"to":%d`, s.From, s.To))
		got := rowsIn(place)
		assert.Len(t, got, s.To-s.From+1, s.View)
		assert.Len(t, got, stripRows+2*moreRows, s.View)
		for row, html := range got {
			assert.Equal(t, want[row], html, "row %s of the %s", row, s.View)
		}
	}
	assert.Equal(t, 2, on, "the gusset's and the whole round's")
}

// A strip shows rows that the page holds, wherever the work stands.
func TestEveryRoundHasItsStrip(t *testing.T) {
	hand := handAt(t, 0, nil)
	for hand.Done = range len(needlesAt(t, 0, nil).Tasks) + 1 {
		n := NewNeedles(hand)
		on := 0
		for _, s := range n.Strips {
			if s.On == "" {
				continue
			}
			on++
			for row := max(s.From, 1); row <= s.To; row++ {
				if low, high := s.window(row); low >= s.From && high <= s.To {
					on += 10
					break
				}
			}
		}
		assert.Contains(t, []int{11, 22}, on, "%d done", hand.Done)
	}
}

// Coloured stitches of a strip are filled with a tile of knitting that lies on
// its cells; what has no colour stays plain. The page and what comes after it
// draw the same.
func TestStripsAreKnitted(t *testing.T) {
	marks := chart.Marks{chart.Anchor{Section: stitch.Gusset, Round: 8, Column: "A1"}: {Colour: "b"}}
	nth := nthOf(t, needlesAt(t, 0, nil), stitch.Gusset, 8)
	strip := shown(t, NeedlesPage(needlesAt(t, nth, marks))).Find(`[data-strip="gusset"]`)
	tile := strip.Find("svg > pattern[id=knit-gusset-b]")
	require.Equal(t, 1, tile.Length())
	assert.Equal(t, 4, tile.Find("path").Length(), "the furrow, and three stitches")
	assert.Equal(t, 1, strip.Find(`[data-row] .yarn-b[fill="url(#knit-gusset-b)"]`).Length())
	assert.Equal(t, 0, strip.Find(`.ground[fill^="url"]`).Length(), "undyed")
	for _, s := range WholeStrips(handAt(t, nth, marks)) {
		if s.View == "gusset" {
			assert.Contains(t, s.SVG, `<pattern id="knit-gusset-b" x="`+tile.AttrOr("x", "")+`" y="`)
		}
	}
}
