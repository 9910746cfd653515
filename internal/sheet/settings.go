package sheet

import "thenar/internal/units"

// Settings are what a sheet says beside the plan itself. A value that was not
// given is nil or zero.
type Settings struct {
	Fit
	Yarn  Yarn
	Chart Chart
}

// Fit says how the fit is judged.
type Fit struct {
	Tolerance          units.Length // how far the fabric may be off the wish
	Loose, Snug, Tight *float64     // the stretches that part its bands
}

// Yarn is what is known of the yarn: its ball as on the band, and a swatch
// that was weighed or unravelled. Masses are in grams.
type Yarn struct {
	BallLength       units.Length
	BallMass         float64
	Stitches, Rounds float64
	SwatchMass       float64
	Unravelled       units.Length
	Kept             bool // the swatch is not unravelled for the mitts
}

// Yard is the other unit, beside the metre, of a ball's length.
const Yard = 914_400 * units.Micrometre

// Settings reads the settings. It ignores faults, which Request reports.
func (s Sheet) Settings() Settings { return s.reader().settings() }

func (r *reader) settings() Settings { return Settings{r.fit(), r.yarn(), r.chart()} }

func (r *reader) fit() Fit {
	return Fit{
		Tolerance: r.length("fit.tolerance"),
		Loose:     r.share("fit.loose_below"), Snug: r.share("fit.snug_from"), Tight: r.share("fit.tight_above"),
	}
}

func (r *reader) yarn() Yarn {
	long := units.Metre
	if r.choice("yarn.length_unit", find("yarn.length_unit")) == "yd" {
		long = Yard
	}
	of := func(path string) units.Length { return units.Length(r.number(path, "") * float64(long)) }
	return Yarn{
		BallLength: of("yarn.ball_length"), BallMass: r.number("yarn.ball_mass", ""),
		Stitches: r.number("yarn.swatch_stitches", ""), Rounds: r.number("yarn.swatch_rounds", ""),
		SwatchMass: r.number("yarn.swatch_mass", ""), Unravelled: of("yarn.swatch_length"),
		Kept: r.flag("yarn.swatch_kept", false),
	}
}
