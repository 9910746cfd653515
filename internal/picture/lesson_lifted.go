package picture

// Layers of the panels that show courses, from the farthest to the nearest. A loop's feet
// lie behind the shoulders of the loop below it, and its legs before that one's head, as
// on the knit side of stocking stitch.
const (
	farFeet = iota
	farHead
	behindNeedle
	rightNeedle
	leftNeedle
	nearLeg
	nearest
)

// courseYarn is the width of the yarn where several courses are drawn, in mm.
const courseYarn = 2.1

// foot goes on from behind the shoulder of the loop below, whose head is at y about x,
// up through it: the left foot with side −1, the right one with 1.
func (t thread) footUp(fill string, x, y, side float64) thread {
	return t.at(farFeet, fill, point{x + side*6.4, y + 4.6}, point{x + side*2.6, y + 4.2}).
		at(nearLeg, fill, point{x + side*1.2, y + 2.4})
}

// footDown goes down through the loop below and out behind its shoulder.
func (t thread) footDown(fill string, x, y, side float64) thread {
	return t.at(farFeet, fill, point{x + side*1.2, y + 2.4}, point{x + side*2.6, y + 4.2}, point{x + side*6.4, y + 4.6})
}

// over goes over a head at y about x: from one shoulder, at a side, to the other.
func (t thread) over(fill string, x, y, side float64) thread {
	return t.at(nearLeg, fill, point{x + side*4.2, y + 4}).
		at(farHead, fill, point{x + side*3.1, y + 1.2}, point{x, y}).
		at(farHead, fill, point{x - side*3.1, y + 1.2}).
		at(nearLeg, fill, point{x - side*4.2, y + 4})
}

// onNeedle is a stitch on a needle, about x, down to the y at which it ends.
func onNeedle(x, foot float64) thread {
	return thread{}.
		at(behindNeedle, pale, point{x - 0.8, foot}, point{x - 2.4, foot - 4}, point{x - 2.8, needleY + 8}, point{x - 2.4, needleY + 1}, point{x - 1.4, needleY - 2.3}).
		at(nearLeg, pale, point{x, needleY - 2.8}, point{x + 2.2, needleY}, point{x + 2.8, needleY + 8}, point{x + 2.4, foot - 4}, point{x + 0.8, foot})
}

// Where the loops of a lifted increase lie, in mm: the column of the lifted leg of either,
// and the heads below the needle.
const (
	belowNextX, belowNextHead = 13.0, 18.4
	workedX                   = 32.0
	oneBelow, twoBelow        = 14.8, 23.0
	hangFoot                  = needleY + hangLength + 8
)

// liftedRight is the loop right below the next stitch, its right leg lifted onto the left
// needle: from the left up its left leg, over its head, up behind the needle, and down
// before it to its right foot.
func liftedRight() thread {
	const x, y = belowNextX, belowNextHead
	return thread{}.
		at(nearLeg, dark, point{2, y + 13}, point{x - 3.4, y + 12}, point{x - 2.2, y + 9.4}, point{x - 4.2, y + 4}).
		at(farHead, dark, point{x - 3.1, y + 1.2}, point{x, y}, point{x + 3.6, y + 0.2}).
		at(behindNeedle, dark, point{x + 7.2, y - 4}, point{x + 7.6, needleY + 1}, point{x + 8.4, needleY - 2.2}).
		at(nearest, dark, point{x + 9.8, needleY - 2.8}, point{x + 11.4, needleY}, point{x + 11.8, y - 3}, point{x + 8.6, y + 4}, point{x + 4.4, y + 9}, point{x + 4.6, y + 12}, point{x + 10, y + 13}, point{32.6, y + 13.2})
}

// nextStitch is the stitch of the left needle whose feet come out of that loop.
func nextStitch() thread {
	const x, y = belowNextX, belowNextHead
	return thread{}.
		at(farFeet, pale, point{2, y + 5}).footUp(pale, x, y, -1).
		at(behindNeedle, pale, point{x - 1.9, y - 1}, point{x - 2.8, needleY + 4}, point{x - 2.4, needleY + 0.6}, point{x - 1.4, needleY - 2.3}).
		at(nearLeg, pale, point{x, needleY - 2.8}, point{x + 2.2, needleY}, point{x + 2.8, needleY + 4}, point{x + 1.9, y - 1}).
		footDown(pale, x, y, 1).at(farFeet, pale, point{32.8, y + 5.4})
}

// drawLiftBelowNext draws a right lifted increase begun: the leg lies on the left needle.
func drawLiftBelowNext(k *sketch, _ LessonOptions) {
	w := &weave{k: k, wide: courseYarn}
	w.thread(liftedRight())
	w.thread(nextStitch())
	w.needle(leftNeedle, point{0, needleY}, point{28.4, needleY})
	w.needle(leftNeedle, point{40, needleY}, point{30, needleY})
	w.thread(onNeedle(35.6, hangFoot))
	w.draw()
}

// liftedLeft is the loop two rows below the stitch just worked, its left leg lifted onto
// the left needle from behind: from the right up its right leg, over its head, up behind
// the needle, and down before it to its left foot.
func liftedLeft() thread {
	const x, y = workedX, twoBelow
	return thread{}.
		at(nearLeg, dark, point{39.6, y + 10}, point{x + 3.4, y + 9.4}, point{x + 2.2, y + 7.4}, point{x + 4.2, y + 4}).
		at(farHead, dark, point{x + 3.1, y + 1.2}, point{x, y}, point{x - 4, y}).
		at(behindNeedle, dark, point{x - 10, y - 5}, point{x - 11.6, needleY + 1}, point{x - 12.2, needleY - 2.2}).
		at(nearest, dark, point{x - 13.4, needleY - 2.8}, point{x - 15.2, needleY}, point{x - 15.6, y - 7}, point{x - 12, y + 0.6}, point{x - 6, y + 5.4}, point{x - 5.4, y + 8.6}, point{x - 10, y + 10}, point{10, y + 10})
}

// stitchBelow is the stitch right below the one just worked, in a row with the stitches of
// the left needle.
func stitchBelow() thread {
	const x = workedX
	return thread{}.at(farFeet, pale, point{39.6, twoBelow + 4.8}).footUp(pale, x, twoBelow, 1).
		over(pale, x, oneBelow, 1).footDown(pale, x, twoBelow, -1).
		at(farFeet, pale, point{16, twoBelow + 4}, point{7.4, twoBelow + 3.4})
}

// justWorked is the stitch on the right needle; its yarn goes on to the left, behind.
func justWorked() thread {
	const x = workedX
	return thread{}.at(farFeet, pale, point{39.6, oneBelow + 4.8}).footUp(pale, x, oneBelow, 1).
		at(nearLeg, pale, point{x + 2.8, needleY + 2}, point{x + 2.2, needleY - 0.6}).
		at(behindNeedle, pale, point{x, needleY - 2.8}, point{x - 1.6, needleY - 2}, point{x - 2.6, needleY + 1}).
		footDown(pale, x, oneBelow, -1).at(farFeet, pale, point{17.4, oneBelow + 4})
}

// drawLiftTwoBelow draws a left lifted increase begun: the leg lies on the left needle.
func drawLiftTwoBelow(k *sketch, _ LessonOptions) {
	w := &weave{k: k, wide: courseYarn}
	w.thread(liftedLeft())
	w.thread(stitchBelow())
	w.thread(justWorked())
	w.needle(leftNeedle, point{0, needleY}, point{24.4, needleY})
	w.needle(leftNeedle, point{40, needleY}, point{25.8, needleY})
	w.thread(onNeedle(4.8, hangFoot))
	w.draw()
}

// The legs of a lifted loop while it is knitted, from the foot of each to where both meet
// above the left needle: wide apart, and not crossed.
var (
	wideRight = []point{{31, needleY + hangLength}, {29.6, needleY + 12}, {27.6, needleY + 6.4}, {25.4, needleY + 1}, {22.8, needleY - 2.6}, {19.8, needleY - 3.6}}
	wideLeft  = []point{{9.8, needleY + hangLength}, {12, needleY + 13}, {12.2, needleY + 7}, {11.8, needleY + 2}, {13.6, needleY - 2.8}, {17.2, needleY - 4.7}, {19.8, needleY - 3.6}}
)

// drawKnitLiftedRight draws knitting a leg lifted at the right through the front: its
// right leg is before the left needle. The right needle goes over that leg and behind the
// left needle and the other leg, so nothing is twisted.
func drawKnitLiftedRight(k *sketch, _ LessonOptions) {
	k.knitOpen(wideRight, wideLeft, true)
}

// drawKnitLiftedLeft draws knitting a leg lifted at the left through the back: its left leg
// is before the left needle. The right needle goes over the other leg and behind the left
// needle, so nothing is twisted.
func drawKnitLiftedLeft(k *sketch, _ LessonOptions) {
	k.knitOpen(wideRight, wideLeft, false)
}

// knitOpen draws a loop on the left needle, open from the front to the back, with the right
// needle through it, beside a stitch. Which of its legs is before the left needle changes
// how it lies, not how the right needle goes.
func (k *sketch) knitOpen(right, left []point, rightBefore bool) {
	k.leg(pale, 6, needleY, hangLength, 3.2)
	if !rightBefore {
		k.yarn(dark, right...)
		k.needle(rightShaft, rightTip)
		k.needle(leftShaft, leftTip)
		k.yarn(dark, left...)
	} else {
		k.needle(rightShaft, rightTip)
		k.yarn(dark, left...)
		k.needle(leftShaft, leftTip)
		k.yarn(dark, right...)
		k.shaft(rightShaft, rightTip, needleY+needleWidth/2)
	}
	k.leg(pale, 6, needleY, hangLength, 8.8)
	drawHanging(k, 6)
}
