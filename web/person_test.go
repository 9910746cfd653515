package web

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// person does a job with the app as somebody at a desk with a mouse or with a
// phone in the hand does, and counts what it takes: presses, and scrolls where
// what is pressed next lies outside of what is seen, with the screens that they
// pass.
type person struct {
	*browser
	touches        bool
	presses, moves int
	screens        float64
	step           string
	before         [2]int
	screensBefore  float64
}

// newPerson is a person with an empty shelf before them.
func newPerson(t *testing.T, width, height int64, touches bool) *person {
	t.Helper()
	p := &person{browser: newBrowser(t), touches: touches}
	if touches {
		p.do(chromedp.EmulateViewport(width, height, chromedp.EmulateMobile, chromedp.EmulateTouch))
	} else {
		p.size(width, height)
	}
	p.open("/")
	return p
}

// next ends a step of the job, logs what it took, and begins another one.
func (p *person) next(step string) {
	if p.step != "" {
		p.t.Logf("%-34s %3d presses %2d scrolls %5.1f screens", p.step, p.presses-p.before[0], p.moves-p.before[1], p.screens-p.screensBefore)
	}
	p.step, p.before, p.screensBefore = step, [2]int{p.presses, p.moves}, p.screens
}

// done ends the job.
func (p *person) done() {
	p.next("")
	p.t.Logf("%-34s %3d presses %2d scrolls %5.1f screens", "all of it", p.presses, p.moves, p.screens)
}

// looking are the functions by which the page is asked what a person sees of
// it.
const looking = `
window.look = {
	scrollers(e) {
		const list = [];
		for (let a = e.parentElement; a && a !== document.body; a = a.parentElement) {
			const style = getComputedStyle(a);
			if (/auto|scroll/.test(style.overflow + style.overflowX + style.overflowY) && (a.scrollHeight > a.clientHeight || a.scrollWidth > a.clientWidth)) list.push(a);
		}
		return list;
	},
	hit(e, x, y) {
		if (x < 0 || y < 0 || x >= innerWidth || y >= innerHeight) return false;
		const top = document.elementFromPoint(x, y);
		return top !== null && (e.contains(top) || e.closest("label")?.contains(top) === true);
	},
	middle(e) { const r = e.getBoundingClientRect(); return [r.left + r.width / 2, r.top + r.height / 2]; },
	bring(e, at) {
		let moved = 0, screens = 0;
		if (this.hit(e, ...at())) return {moved, screens};
		for (const a of this.scrollers(e)) {
			const r = a.getBoundingClientRect(), [x, y] = at(), was = [a.scrollLeft, a.scrollTop];
			a.scrollBy({left: x < r.left || x > r.right ? x - r.left - r.width / 2 : 0, top: y < r.top || y > r.bottom ? y - r.top - r.height / 2 : 0, behavior: "instant"});
			const by = Math.abs(a.scrollLeft - was[0]) / a.clientWidth + Math.abs(a.scrollTop - was[1]) / a.clientHeight;
			if (by > 0) { moved++; screens += by; }
		}
		if (this.hit(e, ...at())) return {moved, screens};
		const was = scrollY;
		scrollBy({left: 0, top: at()[1] - innerHeight / 2, behavior: "instant"});
		if (scrollY !== was) { moved++; screens += Math.abs(scrollY - was) / innerHeight; }
		return {moved, screens};
	},
	closed(e) {
		let list = [];
		for (let a = e.parentElement; a; a = a.parentElement) if (a.matches("details:not([open])") && !(e.closest("summary")?.parentElement === a)) list.unshift(a);
		return list.map((a) => a.querySelector("summary"));
	},
};`

// seen scrolls to what at names, where it is not seen yet.
func (p *person) seen(element, at string) point {
	p.t.Helper()
	got := eval[struct {
		Moved   int
		Screens float64
		X, Y    float64
		Hit     bool
		Over    string
	}](p.browser, fmt.Sprintf(`(() => { %s
		const e = %s, at = () => %s;
		const {moved, screens} = look.bring(e, at);
		const [x, y] = at();
		return {Moved: moved, Screens: screens, X: x, Y: y, Hit: look.hit(e, x, y), Over: e.outerHTML.slice(0, 200) + " at " + x + " " + y + " under " + (document.elementFromPoint(x, y)?.outerHTML.slice(0, 120) ?? "nothing")};
	})()`, looking, element, at))
	p.moves += got.Moved
	p.screens += got.Screens
	if !got.Hit {
		p.shot("unreached")
	}
	require.True(p.t, got.Hit, "%s: %s can't be reached: %s lies over it", p.step, element, got.Over)
	return point{got.X, got.Y}
}

// press presses what a selector finds, and first what keeps it folded.
func (p *person) press(selector string) {
	p.t.Helper()
	p.pressAt(p.found(selector))
	await[bool](p.browser, drawn)
}

// found is where the thing is that a selector finds, unfolded and scrolled to,
// once the page has answered what was done before.
func (p *person) found(selector string) point {
	p.t.Helper()
	p.until(`document.getElementById("main")?.getAttribute("aria-busy") !== "true"`)
	await[bool](p.browser, drawn)
	element := fmt.Sprintf(`([...document.querySelectorAll(%q)].find((e) => e.checkVisibility()) ?? document.querySelector(%[1]q))`, selector)
	for range eval[int](p.browser, fmt.Sprintf(`(() => { %s const e = %s; if (!e) throw new Error("nothing is there"); return look.closed(e).length; })()`, looking, element)) {
		p.pressAt(p.seen(fmt.Sprintf(`look.closed(%s)[0]`, element), fmt.Sprintf(`look.middle(look.closed(%s)[0])`, element)))
		await[bool](p.browser, drawn)
	}
	return p.seen(element, `look.middle(e)`)
}

func (p *person) pressAt(at point) {
	p.t.Helper()
	p.presses++
	if p.touches {
		p.touch(at)
	} else {
		p.click(at)
	}
}

// pressTo is press on what leads to another page.
func (p *person) pressTo(selector, there string) {
	p.t.Helper()
	p.pressAt(p.found(selector))
	p.arrives(there)
}

// types writes into a field, by its path.
func (p *person) types(path, text string) {
	p.t.Helper()
	p.press(`[id="field-` + path + `"]`)
	p.do(chromedp.KeyEvent(text))
}

// picks opens a list and picks from it.
func (p *person) picks(selector, value string) {
	p.t.Helper()
	p.press(selector)
	p.presses++
	p.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`(() => {
		const list = document.querySelector(%q);
		list.value = %q;
		list.dispatchEvent(new Event("change", {bubbles: true}));
	})()`, selector, value)))
	await[bool](p.browser, drawn)
}

// stitchAt is where a stitch of the chart is, scrolled to where need be.
func (p *person) stitchAt(round, stitch int) point {
	p.t.Helper()
	return p.seen(`document.querySelector("svg[data-chart]")`, fmt.Sprintf(`(() => {
		const data = JSON.parse(document.getElementById("chart-data").textContent);
		const x = data.rows[%d - 1].runs.flatMap((r) => Array.from({length: r.n}, (_, i) => r.x < 0 ? -1 : r.x - i))[%d - 1];
		const q = new DOMPoint(data.left + (x + 0.5) * data.cell_width, data.bottom - (%d - 0.5) * data.cell_height).matrixTransform(e.getScreenCTM());
		return [q.x, q.y];
	})()`, round, stitch, round))
}

// stitchWide is how wide a stitch of the chart is drawn, in px.
func (p *person) stitchWide() float64 {
	p.t.Helper()
	return eval[float64](p.browser, `JSON.parse(document.getElementById("chart-data").textContent).cell_width * document.querySelector("svg[data-chart]").getScreenCTM().a`)
}
