package web

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"

	"thenar/internal/testenv"
)

// screenSizes are the sizes at which pages are measured, the last two of phones.
var screenSizes = [][2]int64{{1280, 800}, {1440, 900}, {1920, 1080}, {390, 844}, {360, 740}}

// How high the pages of the sample are, in screens, where the chart's canvas
// begins, how much of the window it has, and how many things have the focus in
// turn; in dark colours they are the same. It is a measurement, and done in long
// runs.
func TestScreensMeasured(t *testing.T) {
	if !testenv.Long() {
		return
	}
	b := newBrowser(t)
	mitt := sampled(b)
	for _, name := range deskNames {
		b.measured(name, mitt+"/desk/"+name)
	}
	b.measured("shelf", "/")
}

// measured logs the figures of one page at each size of the window.
func (b *browser) measured(name, path string) {
	b.t.Helper()
	var line strings.Builder
	for _, w := range screenSizes {
		b.size(w[0], w[1])
		if w[0] < 400 {
			b.do(chromedp.EmulateViewport(w[0], w[1], chromedp.EmulateMobile, chromedp.EmulateTouch))
		}
		b.open(path)
		await[bool](b, drawn)
		figures := eval[string](b, pageFigures)
		b.scheme("dark")
		await[bool](b, drawn)
		assert.Equal(b.t, figures, eval[string](b, pageFigures), "%s at %d×%d in the dark", name, w[0], w[1])
		b.scheme("light")
		fmt.Fprintf(&line, "  %d×%d: %s", w[0], w[1], figures)
	}
	b.t.Logf("%-8s%s", name, line.String())
}

// pageFigures tell the height of the page in screens, what can have the focus
// (of that in view), and of the canvas its top and its share of the window.
const pageFigures = `(() => {
	const focusable = [...document.querySelectorAll("a[href], button, input:not([type=hidden]), select, textarea, summary, [tabindex='0']")]
		.filter((e) => e.checkVisibility() && !e.disabled && e.tabIndex >= 0);
	const seen = focusable.filter((e) => { const r = e.getBoundingClientRect(); return r.bottom > 0 && r.top < innerHeight && r.right > 0 && r.left < innerWidth; });
	let says = (document.documentElement.scrollHeight / innerHeight).toFixed(1) + " screens, " + focusable.length + " controls (" + seen.length + " in view)";
	const canvas = document.querySelector("main .grid-frame");
	if (canvas) {
		const r = canvas.getBoundingClientRect();
		says += ", canvas at " + Math.round(r.top + scrollY) + " px, " + Math.round(100 * r.width * Math.min(r.height, innerHeight) / innerWidth / innerHeight) + " %, a stitch " +
			(JSON.parse(document.getElementById("chart-data").textContent).cell_width * document.querySelector("svg[data-chart]").getScreenCTM().a).toFixed(1) + " px";
	}
	return says;
})()`
