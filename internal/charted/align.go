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

// block are rounds of rising numbers, by their places in a list. A section may go on with the
// numbers of the one before.
type block struct{ from, to int }

func (b block) rounds() int { return b.to - b.from }

// readRounds returns the numbered rounds of charts, in the order worked, and their
// blocks; only of a section, if one is named.
func readRounds(list []Chart, section string) (rounds []readRound, blocks []block) {
	for _, c := range list {
		for i, row := range c.Grid.Rows {
			if row.Round == 0 || row.Said != "" || section != "" && !strings.EqualFold(section, string(row.Section)) {
				continue
			}
			r := readRound{section: string(row.Section), round: row.Round, side: row.Side, line: c.Lines[i], open: row.Unread != ""}
			r.signs = make([]sign, len(row.Cells))
			for k := range row.Cells {
				r.signs[k] = cellSign(row.Cells[k])
			}
			if n := len(rounds); n == 0 || rounds[n-1].round >= r.round {
				blocks = append(blocks, block{n, n})
			}
			rounds = append(rounds, r)
			blocks[len(blocks)-1].to = len(rounds)
		}
	}
	return rounds, blocks
}

func cellSign(c chart.Cell) sign { return sign{c.Op, c.Said} }

// blocks returns the rounds of a table that have a number, and their blocks.
func (t *Table) blocks() (rounds []tableRound, blocks []block) {
	for _, r := range t.rounds {
		if r.round == 0 {
			continue
		}
		if n := len(rounds); n == 0 || rounds[n-1].round >= r.round {
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

// common returns the rounds of the same number in two blocks.
func common(of, in block, number func(t int) int, read func(r int) int) (list [][2]int) {
	for t, r := of.from, in.from; t < of.to && r < in.to; {
		switch a, b := number(t), read(r); {
		case a == b:
			list = append(list, [2]int{t, r})
			t, r = t+1, r+1
		case a < b:
			t++
		default:
			r++
		}
	}
	return list
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
		both := common(of, in, number, read)
		var short []int
		for _, p := range both {
			short = append(short, lacks(p[0], p[1]))
		}
		most, _ := mostOften(short)
		whole, part := 0, 0
		for _, p := range both {
			if whole += like(p[0], p[1], 0); most > 0 {
				part += like(p[0], p[1], most)
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
