package web

import (
	"context"
	"fmt"
	"net/url"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	cdppage "github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/require"
)

// How often each of the two is timed, over how many strokes by turns, and how
// many moves of the pointer each stroke has.
const (
	paintRuns    = 5
	paintStrokes = 4
	paintMoves   = 60
)

// shown is what one move of the pointer took, in ms: until the frame that shows
// it, and the script's own time.
type shown struct {
	Frame float64 `json:"frame"`
	Own   float64 `json:"own"`
}

// BenchmarkPainting drags a colour, then a symbol, over charts of three sizes by
// real events of the mouse, stroke by stroke by turns with a bare canvas that
// paints the same, and opens each chart. It prints a table: medians and 95th
// percentiles of the time from the event to the frame that shows it, and for each
// the median of the ratios of the runs; and the script's own time.
func BenchmarkPainting(b *testing.B) {
	script, err := os.ReadFile("testdata/paint.js")
	require.NoError(b, err)
	in := newBrowser(b)
	for _, size := range []struct{ n, laid int }{{60, 0}, {120, 0}, {300, 0}, {300, 3}} {
		n := size.n
		path := largeChart(in, n)
		layMotifs(in, path, size.laid)
		open := opened(in, path)
		cells := eval[[]int](in, `[JSON.parse(document.getElementById("chart-data").textContent)].flatMap((d) => [d.width, d.rows.length])`)
		b.Logf("%d × %d cells, %d motifs laid: painted after %.0f ms (median of five)", cells[0], cells[1], size.laid, open)
		for _, tool := range []string{"colour", "symbol"} {
			b.Run(fmt.Sprintf("%d/%d-laid/%s", n, size.laid, tool), func(b *testing.B) {
				places := eval[[]point](in, fmt.Sprintf(`(%s)({tool: %q})`, script, tool))
				in.until(`window.paint.knitted()`)
				var runs [][2][]shown
				for b.Loop() {
					for run := range paintRuns {
						runs = append(runs, in.painted(places, run))
					}
				}
				table(b, n, tool, runs)
			})
		}
	}
}

// painted drags over a part of the places, on a bare canvas and on the chart by
// turns, and returns what the moves on each took.
func (b *browser) painted(places []point, run int) (took [2][]shown) {
	b.t.Helper()
	for stroke := range paintStrokes {
		for i, bare := range []bool{true, false} {
			b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`window.paint.stroke(%t, %d)`, bare, run)))
			at := func(k int) point { return places[((run*paintStrokes+stroke)*paintMoves+k)%len(places)] }
			steps := []chromedp.Action[chromedp.Void]{chromedp.MouseEvent(chromedp.MousePressed, at(0).X, at(0).Y, chromedp.ButtonLeft, chromedp.ClickCount(1))}
			for k := 1; k < paintMoves; k++ {
				steps = append(steps, chromedp.MouseEvent(chromedp.MouseMoved, at(k).X, at(k).Y, chromedp.ButtonLeft))
			}
			b.do(steps...)
			last := at(paintMoves - 1)
			took[i] = append(took[i], eval[[]shown](b, `window.paint.taken()`)...)
			b.do(chromedp.MouseEvent(chromedp.MouseReleased, last.X, last.Y, chromedp.ButtonLeft, chromedp.ClickCount(1)))
			b.until(chartSaved) // so that saving is in no stroke's time
		}
	}
	return took
}

// largeChart makes a mitt whose hand, all round, has at least n stitches and
// n rounds.
func largeChart(b *browser, n int) string {
	b.t.Helper()
	b.open("/")
	b.follow(".begin form:nth-of-type(2) button")
	path := b.mitt()
	form := url.Values{"after": {"1"}}
	for name, value := range map[string]string{
		"gauge.swatches[0].stitches": fmt.Sprintf("%.1f", float64(n)*0.42), "gauge.swatches[0].width": "10",
		"chart.yarns[0].colour": "#B9562F", "chart.yarns[0].name": "rust",
		"gauge.swatches[0].rounds": fmt.Sprintf("%.1f", float64(n)*1.03), "gauge.swatches[0].height": "10",
		"hand.hand_circumference": "19", "hand.thumb_circumference": "6.5", "hand.hand_length": "18",
		"pins.gusset_rounds": fmt.Sprint(n - n/4), "pins.rounds_above_gusset": fmt.Sprint(n / 4),
	} {
		form.Set(name, value)
	}
	status := await[int](b, fmt.Sprintf(`fetch(%q, {method: "POST", body: new URLSearchParams(%q), headers: {Accept: "application/json"}}).then((r) => r.status)`, path, form.Encode()))
	require.Equal(b.t, 200, status)
	return path + "/desk/chart?view=hand&cells=square"
}

// layMotifs lays so many motifs by rule all round and all the way up, one over the other.
func layMotifs(b *browser, path string, n int) {
	b.t.Helper()
	mitt, _, _ := strings.Cut(path, "/desk")
	for i, motif := range []string{"..bb..bb\n.bb..bb.\nbb..bb..\n........\n..bbbb..\n.b....b.", "c....\n.c...\n..c..", "bbbcccaaadd\n...........\nd.........d"}[:n] {
		status := await[int](b, fmt.Sprintf(`fetch(%q, {method: "POST", body: new URLSearchParams(%q)}).then((r) => r.status)`, mitt+"/repeats", url.Values{"motif": {motif}, "offset": {fmt.Sprint(i)}}.Encode()))
		require.Equal(b.t, 200, status, "led to the chart")
	}
}

// painted notes when the frame with the whole page, its chart taken over by the
// script, is on the screen: two frames after the document is complete.
const painted = `addEventListener("DOMContentLoaded", () => requestAnimationFrame(() => requestAnimationFrame((now) => { window.painted = now; })))`

// opened is the median time of five from asking for a page to its painted
// chart.
func opened(b *browser, path string) float64 {
	b.t.Helper()
	b.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, cdppage.AddScriptToEvaluateOnNewDocument, cdppage.AddScriptToEvaluateOnNewDocumentParams{Source: painted})
		return err
	}))
	var took []float64
	for range 5 {
		b.do(chromedp.Navigate(b.url + path))
		b.until(`window.painted > 0 && document.getElementById("chart-cell") !== null`)
		took = append(took, eval[float64](b, `window.painted`))
	}
	return quantile(took, 0.5)
}

func quantile(list []float64, share float64) float64 {
	list = slices.Clone(list)
	slices.Sort(list)
	return list[int(share*float64(len(list)-1)+0.5)]
}

// table prints one line for each run, and the medians of their ratios.
func table(b *testing.B, n int, tool string, runs [][2][]shown) {
	b.Helper()
	var medians, tails, own []float64
	for i, r := range runs {
		var at [2][2]float64
		for k, moves := range r {
			var took []float64
			for _, m := range moves {
				took = append(took, m.Frame)
				if k == 1 {
					own = append(own, m.Own)
				}
			}
			require.Greater(b, len(took), paintStrokes*paintMoves*3/4, "moves that were shown")
			at[k] = [2]float64{quantile(took, 0.5), quantile(took, 0.95)}
		}
		bare, chart := at[0], at[1]
		medians, tails = append(medians, chart[0]/bare[0]), append(tails, chart[1]/bare[1])
		b.Logf("%3d %s, run %d: canvas %.1f and %.1f ms, chart %.1f and %.1f ms, ratios %.2f and %.2f",
			n, tool, i+1, bare[0], bare[1], chart[0], chart[1], medians[i], tails[i])
	}
	b.Logf("%3d %s: median of the ratios %.2f, of those at 95 %% %.2f", n, tool, quantile(medians, 0.5), quantile(tails, 0.5))
	b.Logf("%3d %s: the script's own time for a move %.2f ms, at 95 %% %.2f", n, tool, quantile(own, 0.5), quantile(own, 0.95))
	b.ReportMetric(quantile(own, 0.5), "own-ms")
	b.ReportMetric(quantile(own, 0.95), "own-p95-ms")
	b.ReportMetric(quantile(medians, 0.5), "ratio")
	b.ReportMetric(quantile(tails, 0.5), "p95-ratio")
}
