package web

import (
	"net/http"
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A finger of a glove that felt tight is told first, with the caution. One that is too
// short can be ripped back by itself while the work is at the thumb: the count stays there,
// and the finger has more rounds from then on.
func TestOneFingerOfAGloveIsRippedBack(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	after := a.get(at+"/desk/fit").doc().Find(`[name="after"]`).AttrOr("value", "")
	require.Equal(t, http.StatusSeeOther, a.post(at, url.Values{"after": {after}, "kind": {"glove"}}).status)
	require.Equal(t, http.StatusOK, a.stroke(at+"/needles", `{"key":"a","side":"right","section":"thumb","round":3}`).status)
	made := a.post(at+"/tries", tryOn(map[string]string{
		"section": "thumb", "round": "3", "ways": "1", "end.ring": "5", "end.ring_way": "short", "feel.cuff": "1", "feel.middle": "1",
	}))
	require.Equal(t, http.StatusSeeOther, made.status, made.body)
	page := a.get(made.header.Get("Location")).doc()
	assert.Contains(t, page.Find(".correction").First().Text(), "girth of the middle finger")
	assert.Contains(t, page.Find(".correction").First().Find(".caution-first").Text(), "Tingling")

	keep := url.Values{"keep": {"end.ring"}, "offered": {"end.ring", "middle", "cuff"}}
	page = a.get(made.header.Get("Location") + "?" + keep.Encode()).doc()
	button := page.Find(`button[value="rip ring"]`)
	require.Equal(t, 1, button.Length(), page.Find(".roads").Text())
	assert.Regexp(t, `^Ring finger alone: rip back \d+ rounds?, to round \d+\. Knit it again, \d+ rounds in all\.$`, button.Parent().Find("p").First().Text())
	rounds := func() string { return a.get(at + "/desk/try").doc().Find(`#try-section option[value="ring"]`).Text() }
	before := rounds()
	form := url.Values{"how": {"rip ring"}, "key": {"v"}, "after": {page.Find(`[name="after"]`).AttrOr("value", "")}, "keep": keep["keep"], "offered": keep["offered"]}
	answered := a.post(made.header.Get("Location"), form)
	require.Equal(t, http.StatusSeeOther, answered.status, answered.body)
	assert.NotEqual(t, before, rounds())
	tried := a.get(at + "/desk/try").doc()
	assert.Equal(t, "thumb", tried.Find("#try-section [selected]").AttrOr("value", ""), "the count stays at the thumb")
	assert.Equal(t, "3", tried.Find("#try-round").AttrOr("value", ""))
	assert.Contains(t, tried.Text(), "Ring finger alone")
	first := a.get(at + "/desk/knit?side=right").doc().Find("[data-first]").Text()
	assert.Contains(t, first, "Before you go on, the ring finger alone: undo its end, and ravel")
	assert.Contains(t, first, "Then go on where you were.")
	form.Set("key", "w")
	form.Set("how", "rip little")
	assert.NotEqual(t, http.StatusSeeOther, a.post(made.header.Get("Location"), form).status, "it is not offered")
}

// A cap over half fingers is asked about once it is begun. One that felt tight is told first,
// with the caution, and is ripped back to where it was picked up; one that is too long gets
// fewer rounds from where it is.
func TestACapIsTriedOn(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	after := a.get(at+"/desk/fit").doc().Find(`[name="after"]`).AttrOr("value", "")
	sets := url.Values{"after": {after}, "kind": {"glove"}, "fingers.cap": {"true"}}
	for _, finger := range []string{"index", "middle", "ring", "little"} {
		sets.Set("fingers."+finger, "half")
	}
	require.Equal(t, http.StatusSeeOther, a.post(at, sets).status)
	early := a.post(at+"/tries", tryOn(map[string]string{"section": "thumb", "round": "3", "ways": "1", "feel.cap": "1"}))
	assert.Equal(t, http.StatusBadRequest, early.status)
	assert.Contains(t, early.doc().Find(`[data-fault="feel.cap"]`).Text(), "not knitted yet")
	require.Equal(t, http.StatusOK, a.stroke(at+"/needles", `{"key":"a","side":"right","section":"cap","round":12}`).status)
	made := a.post(at+"/tries", tryOn(map[string]string{
		"section": "cap", "round": "12", "ways": "1", "feel.cap": "1", "end.cap": "9", "end.cap_way": "long", "feel.cuff": "1",
	}))
	require.Equal(t, http.StatusSeeOther, made.status, made.body)
	page := a.get(made.header.Get("Location")).doc()
	assert.Contains(t, page.Find(".correction").First().Text(), "room in the cap")
	assert.Contains(t, page.Find(".correction").First().Find(".caution-first").Text(), "Tingling")
	assert.Contains(t, page.Find(".correction").Text(), "length of the cap")
	assert.Contains(t, page.Find(".roads").Text(), "Rip back 12 rounds")
	assert.Contains(t, page.Find(".onward-drawing svg").Text()+page.Find(".onward-drawing svg").AttrOr("aria-label", ""), "of the cap")

	keep := url.Values{"keep": {"end.cap"}, "offered": {"end.cap", "cap", "cuff"}}
	page = a.get(made.header.Get("Location") + "?" + keep.Encode()).doc()
	assert.Contains(t, page.Find(".onward").First().Parent().Text(), "Knitted differently: cap, ")
	rounds := func() string { return a.get(at + "/desk/try").doc().Find(`#try-section option[value="cap"]`).Text() }
	before := rounds()
	keep.Set("how", "on")
	keep.Set("key", "v")
	keep.Set("after", page.Find(`[name="after"]`).AttrOr("value", ""))
	answered := a.post(made.header.Get("Location"), keep)
	require.Equal(t, http.StatusSeeOther, answered.status, answered.body)
	assert.NotEqual(t, before, rounds())
}

// A finger that is knitted and felt too tight is said to be so, and that going on leaves it
// so; nothing is called as close as it gets, and going on is not the button that stands out.
func TestATightFingerOfAGloveStaysTight(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	after := a.get(at+"/desk/fit").doc().Find(`[name="after"]`).AttrOr("value", "")
	require.Equal(t, http.StatusSeeOther, a.post(at, url.Values{"after": {after}, "kind": {"glove"}}).status)
	require.Equal(t, http.StatusOK, a.stroke(at+"/needles", `{"key":"a","side":"right","section":"ring","round":9}`).status)
	made := a.post(at+"/tries", tryOn(map[string]string{"section": "ring", "round": "9", "ways": "1", "feel.cuff": "0", "feel.ring": "2"}))
	require.Equal(t, http.StatusSeeOther, made.status, made.body)
	page := a.get(made.header.Get("Location")).doc()
	text := page.Find(`[data-fragment="onward"]`).Text()
	assert.Contains(t, text, "The ring finger is too tight. It is knitted: going on leaves it so.")
	assert.Contains(t, text, "Rip it back, or wear it so.")
	assert.NotContains(t, text, "as close as whole stitches allow")
	assert.NotContains(t, text, "Nothing changes")
	assert.NotContains(t, text, "fixed numbers")
	assert.False(t, page.Find(`button[value="on"]`).HasClass("main-action"))
	assert.Equal(t, 1, page.Find(`button[value="rip"]`).Length())
	assert.Contains(t, page.Find(".road").First().Find("ul.leaves").Text(), "ring finger: up to")

	form := url.Values{"how": {"rip"}, "key": {"v"}, "after": {page.Find(`[name="after"]`).AttrOr("value", "")}, "keep": {"ring"}, "offered": {"ring"}}
	answered := a.post(made.header.Get("Location"), form)
	require.Equal(t, http.StatusSeeOther, answered.status, answered.body)
	first := func() string { return a.get(at + "/desk/knit?side=right").doc().Find("[data-first]").Text() }
	assert.Regexp(t, `Ravel \d+ rounds, to round \d+ of the upper hand\..*come back onto the needles\.\s*Ripped back: \d+ stitches on the needles\. The marker goes before the first stitch picked up\.`, first())
	require.Equal(t, http.StatusOK, a.stroke(at+"/needles", `{"key":"b","side":"right","section":"ring","round":1}`).status)
	assert.NotContains(t, first(), "Ripped back", "it is done once a round is knitted")
}
