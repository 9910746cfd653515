package picture

import (
	"math"
	"slices"
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

// The thumb's opening within its panel, in mm.
const (
	openLeft, openRight = 17.0, 49.0
	openTop, openFoot   = 6.0, 17.0
	openMiddle          = (openTop + openFoot) / 2
	heldRoom            = 22.0 // for what is written in it
	noteGap             = 4.6  // between it and what is written beside it
)

// openEdge returns the point of the opening's edge at a share of the way from its left to
// its right corner: of the upper edge with side −1, of the lower one with 1.
func openEdge(share, side float64) point {
	x := openLeft + share*(openRight-openLeft)
	return point{x, openMiddle + side*(openFoot-openTop)/2*math.Sqrt(max(0, 1-math.Pow(2*share-1, 2)*0.92))}
}

// mostDrawn is the most stitches that are drawn along an edge of the opening.
const mostDrawn = 20

// drawOpening draws the thumb's opening as it is held to pick up, with the fingers down:
// the held stitches at its upper edge, the stitches of the bridge below it. The round
// begins at the marker and runs along the bridge to the left. If nothing is picked up, the
// fingers are up, and the round begins with the held stitches.
func drawOpening(k *sketch, o LessonOptions) {
	bridge := 1.0
	if o.PickedUp == 0 {
		bridge = -1
	}
	k.heldEdge(o.Held, -bridge)
	k.bridgeEdge(o.Bridge, bridge)
	for _, corner := range []float64{0, 1} {
		a, b := openEdge(corner, -1), openEdge(corner, 1)
		k.yarn(dark, a, point{a.x + (corner-0.5)*3, openMiddle}, b)
	}
	k.pickedUp(pickPlaces(o.Bridge, min(max(o.PickedUp, 0), mostDrawn)))
	held := strconv.Itoa(o.Held) + " held"
	if draw.Measure(held, max(k.letter, 3.2), draw.Semibold) > heldRoom { // the text below says what is
		held = strconv.Itoa(o.Held)
	}
	k.note((openLeft+openRight)/2, openMiddle+figureHigh/2*k.letter, held, 3.2)
	first, second := "corner 1", "corner 2" // in the order in which the round comes to them
	if o.PickedUp == 0 {
		first, second = second, first
	}
	k.noteAt(openLeft-noteGap, openMiddle, first, true)
	k.noteAt(openRight+noteGap, openMiddle, second, false)
	at := openEdge(1, 1)
	k.s.Path(k.ring(at.x+1.2, at.y+1.6, 1.7), draw.Style{Stroke: outlineColour, Width: 0.7})
	k.noteAt(openRight+noteGap, openMiddle+1.15*max(k.letter, 3.2)+1.5, "marker", false)
}

// heldEdge draws the held stitches on their thread along an edge, with their legs away from
// the opening.
func (k *sketch) heldEdge(held int, side float64) {
	held = min(max(held, 3), mostDrawn)
	var thread []point
	for i := range held {
		at := openEdge((float64(i)+0.5)/float64(held), side)
		thread = append(thread, point{at.x, at.y + 0.6*side})
		k.loop(pale, at, min(1.9, 0.5*(openRight-openLeft)/float64(held)), 3*side)
	}
	k.s.Path(k.curve(thread...), draw.Style{Stroke: outlineColour, Width: 0.6, Dash: "1.6 1"})
}

// bridgeEdge draws an edge and the stitches of the bridge that hang from it, each with its
// legs together at the edge. Between and beside them lie the places to pick up: one more
// than stitches.
func (k *sketch) bridgeEdge(stitches int, side float64) {
	n := min(stitches, mostDrawn)
	for i := range n {
		at := openEdge(float64(i+1)/float64(n+1), side)
		wide := min(2.6, 0.34*(openRight-openLeft)/float64(n+1))
		for _, leg := range []float64{-wide, wide} {
			k.strand(pale, min(2.2, 1.2*wide), point{at.x + 0.2*leg, at.y}, point{at.x + 0.45*leg, at.y + 2.5*side}, point{at.x + leg, at.y + 5.4*side})
		}
	}
	edge := make([]point, 0, 21)
	for i := range 21 {
		edge = append(edge, openEdge(float64(i)/20, side))
	}
	k.yarn(pale, edge...)
}

// pickedUp marks along the bridge the places where stitches are picked up, numbered from the
// marker on, with an arrow in that direction. If there are none, an arrow shows how the held
// stitches are worked.
func (k *sketch) pickedUp(places []float64) {
	n := len(places)
	foot := openFoot + 6 + 0.75*max(k.letter, 3.2)
	for i, place := range places {
		at := openEdge(1-place, 1)
		k.s.Path(k.ring(at.x, at.y, min(1.1, 0.4*(openRight-openLeft)/float64(n))), draw.Style{Fill: outlineColour})
		if i == 0 || i == n-1 || draw.Measure(" "+strconv.Itoa(n), max(k.letter, 3.2), draw.Semibold) < (openRight-openLeft)/float64(n) { // else they would touch
			k.note(at.x, foot, strconv.Itoa(i+1), 3.2)
		}
	}
	y := foot + 2.6
	k.arrow(point{openRight - 4, y - 0.4}, point{(openLeft + openRight) / 2, y}, point{openLeft + 4, y - 0.4})
}

// pickPlaces returns where n stitches are picked up along a bridge, as shares of its length
// from where the round begins: in places between and beside its stitches, spread evenly
// over them, and in the middle loops if there are more; evenly along the edge if it has too
// few of both.
func pickPlaces(bridge, n int) (list []float64) {
	if more := n - bridge - 1; bridge > 0 && more > 0 && more <= bridge {
		list = pickPlaces(bridge, bridge+1)
		for i := range more {
			list = append(list, float64((bridge-more)/2+i+1)/float64(bridge+1))
		}
		slices.Sort(list)
		return list
	}
	for i := range n {
		at, places := (float64(i)+0.5)/float64(n), float64(bridge+1)
		if bridge > 0 && n <= bridge+1 {
			at = (math.Floor(at*places) + 0.5) / places
		}
		list = append(list, at)
	}
	return list
}

// noteAt writes a word beside a place, at its left or right.
func (k *sketch) noteAt(x, middle float64, text string, left bool) {
	size := max(k.letter, 3.2)
	half := draw.Measure(text, size, draw.Semibold) / 2
	if left {
		half = -half
	}
	k.note(x+half, middle+figureHigh/2*size, text, size)
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
func drawFirstGap(k *sketch, _ LessonOptions) { drawGap(k, 22, 14.5, "corner 1: k2tog") }

// drawLastGap draws the other corner: the strand comes after the last held stitch.
func drawLastGap(k *sketch, _ LessonOptions) { drawGap(k, 14.5, 22, "corner 2: ssk") }

// drawGap draws a strand and a stitch on a needle, and below an arc how both are worked
// together.
func drawGap(k *sketch, strand, stitch float64, name string) {
	low := 0.6 * max(0, k.letter-3.2) // where letters are large
	y, foot := 11+low, 15-low
	left, right := min(strand, stitch), max(strand, stitch)
	k.yarn(dark, point{strand + 2.8, y + foot}, point{strand + 2.4, y + foot/2}, point{strand + 1.8, y + 2}, point{strand, y - 2.8}) // behind
	k.leg(pale, stitch, y, foot, stitch-2.6)
	k.needle(point{left - 13, y}, point{right + 11, y})
	k.yarn(dark, point{strand, y - 2.8}, point{strand - 1.8, y + 2}, point{strand - 2.4, y + foot/2}, point{strand - 2.8, y + foot})
	k.leg(pale, stitch, y, foot, stitch+2.6)
	k.s.Path(k.curve(point{left - 4, y - 4.6}, point{(left + right) / 2, y - 6.4}, point{right + 4, y - 4.6}), draw.Style{Stroke: outlineColour, Width: 0.5, Round: true})
	k.note((left+right)/2, y-7.4-0.3*low, name, 3.2)
}
