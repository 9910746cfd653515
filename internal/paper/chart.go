package paper

import (
	"fmt"
	"slices"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/picture"
)

// views are the charts that are printed: the gusset's, and those on which
// something is painted that it doesn't show.
func (h *handout) views() []chart.View {
	var list []chart.View
	all := h.Out.Charts.Views()
	var first chart.View
	if at := slices.IndexFunc(all, chart.View.Cut); at >= 0 {
		first = all[at]
		list = append(list, first)
	}
	for _, v := range all {
		if v != first && h.Out.Charts.Painted(v, first) {
			list = append(list, v)
		}
	}
	return list
}

// charts are the pages with charts, each with its key.
func (h *handout) charts() {
	for _, v := range h.views() {
		h.chart(h.grid(v), h.o.Cell, roomiest)
	}
	if len(h.views()) > 0 {
		h.listUnsound()
	}
	if !h.o.Has(Notes) && len(h.noted()) > 0 {
		h.head("Notes in the chart", 0)
		for _, n := range h.noted() {
			h.say(n, h.body)
		}
		h.done()
	}
}

// keys are the keys of all charts that would be printed.
func (h *handout) keys() {
	for _, v := range h.views() {
		key := h.key(h.grid(v))
		h.head("Key: "+lower(v.Title()), key.Height)
		h.put(key, margin, h.keyScale())
	}
}

func lower(s string) string { return string(s[0]-'A'+'a') + s[1:] }

// keyScale enlarges a key with the letters of the page.
func (h *handout) keyScale() float64 { return h.body / ordinary.body }

func (h *handout) key(g chart.Grid) *draw.Scene {
	return picture.Key(g, h.symbols(), h.width()/h.keyScale())
}

// chart prints a chart on as many pages as it takes, cells to scale, with its
// key and what does not add up on every one of them.
func (h *handout) chart(g chart.Grid, asked, largest float64) {
	if len(g.Rows) == 0 {
		return
	}
	if h.o.Large {
		largest = largeCell
		if asked == 0 {
			asked = largeCell
		}
	}
	p := chartPages{handout: h, g: g, title: g.View.Title(), above: h.o.Has(Key) && h.o.Place(Key) < h.o.Place(Chart)}
	if h.o.Has(Key) {
		p.key = h.key(g)
	}
	p.lay(asked, largest)
	p.print()
}

// chartPages are the pages of one chart.
type chartPages struct {
	*handout
	g     chart.Grid
	title string
	key   *draw.Scene // nil: none
	above bool        // the key stands above the chart
	apart bool        // the key is so high that it has a page by itself
	cells cells
}

// lay finds out on how many pages the chart comes.
func (p *chartPages) lay(asked, largest float64) {
	room := p.whole() - p.heads()
	key := 0.0
	if p.key != nil {
		key = p.key.Height*p.keyScale() + p.heading*leading + 4
	}
	if p.apart = key > 0.4*room; !p.apart {
		room -= key
	}
	ratio := p.Out.Plan.Gauge.Stitches / p.Out.Plan.Gauge.Rounds
	side := numbers
	if p.g.Rows[0].Section != p.g.Rows[len(p.g.Rows)-1].Section {
		side = named
	}
	p.cells = fits(p.g.Width, len(p.g.Rows), ratio, side, p.width(), room-2, asked, largest)
}

func (p *chartPages) print() {
	n := 0
	for y := range p.cells.rows {
		for x := range p.cells.columns {
			n++
			p.fresh()
			p.part(x, y, n, !p.apart)
		}
	}
	if p.apart {
		p.fresh()
		p.drawKey()
	}
	p.done()
}

// heads is the height of what stands above every part.
func (p *chartPages) heads() float64 {
	return p.heading*leading + 1 + 2*p.body*leading + 2 + float64(min(len(p.Out.Unsound), fewUnsound))*2*p.body*leading
}

// parts is how many parts the chart has.
func (p *chartPages) parts() int { return len(p.cells.columns) * len(p.cells.rows) }

// part is one page: heading, how it is read, the map, the cells, the key.
func (p *chartPages) part(x, y, n int, withKey bool) {
	columns, rows := p.columns(x), p.cells.rows[y]
	top := p.y
	title := p.title
	if p.parts() > 1 {
		title = fmt.Sprintf("%s, part %d of %d", p.title, n, p.parts())
	}
	p.text(margin, p.width()-p.mapWidth(), title, draw.TextStyle{Size: p.heading, Bold: true})
	p.y++
	p.text(margin, p.width()-p.mapWidth(), p.reading(columns, rows), draw.TextStyle{Size: p.body})
	if p.parts() > 1 {
		p.drawMap(top, n)
	}
	p.y = max(p.y, top+p.heading*leading+1+2*p.body*leading) + 1
	if p.above && withKey {
		p.drawKey()
	}
	g := p.g.Part(columns.from, columns.to, rows.from, rows.to)
	scene, at := picture.Chart(g, picture.Look{Cell: p.cells.width, Gauge: p.Out.Plan.Gauge, Symbols: p.symbols()})
	p.joins(scene, at, x, y)
	p.page().Add(scene, margin+max(0, p.width()-scene.Width)/2, p.y, 1)
	p.y += scene.Height + 1
	if p.manyUnsound() {
		p.text(margin, p.width(), "Some rounds do not add up: they stand listed after the charts.", draw.TextStyle{Size: p.body, Bold: true})
	} else {
		p.unsound()
	}
	if !p.above && withKey {
		p.drawKey()
	}
}

func (p *chartPages) drawKey() {
	if p.key == nil {
		return
	}
	p.text(margin, p.width(), "Key", draw.TextStyle{Size: p.heading, Bold: true})
	p.y++
	p.page().Add(p.key, margin, p.y, p.keyScale())
	p.y += p.key.Height*p.keyScale() + 2
}

// columns are those of a part, counted from the left of the chart: part 0
// stands where the rounds begin.
func (p *chartPages) columns(x int) span {
	s := p.cells.columns[x]
	if p.g.FromLeft {
		return s
	}
	return span{p.g.Width - s.to, p.g.Width - s.from}
}

// reading tells how a part is read and what of the chart it shows.
func (p *chartPages) reading(columns, rows span) string {
	text := "R" + picture.Reading(p.g)[1:] + "."
	edge := "right"
	if p.g.FromLeft {
		edge = "left"
	}
	if p.g.View.Cut() {
		text = fmt.Sprintf("R%s: every round begins at the %s edge of the gusset.", picture.Reading(p.g)[1:], edge)
	}
	if p.parts() == 1 {
		return text
	}
	first, last := p.g.Rows[rows.from], p.g.Rows[rows.to-1]
	if p.g.View.Cut() { // its columns are numbered without the hand's
		return fmt.Sprintf("%s This part: rounds %d to %d.", text, first.Round, last.Round)
	}
	from, to := p.g.Number(columns.from), p.g.Number(columns.to-1)
	rounds := fmt.Sprintf("rounds %d to %d", first.Round, last.Round)
	if first.Section != last.Section {
		rounds = fmt.Sprintf("%s %d to %s %d", first.Section.Words(), first.Round, last.Section.Words(), last.Round)
	}
	return fmt.Sprintf("%s This part: columns %d to %d, %s.", text, min(from, to), max(from, to), rounds)
}
