package paper

import (
	"strconv"

	"thenar/internal/draw"
	"thenar/internal/picture"
)

// The map of a chart's parts, in mm.
const (
	mapPart = 6.0 // largest size of a part, by the size of ordinary letters
	mapGap  = 4.0 // between text and map
)

// mapWidth returns the width of the map beside the text; 0 for a single part.
func (p *chartPages) mapWidth() float64 {
	if p.parts() == 1 {
		return 0
	}
	return float64(len(p.cells.columns))*p.mapSize() + mapGap
}

// mapSize returns the size of a part on the map. The map is no higher than the
// heading beside it.
func (p *chartPages) mapSize() float64 {
	return min(mapPart*p.body/ordinary.body, p.mapRoom()/float64(len(p.cells.rows)), 0.3*p.width()/float64(len(p.cells.columns)))
}

// mapRoom is the height in mm of the heading beside the map.
func (p *chartPages) mapRoom() float64 { return lineOf(p.heading) + 1 + 2*lineOf(p.body) }

// mapHeight returns the height of the map in mm.
func (p *chartPages) mapHeight() float64 { return float64(len(p.cells.rows)) * p.mapSize() }

// drawMap draws how the parts lie, with the nth filled.
func (p *chartPages) drawMap(page *draw.Scene, top float64, n int) {
	size := p.mapSize()
	letter := min(p.body, size*0.72)
	m := partMap{
		across: len(p.cells.columns), up: len(p.cells.rows), fromLeft: p.g.FromLeft,
		size: size, letter: letter, letterFoot: size/2 + letter*0.34,
	}
	for y := range p.cells.rows {
		for x := range p.cells.columns {
			m.places = append(m.places, [2]int{x, y})
		}
	}
	m.draw(page, p.size.Width-margin, top, n-1)
}

// drawJoins marks where a part continues: a broken line in the middle of the columns
// or rows that both parts share, with a triangle and the number of the other part.
// Parts laid upon each other along these lines make one chart.
func (p *chartPages) drawJoins(s *draw.Scene, at picture.Geometry, x, y int) {
	columns, rows := p.columns(x), p.cells.rows[y]
	wide, high := columns.to-columns.from, rows.to-rows.from
	left, right := at.Left, at.Left+float64(wide)*at.CellWidth
	foot, head := at.Bottom, at.Bottom-float64(high)*at.CellHeight
	part := func(x, y int) string { return "to part " + strconv.Itoa(y*len(p.cells.columns)+x+1) }
	on, back := left+at.CellWidth, right-at.CellWidth // lines towards the next and the previous part
	if p.g.FromLeft {
		on, back = back, on
	}
	if x+1 < len(p.cells.columns) {
		p.joinUpright(s, on, head, foot, part(x+1, y))
	}
	if x > 0 {
		p.joinUpright(s, back, head, foot, part(x-1, y))
	}
	if y+1 < len(p.cells.rows) {
		p.joinLevel(s, head+at.CellHeight, left, right, part(x, y+1), true)
	}
	if y > 0 {
		p.joinLevel(s, foot-at.CellHeight, left, right, part(x, y-1), false)
	}
}

// mark is the size of the triangle at the end of a join, in mm.
const mark = 2.4

func (p *chartPages) joinUpright(s *draw.Scene, x, head, foot float64, to string) {
	s.Line(x, head-1, x, foot+1, picture.JoinStyle)
	var t draw.Pen
	t.Move(x, head).Line(x-mark/2, head-mark).Line(x+mark/2, head-mark).Close()
	s.Path(t.String(), draw.Style{Fill: ink})
	letter := draw.TextStyle{Size: p.joinLetter(), Anchor: draw.Middle}
	half := draw.Measure(to, letter.Size, draw.Regular) / 2
	s.Text(min(max(x, half), s.Width-half), head-mark-0.6, to, letter)
}

// joinLevel draws the line towards the part above or below, with its number on the side
// of this part, where no number of a stitch or of another part stands.
func (p *chartPages) joinLevel(s *draw.Scene, y, left, right float64, to string, above bool) {
	s.Line(left-1, y, right+1, y, picture.JoinStyle)
	end, out := left, -mark // on the side where no numbers stand
	if p.g.FromLeft {
		end, out = right, mark
	}
	var t draw.Pen
	t.Move(end, y).Line(end+out, y-mark/2).Line(end+out, y+mark/2).Close()
	s.Path(t.String(), draw.Style{Fill: ink})
	letter := draw.TextStyle{Size: p.joinLetter()}
	x := left + 1
	if p.g.FromLeft {
		x, letter.Anchor = right-1, draw.End
	}
	letter.Halo = "#FFFFFF"
	foot := y - 1.5
	if above {
		foot = y + 0.66*letter.Size + 1.5
	}
	s.Text(x, foot, to, letter)
}

// joinLetter returns the size of the letters of a join in mm: 9 pt at least.
func (p *chartPages) joinLetter() float64 {
	if p.o.Large {
		return p.body
	}
	return 3.2
}
