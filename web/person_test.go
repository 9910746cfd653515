package web

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// way is what a person works with.
type way string

const (
	byMouse way = "mouse"
	byTouch way = "touch"
	byKeys  way = "keys"
)

// person does a job with the app as somebody at a desk with a mouse, with keys
// alone or with a phone in the hand does, and counts what it takes: presses, and
// scrolls where what is pressed next lies outside of what is seen, with the
// screens that they pass. Everything happens by real events of the mouse, the
// keys or a finger.
type person struct {
	*browser
	way            way
	presses, moves int
	screens        float64
	step           string
	before         [2]int
	screensBefore  float64
}

// newPerson is a person with an empty shelf before them.
func newPerson(t *testing.T, way way, width, height int64) *person {
	t.Helper()
	p := &person{browser: newBrowser(t), way: way}
	if way == byTouch {
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
	shows(a, x, y) {
		const r = a.getBoundingClientRect();
		return x >= r.left && y >= r.top && x < r.left + a.clientWidth && y < r.top + a.clientHeight;
	},
	off(e, at) {
		const [x, y] = at();
		const a = this.scrollers(e).findLast((a) => !this.shows(a, x, y)) ?? null;
		const r = a ? a.getBoundingClientRect() : {left: 0, top: 0, width: innerWidth, height: innerHeight};
		const free = {left: Math.max(r.left, 0), top: Math.max(r.top, 0), right: Math.min(r.left + r.width, innerWidth), bottom: Math.min(r.top + r.height, innerHeight)};
		const middle = {X: (free.left + free.right) / 2, Y: (free.top + free.bottom) / 2};
		const by = {X: x - middle.X, Y: y - middle.Y};
		if (!a || (x >= r.left && x < r.left + a.clientWidth)) by.X = 0;
		if (a && y >= r.top && y < r.top + a.clientHeight) by.Y = 0;
		return {Middle: middle, By: by, Wide: free.right - free.left, High: free.bottom - free.top, Canvas: a !== null && a.matches(".grid-frame")};
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
	for range 24 {
		got := eval[struct {
			X, Y float64
			Hit  bool
			Off  offScreen
		}](p.browser, fmt.Sprintf(`(() => { %s
			const e = %s, at = () => %s, [x, y] = at();
			return {X: x, Y: y, Hit: look.hit(e, x, y), Off: look.off(e, at)};
		})()`, looking, element, at))
		if got.Hit {
			return point{got.X, got.Y}
		}
		if !p.scroll(got.Off) {
			break
		}
	}
	p.shot("unreached")
	require.Fail(p.t, "can't be reached", "%s: %s", p.step, eval[string](p.browser, fmt.Sprintf(`(() => {
		const e = %s, [x, y] = %s;
		return e.outerHTML.slice(0, 200) + " at " + x + " " + y + " under " + (document.elementFromPoint(x, y)?.outerHTML.slice(0, 120) ?? "nothing");
	})()`, element, at)))
	return point{}
}

// press presses what a selector finds, and first what keeps it folded.
func (p *person) press(selector string) {
	p.t.Helper()
	p.act(selector)
	await[bool](p.browser, drawn)
}

// act presses what a selector finds, whatever comes of it.
func (p *person) act(selector string) {
	p.t.Helper()
	if p.way != byKeys {
		p.pressAt(p.found(selector))
		return
	}
	p.keyTo(selector)
	p.strike(kb.Enter)
}

// visible is the thing that a selector finds, the first that is shown.
func visible(selector string) string {
	return fmt.Sprintf(`([...document.querySelectorAll(%q)].find((e) => e.checkVisibility()) ?? document.querySelector(%[1]q))`, selector)
}

// found is where the thing is that a selector finds, unfolded and scrolled to,
// once the page has answered what was done before.
func (p *person) found(selector string) point {
	p.t.Helper()
	p.until(`document.getElementById("main")?.getAttribute("aria-busy") !== "true"`)
	await[bool](p.browser, drawn)
	element := visible(selector)
	for range eval[int](p.browser, fmt.Sprintf(`(() => { %s const e = %s; if (!e) throw new Error("nothing is there"); return look.closed(e).length; })()`, looking, element)) {
		p.pressAt(p.seen(fmt.Sprintf(`look.closed(%s)[0]`, element), fmt.Sprintf(`look.middle(look.closed(%s)[0])`, element)))
		await[bool](p.browser, drawn)
	}
	at := p.seen(element, `look.middle(e)`)
	if p.way == byTouch {
		assert.GreaterOrEqual(p.t, eval[float64](p.browser, element+`.getBoundingClientRect().height`), 43.5, "%s: %s is too low for a finger", p.step, selector)
	}
	return at
}

func (p *person) pressAt(at point) {
	p.t.Helper()
	p.presses++
	if p.way == byTouch {
		p.touch(at)
	} else {
		p.click(at)
	}
}

// pressTo is press on what leads to another page.
func (p *person) pressTo(selector, there string) {
	p.t.Helper()
	p.act(selector)
	p.arrives(there)
}

// types writes into a field, by its path.
func (p *person) types(path, text string) {
	p.t.Helper()
	field := `[id="field-` + path + `"]`
	if p.way == byKeys {
		p.keyTo(field)
	} else {
		p.press(field)
	}
	p.do(chromedp.KeyEvent(text))
}

// picks opens a list and picks from it.
func (p *person) picks(selector, value string) {
	p.t.Helper()
	if p.way == byKeys {
		p.keyTo(selector)
		for range 20 {
			if eval[string](p.browser, visible(selector)+`.value`) == value {
				return
			}
			p.strike(kb.ArrowDown)
			await[bool](p.browser, drawn)
		}
		require.Fail(p.t, "the arrows never come to it", value)
	}
	p.press(selector)
	p.presses++ // the list itself is the system's, not the page's
	p.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`(() => {
		const list = document.querySelector(%q);
		list.value = %q;
		list.dispatchEvent(new Event("change", {bubbles: true}));
	})()`, selector, value)))
	await[bool](p.browser, drawn)
}
