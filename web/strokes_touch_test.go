package web

import (
	"context"
	"fmt"
	"testing"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/input"
	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// fingers are what touches the screen after a change of them.
func (b *browser) fingers(kind input.DispatchTouchEventType, at ...point) {
	b.t.Helper()
	points := []*input.TouchPoint{}
	for i, p := range at {
		points = append(points, &input.TouchPoint{X: p.X, Y: p.Y, ID: new(float64(i))})
	}
	b.do(chromedp.Func(func(ctx context.Context, t *chromedp.Target) error {
		_, err := cdp.Call(ctx, t, input.DispatchTouchEvent, input.DispatchTouchEventParams{Type: kind, TouchPoints: points})
		return err
	}))
	await[bool](b, drawn) // the page has seen them before they move on
}

const (
	down      = input.DispatchTouchEventTypeTouchStart
	moved     = input.DispatchTouchEventTypeTouchMove
	lifted    = input.DispatchTouchEventTypeTouchEnd
	cancelled = input.DispatchTouchEventTypeTouchCancel
)

func (p point) by(x, y float64) point { return point{p.X + x, p.Y + y} }

// By touch: one finger paints, two move and enlarge the chart and paint
// nothing, one that only rests beside another leaves its stroke alone, and to
// look is to scroll.
func TestStrokesByTouch(t *testing.T) {
	t.Parallel()
	d := drawingOf(t)
	d.phone()
	d.until(`innerWidth === 360`)
	await[bool](d.browser, drawn) // the chart lies as it will before a finger is put on it
	colour := d.brush("free")
	d.until(`getComputedStyle(document.querySelector("svg[data-chart]")).touchAction === "none"`)
	over, to := d.cell(11, 1), d.margin(11)
	d.fingers(down, over)
	d.fingers(moved, to)
	d.fingers(lifted)
	d.once("one finger", 11, 1, colour)

	d.brush("free")
	width, hand := eval[float64](d.browser, chartWidth), eval[string](d.browser, inHand)
	over = d.cell(8, 2)
	d.fingers(down, over)
	d.fingers(down, over, over.by(40, 0))
	d.fingers(moved, over.by(-60, 0), over.by(100, 0))
	d.fingers(moved, over.by(-80, 10), over.by(120, 10))
	d.fingers(lifted, over.by(-80, 10))
	d.fingers(moved, over)
	d.fingers(lifted)
	d.stays("two fingers", 0)
	assert.Greater(t, eval[float64](d.browser, chartWidth), 2*width, "they enlarge")
	assert.Equal(t, hand, eval[string](d.browser, inHand), "what is in hand stays")

	d.brush("free")
	over = d.cell(11, 1)
	d.fingers(down, over)
	d.fingers(moved, over.by(30, 0))
	d.fingers(down, over.by(30, 0), over.by(60, 60))
	d.fingers(moved, over.by(40, 0), over.by(60, 90))
	d.fingers(lifted)
	d.stays("a second finger that moves", 0)

	colour = d.brush("free")
	over = d.cell(11, 1)
	d.fingers(down, over)
	d.fingers(moved, over.by(30, 0))
	d.fingers(down, over.by(30, 0), over.by(60, 60))
	d.fingers(moved, over.by(40, 0), over.by(61, 61))
	d.fingers(lifted, over.by(61, 61))
	d.fingers(lifted)
	d.once("a second finger that rests", 11, 1, colour)

	colour = d.brush("free")
	over = d.cell(11, 1)
	d.fingers(down, over)
	d.fingers(moved, over.by(20, 0))
	d.fingers(cancelled)
	d.says("what was drawn is kept")
	d.once("a finger that is taken away", 11, 1, colour)

	d.brush("look")
	before := eval[float64](d.browser, scrolled)
	over = d.cell(8, 2)
	d.fingers(down, over)
	for y := 10.0; y < 100; y += 10 {
		d.fingers(moved, over.by(0, -y))
	}
	d.fingers(lifted)
	d.stays("to look", 0)
	require.NotEqual(t, before, eval[float64](d.browser, scrolled), "the finger scrolls")
	d.until(fmt.Sprintf(`%s === %q`, inHand, hand))
	d.shot("strokes-touch")
}

const (
	chartWidth = `document.querySelector("svg[data-chart]").getBoundingClientRect().width`
	inHand     = `document.getElementById("chart-cell").getAttribute("aria-label").replace(/(, stitch \d+).*/, "$1")`
	scrolled   = `(window.scrollY + document.querySelector(".grid-frame").scrollTop)`
)

// A pointer that is taken away keeps what it has drawn, and says so.
func TestAStrokeBrokenOffIsKept(t *testing.T) {
	t.Parallel()
	d := drawingOf(t)
	for name, breaks := range map[string]string{
		"cancelled":        `document.querySelector("svg[data-chart]").dispatchEvent(new PointerEvent("pointercancel", {bubbles: true, pointerId: 1, pointerType: "mouse", isPrimary: true}))`,
		"capture lost":     `document.querySelector("svg[data-chart]").releasePointerCapture(1)`,
		"the chart is new": `document.dispatchEvent(new CustomEvent("thenar:view"))`,
	} {
		colour := d.brush("free")
		over := d.cell(11, 1)
		d.do(
			chromedp.MouseEvent(chromedp.MousePressed, over.X, over.Y, chromedp.ButtonLeft, chromedp.ClickCount(1)),
			chromedp.MouseEvent(chromedp.MouseMoved, over.X+20, over.Y, chromedp.ButtonLeft),
			chromedp.Evaluate[chromedp.Void](breaks),
			chromedp.MouseEvent(chromedp.MouseMoved, over.X+21, over.Y, chromedp.ButtonLeft),
		)
		if name != "the chart is new" {
			d.says("what was drawn is kept")
		}
		d.until(quiet)
		d.do(chromedp.MouseEvent(chromedp.MouseReleased, over.X+21, over.Y, chromedp.ButtonLeft, chromedp.ClickCount(1)))
		d.once(name, 11, 1, colour)
	}
}
