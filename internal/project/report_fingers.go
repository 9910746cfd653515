package project

import (
	"cmp"

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

// reportCap is a mitten's cap over half fingers, below its top.
type reportCap struct {
	PickedUp  int `json:"picked_up"`
	CastOn    int `json:"cast_on"`
	Ribbed    int `json:"ribbed_rounds"`
	Rounds    int `json:"rounds"`
	TopRounds int `json:"top_rounds"`
}

// addFingers adds the fingers of a glove.
func (r *report) addFingers(p *mitt.Plan) {
	f := p.Fingers
	var each [len(f.Each)]reportFinger
	var ends [len(f.Each)]mitt.FingerEnd
	for i := range f.Each {
		one := &f.Each[i]
		ends[i] = cmp.Or(one.End, mitt.FullFinger)
		each[i] = reportFinger{Palm: one.Palm, Back: one.Back, Stitches: one.FirstRound, Decreases: one.Decreased, Rounds: one.Rounds, Closing: one.Closing}
		if one.EdgingRounds > 0 {
			each[i].EdgingRounds, each[i].EdgingStitches = one.EdgingRounds, one.EdgingStitches
		}
	}
	r.Fingers = &reportFingers{each[0], each[1], each[2], each[3]}
	r.Bridges = &reportBridges{f.Bridge[0], f.Bridge[1], f.Bridge[2]}
	r.LowerRounds = &f.Lower
	if c := f.Cap; c != nil {
		r.Cap = &reportCap{c.Back, c.Palm, c.Ribbed, c.Rounds, c.Top.Rounds}
		r.Top = reportTopOf(p.OverFingers())
	}
	off := &p.Residual.Fingers
	r.Residuals.Index, r.Residuals.Middle, r.Residuals.Ring, r.Residuals.Little = &off[0], &off[1], &off[2], &off[3]
	r.Made.Fingers = &reportFingersMade{
		ends[0], ends[1], ends[2], ends[3], cmp.Or(p.Make.ThumbEnd, mitt.FullFinger), p.Make.Cap, !p.Make.Level,
	}
}
