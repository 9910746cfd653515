package picture

// The two edges that are grafted, laid flat with their knit sides up: the stitches of the
// front needle below, those of the back needle above, upside down and half a stitch on. In
// mm: where the needles are, and the stitches.
const (
	frontY, backY = 23.0, 11.0
	graftPitch    = 10.6
	graftReach    = 10.5 // how far a stitch reaches from its needle
	graftTip      = 5.0  // how far a needle reaches beyond the middle of its first stitch
)

// frontColumn and backColumn return the middle of the nth stitch from the right, from 0.
func frontColumn(n int) float64 { return 31 - graftPitch*float64(n) }
func backColumn(n int) float64  { return frontColumn(n) - graftPitch/2 }

// graftEdge is one of the two edges, its needle at y. Its stitches hang down with side 1 and
// stand up with side −1.
type graftEdge struct {
	y, side float64
	column  func(n int) float64
}

var (
	frontEdge = graftEdge{frontY, 1, frontColumn}
	backEdge  = graftEdge{backY, -1, backColumn}
)

// to returns a point of the nth stitch: so far right of its middle, so far from the needle
// into the fabric.
func (e graftEdge) to(n int, right, in float64) point {
	return point{e.column(n) + right, e.y + e.side*in}
}

// stitch is the nth stitch of an edge. Its right leg lies before the needle.
func (e graftEdge) stitch(n int) thread {
	return thread{}.
		at(nearLeg, pale, e.to(n, -1.2, graftReach), e.to(n, -2.2, graftReach-3)).
		at(behindNeedle, pale, e.to(n, -3.2, 3.4), e.to(n, -2.6, -0.6)).
		at(nearLeg, pale, e.to(n, 0, -2.4), e.to(n, 2.6, -0.6), e.to(n, 3.2, 3.4), e.to(n, 2.2, graftReach-3), e.to(n, 1.2, graftReach))
}

// out comes from behind the edge, at a side of the nth stitch, through it to the front.
func (e graftEdge) out(t thread, n int, side float64) thread {
	return t.at(farFeet, dark, e.to(n, side*5, 6.4), e.to(n, side*2.6, 6)).
		at(nearest, dark, e.to(n, side*1.2, 4.2), e.to(n, side*1.5, -3))
}

// in goes from the front through the nth stitch and behind the edge, at a side of it.
func (e graftEdge) in(t thread, n int, side float64) thread {
	return t.at(nearest, dark, e.to(n, side*1.5, -3)).
		at(farFeet, dark, e.to(n, side*1.2, 4.2), e.to(n, side*2.6, 6), e.to(n, side*5, 6.4))
}

// graftBegun is the yarn through the first stitch of each needle: of the front one as if to
// purl, of the back one as if to knit.
func graftBegun() thread {
	t := frontEdge.out(thread{}.at(farFeet, dark, point{39.6, frontY + 6.6}), 0, 1)
	t[len(t)-1].near = farFeet // between the edges it goes to the back
	t = t.at(farFeet, dark, point{backColumn(0) + 5, backY - 1}, point{backColumn(0) + 3.4, backY - 6})
	return t.at(nearest, dark, backEdge.to(0, 1.2, 4.2), backEdge.to(0, 1.5, -3))
}

// graftFront is the yarn through two stitches of the front needle: the first as if to knit,
// the next as if to purl.
func graftFront() thread {
	t := backEdge.out(thread{}.at(farFeet, dark, point{39.6, backY - 6.6}), 0, 1)
	t = frontEdge.in(t, 0, -1)
	return frontEdge.out(t, 1, 1)
}

// graftBack goes on through two stitches of the back needle: the first as if to purl, the
// next as if to knit.
func graftBack() thread {
	t := backEdge.in(graftFront(), 0, -1)
	return backEdge.out(t, 1, 1)
}

// drawGraft draws both edges and the yarn through them. Off are how many stitches have
// left each needle; an arrow shows from the end of the yarn where it goes next.
func (k *sketch) drawGraft(t thread, frontOff, backOff int, next point) {
	w := &weave{k: k, wide: courseYarn}
	for n := range 3 {
		w.thread(frontEdge.stitch(n))
		w.thread(backEdge.stitch(n))
	}
	w.needle(leftNeedle, point{0, frontY}, point{frontColumn(frontOff) + graftTip, frontY})
	w.needle(leftNeedle, point{0, backY}, point{backColumn(backOff) + graftTip, backY})
	w.thread(t)
	w.draw()
	end := t[len(t)-1].point
	k.arrow(end.to(next, 0.12), next)
}

func drawGraftBegun(k *sketch, _ LessonOptions) {
	k.drawGraft(graftBegun(), 0, 0, frontEdge.to(0, -1.8, -3.4))
}

func drawGraftFront(k *sketch, _ LessonOptions) {
	k.drawGraft(graftFront(), 1, 0, backEdge.to(0, -1.8, -3.4))
}

func drawGraftBack(k *sketch, _ LessonOptions) {
	k.drawGraft(graftBack(), 1, 1, frontEdge.to(1, -1.8, -3.4))
}
