package web

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A stroke under the pointer lies over the chart, which is not drawn anew for it,
// and looks as it does once it has ended: in colour and in symbols, freely drawn and
// over a rectangle, across edges of the gusset and a heavy line.
func TestStrokeLooksAsItEnds(t *testing.T) {
	t.Parallel()
	d := drawingOf(t)
	d.brush("free")
	d.pull(d.cell(3, 1), d.cell(4, 2)) // from here on, the chart is knitted
	d.stays("a colour", 1)
	fabric := `["colour", "knit", "symbol"].map((l) => document.querySelector('[data-layer="' + l + '"]').innerHTML).join()`
	over := `document.querySelectorAll(".over [clip-path] path[d]:not([d=''])").length`
	for _, one := range []struct{ brush, shape string }{{"data-tool-colour=b", "free"}, {"data-tool-op=p", "free"}, {"data-tool-colour=c", "rectangle"}} {
		name := one.brush + " " + one.shape
		d.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`document.querySelector('[%s]').click(); document.querySelector('[data-shape=%q]').click()`, one.brush, one.shape)))
		places := []point{d.cell(12, 1), d.cell(9, 6), d.cell(10, 4), d.cell(11, 8)}
		before := eval[string](d.browser, fabric)
		d.do(chromedp.MouseEvent(chromedp.MousePressed, places[0].X, places[0].Y, chromedp.ButtonLeft, chromedp.ClickCount(1)))
		for _, p := range places[1:] {
			d.do(chromedp.MouseEvent(chromedp.MouseMoved, p.X, p.Y, chromedp.ButtonLeft))
		}
		d.until(over + ` > 0`)
		assert.Equal(t, before, eval[string](d.browser, fabric), "%s: the fabric waits", name)
		during := d.canvas()
		last := places[len(places)-1]
		d.do(chromedp.MouseEvent(chromedp.MouseReleased, last.X, last.Y, chromedp.ButtonLeft, chromedp.ClickCount(1)))
		d.until(chartSaved + ` && ` + over + ` === 0`)
		assert.NotEqual(t, before, eval[string](d.browser, fabric), "%s: the fabric has it", name)
		d.revision = d.head().Revision
		differ, all := unlike(during, d.canvas())
		assert.Less(t, differ, all/5000, "%s: points that change as the stroke ends, of %d", name, all)
	}
}

// canvas is a picture of the chart between its rulers.
func (d *drawing) canvas() image.Image {
	d.t.Helper()
	data, err := chromedp.Run(d.ctx, chromedp.CaptureScreenshot())
	require.NoError(d.t, err)
	whole, err := png.Decode(bytes.NewReader(data))
	require.NoError(d.t, err)
	box := eval[[]int](d.browser, `(() => {
		const b = document.querySelector(".grid-frame").getBoundingClientRect();
		return [b.left, b.top, b.right, b.bottom].map(Math.round);
	})()`)
	part, ok := whole.(interface {
		SubImage(image.Rectangle) image.Image
	})
	require.True(d.t, ok)
	return part.SubImage(image.Rect(box[0], box[1], box[2], box[3]))
}

// unlike counts the points in which two pictures of one size differ by more than
// the softness of an edge, and all points.
func unlike(a, b image.Image) (differ, all int) {
	for y := a.Bounds().Min.Y; y < a.Bounds().Max.Y; y++ {
		for x := a.Bounds().Min.X; x < a.Bounds().Max.X; x++ {
			all++
			r, g, bl, _ := a.At(x, y).RGBA()
			r2, g2, bl2, _ := b.At(x, y).RGBA()
			for _, by := range []int{int(r) - int(r2), int(g) - int(g2), int(bl) - int(bl2)} {
				if by > 0x3000 || by < -0x3000 {
					differ++
					break
				}
			}
		}
	}
	return differ, all
}
