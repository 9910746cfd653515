package charted

import (
	"cmp"
	"slices"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/stitch"
)

// readRound is a round of the text, to be compared.
type readRound struct {
	section string
	round   int
	side    stitch.Side
	line    int
	signs   []sign // as they look on the right side, from where the round begins
	open    bool   // nobody knows its stitches
}

// block are rounds that follow on each other, by their places in a list.
type block struct{ from, to int }

func (b block) rounds() int { return b.to - b.from }

// readRounds returns the numbered rounds of charts, in the order worked, and those that follow
// on each other; only of a section, if one is named.
func readRounds(list []Chart, section string) (rounds []readRound, blocks []block) {
	for _, c := range list {
		for i, row := range c.Grid.Rows {
			if row.Round == 0 || section != "" && !strings.EqualFold(section, string(row.Section)) {
				continue
			}
			r := readRound{section: string(row.Section), round: row.Round, side: row.Side, line: c.Lines[i], open: row.Unread != ""}
			r.signs = make([]sign, len(row.Cells))
			for k := range row.Cells {
				r.signs[k] = cellSign(row.Cells[k])
			}
			if n := len(rounds); n == 0 || rounds[n-1].section != r.section || rounds[n-1].round+1 != r.round {
				blocks = append(blocks, block{n, n})
			}
			rounds = append(rounds, r)
			blocks[len(blocks)-1].to = len(rounds)
		}
	}
	return rounds, blocks
}

func cellSign(c chart.Cell) sign { return sign{c.Op, c.Said} }

// blocks returns the rounds of a table that follow on each other, without those that have no
// number.
func (t *Table) blocks() (rounds []tableRound, blocks []block) {
	for _, r := range t.rounds {
		if r.round == 0 {
			continue
		}
		if n := len(rounds); n == 0 || rounds[n-1].round+1 != r.round {
			blocks = append(blocks, block{n, n})
		}
		rounds = append(rounds, r)
		blocks[len(blocks)-1].to = len(rounds)
	}
	return rounds, blocks
}

// simple returns a stitch as both a text and a chart tell it: what is said of strands and
// loops around the round makes no other stitch of it.
func (s sign) simple() sign {
	switch s.op {
	case stitch.GapK2tog:
		s.op = stitch.K2tog
	case stitch.GapSSK:
		s.op = stitch.SSK
	case stitch.CornerM1:
		s.op = stitch.M1
	case stitch.JoinHem:
		s.op = stitch.Knit
	}
	return s
}

// codes numbers stitches, so that rounds are compared quickly.
type codes map[sign]int

// of returns the numbers of signs; from the left, those of a person who knits from left to
// right.
func (c codes) of(list []sign, fromLeft bool) []int {
	out := make([]int, len(list))
	for i, s := range list {
		s = s.simple()
		at := i
		if fromLeft {
			s.op, at = s.op.FromLeft(), len(list)-1-i
		}
		n, ok := c[s]
		if !ok {
			n = len(c)
			c[s] = n
		}
		out[at] = n
	}
	return out
}

// aligned returns for each block of a table the block of the text that it is compared with,
// or -1: those that have the most rounds alike, in their order. like tells how much two rounds
// are alike if the chart leaves so many stitches out, lacks how many those are.
func aligned(table, text []block, like func(t, r, short int) int, lacks func(t, r int) int, number func(t int) int, read func(r int) int) []int {
	// best[b][s]: the most that the blocks from b on reach in those of the text from s on.
	best := make([][]int, len(table)+1)
	for b := range best {
		best[b] = make([]int, len(text)+1)
	}
	score := func(b, s int) int {
		of, in := table[b], text[s]
		first := max(of.from, of.from+read(in.from)-number(of.from))
		last := min(of.to, of.from+read(in.to-1)-number(of.from)+1)
		at := func(t int) int { return in.from + number(t) - read(in.from) }
		var short []int
		for t := first; t < last; t++ {
			short = append(short, lacks(t, at(t)))
		}
		most, _ := mostOften(short)
		whole, part := 0, 0
		for t := first; t < last; t++ {
			if whole += like(t, at(t), 0); most > 0 {
				part += like(t, at(t), most)
			}
		}
		return 1000*(1+max(whole, part)) - min(999, max(of.rounds()-in.rounds(), in.rounds()-of.rounds()))
	}
	scores := make([][]int, len(table))
	for b := len(table) - 1; b >= 0; b-- {
		scores[b] = make([]int, len(text))
		for s := len(text) - 1; s >= 0; s-- {
			scores[b][s] = score(b, s)
			best[b][s] = max(best[b][s+1], best[b+1][s], scores[b][s]+best[b+1][s+1])
		}
	}
	out := make([]int, len(table))
	for b, s := 0, 0; b < len(table); {
		switch {
		case s == len(text):
			out[b] = -1
			b++
		case best[b][s] == scores[b][s]+best[b+1][s+1]:
			out[b] = s
			b, s = b+1, s+1
		case best[b][s] == best[b+1][s]:
			out[b] = -1
			b++
		default:
			s++
		}
	}
	return out
}

// fits returns at which places of a round what a chart shows of it may begin, if the round is
// read on from its end at its beginning.
func fits(shown, round []int) (at []int) {
	n, m := len(round), len(shown)
	if m == 0 || m > n {
		return nil
	}
	back := make([]int, m) // the longest end of what is shown so far that is its beginning
	for i, k := 1, 0; i < m; i++ {
		for k > 0 && shown[i] != shown[k] {
			k = back[k-1]
		}
		if shown[i] == shown[k] {
			k++
		}
		back[i] = k
	}
	for i, k := 0, 0; i < n+m-1; i++ {
		for k > 0 && (k == m || round[i%n] != shown[k]) {
			k = back[k-1]
		}
		if round[i%n] == shown[k] {
			k++
		}
		if k == m {
			at = append(at, (i-m+1)%n)
			k = back[k-1]
		}
	}
	slices.Sort(at)
	return at
}

// mostOften returns the number that a list has most often, and how often; of several the least.
func mostOften(list []int) (n, times int) {
	of := map[int]int{}
	for _, v := range list {
		of[v]++
	}
	for v, k := range of {
		if cmp.Or(cmp.Compare(k, times), cmp.Compare(n, v)) > 0 {
			n, times = v, k
		}
	}
	return n, times
}
