package picture

import (
	"math"

	"thenar/internal/draw"
)

// outline returns the hand's contour: from the forearm on the little finger's side
// over the fingers and the thumb back to the forearm. The forearm ends at foot, a
// height below 0, in mm.
func (f *figure) outline(foot float64) []point {
	points := []point{
		{-f.forearm(foot), foot},
		{-f.forearm(foot / 2), foot / 2},
		{-f.wrist, 0},
		{-0.5*f.wrist - 0.5*f.palm, 0.09 * f.long},
		{-0.985 * f.palm, 0.22 * f.long},
		{-1.01 * f.palm, 0.33 * f.long},
		{-0.99 * f.palm, min(0.44*f.long, f.of.crotch[0]-0.05*f.long)},
	}
	spots := f.fingers()
	for i, s := range spots {
		points = append(points, s.left...)
		points = append(points, s.tip...)
		points = append(points, s.right...)
		if i < len(spots)-1 {
			points = append(points, s.web)
		}
	}
	if f.tucked {
		return append(points, f.farSide(foot)...)
	}
	points = append(points,
		point{f.palm, min(0.49*f.long, f.of.crotch[2]-0.07*f.long)}, point{0.985 * f.palm, max(0.4*f.crotch.y+0.6*0.44*f.long, f.crotch.y+0.02*f.long)},
		f.crotch.plus(point{0.012 * f.long, 0}), f.onThumb(0.10*f.h.ThumbLength.MM(), -f.thumb))
	points = append(points, f.thumbSide()...)
	return append(
		points,
		point{f.wrist, 0},
		point{f.forearm(foot / 2), foot / 2},
		point{f.forearm(foot), foot},
	)
}

// farSide returns the thumb's side of a hand whose thumb is tucked in, the mirror
// image of the other side.
func (f *figure) farSide(foot float64) []point {
	return []point{
		{0.99 * f.palm, 0.44 * f.long},
		{1.01 * f.palm, 0.33 * f.long},
		{0.985 * f.palm, 0.22 * f.long},
		{0.5*f.wrist + 0.5*f.palm, 0.09 * f.long},
		{f.wrist, 0},
		{f.forearm(foot / 2), foot / 2},
		{f.forearm(foot), foot},
	}
}

// forearm returns half the forearm's breadth at a height y ≤ 0. It grows by a tenth
// of the distance from the wrist (our judgement).
func (f *figure) forearm(y float64) float64 { return f.wrist - 0.10*y }

// drawnFinger is the contour of one finger, the bottom of the crotch at its right, and its
// axis: where it begins, its direction of length 1, and how long and half how broad it is.
type drawnFinger struct {
	left, tip, right []point
	web              point
	joints           [][2]point
	root, along      point
	long, half       float64
}

// fingers places the four fingers side by side over the breadth of the palm; the
// rest of the breadth is shared between the crotches.
func (f *figure) fingers() []drawnFinger {
	widths, room := [len(drawnOrder)]float64{}, 2*f.palm
	for i, g := range f.of.fingers {
		widths[i] = g.girth / 2 * flatFinger
		room -= widths[i]
	}
	gap := max(room/3, 0)
	scale := min(1, 2*f.palm/(2*f.palm-room+3*gap)) // fingers together are never broader than the palm
	out := make([]drawnFinger, len(drawnOrder))
	x := -f.palm
	crotch, beside := f.of.crotch, 0.02*f.long // a finger's outer side begins so much below its crotch
	webs := [...]float64{crotch[0] - beside, crotch[0], crotch[1], crotch[2], crotch[2] - beside}
	for i, g := range f.of.fingers {
		w := widths[i] * scale
		out[i] = f.finger(g, f.leans[i], x+w/2, w/2, webs[i]+gap, webs[i+1]+gap)
		out[i].web = point{x + w + gap/2, webs[i+1]}
		x += w + gap
	}
	return out
}

// finger returns the contour of a finger. Its axis begins at x, half its breadth is
// w, and its sides begin at the heights leftFrom and rightFrom.
func (f *figure) finger(g finger, lean, x, w, leftFrom, rightFrom float64) drawnFinger {
	sin, cos := math.Sincos(lean * math.Pi / 180)
	root, long := point{x, g.root}, g.long
	at := func(up, out float64) point {
		return root.plus(point{sin * up, cos * up}).plus(point{cos * out, -sin * out})
	}
	// Breadths along the finger: slightly narrower on both sides of each joint.
	sides := []struct{ up, out float64 }{{0.2, 0.96}, {0.40, 1}, {0.56, 0.93}, {0.68, 0.95}}
	d := drawnFinger{left: []point{at(leftFrom-root.y, -0.99*w)}, root: root, along: point{sin, cos}, long: long, half: w}
	for _, s := range sides {
		d.left = append(d.left, at(s.up*long, -s.out*w))
	}
	for i := len(sides) - 1; i >= 0; i-- {
		d.right = append(d.right, at(sides[i].up*long, sides[i].out*w))
	}
	d.right = append(d.right, at(rightFrom-root.y, 0.99*w))
	d.tip = roundTip(func(up, out float64) point { return at(long-0.9*w+up*0.9*w, out*0.86*w) })
	for _, up := range []float64{0.02, 0.40, 0.68} {
		d.joints = append(d.joints, [2]point{at(up*long, -0.55*w), at(up*long, 0.55*w)})
	}
	return d
}

// roundTip returns points of a half circle of radius 1, from the left over the top.
func roundTip(at func(up, out float64) point) []point {
	points := make([]point, 0, 5)
	for _, degrees := range []float64{-90, -45, 0, 45, 90} {
		sin, cos := math.Sincos(degrees * math.Pi / 180)
		points = append(points, at(cos, sin))
	}
	return points
}

// thumbSide returns the contour up the thumb's inner side, over its tip, down its
// outer side and over the ball of the thumb.
func (f *figure) thumbSide() []point {
	long, w := f.h.ThumbLength.MM(), f.thumb
	at := func(up, out float64) point { return f.onThumb(up*long, out*w) }
	points := []point{at(0.24, -1), at(0.40, -0.96), at(0.56, -1.0), at(0.72, -0.93)}
	points = append(points, roundTip(func(up, out float64) point {
		return f.onThumb(long-0.95*w+up*0.95*w, out*0.84*w)
	})...)
	points = append(points, at(0.72, 0.95), at(0.56, 1.0), at(0.36, 0.95), at(0.12, 1.06), at(-0.12, 1.18))
	mound := at(-0.34, 1.16)
	return append(points, mound, mound.to(point{f.wrist, 0}, 0.5).plus(point{0.006 * f.long, -0.003 * f.long}))
}

// drawHand draws the hand. The line of its contour is open at the forearm.
func (f *figure) drawHand(c *canvas, foot float64) {
	points := f.outline(foot)
	c.pen().smooth(points).path(draw.Style{Class: "body", Fill: skinColour})
	f.drawLines(c)
	c.pen().smooth(points).path(draw.Style{Class: "skin", Stroke: pencilColour, Width: c.letter / 9, Round: true})
}

// drawLines draws faint folds at the joints and the three lines of the palm, which
// show that this is the palm and not the back.
func (f *figure) drawLines(c *canvas) {
	faint := draw.Style{Class: "fold", Stroke: gridColour, Width: c.letter / 14, Round: true}
	p := c.pen()
	for _, g := range f.fingers() {
		for _, j := range g.joints {
			p.fold(j[0], j[1])
		}
	}
	for _, up := range []float64{0.18, 0.56} {
		if f.tucked {
			break
		}
		p.fold(f.onThumb(up*f.h.ThumbLength.MM(), -0.6*f.thumb), f.onThumb(up*f.h.ThumbLength.MM(), 0.6*f.thumb))
	}
	at := func(x, y float64) point { return point{x * f.palm, y * f.long} }
	start := f.crotch.plus(point{-0.01 * f.long, 0.055 * f.long})
	p.smooth([]point{at(-0.96, 0.405), at(-0.45, 0.405), at(0.05, 0.45), at(0.30, 0.525)})
	p.smooth([]point{start, at(0.45, 0.375), at(-0.05, 0.33), at(-0.55, 0.255)})
	p.smooth([]point{start, at(0.50, 0.335), at(0.22, 0.24), at(0.14, 0.13), at(0.22, 0.035)})
	p.path(faint)
}

// fold draws a shallow arc across a joint.
func (p *pen) fold(a, b point) {
	dip := b.plus(a.times(-1))
	dip = point{dip.y, -dip.x}.times(0.10)
	p.move(a).curve(a.to(b, 0.3).plus(dip), a.to(b, 0.7).plus(dip), b)
}
