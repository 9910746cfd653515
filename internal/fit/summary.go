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
		if !fitted(p, r) {
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

// Zones are the ranges of gusset, hand and thumb, over the rounds that Sum
// looks at.
func Zones(p *mitt.Plan, rows []Row) map[stitch.Part]Range {
	zones := map[stitch.Part]Range{}
	for _, r := range rows {
		if !fitted(p, r) {
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

// fitted tells a round that goes round the hand or thumb as wide as it is from
// one of cuff, top or a closing thumb.
func fitted(p *mitt.Plan, r Row) bool {
	switch r.Section {
	case stitch.Gusset, stitch.Hand:
		return true
	case stitch.Thumb:
		return p.Kind != mitt.Mitten || r.Fabric*p.Gauge.Stitches > float64(p.Thumb.Stitches.N)-0.5
	}
	return false
}

type place struct {
	name string
	row  int
}

// sites are the wrist, the palm with the thumb where it parts, the hand above
// it and the thumb: the last row of a part, but of the hand the last before an
// edging, and of the thumb likewise.
func sites(p *mitt.Plan, rows []Row) []place {
	var list []place
	last := func(name string, part stitch.Part, less int) {
		for i := len(rows) - 1; i >= 0; i-- {
			if rows[i].Section == part {
				at := max(i-less, i-rows[i].Round+1)
				list = append(list, place{name, at})
				return
			}
		}
	}
	last("wrist", stitch.Cuff, 0)
	last("palm with thumb", stitch.Gusset, 0)
	if !p.Thumbed() {
		inside(p, rows, &list)
	}
	last("hand", stitch.Hand, p.Body.EdgingRounds+1)
	if p.Kind == mitt.Mitten {
		for i, r := range rows {
			if r.Section == stitch.Thumb && r.Round == cornered(p) {
				list = append(list, place{"thumb", i})
			}
		}
		return list
	}
	last("thumb", stitch.Thumb, p.Thumb.EdgingRounds+boolInt(p.Thumb.EdgingStitches != p.Thumb.Stitches.N))
	return list
}

// inside adds the palm of a mitten without a thumb: the last round below the
// place where the thumb parts.
func inside(p *mitt.Plan, rows []Row, list *[]place) {
	for i := len(rows) - 1; i >= 0; i-- {
		if rows[i].Section == stitch.Hand && rows[i].Height < p.Hand.WristToCrotch.MM() {
			*list = append(*list, place{"palm with thumb", i})
			return
		}
	}
}

// cornered is the round from which a thumb has its own count: the last in which
// its corners are decreased, or its first.
func cornered(p *mitt.Plan) int {
	if list := p.Thumb.DecreaseRounds; len(list) > 0 {
		return list[len(list)-1]
	}
	return 1
}

func boolInt(b bool) int {
	if b {
		return 1
	}
	return 0
}
