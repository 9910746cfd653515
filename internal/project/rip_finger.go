package project

import (
	"fmt"
	"math"
	"reflect"
	"slices"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
	"thenar/internal/words"
)

// FingerRip is the rip-back of one finger that is finished, while the work is further on:
// its last rounds are knitted anew, and all that was knitted since stays. That can be done
// above its first round: there nothing else hangs on it. What it stands on, and the bridge
// that the next finger picks up, lies below.
type FingerRip struct {
	Part     stitch.Part
	To       int // its last round that stays
	Rounds   int // ripped
	Again    int // rounds to be knitted anew
	Stitches int // in those
	Is       *Planned
	Next     Document    // with the finger as it will be, and the corrections
	At       tryon.Place // where the work stands
	Line     string
}

// Minutes returns the time to knit it again, as that of a Rip.
func (r *FingerRip) Minutes(pace float64) int { return int(math.Ceil(float64(r.Stitches) / pace)) }

// ripFingers returns what one finger alone could be ripped back for: the fingers past
// which the work is, and whose length a correction changes.
func (pl *Planner) ripFingers(d Document, was *Planned, at tryon.Place, accepted []tryon.Correction) []FingerRip {
	if !was.Fingered() {
		return nil
	}
	var list []FingerRip
	for _, one := range fingerPlaces(was) {
		_, finger := mitt.FingerOf(one.part)
		length, _ := tryon.Zone(one.part).EndField()
		asked := slices.ContainsFunc(accepted, func(c tryon.Correction) bool { return c.Key == length && c.Changes() })
		if !finger || !asked || stitch.Order(at.Part, false) <= stitch.Order(one.part, false) {
			continue
		}
		if rip := pl.ripFinger(d, was, at, accepted, one); rip != nil {
			list = append(list, *rip)
		}
	}
	return list
}

// ripFinger returns the shortest rip-back of a finger that brings it as near to its length
// as one to its first round would; nil if it is as near already, or if it can't be done.
func (pl *Planner) ripFinger(d Document, was *Planned, at tryon.Place, accepted []tryon.Correction, one fingerPlace) *FingerRip {
	m := was.Mitt()
	rounds := len(m.Section(one.part).Rounds)
	away := func(p *Planned) float64 { return math.Abs(p.Off[one.length]) }
	from := func(round int) *Planned {
		p, _ := pl.from(d, was.Plan, tryon.Place{Part: one.part, Round: round, Nth: 1}, accepted)
		return p
	}
	first := from(1)
	if first == nil {
		return nil
	}
	for to := rounds - 1; to > 0; to-- {
		again := from(to)
		if again == nil || away(again) > away(first)+1e-9 {
			continue
		}
		return pl.ripped(d, was, at, accepted, again, FingerRip{Part: one.part, To: to, Rounds: rounds - to})
	}
	return nil
}

// ripped returns a rip-back of a finger whose rounds are those of another plan, or nil if
// anything else that is knitted would change, or nothing would.
func (pl *Planner) ripped(d Document, was *Planned, at tryon.Place, accepted []tryon.Correction, again *Planned, out FingerRip) *FingerRip {
	out.Next = pl.withWork(d, was.Plan, at, accepted)
	f, _ := mitt.FingerOf(out.Part)
	knitted := at.Progress(was.Plan)
	knitted.Fingers[f] = again.ProgressAt(out.Part, out.To).Fingers[f]
	out.Next.Sheet.SetProgress(knitted, string(d.Side))
	for _, c := range accepted {
		tryon.Put(out.Next.Sheet, edits(c, at))
	}
	var err error
	if out.Is, err = pl.Plan(out.Next.Effective()); err != nil {
		return nil
	}
	before, m := was.Mitt(), out.Is.Mitt()
	anew := m.Section(out.Part)
	changed := Differing(before, m)
	for _, p := range tryon.Places(before)[:at.Nth] {
		if p.Part == out.Part && p.Round > out.To {
			continue
		}
		if changed.Has(p.Part, p.Round) {
			return nil
		}
	}
	if !reflect.DeepEqual(anew.Rounds, again.Mitt().Section(out.Part).Rounds) || reflect.DeepEqual(anew.Rounds, before.Section(out.Part).Rounds) {
		return nil
	}
	stays, ok := tryon.At(tryon.Places(m), at.Part, at.Round)
	if !ok {
		return nil
	}
	stays.Ended = at.Ended
	out.At, out.Again = stays, len(anew.Rounds)-out.To
	for _, r := range anew.Rounds[out.To:] {
		out.Stitches += r.Out()
	}
	out.Line = fmt.Sprintf("%s alone: rip back %s, to round %d. Knit it again, %s in all.",
		out.Part.Title(), words.Plural(out.Rounds, "round"), out.To, words.Plural(len(anew.Rounds), "round"))
	return &out
}
