package paper

import (
	"strings"
	"unicode/utf8"

	"thenar/internal/draw"
	"thenar/internal/pattern"
)

// passage sets the words of a section.
func (p patternPages) passage(of pattern.Passage) block {
	title := p.Text.Titled(of)
	var list []part
	for _, l := range of.Lines {
		if l.Table != nil {
			list = append(list, p.changes(l.Table, title)...)
			continue
		}
		list = append(list, p.line(of, l)...)
	}
	return p.headed(title, list)
}

// underBy is how far what is told for single sizes is set in, in mm.
const underBy = 7.0

// line sets a line: its rounds and sizes heavy before it, and its count heavy behind it.
// What is told for single sizes is set in below the round that it belongs to, and one that
// names the round whose ways stand below it stays with them.
func (p patternPages) line(of pattern.Passage, l pattern.Line) []part {
	by, gap := 0.0, 10
	if l.Under {
		by, gap = underBy, 4
	}
	text := p.Text.Told(of, l)
	parts := keptLines(p.setHeavy(text, p.width()-by, by, p.heavy(text, l)))
	last := &parts[len(parts)-1]
	*last = stack([]part{*last, space(gap)})
	last.Keep = l.Label != nil && l.Body == nil
	return parts
}

// heavy returns which letters of a line stand heavy, by their places.
func (p patternPages) heavy(text string, l pattern.Line) func(at int) bool {
	var from, to [2]int
	mark := func(i, at, long int) {
		from[i] = utf8.RuneCountInString(text[:at])
		to[i] = from[i] + utf8.RuneCountInString(text[at:at+long])
	}
	before := 0
	if named := p.Text.Named(l.For); strings.HasPrefix(text, named) {
		if colon := strings.Index(text, ": "); colon > 0 {
			before = colon + 1
		}
	}
	if label := pattern.Plain(l.Label); label != "" {
		if at := strings.Index(text, label); at >= 0 {
			before = at + len(label)
			if strings.HasPrefix(text[before:], ":") {
				before++
			}
		}
	}
	mark(0, 0, before)
	if count := pattern.Plain(l.Count); count != "" {
		if at := strings.LastIndex(text, count); at >= before {
			mark(1, at, len(count))
		}
	}
	return func(at int) bool { return at >= from[0] && at < to[0] || at >= from[1] && at < to[1] }
}

// setHeavy breaks a text into lines of a width, a part each, set in by some mm. A word stands
// heavy if its first letter does. In large print, whose fractions are spelt, nothing does.
func (p patternPages) setHeavy(text string, width, by float64, heavy func(at int) bool) []part {
	style := draw.TextStyle{Size: p.body}
	if p.o.Large {
		heavy = func(int) bool { return false }
		text = spelt(text)
	}
	type word struct {
		text string
		face draw.Face
	}
	var lines [][]word
	x, at := width+1, 0
	space := draw.Measure(" ", style.Size, draw.Regular)
	for _, w := range strings.Split(bound(text), " ") {
		face := draw.Regular
		if last := at + utf8.RuneCountInString(w) - 1; heavy(at) || strings.Contains(w, draw.Hard) && heavy(last) { // "to 36" is one
			face = draw.Semibold
		}
		at += utf8.RuneCountInString(w) + 1
		wide := draw.Measure(strings.ReplaceAll(w, draw.Hard, " "), style.Size, face)
		if wide > width { // no line has room for it
			return indented(setLines(text, width, style), by)
		}
		if x+space+wide > width {
			lines, x = append(lines, nil), -space
		}
		x += space + wide
		last := &lines[len(lines)-1]
		if n := len(*last); n > 0 && (*last)[n-1].face == face {
			(*last)[n-1].text += " " + w
			continue
		}
		*last = append(*last, word{w, face})
	}
	list := make([]part, len(lines))
	for i, line := range lines {
		list[i] = drawn(lineHeight(style.Size), func(s *draw.Scene, x, y float64) {
			for _, w := range line {
				s.Text(x, y+style.Size, w.text, draw.TextStyle{Size: style.Size, Face: w.face})
				x += draw.Measure(strings.ReplaceAll(w.text, draw.Hard, " "), style.Size, w.face) + space
			}
		})
	}
	return indented(list, by)
}

// indented sets parts in by some mm.
func indented(list []part, by float64) []part {
	for i := range list {
		own := list[i].draw
		list[i].draw = func(s *draw.Scene, x, y float64) { own(s, x+by, y) }
	}
	return list
}
