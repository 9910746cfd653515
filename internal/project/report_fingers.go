package project

import (
	"cmp"

	"thenar/internal/hand"
	"thenar/internal/mitt"
)

// reportFingers has something of each finger of a glove.
type reportFingers struct {
	Index  reportFinger `json:"index"`
	Middle reportFinger `json:"middle"`
	Ring   reportFinger `json:"ring"`
	Little reportFinger `json:"little"`
}

// reportFinger is one finger. Its stitches are those of its first round, the bridges
// beside it among them; the edging is that of one that ends in an edging.
type reportFinger struct {
	Palm           int `json:"palm"`
	Back           int `json:"back"`
	Stitches       int `json:"stitches"`
	Decreases      int `json:"decreases,omitempty"`
	Rounds         int `json:"rounds"`
	Closing        int `json:"closing_rounds"`
	EdgingRounds   int `json:"edging_rounds,omitempty"`
	EdgingStitches int `json:"edging_stitches,omitempty"`
}

type reportBridges struct {
	IndexMiddle int `json:"index_middle"`
	MiddleRing  int `json:"middle_ring"`
	RingLittle  int `json:"ring_little"`
}

// reportFingersMade is how the fingers are made, under the keys of the sheet.
type reportFingersMade struct {
	Index  mitt.FingerEnd `json:"index"`
	Middle mitt.FingerEnd `json:"middle"`
	Ring   mitt.FingerEnd `json:"ring"`
	Little mitt.FingerEnd `json:"little"`
	Thumb  mitt.FingerEnd `json:"thumb"`
	Cap    bool           `json:"cap"`
	Lower  bool           `json:"little_lower"`
}

// addFingers adds the fingers of a glove.
func (r *report) addFingers(p *mitt.Plan) {
	f := p.Fingers
	of := func(i hand.Finger) reportFinger {
		one := &f.Each[i]
		out := reportFinger{Palm: one.Palm, Back: one.Back, Stitches: one.FirstRound, Decreases: one.Decreased, Rounds: one.Rounds, Closing: one.Closing}
		if one.EdgingRounds > 0 {
			out.EdgingRounds, out.EdgingStitches = one.EdgingRounds, one.EdgingStitches
		}
		return out
	}
	r.Fingers = &reportFingers{of(hand.Index), of(hand.Middle), of(hand.Ring), of(hand.Little)}
	r.Bridges = &reportBridges{f.Bridge[hand.Index], f.Bridge[hand.Middle], f.Bridge[hand.Ring]}
	r.LowerRounds = &f.Lower
	miss := &p.Residual.Fingers
	r.Residuals.Index, r.Residuals.Middle, r.Residuals.Ring, r.Residuals.Little = &miss[hand.Index], &miss[hand.Middle], &miss[hand.Ring], &miss[hand.Little]

	m, full := &p.Make, func(e mitt.FingerEnd) mitt.FingerEnd { return cmp.Or(e, mitt.FullFinger) }
	r.Made.Fingers = &reportFingersMade{
		full(m.Fingers[hand.Index]), full(m.Fingers[hand.Middle]), full(m.Fingers[hand.Ring]), full(m.Fingers[hand.Little]), full(m.ThumbEnd),
		m.Cap, !m.Level,
	}
}
