package picture

// The stitch that the right needle has worked last, before a yarn over: the y of its
// foot, and where the next stitch hangs.
const (
	workedFoot = needleY + hangLength
	nextX      = 5.0
)

// yarnOver is the stitch worked last, from its right foot up, and its yarn: from its left
// foot to the front, up before the right needle, over it and down behind.
func yarnOver() thread {
	const x, over = 34.0, 22.4
	return thread{}.
		at(nearLeg, pale, point{x + 0.8, hangFoot}, point{x + 2.6, hangFoot - 4}, point{x + 2.8, needleY + 8}, point{x + 2.2, needleY - 0.6}).
		at(behindNeedle, pale, point{x, needleY - 2.8}, point{x - 1.6, needleY - 2}, point{x - 2.6, needleY + 1}, point{x - 2.8, needleY + 8}).
		at(behindNeedle, dark, point{x - 3, workedFoot - 2}, point{x - 5, workedFoot + 2}).
		at(nearLeg, dark, point{x - 8, workedFoot}, point{over + 2.4, needleY + 8}, point{over + 2.2, needleY + 1}).
		at(behindNeedle, dark, point{over, needleY - 2.8}, point{over - 2.4, needleY - 0.8}, point{over - 3.4, needleY + 5}, point{over - 7, needleY + 10}, point{nextX + 5, needleY + 12.6})
}

// drawYarnOver draws the yarn laid over the right needle, and how it goes on.
func drawYarnOver(k *sketch, _ LessonOptions) {
	w := &weave{k: k, wide: yarnWidth}
	w.thread(yarnOver())
	w.needle(leftNeedle, point{0, needleY}, point{14.4, needleY})
	w.needle(leftNeedle, point{40, needleY}, point{15.8, needleY})
	w.thread(onNeedle(nextX, hangFoot))
	w.draw()
	k.arrow(point{27.6, needleY - 2.6}, point{26.4, needleY - 5.2}, point{22, needleY - 6.6}, point{17, needleY - 3.4})
}

// The stitch that is knitted into twice, from the foot of each leg to where both meet
// above the left needle.
var (
	twiceRight = []point{{20.8, hangFoot}, {23, needleY + 18}, {27.4, needleY + 10}, {27.4, needleY + 5}, {25.4, needleY + 0.4}, {22.8, needleY - 2.8}, {19.8, needleY - 3.6}}
	twiceLeft  = []point{{18.8, hangFoot}, {16.4, needleY + 18}, {12.4, needleY + 11}, {11.6, needleY + 5}, {12.2, needleY + 0.4}, {14.6, needleY - 3.4}, {17.2, needleY - 4.5}, {19.8, needleY - 3.6}}
)

// drawFront draws knitting into the front of a stitch: over its front leg and behind the
// left needle and the other leg.
func drawFront(k *sketch, _ LessonOptions) {
	k.knitOpen(twiceRight, twiceLeft, true)
}

// fromFront is the loop that was knitted out of the front: from the right behind the
// stitch, through it to the front and round the right needle, back through it and on to
// the left behind.
func fromFront() thread {
	return thread{}.
		at(farFeet, pale, point{39, needleY + 24.4}, point{31, needleY + 23.4}, point{24.6, needleY + 20.4}).
		at(nearest, pale, point{21.6, needleY + 16.6}, point{26, needleY + 14}, point{31, needleY + 13.4}, point{34, needleY + 10.6}).
		at(farHead, pale, point{35.4, needleY + 7.6}, point{33.6, needleY + 5.8}, point{31.4, needleY + 8.2}).
		at(nearest, pale, point{29.6, needleY + 10.2}, point{26, needleY + 10.4}).
		at(farFeet, pale, point{20.8, needleY + 11.6}, point{14, needleY + 15}, point{9, needleY + 17})
}

// drawFrontAndBack draws knitting into the back of the same stitch: behind its front leg
// and the left needle and over the other leg. The loop from the front is on the right
// needle.
func drawFrontAndBack(k *sketch, _ LessonOptions) {
	w := &weave{k: k, wide: courseYarn}
	w.thread(thread{}.at(behindNeedle, dark, twiceLeft...))
	w.needle(rightNeedle, rightShaft, rightTip)
	w.needle(leftNeedle, leftShaft, leftTip)
	w.thread(thread{}.at(nearLeg, dark, twiceRight...))
	w.thread(fromFront())
	w.thread(onNeedle(6, hangFoot))
	w.draw()
}
