package web

import (
	"context"
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/stitch"
	"thenar/internal/store"
	"thenar/internal/testenv"
)

// drawing is a chart in a browser with something of every kind on it, and how
// many strokes of it the server has.
type drawing struct {
	*browser
	store    *store.Store
	revision int64
	colours  int
}

// drawingOf opens the sample with notes, a round on the needles, an unsound
// round, a strand that is too long, painted cells and a selection.
func drawingOf(t *testing.T) *drawing {
	t.Helper()
	st, url := serveApp(t)
	b := newBrowserAt(t, url)
	b.size(1280, 1400)
	d := &drawing{browser: b, store: st}
	mitt := b.sample()
	edit := func(round int, column string, layer chart.Layer, value string) chart.Edit {
		return chart.Edit{Section: stitch.Gusset, Round: round, Column: column, Layer: layer, Value: value}
	}
	_, err := st.Append(t.Context(), 1, 1, []chart.Edit{
		edit(5, "", chart.Notes, "a round"), edit(6, "A1", chart.Notes, "a cell"), edit(7, "", chart.Needles, "here"),
		edit(9, "A1", chart.Stitches, "k2tog"), edit(18, "A6", chart.Colours, "b"), edit(18, "Z6", chart.Colours, "b"),
	})
	require.NoError(t, err)
	b.desk(mitt, "chart")
	b.until(`document.querySelector("#chart-floats .look") !== null`)
	b.do(chromedp.Click(chromedp.CSS(`[data-shape="select"]`)))
	b.drag(b.cell(14, 2), b.cell(15, 3))
	b.until(`document.querySelector(".chosen").getAttribute("d") !== ""`)
	d.revision = d.head().Revision
	return d
}

func (d *drawing) head() store.Mitt {
	d.t.Helper()
	m, err := d.store.Load(context.Background(), 1)
	require.NoError(d.t, err)
	return m
}

// brush chooses what the pointer does, with a colour that it did not paint in
// just before.
func (d *drawing) brush(shape string) string {
	d.t.Helper()
	d.colours++
	colour := string(rune('b' + d.colours%3))
	d.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`document.querySelector('[data-tool-colour=%q]').click(); document.querySelector('[data-shape=%q]').click()`, colour, shape)))
	return colour
}

// once holds that one more stroke is on the server, that a cell has its
// colour there, and that no text is selected.
func (d *drawing) once(name string, round, stitches int, colour string) {
	d.t.Helper()
	d.stays(name, 1)
	column := eval[string](d.browser, fmt.Sprintf(`(() => {
		const data = JSON.parse(document.getElementById("chart-data").textContent);
		return data.rows[%d - 1].runs.flatMap((r) => Array.from({length: r.n}, (_, i) => r.column[0] + (Number(r.column.slice(1)) + i * r.step)))[%d - 1];
	})()`, round, stitches))
	painted := d.head().Marks[chart.Anchor{Section: stitch.Gusset, Round: round, Column: column}].Colour
	assert.Equal(d.t, colour, painted, "%s: round %d, %s", name, round, column)
}

// stays holds that so many strokes more are on the server, and that no text is
// selected.
func (d *drawing) stays(name string, more int64) {
	d.t.Helper()
	d.until(chartSaved)
	now := d.head().Revision
	assert.Equal(d.t, d.revision+more, now, "%s: the strokes on the server", name)
	d.revision = now
	assert.Empty(d.t, eval[string](d.browser, `window.getSelection().toString()`), "%s: no text is selected", name)
}

// pull drags by mouse with a stop on the way, as a hand does.
func (b *browser) pull(places ...point) {
	b.t.Helper()
	at := places[0]
	steps := []chromedp.Action[chromedp.Void]{chromedp.MouseEvent(chromedp.MousePressed, at.X, at.Y, chromedp.ButtonLeft, chromedp.ClickCount(1))}
	for _, to := range places[1:] {
		for i := 1.0; i <= 4; i++ {
			steps = append(steps, chromedp.MouseEvent(chromedp.MouseMoved, at.X+(to.X-at.X)*i/4, at.Y+(to.Y-at.Y)*i/4, chromedp.ButtonLeft))
		}
		at = to
	}
	b.do(append(steps, chromedp.MouseEvent(chromedp.MouseReleased, at.X, at.Y, chromedp.ButtonLeft, chromedp.ClickCount(1)))...)
}

// spot is a text or a mark of the drawing.
type spot struct {
	Name string
	point
}

// spots are the first and the last text of each kind, and every kind of mark.
func (d *drawing) spots() []spot {
	d.t.Helper()
	d.cell(11, 1)
	return eval[[]spot](d.browser, `(() => {
		document.querySelector('[data-sight="float"]').click(); // long strands are seen when asked for
		const kinds = new Map();
		for (const e of document.querySelectorAll("[data-canvas] text")) {
			if (!e.checkVisibility()) continue;
			const kind = ["text", e.getAttribute("class"), e.closest("[data-rule]")?.dataset.rule, isNaN(e.textContent) ? "words" : "number"].join(" ");
			kinds.set(kind, [...(kinds.get(kind) ?? []), e]);
		}
		const list = [...kinds].flatMap(([kind, all]) => [...new Set([all[0], all.at(-1)])].map((e) => [kind + " " + e.textContent, e]));
		for (const mark of ["note-flag", "needles", "fault", "painted", "chosen", "float", "grid", "border"]) {
			const all = [...document.querySelectorAll("[data-canvas] path." + mark)].filter((e) => e.getAttribute("d") && e.getBoundingClientRect().width > 0);
			if (all.length === 0 && mark !== "grid") throw new Error("no " + mark);
			for (const e of new Set(all.length > 0 ? [all[0], all.at(-1)] : [])) list.push([mark, e]);
		}
		return list.map(([Name, e]) => {
			const r = e.getBoundingClientRect();
			const edge = Name === "border" || Name === "grid";
			return {Name, X: edge ? r.left + 1 : r.left + r.width / 2, Y: r.top + r.height / 2};
		});
	})()`)
}

// A stroke that begins or ends on any text or mark of the drawing is kept, and
// leaves nothing selected.
func TestStrokesFromEveryTextAndMark(t *testing.T) {
	t.Parallel()
	d := drawingOf(t)
	spots := d.spots()
	require.Greater(t, len(spots), 15)
	tried := testenv.Some((len(spots)+2)/3, spots) // a short run takes every third one
	for i, from := range tried {
		to := tried[(i+1)%len(tried)]
		colour := d.brush("free")
		over := d.cell(11, 1)
		d.pull(from.point, over, to.point)
		d.once("from "+from.Name+" to "+to.Name, 11, 1, colour)
	}
	d.shot("strokes-marks")
}

// The other tools keep what they draw, too, when a drag begins or ends outside
// the grid, over the toolbar, off the window, or after everything was selected. A
// short run does all of it with one tool, and one of it with each of the others.
func TestStrokesOfEveryTool(t *testing.T) {
	t.Parallel()
	d := drawingOf(t)
	outside := func(selector string) point {
		t.Helper()
		return eval[point](d.browser, fmt.Sprintf(`(() => {
			const r = document.querySelector(%q).getBoundingClientRect();
			return {X: r.left + r.width / 2, Y: r.top + r.height / 2};
		})()`, selector))
	}
	drags := []struct {
		name string
		pull func(over point)
	}{
		{"after everything was selected", func(over point) { d.pull(over, d.margin(11)) }},
		{"from the margin", func(over point) { d.pull(d.margin(11), over) }},
		{"to the toolbar", func(over point) { d.pull(over, outside(`[data-do="undo"]`)) }},
		{"off the window", func(over point) { d.pull(over, point{over.X, -400}) }},
	}
	for i, shape := range []string{"free", "line", "rectangle", "fill"} {
		for k, drag := range drags {
			if i > 0 && i != k && !testenv.Long() {
				continue
			}
			if k == 0 {
				d.do(chromedp.Evaluate[chromedp.Void](`document.activeElement.blur()`))
				d.with("a", chromedp.ModifierCtrl)
				require.NotEmpty(t, eval[string](d.browser, `window.getSelection().toString()`), "text beside the chart can be selected")
			}
			colour := d.brush(shape)
			drag.pull(d.cell(11, 1))
			d.once(shape+" "+drag.name, 11, 1, colour)
		}
	}

	d.brush("select")
	d.pull(d.margin(10), d.cell(10, 2), d.cell(11, 1))
	d.stays("select from the margin", 0)
	assert.NotEmpty(t, eval[string](d.browser, `document.querySelector(".chosen").getAttribute("d")`))
	d.brush("look")
	d.pull(d.margin(10), d.cell(10, 2), d.margin(11))
	d.stays("look", 0)
	d.brush("free")
	d.pull(d.margin(3), d.margin(4))
	d.stays("beside the grid alone", 0)
	d.do(chromedp.Focus(chromedp.CSS("svg[data-chart]")))
	d.with("a", chromedp.ModifierCtrl)
	d.says("rounds marked off")
	d.stays("everything on the chart by keyboard", 0)
}

// What spans two corners begins where it was pressed, also beside the grid,
// whatever cell the pointer comes to first; so does an increase that is taken
// at the number of its round.
func TestStrokesSpanFromThePress(t *testing.T) {
	t.Parallel()
	d := drawingOf(t)
	colour := d.brush("rectangle")
	d.pull(d.margin(7), d.cell(13, 4))
	d.once("rectangle from the margin", 7, 1, colour)

	d.brush("select")
	d.pull(d.margin(7), d.cell(13, 4))
	d.stays("select from the margin", 0)
	d.do(chromedp.Focus(chromedp.CSS("svg[data-chart]")))
	d.key(kb.Backspace)
	d.once("what was selected, taken back", 7, 1, "")

	d.brush("move")
	d.pull(d.margin(10), d.cell(12, 1))
	d.says("increases in rounds 1, 4, 7, 12, 13, 16")
}

// margin is a place beside a round, right of its last cell.
func (d *drawing) margin(round int) point {
	d.t.Helper()
	p := d.cell(round, 1)
	p.X = eval[float64](d.browser, `(() => {
		const data = JSON.parse(document.getElementById("chart-data").textContent);
		const matrix = document.querySelector("svg[data-chart]").getScreenCTM();
		return new DOMPoint(data.left + data.width * data.cell_width, 0).matrixTransform(matrix).x + 12;
	})()`)
	return p
}

// A piece is stamped, and an increase moved, by drags that begin on selected
// text.
func TestStampAndMoveAfterSelectingEverything(t *testing.T) {
	t.Parallel()
	d := drawingOf(t)
	d.do(chromedp.Focus(chromedp.CSS("svg[data-chart]")))
	d.command("Keep it in the sampler")
	d.until(`document.activeElement.id === "chart-ask-text"`)
	d.key("four", kb.Enter)
	d.until(`document.querySelector('[data-motif="four"]') !== null`)
	all := func() {
		d.do(chromedp.Evaluate[chromedp.Void](`document.activeElement.blur(); window.getSelection().selectAllChildren(document.body)`))
	}
	d.brush("rectangle")
	d.pull(d.cell(14, 2), d.cell(15, 3))
	d.stays("what is copied", 1)
	d.do(chromedp.Focus(chromedp.CSS("svg[data-chart]")))
	d.command("Trace it")
	d.command("Keep it in the sampler")
	d.until(`document.activeElement.id === "chart-ask-text"`)
	d.key("coloured", kb.Enter)
	d.until(`document.querySelector('[data-motif="coloured"]') !== null`)
	all()
	d.do(chromedp.Evaluate[chromedp.Void](`document.querySelector('[data-motif="coloured"]').click()`))
	d.pull(d.cell(10, 4), d.cell(12, 3), d.margin(12))
	d.stays("a stamp", 1)

	all()
	d.brush("move")
	rounds := d.head().Decided
	d.pull(d.cell(7, 2), d.cell(8, 2))
	d.until(`[...document.querySelectorAll("[id^='field-pins']")].some((field) => field.value !== "")`)
	d.until(quiet)
	assert.Greater(t, d.head().Decided, rounds)
	assert.Empty(t, eval[string](d.browser, `window.getSelection().toString()`))
}
