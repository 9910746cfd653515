package web

import (
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// laidForms are the motifs that a page shows as laid, the uppermost first: the name of each,
// and what came of it.
func laidForms(page answer) (list []string) {
	page.doc().Find("[data-laid-form]").Each(func(_ int, form *goquery.Selection) {
		list = append(list, form.Find(".laid-head b").Text()+": "+form.Find("[data-came]").Text())
	})
	return list
}

// Without a script, motifs are laid, changed, put over each other, turned off and taken away
// by forms, each of which is a stroke that can be undone.
func TestMotifsLaidByForms(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	mitt := a.sample() // its hand has 42 stitches
	send := func(path string, fields ...string) answer {
		t.Helper()
		form := url.Values{}
		for i := 0; i < len(fields); i += 2 {
			form.Set(fields[i], fields[i+1])
		}
		return a.post(mitt+"/repeats"+path, form)
	}
	shown := func() []string { t.Helper(); return laidForms(a.get(mitt + "/desk/chart?view=hand")) }
	require.Empty(t, shown())
	got := send("", "name", "birds", "motif", "..bb..b.\r\n.bb.b...\r\n")
	require.Equal(t, http.StatusSeeOther, got.status, got.body)
	assert.Equal(t, mitt+"/desk/chart#chart-laid", got.header.Get("Location"))
	require.Len(t, shown(), 1)
	assert.Contains(t, shown()[0], "birds: 5 times, ")

	require.Equal(t, http.StatusSeeOther, send("/0", "set", "centred", "from", "3", "to", "8").status)
	assert.Equal(t, []string{"birds: 5 times, 3 times up; 2 plain stitches, 1 before and 1 after."}, shown())
	require.Equal(t, http.StatusSeeOther, send("", "name", "dots", "motif", "c.").status)
	assert.True(t, strings.HasPrefix(shown()[0], "dots: "), "the newest lies over the others: %v", shown())
	require.Equal(t, http.StatusSeeOther, send("/0", "do", "over").status)
	assert.True(t, strings.HasPrefix(shown()[0], "birds: 5"), "%v", shown())
	require.Equal(t, http.StatusSeeOther, send("/1", "do", "off").status)
	assert.Equal(t, "birds: Turned off.", shown()[0])
	require.Equal(t, http.StatusSeeOther, send("/1", "do", "on").status)
	require.Equal(t, http.StatusSeeOther, send("/1", "do", "remove").status)
	require.Len(t, shown(), 1)
	assert.True(t, strings.HasPrefix(shown()[0], "dots: "))

	require.Equal(t, http.StatusOK, a.stroke(mitt+"/chart", `{"after":1,"undo":true}`).status)
	assert.Len(t, shown(), 2, "what was taken away comes back")

	require.Equal(t, http.StatusSeeOther, send("/1", "set", "multiple").status)
	assert.Contains(t, shown()[0], "birds: ")
	assert.NotContains(t, shown()[0], "plain")
	require.Equal(t, http.StatusSeeOther, send("/1", "over", "palm").status, "the multiple goes with the whole round")

	for _, bad := range []answer{send("/1", "from", "three"), send("/1", "to", "0"), send("/1", "motif", "zz"), send("", "motif", ""), send("/1", "do", "burn"), send("/x"), send("/7", "from", "2")} {
		assert.Contains(t, []int{http.StatusBadRequest, http.StatusNotFound}, bad.status)
	}
	assert.Len(t, shown(), 2, "what is of no use is not kept")
}

// Enter in a field of a motif presses the first button of its form: that keeps the field, and
// does nothing else.
func TestEnterInAMotifsFieldKeepsIt(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	mitt := a.sample()
	require.Equal(t, http.StatusSeeOther, a.post(mitt+"/repeats", url.Values{"motif": {"..b."}}).status)
	first := a.get(mitt + "/desk/chart?view=hand").doc().Find("[data-laid-form]").First().Find(`button:not([type="button"])`).First()
	require.Equal(t, 1, first.Length())
	sent := url.Values{"name": {"birds"}}
	if name, ok := first.Attr("name"); ok {
		sent.Set(name, first.AttrOr("value", ""))
	}
	require.Equal(t, http.StatusSeeOther, a.post(mitt+"/repeats/0", sent).status)
	shown := laidForms(a.get(mitt + "/desk/chart?view=hand"))
	require.Len(t, shown, 1)
	assert.True(t, strings.HasPrefix(shown[0], "birds: "), shown[0])
	assert.NotContains(t, shown[0], "off")
}
