package words

import (
	"regexp"
	"strconv"
)

// Row is a line of instructions as they are printed in a table: beside the numbers of
// its rounds, with the count after them in columns of its own. Rounds that keep the
// count of the row above don't tell it again.
type Row struct {
	Step
	Bare        string // the text without its count
	All, Inside int    // the stitches after its rounds, and those in the gusset; 0: not told
}

// counts finds the count at the end of a round: "(46)", "(46, of which 5 in the
// gusset)".
var counts = regexp.MustCompile(` \((\d+)(?:, of which (\d+) in the [a-z ]+)?\)\.$`)

// Rows returns the instructions of a section as they stand in a table.
func (p Passage) Rows() []Row {
	rows := make([]Row, len(p.Steps))
	var above [2]int
	for i, s := range p.Steps {
		rows[i] = Row{Step: s, Bare: s.Text}
		found := counts.FindStringSubmatchIndex(s.Text)
		if s.From == 0 || found == nil {
			continue
		}
		rows[i].Bare = sided(s, s.Text[:found[0]])
		now := [2]int{number(s.Text, found[2], found[3]), number(s.Text, found[4], found[5])}
		if now != above {
			rows[i].All, rows[i].Inside = now[0], now[1]
		}
		above = now
	}
	return rows
}

// number returns the number that stands in a text from one place to another; 0 if
// from is −1.
func number(text string, from, to int) int {
	if from < 0 {
		return 0
	}
	n, _ := strconv.Atoi(text[from:to]) // digits, as found
	return n
}
