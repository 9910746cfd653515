package web

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
)

const (
	dropped = `document.querySelector(".behind").open`
	focused = `document.activeElement === document.querySelector(".behind > summary")`
	called  = `document.querySelector("h1").textContent`
)

// rename opens what lies behind the name, and types another name.
func (b *browser) rename(name string) {
	b.t.Helper()
	b.do(chromedp.Focus(chromedp.CSS(".behind > summary")))
	b.key(kb.Enter)
	b.until(dropped)
	b.key(kb.Tab)
	b.with("a", chromedp.ModifierCtrl)
	b.key(name)
}

// A mitt is renamed in its place: Enter keeps the name and Escape forgets it,
// the page stays, what was typed into it stands, and the focus comes back.
func TestRenameInPlace(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	mitt := sampled(b)
	before := eval[string](b, `(window.samePage = true, `+called+`)`)
	b.rename("Rust")
	b.key(kb.Escape)
	assert.False(t, eval[bool](b, dropped))
	assert.True(t, eval[bool](b, focused))
	assert.Equal(t, before, eval[string](b, called))
	b.key(kb.Enter)
	b.until(dropped + ` && document.querySelector(".rename [name=name]").value === ` + called)
	b.do(chromedp.Click(chromedp.CSS(".plan h2")))
	b.until(`!` + dropped + ` && ` + focused) // a press beside it shuts it

	b.do(chromedp.Evaluate[chromedp.Void](`(() => {
		const field = document.getElementById("field-hand.hand_circumference");
		field.value = "20";
		field.dispatchEvent(new Event("input", {bubbles: true}));
	})()`)) // not saved yet
	b.rename("Rust")
	b.key(kb.Enter)
	b.until(`!` + dropped + ` && document.getElementById("saved").dataset.state === "saved"`)
	assert.True(t, eval[bool](b, focused))
	assert.True(t, eval[bool](b, `window.samePage && document.title.startsWith("Rust")`))
	b.rename("  ")
	b.key(kb.Enter)
	b.until(`document.querySelector(".rename .fault-message").textContent === "A mitt needs a name."`)

	b.desk(mitt, "knit") // which has no form of the mitt
	assert.Equal(t, "Rust", eval[string](b, `(window.samePage = true, `+called+`)`))
	b.rename("Straw")
	b.key(kb.Enter)
	b.until(`!` + dropped)
	assert.Equal(t, "Straw", eval[string](b, called))
	assert.True(t, eval[bool](b, `window.samePage`))
	b.desk(mitt, "fit")
	assert.Equal(t, "Straw", eval[string](b, called))
	assert.Equal(t, "20", eval[string](b, `document.getElementById("field-hand.hand_circumference").value`))
}

// On a phone the plan's line is folded behind a press, the tape is at the foot
// and covers nothing that can be pressed, and nothing is wider than the window.
func TestBarOnAPhone(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	mitt := sampled(b)
	for _, desk := range deskNames {
		b.phone()
		b.desk(mitt, desk)
		for _, width := range []int64{390, 360} {
			b.do(chromedp.EmulateViewport(width, 740, chromedp.EmulateMobile, chromedp.EmulateTouch),
				chromedp.Evaluate[chromedp.Void](`for (const open of document.querySelectorAll(".plan-fold, .behind")) open.open = false`))
			name := fmt.Sprintf("%s at %d px", desk, width)
			assert.Equal(t, 740.0, eval[float64](b, `document.querySelector(".desk-tape").getBoundingClientRect().bottom`), name)
			assert.GreaterOrEqual(t, eval[float64](b, `Math.min(...[...document.querySelectorAll(".desk-tape a")].map((a) => Math.min(a.offsetHeight, a.offsetWidth)))`), 44.0, name)
			assert.LessOrEqual(t, eval[float64](b, `document.querySelector(".bar").getBoundingClientRect().height`), 96.0, name)
			if line := `document.querySelector(".plan-line")`; eval[bool](b, line+`.textContent !== ""`) {
				assert.False(t, eval[bool](b, line+`.checkVisibility()`), name)
				b.tap(".plan-fold > summary")
				assert.True(t, eval[bool](b, line+`.checkVisibility()`), name)
			}
			b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector(".behind").open = true`))
			assert.LessOrEqual(t, eval[int64](b, `document.documentElement.scrollWidth`), width, name)
			b.clearOfTheTape(desk)
		}
	}
}

// clearOfTheTape holds that the large target of Knit and what is said at Fit of
// what is not saved lie above the tape at the foot.
func (b *browser) clearOfTheTape(desk string) {
	b.t.Helper()
	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector(".behind").open = false`))
	switch desk {
	case "knit":
		assert.LessOrEqual(b.t, eval[float64](b, `Math.max(...[...document.querySelectorAll("[data-press] button")].map((e) => e.getBoundingClientRect().bottom))`), 692.0, "the large target is above the tape")
	case "fit":
		b.do(chromedp.Evaluate[chromedp.Void](`Object.assign(document.getElementById("saved"), {textContent: "not saved"}).dataset.state = "unsaved"`))
		assert.LessOrEqual(b.t, eval[float64](b, `document.getElementById("saved").getBoundingClientRect().bottom`), 692.0, "what is not saved is said above the tape")
	}
}
