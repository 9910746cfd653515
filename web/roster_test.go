package web

import (
	"fmt"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
)

// dragStudents drags students of the open class by their grips, with the mouse
// and with a finger, writes a note, and finds all of it after the page is loaded
// anew.
func dragStudents(b *browser, class string) {
	b.t.Helper()
	const names = `[...document.querySelectorAll(".class-table th[scope=row]")].map((th) => th.textContent).join(" ")`
	settled := func(says string) {
		b.t.Helper()
		b.until(`document.querySelector("#roster [data-said]").textContent === "` + says + `"`)
	}
	b.open(class)
	b.until(`document.querySelector("#cost").textContent.includes("sheets, one side")`)
	b.do(chromedp.Evaluate[chromedp.Void](`document.querySelector('[name="note-2"]').focus()`), chromedp.KeyEvent("tea\r"))
	settled("Saved.")
	b.drag(b.gripOf("Celia", 0.3), b.gripOf("Ada", 0.2))
	settled("Celia stands before Ada now.")
	b.phone()
	b.swipe(b.gripOf("Celia", 0.3), b.gripOf("Dilan", 0.2))
	settled("Celia stands before Dilan now.")
	assert.Equal(b.t, "Ada Bertil Celia Dilan Finn", eval[string](b, names))
	b.swipe(b.gripOf("Ada", 0.3), b.gripOf("Celia", 0.7))
	settled("Ada stands before Dilan now.")
	assert.Equal(b.t, "Bertil Celia Ada Dilan Finn", eval[string](b, `[...document.querySelectorAll("#roster [name=move] option")].map((o) => o.text).join(" ")`))
	b.open(class)
	assert.Equal(b.t, "Bertil Celia Ada Dilan Finn", eval[string](b, names))
	assert.Equal(b.t, "tea", eval[string](b, `document.querySelector('[name="note-2"]').value`))
	b.size(1280, 900)
}

// gripOf returns the place of a student's grip across, and down at a share of the
// height of all their rows.
func (b *browser) gripOf(name string, share float64) point {
	b.t.Helper()
	return eval[point](b, fmt.Sprintf(`(() => {
		document.querySelector(".class-table").scrollIntoView({block: "center"});
		const body = document.querySelector('tbody[data-name=%q]');
		const rows = body.getBoundingClientRect(), grip = body.querySelector(".grip").getBoundingClientRect();
		return {X: grip.left + grip.width / 2, Y: rows.top + %g * rows.height};
	})()`, name, share))
}
