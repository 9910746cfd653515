package project

import (
	"math"
	"slices"

	"thenar/internal/fit"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
	"thenar/internal/words"
)

// Rip is the shortest rip-back after which the mitt fits: back to To, or to the
// cast-on if To.Nth is 0.
type Rip struct {
	Rounds   int
	To       tryon.Place
	Stitches int      // to be knitted again
	Is       *Planned // the plan from there
	Next     Document // with the work up to there and the corrections
	Line     string   // the difference in one line
	Zones    []string // the zones that don't fit without ripping
	Leaves   Leaves   // what stays off all the same
}

// Minutes returns the time to knit it again, in minutes rounded up, at a pace in
// stitches a minute.
func (r *Rip) Minutes(pace float64) int { return int(math.Ceil(float64(r.Stitches) / pace)) }

// off is how far a mitt is off the wish in one zone, in mm.
type off struct {
	zone string
	fit.Range
	within float64 // up to which it fits
}

// offs returns how far a plan is off the wish in each zone: in the girths of the
// rounds that don't close an end, and in the lengths.
func offs(p *Planned) ([]off, error) {
	rows, err := fit.Rows(p.Plan, p.Mitt(), p.extra.bands)
	if err != nil {
		return nil, err
	}
	zones := fit.Zones(rows)
	var list []off
	add := func(zone string, by fit.Range) { list = append(list, off{zone, by, p.extra.tolerance}) }
	one := func(at mitt.Place) fit.Range { return fit.Range{Low: p.lengthOff(at), High: p.lengthOff(at)} }
	add("cuff", one(mitt.PlaceCuff))
	if p.Gusseted() {
		add("gusset", zones[stitch.Gusset])
		add("gusset’s length", one(mitt.PlaceGussetLength))
	} else if p.Parted() {
		add("length to the thumb", one(mitt.PlaceGussetLength))
	}
	add("hand", zones[stitch.Hand])
	add("length of the hand", one(mitt.PlaceHandLength))
	for _, f := range fingerPlaces(p) {
		switch f.part.Over() {
		case stitch.OverCap:
			add(f.part.Words(), one(mitt.PlaceCap))
		case stitch.OverDigit:
			list = append(list, off{f.part.Words(), zones[f.part], p.within(f.part)})
		}
		add(f.length.Words(p.Plan), one(f.length))
	}
	if p.Thumbed() {
		add("thumb", zones[stitch.Thumb])
		add("thumb’s length", one(mitt.PlaceThumbLength))
	}
	return list, nil
}

// fingerTolerance is by how many stitches a finger may be off: one stitch more or less is
// felt on a finger, where on a hand it is lost (common practice, no source).
const fingerTolerance = 0.75

// spoilt returns the zones in which a plan is off by more than the tolerance and
// further, in the same direction, than a mitt begun anew, whose distances are
// best. It leaves out the zones in known.
func spoilt(p *Planned, best []off, known ...string) []string {
	now, err := offs(p)
	if err != nil || len(now) != len(best) {
		return []string{"plan"}
	}
	var zones []string
	for i, o := range now {
		if !o.Within(o.within, best[i].Range) && !slices.Contains(known, o.zone) {
			zones = append(zones, o.zone)
		}
	}
	return zones
}

// rip finds the least number of rounds to rip back so that the mitt fits within
// the tolerance, or as well as one begun anew. It tries every number, from 1 on,
// and returns nil if the mitt fits already or nothing helps. A zone that was off
// before the try, and of which no correction speaks, is no reason to rip.
func (pl *Planner) rip(d Document, was *Planned, at tryon.Place, accepted []tryon.Correction, now *Planned) *Rip {
	best, errBest := pl.anew(pl.withWork(d, was.Plan, at, accepted))
	before, errBefore := pl.anew(d)
	if errBest != nil || errBefore != nil {
		return nil
	}
	known := unasked(spoilt(was, before), accepted)
	zones := []string{"plan"}
	if now != nil {
		if zones = spoilt(now, best, known...); len(zones) == 0 {
			return nil
		}
	}
	m := was.Mitt()
	list := tryon.Places(m)
	out := &Rip{Zones: zones}
	for nth := at.Nth; nth > 0; nth-- {
		out.Rounds++
		out.Stitches += list[nth-1].After
		if nth > 1 {
			out.To = list[nth-2]
		} else {
			out.To = tryon.Place{}
		}
		p, next := pl.from(d, was.Plan, out.To, accepted)
		if p == nil || len(spoilt(p, best, known...)) > 0 {
			continue
		}
		if planned := p.Mitt(); Differing(m, planned).Count()+Differing(planned, m).Count() == 0 {
			return nil // it would be knitted as it was
		}
		var err error
		if out.Leaves, err = leaves(p, was, accepted); err != nil {
			return nil
		}
		out.Is, out.Next = p, next
		out.Line = words.Onward(was.Plan, p.Plan, gussetRound(out.To, was.Plan))
		return out
	}
	return nil
}

// unasked returns the zones of which no accepted correction speaks. A correction
// of the measured fabric speaks of all.
func unasked(zones []string, accepted []tryon.Correction) []string {
	of := map[string][]string{
		string(tryon.Cuff): {"cuff"}, string(tryon.Gusset): {"gusset"}, string(tryon.Parting): {"gusset"}, string(tryon.Hand): {"hand"},
		string(tryon.Thumb): {"thumb"}, "base": {"gusset", "gusset’s length", "length to the thumb"}, "top": {"gusset", "gusset’s length", "length to the thumb"}, tryon.Fabric: zones,
	}
	for _, zone := range tryon.Zones() {
		if zone.Fingered() { // a length moves where the fingers begin, and so all of them
			of[string(zone)] = append(of[string(zone)], stitch.Part(zone).Words())
		}
		length, _ := zone.EndField()
		of[length] = zones
	}
	return slices.DeleteFunc(slices.Clone(zones), func(zone string) bool {
		return slices.ContainsFunc(accepted, func(c tryon.Correction) bool { return slices.Contains(of[c.Key], zone) })
	})
}

// anew returns how far a document's mitt would be off if none of it were knitted.
func (pl *Planner) anew(d Document) ([]off, error) {
	d.Sheet = d.Sheet.Clone()
	d.Sheet.SetProgress(nil, "")
	p, err := pl.Plan(d.Sheet)
	if err != nil {
		return nil, err
	}
	return offs(p)
}

// from returns the plan of the mitt as knitted up to a place, or nil if there is
// none, and its document.
func (pl *Planner) from(d Document, was *mitt.Plan, at tryon.Place, accepted []tryon.Correction) (*Planned, Document) {
	next := pl.withWork(d, was, at, accepted)
	pl.counted.Searched++
	p, err := pl.plan(next.Effective()) // each is asked for once
	if err != nil {
		return nil, next
	}
	return p, next
}
