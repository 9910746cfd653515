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
			"kind": []string{"fingerless", "mitten", "mitten_without_thumb", "glove"}[i%4], "unit": "mm",
			"gauge.swatches[0].stitches": fmt.Sprint(14 + rng.IntN(26)), "gauge.swatches[0].width": "100",
			"hand.hand_circumference": fmt.Sprint(130 + rng.IntN(120)), "fingers.index": []string{"", "half", "open"}[i%3],
			"pins.cuff_rounds": []string{"", "9"}[i%2], "schedule.follows": []string{"", "rhythm", "profile"}[i%3],
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

// The plan names how the mitt is made under the keys of the sheet: the usual ways
// written out, what was chosen as chosen, and nothing that it has no use for.
func TestReportNamesHowItIsMade(t *testing.T) {
	s := testenv.Schema(t, "plan.schema.json")
	pl := NewPlanner()
	for _, c := range []struct {
		texts map[string]string
		made  string
	}{
		{
			map[string]string{"thumb.construction": "straight", "thumb.increase": "lifted", "kind": "mitten"},
			`{"thumb":{"construction":"straight","place":"side","inset":1},"piece":{"direction":"up","flat":false},"cuff":{"kind":"rib","knits":1,"purls":1},"top":{"kind":"rounded"}}`,
		},
		{map[string]string{}, `{"thumb":{"construction":"gusset","place":"side","increase":"m1"},"piece":{"direction":"up","flat":false},"cuff":{"kind":"rib","knits":1,"purls":1},"stitch":{"both_edges":true}}`},
		{
			map[string]string{"thumb.place": "palm", "thumb.increase": "lifted", "cuff.knits": "3", "cuff.purls": "1", "stitch.both_edges": "false"},
			`{"thumb":{"construction":"gusset","place":"palm","inset":3,"increase":"lifted"},"piece":{"direction":"up","flat":false},"cuff":{"kind":"rib","knits":3,"purls":1},"stitch":{"both_edges":false}}`,
		},
		{
			map[string]string{"kind": "mitten", "cuff.kind": "hem", "cuff.depth": "1", "top.kind": "wedges", "top.band": "2"},
			`{"thumb":{"construction":"gusset","place":"side","increase":"m1"},"piece":{"direction":"up","flat":false},"cuff":{"kind":"hem","folded_rounds":3},"top":{"kind":"wedges","wedges":4},"stitch":{"both_edges":true}}`,
		},
		{
			map[string]string{"cuff.kind": "gauntlet", "cuff.upper_girth": "22"},
			`{"thumb":{"construction":"gusset","place":"side","increase":"m1"},"piece":{"direction":"up","flat":false},"cuff":{"kind":"gauntlet","upper_girth_mm":220},"stitch":{"both_edges":true}}`,
		},
		{map[string]string{"thumb.construction": "none"}, `{"thumb":{"construction":"none"},"piece":{"direction":"up","flat":false},"cuff":{"kind":"rib","knits":1,"purls":1}}`},
		{map[string]string{"kind": "mitten_without_thumb", "thumb.increase": "kfb", "top.kind": "banded"}, `{"thumb":{"construction":"none"},"piece":{"direction":"up","flat":false},"cuff":{"kind":"rib","knits":1,"purls":1},"top":{"kind":"banded","band":3}}`},
	} {
		sh := sheet.Sheet{"gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10", "gauge.swatches[0].rounds": "32", "gauge.swatches[0].height": "10", "hand.hand_circumference": "19"}
		for path, text := range c.texts {
			sh[path] = text
		}
		p, err := pl.Plan(sh)
		require.NoError(t, err)
		raw, err := pl.Report(p, true)
		require.NoError(t, err)
		require.NoError(t, testenv.Validate(t, s, raw))
		var doc struct{ Made json.RawMessage }
		require.NoError(t, json.Unmarshal(raw, &doc))
		assert.Equal(t, c.made, string(doc.Made))
	}
}
