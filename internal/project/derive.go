package project

import (
	"maps"

	"thenar/internal/chart"
	"thenar/internal/fit"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
	"thenar/internal/units"
	"thenar/internal/words"
	"thenar/internal/yarn"
)

// Outputs is all that is worked out from a document and the strokes of its chart.
type Outputs struct {
	Terms   words.Terms // of its sentences
	Unit    units.Unit  // of its sheet
	Plan    *mitt.Plan
	Planned stitch.Mitt   // the right hand, without the strokes
	Mitt    stitch.Mitt   // as it is knitted: with the strokes, for the document's side and knitter
	Charts  chart.Source  // of every view
	Lost    []chart.Edit  // painted cells that have no place in this plan
	Drifted []chart.Drift // painted cells under which their motif moved
	Repeats []Laid        // in the order in which they are laid
	Words   []words.Passage
	Reasons []words.Reason
	Unsound []stitch.Unsound // what the strokes leave unsound
	Changed Changed          // rounds that a try changed; set by the caller
	Pair    words.Pair       // in what the other hand differs

	Fit       []fit.Row // of the planned rounds
	Tolerance float64   // of the fit, in mm
	Bands     fit.Bands
	Summary   fit.Summary
	Costs     []mitt.PinCost                    // of the fixed numbers
	Told      []tryon.Zone                      // of which a try said something; set by the caller
	Kinds     []ThumbWay                        // the kinds that it may be; set by the caller
	Thumbs    []ThumbWay                        // the ways to make it round the thumb; set by the caller
	Beside    map[mitt.Number][2]mitt.Neighbour // what else the numbers of the fingers may be; set by the caller
	Counts    map[int]Counts                    // that take a motif whole, by the repeat's number; set by the caller
	Yarn      yarn.Estimate
	Colours   []yarn.Colour // of each yarn, if more than one is used
	Ball      yarn.Ball
}

// Brief works out only what a table of many mitts says of each: its plan, its
// yarn, and what the strokes leave lost or unsound.
func (p *Planned) Brief(d Document, marks chart.Marks) *Outputs {
	out := &Outputs{Terms: p.extra.terms, Plan: p.Plan, Planned: p.Mitt()}
	out.Yarn, out.Ball = yarn.Of(out.Plan, out.Planned, p.extra.yarn), p.extra.yarn.Ball
	if len(marks)+len(p.extra.repeats) > 0 || p.extra.keeps() {
		out.Charts = p.charts(out.Planned, d, marks)
		out.Lost, out.Mitt = out.Charts.Lost(), out.Charts.Put()
		out.Unsound = stitch.Ledger(out.Mitt)
	}
	return out
}

// Derive works out everything. The strokes are those of the right hand; on the
// left hand they are mirrored together with their columns.
func (pl *Planner) Derive(d Document, marks chart.Marks) (*Outputs, error) {
	planned, err := pl.Plan(d.Effective())
	if err != nil {
		return nil, err
	}
	out, err := pl.Outputs(planned, d, marks)
	if err != nil {
		return nil, err
	}
	out.Costs = pl.engine.PinCosts(planned.request, out.Plan)
	return out, nil
}

// Outputs works out everything from a plan that is made already, except what its
// fixed numbers cost: that takes another plan for each of them.
func (pl *Planner) Outputs(planned *Planned, d Document, marks chart.Marks) (out *Outputs, err error) {
	out = &Outputs{Terms: planned.extra.terms, Unit: d.Sheet.Unit(), Plan: planned.Plan, Planned: planned.Plan.Mitt(), Tolerance: planned.extra.tolerance, Bands: planned.extra.bands}
	plan := out.Plan
	if out.Fit, err = fit.Rows(plan, out.Planned, out.Bands); err != nil {
		return nil, err
	}
	out.Summary = fit.Summarise(plan, out.Fit, out.Tolerance)
	out.Yarn, out.Ball = yarn.Of(plan, out.Planned, planned.extra.yarn), planned.extra.yarn.Ball
	out.Charts = planned.charts(out.Planned, d, marks)
	out.Lost, out.Repeats = out.Charts.Lost(), laidOn(planned.extra.repeats, out.Charts)
	out.Drifted = out.Charts.Drifted()
	used := out.Charts.Shares()
	out.Colours = yarn.Colours(plan, out.Yarn, shares(used))
	out.Yarn = out.Yarn.InColours(out.Colours, out.Ball)
	out.Mitt = out.Charts.Put()
	out.Unsound = stitch.Ledger(out.Mitt)
	if d.FromLeft {
		out.Mitt = stitch.FromLeft(out.Mitt)
	}
	out.Pair = pl.pair(d, marks, out)
	tails := yarn.TailsOf(plan, out.Mitt)
	out.Words = words.Instructions(out.Mitt, words.Hands{
		Left: d.Side == Left, FromLeft: d.FromLeft, Pair: out.Pair, Terms: out.Terms, Tails: words.Tails(tails), Unit: out.Unit, Dyed: dyed(out.Charts, used),
	})
	out.Reasons = words.Reasons(plan, d.Sheet.Unit(), out.Terms)
	return out, nil
}

// Charts returns the charts of a plan for the document's side and knitter. A mitt
// without a thumb is not mirrored, since it is the same on both hands.
func (p *Planned) Charts(d Document, marks chart.Marks) chart.Source {
	return p.charts(p.Plan.Mitt(), d, marks)
}

// charts is Charts with the plan's mitt, which has been made.
func (p *Planned) charts(m stitch.Mitt, d Document, marks chart.Marks) chart.Source {
	return chart.Source{
		Repeats: sheet.WithoutNumbers(p.extra.repeats), Kept: p.kept(d.Side),
		Mitt: m, Base: p.Plan.UnderThumb(), Marks: marks, FromLeft: d.FromLeft,
		Mirrored: (d.Side == Left) != d.FromLeft && p.Plan.Parted(),
		Palette:  p.extra.palette, Rules: p.extra.rules(p.Plan),
	}.Prepare()
}

// pair returns in what the other hand, by its own plan and with its strokes, differs from
// this one. One that can't be planned differs in all its parts.
func (pl *Planner) pair(d Document, marks chart.Marks, out *Outputs) (p words.Pair) {
	other := d
	other.Side = d.Side.Other()
	if its := other.Effective(); !maps.Equal(its, d.Effective()) {
		planned, err := pl.Plan(its)
		if err != nil {
			return words.Pair{Parts: stitch.Differing(out.Mitt, stitch.Mitt{})}
		}
		p.Parts = out.Charts.Differing(planned.Charts(other, marks))
		p.Numbers = words.Between(out.Plan, planned.Plan)
	} else if out.Plan.Parted() {
		p.Parts = out.Charts.DifferingHands()
	}
	return p
}

// shares returns what each yarn works, in the order of the palette. The main
// colour comes first, whether it is used or not.
func shares(of map[string]chart.Share) []yarn.Share {
	var list []yarn.Share
	for i := range chart.MaxYarns {
		id := chart.ID(i)
		if s, used := of[id]; used || i == 0 {
			list = append(list, yarn.Share{ID: id, Stitches: s.Stitches, Passed: s.Passed})
		}
	}
	return list
}
