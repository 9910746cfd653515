package web

import (
	"net/http"
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The hand that is chosen where the mitt is knitted or tried is the one that every desk shows.
func TestTheHandGoesFromDeskToDesk(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	mitt := a.sample()
	shown := func(desk string) string {
		t.Helper()
		return a.get(mitt + "/desk/" + desk).doc().Find(`.bar .sides [aria-pressed="true"]`).Text()
	}
	for _, from := range []string{"knit", "try"} {
		for _, side := range []string{"left", "right"} {
			form := a.get(mitt + "/desk/" + from).doc().Find(`.bar .sides form`).First()
			sent := url.Values{"side": {side}, "to": {form.Find(`[name="to"]`).AttrOr("value", "")}}
			got := a.post(form.AttrOr("action", ""), sent)
			require.Equal(t, http.StatusSeeOther, got.status, got.body)
			assert.Equal(t, mitt+"/desk/"+from+"?side="+side, got.header.Get("Location"))
			for _, desk := range []string{"fit", "chart", "pattern", "knit", "try"} {
				assert.Equal(t, side+" hand", shown(desk), "%s, chosen at %s", desk, from)
			}
		}
	}
	assert.Equal(t, http.StatusBadRequest, a.post(mitt+"/hand", url.Values{"side": {"both"}}).status)
}
