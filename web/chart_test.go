package web

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const paintPurl = `{"section":"gusset","round":3,"column":"B2","layer":"stitch","value":"p"}`

func TestStrokesUndoAndRedo(t *testing.T) {
	a := newApp(t)
	path := a.sample()
	first := a.stroke(path+"/chart", `{"after":1,"edits":[`+paintPurl+`]}`)
	require.Equal(t, http.StatusOK, first.status, first.body)
	assert.JSONEq(t, `{"revision":2,"edits":[`+paintPurl+`],"between":[],"can_undo":true,"can_redo":false}`, first.body)
	assert.Contains(t, a.desk(path, "pattern").doc().Find("#words").Text(), "p1", "what is painted is in the words")

	undone := a.stroke(path+"/chart", `{"after":2,"undo":true}`)
	assert.JSONEq(t, `{"revision":3,"edits":[{"section":"gusset","round":3,"column":"B2","layer":"stitch","value":""}],"between":[],"can_undo":false,"can_redo":true}`, undone.body)
	assert.Contains(t, a.get(path+"/chart").body, `"edits":[]`)
	assert.Equal(t, http.StatusOK, a.stroke(path+"/chart", `{"after":3,"redo":true}`).status)
	assert.Contains(t, a.get(path+"/chart").body, `"value":"p"`)
	assert.Equal(t, http.StatusConflict, a.stroke(path+"/chart", `{"after":4,"redo":true}`).status, "there is nothing to do again")
	assert.Equal(t, http.StatusConflict, a.stroke(path+"/chart", `{"after":99,"undo":true}`).status, "a revision that is not there yet")
}

// A change of the gusset's rounds says what it has fixed and let go; one undo
// takes all of it back. The hand's own shape was followed before, or a rhythm
// that was fixed.
func TestChangeOfRoundsSaysWhatItFixed(t *testing.T) {
	for column, value := range map[string]string{"schedule.follows": "profile", "pins.rhythm": "3"} {
		a := newApp(t)
		path := a.sample()
		form := a.form(path)
		form.Set(column, value)
		require.Equal(t, http.StatusSeeOther, a.post(path, form).status)
		before := a.get(path + "/sheet.json").body
		answer := a.stroke(path+"/chart", `{"after":2,"key":"k1","change":{"kind":"insert","section":"gusset","round":2}}`)
		require.Equal(t, http.StatusOK, answer.status, answer.body)
		assert.Contains(t, answer.body, `"said":"Fixed: increases in rounds 1, `)
		assert.Contains(t, answer.body, `; gusset 21 rounds.`)
		assert.Equal(t, column == "pins.rhythm", strings.Contains(answer.body, "Let go: rhythm."))
		assert.Contains(t, a.get(path+"/sheet.json").body, `"increase_rounds": [`)
		require.Equal(t, http.StatusOK, a.stroke(path+"/chart", `{"after":3,"undo":true}`).status)
		assert.Equal(t, before, a.get(path+"/sheet.json").body)
	}
}

// Two pages paint: both strokes stand, and the later one is told of the other.
func TestStrokesInBetween(t *testing.T) {
	a := newApp(t)
	path := a.sample()
	require.Equal(t, http.StatusOK, a.stroke(path+"/chart", `{"after":1,"edits":[`+paintPurl+`]}`).status)
	second := a.stroke(path+"/chart", `{"after":1,"edits":[{"section":"gusset","round":4,"column":"B2","layer":"colour","value":"b"}]}`)
	require.Equal(t, http.StatusOK, second.status)
	assert.Contains(t, second.body, `"between":[`+paintPurl+`]`)
}

// A round that no longer adds up is said in words.
func TestLedgerOfTheChart(t *testing.T) {
	a := newApp(t)
	path := a.sample()
	stroke := `{"after":1,"edits":[{"section":"gusset","round":5,"column":"B2","layer":"stitch","value":"k2tog"}]}`
	require.Equal(t, http.StatusOK, a.stroke(path+"/chart", stroke).status)
	page := a.desk(path, "chart").doc()
	assert.NotEmpty(t, page.Find(`[data-layer="fault"] [data-row="5"]`).AttrOr("d", ""))
	assert.Empty(t, page.Find(`[data-layer="fault"] [data-row="4"]`).AttrOr("d", ""))
	printed := a.get(path + "/print").doc().Text()
	assert.Contains(t, printed, "round 5: one stitch short (round 4 leaves 46; it takes 47)")
}

func TestBadStrokes(t *testing.T) {
	a := newApp(t)
	path := a.sample()
	for name, body := range map[string]string{
		"empty":          ``,
		"no JSON":        `paint`,
		"cut short":      `{"after":1,"edits":[`,
		"twice":          `{"after":1,"after":2,"undo":true}`,
		"unknown":        `{"after":1,"undo":true,"colour":"b"}`,
		"after it":       `{"after":1,"undo":true}{}`,
		"both":           `{"after":1,"undo":true,"redo":true}`,
		"nothing":        `{"after":1}`,
		"no edits":       `{"after":1,"edits":[]}`,
		"negative":       `{"after":-1,"undo":true}`,
		"NaN":            `{"after":NaN,"undo":true}`,
		"huge":           `{"after":99999999999999999999,"undo":true}`,
		"op":             `{"after":1,"edits":[{"section":"gusset","round":3,"column":"B2","layer":"stitch","value":"bo"}]}`,
		"yarn":           `{"after":1,"edits":[{"section":"gusset","round":3,"column":"B2","layer":"colour","value":"z"}]}`,
		"column":         `{"after":1,"edits":[{"section":"gusset","round":3,"column":"<b>","layer":"stitch","value":"p"}]}`,
		"round":          `{"after":1,"edits":[{"section":"gusset","round":0,"column":"B2","layer":"stitch","value":"p"}]}`,
		"section":        `{"after":1,"edits":[{"section":"sleeve","round":1,"column":"B2","layer":"stitch","value":"p"}]}`,
		"layer":          `{"after":1,"edits":[{"section":"gusset","round":1,"column":"B2","layer":"sky","value":"p"}]}`,
		"missing key":    `{"after":1,"edits":[{"section":"gusset","round":1,"column":"B2","value":"p"}]}`,
		"wrong type":     `{"after":1,"edits":[{"section":"gusset","round":"1","column":"B2","layer":"stitch","value":"p"}]}`,
		"too many edits": `{"after":1,"edits":[` + strings.TrimSuffix(strings.Repeat(paintPurl+",", 20_001), ",") + `]}`,
	} {
		answer := a.stroke(path+"/chart", body)
		assert.Equal(t, http.StatusBadRequest, answer.status, name)
		assert.Contains(t, answer.body, `"error":[`, name)
	}
	assert.Equal(t, http.StatusBadRequest, a.post(path+"/chart", url.Values{"undo": {"true"}}).status, "a form is no stroke")
	assert.Contains(t, a.get(path+"/chart").body, `"revision":1`, "nothing was written")
}

// After a stroke the page is sent what follows from the chart, as a whole answer
// has it, and nothing of what it drops: the hand, the fit, and the chart that
// stands already.
func TestAnswerToAStrokeIsSmall(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	at := a.sample()
	stroke := `{"after":1,"edits":[{"section":"gusset","round":3,"column":"A1","layer":"stitch","value":"p"},{"section":"gusset","round":3,"column":"A1","layer":"colour","value":"b"}]}`
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", stroke).status)
	form := a.form(at)
	whole, small := a.post(at+"/preview?view=gusset", form), a.post(at+"/preview?view=gusset&after=stroke", form)
	require.Equal(t, http.StatusOK, small.status)
	part := func(got answer, selector string) string {
		t.Helper()
		is, err := got.doc().Find(selector).Html()
		require.NoError(t, err)
		require.NotEmpty(t, is, selector)
		return strings.TrimSpace(is)
	}
	for _, same := range []string{`[data-fragment="plan"]`, `[data-fragment="words"]`, "#answer-state"} {
		assert.Equal(t, part(whole, same), part(small, same), same)
	}
	assert.Equal(t, part(whole, `[data-fragment="margin"] .key`), part(small, `[data-fragment="key"]`))
	assert.Contains(t, part(small, `[data-fragment="plan"]`), "colour", "the yarn is counted by colour")
	assert.Equal(t, 4, small.doc().Find("[data-fragment]").Length(), "the small mitt, too")
	assert.Less(t, len(small.body), len(whole.body)/5)
	t.Logf("%d bytes of %d", len(small.body), len(whole.body))
}
