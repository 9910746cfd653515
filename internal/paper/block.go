package paper

import (
	"math"

	"thenar/internal/draw"
	"thenar/internal/makeup"
)

// drawing draws something on a page, with its upper left corner at a place in mm.
type drawing func(p *draw.Scene, x, y float64)

// part is what stays in one place on a page, such as a line, a row, a drawing.
type part struct {
	makeup.Part
	draw   drawing
	goesOn string  // heading that is repeated where it begins a page; empty: none
	endsAt float64 // width of its last line in mm; 0: not known

	headAgain *part // head of a table that is repeated where it begins a page; nil: none
}

// way is one of the ways in which a block may be set.
type way struct {
	shrunk int // in steps of 5 %
	parts  []part
}

// block is what belongs together in a handout: measured in all its ways before any
// is drawn. Heights are in tenths of a millimetre.
type block struct {
	name     string
	above    int
	withNext bool // its end stays with the beginning of the next block
	ways     []way

	// fill draws what takes the height in mm that is left below the last part.
	fill func(p *draw.Scene, x, y, room float64)
}

// one returns a block that is set in one way.
func one(name string, above int, parts []part) block {
	return block{name: name, above: above, ways: []way{{parts: parts}}}
}

// drawn returns a part of a height in tenths of a millimetre.
func drawn(height int, draws drawing) part {
	return part{Part: makeup.Part{Height: height}, draw: draws}
}

// tenths returns a height in mm in whole tenths, rounded up.
func tenths(mm float64) int { return int(math.Ceil(mm*10 - 1e-6)) }

// lineHeight returns the height of a line of letters of a size in mm.
func lineHeight(size float64) int { return int(math.Round(lineOf(size) * 10)) }

// wrapped breaks a text into lines of a width in mm. Numbers stay with their units; in
// large print fractions are spelt.
func wrapped(text string, width float64, style draw.TextStyle) []string {
	text = bound(text)
	if style.Size >= large.body {
		text = spelt(text)
	}
	return draw.Wrap(text, width, style.Size, style.Face)
}

// setLines breaks a text into lines of a width in mm, a part each.
func setLines(text string, width float64, style draw.TextStyle) []part {
	var list []part
	for _, line := range wrapped(text, width, style) {
		list = append(list, drawn(lineHeight(style.Size), func(p *draw.Scene, x, y float64) {
			p.Text(x, y+style.Size, line, style)
		}))
	}
	return list
}

// setWhole sets a text as one part.
func setWhole(text string, width float64, style draw.TextStyle) part {
	return stack(setLines(text, width, style))
}

// stack puts parts one below the other, as one part.
func stack(parts []part) part {
	out := part{}
	tops := make([]float64, len(parts))
	for i, p := range parts {
		if i > 0 {
			out.Height += p.Above
		}
		tops[i] = float64(out.Height) / 10
		out.Height += p.Height
		out.Chart, out.Words = max(out.Chart, p.Chart), max(out.Words, p.Words)
	}
	out.draw = func(page *draw.Scene, x, y float64) {
		for i, p := range parts {
			p.draw(page, x, y+tops[i])
		}
	}
	return out
}

// mostWholeLines is the most lines of a text that always stay together.
const mostWholeLines = 8

// marked lets the first of parts note a heading where it is drawn: what a document is
// called, or a part of it.
func marked(level int, text string, parts []part) []part {
	first := parts[0].draw
	parts[0].draw = func(p *draw.Scene, x, y float64) {
		p.Heading(level, y, text)
		first(p, x, y)
	}
	return parts
}

// setTitle sets what a document is called.
func (h *handout) setTitle(text string) []part {
	return marked(1, text, setLines(text, h.width(), draw.TextStyle{Size: h.title, Face: draw.Serif}))
}

// together keeps lines in one part, unless there are very many.
func together(lines []part) []part {
	if len(lines) > mostWholeLines {
		return keptLines(lines)
	}
	return []part{stack(lines)}
}

// beside puts columns of parts side by side, as one part. Their left edges are step
// mm apart.
func beside(step float64, columns ...[]part) part {
	out := part{}
	stacked := make([]part, len(columns))
	for i, column := range columns {
		stacked[i] = stack(column)
		out.Height = max(out.Height, stacked[i].Height)
		out.Chart, out.Words = max(out.Chart, stacked[i].Chart), max(out.Words, stacked[i].Words)
	}
	out.draw = func(page *draw.Scene, x, y float64) {
		for i, s := range stacked {
			s.draw(page, x+float64(i)*step, y)
		}
	}
	return out
}

// inColumns divides parts among n columns of even height, as one part.
func inColumns(parts []part, n int, step float64) part {
	first, _ := makeup.Columns(makeupParts(parts), n)
	columns := make([][]part, 0, n)
	for i, from := range first {
		to := len(parts)
		if i+1 < len(first) {
			to = first[i+1]
		}
		columns = append(columns, parts[from:to])
	}
	return beside(step, columns...)
}

// keptRows marks rows so that neither the first nor the last stands alone where it is
// but a line: two lines are no lone one.
func (l letters) keptRows(rows []part) []part {
	last := len(rows) - 1
	lone := func(p part) bool { return 2*p.Height < 3*lineHeight(l.small) }
	if last > 0 {
		rows[0].Keep = rows[0].Keep || lone(rows[0])
		rows[last-1].Keep = rows[last-1].Keep || lone(rows[last])
	}
	return rows
}

// keptLines marks lines or rows so that neither the first nor the last stands alone.
func keptLines(parts []part) []part {
	for i := range parts {
		parts[i].Keep = parts[i].Keep || len(parts) > 1 && (i == 0 || i == len(parts)-2)
	}
	return parts
}

// keptWith puts parts in front of others and keeps them together.
func keptWith(head, rest []part) []part {
	for i := range head {
		head[i].Keep = true
	}
	return append(head, rest...)
}

// goingOn names the heading that is repeated where parts begin a page.
func goingOn(parts []part, heading string) []part {
	for i := range parts {
		parts[i].goesOn = heading
	}
	return parts
}

func makeupParts(parts []part) []makeup.Part {
	list := make([]makeup.Part, len(parts))
	for i, p := range parts {
		list[i] = p.Part
	}
	return list
}

// space returns an empty part, for room below a heading.
func space(height int) part {
	return drawn(height, func(*draw.Scene, float64, float64) {})
}

// scene returns a part that shows a scene at a scale; draw is called when it is drawn.
func scene(height, scale float64, draws func() *draw.Scene, dx float64) part {
	return drawn(tenths(height*scale), func(p *draw.Scene, x, y float64) { p.Add(draws(), x+dx, y, scale) })
}
