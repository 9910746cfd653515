package fit

import (
	"math"
	"slices"

	"thenar/internal/gauge"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Tolerance is the difference from the wanted girth, in mm, up to which a girth
// fits, if the person gives none (common practice, no source).
const Tolerance = 5.0

// Site is a place for which the fit is shown. Girths are in mm.
type Site struct {
	Name      string
	Section   stitch.Part
	Round     int
	Fabric    float64
	Low, High float64 // 95 % interval of the fabric
	Body      float64
	Wanted    float64
	Chance    float64 // that the fabric comes out within the tolerance of the wanted girth
}

// Summary is the fit of a whole mitt. Worst and Mean are absolute differences of
// fabric and wanted girth in mm, over the rounds of gusset, hand and digits that
// are not shaped to an end.
type Summary struct {
	Worst   float64
	WorstAt Row
	Mean    float64
	Half    float64 // half-width of the 95 % interval of every girth, as a share
	Sites   []Site
	Chance  float64 // that all sites fit
	Tight   []Row   // the rounds that are too tight, those of fingers first
}

// Summarise summarises the rows of a plan for a tolerance in mm. The gauge's error
// is the same share of every girth, so the chance that all sites fit is that of an
// error which each of them tolerates.
func Summarise(p *mitt.Plan, rows []Row, tolerance float64) Summary {
	doubt := &p.Gauge.StitchDoubt
	s := Summary{Half: doubt.Half()}
	chance := chanceOf(doubt)
	low, high := math.Inf(-1), math.Inf(1)
	places := sites(p, rows)
	s.Sites = make([]Site, 0, len(places))
	for _, at := range places {
		r := &rows[at.row]
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
	s.Tight = make([]Row, 0, tight(rows))
	n := 0
	for i := range rows {
		r := &rows[i]
		if r.Band == TooTight {
			s.Tight = append(s.Tight, *r)
		}
		if !r.fitted {
			continue
		}
		off := math.Abs(r.Fabric - r.Wanted)
		s.Mean += off
		n++
		if off > s.Worst {
			s.Worst, s.WorstAt = off, *r
		}
	}
	slices.SortStableFunc(s.Tight, func(a, b Row) int { return order(a) - order(b) })
	s.Mean /= float64(max(n, 1))
	return s
}

// tight returns how many rounds are too tight.
func tight(rows []Row) (n int) {
	for i := range rows {
		if rows[i].Band == TooTight {
			n++
		}
	}
	return n
}

// order returns what is told first of rounds that are too tight: a finger is the first to
// tingle.
func order(r Row) int {
	if _, finger := mitt.FingerOf(r.Section); finger {
		return 0
	}
	return 1
}

// Range is the range of fabric minus wanted girth over some rounds, in mm, from
// the tightest to the loosest.
type Range struct{ Low, High float64 }

// Within reports whether r is within the tolerance, or within other, at each of
// its two ends.
func (r Range) Within(tolerance float64, other Range) bool {
	return r.Low >= min(-tolerance, other.Low)-1e-9 && r.High <= max(tolerance, other.High)+1e-9
}

// Zones returns the ranges of gusset, hand and digits, over the rounds that are
// not shaped to an end.
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

// allowed returns the range of the gauge's error, as a share, for which a round
// is within the tolerance.
func allowed(r *Row, tolerance float64) (from, to float64) {
	return (r.Wanted-tolerance)/r.Fabric - 1, (r.Wanted+tolerance)/r.Fabric - 1
}

// chanceOf returns the function that gives the chance of an error between two
// shares. Without doubt that is 0 or 1.
func chanceOf(d *gauge.Doubt) func(from, to float64) float64 {
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

// place is a site by the index of its row.
type place struct {
	name string
	row  int
}

// sites returns the wrist, the palm with the thumb where it parts, the hand above
// it and each digit: the row that the section names as its site, else its last.
func sites(p *mitt.Plan, rows []Row) []place {
	var list []place
	for from := 0; from < len(rows); {
		to := from + rowsOfSection(rows[from:])
		section, at := rows[from].Section, to-1
		if site := rows[from].about.Site; site > 0 {
			at = slices.IndexFunc(rows[from:to], func(r Row) bool { return r.Round == site })
			if at += from; at < from {
				at = to
			}
		}
		name := ""
		switch rows[from].over {
		case stitch.OverWrist:
			name = "wrist"
		case stitch.OverMound:
			name = "palm with thumb"
		case stitch.OverHand:
			name = section.Words()
			if below := palmBelow(p, rows[from:to]); below >= 0 {
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

// rowsOfSection returns the number of leading rows that are of the same section.
func rowsOfSection(rows []Row) int {
	n := 1
	for n < len(rows) && rows[n].Section == rows[0].Section {
		n++
	}
	return n
}

// palmBelow returns the index of the palm with the thumb in a mitten without a
// thumb: the last row of the hand below where the thumb parts, −1 if there is
// none.
func palmBelow(p *mitt.Plan, rows []Row) int {
	if !p.Tucked() {
		return -1
	}
	for i := len(rows) - 1; i >= 0; i-- {
		if rows[i].Height < p.Hand.WristToCrotch.MM() {
			return i
		}
	}
	return -1
}
