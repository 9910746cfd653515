package picture

import (
	"fmt"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/fit"
	"thenar/internal/stitch"
)

// fitKey is one entry of the key.
type fitKey struct {
	text string
	mark func(x, y, w, h float64) // draws its mark in a rectangle
}

// keys returns the entries of the key: lines, then bands.
func (c *fitCurve) keys() (lines, bands []fitKey) {
	level := func(style draw.Style) func(x, y, w, h float64) {
		return func(x, y, w, h float64) { c.s.Line(x, y+h/2, x+w, y+h/2, style) }
	}
	lines = append(lines, fitKey{"fabric", level(c.fabricStyle())})
	if c.o.Half > 0 {
		lines = append(lines, fitKey{"its 95\u00a0% interval", func(x, y, w, h float64) {
			c.s.Rect(x, y, w, h, c.intervalStyle())
		}})
	}
	lines = append(lines, fitKey{"hand", level(c.bodyStyle())})
	if len(c.o.Other) > 0 {
		lines = append(lines, fitKey{"second thought", level(c.otherStyle())})
	}
	for b := fit.TooLoose; b <= fit.TooTight; b++ {
		bands = append(bands, fitKey{b.Words(), func(x, y, w, h float64) { c.hatch(b, x, y, w, h) }})
	}
	return lines, bands
}

// drawKey draws the key below the axis, a line for the curves and one for the
// bands.
func (c *fitCurve) drawKey() {
	const mark, gap = 1.7, 0.4
	l := c.letter
	lines, bands := c.keys()
	y := c.foot + 3*l
	for _, row := range [][]fitKey{lines, bands} {
		x := 0.8 * l
		for _, k := range row {
			k.mark(x, y-0.75*l, mark*l, 0.9*l)
			c.write(x+(mark+gap)*l, y, k.text, draw.TextStyle{Class: "soft", Size: c.small()})
			x += (mark+gap+0.9)*l + draw.Measure(k.text, c.small(), draw.Regular)
		}
		y += 1.5 * l
	}
}

// label describes the curve in words: for each section its girths and its bands.
func (c *fitCurve) label(rows []fit.Row) string {
	list := []string{fmt.Sprintf("Fit curve of the %s hand: girth of fabric and hand round by round, upwards from the cast-on.", strings.ToLower(c.o.hand().side()))}
	for _, s := range sections(rows) {
		body := "hand"
		if s[0].Section.Over() == stitch.OverDigit {
			body = s[0].Section.Words()
		}
		text := fmt.Sprintf("%s, %s: fabric %s, %s %s; ", s[0].Section.Words(), roundsWords(len(s), s[0].Side.Noun()),
			c.girthWords(s, func(r fit.Row) float64 { return r.Fabric }), body, c.girthWords(s, func(r fit.Row) float64 { return r.Body }))
		runs := bandRuns(s)
		for i, run := range runs {
			if i > 0 {
				text += ", "
			}
			text += run[0].Band.Words()
			if len(runs) > 1 {
				text += fmt.Sprintf(" from %s %d", run[0].Side.Noun(), run[0].Round)
			}
		}
		list = append(list, strings.ToUpper(text[:1])+text[1:]+".")
	}
	return strings.Join(list, " ")
}

// girthWords says how a girth goes from a section's first round to its last.
func (c *fitCurve) girthWords(s []fit.Row, of func(fit.Row) float64) string {
	first, last := c.girth(of(s[0])), c.girth(of(s[len(s)-1]))
	if first == last {
		return first
	}
	return first + " to " + last
}
