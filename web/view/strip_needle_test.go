package view

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strconv"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/stitch"
)

// loopsIn returns how many loops some paths of a needle have room for: each is as wide as
// its tile.
func loopsIn(t *testing.T, strip *goquery.Selection, paths string) int {
	t.Helper()
	width, err := strconv.ParseFloat(strip.Find("pattern[id^=loop-]").AttrOr("width", ""), 64)
	require.NoError(t, err)
	sum := 0.0
	strip.Find(".on-needle:not([hidden]) " + paths).Each(func(_ int, s *goquery.Selection) {
		for _, run := range strings.Split(s.AttrOr("d", ""), "M")[1:] {
			words := strings.Fields(strings.ReplaceAll(run, "L", " "))
			from, _ := strconv.ParseFloat(words[0], 64)
			to, _ := strconv.ParseFloat(words[2], 64)
			sum += math.Abs(to-from) / width
		}
	})
	return int(math.Round(sum))
}

// Under the whole round lies the needle with as many loops as the round leaves, in their
// yarns; from the division on the thumb's stitches hang below it, on waste yarn. Where
// nothing is on the needle there is none.
func TestTheNeedleHoldsWhatTheRoundLeaves(t *testing.T) {
	marks := chart.Marks{chart.Anchor{Section: stitch.Hand, Round: 3, Column: "H4"}: {Colour: "b"}}
	plain := needlesAt(t, 0, marks)
	for nth, task := range plain.Tasks {
		page := shown(t, NeedlesPage(needlesAt(t, nth, marks)))
		strip := page.Find(`.strip-of:not([hidden])`).Last() // the whole round where there is one
		if !task.OnNeedle {
			assert.Zero(t, strip.Find(".on-needle:not([hidden])").Length(), task.Name)
			assert.False(t, strip.HasClass("with-needle"), task.Name)
			continue
		}
		assert.True(t, strip.HasClass("with-needle"), task.Name)
		require.Equal(t, 1, strip.Find(".on-needle:not([hidden])").Length(), task.Name)
		want := task.After
		if !task.IsRound {
			want = task.Before
		}
		assert.Equal(t, want, loopsIn(t, strip, ".loops:not(.held)"), "%s of the %s", task.Name, task.Part)
		held := 0
		if task.Section == string(stitch.Hand) {
			held = plain.Tasks[nthOf(t, plain, stitch.Hand, 1)].Before - plain.Tasks[nthOf(t, plain, stitch.Hand, 2)].Before + bridged(t)
		}
		assert.Equal(t, held, loopsIn(t, strip, ".loops.held"), "%s of the %s", task.Name, task.Part)
		assert.Equal(t, min(held, 1), strip.Find(".on-needle:not([hidden]) .waste").Length(), task.Name)
	}
	third := shown(t, NeedlesPage(needlesAt(t, nthOf(t, plain, stitch.Hand, 3), marks))).Find(`[data-strip="hand"]`)
	assert.Equal(t, 1, loopsIn(t, third, `[fill="url(#loop-hand-b)"]`), "the painted stitch in its yarn")
}

// bridged returns the number of stitches cast on over the gap of the mitt of needlesAt.
func bridged(t *testing.T) int {
	t.Helper()
	return handAt(t, 0, nil).Out.Plan.Bridge.CastOn
}

// A whole strip is read as XML by the page's script, which is stricter than a page's HTML.
func TestWholeStripsAreWellFormed(t *testing.T) {
	for _, s := range WholeStrips(handAt(t, 0, nil)) {
		d := xml.NewDecoder(strings.NewReader(s.SVG))
		for {
			_, err := d.Token()
			if errors.Is(err, io.EOF) {
				break
			}
			require.NoError(t, err, s.View)
		}
	}
}
