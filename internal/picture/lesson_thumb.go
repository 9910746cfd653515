package picture

import (
	"math"
	"strconv"

	"thenar/internal/draw"
)

// drawLoops draws loops of the working yarn on the right needle, and the next one on
// its way there.
func drawLoops(k *sketch, _ LessonOptions) {
	const y = 10.0
	k.leg(pale, 33, y, 16, 30.6)
	loops := []float64{27, 22}
	for _, x := range loops {
		k.yarn(pale, point{x + 3.4, y + 5}, point{x + 1, y + 6.2}, point{x - 1.4, y + 3}, point{x, y - 2.8})
	}
	k.needle(point{40, y}, point{14, y})
	k.leg(pale, 33, y, 16, 35.4)
	for _, x := range loops {
		k.yarn(pale, point{x, y - 2.8}, point{x + 1.8, y}, point{x + 1.2, y + 4}, point{x - 1.6, y + 5.4})
	}
	// the next loop: the yarn turned once over itself
	k.yarn(dark, point{20.4, y + 5.4}, point{16, y + 8}, point{10, y + 12}, point{6.5, y + 17}, point{9, y + 21}, point{13, y + 19}, point{12.6, y + 14.5})
	k.yarn(dark, point{12.6, y + 14.5}, point{10.5, y + 11}, point{6, y + 10}, point{1, y + 11})
	k.arrow(point{14, y + 21}, point{19, y + 17}, point{17, y + 9}, point{13.5, y + 3})
}

// The corners of the thumb's opening within its panel, in mm.
const (
	openLeft, openRight = 10.6, 55.4
	openTop, openFoot   = 9.0, 25.0
)

// upperEdge and lowerEdge return the point of the opening's edge at a share of the
// way from its left to its right corner.
func upperEdge(share float64) point { return openEdge(share, -1) }
func lowerEdge(share float64) point { return openEdge(share, 1) }

func openEdge(share, side float64) point {
	mid := (openTop + openFoot) / 2
	x := openLeft + share*(openRight-openLeft)
	return point{x, mid + side*(openFoot-openTop)/2*math.Sqrt(max(0, 1-math.Pow(2*share-1, 2)*0.92))}
}

// drawOpening draws the thumb's opening as seen from the tip of the thumb: the held
// stitches below, the edge of the bridge above. Stitches are picked up along the
// bridge from the left corner, and the round goes on with the held ones.
func drawOpening(k *sketch, o LessonOptions) {
	held := min(max(o.Held, 3), 17)
	var thread []point
	for i := range held {
		at := lowerEdge((float64(i) + 0.5) / float64(held))
		thread = append(thread, point{at.x, at.y + 0.6})
		k.loop(pale, at, min(1.9, 0.5*(openRight-openLeft)/float64(held)), 3)
	}
	k.s.Path(k.curve(thread...), draw.Style{Stroke: outlineColour, Width: 0.6, Dash: "1.6 1"})
	edge := make([]point, 0, 21)
	for i := range 21 {
		edge = append(edge, upperEdge(float64(i)/20))
	}
	k.yarn(pale, edge...)
	for _, corner := range []float64{0, 1} {
		a, b := upperEdge(corner), lowerEdge(corner)
		k.yarn(dark, point{a.x, a.y}, point{a.x + (corner-0.5)*3, (a.y + b.y) / 2}, point{b.x, b.y})
	}
	n := min(max(o.PickedUp, 0), 12)
	for i := range n {
		at := upperEdge((float64(i) + 0.5) / float64(n))
		k.s.Path(k.ring(at.x, at.y, 1.1), draw.Style{Fill: pale, Stroke: outlineColour, Width: 0.4})
		if i == 0 || i == n-1 || draw.Measure(" "+strconv.Itoa(n), k.letter, draw.Semibold) < (openRight-openLeft)/float64(n) { // else they would touch
			k.note(at.x, at.y-2.4, strconv.Itoa(i+1), 3.2)
		}
	}
	k.note((openLeft+openRight)/2, (openTop+openFoot)/2+1, strconv.Itoa(o.Held)+" held", 3.2)
	k.note(openLeft-6.8, (openTop+openFoot)/2+1, "gap 2", 2.9)
	k.note(openRight+6.8, (openTop+openFoot)/2+1, "gap 1", 2.9)
	k.arrow(point{openLeft + 4, openTop - 5.7}, point{openLeft + 10, openTop - 7.5}, point{openLeft + 18, openTop - 8})
	k.arrow(point{openRight - 4, openFoot + 6}, point{openRight - 10, openFoot + 7.6}, point{openRight - 18, openFoot + 8})
}

// loop draws a small live stitch, open downwards.
func (k *sketch) loop(fill string, at point, wide, high float64) {
	k.strand(fill, 1.3, point{at.x - wide/2, at.y + high}, point{at.x - wide/2, at.y}, point{at.x, at.y - high*0.4}, point{at.x + wide/2, at.y}, point{at.x + wide/2, at.y + high})
}

// ring returns a circle as four cubics.
func (k *sketch) ring(x, y, r float64) string {
	if x = k.x(x); k.mirrored {
		r = -r
	}
	return ringAt(x, y, r)
}

func ringAt(x, y, r float64) string {
	const c = 0.5523
	return new(draw.Pen).Move(x+r, y).Curve(x+r, y+c*r, x+c*r, y+r, x, y+r).Curve(x-c*r, y+r, x-r, y+c*r, x-r, y).
		Curve(x-r, y-c*r, x-c*r, y-r, x, y-r).Curve(x+c*r, y-r, x+r, y-c*r, x+r, y).Close().String()
}

// drawFirstGap draws the corner that is worked first: the strand, lifted from behind, and
// the first held stitch are on the needle together.
func drawFirstGap(k *sketch, _ LessonOptions) { drawGap(k, 22, 14.5, "k2tog") }

// drawLastGap draws the other corner: the strand comes after the last held stitch.
func drawLastGap(k *sketch, _ LessonOptions) { drawGap(k, 14.5, 22, "ssk") }

// drawGap draws a strand and a stitch on a needle, and below an arc how both are worked
// together.
func drawGap(k *sketch, strand, stitch float64, name string) {
	const y = 11.0
	left, right := min(strand, stitch), max(strand, stitch)
	k.yarn(dark, point{strand + 2.8, y + 15}, point{strand + 2.4, y + 8}, point{strand + 1.8, y + 2}, point{strand, y - 2.8}) // behind
	k.leg(pale, stitch, y, 15, stitch-2.6)
	k.needle(point{left - 13, y}, point{right + 11, y})
	k.yarn(dark, point{strand, y - 2.8}, point{strand - 1.8, y + 2}, point{strand - 2.4, y + 8}, point{strand - 2.8, y + 15})
	k.leg(pale, stitch, y, 15, stitch+2.6)
	k.s.Path(k.curve(point{left - 4, y - 4.6}, point{(left + right) / 2, y - 6.4}, point{right + 4, y - 4.6}), draw.Style{Stroke: outlineColour, Width: 0.5, Round: true})
	k.note((left+right)/2, y-7.4, name, 3.2)
}
