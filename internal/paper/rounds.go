package paper

import (
	"strconv"

	"thenar/internal/draw"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// roundTable sets the rounds of a section as rows: their numbers at the left, on a grey
// tab where the count changes; what is done; at the right the count after it, in a
// gusset also the gusset's own.
type roundTable struct {
	sections
	of          *stitch.Section
	rows        []words.Row
	width       float64 // all in mm
	tab, text   float64 // widths of the numbers and of what is done
	all, inside float64 // widths of the counts; 0: there is no such column
}

const (
	tabGrey    = "#C6C6C6" // black on it has a contrast of 12.3 : 1
	tabEdge    = 1.4       // mm between a number and the edge of its tab
	besideTab  = 3.0       // mm between the tabs and what is done
	counterGap = 3.0       // mm before a column of counts
)

// table measures the columns of a section.
func (s sections) table(p words.Passage, width float64) roundTable {
	t := roundTable{sections: s, of: s.Out.Mitt.Section(p.Part), rows: p.Rows(), width: width}
	for _, r := range t.rows {
		if r.From == 0 {
			continue
		}
		n := t.number(r)
		t.tab = max(t.tab, draw.Measure(t.label(r), n.Size, n.Face)+2*tabEdge)
		t.all = max(t.all, t.countWidth(r.All, t.counts(r.Inside == 0)))
		t.inside = max(t.inside, t.countWidth(r.Inside, t.counts(true)))
	}
	if t.inside > 0 {
		t.all = max(t.all, draw.Measure(headAll, s.small, draw.Regular)+counterGap)
		t.inside = max(t.inside, draw.Measure(p.Part.Words(), s.small, draw.Regular)+counterGap)
	}
	t.text = width - t.tab - besideTab - t.all - t.inside
	return t
}

const headAll = "in all"

// oneLine is the height of a row of one line, plain or not, by the size of its letters.
var oneLine = map[bool]float64{true: 1.22, false: 1.3}

func (t *roundTable) countWidth(n int, style draw.TextStyle) float64 {
	if n == 0 {
		return 0
	}
	return draw.Measure(strconv.Itoa(n), style.Size, style.Face) + counterGap
}

// counts returns the style of a count: bold unless another one beside it is.
func (t *roundTable) counts(bold bool) draw.TextStyle {
	style := draw.TextStyle{Size: t.body, Anchor: draw.End}
	if bold {
		style.Face = draw.Semibold
	}
	return style
}

// changes reports whether the stitches change in rounds of a row.
func (t *roundTable) changes(r words.Row) bool {
	for i := r.From; i > 0 && i <= min(r.To, len(t.of.Rounds)); i++ {
		if round := t.of.Rounds[i-1]; round.In() != round.Out() {
			return true
		}
	}
	return false
}

// plain reports whether a row is plain knitting, which is set in small letters.
func (t *roundTable) plain(r words.Row) bool { return r.Bare == "Knit" && !t.changes(r) }

// label returns the numbers of a row, with a star if it is worked otherwise since the
// last try.
func (t *roundTable) label(r words.Row) string {
	if t.Out.Changed.Any(t.of.Part, r.From, r.To) {
		return r.Numbers() + " *"
	}
	return r.Numbers()
}

// number returns the style of a row's numbers.
func (t *roundTable) number(r words.Row) draw.TextStyle {
	style := draw.TextStyle{Size: t.body, Face: draw.Semibold, Anchor: draw.End}
	switch {
	case t.changes(r):
		style.Size = 1.18 * t.body
	case t.plain(r):
		style.Size = t.small
	}
	return style
}

// named puts the names of the columns of the counts above the first round: at the end
// of what is said before it where there is room, or in a line of their own.
func (t *roundTable) named(rows []part) []part {
	small := draw.TextStyle{Size: t.small, Anchor: draw.End}
	names := func(page *draw.Scene, x, base float64) {
		page.Text(x+t.width-t.all, base, t.of.Part.Words(), small)
		page.Text(x+t.width, base, headAll, small)
	}
	last := len(rows) - 1
	if last >= 0 && rows[last].endsAt > 0 && rows[last].endsAt < t.width-t.all-t.inside-columnGap {
		before := rows[last]
		rows[last].Keep = true
		rows[last].draw = func(page *draw.Scene, x, y float64) {
			before.draw(page, x, y)
			names(page, x, y+float64(before.Height-paragraphGap-lineHeight(t.body))/10+t.body)
		}
		return rows
	}
	p := drawn(lineHeight(t.small)+4, func(page *draw.Scene, x, y float64) { names(page, x, y+t.small) })
	p.Keep = true
	return append(rows, p)
}

// paragraphGap is the room below a paragraph in tenths of a millimetre.
const paragraphGap = 8

// aside sets what is said between rounds, from the nth row on, as one paragraph; a
// rhythm has one of its own. It is empty within a paragraph.
func (t *roundTable) aside(n int) []part {
	rhythm := func(i int) bool { return t.of.About.Shaping != nil && i+1 < len(t.rows) && t.rows[i+1].From == 1 }
	begins := func(i int) bool { return i == 0 || t.rows[i-1].From > 0 || rhythm(i) }
	if !begins(n) {
		return nil
	}
	text := t.rows[n].Bare
	for i := n + 1; i < len(t.rows) && t.rows[i].From == 0 && !begins(i); i++ {
		text += " " + t.rows[i].Bare
	}
	lines := wrapped(text, t.width, draw.TextStyle{Size: t.body})
	p := stack(append(setLines(text, t.width, draw.TextStyle{Size: t.body}), space(paragraphGap)))
	p.endsAt = draw.Measure(lines[len(lines)-1], t.body, draw.Regular)
	return []part{p}
}

// row sets a row, whole unless it is very long; a round that changes the stitches of a
// gusset lies below a line and stays with the plain ones that follow it.
func (t *roundTable) row(r words.Row) []part {
	size := t.body
	if t.plain(r) {
		size = t.small
	}
	lines := setLines(r.Bare, t.text, draw.TextStyle{Size: size})
	if len(lines) == 0 {
		lines = []part{space(lineHeight(size))}
	}
	if len(lines) == 1 { // which needs no leading
		lines[0].Height = tenths(oneLine[t.plain(r)] * size)
	}
	for i, line := range lines {
		lines[i].draw = func(p *draw.Scene, x, y float64) {
			if i == 0 {
				t.drawNumber(p, r, x, y, size)
			}
			line.draw(p, x+t.tab+besideTab, y)
			if i == len(lines)-1 {
				t.drawCounts(p, r, x+t.width, y+size)
			}
		}
	}
	rows := together(lines)
	if t.inside > 0 && t.changes(r) {
		rows[len(rows)-1].Keep = r.To < len(t.of.Rounds)
	}
	return rows
}

// drawNumber draws the numbers of a row whose line of letters of a size begins at y.
func (t *roundTable) drawNumber(p *draw.Scene, r words.Row, x, y, size float64) {
	if t.changes(r) {
		p.Rect(x, y+0.1, t.tab, 1.3*size-0.3, draw.Style{Fill: tabGrey})
		if t.inside > 0 {
			p.Line(x+t.tab, y+0.1, x+t.width, y+0.1, draw.Style{Stroke: "#606060", Width: 0.15})
		}
	}
	p.Text(x+t.tab-tabEdge, y+size+0.1, t.label(r), t.number(r))
}

// drawCounts draws the counts of a row, which end at right on a baseline.
func (t *roundTable) drawCounts(p *draw.Scene, r words.Row, right, base float64) {
	if r.Inside > 0 {
		p.Text(right-t.all, base, strconv.Itoa(r.Inside), t.counts(true))
	}
	if r.All > 0 {
		p.Text(right, base, strconv.Itoa(r.All), t.counts(r.Inside == 0))
	}
}
