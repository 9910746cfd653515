package project

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/grade"
	"thenar/internal/testenv"
)

// A graded design holds to its documented schema, each of its plans to that of
// plans; a size that can't be made says why, and the same design gives the same bytes.
func TestSizesHoldToTheSchema(t *testing.T) {
	plans, sizes := testenv.Schema(t, "plan.schema.json"), testenv.Schema(t, "sizes.schema.json")
	for name, text := range map[string]string{
		"mitten": `{"format": "thenar/design@1", "sheet": {"kind": "mitten", "gauge": {"swatches": [{"stitches": 28, "width": 10}]}}, "sizes": [
			{"name": "S", "hand": {"hand_circumference": 17}}, {"name": "L", "hand": {"hand_circumference": 21}}, {"name": "M", "hand": {"hand_circumference": 19}}]}`,
		"glove": `{"format": "thenar/design@1", "sheet": {"kind": "glove", "gauge": {"swatches": [{"stitches": 30, "width": 10}]}}, "sizes": [
			{"name": "7", "hand": {"size": 7}}, {"name": "8", "hand": {"size": 8}}]}`,
		"no thumb": `{"format": "thenar/design@1", "sheet": {"kind": "mitten_without_thumb", "gauge": {"swatches": [{"stitches": 20, "width": 10}]}}, "sizes": [
			{"name": "baby", "hand": {"hand_circumference": 11}}, {"name": "giant", "hand": {"hand_circumference": 90}}]}`,
		"impossible": `{"format": "thenar/design@1", "sheet": {"gauge": {"swatches": [{"stitches": 24, "width": 10}]}}, "pins": {"M": {"hand_stitches": 44, "held": 44}}, "sizes": [
			{"name": "S", "hand": {"hand_circumference": 17}}, {"name": "M", "hand": {"hand_circumference": 19}}]}`,
	} {
		d, err := grade.ParseDesign([]byte(text))
		require.NoError(t, err, name)
		g, err := grade.Grade(t.Context(), d)
		require.NoError(t, err, name)
		raw, err := NewPlanner().AppendSizes(nil, g)
		require.NoError(t, err, name)
		require.NoError(t, testenv.Validate(t, sizes, raw), "%s: %s", name, raw)
		var doc struct {
			Sizes []struct {
				Name   string
				Cannot []string
				Plan   json.RawMessage
			}
		}
		require.NoError(t, json.Unmarshal(raw, &doc))
		for i, s := range doc.Sizes {
			require.Equal(t, s.Cannot == nil, string(s.Plan) != "null", "%s %s", name, s.Name)
			if s.Cannot == nil {
				require.NoError(t, testenv.Validate(t, plans, s.Plan), "%s: %s", name, s.Plan)
			}
			require.Equal(t, name == "impossible" && i == 1, s.Cannot != nil, "%s %v", name, s.Cannot)
		}
		again, err := NewPlanner().AppendSizes(nil, g)
		require.NoError(t, err)
		require.Equal(t, raw, again)
		if name == "mitten" {
			require.Equal(t, []string{"S", "M", "L"}, []string{doc.Sizes[0].Name, doc.Sizes[1].Name, doc.Sizes[2].Name}, "in order of the hands")
		}
	}
}
