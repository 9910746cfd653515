package paper

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/pattern"
	"thenar/internal/picture"
)

// PatternSheet is the content of a pattern that goes out.
type PatternSheet struct {
	Name     string
	About    string // a line below the name: "Fingerless mitts in six sizes"
	Designer string // may be empty
	Year     int    // of the copyright line; 0: none
	Text     *pattern.Text
	Drawn    []picture.NestedSize // over each other, to scale
	Left     bool                 // of the left hand
}

// pattern lays out a pattern.
type patternPages struct {
	*handout
	*PatternSheet
}

// Pattern lays out a pattern for all sizes: its name, the sizes, what is needed, the
// abbreviations, and the words from the cuff to the thumb, in the order in which they are read.
func Pattern(s PatternSheet, o Options) []*draw.Scene {
	p := patternPages{bare(o, s.footName()), &s}
	list := []block{p.titleBlock(), p.sizes(), p.drawn(), p.needs(), p.signsBlock()}
	for _, passage := range s.Text.Passages {
		list = append(list, p.passage(passage))
	}
	list = append(list, one("caution", aboveHeading, []part{setWhole(caution, p.width(), draw.TextStyle{Size: p.small})}))
	if s.Year > 0 && s.Designer != "" {
		list = append(list, p.copyright())
	}
	p.makeUp(list)
	p.foot()
	return finish(p.pages, o.Grey)
}

// footName is what stands in the foot of every page: the name, and whose it is.
func (s *PatternSheet) footName() string {
	if s.Designer == "" {
		return s.Name
	}
	return s.Name + " · " + s.Designer
}

// titleBlock sets the name, what it is, and whose.
func (p patternPages) titleBlock() block {
	list := p.setTitle(p.Name)
	for _, text := range []string{p.About, p.Designer} {
		if text != "" {
			list = append(list, setLines(text, p.width(), draw.TextStyle{Size: p.body})...)
		}
	}
	b := one("title", 0, keptLines(list))
	b.withNext = true
	return b
}

// sizes sets the measurements of every size, with how the sizes stand in the text.
func (p patternPages) sizes() block {
	columns := []column{{"size", 3, false, true}}
	for _, name := range p.Text.Sizes {
		columns = append(columns, column{name, 1, true, true})
	}
	rows := make([]row, len(p.Text.Head.Sizes))
	for i, r := range p.Text.Head.Sizes {
		rows[i] = row{cells: append([]string{r.Name}, r.Values...)}
	}
	const head = "Sizes"
	t := table{p.handout, columns, nil}
	return one(head, aboveHeading, keptWith(p.headingPart(head), t.rows(rows, head)))
}

// highestNested is the height of the sizes drawn over each other, in mm.
const highestNested = 75.0

// drawn sets the sizes over each other, to scale, with what the picture says.
func (p patternPages) drawn() block {
	s := picture.Nested(p.Drawn, p.Left, p.small*2)
	scale := min(1, highestNested/s.Height, 0.6*p.width()/s.Width)
	s = picture.Nested(p.Drawn, p.Left, p.small/scale)
	scale = min(scale, highestNested/s.Height)
	about := setLines(fmt.Sprintf("All sizes from one cast-on, at 1 : %.1f. The middle one is drawn thick.", 1/scale), p.width()-s.Width*scale-columnGap, draw.TextStyle{Size: p.small})
	return one("drawn", aboveHeading, []part{beside(s.Width*scale+columnGap, []part{scene(s.Height, scale, func() *draw.Scene { return s }, 0)}, about)})
}

// needs sets what to have at hand.
func (p patternPages) needs() block {
	var list [][2]string
	for _, l := range p.Text.Head.Needs.Lines {
		name, text, _ := strings.Cut(p.Text.Told(p.Text.Head.Needs, l), ": ")
		list = append(list, [2]string{name, text})
	}
	return p.headed(p.Text.Head.Needs.Title, keptLines(p.pairs(list, p.width())))
}

// signsBlock sets the abbreviations, in two columns where there is room.
func (p patternPages) signsBlock() block {
	const head = "Abbreviations"
	var list [][2]string
	for _, s := range p.Text.Head.Signs {
		list = append(list, [2]string{s.Sign, s.Line})
	}
	b := p.headed(head, keptLines(p.pairs(list, p.width())))
	if half := p.columnWidth(2); p.roomFor(half) {
		two := inColumns(p.pairs(list, half), 2, half+columnGap)
		b.ways = append([]way{{parts: keptWith(p.headingPart(head), []part{two})}}, b.ways...)
	}
	return b
}

// passage sets the words of a section.
func (p patternPages) passage(of pattern.Passage) block {
	title := p.Text.Titled(of)
	var list []part
	for _, l := range of.Lines {
		switch {
		case l.Table != nil:
			list = append(list, p.changes(l.Table, title)...)
		case l.Under:
			list = append(list, p.indented(p.Text.Told(of, l))...)
		default:
			list = append(list, p.line(of, l)...)
		}
	}
	return p.headed(title, list)
}

// line sets a line. One that names the round whose ways stand below it stays with them.
func (p patternPages) line(of pattern.Passage, l pattern.Line) []part {
	parts := keptLines(setLines(p.Text.Told(of, l), p.width(), draw.TextStyle{Size: p.body}))
	last := &parts[len(parts)-1]
	*last = stack([]part{*last, space(8)})
	last.Keep = l.Label != nil && l.Body == nil
	return parts
}

// underBy is how far what is told for single sizes is set in, in mm.
const underBy = 7.0

// indented sets what is told for single sizes below the round that it belongs to.
func (p patternPages) indented(text string) []part {
	var list []part
	for _, line := range keptLines(setLines(text, p.width()-underBy, draw.TextStyle{Size: p.body})) {
		own := line
		list = append(list, part{Part: own.Part, draw: func(s *draw.Scene, x, y float64) { own.draw(s, x+underBy, y) }})
	}
	return append(list, space(4))
}

// changes sets the rounds that change the count, with the counts of each size.
func (p patternPages) changes(of *pattern.Table, heading string) []part {
	columns := []column{{of.What, 1.5, false, true}}
	for _, c := range of.Columns {
		names := make([]string, len(c.For))
		for i, s := range c.For {
			names[i] = p.Text.Sizes[s]
		}
		columns = append(columns, column{c.Title + " " + spanned(names, p.Text.Sizes), 1, true, c.Title == "round"})
	}
	rows := make([]row, len(of.First))
	for i, first := range of.First {
		rows[i].cells = []string{first}
		for _, c := range of.Columns {
			rows[i].cells = append(rows[i].cells, c.Cells[i])
		}
	}
	t := table{p.handout, columns, nil}
	list := append(t.rows(rows, heading), space(12))
	for i := range list[:len(list)-1] {
		list[i].Keep = list[i].Keep || len(rows) <= mostWholeRows
	}
	return list
}

// mostWholeRows is the most rows of a table that stay together on a page.
const mostWholeRows = 16

// spanned names neighbouring sizes by the first and the last of them.
func spanned(names, all []string) string {
	first, last := slices.Index(all, names[0]), slices.Index(all, names[len(names)-1])
	if len(names) > 2 && last-first+1 == len(names) {
		return names[0] + "–" + names[len(names)-1]
	}
	return strings.Join(names, ", ")
}

// copyright sets whose the pattern is, after all.
func (p patternPages) copyright() block {
	text := fmt.Sprintf("© %d %s", p.Year, p.Designer)
	return one("copyright", 15, setLines(text, p.width(), draw.TextStyle{Size: p.small}))
}
