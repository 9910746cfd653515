package project

import (
	"encoding/json"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/mitt"
	"thenar/internal/sheet"
)

// reported is what a plan's JSON has at a place such as "cuff.cast_on".
func reported(t *testing.T, doc map[string]any, place string) any {
	t.Helper()
	section, key, ok := strings.Cut(place, ".")
	require.True(t, ok, "%s is no place in a plan", place)
	inside, _ := doc[section].(map[string]any)
	return inside[key]
}

// A plan's JSON has every number of the table in its place; those that say when
// the gusset increases stand in its list of increase rounds. What is fixed
// stands under pins by its path.
func TestEveryNumberIsInThePlansJSON(t *testing.T) {
	seen := map[mitt.Number]bool{}
	pl := NewPlanner()
	for _, kind := range []mitt.Kind{mitt.Fingerless, mitt.Mitten, mitt.Thumbless} {
		s := sheet.Sheet{
			"kind": string(kind), "unit": "mm", "hand.hand_circumference": "190", "gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "100",
		}
		free, err := pl.Plan(s)
		require.NoError(t, err)
		for _, n := range mitt.Fixable() {
			if free.Number(n) == "" {
				continue
			}
			seen[n] = true
			fixed := s.Clone()
			fixed[n.Path()] = free.Number(n)
			p, err := pl.Plan(fixed)
			require.NoError(t, err, "%s", n)
			raw, err := pl.Report(p, true)
			require.NoError(t, err)
			var doc map[string]any
			require.NoError(t, json.Unmarshal(raw, &doc))
			switch v := reported(t, doc, n.Reason()).(type) {
			case float64:
				assert.InDelta(t, free.Count(n), v, 0, "%s", n)
			case []any:
				assert.Len(t, v, free.Count(n), "%s", n)
			default:
				assert.GreaterOrEqual(t, n.Measure(), mitt.AtRounds, "%s is not in the plan's JSON at %s", n, n.Reason())
			}
			pins, _ := doc["pins"].([]any)
			require.Len(t, pins, 1, "%s", n)
			assert.Equal(t, n.Path(), pins[0].(map[string]any)["field"])
		}
	}
	for _, n := range mitt.Fixable() {
		assert.True(t, seen[n] || !(mitt.Names{Kind: mitt.Mitten}).Has(n) && (mitt.Names{Kind: mitt.Glove, Make: mitt.Make{Cap: true}}).Has(n), "%s", n)
	}
}
