package web

import (
	"context"
	"net/http"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/store"
)

// putBack makes a backup and gives what puts it back.
func putBack(t *testing.T, st *store.Store) func() {
	t.Helper()
	backup := filepath.Join(t.TempDir(), "backup.db")
	require.NoError(t, st.Backup(t.Context(), backup))
	state, err := st.State(t.Context())
	require.NoError(t, err)
	return func() {
		t.Helper()
		_, err := store.Restore(t.Context(), state.Path, backup)
		require.NoError(t, err)
	}
}

// A page from before a backup was put back saves nothing over what was decided
// since, though the revision has the same number.
func TestPageFromBeforeARestore(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	back := putBack(t, a.store)
	girth := func(text string) answer {
		form := a.form(at)
		form.Set("hand.hand_circumference", text)
		return a.post(at, form)
	}
	require.Equal(t, http.StatusSeeOther, girth("20").status)
	old := a.form(at)
	back()
	require.Equal(t, http.StatusSeeOther, girth("21").status)
	require.Equal(t, old.Get("after"), a.form(at).Get("after"))
	old.Set("hand.thumb_circumference", "7")
	asked := a.post(at, old)
	assert.Equal(t, http.StatusConflict, asked.status)
	assert.Contains(t, asked.doc().Find(".versions").Text(), "21")
	assert.Equal(t, "21", a.form(at).Get("hand.hand_circumference"))
	assert.Equal(t, http.StatusSeeOther, a.post(at, asked.form()).status, "it is saved where a person decides so")
	assert.Equal(t, "20", a.form(at).Get("hand.hand_circumference"))

	resp := a.get(at + "/chart/events?after=2&restored=" + old.Get("restored"))
	assert.Contains(t, resp.body, "event: restored\n")
	old.Set("restored", "soon")
	assert.Equal(t, http.StatusBadRequest, a.post(at, old).status)
}

// A page that stands open is made anew where a backup is put back, unless
// something was typed into it.
func TestOpenPageHearsOfARestore(t *testing.T) {
	t.Parallel()
	st, url := serveApp(t)
	b := newBrowserAt(t, url)
	sampled(b)
	girth := `document.getElementById("field-hand.hand_circumference").value`
	first := eval[string](b, girth)
	back := putBack(t, st)
	b.write("hand.hand_circumference", "21")
	b.until(`document.getElementById("saved").dataset.state === "saved"`)
	_, err := chromedp.RunResponse(b.ctx, chromedp.Func(func(context.Context, *chromedp.Target) error { back(); return nil }))
	require.NoError(t, err)
	b.until(girth + ` === "` + first + `"`)

	b.serverAway()
	b.write("hand.hand_circumference", "22")
	b.until(`document.getElementById("saved").textContent.includes("no connection")`)
	back()
	b.serverBack()
	b.until(`document.querySelector("#saved button") !== null`)
	b.expectRefusal()
	assert.Equal(t, "22", eval[string](b, girth))
	m, err := st.Load(context.Background(), 1)
	require.NoError(t, err)
	assert.False(t, strings.Contains(string(m.Document), `"22"`))
}
