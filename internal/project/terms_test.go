package project

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/testenv"
)

// TestPlanSpeaksItsTerms checks that a plan as JSON speaks in the sheet's terms,
// and that its keys stay.
func TestPlanSpeaksItsTerms(t *testing.T) {
	d := Samples()[0]
	pl := NewPlanner()
	for terms, says := range map[string]string{"us": `"from":"the gauge,`, "uk": `"from":"the tension,`} {
		d.Sheet["terms"], d.Sheet["stitch.rib"], d.Sheet["pins.cast_on"] = terms, "1", "28"
		p, err := pl.Plan(d.Sheet)
		require.NoError(t, err)
		raw, err := pl.Report(p, true)
		require.NoError(t, err)
		assert.Contains(t, string(raw), says)
		assert.Contains(t, string(raw), `"gauge":{`)
		for _, w := range p.Warnings {
			if terms == "uk" {
				assert.NotRegexp(t, testenv.OfUS, w.Message)
			} else {
				assert.NotRegexp(t, testenv.OfUK, w.Message)
			}
		}
	}
}

// TestTermsAreUSOrUK checks that another side is refused by its field.
func TestTermsAreUSOrUK(t *testing.T) {
	d := Samples()[0]
	d.Sheet["terms"] = "au"
	_, err := NewPlanner().Plan(d.Sheet)
	assert.Equal(t, fault.Fields{{Path: "terms", Message: `is "au"; write one of: us, uk`}}, err)
}
