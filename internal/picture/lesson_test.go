package picture

import (
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/gauge"
	"thenar/internal/stitch"
)

// usualOps are those of a thumb whose gusset grows by make ones.
var usualOps = opSet(stitch.M1L, stitch.M1R, stitch.Hold, stitch.CastOn, stitch.PickUp, stitch.GapK2tog, stitch.GapSSK)

func opSet(ops ...stitch.Op) map[stitch.Op]bool {
	set := map[stitch.Op]bool{}
	for _, op := range ops {
		set[op] = true
	}
	return set
}

func lesson(fromLeft bool, letter float64) *draw.Scene { return lessonOf(usualOps, fromLeft, letter) }

func lessonOf(ops map[stitch.Op]bool, fromLeft bool, letter float64) *draw.Scene {
	s := &draw.Scene{Width: 182}
	for _, row := range Lesson(LessonOptions{Width: 182, Letter: letter, Ops: ops, Held: 15, Bridge: 3, PickedUp: 4, FromLeft: fromLeft}) {
		s.Add(row, 0, s.Height, 1)
		s.Height += row.Height
	}
	return s
}

// walk calls path for every point of a path, and text for every text with its left and right
// end, in the scene's mm.
func walk(s *draw.Scene, path func(x, y float64), text func(left, right, y float64, i draw.Item)) {
	s.Each(draw.Place{Scale: 1}, func(i *draw.Item, at draw.Place) {
		if i.Kind == draw.PathItem {
			draw.Walk(i.Path, func(_ byte, p []float64) {
				for k := 0; k+1 < len(p); k += 2 {
					path(at.At(p[k], p[k+1]))
				}
			})
			return
		}
		w := draw.Measure(i.Text, i.Letter.Size*at.Scale, i.Letter.Face)
		x, y := at.At(i.X, i.Y)
		x -= w * map[draw.Anchor]float64{draw.Start: 0, draw.Middle: 0.5, draw.End: 1}[i.Letter.Anchor]
		text(x, x+w, y, *i)
	})
}

// Everything is within the half page of A4, and no word covers another, in both sizes of print
// and both directions.
func TestLessonFits(t *testing.T) {
	for _, letter := range []float64{4.23, 6.35} {
		for _, fromLeft := range []bool{false, true} {
			s := lesson(fromLeft, letter)
			if letter < 5 {
				assert.Less(t, s.Height, 148.5)
			}
			lines := map[float64][][2]float64{}
			walk(s, func(x, y float64) {
				assert.True(t, x >= -1 && x <= s.Width+1 && y >= -1 && y <= s.Height+1, "%.1f, %.1f", x, y)
			}, func(left, right, y float64, i draw.Item) {
				assert.True(t, left >= -0.01 && right <= s.Width+0.01 && y <= s.Height, i.Text)
				for _, o := range lines[y] {
					assert.True(t, right <= o[0] || left >= o[1], "%q lies on another word", i.Text)
				}
				lines[y] = append(lines[y], [2]float64{left, right})
			})
		}
	}
}

// Where the thumb is picked up is said as it is drawn, also where nothing is cast on
// over the gap or picked up.
func TestLessonSaysWhereToPickUp(t *testing.T) {
	for want, o := range map[string]LessonOptions{
		"Fingers down: pick up along the bridge from right to left, between its stitches and at both ends. Fingers up: the 15\u00a0held.":                                                  {Bridge: 3, PickedUp: 4},
		"Fingers down: pick up along the bridge from right to left, between its stitches and at both ends. 1\u00a0more comes out of the loop in the middle. Fingers up: the 15\u00a0held.": {Bridge: 3, PickedUp: 5},
		"Fingers down: pick up along the bridge from right to left, between its stitches and at both ends. 2\u00a0more come out of the loops in the middle. Fingers up: the 15\u00a0held.": {Bridge: 3, PickedUp: 6},
		"Fingers down: pick up along the bridge from right to left, at both ends. Fingers up: the 15\u00a0held.":                                                                           {Bridge: 1, PickedUp: 2},
		"Hold it fingers down, outside towards you: pick up along the bridge from left to right. Turn it fingers up for the 15\u00a0held.":                                                 {Bridge: 3, PickedUp: 3, FromLeft: true},
		"Hold it fingers down, outside towards you: pick up at the top of the gap from right to left. Turn it fingers up for the 15\u00a0held.":                                            {PickedUp: 2},
		"Nothing is picked up. Hold it fingers up, outside towards you: knit the 15\u00a0held from the right corner.":                                                                      {},
		"Nothing is picked up. Hold it fingers up, outside towards you: knit the 15\u00a0held from the left corner.":                                                                       {FromLeft: true},
	} {
		o.Held = 15
		assert.Equal(t, want, o.pickText(o.names()))
	}
}

// For knitting from left to right every drawing is mirrored, and the names of needles and of
// make ones are exchanged.
func TestLessonFromLeftIsMirrored(t *testing.T) {
	own, turned := lesson(false, 4.23), lesson(true, 4.23)
	assert.Equal(t, []string{"Make one leaning left (M1L)", "Make one leaning right (M1R)"}, titlesOf(own)[:2])
	assert.Equal(t, []string{"Make one leaning right (M1R)", "Make one leaning left (M1L)"}, titlesOf(turned)[:2])
	assert.Contains(t, words(own), "from the front with the left needle")
	assert.Contains(t, words(turned), "from the front with the right needle")
	assert.Contains(t, words(turned), "put it on the left needle")
	for _, name := range []string{"corner 1: k2tog", "corner 2: ssk", "corner 1", "corner 2", "marker"} {
		assert.Contains(t, words(own), name)
		assert.Contains(t, words(turned), name)
	}
	all := LessonOptions{Width: 182, Letter: 4.23, Ops: opSet(stitch.All()...), Tips: []int{8, 14}, Gap: true, Held: 15, Bridge: 3, PickedUp: 4}
	groups := append(all.groups(), LessonOptions{Seam: true}.groups()...)
	for _, row := range all.rows(groups) {
		for _, p := range row {
			var xs [2][]float64
			for i, mirrored := range []bool{false, true} {
				s := &draw.Scene{}
				p.draw(&sketch{s: s, width: p.width, mirrored: mirrored}, LessonOptions{Held: 15, Bridge: 3, PickedUp: 4})
				walk(s, func(x, _ float64) { xs[i] = append(xs[i], x) }, func(left, right, _ float64, _ draw.Item) { xs[i] = append(xs[i], (left+right)/2) })
			}
			require.Len(t, xs[1], len(xs[0]))
			for i := range xs[0] {
				require.InDelta(t, p.width-xs[0][i], xs[1][i], 0.002, p.title)
			}
		}
	}
}

// Steps stand in the order in which they are worked, each number in a ring: where the
// gaps are closed, k2tog comes before ssk (stumbled over by readers when it stood after).
func TestLessonStepsStandInOrder(t *testing.T) {
	for _, fromLeft := range []bool{false, true} {
		s := lesson(fromLeft, 4.23)
		all := words(s)
		assert.Less(t, strings.Index(all, "k2tog"), strings.Index(all, "ssk"))
		type step struct{ n, x, y float64 }
		var steps []step
		rings := 0
		walk(s, func(float64, float64) {}, func(left, right, y float64, i draw.Item) {
			if n, err := strconv.Atoi(i.Text); err == nil && i.Letter.Size < 3.7 && i.Letter.Face == draw.Semibold && i.Letter.Halo == "" {
				steps = append(steps, step{float64(n), (left + right) / 2, y})
			}
		})
		for _, i := range s.Items {
			if i.Kind == draw.PathItem && i.Style.Width == 0.3 && i.Style.Fill == "" {
				rings++
			}
		}
		require.Len(t, steps, 6)
		assert.Equal(t, len(steps), rings)
		for k := 0; k < len(steps); k += 2 {
			assert.Equal(t, []float64{1, 2}, []float64{steps[k].n, steps[k+1].n})
			assert.Less(t, steps[k].x, steps[k+1].x)
			assert.InDelta(t, steps[k].y, steps[k+1].y, 0)
		}
	}
}

func words(s *draw.Scene) string {
	var list []string
	for _, i := range s.Items {
		if i.Kind == draw.TextItem {
			list = append(list, i.Text)
		}
	}
	return strings.Join(list, " ")
}

// titlesOf returns the titles of the panels, in order.
func titlesOf(s *draw.Scene) []string {
	var list []string
	for _, i := range s.Items {
		if i.Kind == draw.TextItem && i.Letter.Face != draw.Regular && i.Letter.Size > 3.9 {
			list = append(list, i.Text)
		}
	}
	return list
}

// The first and the last place are numbered, and those between if there is room. A mitt
// without a thumb has no lesson.
func TestLessonHasThePlansCounts(t *testing.T) {
	for n := range mostDrawn + 1 {
		s := &draw.Scene{}
		drawOpening(&sketch{s: s, width: 66}, LessonOptions{Held: 15, PickedUp: n})
		var numbers []int
		for _, i := range s.Items {
			if k, err := strconv.Atoi(i.Text); i.Kind == draw.TextItem && err == nil {
				numbers = append(numbers, k)
			}
		}
		if n == 0 {
			assert.Empty(t, numbers)
			continue
		}
		assert.Equal(t, []int{1, n}, []int{numbers[0], numbers[len(numbers)-1]})
		assert.True(t, n > 8 || len(numbers) == n, "%d of %d", len(numbers), n)
	}
	assert.Empty(t, Lesson(LessonOptions{Width: 182, Letter: 4.23}))
}

// Stitches are picked up between and beside those of the bridge, from the marker at the
// right on: c stitches have c + 1 such places (common practice, no source). Fewer lie in
// places of their own, more in the loops themselves, or along the edge.
func TestPickedUpLieBetweenTheBridge(t *testing.T) {
	for c := range 13 {
		for n := 1; n <= c+3; n++ {
			s := &draw.Scene{}
			drawOpening(&sketch{s: s, width: 66}, LessonOptions{Held: 15, Bridge: c, PickedUp: n})
			var dots, stitches []float64
			for _, i := range s.Items {
				x := pathMiddle(i)
				switch {
				case i.Kind == draw.PathItem && i.Style.Fill == outlineColour && i.Style.Stroke == "" && strings.Count(i.Path, "C") == 4:
					dots = append(dots, x)
				case i.Kind == draw.PathItem && i.Style.Stroke == pale && i.Style.Width < 1.5: // a leg of a stitch, but no held one
					draw.Walk(i.Path, func(op byte, p []float64) {
						if op == 'M' && p[1] > openMiddle {
							stitches = append(stitches, p[0])
						}
					})
				}
			}
			require.Len(t, dots, n)
			require.Len(t, stitches, 2*c)
			slices.Sort(stitches)
			for i := 1; i < n; i++ {
				require.Less(t, dots[i], dots[i-1]-0.5, "from right to left")
				between := slices.ContainsFunc(stitches, func(x float64) bool { return x > dots[i] && x < dots[i-1] })
				require.True(t, between || n > c+1, "%d of %d picked up along %d", i, n, c)
			}
			if n == c+1 && c > 0 {
				assert.True(t, dots[0] > stitches[2*c-1] && dots[n-1] < stitches[0])
			}
		}
	}
}

// pathMiddle returns the x of the middle of a path's first and farthest points.
func pathMiddle(i draw.Item) float64 {
	low, high := 1e9, -1e9
	if i.Kind == draw.PathItem {
		draw.Walk(i.Path, func(_ byte, p []float64) {
			for k := 0; k < len(p); k += 2 {
				low, high = min(low, p[k]), max(high, p[k])
			}
		})
	}
	return (low + high) / 2
}

// In large print titles and captions have 18 pt, 6.35 mm. Labels within a drawing are as
// large as there is room.
func TestLessonInLargePrint(t *testing.T) {
	n := 0
	lesson(false, 6.35).Each(draw.Place{Scale: 1}, func(i *draw.Item, at draw.Place) {
		if i.Kind == draw.TextItem && at.Scale == 1 {
			n++
			assert.GreaterOrEqual(t, i.Letter.Size, 6.349, i.Text)
		}
	})
	assert.Greater(t, n, 20)
}

// No line is too fine for a bad printer, and outlines have a contrast of at least 3 to 1 to
// each tone (WCAG 2.2, 1.4.11).
func TestLessonSurvivesABadPrinter(t *testing.T) {
	for _, i := range lesson(false, 4.23).Items {
		if i.Kind == draw.PathItem && i.Style.Stroke == outlineColour {
			assert.GreaterOrEqual(t, i.Style.Width, 0.3)
		}
	}
	outline, _ := Luminance(outlineColour)
	for _, fill := range []string{pale, steel, dark} {
		l, ok := Luminance(fill)
		require.True(t, ok)
		assert.GreaterOrEqual(t, (l+0.05)/(outline+0.05), 3.0, fill)
	}
}

// Grid paper has cells of the width asked for and the height of the gauge, and no line
// outside its area.
func TestGridPaperIsToScale(t *testing.T) {
	g := gauge.Gauge{Stitches: 0.24, Rounds: 0.32}
	s := GridPaper(g, 182, 250, 5)
	var xs, ys []float64
	for _, i := range s.Items {
		if i.Kind != draw.PathItem {
			continue
		}
		var last []float64
		draw.Walk(i.Path, func(op byte, p []float64) {
			if op == 'M' {
				last = []float64{p[0], p[1]}
				return
			}
			assert.True(t, p[0] <= 182 && p[1] <= 250)
			if p[0] == last[0] {
				xs = append(xs, p[0])
			} else {
				ys = append(ys, p[1])
			}
		})
	}
	assert.InDelta(t, 5, stepOf(t, xs), 0.001)
	assert.InDelta(t, 5*0.24/0.32, stepOf(t, ys), 0.001)
	assert.Greater(t, len(xs), 30)
	assert.Greater(t, len(ys), 60)
	assert.Empty(t, GridPaper(g, 3, 3, 5).Items, "no room, no grid")
}

// stepOf returns the distance of evenly spaced lines.
func stepOf(t *testing.T, at []float64) float64 {
	t.Helper()
	low, high := at[0], at[0]
	for _, v := range at {
		low, high = min(low, v), max(high, v)
	}
	step := (high - low) / float64(len(at)-1)
	for _, v := range at {
		n := (v - low) / step
		require.InDelta(t, float64(int(n+0.5)), n, 0.01)
	}
	return step
}

// keepApart checks that no text of a scene covers another.
func keepApart(t *testing.T, s *draw.Scene) {
	t.Helper()
	type box struct {
		text                     string
		left, right, top, bottom float64
	}
	var all []box
	walk(s, func(float64, float64) {}, func(left, right, y float64, i draw.Item) {
		b := box{i.Text, left, right, y - 0.72*i.Letter.Size, y + 0.02*i.Letter.Size} // capitals and figures
		for _, o := range all {
			assert.True(t, b.right <= o.left || b.left >= o.right || b.bottom <= o.top || b.top >= o.bottom, "%q lies on %q", b.text, o.text)
		}
		all = append(all, b)
	})
}

// A ruler's ticks are 1 mm apart above, and an eighth of 25.4 mm below.
func TestSwatchRulerIsToScale(t *testing.T) {
	s, window := SwatchRuler(180, 3.6), SwatchWindow(3.6)
	var above, below []float64
	for _, i := range s.Items {
		if i.Style != tickLine {
			continue
		}
		draw.Walk(i.Path, func(op byte, p []float64) {
			if op == 'M' && p[1] < s.Height/2 {
				above = append(above, p[0])
			} else if op == 'M' {
				below = append(below, p[0])
			}
		})
	}
	assert.InDelta(t, 1, stepOf(t, above), 1e-6)
	assert.InDelta(t, 3.175, stepOf(t, below), 1e-3)
	assert.InDelta(t, above[0], below[0], 0)
	assert.Len(t, above, 173)
	keepApart(t, s)
	keepApart(t, window)
	s.Each(draw.Place{Scale: 1}, func(i *draw.Item, _ draw.Place) {
		if i.Kind == draw.PathItem && i.Style == tickLine {
			draw.Walk(i.Path, func(_ byte, p []float64) {
				assert.True(t, p[1] >= 0.8 && p[1] <= s.Height-0.8, "a tick in the line to cut along: %.2f", p[1])
			})
		}
	})
	assert.GreaterOrEqual(t, window.Width, 120.0)
	walk(window, func(x, y float64) { assert.True(t, x <= window.Width && y <= window.Height) }, func(left, right, y float64, i draw.Item) {
		assert.True(t, left >= 0 && right <= window.Width && y < window.Height, i.Text)
	})
}
