package view

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// Found is what was found at one place, in one size or in several: what differs between
// these is told as in a pattern, "40 (44, 48) stitches".
type Found struct {
	No     int // of its first finding, from 1
	Line   int
	Place  string // "Line 12 · size 48 · Thumb gusset, round 4"
	Told   string
	sizes  []string
	places []string
	texts  []string
}

var figures = regexp.MustCompile(`\d+`)

// sameButFigures reports whether texts differ in their numbers only.
func sameButFigures(a, b string) bool {
	return figures.ReplaceAllString(a, "#") == figures.ReplaceAllString(b, "#")
}

// inSizes writes texts that differ in their numbers as one.
func inSizes(texts []string) string {
	at := -1
	numbers := make([][]string, len(texts))
	for i, text := range texts {
		numbers[i] = figures.FindAllString(text, -1)
	}
	return figures.ReplaceAllStringFunc(texts[0], func(first string) string {
		at++
		rest := make([]string, 0, len(texts)-1)
		for _, of := range numbers[1:] {
			rest = append(rest, of[at])
		}
		if !slices.ContainsFunc(rest, func(n string) bool { return n != first }) {
			return first
		}
		return first + " (" + strings.Join(rest, ", ") + ")"
	})
}

// Found lists what was found, in the order of the text.
func (c *Check) Found() (list []Found) {
	findings := c.Checked.Report.Findings
	for i := range findings {
		f := &findings[i]
		told, place := f.Told(), f.Where()
		if last := len(list) - 1; last >= 0 && len(f.Sizes) > 0 {
			g := &list[last]
			if first := &findings[g.No-1]; first.At == f.At && first.Kind == f.Kind && len(g.sizes) == len(g.texts) && len(f.Sizes) == 1 &&
				!slices.Contains(g.sizes, f.Sizes[0]) && sameButFigures(g.texts[0], told) && sameButFigures(g.places[0], place) {
				g.sizes, g.texts, g.places = append(g.sizes, f.Sizes[0]), append(g.texts, told), append(g.places, place)
				continue
			}
		}
		list = append(list, Found{No: i + 1, Line: f.At.Line, sizes: slices.Clone(f.Sizes), texts: []string{told}, places: []string{place}})
	}
	for i := range list {
		g := &list[i]
		g.Told = inSizes(g.texts)
		parts := []string{fmt.Sprintf("Line %d", g.Line)}
		switch n := len(g.sizes); {
		case n == 1:
			parts = append(parts, "size "+g.sizes[0])
		case n > 1 && (n < len(c.Checked.Report.Sizes) || len(g.texts) > 1):
			parts = append(parts, "sizes "+strings.Join(g.sizes, ", "))
		}
		if where := inSizes(g.places); where != "text" {
			parts = append(parts, where)
		}
		g.Place = strings.Join(parts, " · ")
	}
	return list
}

// manyFound says how much was found.
func manyFound(n int) string {
	if n == 1 {
		return "One thing to look at"
	}
	return fmt.Sprintf("%d things to look at", n)
}
