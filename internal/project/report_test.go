package project

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/sheet"
	"thenar/internal/testenv"
)

// Plans of many sheets hold to the documented schema, with and without fit;
// leaving out the fit changes nothing else.
func TestReportHoldsToTheSchema(t *testing.T) {
	s := testenv.Schema(t, "plan.schema.json")
	rng := rand.New(rand.NewPCG(1, 2))
	pl := NewPlanner()
	for i := range 60 {
		sh := sheet.Sheet{
			"kind": []string{"fingerless", "mitten", "mitten_without_thumb"}[i%3], "unit": "mm",
			"gauge.swatches[0].stitches": fmt.Sprint(14 + rng.IntN(26)), "gauge.swatches[0].width": "100",
			"hand.hand_circumference": fmt.Sprint(130 + rng.IntN(120)),
			"pins.cuff_rounds":        []string{"", "9"}[i%2], "schedule.follows": []string{"", "rhythm", "profile"}[i%3],
			"stitch.both_edges": fmt.Sprint(i%5 != 0), "stitch.rib": fmt.Sprint(1 + i%4),
		}
		p, err := pl.Plan(sh)
		require.NoError(t, err)
		var docs [2]map[string]any
		for j, brief := range []bool{false, true} {
			raw, err := pl.Report(p, brief)
			require.NoError(t, err)
			require.NoError(t, testenv.Validate(t, s, raw), "%s", raw)
			require.NoError(t, json.Unmarshal(raw, &docs[j]))
		}
		assert.NotEmpty(t, docs[0]["fit"])
		delete(docs[0], "fit")
		delete(docs[0], "fit_summary")
		assert.Equal(t, docs[0], docs[1])
	}
}
