package paper

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/words"
)

// handChart is a chart of sizes, of one hand or of both.
type handChart struct {
	chart.Sizes
	hand string // "right" or "left"; empty: either, or that of the text
}

// handCharts returns the charts of all sizes, of either hand if the text is for both: those
// in which the hands are alike once; and whether all that is shown is either hand's. A first round that is no part of a box is told in words.
func (p patternPages) handCharts() (list []handChart, alike bool) {
	own := make([]chart.Source, len(p.Sizes))
	twin := make([]chart.Source, len(p.Sizes))
	for i, s := range p.Sizes {
		own[i] = s.Out.Charts
		if p.o.Grey {
			own[i].Palette = picture.Greys(own[i].Palette, s.Out.Grid(chart.Options{View: chart.TubeView}).YarnsUsed())
		}
		twin[i] = own[i]
		twin[i].Mirrored = !own[i].Mirrored
		twin[i] = twin[i].Prepare()
	}
	others := chart.SizesCharts(twin)
	alike = true
	for _, s := range chart.SizesCharts(own) {
		at := slices.IndexFunc(others, func(o chart.Sizes) bool { return s.Alike(&o) })
		hand := ""
		switch {
		case at >= 0:
			others = slices.Delete(others, at, at+1)
		case p.forBoth():
			hand = "right"
		default:
			alike = false
		}
		list = append(list, handChart{s, hand})
	}
	for _, s := range others { // after that of the same part
		if !p.forBoth() {
			break
		}
		at := len(list)
		for i := range list {
			if list[i].Part == s.Part && list[i].Block == s.Block {
				at = i + 1
			}
		}
		list = slices.Insert(list, at, handChart{s, "left"})
	}
	return slices.DeleteFunc(list, func(c handChart) bool { return c.Alone }), alike
}

// forBoth reports whether the text tells each hand by itself where they differ.
func (p patternPages) forBoth() bool {
	for _, passage := range p.Text.Passages {
		if passage.Hand != "" {
			return true
		}
	}
	return false
}

// charts sets the charts of all sizes.
func (p patternPages) charts() []block {
	list, alike := p.handCharts()
	c := sizesCharts{p, list, alike}
	if len(c.list) == 0 {
		return nil
	}
	return []block{p.headed("Charts", keptWith(append(c.about(), c.key()...), c.rows()))}
}

// sizesCharts sets the charts.
type sizesCharts struct {
	patternPages
	list  []handChart
	alike bool // each is of either hand, or names its own
}

// look is how the charts are drawn in cells of a width.
func (c *sizesCharts) look(cell float64) picture.SizesLook {
	return picture.SizesLook{
		Look:   picture.Look{Cell: cell, Gauge: c.middle().Plan.Gauge, Symbols: c.Symbols, Grey: c.o.Grey, Numbers: c.small},
		Letter: c.small, Names: c.Text.Sizes,
	}
}

// about sets how the charts are read.
func (c *sizesCharts) about() []part {
	return []part{stack(append(setLines(c.aboutWords(), c.width(), draw.TextStyle{Size: c.small}), space(12)))}
}

// aboutWords says how the charts are read.
func (c *sizesCharts) aboutWords() string {
	text := picture.Reading(c.list[0].Grid)
	text = strings.ToUpper(text[:1]) + text[1:] + "."
	switch handed := slices.ContainsFunc(c.list, func(of handChart) bool { return of.hand != "" }); {
	case handed:
		text += " Charts that name no hand are for both."
	case c.alike:
		text += " Both hands are worked by these charts."
	}
	text += c.together()
	if slices.ContainsFunc(c.list, func(of handChart) bool { return of.Folded }) {
		text += " A box is worked as often as the number above it says, and what lies beside it once."
	}
	return text
}

// together says how the charts of a gusset and of what lies beside it are read in one round.
func (c *sizesCharts) together() string {
	var block, rest []string
	for i := range c.list {
		switch of := &c.list[i]; {
		case !of.Part.Marked():
		case of.Block:
			block = append(block, chartLetter(i))
		case of.Inside():
			return ""
		default:
			rest = append(rest, chartLetter(i))
		}
	}
	if len(block) == 0 || len(rest) == 0 {
		return ""
	}
	return fmt.Sprintf(" In each %s work the gusset first: chart %s. Then work the hand beside it: chart %s.", c.list[0].Grid.Noun(), strings.Join(block, " or "), strings.Join(rest, " or "))
}

// chartLetter names a chart.
func chartLetter(i int) string {
	const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ"
	if i >= len(letters) {
		return fmt.Sprintf("%c%d", letters[i%len(letters)], 1+i/len(letters))
	}
	return letters[i : i+1]
}

// key sets the key of the charts.
func (c *sizesCharts) key() []part {
	grids := make([]chart.Grid, len(c.list))
	for i := range c.list {
		grids[i] = c.list[i].Grid
	}
	scale := c.small / picture.KeyLetter
	if c.o.Large {
		scale = c.keyScale()
	}
	ways := c.keyWays(picture.NewKey(grids, c.look(1).Look), scale)
	return append(ways[len(ways)-1], space(20))
}

// named says what a chart is of.
func (c *sizesCharts) named(of *handChart) string {
	text := of.Part.Words()
	if of.Part.Marked() && !of.Block {
		text = "hand beside the " + text
	}
	if of.hand != "" {
		text += ", " + of.hand + " hand,"
	}
	if len(of.Of) == len(c.Sizes) {
		return strings.TrimSuffix(text, ",")
	}
	names := make([]string, len(of.Of))
	for k, size := range of.Of {
		names[k] = c.Text.Sizes[size]
	}
	what, joint := "size", " of "
	if len(names) > 1 {
		what = "sizes"
	}
	if !of.Block {
		joint = ", "
	}
	return strings.TrimSuffix(text, ",") + joint + what + " " + words.Listed(names)
}

// under says how sizes find their own in a chart.
func (c *sizesCharts) under(of *handChart) (list []string) {
	noun := of.Grid.Noun()
	if of.Block && len(of.Of) > 1 {
		list = append(list, "Within your line is your gusset: it stops growing where the line goes straight up.")
		for _, r := range of.Rows {
			if r.Others() {
				list = append(list, "Increases marked for other sizes only are knit in yours.")
				break
			}
		}
	}
	first := make([]int, len(of.Of))
	moved := false
	for i, begin := range of.Begin {
		first[i] = begin + 1
		moved = moved || first[i] != of.First[i]
	}
	if moved {
		list = append(list, fmt.Sprintf("%s %s of the %s is %s %s of the chart.", strings.ToUpper(noun[:1])+noun[1:], bySizes(of.First), of.Part.Words(), noun, bySizes(first)))
	}
	if of.Inside() {
		list = append(list, fmt.Sprintf("The gusset lies after stitch %s.", bySizes(of.Before)))
	}
	return list
}

// bySizes writes numbers as they stand for sizes: "5 (6, 7)", or "5" if all are alike.
func bySizes(list []int) string {
	if len(slices.Compact(slices.Clone(list))) == 1 {
		return fmt.Sprint(list[0])
	}
	others := make([]string, len(list)-1)
	for i, n := range list[1:] {
		others[i] = fmt.Sprint(n)
	}
	return fmt.Sprintf("%d (%s)", list[0], strings.Join(others, ", "))
}
