package picture

import "thenar/internal/draw"

// Measures of a panel with two needles, in mm: the y of the needles, and how far the
// stitches hang below them.
const (
	needleY    = 9.0
	hangLength = 17.0
)

// drawHanging draws the stitches below the needles, each under its loop.
func drawHanging(k *sketch, places ...float64) {
	for _, x := range places {
		k.yarn(pale, point{x - 2.8, needleY + hangLength - 1}, point{x - 2.6, needleY + hangLength + 4}, point{x - 0.6, needleY + hangLength + 8})
		k.yarn(pale, point{x + 2.8, needleY + hangLength - 1}, point{x + 2.6, needleY + hangLength + 4}, point{x + 0.6, needleY + hangLength + 8})
	}
}

// strandLegs returns both legs of the strand on the left needle, from the neighbouring
// stitches to where they meet above the needle.
func strandLegs() (left, right []point) {
	left = []point{{9.8, needleY + hangLength}, {12, needleY + hangLength + 2}, {14.8, needleY + 12}, {16, needleY + 4}, {18.4, needleY - 2.6}}
	right = []point{{30.2, needleY + hangLength}, {27, needleY + hangLength + 1.5}, {22.4, needleY + 12}, {21, needleY + 4}, {18.4, needleY - 2.6}}
	return left, right
}

// drawLiftFront draws the strand lifted from the front: its right leg is before the
// needle.
func drawLiftFront(k *sketch, _ LessonOptions) { lift(k, true) }

// drawLiftBack draws the strand lifted from behind: its left leg is before the needle.
func drawLiftBack(k *sketch, _ LessonOptions) { lift(k, false) }

func lift(k *sketch, fromFront bool) {
	left, right := strandLegs()
	before, behind := right, left
	if !fromFront {
		before, behind = left, right
	}
	k.leg(pale, 7, needleY, hangLength, 4.2)
	k.leg(pale, 33, needleY, hangLength, 30.2)
	k.yarn(dark, behind...)
	k.needle(point{0, needleY}, point{24.5, needleY})
	k.needle(point{40, needleY}, point{28, needleY})
	k.leg(pale, 7, needleY, hangLength, 9.8)
	k.leg(pale, 33, needleY, hangLength, 35.8)
	k.yarn(dark, before...)
	drawHanging(k, 7, 33)
	k.way(fromFront)
}

// way draws how the needle goes under the strand: whole where it is in front of the work,
// broken where it is behind it.
func (k *sketch) way(fromFront bool) {
	const x = 18.4
	foot, middle, tip := needleY+hangLength+7, needleY+15.0, needleY+5.0
	if !fromFront {
		k.s.Path(k.curve(point{x, foot}, point{x, middle}), behindStyle)
		k.arrow(point{x, middle}, point{x, tip})
		return
	}
	k.s.Path(k.curve(point{x, foot}, point{x, middle}), draw.Style{Stroke: outlineColour, Width: 0.5, Round: true})
	k.s.Path(k.curve(point{x, middle}, point{x, tip + 2}), behindStyle)
	k.s.Path(new(draw.Pen).Move(k.x(x), tip).Line(k.x(x+1.2), tip+2.4).Line(k.x(x-1.2), tip+2.4).Close().String(), draw.Style{Fill: outlineColour})
}

// behindStyle is the style of a needle's way behind the work.
var behindStyle = draw.Style{Stroke: outlineColour, Width: 0.6, Dash: "1.6 1.4"}

// openStrand and crossedStrand return the legs of the strand while it is knitted, each
// from its foot to where both meet above the left needle. In crossedStrand the front
// leg is pulled to the right, over the other one.
func openStrand() (front, back []point) {
	front = []point{{30.2, needleY + hangLength}, {28, needleY + 14}, {25.4, needleY + 9}, {24, needleY + 4}, {23.4, needleY - 0.4}, {21.8, needleY - 2.4}, {19.8, needleY - 3.4}}
	back = []point{{9.8, needleY + hangLength}, {12, needleY + 13}, {12.2, needleY + 7}, {11.8, needleY + 2}, {13.6, needleY - 2.8}, {17.2, needleY - 4.7}, {19.8, needleY - 3.4}}
	return front, back
}

func crossedStrand() (front, back []point) {
	front = []point{{9.8, needleY + hangLength}, {14, needleY + hangLength + 1.4}, {22, needleY + 13.6}, {27, needleY + 7.4}, {26.2, needleY + 1}, {23.6, needleY - 3.3}, {20.4, needleY - 4.1}}
	back = []point{{30.2, needleY + hangLength}, {26, needleY + hangLength + 1.2}, {18.6, needleY + 13.4}, {13.4, needleY + 8.2}, {11.6, needleY + 2}, {13.6, needleY - 2.6}, {17.2, needleY - 4.9}, {20.4, needleY - 4.1}}
	return front, back
}

// The needles while the strand is knitted. The left one ends beyond the strand; the right
// one comes from below and passes behind the left one.
var (
	leftShaft, leftTip   = point{0, needleY}, point{34, needleY}
	rightShaft, rightTip = point{38.6, needleY + 14.4}, point{9, needleY - 8.4}
)

// drawKnitBack draws knitting through the back loop. The right needle goes under the
// front leg, behind the left needle and over the back leg. So it pulls the back leg to
// the left in front of the other, which twists the strand.
func drawKnitBack(k *sketch, _ LessonOptions) {
	front, back := openStrand()
	k.knitOpen(back, front, false)
}

// drawKnitFront draws knitting through the front loop. The right needle goes over the
// front leg, in at that leg's left, and behind the left needle and the back leg. So its
// shaft pulls the front leg to the right, and the legs cross below it.
func drawKnitFront(k *sketch, _ LessonOptions) {
	front, back := crossedStrand()
	k.knitOpen(front, back, true)
}
