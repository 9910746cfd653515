package fit

import (
	"math"

	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// body is the hand under the fabric. Girths and heights are in mm.
type body struct {
	p       *mitt.Plan
	below   hand.Girths // up to where the thumb parts, with the thumb laid in
	above   hand.Girths // above that, without the thumb
	parting float64     // height above the hand's first round at which the thumb parts
	crown   float64     // girth where the top begins
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
	parting := 0.0
	if p.Tucked() {
		parting = p.Hand.WristToCrotch.MM() // the hand begins at the wrist
	}
	crown := above.At(float64(p.Body.RoundsAbove)/p.Gauge.Rounds - parting)
	return &body{p, below, above, parting, crown}, nil
}

// fill sets the body's girth and the wanted girth of a round of n stitches. share
// is the share of the section's rounds that end with it.
func (b *body) fill(row *Row, n int, share float64) {
	p := b.p
	wrist, h, e := p.Hand.Wrist.MM(), p.Hand.Circumference.MM(), &p.Ease
	ease := e.Hand
	switch row.over {
	case stitch.OverWrist:
		row.Body, ease = wrist, e.Cuff
		if wide := row.about.Around; wide > 0 { // a sleeve, which needs no ease
			row.Body, ease = wide+share*(wrist-wide), share*e.Cuff
		}
	case stitch.OverHeel:
		row.Body, ease = wrist+share*(h-wrist), e.Cuff+share*(e.Hand-e.Cuff)
	case stitch.OverMound:
		height := row.Height + row.about.Above + p.BaseAbove.MM()
		row.Body, ease = b.below.At(height), p.EaseAt(height)
	case stitch.OverTips:
		row.Body = b.crown * tip(p, row, share)
	case stitch.OverCap:
		row.Body, ease = b.above.At(max(0, row.Height+row.about.Above-p.Hand.GussetLength.MM())), p.Ease.Cap
		if row.closes {
			row.Body *= tip(p.OverFingers(), row, share)
		}
	case stitch.OverDigit:
		d := row.about.Digit
		filled := 1.0 // share of the digit's girth; less in the tip of a closed one
		if d.Closed && n < d.Stitches {
			filled = float64(n) / float64(d.Stitches)
		}
		row.Body = filled * d.Girth
		row.Wanted = row.Body + filled*d.Added
		return
	case stitch.OverHand:
		if row.joined { // it lies round hand and thumb, where that parts
			row.Body, ease = b.below.At(p.Hand.GussetLength.MM()+p.BaseAbove.MM()), e.Palm
			break
		}
		if row.about.Below {
			row.Body, ease = wrist+share*(h-wrist), e.Cuff+share*(e.Hand-e.Cuff)
			break
		}
		if share := row.about.Share; share > 0 { // above the rest of the hand
			row.Body = b.above.At(float64(p.Body.RoundsAbove)/p.Gauge.Rounds+row.Height) * share
			break
		}
		fallthrough
	default:
		row.Body = b.above.At(row.Height - b.parting)
		if row.Height < b.parting { // the thumb lies inside
			row.Body = b.below.At(row.Height - b.parting + p.Hand.GussetLength.MM())
			row.Wanted = max(row.Body, h*(1+ease))
			return
		}
	}
	row.Wanted = row.Body * (1 + ease)
}

// tip returns the girth of the ends of the fingers in a round of a top, as a share of that
// below them. A rounded or
// banded top follows their line. Any other ends where they end, and lies round what a
// rounded one would be over.
func tip(p *mitt.Plan, row *Row, share float64) float64 {
	t, q := p.Top, p.Gauge.Rounds
	end := float64(t.End)
	if !p.Make.TopRounded() {
		end = float64(t.Stitches % 4)
		end += mitt.TopEnd
		long := mitt.TopLength(p.Hand.Length.MM())
		share = max(0, 1-(float64(t.Rounds)/q-row.Height)/long)
	}
	return 1 + (end/float64(t.Stitches)-1)*math.Pow(share, 1.5)
}

// withThumb returns the body's girth in a round of a mitten without a thumb, with
// room for the thumb: it is wider in the ratio of the palm with the thumb to the
// hand. Up to where the thumb parts it is at least that palm.
func (b *body) withThumb(row *Row) float64 {
	h, palm := b.p.Hand.Circumference.MM(), b.p.Hand.Palm.MM()
	if row.over == stitch.OverHand && row.Height < b.parting {
		return max(row.Body, palm)
	}
	return row.Body * max(1, palm/h)
}
