package web

import (
	"net/http"
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every desk of a mitt with an opening for the thumb says its rows as rows, and the
// needles tell which side faces.
func TestOpeningOnEveryDesk(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	after, _ := a.get(at).doc().Find(`input[name="after"]`).Attr("value")
	require.Equal(t, http.StatusSeeOther, a.post(at, url.Values{"after": {after}, "kind": {"fingerless"}, "thumb.construction": {"slit"}}).status)
	for _, desk := range []string{"fit", "chart", "pattern", "knit", "try"} {
		require.Equal(t, http.StatusOK, a.get(at+"/desk/"+desk).status, desk)
	}
	assert.Contains(t, a.desk(at, "fit").doc().Find(".summary").Text(), "opening in 16 rows")
	steps := a.get(at + "/desk/pattern").doc().Find(`.step[data-section="opening"]`).Text()
	assert.Contains(t, steps, "Row 2 (wrong side)")
	assert.Contains(t, steps, "Work rows 1–2")
	assert.Contains(t, a.get(at+"/desk/chart").doc().Text(), "wrong-side rows left to right")
	for _, address := range []string{"/print?paper=a4", "/print?paper=letter&large=1", "/tries", "/what-if", "/sheet.json"} {
		require.Equal(t, http.StatusOK, a.get(at+address).status, address)
	}
	needles := a.desk(at, "knit").body
	assert.Contains(t, needles, "Row done: turn")
	assert.Contains(t, needles, "of 16 · opening · wrong side")
}
