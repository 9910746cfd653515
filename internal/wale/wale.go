// Package wale names the stitch columns of a section from its rounds alone.
// A column is born at a cast-on or an increase; its name does not depend on
// the schedule, so what is anchored to it survives a new plan.
package wale

import (
	"strconv"

	"thenar/internal/stitch"
)

// The families of columns: the base of the gusset, those made at the edge
// that is worked first, those made at the other edge, and the hand.
const (
	Base  = 'B'
	First = 'A'
	Last  = 'Z'
	Hand  = 'H'
)

// Gusset names the column of every operation of a gusset's rounds, as the
// right hand: B1 … from the base, A1, A2 … made at the edge that is worked
// first, Z1 … made at the other, in order of birth, H1 … of the hand. An
// operation that takes several columns has the name of the first of them; one
// that makes a column has the new column's name.
func Gusset(s stitch.Section, base int) [][]string {
	names := make([][]string, len(s.Rounds))
	lead := numbered(Base, base)
	var hand []string
	born := map[byte]int{}
	for i, r := range s.Rounds {
		if i == 0 {
			hand = numbered(Hand, r.In()-r.LeadIn())
		}
		var round []string
		round, lead = walk(r.Ops[:r.Lead], lead, born)
		var rest []string
		rest, hand = walk(r.Ops[r.Lead:], hand, born)
		names[i] = append(round, rest...)
	}
	return names
}

// walk names the operations over the columns that the round below left, and
// gives the columns that this round leaves.
func walk(ops []stitch.Op, below []string, born map[byte]int) (names, above []string) {
	at := 0
	for i, op := range ops {
		name := ""
		switch {
		case op.In() == 0 && op.Out() > 0:
			family := edge(op, i, len(ops))
			born[family]++
			name = string(family) + strconv.Itoa(born[family])
		case at < len(below):
			name = below[at]
		}
		at += op.In()
		names = append(names, name)
		for range op.Out() {
			above = append(above, name)
		}
	}
	return names, above
}

// edge tells at which edge an increase is made: by its lean, or, where it has
// none, by the half of the gusset in which it stands.
func edge(op stitch.Op, i, n int) byte {
	switch {
	case op == stitch.M1L || op == stitch.LLI:
		return First
	case op == stitch.M1R || op == stitch.RLI:
		return Last
	case 2*i < n:
		return First
	}
	return Last
}

func numbered(family byte, n int) []string {
	names := make([]string, n)
	for i := range names {
		names[i] = string(family) + strconv.Itoa(i+1)
	}
	return names
}
