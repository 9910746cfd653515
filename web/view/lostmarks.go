package view

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/words"
)

// lostBlock is a block of marks that lay side by side and have no place in this
// plan: what it was, and where its marks stand in the page's list.
type lostBlock struct {
	Words, At string
	N         int
}

// lostBlocks gathers lost marks by the part of the mitt and the edge that their
// columns are counted from.
func lostBlocks(lost []chart.PageLost) []lostBlock {
	var order []string
	groups := map[string][]int{}
	for i, e := range lost {
		key := string(e.Section) + " " + e.Column[:min(len(e.Column), 1)]
		if groups[key] == nil {
			order = append(order, key)
		}
		groups[key] = append(groups[key], i)
	}
	var blocks []lostBlock
	for _, key := range order {
		blocks = append(blocks, newLostBlock(lost, groups[key]))
	}
	return blocks
}

func newLostBlock(lost []chart.PageLost, at []int) lostBlock {
	var rounds []int
	var what, places []string
	for _, i := range at {
		rounds = append(rounds, lost[i].Round)
		places = append(places, fmt.Sprint(i))
		if !slices.Contains(what, lost[i].Words) {
			what = append(what, lost[i].Words)
		}
	}
	slices.Sort(rounds)
	b := lostBlock{N: len(at), At: strings.Join(places, " ")}
	b.Words = lost[at[0]].Section.Words() + ", " + words.Ranges(slices.Compact(rounds)) + ": " + strings.Join(what, ", ")
	return b
}

// many says of a block of several marks how many they are.
func (b lostBlock) many() string {
	if b.N == 1 {
		return ""
	}
	return fmt.Sprintf(" (%d marks)", b.N)
}

// saidOf says something of n marks: in the words for one, or in those for several, which have a
// 0 for their number.
func saidOf(n int, one, some string) string {
	if n == 1 {
		return one
	}
	return strings.Replace(some, "0", strconv.Itoa(n), 1)
}

// What is said over marks to be decided, of one and of several.
const (
	lostOne     = "1 mark has no place in this plan. It is kept, and comes back with a plan that has its round."
	lostSome    = "0 marks have no place in this plan. They are kept, and come back with a plan that has their rounds."
	driftedOne  = "1 painted stitch no longer lies where it did in its motif."
	driftedSome = "0 painted stitches no longer lie where they did in their motif."
)

// it names the block in what can be done with it, and them its marks.
func (b lostBlock) it() string {
	if b.N == 1 {
		return "it"
	}
	return "the block"
}

func (b lostBlock) them() string {
	if b.N == 1 {
		return "it"
	}
	return "them"
}
