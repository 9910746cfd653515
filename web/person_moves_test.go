package web

import (
	"context"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
)

// offScreen is how far something is from the middle of what would have to show
// it: the window, or a part that scrolls by itself, of which so much is seen.
type offScreen struct {
	Middle, By point
	Wide, High float64
	Canvas     bool
}

// scroll brings nearer what is off the screen, by the wheel or by a finger, on
// the chart's canvas by two, and reports whether anything moved.
func (p *person) scroll(off offScreen) bool {
	p.t.Helper()
	limit := func(by, size float64) float64 { return max(-0.4*size, min(0.4*size, by)) }
	if p.way == byTouch {
		off.By = point{limit(off.By.X, off.Wide), limit(off.By.Y, off.High)}
	}
	before := eval[[]float64](p.browser, scrolledTo)
	switch {
	case p.way != byTouch:
		p.wheel(off.Middle, off.By)
	case off.Canvas:
		p.twoFingers(off.Middle, off.By)
	default:
		from := off.Middle.by(off.By.X/2, off.By.Y/2)
		p.fingers(down, from)
		for i := 1.0; i <= 5; i++ {
			p.fingers(moved, from.by(-off.By.X*i/5, -off.By.Y*i/5))
		}
		p.fingers(moved, from.by(-off.By.X, -off.By.Y)) // it rests before it leaves: no fling
		p.fingers(lifted)
	}
	await[bool](p.browser, `new Promise((done) => {
		let last = "", same = 0;
		const look = () => {
			const now = JSON.stringify(`+scrolledTo+`);
			same = now === last ? same + 1 : 0;
			last = now;
			if (same > 5) done(true); else requestAnimationFrame(look);
		};
		look();
	})`)
	passed := 0.0
	for i, now := range eval[[]float64](p.browser, scrolledTo) {
		passed += max(now-before[i], before[i]-now)
	}
	if passed == 0 {
		return false
	}
	p.moves++
	p.screens += passed
	return true
}

// scrolledTo is how far the window and the parts that scroll by themselves are
// scrolled, in what they show at once.
const scrolledTo = `[document.scrollingElement, ...document.querySelectorAll("main *, dialog *")]
	.filter((e) => e === document.scrollingElement || (e.clientHeight > 0 && (e.scrollHeight > e.clientHeight + 1 || e.scrollWidth > e.clientWidth + 1) && /auto|scroll/.test(getComputedStyle(e).overflow)))
	.flatMap((e) => [e.scrollLeft / e.clientWidth, e.scrollTop / e.clientHeight])`

// twoFingers moves the chart by two fingers side by side.
func (p *person) twoFingers(middle, by point) {
	p.t.Helper()
	left, right := middle.by(by.X/2-30, by.Y/2), middle.by(by.X/2+30, by.Y/2)
	p.fingers(down, left)
	p.fingers(down, left, right)
	for i := 1.0; i <= 5; i++ {
		p.fingers(moved, left.by(-by.X*i/5, -by.Y*i/5), right.by(-by.X*i/5, -by.Y*i/5))
	}
	p.fingers(lifted)
}

// wheel turns the mouse's wheel.
func (p *person) wheel(at, by point) {
	p.t.Helper()
	const still = 1e-9 // a zero would not be sent, and is missed
	p.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, input.DispatchMouseEvent, input.DispatchMouseEventParams{Type: input.DispatchMouseEventTypeMouseWheel, X: at.X, Y: at.Y, DeltaX: by.X + still, DeltaY: by.Y + still})
		return err
	}))
}
