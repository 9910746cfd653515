package web

import (
	"fmt"
	"net/url"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// Without a script, too, the chart's desk shows one repeat, boxed, where something repeats, and
// leads back to all; the file is then asked for as it is shown.
func TestBoxedViewByAddress(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	mitt := a.sample()
	boxed := mitt + "/desk/chart?view=hand&layout=columns&boxed=1"
	assert.Zero(t, a.get(boxed).doc().Find(`.boxed-view, [name="boxed"][data-view]`).Length(), "no motif is laid")
	require.Equal(t, 303, a.post(mitt+"/repeats", url.Values{"name": {"birds"}, "motif": {"..bb..b.\n.bb.b...\n"}}).status)
	doc := a.get(boxed).doc()
	view := doc.Find(".editor[data-boxed] > .boxed-view")
	require.Equal(t, 1, view.Length())
	assert.Contains(t, view.Text(), "Work the box of 8 stitches (birds) 5 times.")
	assert.Contains(t, view.Find("svg").First().AttrOr("aria-label", ""), "Work the box of 8 stitches (birds) 5 times.")
	assert.Equal(t, 1, doc.Find(`#chart-file [name="boxed"][checked]`).Length())
	assert.Equal(t, 1, doc.Find(`select[name="boxed"] option[value="1"][selected]`).Length())
	whole := a.get(view.Find("a").AttrOr("href", "")).doc()
	assert.Zero(t, whole.Find(".boxed-view").Length())
	assert.Equal(t, "hand", whole.Find("svg[data-chart]").AttrOr("data-chart", ""))
	assert.Zero(t, whole.Find(`#chart-file [name="boxed"][checked]`).Length())
	gusset := a.get(mitt + "/desk/chart?view=gusset&boxed=1").doc()
	assert.Zero(t, gusset.Find(".boxed-view").Length())
	assert.Contains(t, gusset.Find("#chart-seeing").Text(), "Nothing repeats whole here")
}

// One repeat, boxed, is a view of the canvas, by keys alone: it shows the motif as drawn and
// how often it is worked, follows what changes, lets nothing be painted, and goes back.
func TestBoxedView(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	mitt := dotted(b)
	b.do(chromedp.Click(chromedp.CSS(`.picked [data-run="repeat"]`)))
	b.until(`document.querySelectorAll("[data-laid-form]").length === 1`)
	b.until(chartSaved)
	shown := `document.querySelector(".boxed-view") !== null && ` + quiet
	file := func() string {
		return eval[string](b, `[...document.querySelectorAll(".boxed-view svg")].map((e) => e.outerHTML).join("")`)
	}
	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector("[data-margin]").open = true; document.getElementById("chart-seeing").open = true; document.querySelector('[data-view="boxed"]').focus()`))
	b.key(kb.ArrowDown)
	b.until(shown)
	assert.Equal(t, "1", eval[string](b, `new URLSearchParams(location.search).get("boxed")`), "the address names it")
	assert.True(t, eval[bool](b, `document.querySelector('.chart-file [name="boxed"]').checked`), "so does the file")
	list := boxesOf(t, file(), 4)
	require.NotEmpty(t, list)
	for _, one := range list {
		assert.True(t, one.isMotif([]string{"..b.", "b..."}), "as the chart shows it, from the left: %v", one.rows)
	}
	assert.Greater(t, list[0].times, 5)
	for _, under := range []string{".canvas", ".rail", ".reaches"} {
		assert.Equal(t, "hidden", eval[string](b, fmt.Sprintf(`getComputedStyle(document.querySelector(%q)).visibility`, under)))
	}
	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector(".boxed-view").focus()`))
	assert.True(t, eval[bool](b, `document.activeElement.matches(".boxed-view")`))
	b.shot("boxed-view")
	boxedLookedAt(b, mitt)

	b.with("z", chromedp.ModifierCtrl) // the motif is taken back, and nothing is boxed
	b.until(`document.querySelector(".boxed-view") === null && ` + quiet)
	b.until(chartSaved)
	b.with("z", chromedp.ModifierCtrl|chromedp.ModifierShift)
	b.until(shown)
	b.until(chartSaved)

	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector(".boxed-view a").focus()`))
	b.key(kb.Enter)
	b.until(`document.querySelector(".boxed-view") === null && ` + quiet)
	b.until(`document.activeElement.matches("svg[data-chart]")`)
	assert.False(t, eval[bool](b, `document.querySelector('.chart-file [name="boxed"]').checked`))
	assert.Equal(t, "visible", eval[string](b, `getComputedStyle(document.querySelector(".canvas")).visibility`))
}

// boxedLookedAt looks at the view in light and on a phone in dark.
func boxedLookedAt(b *browser, mitt string) {
	b.t.Helper()
	axe, err := os.ReadFile(testenv.File(b.t, "THENAR_AXE"))
	require.NoError(b.t, err)
	for _, way := range []look{{false, "light"}, {true, "dark"}} {
		b.scheme(way.scheme)
		if way.phone {
			b.phone()
		}
		b.open(mitt + "/desk/chart?view=hand&layout=columns&boxed=1")
		b.until(`document.querySelector(".boxed-view") !== null && document.querySelector("[data-needle] .wood") !== null`)
		await[bool](b, drawn)
		b.shot("boxed-view-" + strings.TrimSpace(way.scheme))
		b.do(chromedp.Evaluate[chromedp.Void](string(axe)))
		assert.Empty(b.t, await[[]string](b, fmt.Sprintf(violations, true)), way.scheme)
		if way.phone {
			assert.LessOrEqual(b.t, eval[int](b, `document.documentElement.scrollWidth`), 360)
			assert.Empty(b.t, eval[[]string](b, lowTargets))
		}
	}
	b.asBegun()
	b.size(1280, 900)
	b.open(mitt + "/desk/chart?view=hand&layout=columns&boxed=1")
	b.until(`document.querySelector(".boxed-view") !== null && document.querySelector("[data-needle] .wood") !== null`)
}
