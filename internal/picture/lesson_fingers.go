package picture

import (
	"fmt"
	"strconv"
	"strings"

	"thenar/internal/draw"
)

// divides reports whether the hand is divided into fingers, with a bridge between them.
func (o LessonOptions) divides() bool { return len(o.Fingers) > 1 && o.Fingers[0].Cast > 0 }

// casts lists the bridges in the order worked: "4, 4 and 3".
func (o LessonOptions) casts() string {
	var list []string
	for _, one := range o.Fingers {
		if one.Cast > 0 {
			list = append(list, strconv.Itoa(one.Cast))
		}
	}
	last := len(list) - 1
	if last == 0 {
		return list[0]
	}
	return strings.Join(list[:last], ", ") + " and\u00a0" + list[last]
}

// besideText says how a finger's round is closed beside the stitches that wait.
func (o LessonOptions) besideText() string {
	return fmt.Sprintf("From the fingertips: palm and back of a finger lie on the needles, the others wait. Cast on its bridge between them: %s, finger by finger.", o.casts())
}

// alongText says where the stitches beside a finger are picked up.
func (o LessonOptions) alongText(n names) string {
	return fmt.Sprintf("Fold the finished finger down. Pick up along its bridge from %s to %s, one in each loop. The strand at each corner goes in with the stitch beside it.", n.right, n.left)
}

// Where the rows of palm and back lie in the drawing of a bridge beside a finger, in mm, and
// how far apart stitches are.
const (
	besideAbove, besideBelow = 9.0, 23.0
	besideFrom, besideTo     = 7.0, 29.0 // of the finger
	besideBridge             = 34.0
	besideRest               = 39.0 // where those that wait begin
	besideStep               = 3.6
)

// drawBeside draws the first finger of a hand from the fingertips: its stitches of back and
// palm on two needles, those of the others on a thread, and between them the bridge. An arrow
// shows how its round goes on over the bridge: of a right hand from the back to the palm, of
// a left one from the palm to the back.
func drawBeside(k *sketch, o LessonOptions) {
	first := o.Fingers[0]
	above, below, over, under := "back", "palm", first.Back, first.Palm
	if o.Left != o.FromLeft {
		above, below, over, under = below, above, under, over
	}
	for _, row := range []struct{ y, n float64 }{{besideAbove, float64(min(over, 6))}, {besideBelow, float64(min(under, 6))}} {
		k.needle(point{besideFrom - 6, row.y}, point{besideTo + 2.5, row.y})
		for i := range int(row.n) {
			k.bead(pale, besideTo-(float64(i)+0.5)*besideStep, row.y)
		}
		var thread []point
		for x := besideRest; x < k.width-1; x += besideStep {
			k.bead(steel, x, row.y)
			thread = append(thread, point{x - besideStep/2, row.y}, point{x + besideStep/2, row.y})
		}
		k.s.Path(k.curve(thread...), draw.Style{Stroke: outlineColour, Width: 0.6, Dash: "1.6 1"})
	}
	n := min(first.Cast, 6)
	room := besideBelow - besideAbove - 3
	step := min(besideStep, room/float64(n))
	for i := range n {
		k.bead(dark, besideBridge, (besideAbove+besideBelow)/2+(float64(i)-float64(n-1)/2)*step)
	}
	k.arrow(point{besideFrom + 3, besideAbove + 4.4}, point{besideTo - 4, besideAbove + 4.4}, point{besideTo, (besideAbove + besideBelow) / 2}, point{besideTo - 4, besideBelow - 4.4}, point{besideFrom + 5, besideBelow - 4.4})
	const off = 2.4 // from the stitches
	size := max(k.letter, 3.2)
	k.note((besideFrom+besideTo)/2, besideAbove-off, above, 3.2)
	k.note((besideFrom+besideTo)/2, besideBelow+off+0.75*size, below, 3.2)
	k.note(besideBridge, besideAbove-off, "+"+strconv.Itoa(first.Cast), 3.2)
	k.note((besideRest+k.width)/2, (besideAbove+besideBelow)/2+figureHigh/2*k.letter, strconv.Itoa(first.Wait)+" wait", 3.2)
}

// bead draws a stitch from above.
func (k *sketch) bead(fill string, x, y float64) {
	k.s.Path(k.ring(x, y, 1.5), draw.Style{Fill: fill, Stroke: outlineColour, Width: 0.4})
}

// drawAlong draws the opening between a finished finger and the stitches that wait beside it,
// with the finger folded down: its bridge below, each of whose loops is picked up, and the
// strand at each corner.
func drawAlong(k *sketch, o LessonOptions) {
	first := o.Fingers[0]
	k.heldEdge(first.Wait, -1)
	k.bridgeEdge(first.Cast, 1)
	for _, corner := range []float64{0, 1} {
		a, b := openEdge(corner, -1), openEdge(corner, 1)
		k.yarn(dark, a, point{a.x + (corner-0.5)*3, openMiddle}, b)
	}
	places := make([]float64, min(first.Cast, mostDrawn))
	for i := range places {
		places[i] = float64(i+1) / float64(len(places)+1)
	}
	k.pickedUp(places)
	k.note((openLeft+openRight)/2, openMiddle+figureHigh/2*k.letter, strconv.Itoa(first.Wait)+" wait", 3.2)
	k.noteAt(openLeft-noteGap, openMiddle, "corner 1", true)
	k.noteAt(openRight+noteGap, openMiddle, "corner 2", false)
	at := openEdge(1, 1)
	k.s.Path(k.ring(at.x+1.2, at.y+1.6, 1.7), draw.Style{Stroke: outlineColour, Width: 0.7})
	k.noteAt(openRight+noteGap, openMiddle+1.15*max(k.letter, 3.2)+1.5, "marker", false)
}
