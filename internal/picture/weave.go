package picture

import "slices"

// knot is a point of a yarn: where its line goes through, how near the eye the line
// lies from there on, and its colour. What lies nearer covers what is farther away.
type knot struct {
	point
	near int
	fill string
}

// thread is a yarn as it runs, from one end to the other: a single line.
type thread []knot

// at goes on to further points, all as near and in one colour.
func (t thread) at(near int, fill string, points ...point) thread {
	for _, p := range points {
		t = append(t, knot{p, near, fill})
	}
	return t
}

// points returns the points of the line.
func (t thread) points() []point {
	list := make([]point, len(t))
	for i, n := range t {
		list[i] = n.point
	}
	return list
}

// weave gathers threads and needles by how near they lie, so that each thread may run
// over and under the others and itself.
type weave struct {
	k     *sketch
	wide  float64 // of the yarn, in mm
	parts []woven
}

type woven struct {
	near int
	draw func()
}

// thread adds a yarn.
func (w *weave) thread(t thread) {
	points := t.points()
	for from := 0; from+1 < len(t); {
		to := from + 1
		for to+1 < len(t) && t[to].near == t[from].near && t[to].fill == t[from].fill {
			to++
		}
		d, fill := w.k.stretch(points, from, to), t[from].fill
		w.parts = append(w.parts, woven{t[from].near, func() { w.k.outlined(fill, w.wide, d) }})
		from = to
	}
}

// needle adds a needle from its shaft to its point.
func (w *weave) needle(near int, from, to point) {
	w.parts = append(w.parts, woven{near, func() { w.k.needle(from, to) }})
}

// draw draws everything, the farthest first.
func (w *weave) draw() {
	slices.SortStableFunc(w.parts, func(a, b woven) int { return a.near - b.near })
	for _, p := range w.parts {
		p.draw()
	}
}
