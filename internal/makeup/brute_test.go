package makeup

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// brute tries every choice of ways with every set of breaks, and returns the least
// cost, the earliest breaks of that cost, and the first ways with these, from the
// last piece back.
func brute(pieces []Piece, area Area) (best Cost, breaks [][3]int, first []int) {
	ways := make([]int, len(pieces))
	for {
		var parts []Placed
		for i, w := range ways {
			for k := range pieces[i].Ways[w].Parts {
				parts = append(parts, Placed{Piece: i, Way: w, Part: k})
			}
		}
		for set := range 1 << (len(parts) - 1) {
			pages, ok := paged(pieces, area, parts, set)
			if !ok {
				continue
			}
			cost, ends := priced(pieces, area, pages), begins(pages)
			if c := slices.Compare(inOrder(cost), inOrder(best)); breaks == nil || c < 0 || c == 0 && slices.CompareFunc(ends, breaks, before) < 0 {
				best, breaks, first = cost, ends, slices.Clone(ways)
			}
		}
		i := 0
		for ; i < len(ways); i++ {
			if ways[i]++; ways[i] < len(pieces[i].Ways) {
				break
			}
			ways[i] = 0
		}
		if i == len(ways) {
			return best, breaks, first
		}
	}
}

// inOrder returns the figures of a cost in the order in which they count.
func inOrder(c Cost) []int {
	return []int{c.Over, c.Parted, c.Pages, c.Thin, c.Apart, c.Empty, c.Shrunk}
}

// paged puts parts on pages, of which a new one begins after every part whose bit
// is set; false if a page holds more than one part and is too low for them.
func paged(pieces []Piece, area Area, parts []Placed, set int) (pages []Page, ok bool) {
	fresh := true
	for n, at := range parts {
		part := pieces[at.Piece].Ways[at.Way].Parts[at.Part]
		if fresh {
			pages = append(pages, Page{Height: area.Page})
			if len(pages) == 1 && area.First > 0 {
				pages[0].Height = area.First
			}
		}
		p := &pages[len(pages)-1]
		switch {
		case !fresh && at.Part == 0:
			p.Filled += pieces[at.Piece].Above
		case !fresh:
			p.Filled += part.Above
		case at.Part > 0:
			p.Filled += part.Again
		}
		p.Filled += part.Height
		if p.Filled > p.Height && !fresh {
			return nil, false
		}
		p.Placed = append(p.Placed, at)
		fresh = set>>n&1 == 1
		if !fresh && p.Filled > p.Height && n < len(parts)-1 {
			return nil, false
		}
	}
	return pages, true
}

// begins returns the piece, way and part with which each page begins. Before a
// piece its way does not count.
func begins(pages []Page) [][3]int {
	list := make([][3]int, len(pages))
	for n, p := range pages {
		if at := p.Placed[0]; at.Part == 0 {
			list[n] = [3]int{at.Piece, 0, 0}
		} else {
			list[n] = [3]int{at.Piece, at.Way, at.Part}
		}
	}
	return list
}

// waysOf returns the way of every piece.
func waysOf(pages []Page) (list []int) {
	for _, p := range pages {
		for _, at := range p.Placed {
			if at.Part == 0 {
				list = append(list, at.Way)
			}
		}
	}
	return list
}

func before(a, b [3]int) int { return slices.Compare(a[:], b[:]) }

// On small handouts of every kind, the layout is that which trying out all of them
// finds: its cost, the places where its pages begin, and the ways of its pieces.
func TestLayoutIsThatOfTryingAll(t *testing.T) {
	t.Parallel()
	troubles, apart, shrunk, inside := 0, 0, 0, 0
	for seed := range testenv.Cases(3_000, 40_000) {
		rng := rand.New(rand.NewPCG(uint64(seed), 22))
		pieces, area := random(rng, 4, 3)
		got, err := Lay(pieces, area)
		require.NoError(t, err)
		checkLayout(t, pieces, area, got)
		cost, breaks, ways := brute(pieces, area)
		require.Equal(t, cost, got.Cost, "seed %d: %+v on %+v", seed, pieces, area)
		require.Equal(t, breaks, begins(got.Pages), "seed %d: %+v on %+v", seed, pieces, area)
		require.Equal(t, ways, waysOf(got.Pages), "seed %d: %+v on %+v", seed, pieces, area)
		troubles += len(got.Troubles)
		apart += got.Cost.Apart
		shrunk += got.Cost.Shrunk
		for _, b := range breaks {
			inside += cmp.Compare(b[2], 0)
		}
	}
	for _, n := range []int{troubles, apart, shrunk, inside} {
		require.Greater(t, n, 100, "the cases have %d broken rules, %d pages apart, %d shrinkings, %d pages that begin within a piece", troubles, apart, shrunk, inside)
	}
}

// firstFit fills pages from top to bottom with the first way of each piece; a page
// ends at the last place before the part that does not fit. It returns the number of
// pages; 0 if what is kept together is higher than a page.
func firstFit(pieces []Piece, area Area) int {
	var parts []Placed
	for i := range pieces {
		for k := range pieces[i].Ways[0].Parts {
			parts = append(parts, Placed{Piece: i, Part: k})
		}
	}
	pages := 0
	for from := 0; from < len(parts); pages++ {
		height := area.Page
		if pages == 0 && area.First > 0 {
			height = area.First
		}
		to := from
		for n := from + 1; n <= len(parts); n++ {
			page, _ := paged(pieces, Area{Page: 1 << 30}, parts[from:n], 0)
			if page[0].Filled > height {
				break
			}
			if n == len(parts) || !kept(pieces, parts[n-1]) {
				to = n
			}
		}
		if to == from {
			return 0
		}
		from = to
	}
	return pages
}

// A layout never has a page more than filling pages from top to bottom makes, nor a
// page that ends where it should not.
func TestNoPageMoreThanFirstFit(t *testing.T) {
	t.Parallel()
	laid, saved := 0, 0
	for seed := range testenv.Cases(400, 20_000) {
		rng := rand.New(rand.NewPCG(uint64(seed), 67))
		pieces, area := random(rng, 20, 6)
		got, err := Lay(pieces, area)
		require.NoError(t, err)
		checkLayout(t, pieces, area, got)
		if n := firstFit(pieces, area); n > 0 {
			require.LessOrEqual(t, got.Cost.Pages, n, "seed %d", seed)
			require.Empty(t, got.Troubles, "seed %d", seed)
			laid++
			saved += n - got.Cost.Pages
		}
	}
	require.Greater(t, laid, 30)
	require.Greater(t, saved, 30, "handouts that are laid better")
}
