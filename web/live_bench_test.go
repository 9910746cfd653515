package web

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// BenchmarkTwoTabs measures how long a stroke of one tab takes until the other
// has drawn it: from letting the pointer go in the first to the change of the
// drawing in the second.
func BenchmarkTwoTabs(b *testing.B) {
	first := newBrowser(b)
	path := chartOf(first, "")
	ctx, stop := chromedp.NewContext(first.ctx)
	b.Cleanup(stop)
	second := &browser{t: b, ctx: ctx, url: first.url}
	second.open(path)
	second.until(`document.getElementById("chart-cell") !== null`)
	second.do(chromedp.Evaluate[chromedp.Void](`new MutationObserver(() => { window.drawn = performance.timeOrigin + performance.now(); })
		.observe(document.querySelector('[data-layer="symbol"]'), {subtree: true, attributes: true})`))
	first.do(chromedp.Evaluate[chromedp.Void](`document.querySelector("svg[data-chart]").addEventListener("pointerup", () => { window.let = performance.timeOrigin + performance.now(); })`))
	var took []float64
	for b.Loop() {
		for i := range 40 {
			second.do(chromedp.Evaluate[chromedp.Void](`window.drawn = 0`))
			first.do(chromedp.Click(chromedp.CSS([]string{`[data-tool-op="p"]`, `[data-tool-op="yo"]`}[i/20])))
			first.click(first.cell(1+i%20, 1))
			second.until(`window.drawn > 0`)
			took = append(took, eval[float64](second, `window.drawn`)-eval[float64](first, `window.let`))
		}
	}
	require.NotEmpty(b, took)
	b.Logf("%d strokes: median %.0f ms, 95 %% within %.0f ms, all within %.0f ms", len(took), quantile(took, 0.5), quantile(took, 0.95), quantile(took, 1))
	b.ReportMetric(quantile(took, 0.5), "p50-ms")
	b.ReportMetric(quantile(took, 1), "max-ms")
}
