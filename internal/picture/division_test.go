package picture

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// The drawing has every stitch of palm and back and of the bridges once, and its shares are
// those of the plan.
func TestTheDivisionHasEveryStitch(t *testing.T) {
	for circumference := 130; circumference <= 250; circumference += 20 {
		p := glove(t, circumference, mitt.Make{})
		shares := FingerShares(p.Mitt())
		require.Len(t, shares, 4)
		hand, bridges := 0, 0
		for i, one := range shares {
			of := p.Fingers.Each[3-i]
			assert.Equal(t, []int{of.Palm, of.Back, of.FirstRound}, []int{one.Palm, one.Back, one.Stitches}, "%s", one.Part)
			hand += one.Palm + one.Back
			bridges += one.Cast
			assert.Equal(t, p.Bridge.HandAfter-hand, one.Wait, "%s", one.Part)
		}
		assert.Equal(t, p.Bridge.HandAfter, hand)
		for _, left := range []bool{false, true} {
			for _, letter := range []float64{3.4, 6.2} {
				s := Division(p.Mitt(), DivisionOptions{Left: left, Width: 170, Letter: letter})
				checkTexts(t, s)
				text := svg(t, s)
				assert.Equal(t, hand, strings.Count(text, `class="division-stitch`))
				assert.Equal(t, bridges, strings.Count(text, `class="division-cast"`))
				assert.Contains(t, text, fmt.Sprintf(">%d wait<", shares[0].Wait))
			}
		}
	}
	assert.Nil(t, Division(plan(t, mitt.Mitten, 190).Mitt(), DivisionOptions{Width: 170, Letter: 4}))
}

// The thumb is at the right of a right hand and at the left of a left one, and the way to the
// little finger runs along the palm of the one and the back of the other.
func TestTheDivisionOfTheOtherHand(t *testing.T) {
	var p *mitt.Plan
	var little *stitch.Section
	for circumference := 150; little == nil || little.Shift == little.Across; circumference += 5 { // where the ways differ
		require.Less(t, circumference, 250)
		p = glove(t, circumference, mitt.Make{})
		little = p.Mitt().Section(stitch.Little)
	}
	at := func(left bool) map[string]draw.Item {
		out := map[string]draw.Item{}
		for _, i := range Division(p.Mitt(), DivisionOptions{Left: left, Width: 170, Letter: 4}).Items {
			if i.Kind == draw.TextItem {
				out[i.Text] = i
			}
		}
		return out
	}
	right, left := at(false), at(true)
	assert.Greater(t, right["thumb"].X, right["palm"].X)
	assert.Less(t, left["thumb"].X, left["palm"].X)
	on, across := fmt.Sprintf("knit on %d", little.Shift), fmt.Sprintf("knit on %d", little.Across)
	require.Contains(t, right, on)
	require.Contains(t, left, across)
	assert.Greater(t, right[on].Y, right["palm"].Y)
	assert.Less(t, left[across].Y, left["back"].Y)
}

// As many stitches as lie over the thumb are squares. Those of a thumb in the palm all lie on
// the palm of both hands, as far from its edge as the plan says; those of one at the side lie
// on either side of the side line, where the round begins, in the same places on both hands.
func TestTheDivisionShowsTheThumb(t *testing.T) {
	for _, c := range []struct {
		make mitt.Make
		name string
	}{
		{mitt.Make{}, "side"},
		{mitt.Make{Place: mitt.InPalm}, "palm"},
		{mitt.Make{Construction: mitt.Straight}, "straight"},
	} {
		p := glove(t, 190, c.make)
		m, shares := p.Mitt(), FingerShares(p.Mitt())
		want := m.Section(stitch.Hand).Rounds[0].LeadOut()
		require.Positive(t, want, c.name)
		var places [2][]string
		for hand, left := range []bool{false, true} {
			d := &divided{s: &draw.Scene{Width: 170}, o: DivisionOptions{Left: left, Width: 170, Letter: 3.6}, shares: shares, letter: 3.6}
			d.find(m)
			d.layOut()
			for i := range shares {
				for _, palm := range []bool{true, false} {
					for k, x := range d.stitches(i, palm) {
						if !d.overThumb(i, palm, k) {
							continue
						}
						places[hand] = append(places[hand], fmt.Sprintf("%t %.2f", palm, x))
						if c.name != "side" {
							assert.True(t, palm, "%s, left %t", c.name, left)
						}
					}
				}
			}
			s := Division(m, d.o)
			checkTexts(t, s)
			text := svg(t, s)
			assert.Equal(t, want, strings.Count(text, " over-thumb"), "%s, left %t", c.name, left)
			assert.Equal(t, 1, strings.Count(text, `class="division-begin"`), c.name)
		}
		assert.Len(t, places[0], want, c.name)
		assert.Equal(t, places[0], places[1], "%s: in the same places on both hands", c.name)
	}
}
