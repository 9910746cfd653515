package project

import (
	"bytes"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/testenv"
	"thenar/internal/units"
)

// A finger's stitches are its palm, its back and the bridges beside it, as the plan
// prints them: n₂ = h₂ + x₁ + x₂. Another kind has none of the keys.
func TestReportHasTheFingers(t *testing.T) {
	type finger struct {
		Palm, Back, Stitches, Decreases, Rounds int
		Closing                                 *int `json:"closing_rounds"`
		Edging                                  int  `json:"edging_rounds"`
	}
	var doc struct {
		Made      map[string]json.RawMessage
		Fingers   map[string]finger
		Bridges   map[string]int
		Lower     *int               `json:"little_lower_rounds"`
		Top       *struct{}          `json:"top"`
		Residuals map[string]float64 `json:"residuals_mm"`
		Bridge    map[string]int
	}
	planned := func(kind mitt.Kind) {
		t.Helper()
		p, err := mitt.New().Plan(&mitt.Request{
			Kind: kind, Gauge: gauge.Gauge{Stitches: 0.28, Rounds: 0.38, Treated: true}, Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
			Hand: hand.Hand{Circumference: 190 * units.Millimetre},
			Make: mitt.Make{Fingers: [4]mitt.FingerEnd{mitt.HalfFinger, mitt.FullFinger, "", mitt.OpenFinger}},
			Pins: mitt.Pins{Fingers: [4]mitt.FingerPins{{}, {}, {Decreases: mitt.Fix(2)}}},
		})
		require.NoError(t, err)
		raw, err := json.Marshal(reportOf(p))
		require.NoError(t, err)
		doc.Fingers, doc.Bridges, doc.Lower, doc.Residuals, doc.Made = nil, nil, nil, nil, nil
		require.NoError(t, json.Unmarshal(raw, &doc))
	}
	planned(mitt.Glove)
	x := doc.Bridges
	require.Len(t, x, 3)
	all := 0
	for name, bridges := range map[string]int{
		"index": x["index_middle"], "middle": x["index_middle"] + x["middle_ring"], "ring": x["middle_ring"] + x["ring_little"], "little": x["ring_little"],
	} {
		f := doc.Fingers[name]
		assert.Equal(t, f.Palm+f.Back+bridges, f.Stitches, name)
		assert.Contains(t, doc.Residuals, name)
		require.NotNil(t, f.Closing, name)
		closed := name == "middle" || name == "ring"
		assert.Equal(t, closed, *f.Closing > 0, name)
		assert.Equal(t, closed, f.Edging == 0, name)
		all += f.Palm + f.Back
	}
	assert.Equal(t, doc.Bridge["hand_stitches_after"], all)
	assert.Equal(t, 2, doc.Fingers["ring"].Decreases)
	assert.Positive(t, *doc.Lower)
	assert.Nil(t, doc.Top)
	assert.JSONEq(t, `{"index":"half","middle":"full","ring":"full","little":"open","thumb":"full","cap":false,"little_lower":true}`, string(doc.Made["fingers"]))

	planned(mitt.Mitten)
	assert.Empty(t, doc.Fingers)
	assert.Empty(t, doc.Bridges)
	assert.Nil(t, doc.Lower)
	assert.NotContains(t, doc.Made, "fingers")
	assert.Len(t, doc.Residuals, 4)
}

// A glove's plan as it is printed, held by a file: half an index finger, a fixed number,
// measured fingers beside filled ones.
func TestReportOfAGlove(t *testing.T) {
	s := sheet.Sheet{
		"kind": "glove", "unit": "cm", "gauge.swatches[0].stitches": "28", "gauge.swatches[0].width": "10", "gauge.swatches[0].rounds": "38", "gauge.swatches[0].height": "10",
		"gauge.swatches[0].washed": "true", "hand.hand_circumference": "19", "hand.hand_length": "18",
		"hand.fingers.index.girth": "6.2", "hand.crotches.ring_little": "8.9", "fingers.index": "half", "pins.fingers.middle.decreases": "1",
	}
	pl := NewPlanner()
	p, err := pl.Plan(s)
	require.NoError(t, err)
	raw, err := pl.Report(p, false)
	require.NoError(t, err)
	require.NoError(t, testenv.Validate(t, testenv.Schema(t, "plan.schema.json"), raw))
	raw, err = pl.Report(p, true)
	require.NoError(t, err)
	var pretty bytes.Buffer
	require.NoError(t, json.Indent(&pretty, raw, "", " "))
	testenv.Golden(t, "testdata/glove.json", append(pretty.Bytes(), '\n'))
}
