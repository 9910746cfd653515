package picture

import (
	"math"
	"strconv"

	"thenar/internal/chart"
	"thenar/internal/draw"
)

// printedLetter is the size of the letters round a printed chart in mm: 9 pt.
const printedLetter = 3.2

// Measures of a printed chart, by the size of its letters, and its grey, which black
// letters stand on with 12 : 1 (WCAG 2.2) and which is lost on no copier.
const (
	printedLine = 1.35 // height of a line
	printedGap  = 0.4  // between cells and what stands beside them
	bandColour  = "#C6C6C6"
)

// The head of the counts of the gusset's stitches, and that of their numbers.
const (
	countsHead = "gusset"
	rulerHead  = "stitch"
)

// nameMiddle is how far below their middle names with ascenders and descenders stand, by
// the size of their letters.
const nameMiddle = 0.27

// printed is a gusset's chart as it is laid for paper, over a whole width.
type printed struct {
	g          chart.Grid
	l          Look
	at         Geometry
	width      float64
	letter     float64
	gusset     float64 // right end of the column of the gusset's counts from the edge; 0: none
	all        float64 // that of the counts of the whole round
	rounds     float64 // width of the column of the rounds' numbers
	foot, head [2]int  // first and last place of the gusset in the first row and the last
	hook       []string
}

// PrintedChart draws a gusset's chart over a width in mm, for paper: rows run out open,
// since the round goes on there; rounds that change the count lie on a grey band between
// what they make and their number. Ok is false for other charts, and where cells and
// numbers are wider.
func PrintedChart(g chart.Grid, l Look, width float64) (s *draw.Scene, at Geometry, ok bool) {
	p, ok := layPrinted(g, l, width)
	if !ok {
		return nil, Geometry{}, false
	}
	return p.draw(), p.at, true
}

// PrintedHeight returns the height in mm of what PrintedChart draws.
func PrintedHeight(g chart.Grid, l Look, width float64) (height float64, ok bool) {
	p, ok := layPrinted(g, l, width)
	return p.height(), ok
}

// WidestPrinted returns the widest cells in mm that leave room for the counts beside a
// printed chart, or those of the gusset alone if it is narrow, and in which it is no
// higher than height.
func WidestPrinted(g chart.Grid, l Look, width, height float64, narrow bool) float64 {
	p, ok := layPrinted(g, l, width)
	if !ok {
		return 0
	}
	room := width - p.rounds - 2*p.gap() - p.countsWidth()
	if narrow {
		room = width - p.rounds - 2*p.gap() - p.wide(countsHead, draw.Regular)
	}
	rows := (height - p.height() + float64(len(g.Rows))*p.at.CellHeight) / float64(len(g.Rows))
	return min(room/float64(g.Width), rows*p.at.CellWidth/p.at.CellHeight)
}

// LeastPrinted returns the least width in mm over which a chart is printed.
func LeastPrinted(g chart.Grid, l Look) float64 {
	const wide = 1e4
	p, ok := layPrinted(g, l, wide)
	if !ok {
		return wide
	}
	return float64(g.Width)*l.Cell + p.rounds + 2*p.gap() + 0.01
}

// layPrinted lays a printed chart; ok is false if it is no gusset's in the round, or too wide.
func layPrinted(g chart.Grid, l Look, width float64) (p printed, ok bool) {
	if len(g.Rows) == 0 || !g.View.Cut() || g.Rows[0].Section != g.Rows[len(g.Rows)-1].Section || g.Whole() > g.Width || g.BothWays() {
		return printed{}, false
	}
	p = printed{g: g, l: l, width: width, letter: max(printedLetter, l.Numbers)}
	p.at, _ = place(g, l, 0)
	p.foot, p.head = gussetOf(g.Rows[0]), gussetOf(g.Rows[len(g.Rows)-1])
	p.rounds = max(p.wide("round", draw.Regular), p.big()*1.1) + p.gap()
	cells := float64(g.Width) * l.Cell
	room := width - cells - p.rounds - 2*p.gap()
	if room < 0 || p.foot[1] < p.foot[0] || p.head[1] < p.head[0] {
		return printed{}, false
	}
	left := 0.0
	if gusset, all := p.wide(countsHead, draw.Regular), p.countsWidth(); room >= gusset {
		p.gusset, left = gusset, gusset
		if room >= all {
			p.all, left = all, all
		}
	}
	p.at.Left = left + (width-left-p.rounds-cells)/2
	if g.FromLeft { // the columns change sides
		p.at.Left = width - p.at.Left - cells
	}
	p.hook = p.hookLines()
	p.at.Bottom = p.headHeight() + float64(len(g.Rows))*p.at.CellHeight
	return p, true
}

// gussetOf returns the first and last place of the gusset in a row; the last lies before
// the first if it has none there.
func gussetOf(row chart.Row) [2]int {
	at := [2]int{1 << 30, -1}
	for _, c := range row.Shown() {
		if !isHandCell(c) {
			at[0], at[1] = min(at[0], c.X), max(at[1], c.X)
		}
	}
	return at
}

func (p *printed) wide(text string, face draw.Face) float64 {
	return draw.Measure(text, p.letter, face)
}

func (p *printed) gap() float64 { return printedGap * p.letter }

// countsWidth returns the width of both columns of counts.
func (p *printed) countsWidth() float64 {
	return p.wide(countsHead, draw.Regular) + p.letter + p.wide("in all", draw.Regular)
}

// big returns the size of the numbers of rounds that change the count: nearly as high as
// their row, but no smaller than the others.
func (p *printed) big() float64 {
	return max(p.letter, min(1.5*p.letter, 1.3*p.at.CellHeight-0.1*p.letter))
}

// bar returns the height of a ruler.
func (p *printed) bar() float64 { return 1.35 * p.letter }

func (p *printed) headHeight() float64 { return printedLine*p.letter + p.bar() }

func (p *printed) height() float64 {
	return p.at.Bottom + p.bar() + (0.35+1.2*float64(len(p.hook)))*p.letter
}

// begins returns where on the foot's ruler the round begins.
func (p *printed) begins() float64 {
	if p.g.FromLeft {
		return p.at.x(p.foot[0])
	}
	return p.at.x(p.foot[1] + 1)
}

// hookLines returns what stands where the round begins, in the room beside that.
func (p *printed) hookLines() []string {
	room := p.width - p.begins()
	if p.g.FromLeft {
		room = p.begins()
	}
	return draw.Wrap("the round begins here", room-p.letter, p.letter, draw.Regular)
}

// side returns the x of a place so far from the edge of the counts, and how a text is
// anchored there that ends towards the cells.
func (p *printed) side(from float64) (float64, draw.Anchor) {
	if p.g.FromLeft {
		return p.width - from, draw.Start
	}
	return from, draw.End
}

// beyond returns the same from the edge of the rounds' numbers.
func (p *printed) beyond(from float64) (float64, draw.Anchor) {
	if p.g.FromLeft {
		return from, draw.Start
	}
	return p.width - from, draw.End
}

func (p *printed) draw() *draw.Scene {
	s := &draw.Scene{Width: p.width, Height: p.height(), Label: chartLabel(p.g)}
	p.bands(s)
	drawColours(s, p.g, p.at, p.l)
	drawGapCells(s, p.g, p.at)
	p.lines(s)
	drawSymbols(s, p.g, p.at, p.l)
	drawMarks(s, p.g, p.at, printedGap)
	p.numbers(s)
	p.heads(s)
	p.ruler(s, p.g.Rows[len(p.g.Rows)-1], p.head, p.headHeight()-p.bar())
	p.ruler(s, p.g.Rows[0], p.foot, p.at.Bottom)
	p.drawHook(s)
	return s
}

// bands draws the grey beside the rows that change the count.
func (p *printed) bands(s *draw.Scene) {
	var band draw.Pen
	for i, row := range p.g.Rows {
		low, high, ok := shownRange(row)
		if !ok || !changesCount(row) {
			continue
		}
		left, right := p.at.x(low)-p.gap(), p.at.x(high+1)+p.gap()
		if p.gusset > 0 || p.g.FromLeft {
			band.Rect(0, p.at.y(i+1), max(left, 0), p.at.CellHeight)
		}
		if p.gusset > 0 || !p.g.FromLeft {
			band.Rect(right, p.at.y(i+1), max(p.width-right, 0), p.at.CellHeight)
		}
	}
	s.Path(band.String(), draw.Style{Fill: bandColour})
}

// numbers writes the numbers of the rounds, and the counts of those that change them.
func (p *printed) numbers(s *draw.Scene) {
	said := numbered(p.g, int(math.Ceil(p.letter/p.at.CellHeight)))
	for i, row := range p.g.Rows {
		middle := p.at.y(i+1) + p.at.CellHeight/2
		x, anchor := p.beyond(0.3 * p.letter)
		style := draw.TextStyle{Size: p.letter, Anchor: anchor}
		if changesCount(row) && said[i] {
			style.Size, style.Face = p.big(), draw.Semibold
			p.counts(s, row, middle)
		}
		if row.Changed {
			style.Face = draw.Semibold
			bx, _ := p.beyond(p.rounds - p.gap()/2)
			s.Path(bar(bx, p.at.y(i+1), p.at.CellHeight), draw.Style{Stroke: pinColour, Width: 0.6})
		}
		if said[i] {
			s.Text(x, middle+figureHigh/2*style.Size, strconv.Itoa(row.Round), style)
		}
	}
}

// counts writes how many stitches a round leaves in the gusset and in all.
func (p *printed) counts(s *draw.Scene, row chart.Row, middle float64) {
	gusset := 0
	for _, c := range row.Cells {
		if !isHandCell(c) {
			gusset += c.Op.Out()
		}
	}
	if p.gusset > 0 {
		x, anchor := p.side(p.gusset - 0.6*p.letter)
		s.Text(x, middle+figureHigh/2*p.big(), strconv.Itoa(gusset), draw.TextStyle{Size: p.big(), Face: draw.Semibold, Anchor: anchor})
	}
	if p.all > 0 {
		x, anchor := p.side(p.all - 0.3*p.letter)
		s.Text(x, middle+figureHigh/2*p.letter, strconv.Itoa(row.Out), draw.TextStyle{Size: p.letter, Anchor: anchor})
	}
}

// heads writes the heads of the columns, and over the ruler what it counts.
func (p *printed) heads(s *draw.Scene) {
	y := p.letter
	write := func(x float64, text string, anchor draw.Anchor) {
		s.Text(x, y, text, draw.TextStyle{Size: p.letter, Anchor: anchor})
	}
	if x, anchor := p.side(p.gusset); p.gusset > 0 {
		write(x, countsHead, anchor)
	}
	if x, anchor := p.side(p.all); p.all > 0 {
		write(x, "in all", anchor)
	}
	x, anchor := p.beyond(0)
	write(x, "round", anchor)
	write((p.at.x(p.head[0])+p.at.x(p.head[1]+1))/2, rulerHead, draw.Middle)
}

// ruler draws the grey ruler over or under the gusset's stitches of a row, as they are
// counted in their round, between the names of what lies beside it.
func (p *printed) ruler(s *draw.Scene, row chart.Row, of [2]int, top float64) {
	left, right := p.at.x(of[0]), p.at.x(of[1]+1)
	s.Rect(left, top, right-left, p.bar(), draw.Style{Fill: bandColour})
	y := top + p.bar()/2 + figureHigh/2*p.letter
	numbers := row.Numbers()
	first, last := numbers[of[1]], numbers[of[0]]
	if p.g.FromLeft {
		first, last = last, first
	}
	every := float64(len(strconv.Itoa(last)))*figureWide*p.letter < 0.9*p.at.CellWidth
	for x := of[0]; x <= of[1]; x++ {
		n, ok := numbers[x]
		ends := n == first || n == last
		if !ok || !every && !ends && (n%5 != 0 || last-n < 3) {
			continue
		}
		style := draw.TextStyle{Size: p.letter, Anchor: draw.Middle}
		if ends || n%5 == 0 {
			style.Face = draw.Semibold
		}
		at := p.at.x(x) + p.at.CellWidth/2
		if half := draw.Measure(strconv.Itoa(n), p.letter, style.Face) / 2; ends { // a wide number stays on its ruler
			at = math.Min(math.Max(at, left+half), right-half)
		}
		s.Text(at, y, strconv.Itoa(n), style)
	}
	before, after := chart.PalmArea, chart.BackArea
	if areas := p.g.Areas(); len(areas) > 1 {
		before, after = areas[0].Words, areas[len(areas)-1].Words
	}
	y = top + p.bar()/2 + nameMiddle*p.letter
	s.Text(left-p.gap(), y, before, draw.TextStyle{Size: p.letter, Anchor: draw.End})
	s.Text(right+p.gap(), y, after, draw.TextStyle{Size: p.letter})
}

// drawHook draws the hook at the foot where the round begins, with what it says.
func (p *printed) drawHook(s *draw.Scene) {
	x, top := p.begins(), p.at.Bottom+p.bar()
	out, style := 0.7*p.letter, draw.TextStyle{Size: p.letter}
	if p.g.FromLeft {
		out, style.Anchor = -out, draw.End
	}
	y := top + 0.75*p.letter
	s.Path(new(draw.Pen).Move(x, top).Line(x, y).Line(x+out, y).String(), draw.Style{Stroke: outlineColour, Width: firstEdge})
	for i, line := range p.hook {
		s.Text(x+1.3*out, top+(1.05+1.2*float64(i))*p.letter, line, style)
	}
}
