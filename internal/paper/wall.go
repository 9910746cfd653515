package paper

import (
	"fmt"
	"strconv"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/words"
)

// wall is a chart on sheets that are put together.
type wall struct {
	*handout
	g     chart.Grid
	ratio float64 // height of a cell over its width
	key   *picture.KeyTable
	tiling
}

// newWall divides one view of a mitt; nil if the mitt has no such chart.
func newWall(s Sheet, o Options, v chart.View) *wall {
	cell := o.Cell
	o.Pieces = nil
	h := &handout{flow: newFlow(o, s.headline()), Sheet: &s, o: o}
	h.at = s.At
	g := h.grid(v)
	if len(g.Rows) == 0 {
		return nil
	}
	w := &wall{handout: h, g: g, ratio: s.Out.Plan.Gauge.Stitches / s.Out.Plan.Gauge.Rounds}
	w.key = picture.NewKey([]chart.Grid{g}, picture.Look{Symbols: h.symbols(), Grey: o.Grey})
	if cell == 0 {
		w.chooseCells()
	} else {
		w.divide(cell)
	}
	return w
}

// divide divides the chart in cells of a width.
func (w *wall) divide(cell float64) {
	w.tiling = tile(w.g, cell, w.ratio, w.width(), w.areaHeight()-w.headHeight()-w.joinRoom())
}

// sheets returns on how many sheets the chart and its key stand.
func (w *wall) sheets() int {
	if _, ok := w.keyBox(); ok {
		return len(w.tiles)
	}
	return len(w.tiles) + 1
}

// WallCell returns the width in mm of the cells of a wall chart if none is asked for; 0
// if the mitt has no such chart.
func WallCell(s Sheet, o Options, v chart.View) float64 {
	o.Cell = 0
	if w := newWall(s, o, v); w != nil {
		return w.cell
	}
	return 0
}

// Wall lays out one view of a mitt as a chart for the wall, over as many sheets as it
// takes. The key stands beside or below the last part, or behind it.
func Wall(s Sheet, o Options, v chart.View) []*draw.Scene {
	w := newWall(s, o, v)
	if w == nil {
		return nil
	}
	for i := range w.tiles {
		w.freshPage()
		w.part(i)
	}
	if w.hasManyUnsound() {
		w.lay([]block{w.unsound()})
	}
	w.foot()
	return finish(w.flow.pages, o.Grey)
}

// headHeight returns the height of the texts above a part.
func (w *wall) headHeight() float64 {
	lines := 1.0
	if w.o.Large {
		lines = 3 // the map leaves them less width
	}
	return lineOf(w.heading) + lines*lineOf(w.body) + 1
}

// joinLetters returns the size of the letters at a join in mm.
func (w *wall) joinLetters() float64 { return w.small }

// joinRoom returns the room for them above and below the cells.
func (w *wall) joinRoom() float64 { return 2 * (lineOf(w.joinLetters()) + mark) }

// part prints the ith part: heading, how it joins, map, cells; on the last one the key.
func (w *wall) part(i int) {
	top, n := w.y, len(w.tiles)
	title, text := w.g.View.Title(), "R"+picture.Reading(w.g)[1:]+"."
	room := w.width()
	if n > 1 {
		title = fmt.Sprintf("%s, part %d of %d", title, i+1, n)
		room -= w.drawMap(i, top) + mapGap
		if i == 0 {
			text += " Lay the others on it."
		} else {
			text = "Cut it along its joins to lower numbers, and lay it on those parts."
		}
	}
	w.text(margin, room, title, draw.TextStyle{Size: w.heading, Face: draw.Serif})
	w.y++
	w.text(margin, room, text, draw.TextStyle{Size: w.body})
	w.y = max(w.y, top+w.headHeight()) + w.joinRoom()/2
	look := picture.Look{Cell: w.cell, Gauge: w.Out.Plan.Gauge, Symbols: w.symbols(), Grey: w.o.Grey}
	scene, at := picture.ChartTile(w.g, w.tiles[i], look)
	w.page().Add(scene, margin, w.y, 1)
	w.drawJoins(i, box4{margin + at.Left, w.y, margin + at.Left + float64(w.tiles[i].Right-w.tiles[i].Left)*at.CellWidth, w.y + at.Bottom})
	if i == n-1 {
		w.about()
	}
}

// keyBox returns where on the last part's sheet the key has room: beside the cells, or
// below them; ok is false if it has none.
func (w *wall) keyBox() (b box4, ok bool) {
	last := w.tiles[len(w.tiles)-1]
	left, beyond, below := last.Room(w.g, w.cell)
	top := margin + w.headHeight() + w.joinRoom()/2
	right, foot := w.flow.size.Width-margin, w.flow.size.Height-margin-footRoom
	free := []box4{
		{margin + left + beyond + float64(last.Right-last.Left)*w.cell + keyGap, top, right, foot},
		{margin, top + float64(last.Head-last.Foot)*w.cell*w.ratio + below + w.joinRoom()/2, right, foot},
	}
	for _, b := range free {
		if wide := b.right - b.left; wide > leastKey && w.aboutHeight(wide) <= b.bottom-b.top {
			return b, true
		}
	}
	return box4{margin, margin, right, foot}, false
}

// The least width of a key in mm, and its distance from cells.
const leastKey, keyGap = 50.0, 10.0

// aboutHeight returns the height of key and size in a width.
func (w *wall) aboutHeight(wide float64) float64 {
	return lineOf(w.heading) + 1 + w.key.Height(wide/w.keyScale())*w.keyScale() + 2 + w.textHeight(w.sizeText(), wide, w.body)
}

// about writes the key and the size of the whole on the sheet of the last part, or
// behind it.
func (w *wall) about() {
	b, ok := w.keyBox()
	if !ok {
		w.freshPage()
	}
	w.y = b.top
	wide := b.right - b.left
	w.text(b.left, wide, "Key", draw.TextStyle{Size: w.heading, Face: draw.Serif})
	w.y++
	key := w.key.Draw(wide / w.keyScale())
	w.page().Add(key, b.left, w.y, w.keyScale())
	w.y += key.Height*w.keyScale() + 2
	w.text(b.left, wide, w.sizeText(), draw.TextStyle{Size: w.body})
}

// sizeText says how large the whole is.
func (w *wall) sizeText() string {
	wide, high := w.tiling.size(w.g, w.ratio)
	return fmt.Sprintf("A stitch is %g mm wide. In all: %.0f cm wide and %.0f cm high, in %s.", w.cell, wide, high, words.Plural(len(w.tiles), "part"))
}

// drawMap draws how the parts lie, with the ith filled, and returns its width.
func (w *wall) drawMap(i int, top float64) float64 {
	size := min(mapPart, w.headHeight()/float64(w.up), 0.3*w.width()/float64(w.across))
	m := partMap{
		places: w.places, across: w.across, up: w.up, fromLeft: w.g.FromLeft,
		size: size, letter: size * 0.55, letterFoot: size * 0.7,
	}
	m.draw(w.page(), w.flow.size.Width-margin, top, i)
	return float64(w.across) * size
}

// box4 is where the cells of a part lie on their sheet, in mm.
type box4 struct{ left, top, right, bottom float64 }

// drawJoins draws a broken line along each edge of the ith part that meets another,
// with the number of that part.
func (w *wall) drawJoins(i int, b box4) {
	x, y := w.places[i][0], w.places[i][1]
	on, back := b.left, b.right // edges towards the next and the previous part of the row
	if w.g.FromLeft {
		on, back = back, on
	}
	size := w.joinLetters()
	join := func(n int, x1, y1, x2, y2, x, y float64, anchor draw.Anchor) {
		if n == 0 {
			return
		}
		w.page().Line(x1, y1, x2, y2, picture.JoinStyle)
		w.page().Text(x, y, "to part "+strconv.Itoa(n), draw.TextStyle{Size: size, Anchor: anchor})
	}
	side := func(edge float64) (float64, draw.Anchor) {
		if edge == b.left {
			return edge - 1, draw.Start
		}
		return edge + 1, draw.End
	}
	for _, s := range []struct {
		edge float64
		n    int
	}{{on, w.partAt(x+1, y)}, {back, w.partAt(x-1, y)}} {
		at, anchor := side(s.edge)
		join(s.n, s.edge, b.top-mark, s.edge, b.bottom+mark, at, b.top-mark-0.25*size, anchor)
	}
	middle, anchor, beside := (b.left+b.right)/2, draw.Middle, b.right+4
	join(w.partAt(x, y-1), b.left-mark, b.bottom, b.right+mark, b.bottom, middle, b.bottom+mark+size, anchor)
	if b.right-b.left < 3.5*draw.Measure("to part 88", size, draw.Regular) { // no room between the two at the sides
		middle, anchor = beside, draw.Start
	}
	join(w.partAt(x, y+1), b.left-mark, b.top, b.right+mark, b.top, middle, b.top-mark-0.25*size, anchor)
}
