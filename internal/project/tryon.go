package project

import (
	"reflect"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
	"thenar/internal/words"
)

// Effective returns the sheet that the document's mitt is planned from, with what
// is knitted of its hand. A hand that is not begun is worked like the other one,
// round for round, unless the sheet asks for it anew.
func (d Document) Effective() sheet.Sheet { return d.Sheet.For(string(d.Side)) }

// Other returns the other hand of the pair.
func (s Side) Other() Side {
	if s == Right {
		return Left
	}
	return Right
}

// Onward is how a mitt goes on from a try.
type Onward struct {
	Is      *Planned // the plan from here; nil: there is none, and Fault says why
	Fault   error
	Line    string // the difference in one line
	Changed Changed
	Next    Document    // with the work and the corrections
	Rip     *Rip        // a rip-back that would help; nil: none
	Was     *Planned    // the plan before the try
	Leaves  Leaves      // what stays off the wish
	Fingers []FingerRip // fingers that could be ripped back by themselves

	Ease map[tryon.Zone]float64 // of accepted zones: ease minus the usual ease, as a share of the girth
}

// Changed holds the rounds that are worked differently than before, by section.
type Changed map[stitch.Part]map[int]bool

// Has reports whether a round has changed.
func (c Changed) Has(part stitch.Part, round int) bool { return c[part][round] }

// Any reports whether any of the rounds from … to has changed.
func (c Changed) Any(part stitch.Part, from, to int) bool {
	for r := from; r <= to; r++ {
		if c.Has(part, r) {
			return true
		}
	}
	return false
}

// Grid returns a chart of the mitt in which the rounds that a try changed are
// marked.
func (out *Outputs) Grid(o chart.Options) chart.Grid {
	return out.markChanged(out.Charts.Grid(o))
}

func (out *Outputs) markChanged(g chart.Grid) chart.Grid {
	for i, row := range g.Rows {
		g.Rows[i].Changed = out.Changed.Has(row.Section, row.Round)
	}
	return g
}

// Boxed returns the charts of a view with one of what repeats, as chart.Source does, with
// the same marks; nil where nothing repeats whole.
func (out *Outputs) Boxed(o chart.Options) []chart.Grid {
	list := out.Charts.Boxed(o)
	for i := range list {
		list[i] = out.markChanged(list[i])
	}
	return list
}

// Count returns the number of changed rounds.
func (c Changed) Count() (n int) {
	for _, rounds := range c {
		n += len(rounds)
	}
	return n
}

// Differing returns the rounds of now that differ from those of was, or that was
// does not have.
func Differing(was, now stitch.Mitt) Changed {
	changed := Changed{}
	for _, s := range now.Sections {
		before := was.Section(s.Part)
		for i, r := range s.Rounds {
			if before != nil && i < len(before.Rounds) && before.Rounds[i].Side == r.Side && reflect.DeepEqual(before.Rounds[i].Ops, r.Ops) {
				continue
			}
			if changed[s.Part] == nil {
				changed[s.Part] = map[int]bool{}
			}
			changed[s.Part][i+1] = true
		}
	}
	return changed
}

// Onward plans how a mitt goes on from where a try found it, with the corrections
// that were accepted. What is knitted of either hand stays, and the document
// itself is not changed.
func (pl *Planner) Onward(d Document, seen tryon.Reading, other Progress, accepted []tryon.Correction) (Onward, error) {
	was, err := pl.Plan(d.Effective())
	if err != nil {
		return Onward{}, err
	}
	d = withProgress(d, []Progress{other})
	kept := func(next Document, at tryon.Place) Document {
		return pl.withColours(next, []Progress{{d.Side, was, at}, other})
	}
	next := kept(pl.withWork(d, was.Plan, seen.Place, accepted), seen.Place)
	out := Onward{Next: next, Was: was}
	if out.Is, err = pl.Plan(next.Effective()); err != nil {
		out.Is, out.Fault = nil, err
	} else {
		out.Line = words.Onward(was.Plan, out.Is.Plan, gussetRound(seen.Place, was.Plan))
		out.Changed = Differing(was.Mitt(), out.Is.Mitt())
		if out.Leaves, err = leaves(out.Is, was, accepted); err != nil {
			return Onward{}, err
		}
	}
	if out.Rip = pl.rip(d, was, seen.Place, accepted, out.Is); out.Rip != nil {
		out.Rip.Next = kept(out.Rip.Next, out.Rip.To)
	}
	out.Fingers = pl.ripFingers(d, was, seen.Place, accepted)
	for i := range out.Fingers {
		out.Fingers[i].Next = kept(out.Fingers[i].Next, seen.Place)
	}
	if len(out.Fingers) == 1 && out.Fingers[0].serves(out.Rip) {
		out.Rip = nil
	}
	if out.Is != nil {
		out.Ease = pl.eases(next.Sheet, out.Is.Plan, accepted)
	}
	return out, nil
}

// eases returns, for each zone with an accepted correction, the planned ease
// minus the ease that the sheet would have by default, as a share of the girth.
func (pl *Planner) eases(s sheet.Sheet, plan *mitt.Plan, accepted []tryon.Correction) map[tryon.Zone]float64 {
	usual := s.Clone()
	for path := range usual {
		if strings.HasPrefix(path, "ease.") {
			delete(usual, path)
		}
	}
	p, err := pl.Plan(usual)
	if err != nil {
		return nil
	}
	a, b := &plan.Ease, &p.Ease
	by := map[tryon.Zone]float64{
		tryon.Cuff: a.Cuff - b.Cuff, tryon.Gusset: a.Gusset - b.Gusset, tryon.Parting: a.Palm - b.Palm, tryon.Hand: a.Hand - b.Hand,
		tryon.Thumb: (a.ThumbAdded - b.ThumbAdded) / max(plan.Hand.Thumb.MM(), 1),
	}
	out := map[tryon.Zone]float64{}
	for _, c := range accepted {
		if x, ok := by[tryon.Zone(c.Key)]; ok {
			out[tryon.Zone(c.Key)] = x
		}
	}
	return out
}

// withWork returns the document with the work up to a place and with corrections.
// If that place is the cast-on, nothing of this hand is knitted, and the hand is
// planned anew instead of like the other one.
func (pl *Planner) withWork(d Document, was *mitt.Plan, at tryon.Place, accepted []tryon.Correction) Document {
	d.Sheet = d.Sheet.Clone()
	if at.Begun() {
		d.Sheet.SetProgress(at.Progress(was), string(d.Side))
	} else if d.Sheet.SetProgress(nil, string(d.Side)); d.Sheet.Given(sheet.PathSection) != "" {
		d.Sheet[sheet.PathSecond] = sheet.Anew
	}
	for _, c := range accepted {
		tryon.Put(d.Sheet, edits(c, at))
	}
	return d
}

// edits returns the edits of a correction for work at a place. Below the gusset
// they leave out where its base sits, since it isn't knitted yet.
func edits(c tryon.Correction, at tryon.Place) []tryon.Edit {
	if at.Nth > 0 && !at.Part.Passing() {
		return c.Edits
	}
	var list []tryon.Edit
	for _, e := range c.Edits {
		if e.Path != sheet.PathBase {
			list = append(list, e)
		}
	}
	return list
}

// gussetRound returns the number of the gusset's rounds that are knitted.
func gussetRound(at tryon.Place, p *mitt.Plan) int {
	switch {
	case !at.Begun(), stitch.Order(at.Part, at.Down) < stitch.Order(stitch.Gusset, at.Down):
		return 0
	case at.Part.Over() == stitch.OverMound:
		return at.Round
	}
	return p.Gusset.Rounds.N
}
