// Package fit compares the fabric with the hand, round by round.
package fit

import (
	"fmt"
	"math"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Row is one round: its upper edge, the girth of fabric and body there, and
// the stretch, body over fabric minus one. Lengths are in mm.
type Row struct {
	Section     stitch.Part
	Round       int
	Height      float64 // above the start of the section
	AboveCastOn float64
	Fabric      float64
	Body        float64
	Stretch     float64
}

// Rows gives a row for every round of every section, in the order knitted.
// The fabric's girth is its count over the stitches per mm, in
// stocking-stitch gauge throughout; heights are rounds over rounds per mm.
// The thumb stands on the division, so its heights above the cast-on begin
// there. The body is:
//
//   - cuff: the wrist; plain cuff: evenly from the wrist to the hand
//   - gusset: the hand with the thumb laid in, C(h)
//   - hand: its circumference
//   - thumb: its girth; where a closed thumb is halved, the same share of it
//   - top: H·(1 + (end/N′ − 1)·x^1.5), x the share of the top's rounds, the
//     line that the decreases follow (common practice, no source)
func Rows(p *mitt.Plan, m stitch.Mitt) ([]Row, error) {
	girths, err := p.Hand.Girths()
	if err != nil {
		return nil, fmt.Errorf("fit.Rows: %w", err)
	}
	total := 0
	for _, s := range m.Sections {
		total += len(s.Rounds)
	}
	rows := make([]Row, 0, total)
	worked, division := 0, 0 // rounds from the cast-on
	for _, s := range m.Sections {
		switch s.Part {
		case stitch.Hand:
			division = worked
		case stitch.Thumb:
			worked = division
		}
		for i, r := range s.Rounds {
			row := Row{
				Section: s.Part, Round: i + 1,
				Height:      float64(i+1) / p.Gauge.Rounds,
				AboveCastOn: float64(worked+i+1) / p.Gauge.Rounds,
				Fabric:      float64(r.Out()) / p.Gauge.Stitches,
			}
			share := float64(i+1) / float64(len(s.Rounds))
			switch {
			case s.Part == stitch.Gusset:
				row.Body = girths.At(row.Height)
			case s.Part == stitch.Thumb:
				row.Body = thumb(p, r.Out())
			default:
				row.Body = body(p, s.Part, share)
			}
			row.Stretch = row.Body/row.Fabric - 1
			rows = append(rows, row)
		}
		worked += len(s.Rounds)
	}
	return rows, nil
}

// body is the girth in mm at a share of a section's rounds.
func body(p *mitt.Plan, part stitch.Part, share float64) float64 {
	h := &p.Hand
	switch part {
	case stitch.Cuff:
		return h.Wrist.MM()
	case stitch.CuffPlain:
		return h.Wrist.MM() + share*(h.Circumference.MM()-h.Wrist.MM())
	case stitch.Top:
		left := float64(p.Top.End)/float64(p.Top.Stitches) - 1
		return h.Circumference.MM() * (1 + left*math.Pow(share, 1.5))
	}
	return h.Circumference.MM()
}

// thumb is the girth in mm of the thumb inside a round of n stitches.
func thumb(p *mitt.Plan, n int) float64 {
	if t := p.Thumb.Stitches.N; p.Kind == mitt.Mitten && n < t {
		return p.Hand.Thumb.MM() * float64(n) / float64(t)
	}
	return p.Hand.Thumb.MM()
}
