package fit

import "thenar/internal/fault"

// Band says how tight a round is.
type Band int

// The bands, from loose to tight.
const (
	TooLoose Band = iota
	Easy
	Snug
	TooTight
)

// Words returns the band's name.
func (b Band) Words() string {
	return [...]string{"too loose", "easy", "snug", "too tight"}[b]
}

// Bands are the limits of the bands as stretches, body over fabric minus one:
// below Loose a fabric is too loose, from Snug on it is snug, above Tight it is
// too tight.
type Bands struct{ Loose, Snug, Tight float64 }

// DefaultBands are the bands if a person gives none. A fabric of more than 1¼
// times the body flaps, one that the body fills is snug, and one stretched by
// more than 15 % is too tight for a mitt that is worn for hours (common practice,
// no source; socks are knitted 10 to 20 % smaller than the foot).
var DefaultBands = Bands{Loose: -0.20, Snug: 0, Tight: 0.15}

// Of returns the band of a stretch.
func (b Bands) Of(stretch float64) Band {
	switch {
	case stretch < b.Loose:
		return TooLoose
	case stretch < b.Snug:
		return Easy
	case stretch <= b.Tight:
		return Snug
	}
	return TooTight
}

// Check returns faults unless the bands are in order and from −0.9 to 3.
func (b Bands) Check() fault.Fields {
	var faults fault.Fields
	for _, e := range []struct {
		path string
		at   float64
	}{{"fit.loose_below", b.Loose}, {"fit.snug_from", b.Snug}, {"fit.tight_above", b.Tight}} {
		if !(e.at >= -0.9 && e.at <= 3) {
			faults.Add(e.path, "is %g; write a stretch from -0.9 to 3, such as 0.15, which is 15\u00a0%% wider", e.at)
		}
	}
	if len(faults) > 0 {
		return faults
	}
	if b.Snug < b.Loose {
		faults.Add("fit.snug_from", "is %g, below fit.loose_below (%g); write a stretch that is no smaller", b.Snug, b.Loose)
	}
	if b.Tight < b.Snug {
		faults.Add("fit.tight_above", "is %g, below fit.snug_from (%g); write a stretch that is no smaller", b.Tight, b.Snug)
	}
	return faults
}
