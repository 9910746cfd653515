package project

import (
	"math/rand/v2"
	"testing"

	"thenar/internal/mitt"
	"thenar/internal/testenv"
)

// Every way of making a flat piece, with random hands, fixed numbers aside: its words read
// back agree with chart and plan on both hands.
func TestFlatWordsReadBack(t *testing.T) {
	rng, pl := rand.New(rand.NewPCG(23, 14)), NewPlanner()
	made := 0
	for i, c := range combinations() {
		if c[mitt.PathFlat] != "true" || c.refusedAt() != "" || c.laterAt() != "" {
			continue
		}
		for range testenv.Cases(1, 20) {
			d := Document{Name: "any", Sheet: c.sheet(rng)}
			d.FromLeft = rng.IntN(6) == 0
			readBack(t, pl, d, nil, i)
			made++
		}
	}
	t.Logf("%d flat pieces", made)
}
