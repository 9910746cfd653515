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

// drawKnitBack: the right needle goes through the leg behind.
func drawKnitBack(k *sketch, _ LessonOptions) { knitOff(k, true) }

// drawKnitFront: the right needle goes through the leg before.
func drawKnitFront(k *sketch, _ LessonOptions) { knitOff(k, false) }

// knitOff: from the viewer's side lie, through the back loop, the front leg,
// the left needle, the back leg, the right needle; through the front loop the
// front leg, the left needle, the right needle, the back leg.
func knitOff(k *sketch, back bool) {
	left, right := strand()
	k.leg(pale, 7, needleY, hang, 4.2)
	if back {
		k.needle(point{39, needleY + 15}, point{10.5, needleY - 4})
		k.yarn(dark, left...)
		k.needle(point{0, needleY}, point{25.5, needleY})
		k.yarn(dark, right...)
	} else {
		k.yarn(dark, right...)
		k.needle(point{39, needleY + 15}, point{12, needleY - 4.5})
		k.needle(point{0, needleY}, point{25.5, needleY})
		k.yarn(dark, left...)
	}
	k.leg(pale, 7, needleY, hang, 9.8)
	hangs(k, 7)
}
