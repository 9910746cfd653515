package fit

import (
	"math"

	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// body is the hand under the fabric.
type body struct {
	p     *mitt.Plan
	below hand.Girths // of the gusset, the thumb laid in
	above hand.Girths // where it parts, without the thumb
	parts float64     // mm from the hand's first round up to where the thumb parts
	crown float64     // girth where the top begins
}

func newBody(p *mitt.Plan) (*body, error) {
	below, err := p.Hand.Girths()
	if err != nil {
		return nil, err
	}
	above, err := p.Hand.AboveGirths()
	if err != nil {
		return nil, err
	}
	parts := 0.0
	if !p.Thumbed() {
		parts = p.Hand.WristToCrotch.MM() // the hand begins at the wrist
	}
	crown := above.At(float64(p.Body.RoundsAbove)/p.Gauge.Rounds - parts)
	return &body{p, below, above, parts, crown}, nil
}

// fill sets the girths of body and wish for a round of n stitches at a share
// of its section's rounds.
func (b *body) fill(row *Row, n int, share float64) {
	p := b.p
	wrist, h, e := p.Hand.Wrist.MM(), p.Hand.Circumference.MM(), &p.Ease
	ease := e.Hand
	switch row.Section.Over() {
	case stitch.OverWrist:
		row.Body, ease = wrist, e.Cuff
	case stitch.OverHeel:
		row.Body, ease = wrist+share*(h-wrist), e.Cuff+share*(e.Hand-e.Cuff)
	case stitch.OverMound:
		height := row.Height + p.BaseAbove.MM()
		row.Body, ease = b.below.At(height), p.EaseAt(height)
	case stitch.OverTips:
		left := float64(p.Top.End)/float64(p.Top.Stitches) - 1
		row.Body = b.crown * (1 + left*math.Pow(share, 1.5))
	case stitch.OverDigit:
		d := row.about.Digit
		left := 1.0 // of a closed one that is halved
		if d.Closed && n < d.Stitches {
			left = float64(n) / float64(d.Stitches)
		}
		row.Body = left * d.Girth
		row.Wanted = row.Body + left*d.Added
		return
	default:
		row.Body = b.above.At(row.Height - b.parts)
		if row.Height < b.parts { // the thumb lies inside
			row.Body = b.below.At(row.Height - b.parts + p.Hand.GussetLength.MM())
			row.Wanted = max(row.Body, h*(1+ease))
			return
		}
	}
	row.Wanted = row.Body * (1 + ease)
}

// withThumb is the body's girth at a round of a mitten without a thumb, and the
// room in which the thumb lies: as much wider as the palm with the thumb is than
// the hand. Below the parting that is the palm.
func (b *body) withThumb(row Row) float64 {
	h, palm := b.p.Hand.Circumference.MM(), b.p.Hand.Palm.MM()
	if row.Section.Over() == stitch.OverHand && row.Height < b.parts {
		return max(row.Body, palm)
	}
	return row.Body * max(1, palm/h)
}
