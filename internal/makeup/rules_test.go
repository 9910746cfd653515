package makeup

import (
	"cmp"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// one returns a piece of one way.
func one(name string, parts ...Part) Piece { return Piece{Name: name, Ways: []Way{{Parts: parts}}} }

// drawing returns a piece that is a drawing, no smaller than so many percent.
func drawing(name string, height, least int) Piece {
	return Piece{Name: name, Ways: Drawing(Part{Height: height}, 0, least)}
}

// laid lays pieces and returns their pages as text: on each page the pieces, and in
// brackets which parts from 0 if not all, and how many steps they are shrunk.
func laid(t *testing.T, area Area, pieces ...Piece) (list []string) {
	t.Helper()
	l, err := Lay(pieces, area)
	require.NoError(t, err)
	for _, p := range l.Pages {
		text := ""
		for k, at := range p.Placed {
			piece, way := pieces[at.Piece], pieces[at.Piece].Ways[at.Way]
			if k == 0 || p.Placed[k-1].Piece != at.Piece {
				text += " " + piece.Name
				if way.Shrunk > 0 {
					text += fmt.Sprintf("-%d", way.Shrunk)
				}
			}
			if len(way.Parts) > 1 {
				text += fmt.Sprint(":", at.Part)
			}
		}
		list = append(list, text[1:])
	}
	return list
}

// Each figure of a cost counts before all that come after it.
func TestCostsCountInTheirOrder(t *testing.T) {
	const most = 1 << 40
	rising := []Cost{
		{},
		{Shrunk: most},
		{Empty: 1},
		{Empty: most, Shrunk: most},
		{Apart: 1},
		{Apart: most, Empty: most, Shrunk: most},
		{Thin: 1},
		{Thin: most, Apart: most},
		{Pages: 1},
		{Pages: most, Thin: most},
		{Parted: 1},
		{Parted: most, Pages: most},
		{Over: 1},
	}
	for i, a := range rising {
		for j, b := range rising {
			assert.Equal(t, cmp.Compare(i, j), a.Compare(b), "%+v and %+v", a, b)
		}
	}
}

// The drawing gives way before a page does, and no further than it has to. It does
// not shrink where that saves no page.
func TestDrawingGivesWayBeforeAPage(t *testing.T) {
	area := Area{Page: 100}
	text := one("text", Lines(10, 10, 10)...)
	assert.Equal(t, []string{"hand-2 text:0:1:2"}, laid(t, area, drawing("hand", 77, 60), text))
	assert.Equal(t, []string{"hand text:0:1:2"}, laid(t, area, drawing("hand", 70, 60), text))
	assert.Equal(t, []string{"hand", "text:0:1:2"}, laid(t, area, drawing("hand", 78, 95), text))
	assert.Equal(t, []string{"hand-2 chart-2"}, laid(t, area, drawing("hand", 55, 60), drawing("chart", 55, 60)), "as little of each as of the other")
}

// No heading stands alone at the foot of a page, nor with a single line; neither
// the first nor the last line of words stands alone.
func TestNothingStandsAlone(t *testing.T) {
	head := Piece{Name: "head", WithNext: true, Ways: []Way{{Parts: []Part{{Height: 12}}}}}
	above := one("above", Part{Height: 70})
	words := one("words", Lines(10, 10, 10, 10, 10, 10, 10)...)
	for height, want := range map[int][]string{
		101: {"above", "head words:0:1:2:3:4:5:6"}, // room for the heading and a line
		102: {"above head words:0:1", "words:2:3:4:5:6"},
		122: {"above head words:0:1:2:3", "words:4:5:6"},
		141: {"above head words:0:1:2:3:4", "words:5:6"}, // room for all but one
		152: {"above head words:0:1:2:3:4:5:6"},
	} {
		assert.Equal(t, want, laid(t, Area{Page: height}, above, head, words), height)
	}
}

// Space above a piece or a part is dropped at the head of a page; a heading that is
// repeated takes its room there.
func TestHeadOfAPage(t *testing.T) {
	words := Piece{Name: "words", Above: 7, Ways: []Way{{Parts: []Part{{Height: 30}, {Height: 30, Above: 5, Again: 9}, {Height: 30, Above: 5, Again: 9}}}}}
	l, err := Lay([]Piece{words, words}, Area{First: 65, Page: 76})
	require.NoError(t, err)
	assert.Equal(t, []Page{
		{Height: 65, Filled: 65, Placed: []Placed{{0, 0, 0, 0, 0}, {0, 0, 1, 35, 0}}},
		{Height: 76, Filled: 76, Placed: []Placed{{0, 0, 2, 9, 9}, {1, 0, 0, 46, 0}}},
		{Height: 76, Filled: 74, Placed: []Placed{{1, 0, 1, 9, 9}, {1, 0, 2, 44, 0}}},
	}, l.Pages)
	assert.Equal(t, Cost{Pages: 3}, l.Cost)
}

// Words stand in two columns where that saves a page; otherwise as they are listed
// first.
func TestTwoColumnsSaveAPage(t *testing.T) {
	lines := Lines(10, 10, 10, 10, 10, 10)
	first, height := Columns(lines, 2)
	require.Equal(t, []int{0, 3}, first)
	require.Equal(t, 30, height)
	words := Piece{Name: "words", Ways: []Way{{Parts: lines}, {Parts: []Part{{Height: height}}}}}
	above := one("above", Part{Height: 50})
	assert.Equal(t, []string{"above words:0:1:2:3:4:5"}, laid(t, Area{Page: 110}, above, words))
	assert.Equal(t, []string{"above words"}, laid(t, Area{Page: 80}, above, words))
}

// A page is less than 40 % full only where that saves another one.
func TestFewThinPages(t *testing.T) {
	a, b, c := one("a", Part{Height: 39}), one("b", Part{Height: 61}), one("c", Part{Height: 60})
	assert.Equal(t, []string{"a b", "c"}, laid(t, Area{Page: 100}, a, b, c))
	assert.Equal(t, []string{"a", "b", "c"}, laid(t, Area{Page: 99}, a, b, c), "39 of 99 is thin, but there is no other way")
	d, e, last := one("d", Part{Height: 30}), one("e", Part{Height: 210}), one("last", Part{Height: 250})
	assert.Equal(t, []string{"a d", "e", "last"}, laid(t, Area{First: 100, Page: 300}, a, d, e, last), "31² + 90² mm is emptier than 61² + 60²")
	a.Ways[0].Parts[0].Height = 40
	assert.Equal(t, []string{"a", "d e", "last"}, laid(t, Area{First: 100, Page: 300}, a, d, e, last))
}

// Printed on both sides, a chart comes on a page that faces its words, or on theirs;
// for that it may leave more paper empty, but never take another page.
func TestChartFacesItsWords(t *testing.T) {
	plan := one("plan", Part{Height: 45})
	chart := one("chart", Part{Height: 50, Chart: 1})
	words := one("words", Part{Height: 90, Words: 1})
	area := Area{Page: 100}
	notes := one("notes", Part{Height: 41}, Part{Height: 41})
	assert.Equal(t, []string{"plan chart", "words", "notes:0:1"}, laid(t, area, plan, chart, words, notes))
	area.BothSides = true
	assert.Equal(t, []string{"plan chart", "words", "notes:0:1"}, laid(t, area, plan, chart, words, notes), "another page would be needed")
	words.Ways[0].Parts[0].Height = 50
	assert.Equal(t, []string{"plan", "chart words", "notes:0:1"}, laid(t, area, plan, chart, words, notes))
	front := one("front", Part{Height: 90})
	words.Ways[0].Parts[0].Height = 60
	assert.Equal(t, []string{"front", "plan chart", "words"}, laid(t, area, front, plan, chart, words), "pages 2 and 3")
	assert.Equal(t, []string{"front", "front", "plan", "chart", "words"}, laid(t, area, front, front, one("plan", Part{Height: 60}), chart, words), "pages 4 and 5")
}

// A chart and its words that don't face each other count once for each of their
// pages; words without a chart, and a chart without words, count for nothing.
func TestApart(t *testing.T) {
	front, whole := one("front", Part{Height: 90}), Part{Height: 60}
	chart, words, other := one("chart", whole, whole), one("words", whole, whole), one("other", whole)
	chart.Ways[0].Parts[0].Chart, chart.Ways[0].Parts[1].Chart, other.Ways[0].Parts[0].Words = 1, 1, 3
	words.Ways[0].Parts[0].Words, words.Ways[0].Parts[1].Words = 1, 1
	for _, c := range []struct {
		pieces []Piece
		apart  int
	}{
		{[]Piece{chart, other, other}, 0},
		{[]Piece{chart, words}, 2},                      // 1 c | 2 c 3 w | 4 w
		{[]Piece{front, chart, words}, 4},               // 1 f | 2 c 3 c | 4 w 5 w
		{[]Piece{front, front, chart, words}, 2},        // 1 f | 2 f 3 c | 4 c 5 w | 6 w
		{[]Piece{front, front, other, chart, words}, 4}, // 1 f | 2 f 3 o | 4 c 5 c | 6 w 7 w
		{[]Piece{front, chart, other, words, other}, 4}, // 1 f | 2 c 3 c | 4 o 5 w | 6 w 7 o
	} {
		for both, want := range map[bool]int{true: c.apart, false: 0} {
			l, err := Lay(c.pieces, Area{Page: 100, BothSides: both})
			require.NoError(t, err)
			assert.Equal(t, want, l.Cost.Apart, "%v", c.pieces)
		}
	}
}

// Of layouts that cost the same, the one counts whose pages end earlier.
func TestEarliestBreaksWin(t *testing.T) {
	rows := one("rows", Part{Height: 50}, Part{Height: 50}, Part{Height: 50})
	assert.Equal(t, []string{"rows:0", "rows:1:2"}, laid(t, Area{First: 50, Page: 100}, rows))
	lines := one("lines", Part{Height: 50}, Part{Height: 25}, Part{Height: 25}, Part{Height: 50, Keep: true}, Part{Height: 50})
	assert.Equal(t, []string{"lines:0:1", "lines:2", "lines:3:4"}, laid(t, Area{Page: 100}, one("lines",
		Part{Height: 50}, Part{Height: 25}, Part{Height: 75, Above: 25}, Part{Height: 50, Keep: true}, Part{Height: 50})))
	assert.Equal(t, []string{"lines:0:1:2", "lines:3:4"}, laid(t, Area{Page: 100}, lines))
	either := func(name string, heights ...int) Piece {
		p := Piece{Name: name}
		for _, h := range heights {
			p.Ways = append(p.Ways, Way{Parts: []Part{{Height: h}}})
		}
		return p
	}
	full := []Piece{either("a", 100, 90), either("b", 10), either("c", 80, 100), either("d", 10), either("e", 100, 90), either("f", 100)}
	assert.Equal(t, []string{"a", "b c d", "e", "f"}, laid(t, Area{Page: 100}, full...), "as full as a b, c, d e, f; the first break counts most")
}

// Sheets begin with a front: pages 2 and 3 lie open together, and page 1 alone.
func TestSheets(t *testing.T) {
	both, front := Area{Page: 1, BothSides: true}, Area{Page: 1}
	for page, other := range []int{1: 0, 2: 3, 3: 2, 4: 5, 5: 4, 6: 0} {
		if page > 0 {
			assert.Equal(t, other, both.Facing(page, 6), page)
			assert.Zero(t, front.Facing(page, 6))
		}
	}
	assert.Equal(t, []int{0, 1, 1, 2, 3}, []int{both.Sheets(0), both.Sheets(1), both.Sheets(2), both.Sheets(3), both.Sheets(5)})
	assert.Equal(t, 5, front.Sheets(5))
}
