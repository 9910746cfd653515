package web

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
)

// Once another way to make the thumb is chosen, the form calls its fields by it, and hides
// those that have no use; back again, they are as they were.
func TestTheFormIsCalledByTheMitt(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	b.desk(b.sample(), "fit")
	label := `document.querySelector('label[for="field-pins.gusset_rounds"]').textContent.trim()`
	hidden := `document.getElementById("field-pins.gusset_base").closest(".field").hidden`
	assert.Equal(t, "Gusset, rounds", eval[string](b, label))
	assert.False(t, eval[bool](b, hidden))
	for _, one := range [][2]string{{"straight", "To the thumb, rounds"}, {"slit", "Opening, rows"}, {"", "Gusset, rounds"}} {
		b.choose("thumb.construction", one[0])
		b.until(fmt.Sprintf("%s === %q", label, one[1]))
		assert.Equal(t, one[0] != "", eval[bool](b, hidden), one[0])
	}
}

// In a flat mitt what puts in a round puts in two rows, and undo takes them out again.
func TestTwoRowsArePutInAndTakenBack(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	path := b.sample()
	b.desk(path, "fit")
	b.choose("piece.flat", "true")
	b.until(`document.querySelector('label[for="field-pins.gusset_rounds"]').textContent.trim() === "Gusset, rows"`)
	b.until(`document.getElementById("saved").textContent.startsWith("saved")`)
	b.desk(path, "chart")
	b.until(`document.getElementById("chart-cell") !== null`)
	rows := `JSON.parse(document.getElementById("chart-data").textContent).rows.length`
	before := eval[int](b, rows)
	b.do(chromedp.Focus(chromedp.CSS("svg[data-chart]")))
	b.key("p")
	b.says("Two plain rows are put in above row 2 of the gusset.")
	b.until(fmt.Sprintf("%s === %d", rows, before+2))
	b.until(chartSaved)
	b.with("z", chromedp.ModifierCtrl)
	b.until(fmt.Sprintf("%s === %d", rows, before))
	b.says("The plan is as it was.")
}
