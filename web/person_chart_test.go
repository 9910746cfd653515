package web

import (
	"fmt"

	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/require"
)

// stitchAt is where a stitch of the chart is, scrolled to where need be.
func (p *person) stitchAt(round, stitch int) point {
	p.t.Helper()
	return p.seen(`document.querySelector("svg[data-chart]")`, stitchPlace(round, stitch))
}

// stitchPlace is where a stitch of the chart e is in the window.
func stitchPlace(round, stitch int) string {
	return fmt.Sprintf(`(() => {
		const data = JSON.parse(document.getElementById("chart-data").textContent);
		const x = data.rows[%d - 1].runs.flatMap((r) => Array.from({length: r.n}, (_, i) => r.x < 0 ? -1 : r.x - i))[%d - 1];
		const q = new DOMPoint(data.left + (x + 0.5) * data.cell_width, data.bottom - (%d - 0.5) * data.cell_height).matrixTransform(e.getScreenCTM());
		return [q.x, q.y];
	})()`, round, stitch, round)
}

// stitchWide is how wide a stitch of the chart is drawn, in px.
func (p *person) stitchWide() float64 {
	p.t.Helper()
	return eval[float64](p.browser, `JSON.parse(document.getElementById("chart-data").textContent).cell_width * document.querySelector("svg[data-chart]").getScreenCTM().a`)
}

// paints paints a stitch of the chart.
func (p *person) paints(round, stitch int) {
	p.t.Helper()
	if p.way != byKeys {
		p.pressAt(p.stitchAt(round, stitch))
		return
	}
	p.cursorTo(round, stitch)
	p.strike(kb.Enter)
}

// spans goes from one stitch of the chart to another one, left of it and above:
// by one drag, or by the cursor with Shift.
func (p *person) spans(round, stitch, up, left int) {
	p.t.Helper()
	if p.way == byKeys {
		p.cursorTo(round, stitch)
		p.shift(kb.ArrowUp, up)
		p.shift(kb.ArrowLeft, left)
		return
	}
	from, to := p.stitchAt(round, stitch), p.stitchAt(round+up, stitch+left)
	p.presses++
	if p.way == byTouch {
		p.fingers(down, from)
		await[bool](p.browser, drawn)
		p.fingers(moved, to)
		await[bool](p.browser, drawn)
		p.fingers(moved, to.by(1, 0)) // it rests before it leaves: a tap that stops a fling is none
		p.fingers(lifted)
	} else {
		p.drag(from, to)
	}
}

// cursorTo moves the chart's cursor to a stitch, by the arrows.
func (p *person) cursorTo(round, stitch int) {
	p.t.Helper()
	p.keyTo("svg[data-chart]")
	for range 200 {
		by := eval[[2]int](p.browser, fmt.Sprintf(`(() => {
			const e = document.querySelector("svg[data-chart]"), matrix = e.getScreenCTM();
			const data = JSON.parse(document.getElementById("chart-data").textContent);
			const [x, y] = %s;
			const r = document.getElementById("chart-cell").getBoundingClientRect();
			return [Math.round((r.left + r.width / 2 - x) / data.cell_width / matrix.a), Math.round((r.top + r.height / 2 - y) / data.cell_height / matrix.d)];
		})()`, stitchPlace(round, stitch)))
		switch {
		case by[1] > 0:
			p.strike(kb.ArrowUp)
		case by[1] < 0:
			p.strike(kb.ArrowDown)
		case by[0] < -12:
			p.strike(kb.End)
		case by[0] < 0:
			p.strike(kb.ArrowRight)
		case by[0] > 0:
			p.strike(kb.ArrowLeft)
		default:
			return
		}
		await[bool](p.browser, drawn)
	}
	require.Fail(p.t, "the arrows never come to it", "round %d, stitch %d", round, stitch)
}
