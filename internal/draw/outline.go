package draw

import (
	"math"
	"slices"
)

// point is a place in dots.
type point struct{ x, y float64 }

func (a point) plus(b point) point    { return point{a.x + b.x, a.y + b.y} }
func (a point) minus(b point) point   { return point{a.x - b.x, a.y - b.y} }
func (a point) times(f float64) point { return point{a.x * f, a.y * f} }
func (a point) length() float64       { return math.Hypot(a.x, a.y) }
func (a point) cross(b point) float64 { return a.x*b.y - a.y*b.x }
func (a point) dot(b point) float64   { return a.x*b.x + a.y*b.y }
func (a point) quarterTurn() point    { return point{-a.y, a.x} }

// run is a line of straight pieces, which at its end may go back to where it
// began.
type run struct {
	at     []point
	closed bool
	drawn  bool // false where a pen was only moved
}

// flat is by how many dots straight pieces may be off a curve.
const flat = 0.05

// runs returns the lines of path data at a place, their curves as straight
// pieces.
func runs(d string, place Place) []run {
	var list []run
	Walk(d, func(op byte, p []float64) {
		var to [3]point
		for k := 0; k+1 < len(p); k += 2 {
			to[k/2].x, to[k/2].y = place.At(p[k], p[k+1])
		}
		if op == 'M' {
			list = append(list, run{at: []point{to[0]}})
			return
		}
		if len(list) == 0 {
			return
		}
		now := &list[len(list)-1]
		if now.closed { // what follows begins where that one did
			list = append(list, run{at: []point{now.at[0]}})
			now = &list[len(list)-1]
		}
		now.drawn = true
		switch op {
		case 'L':
			now.line(to[0])
		case 'C':
			now.curve(to[0], to[1], to[2])
		case 'Z':
			now.closed = true
		}
	})
	return slices.DeleteFunc(list, func(r run) bool { return !r.drawn })
}

// line goes straight on to a point, if it is another one.
func (r *run) line(p point) {
	if r.at[len(r.at)-1] != p {
		r.at = append(r.at, p)
	}
}

// curve goes on along a cubic, in n pieces. These are off it by at most an
// eighth of its largest second derivative over n²; that is 6 times the larger
// second difference of its points.
func (r *run) curve(b, c, d point) {
	a := r.at[len(r.at)-1]
	bend := max(a.minus(b.times(2)).plus(c).length(), b.minus(c.times(2)).plus(d).length())
	n := math.Ceil(math.Sqrt(6.0 / 8 * bend / flat))
	for k := 1.0; k < n; k++ {
		t := k / n
		u := 1 - t
		r.line(a.times(u * u * u).plus(b.times(3 * u * u * t)).plus(c.times(3 * u * t * t)).plus(d.times(t * t * t)))
	}
	r.line(d)
}

// dashed returns the pieces of a run that its dashes leave; lengths are those
// of Dashes. A dash of no length is a single point.
func (r run) dashed(lengths []float64) []run {
	if len(lengths) == 0 {
		return []run{r}
	}
	corners := r.at
	if r.closed {
		corners = append(slices.Clone(r.at), r.at[0])
	}
	var list []run
	nth, left := 0, lengths[0]
	piece := run{at: corners[:1:1]}
	from := corners[0]
	for _, to := range corners[1:] {
		long := to.minus(from).length()
		for ; long >= left && long > 0; nth++ {
			from = from.plus(to.minus(from).times(left / long))
			long -= left
			if nth%2 == 0 {
				piece.line(from)
				list = append(list, piece)
			}
			piece = run{at: []point{from}}
			left = lengths[(nth+1)%len(lengths)]
		}
		left -= long
		if nth%2 == 0 {
			piece.line(to)
		}
		from = to
	}
	if nth%2 == 0 && len(piece.at) > 1 {
		list = append(list, piece)
	}
	return list
}

// stroked returns shapes that together cover a line of a width: a rectangle for
// each straight piece, and the wedge between two of them on the outer side of
// their corner, which makes it round. All turn the same way, so that what lies
// on each other counts once and edges in common leave no seam.
func (r run) stroked(width float64, roundEnds bool) [][]point {
	at := r.at
	if r.closed && len(at) > 1 && at[len(at)-1] != at[0] {
		at = append(slices.Clone(at), at[0])
	}
	half := width / 2
	if len(at) == 1 {
		if !roundEnds {
			return nil
		}
		return [][]point{wedge(at[0], point{half, 0}, 2*math.Pi)}
	}
	aside := func(k int) point { // of the piece after the corner, half a width long
		way := at[k+1].minus(at[k])
		return way.quarterTurn().times(half / way.length())
	}
	var shapes [][]point
	last := len(at) - 2
	for k := range at[:last+1] {
		n := aside(k)
		shapes = append(shapes, []point{at[k].minus(n), at[k+1].minus(n), at[k+1].plus(n), at[k].plus(n)})
		if k > 0 {
			shapes = append(shapes, corner(at[k], aside(k-1), n))
		}
	}
	switch {
	case r.closed:
		shapes = append(shapes, corner(at[0], aside(last), aside(0)))
	case roundEnds:
		shapes = append(shapes, wedge(at[0], aside(0), math.Pi), wedge(at[last+1], aside(last).times(-1), math.Pi))
	}
	return shapes
}

// corner returns the wedge on the outer side of a corner; before and after
// stand across the pieces that meet there.
func corner(at, before, after point) []point {
	turn := math.Atan2(before.cross(after), before.dot(after))
	if turn > 0 {
		return wedge(at, before.times(-1), turn)
	}
	return wedge(at, after, -turn)
}

// wedge returns the part of a circle about a point from an arm on by an angle.
func wedge(at, arm point, angle float64) []point {
	step := 2 * math.Acos(max(1-flat/arm.length(), 0))
	n := max(math.Ceil(angle/step), 1)
	shape := []point{at}
	for k := 0.0; k <= n; k++ {
		sin, cos := math.Sincos(angle * k / n)
		shape = append(shape, at.plus(point{arm.x*cos - arm.y*sin, arm.x*sin + arm.y*cos}))
	}
	return shape
}
