package project

import (
	"math"
	"strconv"

	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/repeat"
	"thenar/internal/sheet"
)

// Counts are the counts of stitches that take a motif whole which goes round the hand, or
// round a part with a count of its own.
type Counts struct {
	List []WholeCount // the least first
	Kept *WholeCount  // what a hand comes to that is kept to the motif's multiple; nil: it can't be, or that is no cure
}

// WholeCount is a count that takes a motif whole, and what it comes to.
type WholeCount struct {
	Number   mitt.Number // that is fixed so
	Stitches int
	Times    int
	Off      float64 // of the fabric from the wish, in mm
	Base     int     // of the gusset, if it is the hand's count; 0: there is none
	Gusset   int     // stitches of the gusset
	Top      int     // rounds of the top; 0: there is none
	Why      string  // why it can't be; empty: it can
	Now      bool    // it is the present count
}

// aroundCounts is how many counts are told on either side of the nearest.
const aroundCounts = 2

// mostOffRound is how far a count that is offered may be off the wish round the hand, in mm:
// what is further off is for another hand (common practice, no source: sizes are an inch
// apart). Round a part it is as much less as the part has fewer stitches.
const mostOffRound = 25.4

// CountsOf returns the counts that take each motif whole which goes round the hand, or round
// another part.
func (pl *Planner) CountsOf(d Document, out *Outputs) map[int]Counts {
	counts := map[int]Counts{}
	for i := range out.Repeats {
		l := &out.Repeats[i]
		if l.Over != repeat.Round || l.Off || l.Came.Stitches == 0 || l.Motif.Wide < 2 {
			continue
		}
		if l.ByHand() {
			counts[l.At] = Counts{pl.handCounts(d, out.Plan, l.Motif.Wide), pl.keptHand(d, l)}
		} else if n, ok := mitt.CountRound(l.Section); ok && out.Plan.Number(n) != "" {
			counts[l.At] = Counts{List: pl.partCounts(d, out.Plan, n, l)}
		}
	}
	return counts
}

// fixed returns the plan with a number fixed.
func (pl *Planner) fixed(d Document, n mitt.Number, v int) (*mitt.Plan, error) {
	trial := d.Effective().Clone()
	trial[n.Path()] = strconv.Itoa(v)
	p, err := pl.Plan(trial)
	if err != nil {
		return nil, err
	}
	return p.Plan, nil
}

// near returns the multiples of a width that are nearest to a wish, the least first.
func near(wish float64, wide int) (list []int) {
	nearest := max(1, int(math.Round(wish/float64(wide))))
	for k := max(1, nearest-aroundCounts); k <= nearest+aroundCounts; k++ {
		list = append(list, k*wide)
	}
	return list
}

// handCounts returns the counts of the hand near the one that is wanted that take a motif of
// so many stitches whole. One that can't be says why.
func (pl *Planner) handCounts(d Document, now *mitt.Plan, wide int) []WholeCount {
	var list []WholeCount
	for _, n := range near(now.Body.Stitches.Exact, wide) {
		one := WholeCount{Number: mitt.HandStitches, Stitches: n, Times: n / wide, Now: n == now.Body.Stitches.N}
		p, err := pl.fixed(d, mitt.HandStitches, n)
		if err != nil {
			one.Why = fault.Message(err)
		} else {
			if one.Off = p.Residual.Hand; one.tooFar(mostOffRound) {
				continue
			}
			one.Base, one.Gusset = p.Gusset.Base, p.Gusset.Stitches
			if p.Top != nil {
				one.Top = p.Top.Rounds
			}
		}
		list = append(list, one)
	}
	return list
}

// tooFar reports whether a count is for another hand, which is off by more than so many mm.
func (c *WholeCount) tooFar(most float64) bool { return !c.Now && math.Abs(c.Off) > most }

// keptHand returns what the hand comes to if it is kept to the multiple of a motif, beside
// what else is asked of it; nil if it can't be.
func (pl *Planner) keptHand(d Document, l *Laid) *WholeCount {
	trial := d.Effective().Clone()
	trial.Put(sheet.RepeatPath(l.At, "set"), string(repeat.KeptMultiple))
	p, err := pl.Plan(trial)
	if err != nil || p.Body.Stitches.N%l.Motif.Wide != 0 {
		return nil
	}
	n := p.Body.Stitches.N
	one := WholeCount{Number: mitt.HandStitches, Stitches: n, Times: n / l.Motif.Wide, Off: p.Residual.Hand}
	if one.tooFar(mostOffRound) {
		return nil
	}
	return &one
}

// partCounts returns the counts that a part may have, near the one that is wanted, so that a
// motif goes whole round it: in the round where it is counted, and in those that have the
// part's own count.
func (pl *Planner) partCounts(d Document, now *mitt.Plan, n mitt.Number, l *Laid) []WholeCount {
	var list []WholeCount
	wide, has := l.Motif.Wide, now.Count(n)
	most := mostOffRound * min(1, float64(has)/float64(now.Body.Stitches.N))
	for _, v := range near(float64(has)-now.OffRound(n)*now.Gauge.Stitches, wide) {
		p, err := pl.fixed(d, n, v)
		if err != nil || p.Count(n) != v {
			continue
		}
		m := p.Mitt()
		section := m.Section(l.Section)
		if section == nil || repeat.Across(section)%wide != 0 {
			continue
		}
		one := WholeCount{Number: n, Stitches: v, Times: repeat.Across(section) / wide, Off: p.OffRound(n), Now: v == has}
		if !one.tooFar(most) {
			list = append(list, one)
		}
	}
	return list
}
