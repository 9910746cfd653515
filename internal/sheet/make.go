package sheet

import (
	"thenar/internal/hand"
	"thenar/internal/mitt"
)

// made reads how the mitt is made.
func (r *reader) made() mitt.Make {
	return mitt.Make{
		Construction: word[mitt.Construction](r, mitt.PathConstruction),
		Place:        word[mitt.ThumbPlace](r, mitt.PathPlace),
		Inset:        r.pinned(mitt.PathInset, 0, mitt.MaxInset),
		Increase:     word[mitt.Increase](r, mitt.PathIncrease),
		Direction:    word[mitt.Direction](r, mitt.PathDirection),
		Flat:         r.flag(mitt.PathFlat, false),
		Cuff:         word[mitt.CuffKind](r, mitt.PathCuff),
		UpperGirth:   r.length(mitt.PathUpperGirth),
		CuffDepth:    r.length(mitt.PathCuffDepth),
		Top:          word[mitt.TopKind](r, mitt.PathTop),
		Band:         r.pinned(mitt.PathBand, 1, mitt.MaxBand),
		Wedges:       r.pinned(mitt.PathWedges, mitt.FewestWedges, mitt.MaxWedge),
		Fingers:      r.fingerEnds(),
		ThumbEnd:     word[mitt.FingerEnd](r, mitt.PathThumbEnd),
		Cap:          r.flag(mitt.PathCap, false),
		Level:        !r.flag(mitt.PathLower, true),
	}
}

// fingerEnds reads how far each finger of a glove is covered.
func (r *reader) fingerEnds() (ends [4]mitt.FingerEnd) {
	for i := hand.Index; i <= hand.Little; i++ {
		ends[i] = word[mitt.FingerEnd](r, mitt.PathFinger(i))
	}
	return ends
}

// rib reads the multiple of the rib and the knits that begin each repeat. Knits and
// purls, given together, take the place of the multiple alone.
func (r *reader) rib() (multiple, knits int) {
	multiple = r.wholeOr("stitch.rib", 1, maxWhole, DefaultRib)
	k, p := r.pinned(mitt.PathKnits, 1, mitt.MaxRibStitches), r.pinned(mitt.PathPurls, 1, mitt.MaxRibStitches)
	for _, missing := range [][2]string{{mitt.PathKnits, mitt.PathPurls}, {mitt.PathPurls, mitt.PathKnits}} {
		if r.sheet.Given(missing[0]) == "" && r.sheet.Given(missing[1]) != "" {
			r.faults.Add(missing[0], "is missing; a rib is knits and purls in turn, such as 2 and 2")
		}
	}
	if k.On && p.On {
		return k.N + p.N, k.N
	}
	return multiple, 0
}

// word reads one of the words of a choice.
func word[T ~string](r *reader, path string) T {
	if r.sheet.Given(path) == "" {
		return ""
	}
	return T(r.choice(path, find(path)))
}

// pinned reads a whole number from low to high; it is not on if none was given.
func (r *reader) pinned(path string, low, high int) mitt.Pin {
	if r.sheet.Given(path) == "" {
		return mitt.Pin{}
	}
	before := len(r.faults)
	n := r.wholeOr(path, low, high, 0)
	return mitt.Pin{N: n, On: len(r.faults) == before}
}
