package picture

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
)

// Which of yarn and needles is on top where they cross while a make one is knitted (common
// practice, no source). Through the back loop the right needle goes under the front leg,
// behind the left needle, over the back leg. Through the front loop it goes over the front
// leg, behind the left needle, under the back leg, and below it the front leg crosses over
// the back one. The same holds for knitting from left to right.
func TestMakeOneCrossings(t *testing.T) {
	right := [2]point{rightShaft, rightTip}
	for _, mirrored := range []bool{false, true} {
		for _, c := range []struct {
			name        string
			draw        func(*sketch, LessonOptions)
			legs        func() (front, back []point)
			front, back string // what lies on top where the right needle crosses the leg
			crosses     int
		}{
			{"through the back loop", drawKnitBack, openStrand, dark, steel, 0},
			{"through the front loop", drawKnitFront, crossedStrand, steel, dark, 1},
		} {
			s := &draw.Scene{}
			k := &sketch{s: s, width: 40, mirrored: mirrored}
			c.draw(k, LessonOptions{})
			front, back := c.legs()
			top := func(at point) draw.Item { return topmost(t, s, at) }
			of := map[string][]point{"front": front, "back": back}
			for leg, want := range map[string]string{"front": c.front, "back": c.back} {
				n := 0
				for _, at := range crossings(line(k, of[leg]), line(k, right[:])) {
					if math.Abs(at.y-needleY) < needleWidth/2 {
						continue // the left needle hides it
					}
					n++
					assert.Equal(t, want, toneOf(top(at)), "%s: the right needle at the %s leg, %.1f", c.name, leg, at)
				}
				assert.Equal(t, 1, n, "%s: the right needle crosses the %s leg where it is seen", c.name, leg)
			}
			left := [2]point{leftShaft, leftTip}
			for leg, want := range map[string]string{"front": dark, "back": steel} {
				found := crossings(line(k, of[leg]), line(k, left[:]))
				require.NotEmpty(t, found)
				assert.Equal(t, want, toneOf(top(found[0])), "%s: the left needle at the %s leg", c.name, leg)
			}
			dive := crossings(line(k, right[:]), line(k, left[:]))
			require.Len(t, dive, 1)
			assert.Equal(t, leftPath(s), top(dive[0]).Path, "%s: the left needle lies before the right one", c.name)
			found := crossings(line(k, front), line(k, back))
			below := 0
			for _, at := range found {
				if at.y > needleY {
					below++
					assert.Equal(t, k.curve(front...), top(at).Path, "%s: the front leg crosses over the back one", c.name)
				}
			}
			assert.Equal(t, c.crosses, below, "%s: how often the legs cross below the needle", c.name)
		}
	}
}

// toneOf returns the colour that distinguishes yarn and needles.
func toneOf(i draw.Item) string {
	if i.Style.Fill != "" {
		return i.Style.Fill
	}
	return i.Style.Stroke
}

// leftPath returns the left needle: the last needle that is drawn whole.
func leftPath(s *draw.Scene) string {
	path := ""
	for _, i := range s.Items {
		if i.Style.Fill == steel && i.Style.Stroke != "" {
			path = i.Path
		}
	}
	return path
}

// line returns the smooth line through points as many short ones, in the panel's
// coordinates.
func line(k *sketch, points []point) []point { return flat(k.curve(points...)) }

func flat(path string) (list []point) {
	var last point
	draw.Walk(path, func(op byte, p []float64) {
		switch op {
		case 'M', 'L':
			last = point{p[0], p[1]}
			list = append(list, last)
		case 'C':
			from := last
			for i := 1; i <= 40; i++ {
				u := float64(i) / 40
				v := 1 - u
				last = from.times(v * v * v).plus(point{p[0], p[1]}.times(3 * u * v * v)).plus(point{p[2], p[3]}.times(3 * u * u * v)).plus(point{p[4], p[5]}.times(u * u * u))
				list = append(list, last)
			}
		}
	})
	return list
}

// crossings returns the points at which two lines cross.
func crossings(a, b []point) (found []point) {
	for i := 1; i < len(a); i++ {
		for j := 1; j < len(b); j++ {
			p, r := a[i-1], a[i].plus(a[i-1].times(-1))
			q, s := b[j-1], b[j].plus(b[j-1].times(-1))
			across := r.x*s.y - r.y*s.x
			if across == 0 {
				continue
			}
			d := q.plus(p.times(-1))
			u, v := (d.x*s.y-d.y*s.x)/across, (d.x*r.y-d.y*r.x)/across
			if u >= 0 && u < 1 && v >= 0 && v < 1 {
				found = append(found, p.plus(r.times(u)))
			}
		}
	}
	return found
}

// topmost returns what is drawn last at a point.
func topmost(t *testing.T, s *draw.Scene, at point) draw.Item {
	t.Helper()
	for n := len(s.Items) - 1; n >= 0; n-- {
		i := s.Items[n]
		if i.Kind != draw.PathItem {
			continue
		}
		list := flat(i.Path)
		if i.Style.Fill != "" && within(list, at) {
			return i
		}
		for j := 1; j < len(list) && i.Style.Stroke != ""; j++ {
			if distance(at, list[j-1], list[j]) <= i.Style.Width/2 {
				return i
			}
		}
	}
	t.Fatalf("nothing is drawn at %v", at)
	return draw.Item{}
}

func within(list []point, at point) bool {
	in := false
	for i, j := 0, len(list)-1; i < len(list); j, i = i, i+1 {
		a, b := list[i], list[j]
		if (a.y > at.y) != (b.y > at.y) && at.x < (b.x-a.x)*(at.y-a.y)/(b.y-a.y)+a.x {
			in = !in
		}
	}
	return in
}

// distance returns the distance of a point from a short line.
func distance(at, a, b point) float64 {
	d, p := b.plus(a.times(-1)), at.plus(a.times(-1))
	share := 0.0
	if l := d.x*d.x + d.y*d.y; l > 0 {
		share = min(max((p.x*d.x+p.y*d.y)/l, 0), 1)
	}
	return length(p.plus(d.times(-share)))
}

// A strand lifted from the front has the needle's way first in front of the work, then
// behind it; one lifted from behind the other way round (common practice, no source).
func TestTheWayUnderTheStrandIsSeen(t *testing.T) {
	for _, fromFront := range []bool{true, false} {
		s := &draw.Scene{}
		lift(&sketch{s: s, width: 40}, fromFront)
		var behind, front float64
		for _, i := range s.Items {
			p := flat(i.Path)
			switch {
			case i.Style.Dash != "":
				behind = p[0].y
			case i.Style.Stroke == outlineColour && i.Style.Width == 0.5:
				front = p[0].y
			}
		}
		require.NotZero(t, behind)
		assert.Equal(t, fromFront, front > behind, "from below up")
	}
}
