package sheet

import (
	"thenar/internal/gauge"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

// pathSwatches is the path of the list of swatches.
const pathSwatches = "gauge.swatches"

// Swatches reads the swatches alone.
func (s Sheet) Swatches() ([]gauge.Swatch, error) { return read(s, (*reader).swatches) }

// GaugeOver returns the usual length over which gauge is counted, in unit u:
// 10 cm, or 4 in for inches (common practice, no source).
func GaugeOver(u units.Unit) string {
	switch u {
	case units.IN:
		return "4"
	case units.MM:
		return "100"
	}
	return "10"
}

// OverGauge gives each count of a swatch that was typed without its length the
// usual one.
func (s Sheet) OverGauge() { s.OverGaugeIn(s.Unit()) }

// OverGaugeIn does so for a part of a sheet whose unit is u.
func (s Sheet) OverGaugeIn(u units.Unit) {
	for i := range s.Rows(pathSwatches) {
		at := row(pathSwatches, i)
		for count, length := range map[string]string{".stitches": ".width", ".rounds": ".height"} {
			if s.Given(at+count) != "" && s.Given(at+length) == "" {
				s[at+length] = GaugeOver(u)
			}
		}
	}
}

// Gauge reads the swatches and how unevenly the person knits, and combines them.
func (s Sheet) Gauge() (gauge.Gauge, error) {
	g, err := read(s, (*reader).gauge)
	if err != nil {
		return gauge.Gauge{}, err
	}
	return g.combined()
}

// gaugeSection is the gauge section as it was given.
type gaugeSection struct {
	swatches  []gauge.Swatch
	variation float64
}

func (g gaugeSection) combined() (gauge.Gauge, error) {
	return gauge.Of(g.swatches, g.variation, pathSwatches)
}

func (r *reader) gauge() gaugeSection { return gaugeSection{r.swatches(), r.variation()} }

// Worked returns how fabric is worked, in the words of a swatch.
func Worked(flat bool) string {
	if flat {
		return "flat"
	}
	return "round"
}

func (r *reader) swatches() []gauge.Swatch {
	var swatches []gauge.Swatch
	worked, flat := find(pathSwatches).find("worked"), r.sheet.Given(mitt.PathFlat) == "true"
	for i := range r.sheet.Rows(pathSwatches) {
		at := row(pathSwatches, i)
		swatches = append(swatches, gauge.Swatch{
			Stitches:  r.number(at+".stitches", "count the stitches over the width"),
			Width:     r.required(at+".width", "give the width over which the stitches were counted"),
			Rounds:    r.number(at+".rounds", ""),
			Height:    r.length(at + ".height"),
			Flat:      r.choice(at+".worked", worked) == Worked(true) || flat && r.flag(at+".on_needles", false),
			ForFlat:   flat,
			Washed:    r.flag(at+".washed", false),
			OnNeedles: r.flag(at+".on_needles", false),
			CountedTo: r.numberOr(at+".counted_to", 0.5),
			Piece:     r.sheet.Given(at + ".piece"),
		})
		r.date(at + ".date")
	}
	return swatches
}

// variation reads how unevenly the person knits: the standard deviation of the
// gauge as a share of it, from 0 to 0.2.
func (r *reader) variation() float64 {
	const path = "gauge.hand_variation"
	v := r.share(path)
	if v == nil {
		return gauge.HandVariation
	}
	if *v < 0 || *v > 0.2 {
		r.faults.Add(path, "is %g; write a share from 0 to 0.2, or a percentage: 1.5\u00a0%%", *v)
	}
	return *v
}
