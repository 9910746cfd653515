package web

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
)

const open = `document.querySelectorAll("details").forEach((d) => { d.open = true; })`

// Swatches and girths are rows: the last is always empty, one that is left
// out goes, and what was typed is found again.
func TestRowsOfSwatchesAndGirths(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	page := sampled(b)
	b.do(chromedp.Evaluate[chromedp.Void](open))
	b.write("gauge.swatches[1].stitches", "12")
	b.write("gauge.swatches[1].width", "5")
	b.until(`document.getElementById("field-gauge.swatches[2].stitches") !== null`)
	b.until(`document.querySelector(".plan")?.textContent.includes("The 2 swatches")`)

	for i, girth := range []string{"17", "18", "20,5", "22"} {
		row := string(rune('0' + i))
		b.write("hand.profile["+row+"].height", []string{"0", "2", "4", "6,2"}[i])
		b.write("hand.profile["+row+"].girth", girth)
	}
	b.until(`document.querySelectorAll("table.ways tbody tr").length === 2`)
	b.until(`document.querySelector("table.ways .taken th")?.textContent === "the hand’s own shape"`)
	b.until(settled)
	b.until(`document.querySelector(".plan")?.textContent.includes("easier to remember")`)
	b.do(chromedp.Click(chromedp.CSS(`.rhythm button.set`)))
	b.until(`document.querySelector("table.ways .taken th")?.textContent === "a plain rhythm"`)
	b.until(settled)

	b.do(chromedp.Click(chromedp.CSS(`[data-rows="gauge.swatches"] details.row button[data-remove]`)))
	b.until(`document.querySelector(".plan")?.textContent.includes("How sure") && !document.querySelector(".plan").textContent.includes("The 2 swatches")`)
	b.until(settled)
	b.open(page)
	assert.Equal(t, "", eval[string](b, `document.getElementById("field-gauge.swatches[1].stitches").value`))
	assert.Equal(t, "20,5", eval[string](b, `document.getElementById("field-hand.profile[2].girth").value`))
	assert.Equal(t, 5, eval[int](b, `document.querySelectorAll('[data-rows="hand.profile"] [data-row]').length`))
}

// The slider writes its price into the field beside it, in words, and follows
// what is typed there.
func TestSliderInWords(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	sampled(b)
	b.do(chromedp.Evaluate[chromedp.Void](open))
	slider := `document.querySelector("[data-slides]")`
	b.do(chromedp.Evaluate[chromedp.Void](slider + `.value = "0"; ` + slider + `.dispatchEvent(new Event("input", {bubbles: true}))`))
	b.until(`document.getElementById("field-schedule.lambda").value === "0"`)
	b.until(`document.querySelector(".slider output")?.textContent === "as close to the hand as it goes"`)
	b.write("schedule.lambda", "100")
	b.until(slider + `.value === "4" && ` + slider + `.getAttribute("aria-valuetext") === "one rhythm throughout"`)
	b.write("schedule.lambda", "1e9")
	b.until(`document.querySelector('[data-fault-for="schedule.lambda"]')?.textContent.startsWith("is 1e9; write a number")`)
}
