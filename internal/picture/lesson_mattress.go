package picture

// Two edges that are sewn in mattress stitch, side by side with their knit sides up. In mm
// before all is drawn smaller: the courses, each above the one before.
const (
	sewnSmall   = 0.74 // how much smaller than the courses of other panels
	sewnCourse  = 7.0  // from one course to the next
	sewnCourses = 4
	sewnFoot    = 29.0 // the head of the lowest
)

// below everything else runs the yarn of the seam, under the strands between two stitches.
const below = farFeet - 1

// sewnEdge is one of the two edges: the middles of its stitches from left to right, and on
// which side its end lies: the right one with 1.
type sewnEdge struct {
	columns []float64
	end     float64
}

// course is the nth course of an edge, from 0, which comes out of the one below it.
func (e sewnEdge) course(n int) (t thread) {
	y := sewnFoot - sewnCourse*float64(n)
	for _, x := range e.columns {
		t = t.footUp(pale, x, y+sewnCourse, -1).over(pale, x, y, -1).footDown(pale, x, y+sewnCourse, 1)
	}
	return t.smaller()
}

// turn is the yarn at the end of an edge, from the nth course up to the next.
func (e sewnEdge) turn(n int) thread {
	x := e.columns[0]
	if e.end > 0 {
		x = e.columns[len(e.columns)-1]
	}
	y := sewnFoot - sewnCourse*float64(n) + sewnCourse
	return thread{}.at(farFeet, pale, point{x + e.end*4, y + 4.6}, point{x + e.end*5.6, y + 4.5}, point{x + e.end*7.4, y + 2.8}, point{x + e.end*7.4, y - 0.6}, point{x + e.end*5.6, y - 2.3}, point{x + e.end*4, y - 2.4}).smaller()
}

// smaller draws a yarn at the size of the seam's panels.
func (t thread) smaller() thread {
	for i := range t {
		t[i].point = small(t[i].point)
	}
	return t
}

func small(p point) point { return p.times(sewnSmall) }

// edges adds the edges to a weave.
func (w *weave) edges(list ...sewnEdge) {
	for _, e := range list {
		for n := range sewnCourses {
			w.thread(e.course(n))
			if e.end != 0 && n%2 == int(max(0, e.end)) && n+1 < sewnCourses {
				w.thread(e.turn(n))
			}
		}
	}
}

// sewnStrand returns the height of the strands between the stitches of the nth course.
func sewnStrand(n float64) float64 { return sewnFoot + sewnCourse + 4.6 - sewnCourse*n }

// Where the strands lie under which the yarn of the seam goes, in mm: between the last stitch
// and the last but one of either edge.
const sewnLeft, sewnRight = 10.2, 43.8

// under goes under two strands, of the course n and the next, between two stitches of an
// edge whose end lies at a side.
func (t thread) under(n, x, end float64) thread {
	return t.at(nearest, dark, point{x + end*3.4, sewnStrand(n - 0.45)}).
		at(below, dark, point{x, sewnStrand(n - 0.3)}, point{x, sewnStrand(n + 1.3)}).
		at(nearest, dark, point{x + end*3.4, sewnStrand(n + 1.45)})
}

// drawMattress draws the yarn of the seam, which goes under two strands of one edge and then
// of the other.
func drawMattress(k *sketch, _ LessonOptions) {
	w := &weave{k: k, wide: courseYarn * sewnSmall}
	w.edges(sewnEdge{[]float64{3.8, 16.6}, 1}, sewnEdge{[]float64{37.4, 50.2}, -1})
	t := thread{}.at(below, dark, point{sewnRight, sewnStrand(-0.7)}, point{sewnRight, sewnStrand(0.3)}).
		at(nearest, dark, point{sewnRight - 3.4, sewnStrand(0.45)})
	t = t.under(0, sewnLeft, 1).under(1, sewnRight, -1)
	t = t.at(nearest, dark, point{31, sewnStrand(2.25)})
	w.thread(t.smaller())
	w.draw()
	k.arrow(small(point{29.4, sewnStrand(2.2)}), small(point{sewnLeft + 4.4, sewnStrand(1.8)}), small(point{sewnLeft, sewnStrand(2)}), small(point{sewnLeft, sewnStrand(3.4)}))
}
