package charted

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/stitch"
)

// Difference is where a chart and a text don't tell the same.
type Difference struct {
	Section string
	Line    int // of the text; 0: it isn't there
	Row     int // of the chart's table; 0: it isn't there
	Message string
}

// Comparison is what a chart's table and a text come to, round by round.
type Comparison struct {
	How         []string // which rounds were compared with which, in sentences
	Differences []Difference
	Alike       int // rounds
}

// Compare compares the table of a chart with the charts of a text, round by round; with those
// of a section only, if one is named. Colours aren't compared.
func Compare(list []Chart, t Table, section string) Comparison {
	c := comparer{codes: codes{}, width: t.width}
	var table, text []block
	c.table, table = t.blocks()
	c.text, text = readRounds(list, section)
	c.pair(table, text)
	c.choose()
	c.tell()
	return c.Comparison
}

// comparer compares.
type comparer struct {
	Comparison
	codes codes
	width int // of the table
	table []tableRound
	text  []readRound
	pairs []pair
	short int // so many stitches of each round are left out on the chart; 0: none
	left  bool
	begin []int // the column at which the rounds of each block begin, from the edge; -1: not at one
}

// pair are the same round in both.
type pair struct {
	t, r, block  int
	shown, round []int
	from         []int // the columns of what is shown
	at           []int // where in the round what is shown may begin
}

// pair finds the rounds of the text that are those of the table.
func (c *comparer) pair(table, text []block) {
	shown, round := make([]map[sign]int, len(c.table)), make([]map[sign]int, len(c.text))
	for i := range c.table {
		shown[i] = kinds(c.table[i].signs)
	}
	for i := range c.text {
		round[i] = kinds(c.text[i].signs)
	}
	held := sign{op: stitch.Hold}
	lacks := func(t, r int) int {
		n := len(c.text[r].signs) - len(c.table[t].signs)
		if shown[t][held] == 0 { // what only waits may be left out
			n -= round[r][held]
		}
		return n
	}
	// like tells how much rounds are alike if the chart leaves out so many stitches of each.
	// Those of one stitch only say less than others.
	like := func(t, r, short int) int {
		weight := 5
		if len(shown[t]) < 2 {
			weight = 1
		}
		switch among := within(shown[t], round[r]); {
		case lacks(t, r) != short:
			return 0
		case among && short == 0:
			return 4 * weight
		case among:
			return 3 * weight
		case short > 0:
			return 0
		}
		return 1
	}
	at := aligned(table, text, like, lacks, c.number, c.told)
	for b, s := range at {
		of := table[b]
		if s < 0 {
			c.How = append(c.How, fmt.Sprintf("The chart’s %s go with none of the text.", c.span(of)))
			c.differ(Difference{Row: c.table[of.from].line, Message: fmt.Sprintf("Only the chart has %s.", c.span(of))})
			continue
		}
		c.inBlock(b, of, text[s])
	}
}

// kinds counts the stitches of a round by what they are, whichever way they lean: from which
// edge the chart is read isn't known yet.
func kinds(list []sign) map[sign]int {
	of := map[sign]int{}
	for _, s := range list {
		s = s.simple()
		if other := s.op.FromLeft(); other != s.op {
			s.op = min(s.op, other)
		}
		of[s]++
	}
	return of
}

// within reports whether a round has all the stitches of another.
func within(some, all map[sign]int) bool {
	for kind, n := range some {
		if all[kind] < n {
			return false
		}
	}
	return true
}

// span is "rounds 1 to 12" of a table's block.
func (c *comparer) span(b block) string { return spanOf(c.table[b.from].round, c.table[b.to-1].round) }

func spanOf(from, to int) string {
	if from == to {
		return fmt.Sprintf("round %d", from)
	}
	return fmt.Sprintf("rounds %d to %d", from, to)
}

func (c *comparer) number(t int) int { return c.table[t].round }

func (c *comparer) told(r int) int { return c.text[r].round }

// inBlock pairs the rounds of two blocks by their numbers.
func (c *comparer) inBlock(b int, of, in block) {
	both := common(of, in, c.number, c.told)
	inChart, inText := map[int]bool{}, map[int]bool{}
	var sections []string
	for _, p := range both {
		inChart[p[0]], inText[p[1]] = true, true
		if name := "“" + c.text[p[1]].section + "”"; !slices.Contains(sections, name) {
			sections = append(sections, name)
		}
	}
	c.How = append(c.How, fmt.Sprintf("The chart’s %s: compared with %s in the text.", c.span(of), strings.Join(sections, ", ")))
	for _, p := range both {
		c.inBoth(b, p[0], p[1])
	}
	for _, alone := range runsWithout(of, inChart) {
		c.differ(Difference{Section: c.text[in.to-1].section, Row: c.table[alone.from].line, Message: fmt.Sprintf("Only the chart has %s.", c.span(alone))})
	}
	for _, alone := range runsWithout(in, inText) {
		if c.told(alone.to-1) > c.number(of.from) { // a chart may begin further up
			c.differ(Difference{Section: c.text[alone.from].section, Line: c.text[alone.from].line, Message: fmt.Sprintf("Only the text has %s.", spanOf(c.told(alone.from), c.told(alone.to-1)))})
		}
	}
}

// runsWithout returns the rounds of a block that are not in both, those beside each other
// together.
func runsWithout(b block, both map[int]bool) (list []block) {
	for i := b.from; i < b.to; i++ {
		switch n := len(list); {
		case both[i]:
		case n > 0 && list[n-1].to == i:
			list[n-1].to++
		default:
			list = append(list, block{i, i + 1})
		}
	}
	return list
}

// inBoth adds a round that is in both.
func (c *comparer) inBoth(b, t, r int) {
	name := fmt.Sprintf("Round %d of “%s”", c.told(r), c.text[r].section)
	if c.table[t].none || c.text[r].open {
		c.How = append(c.How, name+" isn’t compared: nobody knows its stitches.")
		return
	}
	if leavesOut(c.table[t].signs, c.text[r].signs) {
		c.text[r].signs = slices.DeleteFunc(c.text[r].signs, isHeld)
		c.How = append(c.How, name+": what is put aside isn’t on the chart, and not compared.")
	}
	c.pairs = append(c.pairs, pair{t: t, r: r, block: b})
}

func (c *comparer) differ(d Difference) { c.Differences = append(c.Differences, d) }

func isHeld(s sign) bool { return s.op == stitch.Hold }

// leavesOut reports whether a chart doesn't show what a round puts aside.
func leavesOut(shown, round []sign) bool {
	return slices.ContainsFunc(round, isHeld) && !slices.ContainsFunc(shown, isHeld)
}
