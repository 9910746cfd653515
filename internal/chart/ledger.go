package chart

import (
	"fmt"

	"thenar/internal/stitch"
)

// lint sets the faults of rounds that take another number of loops than the
// round below leaves.
func (g *Grid) lint() {
	left := g.Start
	for i := range g.Rows {
		row := &g.Rows[i]
		if row.In != left {
			row.Fault = g.faultWords(i, left, row.In)
		}
		left = row.Out
	}
	if left != g.End {
		last := len(g.Rows) - 1
		g.EndFault = fmt.Sprintf("%s: %s (%s%s leaves %d; it takes %d)", g.Next, stitch.Balance(left, g.End), g.part(last), g.name(last, false), left, g.End)
	}
}

// faultWords returns a sentence about a fault; the page has the same words.
func (g *Grid) faultWords(i, left, eats int) string {
	if i == 0 {
		return fmt.Sprintf("%s: %s (%d on the needles; it takes %d)", g.name(0, false), stitch.Balance(left, eats), left, eats)
	}
	apart, part := true, ""
	if g.Rows[i].Section == g.Rows[i-1].Section {
		apart, part = false, g.part(i)
	}
	return part + fmt.Sprintf("%s: %s (%s leaves %d; it takes %d)", g.name(i, apart), stitch.Balance(left, eats), g.name(i-1, apart), left, eats)
}

// part returns the section of a round, to begin a sentence, if the view has
// several.
func (g *Grid) part(i int) string {
	if g.Rows[0].Section == g.Rows[len(g.Rows)-1].Section {
		return ""
	}
	return g.Rows[i].Section.Words() + ", "
}

// name returns a round as named in a sentence, with its section where two meet.
func (g *Grid) name(i int, section bool) string {
	if section {
		return fmt.Sprintf("%s of the %s", g.Rows[i].Name(), g.Rows[i].Section.Words())
	}
	return g.Rows[i].Name()
}

// Faults returns the faults in words, from the bottom up.
func (g Grid) Faults() []string {
	list := []string{}
	for _, row := range g.Rows {
		if row.Fault != "" {
			list = append(list, row.Fault)
		}
	}
	if g.EndFault != "" {
		list = append(list, g.EndFault)
	}
	return list
}
