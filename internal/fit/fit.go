// Package fit compares the fabric with the hand, round by round.
package fit

import (
	"fmt"
	"slices"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Row is one round: its upper edge, the girth of fabric and body there, the
// girth that was wanted (the body with its ease), and the stretch, body over
// fabric minus one. Lengths are in mm.
type Row struct {
	Section     stitch.Part
	Round       int
	Height      float64 // above the start of the section
	AboveCastOn float64
	Fabric      float64
	Body        float64
	Wanted      float64
	Stretch     float64
	Band        Band

	about  *stitch.About // of its section
	fitted bool          // it goes round hand or digit as wide as it is
}

// Rows gives a row for every round of every section, in the order knitted.
// The fabric's girth is its count over the stitches per mm, in
// stocking-stitch gauge throughout; heights are rounds over rounds per mm.
// The thumb stands on the round in which its stitches were put aside, so its
// heights above the cast-on begin there. The body is:
//
//   - cuff: the wrist; plain cuff: evenly from the wrist to the hand
//   - gusset: the hand with the thumb laid in, C(h)
//   - hand: the girths measured above the parting, else its circumference;
//     in a mitten without a thumb it begins at the wrist, and up to the
//     parting is C(h), since the thumb lies inside
//   - thumb: its girth; where a closed thumb is halved, the same share of it
//   - top: the girth where it begins × (1 + (end/N′ − 1)·x^1.5), x the share
//     of the top's rounds, the line that the decreases follow (common
//     practice, no source)
//
// What is wanted is the body with the ease of its part, and the thumb with
// what is added to it. The thumb's band takes that room as part of the thumb,
// since a narrow tube needs it; that of a mitten without a thumb takes the room
// in which the thumb lies as part of the hand.
func Rows(p *mitt.Plan, m stitch.Mitt, bands Bands) ([]Row, error) {
	return AppendRows(nil, p, m, bands)
}

// AppendRows appends what Rows gives to rows.
func AppendRows(rows []Row, p *mitt.Plan, m stitch.Mitt, bands Bands) ([]Row, error) {
	b, err := newBody(p)
	if err != nil {
		return nil, fmt.Errorf("fit.Rows: %w", err)
	}
	total := 0
	for _, s := range m.Sections {
		total += len(s.Rounds)
	}
	rows = slices.Grow(rows, total)
	worked := 0                   // rounds from the cast-on
	aside := map[stitch.Set]int{} // rounds below the one that put a set aside
	for j := range m.Sections {
		s := &m.Sections[j]
		if len(s.From) > 0 {
			worked = aside[s.From[0]]
		}
		over := s.Part.Over()
		for i, r := range s.Rounds {
			for _, set := range r.Aside {
				if set != "" {
					aside[set] = worked + i
				}
			}
			out := r.Out()
			row := Row{
				Section: s.Part, Round: i + 1,
				Height:      float64(i+1) / p.Gauge.Rounds,
				AboveCastOn: float64(worked+i+1) / p.Gauge.Rounds,
				Fabric:      float64(out) / p.Gauge.Stitches,
				about:       &s.About,
			}
			switch over {
			case stitch.OverMound, stitch.OverHand:
				row.fitted = true
			case stitch.OverDigit:
				row.fitted = !s.About.Digit.Closed || out >= s.About.Digit.Stitches
			}
			b.fill(&row, out, float64(i+1)/float64(len(s.Rounds)))
			row.Stretch = row.Body/row.Fabric - 1
			row.Band = bands.Of(row.Stretch)
			if over == stitch.OverDigit {
				row.Band = bands.Of(row.Wanted/row.Fabric - 1)
			}
			if !p.Thumbed() && (over == stitch.OverHand || over == stitch.OverTips) {
				row.Band = bands.Of(b.withThumb(row)/row.Fabric - 1)
			}
			rows = append(rows, row)
		}
		worked += len(s.Rounds)
	}
	return rows, nil
}
