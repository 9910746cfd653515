package fit

import (
	"math"

	"thenar/internal/gauge"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Tolerance is how far a girth may be off what was wanted and still fit, in
// mm, where the person names no other (common practice, no source).
const Tolerance = 5.0

// Site is a place at which the fit is told: the fabric's girth with its 95 %
// interval, the body's, what was wanted, and the chance that the fabric comes
// out within the tolerance of it.
type Site struct {
	Name      string
	Section   stitch.Part
	Round     int
	Fabric    float64
	Low, High float64
	Body      float64
	Wanted    float64
	Chance    float64
}

// Summary is the fit of a whole mitt. Worst and Mean are over the rounds of
// gusset, hand and thumb that are not shaped to an end, fabric against wish in
// mm, whichever the direction; Chance is that all sites fit together.
type Summary struct {
	Worst   float64
	WorstAt Row
	Mean    float64
	Half    float64 // relative half-width of the 95 % interval of every girth
	Sites   []Site
	Chance  float64
	Tight   []Row // the rounds that are too tight
}

// Sum sums up the rows of a plan for a tolerance in mm. All girths share the
// gauge's error, as a share of themselves: so the chance that all fit is that
// of the errors that all of them allow.
func Sum(p *mitt.Plan, rows []Row, tolerance float64) Summary {
	doubt := &p.Gauge.StitchDoubt
	s := Summary{Half: doubt.Half()}
	chance := chance(doubt)
	low, high := math.Inf(-1), math.Inf(1)
	for _, at := range sites(p, rows) {
		r := rows[at.row]
		site := Site{
			Name: at.name, Section: r.Section, Round: r.Round, Fabric: r.Fabric,
			Low: r.Fabric * (1 - s.Half), High: r.Fabric * (1 + s.Half), Body: r.Body, Wanted: r.Wanted,
		}
		from, to := allowed(r, tolerance)
		site.Chance = chance(from, to)
		low, high = max(low, from), min(high, to)
		s.Sites = append(s.Sites, site)
	}
	s.Chance = chance(low, high)
	n := 0
	for _, r := range rows {
		if r.Band == TooTight {
			s.Tight = append(s.Tight, r)
		}
		if !r.fitted {
			continue
		}
		off := math.Abs(r.Fabric - r.Wanted)
		s.Mean += off
		n++
		if off > s.Worst {
			s.Worst, s.WorstAt = off, r
		}
	}
	s.Mean /= float64(max(n, 1))
	return s
}

// Range is how far fabric may lie from what was wanted, fabric minus wish in
// mm, from the tightest round to the loosest.
type Range struct{ Low, High float64 }

// Within tells whether r lies within a tolerance, or no further off than other
// on either side.
func (r Range) Within(tolerance float64, other Range) bool {
	return r.Low >= min(-tolerance, other.Low)-1e-9 && r.High <= max(tolerance, other.High)+1e-9
}

// Zones are the ranges of gusset, hand and digits, over the rounds that Sum
// looks at.
func Zones(rows []Row) map[stitch.Part]Range {
	zones := map[stitch.Part]Range{}
	for _, r := range rows {
		if !r.fitted {
			continue
		}
		off := r.Fabric - r.Wanted
		zone, begun := zones[r.Section]
		if !begun {
			zone = Range{off, off}
		}
		zones[r.Section] = Range{min(zone.Low, off), max(zone.High, off)}
	}
	return zones
}

// allowed is the range of the gauge's error, as a share of the fabric, within
// which a round stays within the tolerance.
func allowed(r Row, tolerance float64) (from, to float64) {
	return (r.Wanted-tolerance)/r.Fabric - 1, (r.Wanted+tolerance)/r.Fabric - 1
}

// chance returns that of an error between two shares; without any doubt it is
// certain or none.
func chance(d *gauge.Doubt) func(from, to float64) float64 {
	if len(d.Rectangles) == 0 && d.Variation == 0 && d.Other == 0 {
		return func(from, to float64) float64 {
			if from <= 0 && to >= 0 {
				return 1
			}
			return 0
		}
	}
	chances := d.Chances()
	return chances.Within
}

type place struct {
	name string
	row  int
}

// sites are the wrist, the palm with the thumb where it parts, the hand above
// it and each digit: the last row of a part, or the one that the part says.
func sites(p *mitt.Plan, rows []Row) []place {
	var list []place
	for from := 0; from < len(rows); {
		to := from + sectionRows(rows[from:])
		section, at := rows[from].Section, to-1
		if site := rows[from].about.Site; site > 0 {
			at = from + site - 1
		}
		name := ""
		switch section.Over() {
		case stitch.OverWrist:
			name = "wrist"
		case stitch.OverMound:
			name = "palm with thumb"
		case stitch.OverHand:
			name = section.Words()
			if below := inside(p, rows[from:to]); below >= 0 {
				list = append(list, place{"palm with thumb", from + below})
			}
		case stitch.OverDigit:
			name = section.Words()
		}
		if name != "" && at < to {
			list = append(list, place{name, at})
		}
		from = to
	}
	return list
}

// sectionRows is how many rows at the head of some are of one section.
func sectionRows(rows []Row) int {
	n := 1
	for n < len(rows) && rows[n].Section == rows[0].Section {
		n++
	}
	return n
}

// inside is the palm of a mitten without a thumb: the last of the hand's rows
// below the place where the thumb parts; −1 where there is none.
func inside(p *mitt.Plan, rows []Row) int {
	if p.Thumbed() {
		return -1
	}
	for i := len(rows) - 1; i >= 0; i-- {
		if rows[i].Height < p.Hand.WristToCrotch.MM() {
			return i
		}
	}
	return -1
}
