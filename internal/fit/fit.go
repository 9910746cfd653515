// Package fit compares the fabric of a mitt with the hand, round by round.
package fit

import (
	"fmt"
	"slices"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Row compares one round with the body at its upper edge. Lengths are in mm.
type Row struct {
	Section     stitch.Part
	Round       int // in the section, from 1, as it is worked
	Side        stitch.Side
	Place       int     // in the section, from 1, counted from its lower edge
	Height      float64 // above the lower edge of the section
	AboveCastOn float64 // height above the cuff's edge, the cast-on of most mitts
	Fabric      float64 // girth of the fabric
	Body        float64 // girth of the body
	Wanted      float64 // girth of the body with its ease
	Stretch     float64 // body over fabric minus one
	Band        Band

	over   stitch.Over   // what its section lies on
	about  *stitch.About // of its section
	joined bool          // the thumb is in it already, below the rest of its section
	closes bool          // its section ends in a tip
	fitted bool          // the round follows the hand or digit, and is not shaped to an end
}

// Rows returns a row for every round of every section, from the cuff's edge up, and
// then those of the thumb; that is the order knitted, but in a mitt from the tip. The
// fabric's girth is the stitches of the round divided by the stitches per mm, at
// the gauge of stocking stitch throughout; heights are rounds divided by rounds
// per mm, those of garter stitch by its own, and a hem's inside has none. What takes up
// stitches that were put aside begins at the round that did so, everything else where
// the section worked before it ended. The body is:
//
//   - cuff: the wrist, or evenly from what its lower edge goes round to it; plain cuff: evenly from the wrist to the hand
//   - gusset: the hand with the thumb laid in, C(h)
//   - hand: the girths measured above where the thumb parts, else the hand's
//     circumference; in a mitten without a thumb the hand begins at the wrist and
//     is C(h) up to where the thumb parts, since the thumb lies inside
//   - upper hand: that of the hand, times the girth of a tape round three fingers over
//     that of one round all four
//   - thumb or finger: its girth, in a closed tip reduced like its stitches
//   - top: the girth where it begins × (1 + (end/N′ − 1)·x^1.5), with x the share
//     of the top's rounds, the line that the decreases follow (common practice,
//     no source)
//
// The wanted girth is the body's with the ease of its part, or the thumb's or finger's
// with the room added to it. Its band counts that room as thumb, since a narrow
// tube needs it. In a mitten without a thumb the band counts the room for the
// thumb as hand.
func Rows(p *mitt.Plan, m stitch.Mitt, bands Bands) ([]Row, error) {
	return AppendRows(nil, p, m, bands)
}

// AppendRows appends the result of Rows to rows.
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
	begun, tucked := beginnings(m, p.Gauge.Rounds), p.Tucked()
	for _, s := range m.Upward() {
		over, joined, closes, begin := s.Part.Over(), s.AfterJoin(), s.Closed(), begun[m.Order(s.Part)-1]
		for i := range s.Rounds {
			round := s.Lies(i + 1)
			out := s.Above(round)
			up := s.AtGauge(i+1, p.Gauge.Rounds)
			rows = append(rows, Row{
				Section: s.Part, Round: round, Place: i + 1, Side: s.Rounds[round-1].Side,
				Height:      up / p.Gauge.Rounds,
				AboveCastOn: (begin + up) / p.Gauge.Rounds,
				Fabric:      float64(out) / p.Gauge.Stitches,
				over:        over, about: &s.About, joined: round >= joined, closes: closes,
			})
			row := &rows[len(rows)-1]
			switch over {
			case stitch.OverMound, stitch.OverHand:
				row.fitted = true
			case stitch.OverDigit:
				row.fitted = !s.About.Digit.Closed || out >= s.About.Digit.Stitches
			}
			b.fill(row, out, float64(i+1)/float64(len(s.Rounds)))
			row.Stretch = row.Body/row.Fabric - 1
			row.Band = bands.Of(row.Stretch)
			if over == stitch.OverDigit {
				row.Band = bands.Of(row.Wanted/row.Fabric - 1)
			}
			if tucked && (over == stitch.OverHand || over == stitch.OverTips) {
				row.Band = bands.Of(b.withThumb(row)/row.Fabric - 1)
			}
		}
	}
	return rows, nil
}

// beginnings returns how many rounds above the cuff's edge, at a gauge of q rounds over a
// mm, each section begins.
func beginnings(m stitch.Mitt, q float64) []float64 {
	begun := make([]float64, len(m.Sections))
	at := 0.0
	aside, base := map[stitch.Set]float64{}, 0.0 // rounds below the one that put a set aside, and below the base of the thumb
	for _, s := range asStanding(m) {
		if set := s.Joins(); set != "" {
			at = aside[set]
		}
		switch s.Part.Over() {
		case stitch.OverMound:
			base = at
		case stitch.OverCap:
			at = max(0, base+s.About.Above*q)
		}
		begun[m.Order(s.Part)-1] = at
		for i := range s.Rounds {
			for _, set := range s.Rounds[s.Lies(i+1)-1].Aside {
				if set != "" {
					aside[set] = at + s.AtGauge(i, q)
				}
			}
		}
		at += s.AtGauge(len(s.Rounds), q)
	}
	return begun
}

// asStanding returns the sections with rounds so that each comes after what it stands on: in
// the order worked, or of a mitt from the fingertips as they lie.
func asStanding(m stitch.Mitt) []*stitch.Section {
	if m.Down() {
		return m.Upward()
	}
	var list []*stitch.Section
	for i := range m.Sections {
		if s := &m.Sections[i]; len(s.Rounds) > 0 {
			list = append(list, s)
		}
	}
	return list
}
