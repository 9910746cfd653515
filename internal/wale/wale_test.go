package wale

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/stitch"
)

// section types rounds of codes; "|" parts the gusset from the hand.
func section(t *testing.T, rounds ...string) stitch.Section {
	t.Helper()
	var s stitch.Section
	for _, text := range rounds {
		var r stitch.Round
		for _, word := range strings.Fields(text) {
			if word == "|" {
				r.Lead = len(r.Ops)
				continue
			}
			op, ok := stitch.ByCode(word)
			require.True(t, ok, word)
			r.Ops = append(r.Ops, op)
		}
		s.Rounds = append(s.Rounds, r)
	}
	return s
}

func TestGusset(t *testing.T) {
	for name, c := range map[string]struct {
		base   int
		rounds []string
		want   []string
	}{
		"base of three": {
			3,
			[]string{"k m1l k m1r k | k k", "k k k k k | k k", "k m1l k k k m1r k | k k"},
			[]string{"B1 A1 B2 Z1 B3 H1 H2", "B1 A1 B2 Z1 B3 H1 H2", "B1 A2 A1 B2 Z1 Z2 B3 H1 H2"},
		},
		"base of one": {1, []string{"m1l k m1r | k", "k m1l k m1r k | k"}, []string{"A1 B1 Z1 H1", "A1 A2 B1 Z2 Z1 H1"}},
		"one-sided":   {2, []string{"k m1l k | k", "k m1l k k | k"}, []string{"B1 A1 B2 H1", "B1 A2 A1 B2 H1"}},
	} {
		t.Run(name, func(t *testing.T) {
			var got []string
			for _, round := range Gusset(section(t, c.rounds...), c.base) {
				got = append(got, strings.Join(round, " "))
			}
			assert.Equal(t, c.want, got)
		})
	}
}

// The third column made at the first edge is A3 whatever rounds the increases
// fall in, and no name stands twice in a round.
func TestNamesDoNotDependOnTheSchedule(t *testing.T) {
	early := section(t, "k m1l k m1r k | k", "k m1l k k k m1r k | k", "k k k k k k k | k")
	late := section(t, "k k k | k", "k m1l k m1r k | k", "k m1l k k k m1r k | k")
	a, b := Gusset(early, 3), Gusset(late, 3)
	assert.Equal(t, a[2], b[2])
	for _, round := range a {
		seen := map[string]bool{}
		for _, name := range round {
			require.False(t, seen[name], name)
			seen[name] = true
		}
	}
}
