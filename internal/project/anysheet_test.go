package project

import (
	"math/rand/v2"

	"thenar/internal/chart"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/wale"
)

// anySheet is a sheet as somebody may fill it.
func anySheet(rng *rand.Rand) sheet.Sheet { return testenv.AnySheet(rng) }

// anyMitt is a mitt that can be planned.
func anyMitt(rng *rand.Rand, pl *Planner) (Document, *Planned) {
	for {
		d := Document{Name: "any", Side: []Side{Right, Left}[rng.IntN(2)], Sheet: anySheet(rng)}
		if p, err := pl.Plan(d.Sheet); err == nil {
			return d, p
		}
	}
}

// anyMarks paints a mitt in every section: stitches that eat and make as much
// as the planned ones, and colours.
func anyMarks(rng *rand.Rand, m stitch.Mitt, names wale.Names) chart.Marks {
	instead := map[[2]int][]stitch.Op{}
	for _, op := range stitch.All() {
		if op.Paintable() {
			k := [2]int{op.In(), op.Out()}
			instead[k] = append(instead[k], op)
		}
	}
	marks := chart.Marks{}
	for _, s := range m.Sections {
		for range 1 + rng.IntN(8) {
			if len(s.Rounds) == 0 {
				break
			}
			r := rng.IntN(len(s.Rounds))
			i := rng.IntN(len(s.Rounds[r].Ops))
			at := chart.Anchor{Section: s.Part, Round: r + 1, Column: names[s.Part][r][i]}
			op := s.Rounds[r].Ops[i]
			if of := instead[[2]int{op.In(), op.Out()}]; op.Paintable() && rng.IntN(3) > 0 {
				marks[at] = chart.Mark{Stitch: of[rng.IntN(len(of))].Code()}
			} else {
				marks[at] = chart.Mark{Colour: chart.ID(1 + rng.IntN(3))}
			}
		}
	}
	return marks
}
