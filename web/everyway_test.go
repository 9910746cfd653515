package web

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// everyWay lists the ways to make a mitt, by keys of a sheet, with words that only the
// paper of such a mitt has.
var everyWay = []struct{ name, texts, says string }{
	{"flat", "piece.flat=true", "right side"},
	{"a straight thumb", "kind=mitten&thumb.construction=straight", "waste yarn"},
	{"a slit", "thumb.construction=slit", "opening"},
	{"a gusset in the palm", "thumb.place=palm&thumb.increase=lifted", "palm"},
	{"from the fingertips", "kind=mitten&piece.direction=down", "graft"},
	{"a wristlet", "thumb.construction=none&cuff.kind=gauntlet&cuff.upper_girth=26", "wristlet"},
	{"a flat mitten", "kind=mitten&piece.flat=true&top.kind=banded", "seam"},
	{"a flat mitten with a straight thumb", "kind=mitten&piece.flat=true&thumb.construction=straight", "cast on 1 backward loop"},
	{"a flat slit", "piece.flat=true&thumb.construction=slit", "seam stays open"},
	{"a fingerless mitt from its edging", "piece.direction=down", "wait for the gap"},
	{"a gauntlet from the wrist", "kind=mitten&piece.direction=down&cuff.kind=gauntlet", "gauntlet"},
	{"flat from the fingertips", "kind=mitten&piece.direction=down&piece.flat=true&cuff.kind=gauntlet", "close the tip first"},
	{"a straight thumb in a glove with half fingers", "kind=glove&thumb.construction=straight&fingers.index=half&fingers.middle=half&fingers.ring=half&fingers.little=half&fingers.little_lower=false", "ring finger"},
	{"yarn overs in a mitten", "kind=mitten&thumb.increase=yo_closed&top.kind=wedges", "yarn over"},
}

// Each way to make a mitt is chosen, charted, painted by pointer, followed for five
// rounds, tried on and printed, in one go.
func TestEveryWayFromChoiceToPaper(t *testing.T) {
	t.Parallel()
	for _, way := range testenv.Some(1, everyWay) {
		t.Run(way.name, func(t *testing.T) {
			t.Parallel()
			b := newBrowser(t)
			page := sampled(b)
			b.decide(page, "after=1&"+way.texts)
			paintedOnce(b, page)
			followed(b, page)
			triedOn(b, page)
			onPaperOnce(b, page, way.says)
		})
	}
}

// firstShown is the first stitch of round 5 that the chart shows.
const firstShown = `JSON.parse(document.getElementById("chart-data").textContent).rows[4].runs.flatMap((r) => Array(r.n).fill(r.x)).findIndex((x) => x >= 0) + 1`

// paintedOnce paints one purl with the pointer, and finds it after a reload.
func paintedOnce(b *browser, page string) {
	b.t.Helper()
	b.desk(page, "chart")
	b.until(`document.getElementById("chart-cell") !== null`)
	b.do(chromedp.Click(chromedp.CSS(`[data-tool-op="p"]`)))
	at := b.cell(5, eval[int](b, firstShown)+3) // a flat row begins at the seam, which the chart of a gusset leaves out
	b.do(chromedp.MouseClickXY(at.X, at.Y))
	b.until(`document.querySelector('[data-layer="painted"] [data-row="5"]').getAttribute("d") !== ""`)
	b.until(chartSaved)
	b.desk(page, "chart")
	require.Equal(b.t, 1, eval[int](b, marks+`.length`), "found after a reload")
	assert.NotContains(b.t, eval[string](b, `document.getElementById("chart-ledger").textContent`), "short")
	b.shot("way-chart-" + strings.ReplaceAll(b.t.Name(), "/", "-"))
}

// followed counts the cast-on and five rounds.
func followed(b *browser, page string) {
	b.t.Helper()
	b.desk(page, "knit")
	b.until(`document.getElementById("awake").textContent !== ""`)
	b.taps(".forward", 6)
	b.until(keptAll)
	at := eval[string](b, title)
	b.shot("way-knit-" + strings.ReplaceAll(b.t.Name(), "/", "-"))
	b.desk(page, "knit")
	assert.Equal(b.t, at, eval[string](b, title), "found after a reload")
	assert.Regexp(b.t, `^(Round|Row) \d+ of \d+ · `, at)
}

// triedOn keeps a try with the gauge of the fabric, and asks for what to knit next.
func triedOn(b *browser, page string) {
	b.t.Helper()
	b.desk(page, "try")
	assert.Empty(b.t, eval[[]string](b, `[...document.querySelectorAll(".end[hidden], .feel[hidden]")].filter((e) => e.checkVisibility()).map((e) => e.textContent.trim())`), "what is not asked is not seen")
	b.fill("try-stitches", "18")
	b.fill("try-width", "8")
	b.do(chromedp.Evaluate[chromedp.Void](`document.getElementById("try-width").form.requestSubmit()`))
	b.arrives(`document.querySelector(".onward") !== null && document.readyState === "complete"`)
	b.shot("way-try-" + strings.ReplaceAll(b.t.Name(), "/", "-"))
}

// onPaperOnce prints the handout and reads words back out of it.
func onPaperOnce(b *browser, page, says string) {
	b.t.Helper()
	b.open(page + "/print?paper=a4")
	sheets := eval[int](b, `document.querySelectorAll(".sheet").length`)
	pdf, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize(), chromedp.PDFPrintBackground()))
	require.NoError(b.t, err)
	file := filepath.Join(b.t.TempDir(), "sheet.pdf")
	require.NoError(b.t, os.WriteFile(file, pdf, 0o600))
	assert.Contains(b.t, run(b.t, "pdfinfo", file), fmt.Sprintf("Pages:           %d\n", sheets))
	assert.Contains(b.t, strings.ToLower(strings.Join(strings.Fields(run(b.t, "pdftotext", file, "-")), " ")), says)
}
