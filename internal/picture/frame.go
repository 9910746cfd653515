package picture

import (
	"math"

	"thenar/internal/draw"
	"thenar/internal/hand"
)

// Every girth is drawn flat as girth ÷ 2.40, the ratio of a hand's
// circumference to its breadth (ANSUR II); fingers and thumb, which are
// round, as girth ÷ π. Fabric and body go by the same rule, so that they can
// be compared on the drawing.
const flatRatio = 2.40

func flat(girth float64) float64  { return girth / flatRatio }
func round(girth float64) float64 { return girth / math.Pi }

// Shares of the hand's length for what is not measured, from ratios of means
// in Greiner 1991 (NATICK/TR-92/011): where the fingers part, how long they
// are from there, and how thick, as a share of the hand's circumference.
const (
	fingersPart = 0.56
	littleParts = 0.49
)

// finger is one finger: how long from its crotch (share of the hand's length)
// and its girth (share of the hand's circumference).
type finger struct{ long, girth float64 }

// fingers from the thumb's side: index, middle, ring, little.
var fingers = [4]finger{{0.385, 0.324}, {0.433, 0.328}, {0.405, 0.306}, {0.322, 0.271}}

// thumbLean is the angle between the thumb and the hand.
const thumbLean = 34 * math.Pi / 180

// frame places a hand on a page: x to the right and y upwards from the middle
// of the wrist crease, in mm, as the right hand with its palm towards the
// viewer, so that the thumb is at the right.
type frame struct {
	h                   hand.Hand
	wrist, palm         float64 // half widths
	crotch, base        float64 // heights of the parting and of the gusset's base
	thumbX              float64 // where the thumb's inner line begins
	thumbR              float64 // half the thumb's width
	left, right         float64 // extent of the hand
	bottom, top         float64
	originX, originY    float64 // of the page
	mirrored            bool
	pageWidth, pageHigh float64
}

// newFrame measures a filled hand; bottom is how far the drawing goes below
// the wrist crease, top how far up at the least.
func newFrame(h hand.Hand, bottom, top float64, mirrored bool) *frame {
	f := &frame{
		h: h, wrist: flat(h.Wrist.MM()) / 2, palm: flat(h.Circumference.MM()) / 2,
		crotch: h.WristToCrotch.MM(), bottom: -bottom, mirrored: mirrored,
	}
	f.base = f.crotch - h.GussetLength.MM()
	f.thumbR = round(h.Thumb.MM()) / 2
	f.thumbX = f.palm
	f.left = -max(f.palm, f.wrist)
	tip, _ := f.thumbAt(h.ThumbLength.MM(), 2*f.thumbR)
	f.right = max(f.palm, f.wrist, tip)
	f.top = max(h.Length.MM(), top)
	return f
}

// thumbAt is the point along the thumb, so far from the parting and so far
// out from its inner line.
func (f *frame) thumbAt(along, out float64) (x, y float64) {
	sin, cos := math.Sin(thumbLean), math.Cos(thumbLean)
	return f.thumbX + along*sin + out*cos, f.crotch + along*cos - out*sin
}

// page fixes the margins: room at the spine's side and at the labels' side.
func (f *frame) page(spine, labels, above, below float64) {
	f.originX = spine - f.left
	f.originY = above + f.top
	f.pageWidth = spine + f.right - f.left + labels
	f.pageHigh = above + f.top - f.bottom + below
}

// X and Y turn the hand's coordinates into the page's.
func (f *frame) X(x float64) float64 {
	if f.mirrored {
		return f.pageWidth - f.originX - x
	}
	return f.originX + x
}

func (f *frame) Y(y float64) float64 { return f.originY - y }

// anchor turns an anchor with the picture.
func (f *frame) anchor(a draw.Anchor) draw.Anchor {
	if f.mirrored {
		return map[draw.Anchor]draw.Anchor{draw.Start: draw.End, draw.End: draw.Start, draw.Middle: draw.Middle}[a]
	}
	return a
}

// pen writes paths in the hand's coordinates.
type pen struct {
	f *frame
	draw.Pen
}

func (p *pen) move(x, y float64) { p.Move(p.f.X(x), p.f.Y(y)) }
func (p *pen) line(x, y float64) { p.Line(p.f.X(x), p.f.Y(y)) }
func (p *pen) curve(x1, y1, x2, y2, x, y float64) {
	p.Curve(p.f.X(x1), p.f.Y(y1), p.f.X(x2), p.f.Y(y2), p.f.X(x), p.f.Y(y))
}
