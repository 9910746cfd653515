package picture

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
)

// piecesOf returns the paths in which a thread is drawn.
func piecesOf(k *sketch, t thread) (list []string) {
	s := &draw.Scene{}
	w := &weave{k: &sketch{s: s, width: k.width, mirrored: k.mirrored}, wide: courseYarn}
	w.thread(t)
	w.draw()
	for _, i := range s.Items {
		list = append(list, i.Path)
	}
	return list
}

// passes returns for each crossing of a thread with another line, along the thread, whether
// it goes over or under it in the drawing.
func passes(t *testing.T, k *sketch, over thread, other []point) (list string) {
	t.Helper()
	own := piecesOf(k, over)
	for _, at := range crossings(line(k, over.points()), line(k, other)) {
		if slices.Contains(own, topmost(t, k.s, at).Path) {
			list += "o"
		} else {
			list += "u"
		}
	}
	return list
}

// How the yarns of the drawn steps cross, along each from its first point on, over or
// under (common practice, no source). On the knit side a stitch comes up from behind the
// shoulder of the stitch below it, over that one's head, and goes back in the same way. A
// yarn that is grafted lies in each edge as a stitch of it would.
func TestYarnsCrossAsTheyAreKnitted(t *testing.T) {
	front, back := frontEdge.stitch, backEdge.stitch
	for _, c := range []struct {
		name        string
		draw        func(*sketch, LessonOptions)
		over, other thread
		want        string
	}{
		{"right lifted: the next stitch comes out of the loop below", drawLiftBelowNext, nextStitch(), liftedRight(), "uoou"},
		{"left lifted: the stitch below comes out of the loop two below", drawLiftTwoBelow, stitchBelow(), liftedLeft(), "uoou"},
		{"left lifted: the stitch just worked comes out of the one below", drawLiftTwoBelow, justWorked(), stitchBelow(), "uoou"},
		{"waste yarn: its stitches come out of those below", drawWaste, inWasteYarn(), belowWaste(), "uoouuoouuoou"},
		{"waste yarn: those knitted again come out of it", drawWaste, knittedAgain(), inWasteYarn(), "uoouuoouuoou"},
		{"kfb: under the leg, through the stitch, twice over the leg to the needle and back", drawFrontAndBack, fromFront(), thread{}.at(0, dark, twiceRight...), "uoo"},
		{"kfb: on behind the other leg", drawFrontAndBack, fromFront(), thread{}.at(0, dark, twiceLeft...), "u"},
		{"graft begun: out of the first stitch of the front", drawGraftBegun, graftBegun(), front(0), "uo"},
		{"graft begun: from behind, out of the first of the back", drawGraftBegun, graftBegun(), back(0), "uo"},
		{"graft, front: into the first", drawGraftFront, graftFront(), front(0), "ou"},
		{"graft, front: out of the next", drawGraftFront, graftFront(), front(1), "uo"},
		{"graft, back: out of the first and later into it", drawGraftBack, graftBack(), back(0), "uoou"},
		{"graft, back: out of the next", drawGraftBack, graftBack(), back(1), "uo"},
	} {
		for _, mirrored := range []bool{false, true} {
			k := &sketch{s: &draw.Scene{}, width: 40, mirrored: mirrored}
			c.draw(k, LessonOptions{})
			assert.Equal(t, c.want, passes(t, k, c.over, c.other.points()), "%s, mirrored %v", c.name, mirrored)
		}
	}
}

// How yarns lie about the needles, along each from its first point on. A leg lifted at the
// right lies with its foot before the needle, one at the left too; a yarn over goes up
// before the needle and down behind it.
func TestYarnsLieAboutTheNeedles(t *testing.T) {
	at := func(y float64) []point { return []point{{0, y}, {40, y}} }
	for _, c := range []struct {
		name   string
		draw   func(*sketch, LessonOptions)
		over   thread
		needle []point
		want   string
	}{
		{"right lifted leg", drawLiftBelowNext, liftedRight(), at(needleY), "uo"},
		{"next stitch", drawLiftBelowNext, nextStitch(), at(needleY), "uo"},
		{"left lifted leg", drawLiftTwoBelow, liftedLeft(), at(needleY), "uo"},
		{"stitch just worked", drawLiftTwoBelow, justWorked(), at(needleY), "ou"},
		{"knitted again", drawWaste, knittedAgain(), at(needleY), "uououo"},
		{"loop below the waste yarn", drawFreed, frontEdge.stitch(0), at(frontY), "uo"},
		{"loop above the waste yarn", drawFreed, backEdge.stitch(1), at(backY), "uo"},
		{"yarn over", drawYarnOver, yarnOver(), at(needleY), "ouou"},
		{"loop from the front on the right needle", drawFrontAndBack, fromFront(), []point{rightShaft, rightTip}, "ou"},
		{"grafted stitch on its needle", drawGraftBegun, frontEdge.stitch(1), at(frontY), "uo"},
		{"grafted stitch on its needle, above", drawGraftBegun, backEdge.stitch(1), at(backY), "uo"},
	} {
		for _, mirrored := range []bool{false, true} {
			k := &sketch{s: &draw.Scene{}, width: 40, mirrored: mirrored}
			c.draw(k, LessonOptions{})
			assert.Equal(t, c.want, passes(t, k, c.over, c.needle), "%s, mirrored %v", c.name, mirrored)
		}
	}
}

// While a lifted leg is knitted, the right needle goes over the leg at the right and behind
// the other and the left needle, so that the legs don't cross. Which leg lies before the
// left needle is the foot of either.
func TestLiftedLegsAreKnittedOpen(t *testing.T) {
	right := []point{rightShaft, rightTip}
	for _, c := range []struct {
		name        string
		draw        func(*sketch, LessonOptions)
		right, left []point
		front, back []point // at the left needle
	}{
		{"right, through the front", drawKnitLiftedRight, wideRight, wideLeft, wideRight, wideLeft},
		{"left, through the back", drawKnitLiftedLeft, wideRight, wideLeft, wideLeft, wideRight},
		{"front of kfb", drawFront, twiceRight, twiceLeft, twiceRight, twiceLeft},
	} {
		for _, mirrored := range []bool{false, true} {
			k := &sketch{s: &draw.Scene{}, width: 40, mirrored: mirrored}
			c.draw(k, LessonOptions{})
			tone := func(a, b []point) string {
				found := crossings(line(k, a), line(k, b))
				require.Len(t, found, 1, c.name)
				return toneOf(topmost(t, k.s, found[0]))
			}
			assert.Equal(t, steel, tone(c.right, right), "%s: over the leg at the right", c.name)
			assert.Equal(t, dark, tone(c.left, right), "%s: behind the other leg", c.name)
			needle := []point{{0, needleY}, {34, needleY}}
			assert.Equal(t, dark, tone(c.front, needle), "%s: the foot before the left needle", c.name)
			assert.Equal(t, steel, tone(c.back, needle), "%s: the other leg behind it", c.name)
			for _, at := range crossings(line(k, c.front), line(k, c.back)) {
				assert.Less(t, at.y, needleY, "%s: the legs only meet at the top", c.name)
			}
		}
	}
}

// Each thread is one smooth line: its pieces begin where the last one ended, in its
// direction.
func TestThreadsAreOneLine(t *testing.T) {
	for _, mirrored := range []bool{false, true} {
		k := &sketch{width: 40, mirrored: mirrored}
		for name, th := range map[string]thread{
			"lifted right": liftedRight(), "lifted left": liftedLeft(), "next": nextStitch(), "below": stitchBelow(), "worked": justWorked(),
			"yarn over": yarnOver(), "from the front": fromFront(), "begun": graftBegun(), "front": graftFront(), "back": graftBack(), "edge": backEdge.stitch(0),
		} {
			pieces := slices.Compact(piecesInOrder(k, th))
			require.NotEmpty(t, pieces)
			for i := 1; i < len(pieces); i++ {
				a, b := flat(pieces[i-1]), flat(pieces[i])
				end, begin := a[len(a)-1], b[0]
				require.InDelta(t, 0, length(end.plus(begin.times(-1))), 1e-3, "%s: piece %d begins where the last one ended", name, i)
				in, out := end.plus(a[len(a)-2].times(-1)), b[1].plus(begin.times(-1))
				turn := (in.x*out.x + in.y*out.y) / (length(in) * length(out))
				assert.Greater(t, turn, 0.95, "%s: piece %d goes on in its direction", name, i)
			}
		}
	}
}

// piecesInOrder returns the paths of a thread from its first point to its last.
func piecesInOrder(k *sketch, th thread) (list []string) {
	s := &draw.Scene{}
	w := &weave{k: &sketch{s: s, width: k.width, mirrored: k.mirrored}, wide: courseYarn}
	w.thread(th)
	for _, p := range w.parts {
		p.draw()
	}
	for _, i := range s.Items {
		list = append(list, i.Path)
	}
	return list
}

// A closed cast-on: every stitch comes out of the ring and goes back into it, and between
// them the yarn stays behind. Yarn wound round two needles lies before both or behind both.
func TestClosedCastOn(t *testing.T) {
	for _, mirrored := range []bool{false, true} {
		for _, c := range []struct {
			draw func(*sketch, LessonOptions)
			ring thread
		}{{drawRing, openRing()}, {drawRingShut, shutRing()}} {
			k := &sketch{s: &draw.Scene{}, width: 40, mirrored: mirrored}
			c.draw(k, LessonOptions{})
			assert.Equal(t, "ououou", passes(t, k, c.ring, []point{{0, needleY}, {40, needleY}}), "each stitch lies over the needle once")
			colour := slices.IndexFunc(c.ring, func(n knot) bool { return n.fill == pale })
			ring, stitches := c.ring[:colour], c.ring[colour-1:]
			over, top := "", ringMiddle.y
			for _, at := range crossings(line(k, stitches.points()), line(k, ring.points())) {
				if at.y < top+0.8 { // not where the tail leaves it
					over += map[string]string{pale: "o", dark: "u"}[toneOf(topmost(t, k.s, at))]
				}
			}
			assert.Equal(t, "oooooou"[:len(over)], over, "both legs of each stitch lie over the ring, and the yarn goes on behind it")
			assert.GreaterOrEqual(t, len(over), 6)
		}
		k := &sketch{s: &draw.Scene{}, width: 40, mirrored: mirrored}
		drawWound(k, LessonOptions{})
		for _, y := range []float64{upperY, lowerY} {
			assert.Equal(t, "ouououou"+"o", passes(t, k, wound(), []point{{0, y}, {40, y}}))
		}
	}
}
