package picture

// Two edges that are bound off together with a third needle, the mitt turned inside out: the
// stitches of the near needle below, those of the far one above, half a stitch on, as they
// are seen from a little above. In mm: where the needles are, and their stitches.
const (
	nearY, farY   = 17.0, 8.0
	togetherPitch = 10.6
	togetherFoot  = 13.0 // how far a stitch hangs below its needle
	togetherHalf  = 2.6  // half the distance of its feet
)

// nearColumn and farColumn return the middle of the nth stitch from the points of the
// needles, from 0.
func nearColumn(n int) float64 { return 27 - togetherPitch*float64(n) }
func farColumn(n int) float64  { return nearColumn(n) - togetherPitch/2 }

// The third needle, through the first stitch of either: over the right leg of each and
// behind its needle.
var thirdShaft, thirdTip = point{36.2, 33}, point{14, 1}

// drawBoth draws the first stitch of either needle on the third needle together.
func drawBoth(k *sketch, _ LessonOptions) {
	k.needle(thirdShaft, thirdTip)
	k.edgeOff(farY, farColumn)
	k.edgeOff(nearY, nearColumn)
}

// edgeOff draws an edge on its needle, before the third one where that goes through its
// first stitch.
func (k *sketch) edgeOff(y float64, column func(n int) float64) {
	for n := range shownOf(column) {
		k.leg(firstDark(n), column(n), y, togetherFoot, column(n)-togetherHalf)
	}
	k.needle(point{0, y}, point{column(0) + 7, y})
	for n := range shownOf(column) {
		k.leg(firstDark(n), column(n), y, togetherFoot, column(n)+togetherHalf)
	}
	k.shaft(thirdShaft, thirdTip, y+needleWidth/2)
}

// shownOf returns how many stitches of an edge have room in a panel.
func shownOf(column func(n int) float64) (n int) {
	for column(n) > 2*togetherHalf {
		n++
	}
	return n
}

// firstDark is the colour of the nth stitch: the first is the one that matters.
func firstDark(n int) string {
	if n == 0 {
		return dark
	}
	return pale
}
