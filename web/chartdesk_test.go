package web

import (
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"

	"thenar/internal/testenv"
)

// deskMeasures are what the chart's desk measures in a window.
type deskMeasures struct {
	Top, Share, Cell         float64
	ScrollX, ScrollY, InView int
	Foot, Right              bool
}

// measured measures the canvas with its rulers, and counts what can be focused
// in view.
const measured = `(() => {
	const canvas = document.querySelector("[data-canvas]").getBoundingClientRect();
	const frame = document.querySelector(".grid-frame");
	const data = JSON.parse(document.getElementById("chart-data").textContent);
	const svg = document.querySelector("svg[data-chart]");
	const inView = (e) => {
		const r = e.getBoundingClientRect();
		return e.checkVisibility({visibilityProperty: true}) && r.bottom > 0 && r.top < innerHeight && r.right > 0 && r.left < innerWidth;
	};
	const stops = [...document.querySelectorAll("a[href], button, input, select, textarea, summary, [tabindex]")].filter((e) => e.tabIndex >= 0 && !e.disabled && inView(e));
	return {
		Top: canvas.top, Share: canvas.width * canvas.height / (innerWidth * innerHeight),
		Cell: svg.getBoundingClientRect().width / svg.viewBox.baseVal.width * data.cell_width,
		ScrollX: document.documentElement.scrollWidth - innerWidth, ScrollY: document.documentElement.scrollHeight - innerHeight, InView: stops.length,
		Foot: frame.scrollTop + frame.clientHeight > frame.scrollHeight - 2,
		Right: frame.scrollLeft + frame.clientWidth > frame.scrollWidth - 2,
	};
})()`

// filled is the share of the canvas's height that the chart takes, or of its width if
// that is more.
const filled = `(() => {
	const svg = document.querySelector("svg[data-chart]").getBoundingClientRect(), frame = document.querySelector(".grid-frame");
	return Math.max(svg.height / frame.clientHeight, svg.width / frame.clientWidth);
})()`

// tooWide lists the words of the key that reach beyond its drawing.
const tooWide = `(() => {
	document.querySelector("[data-margin]").open = true;
	const right = (t) => Number(t.getAttribute("x")) + t.getComputedTextLength();
	return [...document.querySelectorAll(".key svg text")].filter((t) => right(t) > t.ownerSVGElement.viewBox.baseVal.width).map((t) => t.textContent);
})()`

// stillCanvas lists the heights of the canvas while words of one row, of two and of three
// are said beside a button.
const stillCanvas = `(() => {
	const told = document.querySelector("[data-told]"), words = document.getElementById("chart-announce");
	const highs = ["", "Rust.", "Round 12 of the hand is taken out, with its 42 stitches.", "Round 12 of the hand is taken out, with its 42 stitches, the note on it, and the rounds of the thumb that went by it."].map((text) => {
		told.className = "aloud" + (text === "" ? " quiet" : text.length > 70 ? " long" : "");
		words.textContent = text;
		told.querySelector("[data-acts]").innerHTML = text && "<button>put it back</button>";
		return document.querySelector("[data-canvas]").getBoundingClientRect().height;
	});
	told.className = "aloud quiet";
	words.textContent = "";
	told.querySelector("[data-acts]").replaceChildren();
	return [...new Set(highs)];
})()`

// The chart comes first, on a desk and on a phone: it begins near the top, has
// most of the window, which does not scroll, and opens where reading begins.
// With a brush ready, the first press paints.
func TestTheChartFillsItsDesk(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	path := b.sample()
	for _, size := range testenv.Some(2, [][2]int64{{1280, 800}, {1920, 1080}, {1440, 900}}) {
		b.size(size[0], size[1])
		b.open(path + "/desk/chart?view=hand")
		b.until(`document.querySelector("[data-needle] .wood") !== null`)
		got := eval[deskMeasures](b, measured)
		t.Logf("%v: %+v", size, got)
		assert.LessOrEqual(t, got.Top, 120.0, "%v", size)
		assert.GreaterOrEqual(t, got.Share, 0.6, "%v", size)
		assert.LessOrEqual(t, got.InView, 45, "%v", size)
		assert.Zero(t, max(got.ScrollX, 0)+max(got.ScrollY, 0), "%v: the page does not scroll", size)
		assert.True(t, got.Foot, "%v: it opens at the foot", size)
	}
	b.click(b.cell(2, 1))
	b.until(chartSaved)
	b.until(`document.querySelector('[data-layer="painted"] [data-row="2"]').getAttribute("d") !== ""`)
	b.open(path + "/desk/chart?view=gusset")
	b.until(`document.querySelector("[data-needle] .wood") !== null`)
	small := eval[float64](b, filled)
	b.size(1920, 1080)
	b.until(filled + ` > 0.75`)
	assert.Less(t, eval[float64](b, filled), 1.01, "all rounds are in view")
	assert.Greater(t, small, 0.75, "a smaller window is filled as well")
	assert.Empty(t, eval[[]string](b, tooWide), "the key's words are as wide as they were measured")

	for _, size := range [][2]int64{{390, 844}, {360, 740}} {
		b.do(chromedp.EmulateViewport(size[0], size[1], chromedp.EmulateMobile, chromedp.EmulateTouch))
		b.open("/")
		b.do(chromedp.Evaluate[chromedp.Void](`localStorage.clear()`)) // as on another device
		b.open(path + "/desk/chart?view=hand")
		b.until(`document.querySelector("[data-needle] .wood") !== null`)
		got := eval[deskMeasures](b, measured)
		t.Logf("%v: %+v", size, got)
		assert.LessOrEqual(t, got.Top, 120.0, "%v", size)
		assert.GreaterOrEqual(t, got.Cell, 28.0, "%v", size)
		assert.True(t, got.Foot && got.Right, "%v: it opens where reading begins", size)
		assert.Zero(t, max(got.ScrollX, 0)+max(got.ScrollY, 0), "%v: the page does not scroll", size)
	}
	assert.Len(t, eval[[]float64](b, stillCanvas), 1, "the chart keeps still while what is said gets longer")
	b.touch(b.cell(3, 1))
	b.until(`document.querySelector('[data-layer="painted"] [data-row="3"]').getAttribute("d") !== ""`)
	b.until(chartSaved)
}

// Coming back to a chart finds the view, the round, the size and what was marked
// off; the letters on the reaches work on the chart, and no letter alone takes
// back.
func TestComingBackToAChart(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	path := chartOf(b, "")
	b.do(chromedp.Click(chromedp.CSS(`[data-go="hand"]`)))
	b.until(`document.querySelector("svg[data-chart]").dataset.chart === "hand"`)
	b.until(quiet)
	b.until(`document.getElementById("chart-cell").getAttribute("aria-label").startsWith("round 1 of the hand")`)
	b.do(chromedp.Focus(chromedp.CSS("svg[data-chart]")))
	b.key("p") // a round is put in
	b.until(chartSaved)
	b.key("m", kb.ArrowUp, kb.ArrowUp, "+")
	b.with(kb.ArrowLeft, chromedp.ModifierShift)
	b.says("2 stitches marked off")
	b.key("u", "r")
	seen := `[document.querySelector("svg[data-chart]").dataset.chart, document.querySelector("svg[data-chart]").getAttribute("width"), document.querySelector(".chosen").getAttribute("d"), document.getElementById("chart-count").textContent, document.querySelector('[data-shape="select"]').getAttribute("aria-pressed")].join()`
	b.until(chartSaved)
	left := eval[string](b, seen)
	assert.Contains(t, left, "hand,")
	assert.Contains(t, left, "Round 3: ")
	b.desk(path, "fit")
	b.desk(path, "chart")
	b.until(`document.querySelector("[data-needle] .wood") !== null`)
	assert.Equal(t, left, eval[string](b, seen))
}
