package project

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"strconv"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
	"thenar/internal/words"
)

// FingerRip is the rip-back of one finger whose end is begun or finished, whether the work
// is further on or not: its last rounds are knitted anew, and all that was knitted since stays. That can be done
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
	At       tryon.Place // where the work stands then
	Here     bool        // the work is at this finger: it goes on from there
	Corners  int         // stitches that are decreased at its corners, if that is new
	Line     string
}

// Minutes returns the time to knit it again, as that of a Rip.
func (r *FingerRip) Minutes(pace float64) int { return int(math.Ceil(float64(r.Stitches) / pace)) }

// serves reports whether ripping the finger back alone puts right all that a rip-back of
// everything since would.
func (r *FingerRip) serves(all *Rip) bool {
	f, _ := mitt.FingerOf(r.Part)
	girth, length := mitt.PlacesOfFinger(f)
	return all != nil && !slices.ContainsFunc(all.Zones, func(zone string) bool {
		fits := r.Corners > 0 && math.Abs(r.Is.Off[girth]) <= r.Is.within(r.Part)
		return zone != length.Words(r.Is.Plan) && !(fits && zone == r.Part.Words())
	})
}

// ripFingers returns what one finger alone could be ripped back for: the fingers that are
// begun, and whose length or girth a correction changes.
func (pl *Planner) ripFingers(d Document, was *Planned, at tryon.Place, accepted []tryon.Correction) []FingerRip {
	if !was.Fingered() {
		return nil
	}
	var list []FingerRip
	for _, one := range fingerPlaces(was) {
		_, finger := mitt.FingerOf(one.part)
		length, _ := tryon.Zone(one.part).EndField()
		asked := slices.ContainsFunc(accepted, func(c tryon.Correction) bool { return c.Key == length && c.Changes() })
		felt := slices.ContainsFunc(accepted, func(c tryon.Correction) bool { return c.Key == string(one.part) && c.Changes() })
		if !finger || stitch.Order(at.Part, false) < stitch.Order(one.part, false) {
			continue
		}
		var rip *FingerRip
		if felt && at.Part != one.part {
			rip = pl.ripCorners(d, was, at, accepted, one)
		}
		if rip == nil && asked {
			rip = pl.ripFinger(d, was, at, accepted, one)
		}
		if rip != nil {
			list = append(list, *rip)
		}
	}
	return list
}

// ripFinger returns the shortest rip-back of a finger that brings it as near to its length
// as one to its first round would, with the same edging; nil if it gets there without, or
// if it can't be done.
func (pl *Planner) ripFinger(d Document, was *Planned, at tryon.Place, accepted []tryon.Correction, one fingerPlace) *FingerRip {
	f, _ := mitt.FingerOf(one.part)
	here, rounds := at.Part == one.part, len(was.Mitt().Section(one.part).Rounds)
	from := func(round int, ended bool) (*Planned, Document) {
		return pl.from(d, was.Plan, tryon.Place{Part: one.part, Round: round, Nth: 1, Ended: ended}, accepted)
	}
	first, _ := from(1, false)
	if first == nil {
		return nil
	}
	best := &first.Fingers.Each[f]
	reaches := func(p *Planned) bool {
		is := &p.Fingers.Each[f]
		return math.Abs(p.lengthOff(one.length)) <= math.Abs(first.lengthOff(one.length))+1e-9 &&
			is.EdgingRounds == best.EdgingRounds && is.EdgingStitches == best.EdgingStitches
	}
	to := rounds - 1
	if here {
		if now, _ := from(at.Round, at.Ended); now != nil && reaches(now) {
			return nil
		}
		to = min(to, at.Round-1)
	}
	for ; to > 0; to-- {
		again, next := from(to, false)
		if again == nil || !reaches(again) {
			continue
		}
		out := FingerRip{Part: one.part, To: to, Rounds: rounds - to, Here: here}
		if here {
			out.Rounds, out.Is, out.Next = at.Round-to, again, next
		}
		return pl.ripped(d, was, at, accepted, again, out)
	}
	return nil
}

// ripCorners returns the rip-back of a finger to its first round after which it has as many
// stitches as it should, by decreases at its corners; nil if that can't be done or comes no
// nearer. Its first round is joined to its neighbours on both sides and stays, so it can
// only become narrower than that.
func (pl *Planner) ripCorners(d Document, was *Planned, at tryon.Place, accepted []tryon.Correction, one fingerPlace) *FingerRip {
	f, _ := mitt.FingerOf(one.part)
	to := tryon.Place{Part: one.part, Round: 1, Nth: 1}
	first, _ := pl.from(d, was.Plan, to, accepted)
	if first == nil {
		return nil
	}
	now, wish := &was.Fingers.Each[f], first.Fingers.Each[f].Stitches.Exact
	left := func(corners int) float64 { return math.Abs(float64(now.FirstRound-corners) - wish) }
	corners := now.Decreased
	for n := 0; n <= mitt.MostCorners; n++ {
		if left(n) < left(corners)-1e-9 {
			corners = n
		}
	}
	if corners == now.Decreased {
		return nil
	}
	path := mitt.OfFinger(mitt.FingerDecreases, f).Path()
	accepted = append(slices.Clone(accepted), tryon.Correction{Key: path, Edits: []tryon.Edit{{Path: path, Text: strconv.Itoa(corners)}}})
	again, _ := pl.from(d, was.Plan, to, accepted)
	if again == nil {
		return nil
	}
	return pl.ripped(d, was, at, accepted, again, FingerRip{
		Part: one.part, To: 1, Rounds: len(was.Mitt().Section(one.part).Rounds) - 1, Corners: corners,
	})
}

// ripped returns a rip-back of a finger whose rounds are those of another plan, or nil if
// anything else that is knitted would change, or nothing would.
func (pl *Planner) ripped(d Document, was *Planned, at tryon.Place, accepted []tryon.Correction, again *Planned, out FingerRip) *FingerRip {
	if !out.Here {
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
	round := at.Round
	if out.Here {
		round = out.To
	}
	stays, ok := tryon.At(tryon.Places(m), at.Part, round)
	if !ok {
		return nil
	}
	stays.Ended = at.Ended && !out.Here
	out.At, out.Again = stays, len(anew.Rounds)-out.To
	for _, r := range anew.Rounds[out.To:] {
		out.Stitches += r.Out()
	}
	out.Line = fmt.Sprintf("%s alone: rip back %s, to round %d. Knit it again, %s in all.",
		out.Part.Title(), words.Plural(out.Rounds, "round"), out.To, words.Plural(len(anew.Rounds), "round"))
	if out.Corners > 0 {
		out.Line += fmt.Sprintf(" Just above, decrease %s at its corners.", words.Plural(out.Corners, "stitch"))
	}
	return &out
}
