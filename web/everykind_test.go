package web

import (
	"net/http"
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Every desk, and what follows a typed number, is there for mitts that are made in other
// ways: a wristlet, with and without its own cuff, a mitten without a thumb, gauntlets, a glove.
func TestEveryDeskOfOtherMitts(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	for _, texts := range []string{
		"thumb.construction=none", "thumb.construction=none&cuff.kind=gauntlet", "thumb.construction=none&pins.cuff_rounds=0",
		"kind=mitten&thumb.construction=none", "kind=mitten&cuff.kind=gauntlet", "thumb.place=palm", "cuff.kind=gauntlet&cuff.upper_girth=24", "kind=glove&fingers.index=open&fingers.thumb=half",
	} {
		mitt := a.sample()
		form, _ := url.ParseQuery("after=1&" + texts)
		assert.Equal(t, http.StatusSeeOther, a.post(mitt, form).status, texts)
		for _, desk := range deskNames {
			assert.Equal(t, http.StatusOK, a.get(mitt+"/desk/"+desk).status, "%s of %s", desk, texts)
			form.Set("after", "2")
			assert.Equal(t, http.StatusOK, a.post(mitt+"/preview?desk="+desk, form).status, "%s of %s, typed", desk, texts)
		}
		for _, path := range []string{"/what-if", "/history", "/words.txt", "/chart.svg", "/strips"} {
			assert.Equal(t, http.StatusOK, a.get(mitt+path).status, "%s of %s", path, texts)
		}
		form = url.Values{"side": {"right"}, "nth": {"12"}}
		a.post(mitt+"/needles", form)
		for _, desk := range deskNames {
			assert.Equal(t, http.StatusOK, a.get(mitt+"/desk/"+desk).status, "%s of %s on the needles", desk, texts)
		}
	}
	assert.Equal(t, http.StatusOK, a.get("/").status)
}
