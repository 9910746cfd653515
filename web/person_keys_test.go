package web

import (
	"fmt"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// strike presses a key.
func (p *person) strike(key string) {
	p.t.Helper()
	p.presses++
	p.do(chromedp.KeyEvent(key))
}

// shift presses a key with Shift, once or more often.
func (p *person) shift(key string, times int) {
	p.t.Helper()
	for range times {
		p.presses++
		p.do(chromedp.KeyEvent(key, chromedp.KeyModifiers(chromedp.ModifierShift)))
	}
}

// keyTo brings the focus to what a selector finds, by the shortest way that there
// is for keys, and first opens what keeps it folded. Where the focus is can be seen
// at each end.
func (p *person) keyTo(selector string) {
	p.t.Helper()
	p.until(`document.readyState === "complete" && document.getElementById("main")?.getAttribute("aria-busy") !== "true"`)
	element := visible(selector)
	for range eval[int](p.browser, fmt.Sprintf(`(() => { %s const e = %s; if (!e) throw new Error("nothing is there"); return look.closed(e).length; })()`, looking, element)) {
		p.focusOn(fmt.Sprintf(`(() => { %s return look.closed(%s)[0]; })()`, looking, element))
		p.strike(kb.Enter)
		await[bool](p.browser, drawn)
	}
	p.focusOn(element)
}

// nextKey returns the key that brings the focus nearer to the element e: Tab, or
// Shift and Tab where e comes before what has it; the arrows, Home and End along a
// row that is one stop; and F8, which leads to the desks and from there to the
// work, where that saves presses.
const nextKey = `(e) => {
	const from = document.activeElement;
	if (from === e) return "there";
	const row = e.closest("[role=toolbar]");
	const items = row ? [...row.querySelectorAll(row.dataset.along ?? "a[href], button")].filter((i) => i.checkVisibility() && !i.disabled) : [];
	const [at, to] = [from, e].map((one) => items.indexOf(one));
	if (at >= 0 && to >= 0) {
		if (to === 0) return "Home";
		if (to === items.length - 1) return "End";
		const upright = row.getAttribute("aria-orientation") === "vertical";
		return to < at ? (upright ? "ArrowUp" : "ArrowLeft") : (upright ? "ArrowDown" : "ArrowRight");
	}
	const goal = to >= 0 ? items.find((i) => i.tabIndex === 0) : e;
	const stops = [...document.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex]")]
		.filter((s) => s.tabIndex >= 0 && !s.disabled && s.type !== "hidden" && s.checkVisibility({visibilityProperty: true}) && (s.type !== "radio" || s.checked || s === e || s === from));
	const far = (one) => Math.abs(stops.indexOf(one) - stops.indexOf(goal));
	const tape = document.getElementById("desks"), typing = from.matches("textarea, input:not([type=radio], [type=checkbox], [type=range], [type=color])");
	if (tape && !typing) {
		const desk = tape.querySelector("[aria-current]");
		const place = document.querySelector(document.querySelector("a.skip").hash);
		const work = stops.find((s) => place === s || place.compareDocumentPosition(s) & Node.DOCUMENT_POSITION_FOLLOWING) ?? desk;
		const led = tape.contains(from) ? 1 + far(work) : Math.min(1 + far(desk), 2 + far(work));
		if (led < far(from)) return "F8";
	}
	return from !== document.body && from.compareDocumentPosition(goal) & Node.DOCUMENT_POSITION_PRECEDING ? "back" : "Tab";
}`

// namedKeys are the keys that nextKey returns.
var namedKeys = map[string]string{
	"Tab": kb.Tab, "F8": kb.F8, "Home": kb.Home, "End": kb.End,
	"ArrowLeft": kb.ArrowLeft, "ArrowRight": kb.ArrowRight, "ArrowUp": kb.ArrowUp, "ArrowDown": kb.ArrowDown,
}

// focusOn presses keys until the focus is on an element.
func (p *person) focusOn(element string) {
	p.t.Helper()
	for range 160 {
		key := eval[string](p.browser, fmt.Sprintf("(%s)(%s)", nextKey, element))
		switch key {
		case "there":
			seen := eval[bool](p.browser, `(() => {
				const e = document.activeElement, r = e.getBoundingClientRect(), style = getComputedStyle(e);
				return style.outlineStyle !== "none" && r.bottom > 0 && r.right > 0 && r.top < innerHeight && r.left < innerWidth;
			})()`)
			assert.True(p.t, seen, "%s: the focus on %s is seen", p.step, element)
			return
		case "back":
			p.shift(kb.Tab, 1)
		default:
			p.strike(namedKeys[key])
		}
	}
	p.shot("unreached")
	require.Fail(p.t, "keys never lead there", "%s: %s; the focus is on %s", p.step, element, eval[string](p.browser, `document.activeElement.outerHTML.slice(0, 200)`))
}

// onChart presses the key that stands for a control on the chart, where the chart
// has the focus.
func (p *person) onChart(selector string) {
	p.t.Helper()
	p.keyTo("svg[data-chart]")
	p.strike(eval[string](p.browser, fmt.Sprintf(`document.querySelector(%q).getAttribute("aria-keyshortcuts")`, selector)))
	await[bool](p.browser, drawn)
}
