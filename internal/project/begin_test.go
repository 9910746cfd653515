package project

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/sheet"
	"thenar/internal/testenv"
	"thenar/internal/tryon"
)

// A mitt begun from another has the sheet, and so the plan, that the other had
// before anything was fixed, knitted or tried on; where the fixed numbers come
// along, that before anything was knitted.
func TestBegunHasThePlanBeforePinsAndWork(t *testing.T) {
	t.Parallel()
	rng := rand.New(rand.NewPCG(21, 3))
	pl := NewPlanner()
	fixed, worked := 0, 0
	for range testenv.Cases(150, 2000) {
		d, p := anyMitt(rng, pl)
		pinned, plain := d.Sheet.Clone(), d.Sheet.Clone()
		for path := range d.Sheet {
			if strings.HasPrefix(path, "pins.") {
				delete(plain, path)
			}
		}
		places := tryon.Places(p.Mitt())
		d = withProgress(d, []Progress{{Right, p, places[rng.IntN(len(places))]}, {Left, p, places[rng.IntN(len(places))]}})
		d.Sheet[sheet.PathTried], d.Sheet[sheet.PathSecond] = "1, 2", sheet.Anew
		d.WhatIf, d.Print, d.Archived = pinned.Clone(), "paper=a4", true
		if len(d.Sheet) > len(pinned)+2 {
			worked++
		}
		if len(pinned) > len(plain) {
			fixed++
		}
		was := fmt.Sprint(d)
		for pins, want := range map[bool]sheet.Sheet{false: plain, true: pinned} {
			begun := d.Begin("begun", pins)
			require.Equal(t, Document{Name: "begun", Side: d.Side, Sheet: want}, begun)
			assertSamePlan(t, pl, want, begun)
		}
		require.Equal(t, was, fmt.Sprint(d), "the other mitt stays as it is")
	}
	assert.Positive(t, fixed)
	assert.Positive(t, worked)
}

// assertSamePlan checks that a document makes the plan and rounds of a sheet, or
// fails as it does.
func assertSamePlan(t *testing.T, pl *Planner, want sheet.Sheet, is Document) {
	t.Helper()
	a, errA := pl.Plan(want)
	b, errB := pl.Plan(is.Effective())
	require.Equal(t, errA, errB)
	if errA == nil {
		require.Equal(t, a.Plan, b.Plan)
		require.Equal(t, a.Mitt(), b.Mitt())
	}
}
