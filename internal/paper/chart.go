package paper

import (
	"fmt"
	"maps"
	"slices"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/stitch"
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

// digitViews returns the views of fingers and thumb in the order worked, if they are asked
// for; those among others are left out.
func (h *handout) digitViews(others []chart.View) (list []chart.View) {
	if !h.o.Has(Digits) {
		return nil
	}
	for i := range h.Out.Mitt.Sections {
		s := &h.Out.Mitt.Sections[i]
		if v := chart.ViewOf(s.Part); s.Part.Over() == stitch.OverDigit && len(s.Rounds) > 0 && !slices.Contains(others, v) {
			list = append(list, v)
		}
	}
	return list
}

// chartsFrom sets some of the charts.
func (h *handout) chartsFrom(from, to int) (list []block) {
	for i := from; i < to; i++ {
		list = append(list, h.chart(h.grids[i], h.laid[i], h.pair(i)))
	}
	return list
}

// charts sets the charts of the hand, what does not add up if that is much, and the notes.
func (h *handout) charts() []block {
	list := h.chartsFrom(0, h.hands)
	if len(h.grids) > 0 && h.hasManyUnsound() {
		list = append(list, h.unsound())
	}
	if noted := h.noted(); !h.o.Has(Notes) && len(noted) > 0 {
		list = append(list, h.headed("Notes in the chart", h.paragraphs(noted)))
	}
	return list
}

// paragraphs sets texts over the whole width.
func (h *handout) paragraphs(texts []string) []part {
	var list []part
	for _, text := range texts {
		list = append(list, keptLines(setLines(text, h.width(), draw.TextStyle{Size: h.body}))...)
	}
	return list
}

// mostPairs is the number of charts that are laid beside the words of their rounds.
const mostPairs = 8

// pair returns the number that the ith chart shares with the words of its rounds.
func (h *handout) pair(i int) int {
	if i >= mostPairs {
		return 0
	}
	return i + 1
}

// pairsByPart returns the numbers of the charts by the sections that they show.
func (h *handout) pairsByPart() map[stitch.Part]int {
	m := map[stitch.Part]int{}
	for i, g := range h.grids {
		if !h.o.Has(Chart) && i < h.hands {
			continue
		}
		for _, row := range g.Rows {
			if _, has := m[row.Section]; !has {
				m[row.Section] = h.pair(i)
			}
		}
	}
	return m
}

// aboveKey is the room between a chart and its key, in tenths of a millimetre.
const aboveKey = 20

// chart sets a chart in cells of several widths, each with as many parts as it takes.
func (h *handout) chart(g chart.Grid, sizes []chartPages, pair int) block {
	b := block{name: chartTitle(g), above: aboveHeading}
	below := [][]part{nil}
	if h.keyJoinsChart() {
		below = h.keyBelow()
	}
	for _, at := range sizes {
		for _, key := range below {
			b.ways = append(b.ways, way{at.shrunk, append(at.set(pair), key...)})
		}
	}
	if h.keyJoinsChart() {
		b.ways = append(b.ways, h.besideKey(g, pair)...)
	}
	return b
}

// chartTitle returns the heading of a chart. Of a boxed view, each names its part.
func chartTitle(g chart.Grid) string {
	if g.IsBoxed() {
		return g.View.Title() + ": " + g.BoxedRounds()
	}
	return g.View.Title()
}

// sizes returns a chart of a width divided in cells of every width in which it may be
// set.
func (h *handout) sizes(g chart.Grid, width float64) (list []chartPages) {
	if len(g.Rows) == 0 {
		return nil
	}
	p := chartPages{handout: h, g: g, title: chartTitle(g), over: width, cut: map[[2]span]chart.Grid{}}
	for s, cell := range p.widths() {
		at := p
		at.shrunk = s
		at.lay(cell, cell)
		list = append(list, at)
	}
	return list
}

// look returns how the chart is drawn.
func (p *chartPages) look() picture.Look {
	look := picture.Look{Cell: p.cells.width, Gauge: p.Out.Plan.Gauge, Symbols: p.symbols(), Grey: p.o.Grey}
	if p.o.Large {
		look.Numbers = p.body
	}
	return look
}

// widths returns the widths of a cell in mm in which a chart may be set, each 5 % of
// the first below the one before. A width that is asked for, and that of large print,
// is the only one.
func (p *chartPages) widths() []float64 {
	switch {
	case p.o.Cell > 0:
		return []float64{p.o.Cell}
	case p.o.Large:
		return []float64{largeCell}
	}
	p.cells.width = minFitCell
	widest := min(maxFitCell, picture.WidestPrinted(p.g, p.look(), p.over, p.printedRoom(), p.over < p.width()))
	if widest < minFitCell {
		p.lay(0, maxFitCell)
		widest = p.cells.width
	}
	var list []float64
	for s := 0; s < 20 && widest*float64(20-s)/20 >= minFitCell-1e-9; s++ {
		list = append(list, widest*float64(20-s)/20)
	}
	return list
}

// chartPages is one chart, divided into parts.
type chartPages struct {
	*handout
	g      chart.Grid
	title  string
	cells  cells
	shrunk int                    // below its wished size, in steps of 5 %
	cut    map[[2]span]chart.Grid // parts that were cut out already; nil: none are kept

	over    float64 // width for the cells and what stands round them in mm
	printed float64 // height in mm of a gusset's chart over that width; 0: set otherwise
	key     *part   // beside it at the right; nil: none
	column  float64 // width of the key in mm
}

// cutOut returns the part of the chart in columns and rows.
func (p *chartPages) cutOut(columns, rows span) chart.Grid {
	if columns == (span{0, p.g.Width}) && rows == (span{0, len(p.g.Rows)}) {
		return p.g
	}
	key := [2]span{columns, rows}
	g, has := p.cut[key]
	if !has {
		g = p.g.Part(columns.from, columns.to, rows.from, rows.to)
		if p.cut != nil {
			p.cut[key] = g
		}
	}
	return g
}

// lay divides the chart into parts that fit a page. Asked is the width of a cell in
// mm, 0 for as large as fits up to maxCell.
func (p *chartPages) lay(asked, maxCell float64) {
	p.cells, p.printed = cells{width: asked}, 0
	if high, ok := picture.PrintedHeight(p.g, p.look(), p.over); ok && asked > 0 && high <= p.printedRoom() {
		p.cells.columns, p.cells.rows = []span{{0, p.g.Width}}, []span{{0, len(p.g.Rows)}}
		p.printed = high
		return
	}
	ratio := p.Out.Plan.Gauge.Stitches / p.Out.Plan.Gauge.Rounds
	side := roundNumbers
	if p.g.Rows[0].Section != p.g.Rows[len(p.g.Rows)-1].Section {
		side = sectionNames
	}
	if len(p.g.Up) > 0 {
		side += boxCounts
	}
	p.cells = fitCells(p.g.Width, len(p.g.Rows), ratio, side, p.width(), p.areaHeight()-p.headHeight()-2, asked, maxCell)
}

// printedRoom returns the height for a chart that is not divided.
func (p *chartPages) printedRoom() float64 { return p.areaHeight() - p.headHeight() }

// headHeight is the height in mm of the texts of a part, for which room is kept.
func (p *chartPages) headHeight() float64 {
	below := min(len(p.Out.Unsound), maxUnsoundBelow)
	return float64(lineHeight(p.heading)+lineHeight(p.body)*(2+2*below))/10 + 4 + p.joinLetter()/3
}

// parts returns the number of parts of the chart.
func (p *chartPages) parts() int { return len(p.cells.columns) * len(p.cells.rows) }

// set sets the parts of the chart in their order.
func (p chartPages) set(pair int) (list []part) {
	for y := range p.cells.rows {
		for x := range p.cells.columns {
			one := p.part(x, y, len(list)+1)
			one.Above, one.Chart = 40, pair
			list = append(list, one)
		}
	}
	return list
}

// part sets the nth part: heading, how to read it, the map of parts, cells, what does
// not add up.
func (p chartPages) part(x, y, n int) part {
	columns, rows := p.columns(x), p.cells.rows[y]
	title := p.title
	if p.parts() > 1 {
		title = fmt.Sprintf("%s, part %d of %d", p.title, n, p.parts())
	}
	room := p.width() - p.mapWidth()
	head := append(marked(2, title, setLines(title, room, draw.TextStyle{Size: p.heading, Face: draw.Serif})), space(10))
	head = append(head, setLines(p.readingText(columns, rows), room, draw.TextStyle{Size: p.small})...)
	whole := stack(append(head, space(p.belowReading())))
	if p.parts() > 1 {
		whole.Height += tenths(p.joinLetter()) / 3 // the name of a neighbour stands high above the cells
		whole.Height = max(whole.Height, tenths(p.mapHeight()+1))
	}
	cells := p.cellsPart(columns, rows, x, y)
	if p.key != nil {
		cells = beside(p.width()-p.column, []part{cells}, []part{*p.key})
	}
	out := stack(append([]part{whole, cells}, p.unsoundBelow()...))
	if text := out.draw; p.parts() > 1 {
		out.draw = func(page *draw.Scene, x0, y0 float64) {
			text(page, x0, y0)
			p.drawMap(page, y0, n)
		}
	}
	return out
}

// belowReading is the room between the words of a part and its cells, in tenths of a
// millimetre. In large print the numbers at the head stand higher over the cells.
func (p *chartPages) belowReading() int {
	if p.o.Large {
		return 20
	}
	return 10
}

// cellsPart sets the cells of the part at x and y: over the whole width, or in its
// middle.
func (p *chartPages) cellsPart(columns, rows span, x, y int) part {
	if p.printed > 0 {
		return scene(p.printed, 1, func() *draw.Scene {
			s, _, _ := picture.PrintedChart(p.g, p.look(), p.over)
			return s
		}, 0)
	}
	g := p.cutOut(columns, rows)
	width, height := picture.ChartSize(g, p.look())
	return drawn(tenths(height), func(page *draw.Scene, x0, y0 float64) {
		s, at := picture.Chart(g, p.look())
		p.drawJoins(s, at, x, y)
		page.Add(s, x0+max(0, p.width()-width)/2, y0, 1)
	})
}

// unsoundBelow sets what stands below a part of what does not add up.
func (p *chartPages) unsoundBelow() []part {
	if p.hasManyUnsound() {
		return setLines("Some rounds do not add up: they stand listed after the charts.", p.width(), draw.TextStyle{Size: p.body, Face: draw.Semibold})
	}
	return p.unsoundLines()
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
	if p.g.IsBoxed() {
		text += p.cutOut(columns, rows).BoxWords()
	}
	if p.g.View.Cut() {
		text = p.gussetText()
	}
	if p.parts() == 1 {
		return text
	}
	first, last := p.g.Rows[rows.from], p.g.Rows[rows.to-1]
	if p.g.View.Cut() { // its columns are numbered without the hand's
		return fmt.Sprintf("%s This part: %ss %d to %d.", text, p.g.Noun(), first.Round, last.Round)
	}
	foot := p.g.Part(columns.from, columns.to, rows.from, rows.from+1).Rows[0]
	part := slices.Sorted(maps.Values(foot.Numbers())) // as they are counted in their round
	rounds := fmt.Sprintf("%ss %d to %d", p.g.Noun(), first.Round, last.Round)
	switch {
	case rows.to-rows.from == 1:
		rounds = fmt.Sprintf("%s %d", p.g.Noun(), first.Round)
	case first.Section != last.Section:
		rounds = fmt.Sprintf("%s %d to %s %d", first.Section.Words(), first.Round, last.Section.Words(), last.Round)
	}
	return fmt.Sprintf("%s This part: stitches %s at its foot, %s.", text, words.Spans(part), rounds)
}

// gussetText says how to read the gusset's chart: each round from one edge of the gusset
// on, and that few stitches stand for palm and back.
func (p *chartPages) gussetText() string {
	from, to := "right", "left"
	if p.g.FromLeft {
		from, to = to, from
	}
	if p.g.Noun() == "row" {
		return fmt.Sprintf("R%s. %d at each side stand for palm and back.", picture.Reading(p.g)[1:], chart.Neighbours)
	}
	return fmt.Sprintf("Read from the bottom up, %s to %s, as after each round. %d at each side stand for palm and back; the %s ones last.",
		from, to, chart.Neighbours, from)
}
