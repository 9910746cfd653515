package mitt

import (
	"cmp"

	"thenar/internal/division"
	"thenar/internal/hand"
	"thenar/internal/stitch"
)

// FingerWorked is what is recorded of a finger of a glove that is knitted.
type FingerWorked struct {
	Palm, Back, Stitches int // what it takes of palm and back; all in its first round
	Decreases, Rounds    int
	Edging, Edged, Rib   int // rounds of its edging, its stitches, its rib if it is another
	Corners              []int
	End                  FingerEnd
}

// fingered reports whether a glove is recorded.
func (k *Progress) fingered() bool { return k != nil && k.Fingers[division.Index].Palm > 0 }

// finger returns what is recorded of the tube round a finger.
func (k *Progress) finger(i int) *tubeWorked {
	f := &k.Fingers[i]
	return k.tube(fingerParts[i], tubeWorked{
		stitches: f.Stitches - f.Decreases, decreases: f.Decreases,
		rounds: f.Rounds, edging: f.Edging, edged: f.Edged, rib: cmp.Or(f.Rib, k.Rib), listed: f.Corners, closed: f.End.closed(),
	})
}

// holdFingers fixes what is knitted of the fingers. What a finger is worked on, and the
// bridge to the next, is settled once it is begun.
func (k *Progress) holdFingers(p *Pins) {
	for _, i := range inOrderWorked {
		if part := fingerParts[i]; !k.begun(part) {
			return
		}
		f, pins := &k.Fingers[i], &p.Fingers[i]
		pins.Palm, pins.Back = Fix(f.Palm), Fix(f.Back)
		if pins.Stitches = (Pin{}); i > division.Index {
			p.FingerBridges[i-1] = Fix(k.FingerBridges[i-1])
		}
		if t := k.finger(i); t.past || t.cornered() {
			pins.Decreases = Fix(f.Decreases)
		}
	}
}

// holdEnds keeps the ends of the fingers, and whether the little one is lower, as they are
// knitted.
func (k *Progress) holdEnds(m *Make) {
	ends := func(end *FingerEnd, was FingerEnd, part stitch.Part, t *tubeWorked) {
		if t.past || k.in(part) > 0 && (t.closed && t.at > t.plain() || !t.closed && t.edgeBegun()) {
			*end = was
		}
	}
	for i, part := range fingerParts {
		ends(&m.Fingers[i], k.Fingers[i].End, part, k.finger(i))
	}
	ends(&m.ThumbEnd, k.ThumbEnd, stitch.Thumb, k.thumb())
	if k.begun(stitch.Cap) {
		m.Cap = true
	}
	if top := k.madeTop(); k.begun(stitch.CapTop) || k.in(stitch.Cap) > 0 && k.in(stitch.Cap) >= k.Cap.Rounds {
		m.Top, m.Band, m.Wedges = top.Top, top.Band, top.Wedges
	}
	switch {
	case k.begun(stitch.Ring):
		m.Level = k.LowerRounds == 0
	case k.in(stitch.UpperHand) > 0:
		m.Level = false
	}
}

// boundsOfFingers returns the bounds of what is knitted of the fingers.
func (k *Progress) boundsOfFingers() (list []bound) {
	left := k.after()
	for _, i := range inOrderWorked {
		if !k.begun(fingerParts[i]) {
			break
		}
		f, of := &k.Fingers[i], func(n FingerNumber) Number { return OfFinger(n, hand.Finger(i)) }
		first, rest := f.Palm+f.Back, 2*i // of those that are not worked each takes two at least
		if i < division.Little {
			first += k.FingerBridges[i]
		}
		if i > division.Index {
			list = append(list, bound{OfBridge(i - 1), 1, widestFingerBridge})
			first += k.FingerBridges[i-1]
		}
		list = append(list,
			bound{of(FingerPalm), 1, max(1, left-rest-1)},
			bound{of(FingerBack), max(1, f.Palm-1), min(f.Palm+1, max(1, left-rest-f.Palm))},
			bound{of(FingerStitches), max(fewestOfFinger, first), first},
			bound{of(FingerDecreases), 0, min(maxDecreases, max(0, first-fewestOfFinger))},
			bound{of(FingerRounds), 1, maxRounds},
			bound{of(fingerEdgingRounds), 0, max(0, f.Rounds-1)},
			bound{of(fingerEdging), (f.Stitches - f.Decreases + 1) / 2, 2 * (f.Stitches - f.Decreases)})
		left -= f.Palm + f.Back
	}
	if k.begun(stitch.UpperHand) {
		list = append(list, bound{LittleLowerRounds, 0, maxRounds})
	}
	return list
}

// aheadInFinger reports whether a number of a finger is still free although the finger is
// begun.
func (k *Progress) aheadInFinger(n Number) bool {
	if n >= firstOfBridges || k.Part != n.Part() {
		return false
	}
	switch FingerNumber((n - firstOfFingers) % Number(fingerNumbers)) {
	case FingerDecreases, FingerRounds, fingerEdgingRounds, fingerEdging:
		return true
	}
	return false
}
