package charted

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/stitch"
	"thenar/internal/tally"
	"thenar/internal/written"
)

// Of draws up the charts of a trace. What can't be tied to the rounds below it begins a chart
// of its own, and nothing is drawn that the text doesn't tell.
func Of(t tally.Trace) Charts {
	l := layer{cut: t.Cut, sets: map[int][]loop{}}
	for i := range t.Steps {
		if l.step(&t.Steps[i]); l.cells > mostCells {
			l.cut = true
			break
		}
	}
	l.flush()
	return Charts{l.list, l.cut}
}

// layer lays rounds one over the other.
type layer struct {
	list  []Chart
	cells int
	cut   bool

	section string
	live    []loop         // on the needles in the order worked, on the right side
	known   bool           // live is what is on the needles
	sets    map[int][]loop // those that wait
	columns columns
	rows    []laid // of the chart that is begun
}

// laid is a row of a chart that is begun.
type laid struct {
	row     chart.Row
	line    int
	columns []int // of its cells
}

// step lays what a step of the trace does.
func (l *layer) step(s *tally.Step) {
	if s.Section != l.section {
		l.flush()
		l.section = s.Section
	}
	switch s.Does {
	case tally.Casts, tally.Takes:
		l.flush()
		l.begin(s.After)
		if s.Does == tally.Takes && len(s.Runs) == 1 {
			copy(l.live, l.sets[s.Runs[0].Set])
		}
		l.known = !s.Open && s.After >= 0
	case tally.Shifts:
		l.flush()
		if n := s.Runs[0].Times; l.known && n <= len(l.live) {
			l.live = slices.Concat(l.live[n:], l.live[:n])
		}
	case tally.Ends:
		if s.After == 0 {
			l.flush()
			l.live, l.known = nil, false
		} else {
			l.known = false
		}
	case tally.Jumps:
		l.known = false
		if s.Open {
			l.blank(s, notRead)
		}
	case tally.Works:
		l.round(s)
	}
}

// begin puts so many new stitches on the needles.
func (l *layer) begin(n int) {
	l.live = make([]loop, max(0, min(n, mostCells)))
	l.known = n >= 0 && n <= mostCells
}

// round lays a round, if it is known what it does.
func (l *layer) round(s *tally.Step) {
	switch {
	case s.Open && s.Failed:
		l.blank(s, notRead)
	case s.Open:
		l.blank(s, open)
	default:
		if !l.known || s.Before != len(l.live) {
			l.flush()
			l.begin(s.Before)
		}
		l.row(s)
	}
	l.known = !s.Open && s.After == len(l.live)
	if !l.known && !s.Open && !s.Failed && len(l.rows) > 0 {
		l.rows = l.rows[:len(l.rows)-1]
		l.blank(s, notTold)
	}
}

// blank adds a row without stitches.
func (l *layer) blank(s *tally.Step, said string) {
	row := chart.Row{Section: part(s.Section), Round: s.Round, Side: side(s.Side), Unread: said}
	if s.Round == 0 {
		row.Said = said
	}
	l.rows = append(l.rows, laid{row: row, line: s.Line})
}

// part names a section as the charts name their parts.
func part(section string) stitch.Part { return stitch.Part(cmp.Or(section, "piece")) }

func side(s written.Side) stitch.Side {
	return [...]stitch.Side{stitch.AllRound, stitch.RightSide, stitch.WrongSide}[s]
}

// row lays a round stitch by stitch.
func (l *layer) row(s *tally.Step) {
	works := worksOf(s.Runs)
	behind := s.Side == written.Wrong
	if behind {
		slices.Reverse(works)
		for i := range works {
			works[i].sign, works[i].behind = works[i].seen(), true
		}
	}
	if !slices.ContainsFunc(l.rows, func(r laid) bool { return r.columns != nil }) {
		var all []int
		l.columns, all = upTo(len(l.live))
		for i := range l.live {
			l.live[i].column = all[i]
		}
	}
	w := weaver{layer: l, last: none, marks: s.Markers}
	if behind {
		w.marks = slices.Clone(s.Markers)
		slices.Reverse(w.marks)
		for i, at := range w.marks {
			w.marks[i] = s.After - at
		}
	}
	for i := range works {
		works[i].inRows = s.Side != written.NoSide
		w.work(works[i])
	}
	for w.at < len(l.live) {
		w.work(work{sign: sign{said: leftOver}, in: 1, out: 1})
	}
	row := chart.Row{Section: part(s.Section), Round: s.Round, Side: side(s.Side), Cells: w.cells, In: len(l.live), Out: len(w.live)}
	switch {
	case s.Long:
		row.Said = asTold
	case s.Round == 0:
		row.Said = between
	}
	l.live = w.live
	if idle(works) {
		return
	}
	l.rows = append(l.rows, laid{row, s.Line, w.columns})
	l.cells += len(w.cells)
}

// idle reports whether nothing is done to any stitch.
func idle(works []work) bool {
	return !slices.ContainsFunc(works, func(w work) bool { return !w.free })
}

// weaver lays one round over the one below.
type weaver struct {
	*layer
	at      int // loops of the round below that are taken
	last    int // the column that was worked last; none: it is the first
	live    []loop
	cells   []chart.Cell
	columns []int
	marks   []int // after so many of the loops that it leaves
	passed  int   // markers
}

// work lays one stitch.
func (w *weaver) work(one work) {
	below := w.layer.live[w.at:min(w.at+one.in, len(w.layer.live))]
	w.at += len(below)
	for len(w.marks) > w.passed && w.marks[w.passed] <= len(w.live) {
		w.passed++
	}
	if one.op == stitch.Hold {
		w.sets[one.set] = append(w.sets[one.set], below...)
	}
	if len(below) > 0 {
		w.last = below[len(below)-1].column
		if one.free || one.even {
			one.sign = one.over(below[0])
		}
	}
	var made []int // the columns of what it leaves
	switch top := min(one.onTop(one.in), len(below)-1); {
	case one.out == 0, len(below) == 0:
	case one.out == 1:
		made = append(made, below[top].column)
	default:
		for i := 0; i < min(one.out, len(below)); i++ {
			made = append(made, below[i].column)
		}
	}
	for len(made) < one.out {
		w.last = w.layer.columns.after(w.last)
		made = append(made, w.last)
	}
	for _, column := range made {
		w.live = append(w.live, one.left(column, below))
	}
	shown := made
	switch {
	case one.out == 0 && len(below) > 0:
		shown = []int{below[0].column}
	case one.out > one.in && one.in > 0, one.in == 0 && one.out > 1:
		shown = made[:1]
	}
	for _, column := range shown {
		if !one.free {
			w.cell(one.sign, column)
		}
	}
}

// The families of columns outside of markers and between them, so that the edges are drawn.
const (
	outside = "H"
	inside  = "B"
)

// Said explains what stands in the charts beside stitches: markers, and rows without a number.
func Said(list []Chart) (said []string) {
	has := func(is func(chart.Row) bool) bool {
		return slices.ContainsFunc(list, func(c Chart) bool { return slices.ContainsFunc(c.Grid.Rows, is) })
	}
	if has(func(r chart.Row) bool {
		return slices.ContainsFunc(r.Cells, func(c chart.Cell) bool { return strings.HasPrefix(c.Column, inside) })
	}) {
		said = append(said, "Heavy upright lines are markers.")
	}
	if has(func(r chart.Row) bool { return r.Fault != "" && len(r.Cells) > 0 }) {
		said = append(said, "In a framed round something was found.")
	}
	for _, one := range [][2]string{
		{asTold, "“As told” is worked over and over, as long as the text says."},
		{between, "“Between” is done between two rounds."},
	} {
		if has(func(r chart.Row) bool { return r.Said == one[0] }) {
			said = append(said, one[1])
		}
	}
	for _, one := range [][2]string{
		{notRead, "“Not read” was not understood."},
		{open, "“Open” hangs on a count that isn’t known."},
		{notTold, "“Not told” changes the count, and the text doesn’t say where."},
	} {
		if has(func(r chart.Row) bool { return r.Unread == one[0] }) {
			said = append(said, one[1])
		}
	}
	return said
}

// cell adds a cell.
func (w *weaver) cell(s sign, column int) {
	family := outside
	if w.passed%2 > 0 {
		family = inside
	}
	w.cells = append(w.cells, chart.Cell{Column: family + strconv.Itoa(column), X: column, Planned: s.op, Op: s.op, Said: s.said, Yarn: chart.Yarns[0].ID})
	w.columns = append(w.columns, column)
}

// flush ends the chart that is begun, if it has rows.
func (l *layer) flush() {
	rows := l.rows
	l.rows = nil
	if len(rows) == 0 {
		return
	}
	places := l.columns.places()
	c := Chart{Title: l.title(rows)}
	for i := range rows {
		for j := range rows[i].row.Cells {
			rows[i].row.Cells[j].X = len(places) - 1 - places[rows[i].columns[j]]
		}
		c.Lines = append(c.Lines, rows[i].line)
	}
	list := make([]chart.Row, len(rows))
	for i := range rows {
		list[i] = rows[i].row
	}
	c.Grid = chart.Told(chart.View(c.Title), list, len(places))
	l.columns = columns{}
	l.list = append(l.list, c)
}

// title names a chart by its section; where that has several, by its first round, too.
func (l *layer) title(rows []laid) string {
	title := cmp.Or(l.section, "piece")
	if !slices.ContainsFunc(l.list, func(c Chart) bool { return c.Title == title }) {
		return title
	}
	if first := rows[0].row; first.Round > 0 {
		if longer := fmt.Sprintf("%s, from %s", title, first.Name()); !slices.ContainsFunc(l.list, func(c Chart) bool { return c.Title == longer }) {
			return longer
		}
	}
	for n := 2; ; n++ {
		longer := fmt.Sprintf("%s, part %d", title, n)
		if !slices.ContainsFunc(l.list, func(c Chart) bool { return c.Title == longer }) {
			return longer
		}
	}
}
