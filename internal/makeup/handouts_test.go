package makeup

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// random returns a handout of at most so many pieces and parts a way, with pages
// on which a few parts fit; now and then a part is higher than a page.
func random(rng *rand.Rand, most, mostParts int) ([]Piece, Area) {
	area := Area{Page: 20 + rng.IntN(60), BothSides: rng.IntN(2) == 0}
	if rng.IntN(2) == 0 {
		area.First = 20 + rng.IntN(60)
	}
	list := make([]Piece, 1+rng.IntN(most))
	for i := range list {
		list[i] = Piece{Name: "piece", Above: rng.IntN(4), WithNext: rng.IntN(4) == 0}
		chart, words := 0, 0
		switch rng.IntN(4) {
		case 0:
			chart = 1 + rng.IntN(2)
		case 1:
			words = 1 + rng.IntN(2)
		}
		for range 1 + rng.IntN(3)*rng.IntN(2) {
			w := Way{Shrunk: rng.IntN(4) * rng.IntN(2)}
			for k := range 1 + rng.IntN(mostParts) {
				part := Part{Height: 1 + rng.IntN(20), Again: rng.IntN(4), Keep: rng.IntN(3) == 0, Chart: chart, Words: words}
				if rng.IntN(12) == 0 {
					part.Height += rng.IntN(80)
				}
				if k > 0 {
					part.Above = rng.IntN(3)
				}
				w.Parts = append(w.Parts, part)
			}
			list[i].Ways = append(list[i].Ways, w)
		}
	}
	return list, area
}

// checkLayout checks a layout by what is promised: every part of one way of each
// piece comes once, in order; no part lies on another or leaves its page unless a
// trouble says so; pages end where they may unless a trouble says so; and the cost
// is that of the pages.
func checkLayout(t *testing.T, pieces []Piece, area Area, l Layout) {
	t.Helper()
	var got []Placed
	told := map[Trouble]bool{}
	for _, tr := range l.Troubles {
		told[tr] = true
	}
	require.Len(t, told, len(l.Troubles), "each trouble is told once")
	for n, p := range l.Pages {
		require.NotEmpty(t, p.Placed)
		foot := 0
		for k, at := range p.Placed {
			part := pieces[at.Piece].Ways[at.Way].Parts[at.Part]
			top, again := foot+part.Above, 0
			if at.Part == 0 {
				top = foot + pieces[at.Piece].Above
			}
			if k == 0 {
				top = 0
				if at.Part > 0 {
					top, again = part.Again, part.Again
				}
			}
			require.Equal(t, top, at.Top, "page %d, part %d", n, k)
			require.Equal(t, again, at.Again)
			foot = at.Top + part.Height
		}
		require.Equal(t, foot, p.Filled)
		require.Equal(t, max(p.Height-foot, 0), p.Empty())
		end := p.Placed[len(p.Placed)-1]
		tr := Trouble{Name: "piece", Piece: end.Piece, Part: end.Part, Page: n}
		if over := p.Filled - p.Height; over > 0 {
			require.Len(t, p.Placed, 1, "only a part that is alone may stick out")
			tr.Over = over
			require.True(t, told[tr], "%+v in %+v", tr, l.Troubles)
			delete(told, tr)
			tr.Over = 0
		}
		if kept(pieces, end) {
			require.True(t, told[tr], "%+v in %+v", tr, l.Troubles)
			delete(told, tr)
		}
		got = append(got, p.Placed...)
	}
	require.Empty(t, told, "nothing is told that isn't so")
	at := 0
	for i := range pieces {
		w := got[at].Way
		for k := range pieces[i].Ways[w].Parts {
			p := got[at]
			require.Equal(t, [3]int{i, w, k}, [3]int{p.Piece, p.Way, p.Part})
			at++
		}
	}
	require.Len(t, got, at)
	require.Equal(t, priced(pieces, area, l.Pages), l.Cost)
}

// kept reports whether a page should not end after a part.
func kept(pieces []Piece, at Placed) bool {
	if last := len(pieces[at.Piece].Ways[at.Way].Parts) - 1; at.Part < last {
		return pieces[at.Piece].Ways[at.Way].Parts[at.Part].Keep
	}
	return at.Piece < len(pieces)-1 && pieces[at.Piece].WithNext
}

// priced returns the cost of pages by its definition, from their parts.
func priced(pieces []Piece, area Area, pages []Page) (c Cost) {
	c.Pages = len(pages)
	for n, p := range pages {
		height := area.Page
		if n == 0 && area.First > 0 {
			height = area.First
		}
		c.Over += max(p.Filled-height, 0)
		for _, at := range p.Placed {
			if at.Part == 0 {
				c.Shrunk += pieces[at.Piece].Ways[at.Way].Shrunk * pieces[at.Piece].Ways[at.Way].Shrunk
			}
		}
		if n == len(pages)-1 {
			continue
		}
		if kept(pieces, p.Placed[len(p.Placed)-1]) {
			c.Parted++
		}
		if float64(p.Filled) < 0.4*float64(height) {
			c.Thin++
		}
		c.Empty += max(height-p.Filled, 0) * max(height-p.Filled, 0)
	}
	if area.BothSides {
		c.Apart = pricedApart(pieces, pages)
	}
	return c
}

// pricedApart counts, for each number that has both a chart and words, the pages
// that show one of them while the other is on neither this page nor the facing one.
func pricedApart(pieces []Piece, pages []Page) (count int) {
	shows := func(n, number int, words bool) bool {
		if n < 0 || n >= len(pages) {
			return false
		}
		for _, at := range pages[n].Placed {
			part := pieces[at.Piece].Ways[at.Way].Parts[at.Part]
			if words && part.Words == number || !words && part.Chart == number {
				return true
			}
		}
		return false
	}
	for number := 1; number <= maxPairs; number++ {
		var pagesWith [2]int
		lonely := 0
		for n := range pages {
			facing := n + 1 // page 2 has index 1 and faces page 3
			if n%2 == 0 {
				facing = n - 1
			}
			for k, words := range []bool{false, true} {
				if shows(n, number, words) {
					pagesWith[k]++
					if !shows(n, number, !words) && !shows(facing, number, !words) {
						lonely++
					}
				}
			}
		}
		if pagesWith[0] > 0 && pagesWith[1] > 0 {
			count += lonely
		}
	}
	return count
}
