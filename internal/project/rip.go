package project

import (
	"math"

	"thenar/internal/fit"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
	"thenar/internal/words"
)

// Rip is what is ripped back, the fewest rounds from which the mitt can still
// be saved: back to To, or to the cast-on where To.Nth is 0.
type Rip struct {
	Rounds   int
	To       tryon.Place
	Stitches int // to be knitted again
	Is       *Planned
	Line     string // the difference in one line
	Zones    []string
}

// Minutes is what it costs at a pace in stitches a minute.
func (r *Rip) Minutes(pace float64) int { return int(math.Ceil(float64(r.Stitches) / pace)) }

// off is how far a mitt is off in one zone.
type off struct {
	zone string
	fit.Range
}

// offs are how far a plan is off in each zone: the girths of the rounds that
// are not shaped to an end, and the lengths that the work has fixed.
func offs(p *Planned) ([]off, error) {
	rows, err := fit.Rows(p.Plan, p.Mitt(), p.extra.bands)
	if err != nil {
		return nil, err
	}
	zones := fit.Zones(p.Plan, rows)
	one := func(at mitt.Place) fit.Range { return fit.Range{Low: p.Off[at], High: p.Off[at]} }
	list := []off{{"cuff", one(mitt.PlaceCuff)}}
	if p.Thumbed() {
		list = append(list, off{"gusset", zones[stitch.Gusset]}, off{"gusset’s length", one(mitt.PlaceGussetLength)})
	}
	list = append(list, off{"hand", zones[stitch.Hand]}, off{"length of the hand", one(mitt.PlaceHandLength)})
	if p.Thumbed() {
		list = append(list, off{"thumb", zones[stitch.Thumb]}, off{"thumb’s length", one(mitt.PlaceThumbLength)})
	}
	return list, nil
}

// spoilt names the zones in which a plan is off by more than the tolerance and
// more, in the same direction, than a mitt begun anew would be.
func spoilt(p, anew *Planned) []string {
	is, err := offs(p)
	best, errAnew := offs(anew)
	if err != nil || errAnew != nil || len(is) != len(best) {
		return []string{"plan"}
	}
	var zones []string
	for i, o := range is {
		if !o.Within(p.extra.tolerance, best[i].Range) {
			zones = append(zones, o.zone)
		}
	}
	return zones
}

// rip finds the fewest rounds to rip back after which the mitt fits as one
// begun anew would, or within the tolerance; nil where it does already, or
// where nothing helps. Every number of rounds is tried, from the fewest.
func (pl *Planner) rip(d Document, was *mitt.Plan, at tryon.Place, accepted []tryon.Correction, now *Planned) *Rip {
	fresh := pl.standing(d, was, at, accepted)
	fresh.Sheet.Knit(nil, "")
	anew, err := pl.Plan(fresh.Sheet)
	if err != nil {
		return nil
	}
	zones := []string{"plan"}
	if now != nil {
		if zones = spoilt(now, anew); len(zones) == 0 {
			return nil
		}
	}
	list := tryon.Places(was.Mitt())
	out := &Rip{Zones: zones}
	for nth := at.Nth; nth > 0; nth-- {
		out.Rounds++
		out.Stitches += list[nth-1].After
		to := tryon.Place{}
		if nth > 1 {
			to = list[nth-2]
		}
		if p := pl.from(d, was, to, accepted); p != nil && len(spoilt(p, anew)) == 0 {
			out.To, out.Is = to, p
			out.Line = words.Onward(was, p.Plan, gussetRound(to, was))
			return out
		}
	}
	return nil
}

// from is the plan of the mitt knitted up to a place; the place 0 is the
// cast-on, where all is free. It is nil where there is none.
func (pl *Planner) from(d Document, was *mitt.Plan, at tryon.Place, accepted []tryon.Correction) *Planned {
	next := pl.standing(d, was, at, accepted)
	if at.Nth == 0 {
		next.Sheet.Knit(nil, "")
	}
	if at.Part == stitch.Cuff || at.Part == stitch.CuffPlain {
		delete(next.Sheet, sheet.PathBase)
	}
	p, err := pl.Plan(next.Sheet)
	if err != nil {
		return nil
	}
	return p
}
