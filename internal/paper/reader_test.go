package paper

import (
	"cmp"
	"html"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/testenv"
)

// glyph is a letter as it is laid: its middle in mm.
type glyph struct {
	letter rune
	x, y   float64
	text   int // which text of the page it belongs to
	read   bool
}

// glyphs returns the letters of all texts of a page, those of drawings included.
func glyphs(p *draw.Scene) []glyph {
	var list []glyph
	n := 0
	p.Each(draw.Place{Scale: 1}, func(i *draw.Item, at draw.Place) {
		if i.Kind != draw.TextItem {
			return
		}
		n++
		b := textBox(i, at, asLetter.above, asLetter.below)
		size, x := i.Letter.Size*at.Scale, b.left
		for _, r := range i.Text {
			w := draw.Measure(string(r), size, i.Letter.Face)
			if r != ' ' {
				list = append(list, glyph{r, x + w/2, b.bottom - 0.45*size, n, false})
			}
			x += w
		}
	})
	return list
}

// readWord is a word with its box as an independent reader finds it.
type readWord struct {
	box
	text string
}

// readPages reads a PDF with pdftotext, which knows nothing of how it was written.
func readPages(t *testing.T, file string) [][]readWord {
	t.Helper()
	var pages [][]readWord
	for _, text := range strings.Split(run(t, "pdftotext", "-bbox", file, "-"), "<page ")[1:] {
		var list []readWord
		for _, m := range bbox.FindAllStringSubmatch(text, -1) {
			var at [4]float64
			for k := range at {
				n, err := strconv.ParseFloat(m[k+1], 64)
				require.NoError(t, err)
				at[k] = n * 25.4 / 72
			}
			list = append(list, readWord{box{at[0], at[1], at[2], at[3]}, html.UnescapeString(m[5])})
		}
		pages = append(pages, list)
	}
	return pages
}

// everyLetterIsRead checks that the reader finds every letter of a page in its place
// exactly once: the letters laid in the box of a word are that word, and none is left.
func everyLetterIsRead(t *testing.T, p *draw.Scene, found []readWord, what string) {
	t.Helper()
	laid := glyphs(p)
	for _, w := range found {
		var in []int
		for k := range laid {
			g := &laid[k]
			if !g.read && g.x > w.left-0.05 && g.x < w.right+0.05 && g.y > w.top && g.y < w.bottom {
				in = append(in, k)
			}
		}
		slices.SortStableFunc(in, func(a, b int) int { return cmp.Compare(laid[a].x, laid[b].x) })
		var text strings.Builder
		for _, k := range in {
			laid[k].read = true
			text.WriteRune(laid[k].letter)
		}
		assert.Equal(t, w.text, text.String(), "%s: read at %.1f, %.1f", what, w.left, w.top)
	}
	for _, g := range laid {
		assert.True(t, g.read, "%s: %q at %.1f, %.1f is not read", what, g.letter, g.x, g.y)
	}
}

// inkBox returns the box of a text's letters: as high as capitals and figures, and down
// to the descenders where it has letters that reach below the line.
func inkBox(i *draw.Item, at draw.Place) box {
	below := 0.0
	if strings.ContainsAny(i.Text, "gjpqyQ,;()[]|") {
		below = asLetter.below
	}
	return textBox(i, at, 0.66, below)
}

// nothingOverlaps checks the boxes of all texts and marks of a page: no text lies on
// another; no text of the page lies on a drawing, and no drawing on another; no line
// runs through letters that have no light edge, and no area covers them.
func nothingOverlaps(t *testing.T, p *draw.Scene, o Options, what string) {
	t.Helper()
	type text struct {
		box
		item  *draw.Item
		order int
	}
	var texts []text
	order := 0
	each := func(f func(order int, i *draw.Item, at draw.Place)) {
		order = 0
		p.Each(draw.Place{Scale: 1}, func(i *draw.Item, at draw.Place) { order++; f(order, i, at) })
	}
	each(func(order int, i *draw.Item, at draw.Place) {
		if i.Kind == draw.TextItem {
			texts = append(texts, text{inkBox(i, at), i, order})
		}
	})
	for k, a := range texts {
		for _, b := range texts[:k] {
			assert.False(t, a.meets(b.box), "%s: %q lies on %q", what, a.item.Text, b.item.Text)
		}
	}
	each(func(order int, i *draw.Item, at draw.Place) {
		if i.Kind != draw.PathItem {
			return
		}
		for _, a := range texts {
			if i.Style.Fill != "" && order > a.order && covers(i.Path, at, a.box) {
				assert.Fail(t, what+": "+a.item.Text+" is covered")
			}
			if i.Style.Stroke != "" && !i.Style.Under && (a.item.Letter.Halo == "" || order > a.order) && crosses(i.Path, at, a.box) {
				assert.Failf(t, "crossed", "%s: a line runs through %q at %.1f, %.1f", what, a.item.Text, a.left, a.bottom)
			}
		}
	})
	lines, _ := placedBoxes(p, o, asLetter)
	drawings := addedBoxes(p, asLetter)
	for k, a := range drawings {
		for _, b := range drawings[:k] {
			assert.False(t, a.meets(b), "%s: a drawing at %.0f lies on one at %.0f mm", what, a, b)
		}
		for _, l := range lines {
			assert.False(t, a.meets(l), "%s: a line of text at %.1f lies on a drawing at %.1f mm", what, l, a)
		}
	}
}

// addedBoxes returns the boxes of the drawings on a page.
func addedBoxes(p *draw.Scene, of letterBox) (list []box) {
	for k := 0; k < len(p.Items); k++ {
		if p.Items[k].Kind == draw.MoveItem {
			end := endOf(p.Items, k)
			list = append(list, drawingBox(p, p.Items[k:end+1], Options{Large: true, Cell: LargestCell}, of))
			k = end
		}
	}
	return list
}

// covers reports whether the middle of a box lies inside a path (even-odd, curves as
// their chords).
func covers(d string, at draw.Place, b box) bool {
	cx, cy, in := (b.left+b.right)/2, (b.top+b.bottom)/2, false
	segments(d, at, func(x1, y1, x2, y2 float64) {
		if (y1 > cy) != (y2 > cy) && cx < x1+(cy-y1)/(y2-y1)*(x2-x1) {
			in = !in
		}
	})
	return in
}

// crosses reports whether a path's line runs through a box.
func crosses(d string, at draw.Place, b box) bool {
	hit := false
	segments(d, at, func(x1, y1, x2, y2 float64) { hit = hit || through(x1, y1, x2, y2, b) })
	return hit
}

// segments calls f for each straight part of a path in mm; a curve is eight chords.
func segments(d string, at draw.Place, f func(x1, y1, x2, y2 float64)) {
	var x, y, sx, sy float64
	draw.Walk(d, func(op byte, n []float64) {
		switch op {
		case 'M':
			x, y = at.At(n[0], n[1])
			sx, sy = x, y
		case 'L':
			nx, ny := at.At(n[0], n[1])
			f(x, y, nx, ny)
			x, y = nx, ny
		case 'C':
			ax, ay := at.At(n[0], n[1])
			bx, by := at.At(n[2], n[3])
			ex, ey := at.At(n[4], n[5])
			px, py := x, y
			for k := 1; k <= 8; k++ {
				u := float64(k) / 8
				v := 1 - u
				nx := v*v*v*x + 3*v*v*u*ax + 3*v*u*u*bx + u*u*u*ex
				ny := v*v*v*y + 3*v*v*u*ay + 3*v*u*u*by + u*u*u*ey
				f(px, py, nx, ny)
				px, py = nx, ny
			}
			x, y = ex, ey
		case 'Z':
			f(x, y, sx, sy)
			x, y = sx, sy
		}
	})
}

// through reports whether a straight line has a part inside a box (Liang and Barsky's
// clipping, 1984).
func through(x1, y1, x2, y2 float64, b box) bool {
	const slack = 0.05
	from, to := 0.0, 1.0
	clip := func(p, q float64) bool {
		switch {
		case p == 0:
			return q > 0
		case p < 0:
			from = math.Max(from, q/p)
		default:
			to = math.Min(to, q/p)
		}
		return from < to
	}
	return clip(x1-x2, x1-b.left-slack) && clip(x2-x1, b.right-slack-x1) && clip(y1-y2, y1-b.top-slack) && clip(y2-y1, b.bottom-slack-y1)
}

// Read back from its PDF by a program that knows nothing of ours, every letter of a
// handout is in its place once, also inside drawings, and nothing overlaps, in all
// combinations of the options.
func TestPrintedOnceAndNothingOverlaps(t *testing.T) {
	small := Usual() // numbers are higher than its cells
	small.Large, small.Cell = true, 5
	parts := small // one above the other, with numbers at their heads
	parts.Sideways = true
	for k, o := range append([]Options{small, parts}, testenv.Some(2, combinations())...) {
		s := painted(t, k%3, o.FromLeft)
		pages := Handout(s, o)
		found := readPages(t, onPaper(t, pages))
		require.Len(t, found, len(pages))
		for i, p := range pages {
			what := p.Label + ", " + o.said()
			everyLetterIsRead(t, p, found[i], what)
			nothingOverlaps(t, p, o, what)
		}
	}
}
