package paper

import (
	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/picture"
)

// keys sets the key of all charts and of the words together, unless it stands under
// the only chart.
func (h *handout) keys() block {
	if h.keyJoinsChart() || len(h.grids) == 0 && len(h.signs) == 0 {
		return block{}
	}
	const head = "Key"
	rows := goingOn(h.keyParts(), head)
	rows[0].goesOn = ""
	return one(head, aboveHeading, keptWith(h.headingPart(head), rows))
}

// wholeKey is the height of a key up to which it stays in one piece, in tenths of a
// millimetre.
const wholeKey = 450

// key returns the key of all charts and of the words, and the scale at which it is
// drawn.
func (h *handout) key() (key *picture.KeyTable, scale float64) {
	scale = handoutKey / picture.KeyLetter
	if h.o.Large {
		scale = h.keyScale()
	}
	return picture.NewKey(h.grids, picture.Look{Symbols: h.symbols(), Grey: h.o.Grey, Gauge: h.Out.Plan.Gauge}, h.signs...), scale
}

// keyParts sets the key over the whole width, parted where it is high.
func (h *handout) keyParts() []part {
	ways := h.keyWays(h.key())
	return ways[len(ways)-1]
}

// keyBelow returns the ways in which the key stands below a chart.
func (h *handout) keyBelow() [][]part {
	ways := h.keyWays(h.key())
	for _, parts := range ways {
		goingOn(parts, "Key")[0].Above = aboveKey
	}
	return ways
}

// keyWays returns the ways in which a key is set at a scale: in one piece, which is the
// lowest, and, if it is high, row by row.
func (h *handout) keyWays(key *picture.KeyTable, scale float64) [][]part {
	width := h.width() / scale
	high := key.Height(width)
	ways := [][]part{{scene(high, scale, func() *draw.Scene { return key.Draw(width) }, 0)}}
	if tenths(high*scale) <= wholeKey {
		return ways
	}
	var rows []part
	for _, r := range key.Rows(width) {
		rows = append(rows, scene(r.Height, scale, r.Draw, 0))
	}
	return append(ways, h.keptRows(rows))
}

// keyJoinsChart reports whether the key is set with the chart: it follows it, and there
// is only one.
func (h *handout) keyJoinsChart() bool {
	return len(h.grids) == 1 && h.o.Place(Chart) > 0 && h.o.Place(Key) == h.o.Place(Chart)+1
}

// handoutKey is the size of the letters of a handout's key in mm, a little over 9 pt, so
// that the signs of chart and words find room under the chart.
const handoutKey = 3.3

// keyScale returns the scale of a key, whose letters are as large as the text in large
// print.
func (h *handout) keyScale() float64 {
	if h.o.Large {
		return h.body / picture.KeyLetter
	}
	return 1
}

// The key stands beside the chart in a column of this share of the page's width, where
// the cells are at least so wide, in mm. Where a chart's cells have but one width, the
// column has what they leave, and at least so many mm of a key's own size.
const (
	keyShare   = 0.34
	besideCell = 4.0
	leastOwn   = 42.0
)

// besideKey returns the ways in which a gusset's chart has its key beside it, and what of
// that is higher than the chart below both.
func (h *handout) besideKey(g chart.Grid, pair int) (ways []way) {
	key, scale := h.key()
	column := h.keyColumn(g)
	if column < leastOwn*scale {
		return nil
	}
	for _, at := range h.sizes(g, h.width()-column-columnGap) {
		if at.printed == 0 || at.cells.width < besideCell && h.o.Cell == 0 {
			continue
		}
		room := at.printed
		if !h.o.Large {
			room = at.printedRoom()
		}
		first, rest := key.Split(column/scale, room/scale)
		set := scene(first.Height(column/scale), scale, func() *draw.Scene { return first.Draw(column / scale) }, 0)
		at.key, at.column = &set, column
		w := way{at.shrunk, at.set(pair)}
		if rest != nil {
			more := h.keyWays(rest, scale)
			goingOn(more[len(more)-1], "Key")[0].Above = aboveKey
			w.parts = append(w.parts, more[len(more)-1]...)
		}
		ways = append(ways, w)
	}
	return ways
}

// keyColumn returns the width in mm of a key's column beside a chart.
func (h *handout) keyColumn(g chart.Grid) float64 {
	if !h.o.Large {
		return keyShare * h.width()
	}
	p := chartPages{handout: h, g: g}
	p.cells.width = p.widths()[0]
	return h.width() - columnGap - picture.LeastPrinted(g, p.look())
}
