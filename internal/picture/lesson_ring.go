package picture

// ringMiddle is the middle of the ring of yarn out of which stitches begin, in mm.
var ringMiddle = point{20, 24}

// ringed is a yarn from its tail once round a ring and on behind it, and three stitches
// drawn out of the ring, from right to left. Wide is the ring's width, and feet how far
// from each other and how far below its upper edge the stitches go through it.
func ringed(wide, high, apart, feet float64) thread {
	m := ringMiddle
	t := thread{}.
		at(leftNeedle, dark, point{39.4, m.y + high + 1.2}, point{m.x + wide*0.9, m.y + high + 0.6}, point{m.x, m.y + high}, point{m.x - wide*0.75, m.y + high*0.7}, point{m.x - wide, m.y}).
		at(farHead, dark, point{m.x - wide*0.75, m.y - high*0.7}, point{m.x, m.y - high}, point{m.x + wide*0.75, m.y - high*0.7}, point{m.x + wide, m.y}).
		at(farFeet, dark, point{m.x + wide*0.8, m.y + high*0.75}, point{m.x + wide*0.7, m.y + high + 2})
	y := m.y - high + feet
	for i, x := range []float64{28, 20, 12} {
		foot := m.x + apart*float64(1-i)
		if i == 0 {
			t = t.at(farFeet, pale, point{foot + 1.6, y + 2.4})
		}
		t = t.at(nearLeg, pale, point{foot + 1.2, y}, point{x + 2.6, needleY + 4}, point{x + 2.2, needleY - 0.6}).
			at(behindNeedle, pale, point{x, needleY - 2.8}, point{x - 1.6, needleY - 2}, point{x - 2.4, needleY + 2}).
			at(nearLeg, pale, point{x - 2, needleY + 5}).
			at(farFeet, pale, point{foot - 1.2, y})
	}
	return t.at(farFeet, pale, point{m.x - apart - 4, y + 2.4}, point{m.x - wide - 5, y + 3.4}, point{2, y + 3})
}

// open and shut are the ring as it is laid, and as it is pulled shut.
func openRing() thread { return ringed(9, 7, 4.4, 5.4) }
func shutRing() thread { return ringed(5.4, 3.4, 2.9, 3) }

// drawRing draws stitches drawn out of a ring of yarn.
func drawRing(k *sketch, _ LessonOptions) {
	w := &weave{k: k, wide: courseYarn}
	w.thread(openRing())
	w.needle(leftNeedle, point{40, needleY}, point{5, needleY})
	w.draw()
	k.arrow(point{15, ringMiddle.y + 3.4}, point{10, ringMiddle.y - 4.6}, point{5.6, needleY + 4})
}

// drawRingShut draws the ring pulled shut by its tail.
func drawRingShut(k *sketch, _ LessonOptions) {
	w := &weave{k: k, wide: courseYarn}
	w.thread(shutRing())
	w.needle(leftNeedle, point{40, needleY}, point{5, needleY})
	w.draw()
	k.arrow(point{30, ringMiddle.y + 8}, point{39, ringMiddle.y + 8.6})
}

// Where the two needles of a wound cast-on lie, in mm.
const upperY, lowerY = 10.0, 16.0

// wound is a yarn wound round two needles, from its tail at the left to their points: up
// behind both, down before both.
func wound() thread {
	t := thread{}.at(nearLeg, dark, point{1, upperY - 5}, point{6, upperY - 3.2})
	for x := 9.0; x < 30; x += 6 {
		t = t.at(nearLeg, dark, point{x - 0.4, upperY - 2.6}, point{x + 1.4, upperY + 1}, point{x + 1.8, lowerY}, point{x + 2.8, lowerY + 3.6}).
			at(farFeet, dark, point{x + 4, lowerY + 2.7}, point{x + 4.2, upperY + 1})
	}
	return t.at(nearLeg, dark, point{33, upperY - 2.8}, point{34.8, upperY}, point{35.4, lowerY + 4}, point{38, lowerY + 12})
}

// drawWound draws a yarn wound round two needles held together.
func drawWound(k *sketch, _ LessonOptions) {
	w := &weave{k: k, wide: courseYarn}
	w.thread(wound())
	w.needle(leftNeedle, point{0, upperY}, point{38, upperY})
	w.needle(leftNeedle, point{0, lowerY}, point{38, lowerY})
	w.draw()
}
