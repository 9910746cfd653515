package paper

import (
	"strconv"

	"thenar/internal/draw"
)

// partMap is a small map of how the parts of a chart lie.
type partMap struct {
	places             [][2]int // of each part: how many lie before it in its row, and below it
	across, up         int
	fromLeft           bool    // rounds begin at the left
	size               float64 // of a part in mm
	letter, letterFoot float64 // size of the numbers, and how far below a part's upper edge they stand
}

// draw draws the map with its right upper corner at a place, and the ith part filled.
func (m partMap) draw(page *draw.Scene, right, top float64, here int) {
	for i, at := range m.places {
		left := right - float64(at[0]+1)*m.size
		if m.fromLeft {
			left = right - float64(m.across-at[0])*m.size
		}
		upper := top + float64(m.up-1-at[1])*m.size
		style, letter := draw.Style{Stroke: ink, Width: 0.3}, draw.TextStyle{Size: m.letter, Anchor: draw.Middle}
		if i == here {
			style.Fill, letter.Face = "#D0D0D0", draw.Semibold
		}
		page.Rect(left, upper, m.size, m.size, style)
		page.Text(left+m.size/2, upper+m.letterFoot, strconv.Itoa(i+1), letter)
	}
}
