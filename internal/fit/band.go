package fit

import "thenar/internal/fault"

// Band sorts a round by its stretch.
type Band int

// The bands, from loose to tight.
const (
	TooLoose Band = iota
	Easy
	Snug
	TooTight
)

// Words is what the band is called.
func (b Band) Words() string {
	return [...]string{"too loose", "easy", "snug", "too tight"}[b]
}

// Bands are the stretches, body over fabric minus one, at which a band ends:
// below Loose the fabric is too loose, from Snug on it is stretched, above
// Tight it is too tight.
type Bands struct{ Loose, Snug, Tight float64 }

// DefaultBands: a fabric of more than 1¼ times the body flaps, one that the
// body fills is snug, and one that is stretched by more than 15 % is too tight
// for a mitt that stays on for hours (common practice, no source; socks are
// worked 10 to 20 % smaller than the foot).
var DefaultBands = Bands{Loose: -0.20, Snug: 0, Tight: 0.15}

// Of is the band of a stretch.
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

// Check refuses bands that don't follow each other, each from −0.9 to 3.
func (b Bands) Check() fault.Fields {
	var faults fault.Fields
	for _, e := range []struct {
		path string
		at   float64
	}{{"fit.loose_below", b.Loose}, {"fit.snug_from", b.Snug}, {"fit.tight_above", b.Tight}} {
		if !(e.at >= -0.9 && e.at <= 3) {
			faults.Add(e.path, "is %g; write body over fabric minus one, from -0.9 to 3: 0.15, typed also as 15 %%, is a fabric stretched by 15 %%", e.at)
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
