package paper

import (
	"thenar/internal/draw"
	"thenar/internal/picture"
)

// The cells of charts in mm: the widest, and the least that are taken to save a page; below
// them a chart is only as small as its page asks for.
const (
	widestCell = 4.8
	savingCell = 2.7
	leastCell  = 1.2
	cellStep   = 0.3
)

// rows sets the charts beside each other where there is room, in the widest cells in which
// they take as few pages as they can.
func (c *sizesCharts) rows() []part {
	var best []part
	fewest := 0
	large := c.small / ordinary.small // letters and cells go together
	for cell := widestCell * large; cell >= savingCell*large-1e-9; cell -= cellStep {
		rows := c.packed(cell)
		if pages := c.pagesOf(rows); best == nil || pages < fewest {
			best, fewest = rows, pages
		}
	}
	return best
}

// pagesOf returns on how many pages rows stand that don't break.
func (c *sizesCharts) pagesOf(rows []part) int {
	pages, left := 1, c.areaHeight()-45
	for _, r := range rows {
		high := float64(r.Height) / 10
		if high > left {
			pages, left = pages+1, c.areaHeight()-10
		}
		left -= high
	}
	return pages
}

// chartGap is the room between charts beside each other in mm.
const chartGap = 7.0

// packed sets the charts in cells of a width, or narrower ones where they need that.
func (c *sizesCharts) packed(cell float64) (rows []part) {
	var row []part
	var wide []float64
	flush := func() {
		if len(row) == 0 {
			return
		}
		rows = append(rows, stack([]part{inARow(row, wide), space(40)}))
		row, wide = nil, nil
	}
	used := 0.0
	for i := range c.list {
		set, width := c.one(i, cell)
		if used > 0 && used+chartGap+width > c.width() {
			flush()
			used = 0
		}
		if used > 0 {
			used += chartGap
		}
		row, wide, used = append(row, set), append(wide, width), used+width
	}
	flush()
	return rows
}

// inARow puts parts of widths side by side.
func inARow(parts []part, wide []float64) part {
	out := part{}
	for _, p := range parts {
		out.Height = max(out.Height, p.Height)
	}
	out.draw = func(page *draw.Scene, x, y float64) {
		for i, p := range parts {
			p.draw(page, x, y)
			x += wide[i] + chartGap
		}
	}
	return out
}

// leastCaption is the least width in mm for what is said above and below a chart.
const leastCaption = 52.0

// one sets a chart with its name above and what is to be said of it below.
func (c *sizesCharts) one(i int, cell float64) (set part, width float64) {
	of := &c.list[i]
	var s *draw.Scene
	for ; ; cell -= cellStep / 2 {
		s = picture.SizesChart(&of.Sizes, c.look(cell))
		if cell < leastCell || s.Width <= c.width() && s.Height <= c.areaHeight()-60 {
			break
		}
	}
	width = min(max(s.Width, leastCaption), c.width())
	letter := chartLetter(i)
	head := drawn(lineHeight(c.heading), func(page *draw.Scene, x, y float64) {
		page.Text(x, y+c.heading, letter, draw.TextStyle{Size: c.heading, Face: draw.Serif})
	})
	inset := draw.Measure(letter, c.heading, draw.Serif) + 2.5
	name := setLines(c.named(of), width-inset, draw.TextStyle{Size: c.small})
	above := beside(inset, []part{head}, append([]part{space(12)}, name...))
	if s.Width > c.width() { // a round of several hundred stitches without a box
		return stack(append([]part{above, space(10)}, setLines("The whole round is too wide for a page: the words tell it.", width, draw.TextStyle{Size: c.small})...)), width
	}
	list := []part{above, space(10), scene(s.Height, 1, func() *draw.Scene { return s }, 0), space(8)}
	for _, text := range c.under(of) {
		list = append(list, setLines(text, width, draw.TextStyle{Size: c.small})...)
	}
	return stack(list), width
}
