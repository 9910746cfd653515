package app

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// The report with its yarn keeps its schema, known or open; the amount is that worked out by
// hand: 1,280 loops of √(21.6/0.0768) mm, 9 widths of 40 stitches and two ends of 200 mm.
func TestYarnOfATextKeepsItsSchema(t *testing.T) {
	schema := testenv.Schema(t, "check.schema.json")
	at := Measures{Stitches: "24", Rounds: "32", BallGrams: "50", BallMetres: "175"}
	for text, open := range map[string]string{
		"CO 40 sts.\nRnds 1–32: Knit.\nBO all 40 sts.":                      "",
		"CO 40 sts.\nRnds 1–32: Knit.\nRnd 33: Flurb.\nBO all 40 sts.":      "not everything was counted",
		"CO 40 sts.\nKnit every rnd until it is long enough.\nBO all sts.":  "some rounds are told by length only",
		"CO 40 sts.\nRnds 1–30: Knit.\nWork even for 6 mm.\nBO all 40 sts.": "",
	} {
		c, err := CheckMeasured(text, at)
		require.NoError(t, err)
		raw, err := json.Marshal(c.JSON())
		require.NoError(t, err)
		require.NoError(t, testenv.Validate(t, schema, raw), "%s", raw)
		require.Len(t, c.Yarn, 1)
		assert.Equal(t, open, c.Yarn[0].Open, text)
		if open == "" {
			assert.InDelta(t, 1280*16.7705+9*40/.24+400, c.Yarn[0].One.Mean, 1, text)
			assert.InDelta(t, 2*c.Yarn[0].One.Mean, c.Yarn[0].Pair.Mean, 1e-6)
		}
	}
}
