package project

import (
	"thenar/internal/chart"
	"thenar/internal/fit"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/words"
	"thenar/internal/yarn"
)

// Neighbours is the number of the hand's columns that the chart shows on
// each side of the gusset.
const Neighbours = 3

// Outputs is all that follows from a document and the strokes of its chart.
type Outputs struct {
	Plan    *mitt.Plan
	Planned stitch.Mitt // as the right hand, without the strokes
	Mitt    stitch.Mitt // as it is knitted: with the strokes, for the document's side
	Grid    chart.Grid  // of the gusset; empty where there is none
	Words   []words.Passage
	Reasons []words.Reason
	Unsound []stitch.Unsound // what the strokes leave unsound

	Fit       []fit.Row // of the planned rounds
	Tolerance float64   // of the fit, in mm
	Bands     fit.Bands
	Summary   fit.Summary
	Costs     []mitt.PinCost // of what is fixed
	Yarn      yarn.Estimate
	Ball      yarn.Ball
}

// Derive works out everything. The strokes speak of the right hand; they are
// put on the plan's rounds first, and the mirror comes last.
func (pl *Planner) Derive(d Document, marks chart.Marks) (*Outputs, error) {
	planned, err := pl.Plan(d.Sheet)
	if err != nil {
		return nil, err
	}
	out := &Outputs{Plan: planned.Plan, Planned: planned.Mitt(), Tolerance: planned.extra.tolerance, Bands: planned.extra.bands}
	plan := out.Plan
	if out.Fit, err = fit.Rows(plan, out.Planned, out.Bands); err != nil {
		return nil, err
	}
	out.Summary = fit.Sum(plan, out.Fit, out.Tolerance)
	out.Yarn, out.Ball = yarn.Of(plan, out.Planned, planned.extra.yarn), planned.extra.yarn.Ball
	out.Costs = pl.engine.PinCosts(planned.request, plan)
	out.Mitt = painted(out.Planned, plan.Gusset.Base, marks)
	out.Unsound = stitch.Ledger(out.Mitt)
	left := d.Side == Left
	if left && plan.Thumbed() { // without a thumb both hands are worked alike
		out.Mitt = stitch.Mirror(out.Mitt)
	}
	out.Words = words.Instructions(plan, out.Mitt, left)
	out.Reasons = words.Reasons(plan, d.Sheet.Unit())
	if !plan.Thumbed() {
		return out, nil
	}
	gusset, division := out.Planned.Section(stitch.Gusset), out.Planned.Section(stitch.Hand).Rounds[0]
	out.Grid = chart.Gusset(*gusset, plan.Gusset.Base, Neighbours, division.In(), marks, left)
	return out, nil
}

// painted puts the strokes on the gusset's rounds.
func painted(m stitch.Mitt, base int, marks chart.Marks) stitch.Mitt {
	sections := append([]stitch.Section(nil), m.Sections...)
	for i := range sections {
		if sections[i].Part == stitch.Gusset {
			sections[i] = chart.Put(sections[i], base, marks)
		}
	}
	return stitch.Mitt{Sections: sections}
}
