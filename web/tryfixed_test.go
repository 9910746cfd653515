package web

import (
	"net/http"
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What a try suggests is not taken for as close as it goes while fixed numbers
// keep it from being taken.
func TestFixedNumbersHoldATry(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	require.Equal(t, http.StatusSeeOther, a.post(at, url.Values{"after": {"1"}, "pins.cast_on": {"38"}, "pins.gusset_rounds": {"20"}, "pins.increase_rounds": {"1, 4, 7, 10, 13, 16"}}).status)
	made := a.post(at+"/tries", tryOn(map[string]string{"feel.gusset": "2"}))
	require.Equal(t, http.StatusSeeOther, made.status, made.body)
	page := a.get(made.header.Get("Location")).doc()
	text := page.Find("#answer-form").Text()
	assert.Contains(t, text, "Nothing changes while “increase rounds” is fixed.", "the others may stay")
	assert.NotContains(t, text, "as close as whole stitches allow")
	assert.NotContains(t, text, "go on as planned")

	free := page.Find("button.free")
	freed := a.get(free.AttrOr("formaction", "") + "?free=" + url.QueryEscape(free.AttrOr("value", ""))).doc()
	assert.Zero(t, freed.Find("button.free").Length())
	assert.Contains(t, freed.Find(".freed").Text(), "Let go of “increase rounds”")
	form := url.Values{"how": {"on"}, "key": {"v"}}
	for _, name := range []string{"after", "free"} {
		form.Set(name, freed.Find(`#answer-form [name="`+name+`"]`).AttrOr("value", ""))
	}
	require.Equal(t, http.StatusSeeOther, a.post(made.header.Get("Location"), form).status)
	sheet := a.get(at + "/sheet.json").body
	assert.Regexp(t, `"pins": \{\s*"cast_on": 38,\s*"gusset_rounds": 20\s*\}`, sheet, "what does not stand in the way stays fixed")
}

// Rounds that an open try says are knitted stay when a fixed number is let go
// of; and the answer lets go of what stands in its way in one press.
func TestLettingGoKeepsWhatATrySaw(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	require.Equal(t, http.StatusSeeOther, a.post(at, url.Values{"after": {"1"}, "pins.hand_stitches": {"42"}, "pins.gusset_rounds": {"21"}, "pins.held": {"15"}}).status)
	made := a.post(at+"/tries", tryOn(map[string]string{"section": "gusset", "round": "21", "feel.hand": "", "feel.gusset": "2"}))
	require.Equal(t, http.StatusSeeOther, made.status, made.body)
	try := made.header.Get("Location")
	require.Equal(t, http.StatusSeeOther, a.post(at, url.Values{"after": {a.desk(at, "fit").doc().Find(`#measure-form [name="after"]`).AttrOr("value", "")}, "set": {"pins.gusset_rounds="}}).status)
	assert.Contains(t, a.desk(at, "fit").doc().Find("[data-fragment=line]").Text(), "in 21", "it is said to be knitted")
	require.Equal(t, http.StatusOK, a.get(try).status)
}

// A noted try that no longer fits the plan shows its form again, with what was
// typed and the message at its field, within the mitt's bar.
func TestTryThatNoLongerFits(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	require.Equal(t, http.StatusSeeOther, a.post(at, url.Values{"after": {"1"}, "pins.gusset_rounds": {"21"}}).status)
	made := a.post(at+"/tries", tryOn(map[string]string{"section": "gusset", "round": "21", "feel.gusset": "2", "note": "pulls at the seam"}))
	require.Equal(t, http.StatusSeeOther, made.status, made.body)
	try := made.header.Get("Location")
	// The count at the needles, noted later, says that less is knitted.
	require.Equal(t, http.StatusOK, a.stroke(at+"/needles", `{"key":"c","side":"right","section":"gusset","round":6}`).status)
	require.Equal(t, http.StatusSeeOther, a.post(at, url.Values{"after": {a.desk(at, "fit").doc().Find(`#measure-form [name="after"]`).AttrOr("value", "")}, "set": {"pins.gusset_rounds="}}).status)
	again := a.get(try)
	require.Equal(t, http.StatusConflict, again.status)
	page := again.doc()
	assert.Equal(t, 1, page.Find(".desk-tape").Length(), "the mitt's bar")
	assert.Contains(t, page.Find(`[data-fault="round"]`).Text(), "write the last round that is knitted")
	assert.Equal(t, "21", page.Find(`input[name="round"]`).AttrOr("value", ""))
	assert.Equal(t, "pulls at the seam", page.Find("textarea").Text())
	assert.Equal(t, 1, page.Find(`[name="feel.gusset"][value="2"][checked]`).Length())

	form := tryOn(map[string]string{"section": "gusset", "round": "6", "feel.gusset": "2", "note": "pulls at the seam"})
	for _, name := range []string{"key", "instead"} {
		form.Set(name, page.Find(`[name="`+name+`"]`).AttrOr("value", ""))
	}
	mended := a.post(at+"/tries", form)
	require.Equal(t, http.StatusSeeOther, mended.status, mended.body)
	assert.NotEqual(t, try, mended.header.Get("Location"))
	require.Equal(t, http.StatusOK, a.get(mended.header.Get("Location")).status)
	assert.Equal(t, 1, a.get(at+"/tries").doc().Find("details > .moments > li").Length(), "the earlier note is put away")
	gone := a.get(at + "/tries/99")
	assert.Equal(t, http.StatusNotFound, gone.status)
	assert.Equal(t, at+"/desk/try", gone.doc().Find("main a").AttrOr("href", ""), "a failure keeps the bar and the way back")
}
