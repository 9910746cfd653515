package project

import (
	"math/rand/v2"
	"testing"

	"thenar/internal/mitt"
	"thenar/internal/testenv"
	"thenar/internal/wale"
)

// Every way of making a flat piece, with random hands, fixed numbers aside, plain and painted: its words read
// back agree with chart and plan on both hands.
func TestFlatWordsReadBack(t *testing.T) {
	rng, pl := rand.New(rand.NewPCG(23, 14)), NewPlanner()
	made, painted := 0, 0
	for i, c := range combinations() {
		if c[mitt.PathFlat] != "true" || c.refusedAt() != "" {
			continue
		}
		for range testenv.Cases(1, 20) {
			d := Document{Name: "any", Sheet: c.sheet(rng)}
			d.FromLeft = rng.IntN(6) == 0
			readBack(t, pl, d, nil, i)
			if p, err := pl.Plan(d.Sheet); err == nil && rng.IntN(2) == 0 {
				m := p.Plan.Mitt()
				d.FromLeft = false
				readBack(t, pl, d, anyMarks(rng, m, wale.Mitt(m, p.Plan.UnderThumb())), i)
				painted++
			}
			made++
		}
	}
	t.Logf("%d flat pieces, %d of them painted", made, painted)
}
