package picture

// Where the columns and the heads of three courses lie, in mm: of the stitches on the
// needle, knitted again, of the waste yarn, and of the round below it.
var (
	wasteColumns         = []float64{7.2, 20, 32.8}
	wasteHead, belowHead = 13.6, 20.6
)

// course is a row of stitches from left to right; each comes out of one whose head is at
// below. Head draws its upper part, from its left foot to its right one.
func course(fill string, below float64, head func(t thread, x float64) thread) (t thread) {
	for _, x := range wasteColumns {
		if len(t) > 0 {
			t = t[:len(t)-1] // its right end is the next one's left
		}
		t = head(t.footUp(fill, x, below, -1), x).footDown(fill, x, below, 1)
	}
	return t
}

// knittedAgain are the stitches of the working yarn on the needle.
func knittedAgain() thread {
	return course(pale, wasteHead, func(t thread, x float64) thread {
		return t.at(behindNeedle, pale, point{x - 2.6, needleY + 1.6}, point{x - 1.6, needleY - 2}).
			at(nearLeg, pale, point{x, needleY - 2.8}, point{x + 2.2, needleY - 0.6}, point{x + 2.8, needleY + 2})
	})
}

// inWasteYarn are the stitches of the waste yarn, over which those stand.
func inWasteYarn() thread {
	return course(dark, belowHead, func(t thread, x float64) thread { return t.over(dark, x, wasteHead, -1) })
}

// belowWaste is the round below, whose stitches will be the thumb's.
func belowWaste() thread {
	return course(pale, belowHead+7, func(t thread, x float64) thread { return t.over(pale, x, belowHead, -1) })
}

// drawWaste draws stitches knitted with waste yarn and again with the working yarn.
func drawWaste(k *sketch, _ LessonOptions) {
	w := &weave{k: k, wide: courseYarn}
	w.thread(belowWaste())
	w.thread(inWasteYarn())
	w.thread(knittedAgain())
	w.needle(leftNeedle, point{40, needleY}, point{0.6, needleY})
	w.draw()
}

// corner is the half loop and its strand that are left at a corner of what the waste yarn
// frees: at the right with side 1.
func corner(side float64) thread {
	n := 0
	if side < 0 {
		n = 2
	}
	x := frontColumn(n)
	return thread{}.at(nearLeg, dark, point{x + side*1.6, 0.6}, point{x + side*3, 4}, point{x + side*4.6, 9.4}, point{x + side*6.4, 13}, point{x + side*8.6, 14.4})
}

// drawFreed draws what the waste yarn frees: loops below, one fewer above, and half a loop
// at each corner.
func drawFreed(k *sketch, _ LessonOptions) {
	w := &weave{k: k, wide: courseYarn}
	for n := range 3 {
		w.thread(frontEdge.stitch(n))
		if n < 2 {
			w.thread(backEdge.stitch(n))
		}
	}
	w.needle(leftNeedle, point{0, frontY}, point{frontColumn(0) + graftTip, frontY})
	w.needle(leftNeedle, point{backColumn(1) - graftTip, backY}, point{backColumn(0) + graftTip, backY})
	w.thread(corner(1))
	w.thread(corner(-1))
	w.draw()
}
