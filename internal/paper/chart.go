package paper

import (
	"fmt"
	"maps"
	"slices"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/words"
)

// views returns the views whose charts are printed: the gusset, and those with
// marks that the gusset's chart doesn't show.
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

// charts prints the charts, each with its key.
func (h *handout) charts() {
	for _, v := range h.views() {
		h.chart(h.grid(v), h.o.Cell, maxFitCell)
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

// keys prints the keys of all charts, without the charts.
func (h *handout) keys() {
	for _, v := range h.views() {
		key := h.key(h.grid(v))
		h.head("Key: "+lower(v.Title()), key.Height)
		h.put(key, margin, h.keyScale())
	}
}

func lower(s string) string { return string(s[0]-'A'+'a') + s[1:] }

// keyScale returns the scale of a key, which grows with the letters of the page.
func (h *handout) keyScale() float64 { return h.body / ordinary.body }

func (h *handout) key(g chart.Grid) *draw.Scene {
	return picture.Key(g, picture.Look{Symbols: h.symbols(), Grey: h.o.Grey}, h.width()/h.keyScale())
}

// chart prints a chart on as many pages as it takes, each with the key and what
// does not add up. Asked is the width of a cell in mm, 0 for as large as fits up to
// maxCell.
func (h *handout) chart(g chart.Grid, asked, maxCell float64) {
	if len(g.Rows) == 0 {
		return
	}
	if h.o.Large {
		maxCell = largeCell
		if asked == 0 {
			asked = largeCell
		}
	}
	p := chartPages{handout: h, g: g, title: g.View.Title(), keyAbove: h.o.Has(Key) && h.o.Place(Key) < h.o.Place(Chart)}
	if h.o.Has(Key) {
		p.key = h.key(g)
	}
	p.lay(asked, maxCell)
	p.print()
}

// chartPages lays out one chart over pages.
type chartPages struct {
	*handout
	g        chart.Grid
	title    string
	key      *draw.Scene // nil: none
	keyAbove bool        // the key is printed above the chart
	keyApart bool        // the key is so high that it stands once, after all parts
	cells    cells
}

// lay chooses the width of the cells and divides the chart into parts. The key stands
// with every part, or after all of them where it would take much of a page or half as
// many parts again.
func (p *chartPages) lay(asked, maxCell float64) {
	room := p.pageHeight() - p.headHeight()
	key := 0.0
	if p.key != nil {
		key = p.keyHeight()
	}
	ratio := p.Out.Plan.Gauge.Stitches / p.Out.Plan.Gauge.Rounds
	side := roundNumbers
	if p.g.Rows[0].Section != p.g.Rows[len(p.g.Rows)-1].Section {
		side = sectionNames
	}
	fit := func(room float64) cells {
		return fitCells(p.g.Width, len(p.g.Rows), ratio, side, p.width(), room-2, asked, maxCell)
	}
	p.cells = fit(room)
	alone := p.parts()
	p.keyApart = key > 0.4*room
	if beside := fit(room - key); !p.keyApart && 2*len(beside.columns)*len(beside.rows) <= 3*alone {
		p.cells = beside
	} else {
		p.keyApart = p.key != nil
	}
}

// keyHeight is the height of the key with its heading.
func (p *chartPages) keyHeight() float64 { return p.key.Height*p.keyScale() + p.heading*leading + 4 }

func (p *chartPages) print() {
	n := 0
	for y := range p.cells.rows {
		for x := range p.cells.columns {
			n++
			p.freshPage()
			p.part(x, y, n, !p.keyApart)
		}
	}
	if p.keyApart {
		if p.heightLeft() < p.keyHeight() {
			p.freshPage()
		}
		p.drawKey()
	}
	p.done()
}

// headHeight is the height of the texts of a part, for which room is kept.
func (p *chartPages) headHeight() float64 {
	return p.heading*leading + 1 + 2*p.body*leading + 2 + float64(min(len(p.Out.Unsound), maxUnsoundBelow))*2*p.body*leading
}

// parts returns the number of parts of the chart.
func (p *chartPages) parts() int { return len(p.cells.columns) * len(p.cells.rows) }

// part prints the nth part on one page: heading, how to read it, the map of parts,
// cells, key.
func (p *chartPages) part(x, y, n int, withKey bool) {
	columns, rows := p.columns(x), p.cells.rows[y]
	top := p.y
	title := p.title
	if p.parts() > 1 {
		title = fmt.Sprintf("%s, part %d of %d", p.title, n, p.parts())
	}
	p.text(margin, p.width()-p.mapWidth(), title, draw.TextStyle{Size: p.heading, Face: draw.Serif})
	p.y++
	p.text(margin, p.width()-p.mapWidth(), p.readingText(columns, rows), draw.TextStyle{Size: p.body})
	if p.parts() > 1 {
		p.drawMap(top, n)
	}
	p.y = max(p.y, top+p.heading*leading+1+2*p.body*leading) + 1
	if p.keyAbove && withKey {
		p.drawKey()
	}
	g := p.g.Part(columns.from, columns.to, rows.from, rows.to)
	look := picture.Look{Cell: p.cells.width, Gauge: p.Out.Plan.Gauge, Symbols: p.symbols(), Grey: p.o.Grey}
	if p.o.Large {
		look.Numbers = p.body
	}
	scene, at := picture.Chart(g, look)
	p.drawJoins(scene, at, x, y)
	p.page().Add(scene, margin+max(0, p.width()-scene.Width)/2, p.y, 1)
	p.y += scene.Height + 1
	if p.hasManyUnsound() {
		p.text(margin, p.width(), "Some rounds do not add up: they stand listed after the charts.", draw.TextStyle{Size: p.body, Face: draw.Semibold})
	} else {
		p.unsound()
	}
	if !p.keyAbove && withKey {
		p.drawKey()
	}
}

func (p *chartPages) drawKey() {
	if p.key == nil {
		return
	}
	p.text(margin, p.width(), "Key", draw.TextStyle{Size: p.heading, Face: draw.Serif})
	p.y++
	p.page().Add(p.key, margin, p.y, p.keyScale())
	p.y += p.key.Height*p.keyScale() + 2
}

// columns returns the columns of the parts at x, counted from the chart's left
// edge. Part 0 is where rounds begin.
func (p *chartPages) columns(x int) span {
	s := p.cells.columns[x]
	if p.g.FromLeft {
		return s
	}
	return span{p.g.Width - s.to, p.g.Width - s.from}
}

// readingText says how to read the chart, and which columns and rounds this part
// shows.
func (p *chartPages) readingText(columns, rows span) string {
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
	foot := p.g.Part(columns.from, columns.to, rows.from, rows.from+1).Rows[0]
	part := slices.Sorted(maps.Values(foot.Numbers())) // as they are counted in their round
	rounds := fmt.Sprintf("rounds %d to %d", first.Round, last.Round)
	if first.Section != last.Section {
		rounds = fmt.Sprintf("%s %d to %s %d", first.Section.Words(), first.Round, last.Section.Words(), last.Round)
	}
	return fmt.Sprintf("%s This part: stitches %s at its foot, %s.", text, words.Spans(part), rounds)
}
