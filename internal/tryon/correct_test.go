package tryon

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/units"
)

// adult is the second of the three mitts to check by hand: 44 stitches, gusset
// 3 → 15 in 19 rounds, increases in rounds 1, 4 … 16.
func adult(t *testing.T) (sheet.Sheet, *mitt.Plan) {
	t.Helper()
	s := sheet.Sheet{
		"unit": "cm", "hand.hand_circumference": "19", "hand.hand_length": "18", "hand.thumb_circumference": "6.5",
		"gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10", "gauge.swatches[0].rounds": "32",
		"gauge.swatches[0].height": "10", "gauge.swatches[0].washed": "true",
	}
	req, err := s.Request()
	require.NoError(t, err)
	p, err := mitt.New().Plan(req)
	require.NoError(t, err)
	return s, p
}

func corrections(t *testing.T, try Try) map[string]Correction {
	t.Helper()
	s, p := adult(t)
	if try.Section == "" {
		try.Section, try.Round = "gusset", "9"
	}
	try.Date, try.Side = "2026-03-01", "right"
	seen, err := try.Read(Places(p.Mitt()), 0, units.CM)
	require.NoError(t, err)
	list, err := Correct(seen, s, p)
	require.NoError(t, err)
	byKey := map[string]Correction{}
	for _, c := range list {
		byKey[c.Key] = c
	}
	return byKey
}

// The expected numbers are worked out by hand from the plan's own.
func TestCorrectionsByHand(t *testing.T) {
	c := corrections(t, Try{Feel: map[Zone]string{Gusset: "1", Hand: "-2", Parting: "0"}, Base: "4", Top: "-6"})
	assert.NotContains(t, c, "fabric")
	assert.NotContains(t, c, "parting", "it felt right")
	// Half-way up, at round 9, 50 stitches are 208.3 mm on a hand of
	// 190 + 35.75/2 = 207.9; where the thumb parts 56 are 233.3 on 225.8. Above
	// it 44 are 183.3 on 190.
	assert.Equal(t, []Edit{{"ease.gusset", "2.7 %"}, {"ease.palm", "5.9 %"}, {"schedule.follows", "profile"}}, c["gusset"].Edits)
	assert.Equal(t, "+0.2\u00a0%", c["gusset"].Was)
	assert.Equal(t, []Edit{{"ease.hand", "-8.5 %"}}, c["hand"].Edits, "−3.5 %, and two steps of 2.5 less")
	assert.Contains(t, c["hand"].Because, "it is planned 3.5\u00a0% smaller than the hand there and felt much too loose")
	hand := corrections(t, Try{Feel: map[Zone]string{Hand: "1"}})["hand"]
	assert.Equal(t, []Edit{{"ease.hand", "-1.0 %"}, {"ease.palm", "3.4 %"}}, hand.Edits, "where the thumb parts it stays as it is")
	assert.Equal(t, "−8.5\u00a0%", c["hand"].Is)
	thumb := corrections(t, Try{Section: "thumb", Round: "5", Feel: map[Zone]string{Thumb: "2"}})["thumb"]
	// 18 stitches are 75 mm on a thumb of 65: 10 mm of room, and 5 % of 65 mm.
	assert.Equal(t, []Edit{{"ease.thumb_girth_added", "1.32"}}, thumb.Edits)
	// 10 plain rounds are 31.2 mm: 4 less. 19 rounds are 59.4 mm; the base is 4
	// above its place, and the top 6 below: 69.4.
	assert.Equal(t, []Edit{{"worked.base_above", "0.4"}, {"length.cuff_plain", "2.72"}}, c["base"].Edits)
	assert.Equal(t, []Edit{{"hand.gusset_length", "6.93"}}, c["top"].Edits)
	assert.Contains(t, c["top"].Because, "6 mm below")
}

// The measured gauge explains part of what was felt, or all of it: that share is
// not corrected twice.
func TestFeltTightnessThatTheGaugeExplains(t *testing.T) {
	try := Try{Stitches: "20", Width: "8", Rounds: "16", Height: "5", Feel: map[Zone]string{Hand: "1", Cuff: "-1"}}
	c := corrections(t, try)
	require.Contains(t, c, "fabric")
	assert.Equal(t, "24.0 stitches × 32.0 rounds over 10 cm", c["fabric"].Was)
	assert.Contains(t, c["fabric"].Edits, Edit{"gauge.swatches[1].on_needles", "true"})
	assert.Contains(t, c["fabric"].Edits, Edit{"gauge.swatches[1].piece", "try 1"})
	// 25 over 10 cm weigh less than half beside 24: less than 2.1 % narrower.
	assert.Contains(t, c["hand"].Because, "the measured gauge explains")
	assert.Equal(t, "−3\u00a0%", c["hand"].Is, "−3.5\u00a0%, and the half per cent that the gauge leaves")
	assert.Equal(t, "−4.1\u00a0%", c["cuff"].Is, "38 stitches are 0.4\u00a0% more than the wrist, but narrower by 2\u00a0%, and that felt 2.5\u00a0% loose")
	assert.Contains(t, c["cuff"].Because, "and the fabric is 2\u00a0% narrower than planned as it is")
	assert.True(t, c["cuff"].Later)

	try.Stitches = "24" // 30 over 10 cm
	explained := corrections(t, try)["hand"]
	assert.False(t, explained.Changes())
	assert.Contains(t, explained.Because, "the measured gauge explains 2.5\u00a0% of it: nothing more is changed")
}

// A correction so large that the tape probably slipped comes with a doubt.
func TestLargeCorrectionsAreDoubted(t *testing.T) {
	c := corrections(t, Try{Stitches: "18", Width: "4", Base: "-20", Top: "3"})
	assert.Contains(t, c["fabric"].Doubt, "it has 88\u00a0% more stitches than the other")
	assert.Contains(t, c["base"].Doubt, "20 mm is a long way")
	assert.Empty(t, c["top"].Doubt)
	c = corrections(t, Try{Base: "-38", Top: "38"})
	assert.False(t, c["top"].Changes(), "nothing would be left of the gusset")
}
