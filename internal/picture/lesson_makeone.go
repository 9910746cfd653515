package picture

// The heights of a panel with two needles: that of the needles, and how far
// the stitches hang below them.
const (
	needleY = 9.0
	hang    = 17.0
)

// hangs draws the stitches below the needles, each under its loop.
func hangs(k *sketch, places ...float64) {
	for _, x := range places {
		k.yarn(pale, point{x - 2.8, needleY + hang - 1}, point{x - 2.6, needleY + hang + 4}, point{x - 0.6, needleY + hang + 8})
		k.yarn(pale, point{x + 2.8, needleY + hang - 1}, point{x + 2.6, needleY + hang + 4}, point{x + 0.6, needleY + hang + 8})
	}
}

// strand are both legs of the strand on the left needle, from its feet at the
// neighbouring stitches to where they meet above the needle.
func strand() (left, right []point) {
	left = []point{{9.8, needleY + hang}, {12, needleY + hang + 2}, {14.8, needleY + 12}, {16, needleY + 4}, {18.4, needleY - 2.6}}
	right = []point{{30.2, needleY + hang}, {27, needleY + hang + 1.5}, {22.4, needleY + 12}, {21, needleY + 4}, {18.4, needleY - 2.6}}
	return left, right
}

// drawLiftFront: lifted from the front, the strand's right leg lies before the
// needle.
func drawLiftFront(k *sketch, _ LessonOptions) { lift(k, true) }

// drawLiftBack: lifted from behind, its left leg does.
func drawLiftBack(k *sketch, _ LessonOptions) { lift(k, false) }

func lift(k *sketch, fromFront bool) {
	left, right := strand()
	before, behind := right, left
	if !fromFront {
		before, behind = left, right
	}
	k.leg(pale, 7, needleY, hang, 4.2)
	k.leg(pale, 33, needleY, hang, 30.2)
	k.yarn(dark, behind...)
	k.needle(point{0, needleY}, point{24.5, needleY})
	k.needle(point{40, needleY}, point{28, needleY})
	k.leg(pale, 7, needleY, hang, 9.8)
	k.leg(pale, 33, needleY, hang, 35.8)
	k.yarn(dark, before...)
	hangs(k, 7, 33)
	k.arrow(point{18.6, needleY + hang + 7}, point{18.4, needleY + 13}, point{18.4, needleY + 5})
}

// The strand while it is knitted, as points from the foot of each leg to where
// both meet above the left needle. open is how it lies; in crossed the leg that
// lies before the needle was pulled to the right, over the other one.
func open() (front, back []point) {
	front = []point{{30.2, needleY + hang}, {28, needleY + 14}, {25.4, needleY + 9}, {24, needleY + 4}, {23.4, needleY - 0.4}, {21.8, needleY - 2.4}, {19.8, needleY - 3.4}}
	back = []point{{9.8, needleY + hang}, {12, needleY + 13}, {12.2, needleY + 7}, {11.8, needleY + 2}, {13.6, needleY - 2.8}, {17.2, needleY - 4.7}, {19.8, needleY - 3.4}}
	return front, back
}

func crossed() (front, back []point) {
	front = []point{{9.8, needleY + hang}, {14, needleY + hang + 1.4}, {22, needleY + 13.6}, {27, needleY + 7.4}, {26.2, needleY + 1}, {23.6, needleY - 3.3}, {20.4, needleY - 4.1}}
	back = []point{{30.2, needleY + hang}, {26, needleY + hang + 1.2}, {18.6, needleY + 13.4}, {13.4, needleY + 8.2}, {11.6, needleY + 2}, {13.6, needleY - 2.6}, {17.2, needleY - 4.9}, {20.4, needleY - 4.1}}
	return front, back
}

// The needles while the strand is knitted: the left one ends beyond the strand,
// the right one comes from below and passes behind it.
var (
	leftShaft, leftTip   = point{0, needleY}, point{34, needleY}
	rightShaft, rightTip = point{38.6, needleY + 14.4}, point{9, needleY - 8.4}
)

// drawKnitBack knits through the back loop. The right needle goes under the
// front leg, behind the left needle and over the back leg, so that this is
// pulled to the left before the other one: the strand is twisted.
func drawKnitBack(k *sketch, _ LessonOptions) {
	front, back := open()
	k.leg(pale, 6, needleY, hang, 3.2)
	k.yarn(dark, back...)
	k.needle(rightShaft, rightTip)
	k.needle(leftShaft, leftTip)
	k.yarn(dark, front...)
	k.leg(pale, 6, needleY, hang, 8.8)
	hangs(k, 6)
}

// drawKnitFront knits through the front loop. The right needle lies before the
// front leg, goes in at that leg's left and passes behind the left needle and
// the back leg. So the front leg is pulled to the right under its shaft, and
// below it both legs cross.
func drawKnitFront(k *sketch, _ LessonOptions) {
	front, back := crossed()
	k.leg(pale, 6, needleY, hang, 3.2)
	k.needle(rightShaft, rightTip)
	k.yarn(dark, back...)
	k.needle(leftShaft, leftTip)
	k.yarn(dark, front...)
	k.shaft(rightShaft, rightTip, needleY+needleWide/2)
	k.leg(pale, 6, needleY, hang, 8.8)
	hangs(k, 6)
}
