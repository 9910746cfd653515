package web

import (
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A table of sizes with a count that is fixed for one hand is that of the mitt
// without it, and says so; asked for, the count stands in every row, which
// then says that. What holds for every hand stays either way.
func TestSizesAreNotOneHands(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	a.sample()
	const address = "/mitts/1/sizes?gauge_from=24&gauge_to=24&gauge_step=2"
	sheets := func(r answer) string { return r.doc().Find(".sheets").Text() }
	free := a.get(address)
	assert.Zero(t, free.doc().Find(`[name="keep"]`).Length(), "nothing is fixed, so nothing can be kept")
	save := func(pins map[string]string) {
		form := a.form("/mitts/1")
		for name, text := range pins {
			form.Set("pins."+name, text)
		}
		require.Equal(t, http.StatusSeeOther, a.post("/mitts/1", form).status)
	}
	save(map[string]string{"hand_stitches": "46", "gusset_rounds": "21"})
	got := a.get(address)
	require.Equal(t, http.StatusOK, got.status)
	const said = "Left out: hand stitches 46, gusset rounds 21, fixed for one hand."
	assert.Contains(t, sheets(got), said)
	assert.Equal(t, sheets(free), strings.Replace(sheets(got), said, "", 1), "the same numbers as with nothing fixed")
	kept := a.get(address + "&keep=1")
	assert.Contains(t, sheets(kept), "Kept for every hand: hand stitches 46, gusset rounds 21.")
	assert.Equal(t, 1, kept.doc().Find(`[name="keep"][checked]`).Length())
	assert.NotEqual(t, sheets(free), sheets(kept))

	save(map[string]string{"hand_stitches": "", "gusset_rounds": "", "gusset_base": "5"})
	all := sheets(a.get(address))
	assert.NotContains(t, all, "Left out")
	assert.NotEqual(t, sheets(free), all, "a base holds for every hand")
}
