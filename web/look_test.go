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

// TestPagesForEverybody opens every page on a desk and on a phone, in light
// and in dark (in some of these unless the run is long), and lets axe-core (Deque's open checker of WCAG rules) look at it. On a
// phone nothing is wider than the window, and what can be pressed is at least
// 44 px high. A long run opens the desks of a mitt that is not planned yet, and a third
// view of the chart, too.
func TestPagesForEverybody(t *testing.T) {
	t.Parallel()
	axe, err := os.ReadFile(testenv.File(t, "THENAR_AXE"))
	require.NoError(t, err)
	b := newBrowser(t)
	b.open("/")
	check(b, string(axe), "shelf-empty", "/")
	b.asBegun()
	b.follow(".begin .main-action")
	own := b.mitt()
	sample := b.sample()
	try := tries(b, sample)
	send := `fetch(%q, {method: "POST", body: new URLSearchParams(%q)}).then((r) => new URL(r.url).pathname.replace(/\/desk\/.*/, ""))`
	other := await[string](b, fmt.Sprintf(send, "/mitts", "name=Harbour"))
	await[string](b, fmt.Sprintf(send, other, "after=1&pins.cast_on=40&chart.yarns[0].name=oat&chart.yarns[0].colour=%23DDD3BE&chart.yarns[1].name=sloe&chart.yarns[1].colour=%232E2F4F"))
	pages := map[string]string{
		"fit": sample + "/desk/fit", "fit-unplanned": own + "/desk/fit", "chart": sample + "/desk/chart",
		"chart-tube": sample + "/desk/chart?view=hand&layout=columns",
		"knit":       sample + "/desk/knit", "try": sample + "/desk/try?beside=1&beside=2", "try-answer": try,
		"shelf": "/", "yarns": sample + "/yarns", "what-if": sample + "/what-if", "history": sample + "/history", "moment": sample + "/history/1", "keeping": "/status",
	}
	if testenv.Long() {
		pages["chart-thumb"] = sample + "/desk/chart?view=thumb&cells=square"
		for _, name := range deskNames[1:] {
			pages[name+"-unplanned"] = own + "/desk/" + name
		}
	}
	for name, path := range pages {
		check(b, string(axe), name, path)
	}
}

// TestClassesForEverybody does the same for the pages of classes and for those
// that are printed.
func TestClassesForEverybody(t *testing.T) {
	t.Parallel()
	axe, err := os.ReadFile(testenv.File(t, "THENAR_AXE"))
	require.NoError(t, err)
	b := newBrowser(t)
	sample := b.sample()
	b.desk(sample, "fit")
	own := await[string](b, `fetch("/mitts", {method: "POST", body: new URLSearchParams("name=Harbour")}).then((r) => new URL(r.url).pathname.replace(/\/desk\/.*/, ""))`)
	class := classOf(b)
	dragStudents(b, class)
	await[string](b, fmt.Sprintf(`fetch(%q, {method: "POST", body: new URLSearchParams("fill.set=glove_sizes&fill.glove_sizes.from=6&fill.glove_sizes.to=11&fill.glove_sizes.step=1")}).then((r) => r.url)`, sample+"/design/fill"))
	await[bool](b, fmt.Sprintf(`fetch(%q).then((r) => r.text()).then((page) => fetch(%[1]q, {method: "POST", body: new URLSearchParams("sizes[0].pins.gusset_base=4&pins.bridge=3&rules.multiples.hand_stitches=6&sizes[1].gauge.swatches[0].stitches=28&stamp=" + page.match(/name="stamp" value="(\w+)"/)[1])})).then((r) => r.ok)`, sample+"/design"))
	pages := map[string]string{
		"classes": "/classes", "class": class, "student": class + "/students/2", "print-class": class + "/print?pieces=plan", "print-sizes": sample + "/sizes",
		"print-wall": sample + "/wall", "print-grid": "/paper/grid", "pattern-faulty": sample + "/desk/pattern?paper=a4&cell=x&place-plan=x",
		"pattern": sample + "/desk/pattern?paper=a4", "design": sample + "/design", "size": sample + "/design/hand/2", "design-begun": own + "/design",
	}
	if testenv.Long() {
		pages["pattern-letter"] = sample + "/desk/pattern?paper=letter"
	}
	for name, path := range pages {
		check(b, string(axe), name, path)
	}
	b.asBegun()
	b.scheme("dark")
	b.desk(sample, "pattern")
	assert.Equal(t, "rgb(0, 0, 0)", eval[string](b, `getComputedStyle(document.querySelector(".sheet text")).fill`), "paper is black on white, whatever the screen")
}

// classOf begins a class with students of every kind and gives its address.
func classOf(b *browser) string {
	b.t.Helper()
	send := `fetch(%q, {method: "POST", body: new URLSearchParams(%q)}).then((r) => new URL(r.url).pathname)`
	class := await[string](b, fmt.Sprintf(send, "/classes", "name=Tuesday&mitt=1"))
	table := url.Values{"table": {tuesday}}
	require.Equal(b.t, class+"/table", await[string](b, fmt.Sprintf(send, class+"/table", table.Encode())))
	return class
}

// tries makes two tries of a mitt, the first with all that a try can have, and
// gives the address of the first.
func tries(b *browser, mitt string) string {
	b.t.Helper()
	for i, body := range []string{
		"stitches=18&width=8&rounds=15&height=5&top=-6&base=3&feel.gusset=1&feel.cuff=2&note=pulls", "feel.gusset=0&feel.cuff=0",
	} {
		send := `fetch(%q, {method: "POST", headers: {Accept: "application/json"}, body: new URLSearchParams(%q)}).then((r) => r.json()).then((r) => r.to)`
		body := fmt.Sprintf("key=k%d&date=2026-03-01&side=right&section=gusset&round=8&%s", i, body)
		require.NotEmpty(b.t, await[string](b, fmt.Sprintf(send, mitt+"/tries", body)))
	}
	return mitt + "/tries/1"
}

// look is a way to see a page.
type look struct {
	phone  bool
	scheme string
}

// looks are the ways to see a page in which axe-core checks it: all in a long
// run, else the two desks that are laid out most unlike on a desk and on a phone, on a
// desk in light and on a phone in dark; and of the other pages, which share their
// pieces, each on a phone in one of the two.
func looks(name string) []look {
	schemes := []string{"light", "dark"}
	switch {
	case testenv.Long():
		return []look{{false, "light"}, {true, "light"}, {false, "dark"}, {true, "dark"}}
	case name == "fit" || name == "chart":
		return []look{{false, "light"}, {true, "dark"}}
	}
	return []look{{true, schemes[len(name)%2]}}
}

// check looks at a page in each of its ways, and leaves it in the last.
func check(b *browser, axe, name, path string) {
	b.t.Helper()
	ways := looks(name)
	for _, way := range ways {
		b.scheme(way.scheme)
		where := "desk"
		if way.phone {
			b.phone()
			where = "phone"
		} else {
			b.size(1280, 900)
		}
		b.open(path)
		b.shot(name + "-" + way.scheme + "-" + where)
		b.do(chromedp.Evaluate[chromedp.Void](axe))
		found := await[[]string](b, fmt.Sprintf(violations, len(ways) > 1))
		assert.Empty(b.t, found, "%s, %s, %s", name, way.scheme, where)
		if way.phone && !strings.HasPrefix(name, "print") {
			assert.LessOrEqual(b.t, eval[int](b, `document.documentElement.scrollWidth`), 360, name)
			assert.Empty(b.t, eval[[]string](b, lowTargets), name)
		}
	}
}

// asBegun is the window that a browser begins with, after pages were looked at in others.
func (b *browser) asBegun() {
	b.t.Helper()
	b.scheme("light")
	b.size(1280, 900)
}

// violations runs axe-core and says what it found, where. Only its rule on
// locked orientations reads the style sheets, if they are fetched once more.
const violations = `axe.run(document, {resultTypes: ["violations"], preload: %t}).then((r) => r.violations.flatMap((v) => v.nodes.map((n) =>
	v.id + ": " + n.target.join(" ") + " " + n.any.concat(n.all, n.none).map((c) => c.message).join("; "))).slice(0, 12))`

// lowTargets lists what can be pressed and is lower than 44 px; links within
// sentences may be, and a box to tick is pressed with its label. A number on the
// ladder has a field of that height under Measure that does the same (WCAG 2.2,
// 2.5.5, "Equivalent"), and is 24 px high itself (2.5.8).
const lowTargets = `[...document.querySelectorAll("button, input:not([type=hidden]), select, summary, nav a")]
	.map((e) => ((e.type === "checkbox" || e.type === "radio") && e.closest("label")) || e)
	.filter((e) => e.checkVisibility() && e.getBoundingClientRect().height < (e.matches(".numbers > li > details > summary") ? 23.5 : 43.5))
	.map((e) => e.outerHTML.slice(0, 80) + " " + e.getBoundingClientRect().height)`

// Without a pointer: from the shelf to a painted stitch by keyboard alone,
// the focus always visible.
func TestKeyboardAlone(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	b.open("/")
	tabTo(b, `document.activeElement.textContent === "Look at a sample mitt"`)
	_, err := chromedp.RunResponse(b.ctx, chromedp.KeyEvent(kb.Enter))
	require.NoError(t, err)
	ladderByKeys(b)
	tabTo(b, `document.activeElement.matches('a.chip[href="#field-hand.hand_circumference"]')`)
	b.do(chromedp.KeyEvent(kb.Enter))
	b.until(`document.activeElement.id === "field-hand.hand_circumference"`)
	assert.True(t, eval[bool](b, `document.querySelector('.tape[data-field="hand.hand_circumference"]').classList.contains("lit")`), "its tape is lit")
	b.key(kb.F8)
	assert.True(t, eval[bool](b, `document.activeElement.id === "field-hand.hand_circumference"`), "what is typed into keeps its keys")
	tabTo(b, `document.activeElement.matches("select")`)
	b.key(kb.F8, kb.Tab)
	assert.Equal(t, "Chart", eval[string](b, `document.activeElement.textContent`))
	_, err = chromedp.RunResponse(b.ctx, chromedp.KeyEvent(kb.Enter))
	require.NoError(t, err)
	b.until(`document.readyState === "complete"`)
	tabTo(b, `document.activeElement.closest("[data-strip]") !== null`)
	pressTo(b, kb.ArrowRight, `document.activeElement.dataset.toolOp === "yo"`)
	b.do(chromedp.KeyEvent(kb.Enter))
	b.key(kb.Tab)
	assert.True(t, eval[bool](b, `document.activeElement.closest("[data-strip]") === null`), "the stitches are one stop")
	b.key(kb.F8, kb.F8)
	assert.True(t, eval[bool](b, `document.activeElement.matches("svg[data-chart]")`), "the work of the desk")
	b.key("2")
	b.until(`document.querySelector('[data-tool-colour="b"]').getAttribute("aria-pressed") === "true"`)
	b.until(quiet) // it has turned to upright columns
	b.key("1", "2")
	b.says("rust in hand.")
	assert.NotEqual(t, "none", eval[string](b, `getComputedStyle(document.activeElement).outlineStyle`))
	b.do(chromedp.KeyEvent(kb.ArrowUp), chromedp.KeyEvent(kb.Home), chromedp.KeyEvent(" "))
	b.until(chartSaved)
	assert.Contains(t, eval[string](b, `document.getElementById("chart-says").textContent`), "round 2, ")
	b.do(chromedp.KeyEvent(kb.Backspace))
	b.until(`document.querySelector('[data-layer="painted"] [data-row="2"]').getAttribute("d") === ""`)
	b.until(chartSaved)
}

// ladderByKeys goes from the head of Fit to its ladder, which is one stop of the
// Tab key with arrows along it (WAI-ARIA Authoring Practices, toolbar), says how,
// and to the desks.
func ladderByKeys(b *browser) {
	b.t.Helper()
	b.until(`document.readyState === "complete"`)
	rung := `(document.activeElement.closest("#ladder summary")?.dataset.keep ?? "")`
	b.key(kb.Tab)
	assert.Equal(b.t, "Go to the work (F8 twice)", eval[string](b, `(() => {
		const r = document.activeElement.getBoundingClientRect();
		return document.elementFromPoint(r.left + r.width / 2, r.top + r.height / 2).closest("a").textContent;
	})()`), "it is seen, over the bar")
	b.key(kb.Enter)
	assert.Equal(b.t, "at-rounds_above_gusset", eval[string](b, rung))
	assert.True(b.t, eval[bool](b, `document.getElementById("ladder-keys").checkVisibility()`), "how to go on is said")
	b.key(kb.ArrowDown)
	assert.Equal(b.t, "at-thumb_rounds", eval[string](b, rung))
	b.key(kb.End)
	assert.Equal(b.t, "at-cast_on", eval[string](b, rung))
	b.key(kb.Tab)
	assert.Empty(b.t, eval[string](b, rung), "the ladder is one stop")
	b.with(kb.Tab, chromedp.ModifierShift)
	assert.Equal(b.t, "at-cast_on", eval[string](b, rung), "and keeps its place")
	b.key(kb.Enter)
	b.until(`document.activeElement.matches("#at-cast_on .slip input")`)
	b.key(kb.Escape, kb.F8)
	assert.Equal(b.t, "page", eval[string](b, `document.activeElement.getAttribute("aria-current")`), "the present desk on the tape")
}

// tabTo presses Tab until an expression holds, and fails where it never does.
func tabTo(b *browser, expression string) {
	b.t.Helper()
	pressTo(b, kb.Tab, expression)
}

// pressTo presses a key until an expression holds, and fails where it never does.
func pressTo(b *browser, key, expression string) {
	b.t.Helper()
	for range 120 {
		b.do(chromedp.KeyEvent(key))
		if eval[bool](b, expression) {
			return
		}
	}
	require.Fail(b.t, "the key never leads there", fmt.Sprintf("%s; the focus is on %s", expression, eval[string](b, `document.activeElement.outerHTML.slice(0, 200)`)))
}
