package sheet

import "thenar/internal/mitt"

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
		Knits:        r.pinned(mitt.PathKnits, 1, mitt.MaxRibStitches),
		Purls:        r.pinned(mitt.PathPurls, 1, mitt.MaxRibStitches),
		Top:          word[mitt.TopKind](r, mitt.PathTop),
		Band:         r.pinned(mitt.PathBand, 1, mitt.MaxBand),
		Wedges:       r.pinned(mitt.PathWedges, mitt.FewestWedges, mitt.MaxWedge),
	}
}

// word reads one of the words of a choice.
func word[T ~string](r *reader, path string) T { return T(r.choice(path, find(path))) }

// pinned reads a whole number from low to high; it is not on if none was given.
func (r *reader) pinned(path string, low, high int) mitt.Pin {
	if r.sheet.Given(path) == "" {
		return mitt.Pin{}
	}
	before := len(r.faults)
	n := r.wholeOr(path, low, high, 0)
	return mitt.Pin{N: n, On: len(r.faults) == before}
}
