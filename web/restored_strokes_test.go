package web

import (
	"context"
	"fmt"
	"net/http"
	neturl "net/url"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/store"
)

// A stroke of a chart from before a backup was put back is told so, whatever
// its revision, and draws nothing until the chart was read anew; nor does an
// undo take back what the person never saw.
func TestStrokesFromBeforeARestore(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":1,"edits":[`+paintPurl+`]}`).status)
	back := putBack(t, a.store)
	old := a.form(at).Get("restored")
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", fmt.Sprintf(`{"after":2,"restored":%s,"undo":true}`, old)).status)
	back()
	for _, asked := range []string{`"edits":[` + paintPurl + `]`, `"undo":true`, `"change":{"kind":"insert","section":"gusset","round":3}`} {
		for _, after := range []int{1, 2, 3} {
			said := a.stroke(at+"/chart", fmt.Sprintf(`{"after":%d,"restored":%s,%s}`, after, old, asked))
			assert.Equal(t, http.StatusConflict, said.status, asked)
			assert.Contains(t, said.body, `"stale":true`, asked)
		}
	}
	assert.Contains(t, a.get(at+"/chart").body, `"revision":2`, "nothing was drawn")
	now := a.form(at).Get("restored")
	assert.Equal(t, http.StatusOK, a.stroke(at+"/chart", fmt.Sprintf(`{"after":2,"restored":%s,"edits":[%s]}`, now, paintPurl)).status)
	assert.Contains(t, a.stroke(at+"/chart", `{"after":9,"edits":[`+paintPurl+`]}`).body, `"stale":true`)
}

// unsent draws while the server is away, so that the strokes wait in the page.
func unsent(b *browser, places ...[2]int) {
	b.t.Helper()
	b.serverAway()
	b.do(chromedp.Evaluate[chromedp.Void](`window.old = true; document.querySelector('[data-tool-op="p"]').click()`))
	for _, at := range places {
		b.click(b.cell(at[0], at[1]))
	}
	b.until(`document.getElementById("chart-saved").dataset.state === "unsaved"`)
}

// madeAnew waits for the page that takes the place of this one by itself.
func (b *browser) madeAnew(after func()) {
	b.t.Helper()
	_, err := chromedp.RunResponse(b.ctx, chromedp.Func(func(context.Context, *chromedp.Target) error { after(); return nil }))
	require.NoError(b.t, err)
}

// marksOf are the rounds that are painted, on the server.
func marksOf(t *testing.T, st *store.Store) (rounds []int) {
	t.Helper()
	m, err := st.Load(t.Context(), 1)
	require.NoError(t, err)
	for _, e := range m.Marks.Edits() {
		rounds = append(rounds, e.Round)
	}
	return rounds
}

// What was drawn without a connection is laid on the backup that is put back
// meanwhile, and what has no place there is listed, to be put back by hand.
func TestUnsentStrokesOutliveARestore(t *testing.T) {
	t.Parallel()
	st, url := serveApp(t)
	b := newBrowserAt(t, url)
	path := chartOf(b, "")
	b.desk(path, "fit")
	b.write("hand.gusset_length", "4")
	b.until(`document.getElementById("saved").dataset.state === "saved"`)
	b.until(quiet)
	back := putBack(t, st)
	b.write("hand.gusset_length", "7")
	b.until(`document.getElementById("saved").dataset.state === "saved"`)
	b.until(quiet)
	b.desk(path, "chart")
	require.Greater(t, eval[int](b, `JSON.parse(document.getElementById("chart-data").textContent).rows.length`), 18)
	unsent(b, [2]int{5, 2}, [2]int{18, 3})
	b.madeAnew(back)
	b.until(`document.querySelector(".lost [data-put-back]") !== null`)
	b.says("from before the backup was put back")
	b.until(chartSaved)
	assert.Equal(t, []int{5, 18}, marksOf(t, st), "both are on the server")
	assert.Equal(t, "4", eval[string](b, `document.getElementById("field-hand.gusset_length").value`))
	assert.Contains(t, eval[string](b, `document.querySelector(".lost li").textContent`), "round 18")
	b.shot("strokes-restored")
	b.do(chromedp.Focus(chromedp.CSS("svg[data-chart]")))
	b.key(kb.ArrowUp)
	b.do(chromedp.Click(chromedp.CSS("[data-put-back]")))
	b.until(chartSaved)
	assert.Equal(t, []int{2, 5}, marksOf(t, st))
	b.desk(path, "chart")
	assert.Zero(t, eval[int](b, `document.querySelectorAll("[data-put-back]").length`))
	assert.Zero(t, eval[int](b, `Object.keys(localStorage).filter((k) => k.startsWith("thenar:strokes")).length`))
}

// Where something was typed as well the page stands as it is: the strokes are
// laid on what was put back, and what was typed waits for a decision.
func TestUnsentStrokesBesideATypedNumber(t *testing.T) {
	t.Parallel()
	st, url := serveApp(t)
	b := newBrowserAt(t, url)
	chartOf(b, "")
	back := putBack(t, st)
	b.click(b.cell(9, 1))
	b.click(b.cell(9, 2))
	b.until(chartSaved) // so that the page knows a revision which is gone then
	unsent(b, [2]int{5, 2})
	b.choose("chart.float", "4")
	b.until(notSaved)
	back()
	b.serverBack()
	b.until(`document.querySelector("#saved button") !== null`)
	b.until(chartSaved)
	assert.True(t, eval[bool](b, `window.old`), "the page was not made anew")
	assert.Equal(t, "4", eval[string](b, `document.getElementById("field-chart.float").value`))
	assert.Equal(t, []int{5}, marksOf(t, st))
	b.click(b.cell(7, 2))
	b.until(chartSaved)
	assert.Equal(t, []int{5, 7}, marksOf(t, st), "and it goes on from there")
	assert.NotContains(t, eval[string](b, `document.querySelector('[data-layer="painted"] [data-row="9"]').getAttribute("d")`), "M", "what is not in the backup is not shown")
	b.expectErrors() // the refusals stand in the console, as they should
}

// Strokes of a mitt that is not in the backup are kept, and not laid on another
// one that takes its number, unless somebody wants it.
func TestUnsentStrokesOfAMittThatIsGone(t *testing.T) {
	t.Parallel()
	st, url := serveApp(t)
	back := putBack(t, st) // without any mitt
	b := newBrowserAt(t, url)
	path := chartOf(b, "")
	unsent(b, [2]int{5, 2}, [2]int{7, 1})
	back()
	b.serverBack()
	b.until(`document.getElementById("chart-saved").textContent.includes("no mitt")`)
	b.madeAnew(func() {
		resp, err := http.PostForm(url+"/mitts", neturl.Values{"sample": {"1"}})
		require.NoError(t, err)
		require.NoError(t, resp.Body.Close())
		require.Equal(t, path+"/desk/fit", resp.Request.URL.Path)
	})
	b.expectErrors()
	b.until(`document.querySelector("[data-strange] button") !== null`)
	assert.Empty(t, marksOf(t, st), "nothing is laid on the other mitt by itself")
	assert.Contains(t, eval[string](b, `document.querySelector("[data-strange]").textContent`), "2 strokes were drawn on another mitt")
	b.shot("strokes-strange")
	b.do(chromedp.Click(chromedp.CSS("[data-strange] button")))
	b.until(chartSaved)
	assert.Equal(t, []int{5, 7}, marksOf(t, st))
	b.until(`document.querySelector("[data-strange]").hidden`)
}
