package mitt

import (
	"cmp"

	"thenar/internal/stitch"
)

// tubeWorked is what is recorded of the tube round a thumb or a finger, with the rounds
// of it that are knitted.
type tubeWorked struct {
	pace                       pace
	at                         int  // its knitted rounds
	past                       bool // all of it is knitted
	stitches, decreases        int  // after the decreases; how many those are
	rounds, edging, edged, rib int  // rounds in all, those of the edging, its stitches, its rib
	listed                     []int
	closed                     bool
}

// thumb returns what is recorded of the thumb.
func (k *Progress) thumb() *tubeWorked {
	return k.tube(stitch.Thumb, tubeWorked{
		stitches: k.Thumb, decreases: k.ThumbDecreases,
		rounds: k.ThumbRounds, edging: k.ThumbEdging, edged: k.ThumbEdged, rib: cmp.Or(k.ThumbRib, k.Rib),
		listed: k.ThumbCorners, closed: k.thumbClosed(),
	})
}

// tube completes what is recorded of a tube with how much of it is knitted.
func (k *Progress) tube(part stitch.Part, t tubeWorked) *tubeWorked {
	t.pace, t.at, t.past = k.pace(), k.in(part), k.past(part)
	if t.past {
		t.at = t.rounds
	}
	return &t
}

// thumbClosed reports whether the thumb on the needles is planned with a tip.
func (k *Progress) thumbClosed() bool {
	return k.TopRounds > 0 || k.fingered() && k.ThumbEnd.closed()
}

// plain returns the number of rounds below the edging, or below the rounds that close
// the tube.
func (t *tubeWorked) plain() int {
	if t.closed {
		return max(t.rounds-t.pace.closing(t.stitches), t.pace.cornered(1, t.decreases))
	}
	return t.rounds - t.edging
}

// changes is the round that brings the tube to its edging's count: 1 or none.
func (t *tubeWorked) changes() int { return boolInt(!t.closed && t.edged != t.stitches) }

// cornered reports whether the number of decreases is settled. It is
// when the first of them is knitted; without decreases when the edging begins;
// in a closed tube, or one without an edging, after the second round.
func (t *tubeWorked) cornered() bool {
	if t.closed || t.edging == 0 {
		return t.at > int(t.pace)
	}
	if list := t.corners(); len(list) > 0 {
		return t.at >= list[0]
	}
	return t.edgeBegun()
}

// edgeBegun reports whether an open tube's edging is begun, or the change to its
// count, so that the part below it is settled. Without an edging that part is
// settled after the second round.
func (t *tubeWorked) edgeBegun() bool {
	if t.edging == 0 {
		return t.at > int(t.pace)
	}
	return t.at > t.plain()-t.changes()
}

// corners returns the rounds of the decreases as they were planned. If
// none are recorded, the earlier rule gives them: those of a closed thumb
// followed its first round, those of an open one ended just below the change to
// the edging's count.
func (t *tubeWorked) corners() []int {
	rounds := decreaseRounds(min(max(t.decreases, 0), maxDecreases))
	if len(t.listed) > 0 || rounds == 0 {
		return t.listed
	}
	first := 2
	if !t.closed {
		first = t.plain() - t.changes() - rounds + 1
	}
	list := make([]int, rounds)
	for i := range list {
		list[i] = first + i
	}
	return list
}

// inOrder reports whether the rounds of the decreases are in
// order, lie between the first round and the end, and are as many as the
// decreases take.
func (t *tubeWorked) inOrder() bool {
	list, before := t.corners(), 1
	for _, r := range list {
		if r <= before {
			return false
		}
		before = r
	}
	d := min(max(t.decreases, 0), maxDecreases) // its bound refuses what lies outside
	return len(list) == decreaseRounds(d) && before <= max(t.plain()-t.changes(), 1)
}

// edgesFor reports whether the edging is as long as it gets if so many rounds of it
// are wanted: a short tube has no room for more.
func (t *tubeWorked) edgesFor(wanted, rib int) bool {
	rounds, _, _ := t.pace.edging(t.stitches, rib, wanted, t.rounds-t.pace.cornered(1, t.decreases), false)
	return rounds == t.edging
}
