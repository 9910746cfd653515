package paper

import (
	"fmt"
	"strings"

	"thenar/internal/draw"
)

// headHeight is the room that what stands above every page takes, in mm.
func (p patternPages) headHeight() float64 { return lineOf(p.small) + 4 }

// headAndFoot sets above every page but the first how the sizes stand in the text, and
// below it whose it is, which page of how many, and a ruler of 50 mm.
func (p patternPages) headAndFoot() {
	for i, page := range p.flow.pages {
		page.Label = fmt.Sprintf("%s, page %d of %d", p.name, i+1, len(p.flow.pages))
		if i == 0 {
			page.Label += ": " + p.coverLabel()
			continue
		}
		if has := headings([]*draw.Scene{page}); len(has) > 0 {
			page.Label += ": " + strings.Join(has, ", ")
		}
		p.runningHead(page)
		p.patternFoot(page, i+1)
	}
}

// runningHead sets how the sizes stand in the text, and what to do with them.
func (p patternPages) runningHead(page *draw.Scene) {
	size := draw.TextStyle{Size: p.small}
	heavy := draw.TextStyle{Size: p.small, Face: draw.Semibold}
	y, right := margin+p.small, p.size.Width-margin
	x := margin
	between := draw.Measure(" ", p.small, draw.Regular)
	put := func(text string, style draw.TextStyle) {
		page.Text(x, y, text, style)
		x += draw.Measure(text, style.Size, style.Face) + between
	}
	put("size", size)
	put(p.Text.Sizes[0], heavy)
	if others := p.Text.Sizes[1:]; len(others) > 0 {
		put(shorten("("+strings.Join(others, ", ")+")", right-x, p.small), size)
		const mark = "mark yours all through before you begin"
		if size.Anchor = draw.End; x+draw.Measure(mark, p.small, draw.Regular)+5 < right {
			page.Text(right, y, mark, size)
		}
	}
	y += 0.3*p.small + 0.9
	page.Line(margin, y, right, y, draw.Style{Stroke: ink, Width: 0.4})
}

// patternFoot sets whose the pattern is and the number of a page, and the ruler at the right.
func (p patternPages) patternFoot(page *draw.Scene, n int) {
	const long = 50.0
	size := draw.TextStyle{Size: p.footLetter()}
	y, right := p.size.Height-margin, p.size.Width-margin
	number := fmt.Sprintf("%d of %d", n, len(p.flow.pages))
	wide := func(text string) float64 { return draw.Measure(text, size.Size, draw.Regular) }
	unit := "50 mm"
	room := right - margin - long - wide(" · "+number) - 6
	if room-wide(unit)-3 < wide(p.name) {
		unit = ""
	} else {
		room -= wide(unit) + 3
	}
	page.Text(margin, y, shorten(p.name, room, size.Size)+" · "+number, size)
	var ticks draw.Pen
	ticks.Move(right-long, y).Line(right, y)
	for t := 0.0; t <= long; t += 5 {
		high := 1.2
		if int(t)%10 == 0 {
			high = 2
		}
		ticks.Move(right-long+t, y).Line(right-long+t, y-high)
	}
	page.PathWith(ticks.String(), draw.Style{Stroke: ink, Width: 0.3}, draw.Attr{Name: "data-ruler", Value: "50"})
	if unit != "" {
		size.Anchor = draw.End
		page.Text(right-long-3, y, unit, size)
	}
}

// contents is the list of what a pattern has, whose numbers of pages are known when all
// pages are made.
type contents struct {
	names []string
	at    []func(number string) // puts the number of a page beside a name
}

// fill puts the numbers of the pages; the first of them is the page of that number.
func (c *contents) fill(h *handout, pages []*draw.Scene, first int) {
	k := 0
	for i, page := range pages {
		for _, head := range page.Headings {
			if head.Level == 2 && k < len(c.at) {
				c.at[k](fmt.Sprint(i + first))
				k++
			}
		}
	}
}

// contentsBlock sets the list of contents in two columns, if there is one.
func (p patternPages) contentsBlock() []block {
	if p.listed == nil {
		return nil
	}
	p.listed.at = nil
	rows := make([]part, len(p.listed.names))
	n := 2
	if p.o.Large {
		n = 1
	}
	wide := p.columnWidth(n)
	style := draw.TextStyle{Size: p.body}
	for i, name := range p.listed.names {
		rows[i] = drawn(lineHeight(p.body)+4, func(s *draw.Scene, x, y float64) {
			s.Text(x, y+p.body, shorten(name, wide-12, p.body), style)
			s.Line(x, y+lineOf(p.body)+0.1, x+wide, y+lineOf(p.body)+0.1, draw.Style{Stroke: lineGrey, Width: 0.2})
			p.listed.at = append(p.listed.at, func(number string) {
				s.Text(x+wide, y+p.body, number, draw.TextStyle{Size: p.body, Anchor: draw.End, Face: draw.Semibold})
			})
		})
	}
	list := rows
	if n > 1 {
		list = []part{inColumns(rows, n, wide+columnGap)}
	}
	return []block{one("contents", 0, list)}
}

// lineGrey is the grey of thin lines between rows.
const lineGrey = "#606060"
