package grade

import (
	"math"
	"slices"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Fall is a number that would be smaller than in the size before, though the measure
// behind it is not.
type Fall struct {
	Number   mitt.Number
	From, To int     // of the size before, and of this one by itself
	Held     bool    // it is held at the size before; else it falls
	MM       float64 // how much further off all places are together for that
}

// rising returns the measure behind a number that must not fall, in stitches or in
// rounds.
func rising(p *mitt.Plan, n mitt.Number) float64 {
	g, q, h := p.Gauge.Stitches, p.Gauge.Rounds, &p.Hand
	switch n {
	case mitt.CastOn:
		return g * h.Wrist.MM() * (1 + p.Ease.Cuff)
	case mitt.HandStitches:
		return g * h.Circumference.MM() * (1 + p.Ease.Hand)
	case mitt.GussetRounds:
		return q * h.GussetLength.MM()
	case mitt.ThumbStitches:
		return g * (h.Thumb.MM() + p.Ease.ThumbAdded)
	case mitt.ThumbRounds:
		return q * h.ThumbLength.MM()
	}
	return q * h.Length.MM()
}

// neverFall are the numbers that must not fall from size to size, in the order in
// which they are held; the gusset's stitches are barred in the joint choice.
var neverFall = []mitt.Number{
	mitt.HandStitches, mitt.CastOn, mitt.CuffRounds, mitt.CuffPlainRounds, mitt.GussetRounds, mitt.ThumbStitches,
	mitt.RoundsAboveGusset, mitt.TopRounds, mitt.ThumbRounds,
}

// hold keeps the numbers of a size from falling below those of the size before.
// Sizes that are made in different ways are not compared.
func (s *Planned) hold(engine *mitt.Planner, before *mitt.Plan) {
	if before == nil || before.Kind != s.Plan.Kind || before.Make != s.Plan.Make {
		return
	}
	for _, n := range neverFall {
		was, is := before.Count(n), s.Plan.Count(n)
		if was <= is || is == 0 || rising(s.Plan, n) < rising(before, n) {
			continue
		}
		f := Fall{Number: n, From: was, To: is}
		off := s.Plan.Off.Sum()
		if s.Sheet.Given(n.Path()) == "" && s.with(engine, n, was) {
			f.Held, f.MM = true, s.Plan.Off.Sum()-off
		}
		s.Falls = append(s.Falls, f)
	}
}

// mark marks twins and the worst places, and says how the text's numbers go.
func (g *Graded) mark() {
	var before *Planned
	for i := range g.Sizes {
		s := &g.Sizes[i]
		if s.Plan == nil {
			continue
		}
		if before != nil {
			s.Same = alike(s.Plan, before.Plan)
			if is, was := s.Plan.Gusset.Stitches, before.Plan.Gusset.Stitches; was > is && is > 0 && palm(s.Plan) >= palm(before.Plan) {
				s.Falls = append(s.Falls, Fall{Number: mitt.Increases, From: before.Plan.Gusset.Increases, To: s.Plan.Gusset.Increases})
			}
		}
		for place, off := range s.Plan.Off {
			if math.Abs(off) > math.Abs(s.Off) {
				s.Worst, s.Off = mitt.Place(place), off
			}
		}
		before = s
	}
	g.Splits = splits(g.Sizes)
}

// alike reports whether two plans are knitted by the same numbers.
func alike(a, b *mitt.Plan) bool {
	if a.Kind != b.Kind || a.Make != b.Make || !slices.Equal(a.Gusset.IncreaseRounds, b.Gusset.IncreaseRounds) {
		return false
	}
	return slices.EqualFunc(a.Mitt().Sections, b.Mitt().Sections, func(x, y stitch.Section) bool {
		return x.Part == y.Part && slices.EqualFunc(x.Rounds, y.Rounds, func(r, q stitch.Round) bool { return slices.Equal(r.Ops, q.Ops) })
	})
}

// Split is how one of the text's numbers goes over the sizes: groups of neighbours
// that have it alike.
type Split struct {
	Number mitt.Number
	Groups []Group
}

// Group is a run of sizes with one value of a number; 0 of the rhythm is rounds of
// their own.
type Group struct {
	Sizes []string
	Value int
}

func splits(sizes []Planned) []Split {
	list := make([]Split, textNumbers)
	for n := range list {
		list[n].Number = InText[n]
		groups := &list[n].Groups
		for _, s := range sizes {
			if s.Text == nil {
				continue
			}
			last := len(*groups) - 1
			if v := s.Text[n]; last < 0 || (*groups)[last].Value != v || InText[n] == mitt.Rhythm && v == 0 {
				*groups = append(*groups, Group{Value: v})
				last++
			}
			(*groups)[last].Sizes = append((*groups)[last].Sizes, s.Name)
		}
	}
	return list
}
