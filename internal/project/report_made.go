package project

import (
	"cmp"

	"thenar/internal/mitt"
)

// reportMade is how a mitt is made, under the keys of its sheet and with the usual
// ways written out. What a choice has no use for is left out.
type reportMade struct {
	Thumb reportThumbMade `json:"thumb"`
	Piece reportPieceMade `json:"piece"`
	Cuff  reportCuffMade  `json:"cuff"`
	Top   *reportTopMade  `json:"top,omitempty"`

	Fingers *reportFingersMade `json:"fingers,omitempty"`

	Stitch *reportEdgesMade `json:"stitch,omitempty"`
}

type reportThumbMade struct {
	Construction mitt.Construction `json:"construction"`
	Place        mitt.ThumbPlace   `json:"place,omitempty"`
	Inset        *int              `json:"inset,omitempty"` // in the palm only
	Increase     mitt.Increase     `json:"increase,omitempty"`
}

type reportPieceMade struct {
	Direction mitt.Direction `json:"direction"`
	Flat      bool           `json:"flat"`
	Seam      int            `json:"seam_stitches,omitempty"` // cast on beyond the plan's counts; of a flat piece only
}

type reportCuffMade struct {
	Kind   mitt.CuffKind `json:"kind"`
	Knits  int           `json:"knits,omitempty"` // of a rib only
	Purls  int           `json:"purls,omitempty"`
	Folded int           `json:"folded_rounds,omitempty"`  // of a hem only
	Girth  float64       `json:"upper_girth_mm,omitempty"` // of a gauntlet only
}

type reportTopMade struct {
	Kind   mitt.TopKind `json:"kind"`
	Band   int          `json:"band,omitempty"`
	Wedges int          `json:"wedges,omitempty"`
}

type reportEdgesMade struct {
	BothEdges bool `json:"both_edges"`
}

func reportMadeOf(p *mitt.Plan) reportMade {
	m := &p.Make
	r := reportMade{
		Thumb: reportThumbMade{Construction: mitt.NoThumb},
		Piece: reportPieceMade{cmp.Or(m.Direction, mitt.Up), m.Flat, p.SeamStitches()},
		Cuff:  reportCuffMade{Kind: cmp.Or(m.Cuff, mitt.RibCuff), Folded: p.Cuff.Facing},
	}
	if p.Parted() {
		r.Thumb = reportThumbMade{Construction: p.Construction()}
	}
	if p.Thumbed() {
		r.Thumb.Place = cmp.Or(m.Place, mitt.AtSide)
		if m.Place == mitt.InPalm || p.Thumb.OnWaste > 0 {
			inset := p.Gusset.Inset
			r.Thumb.Inset = &inset
		}
	}
	if p.Gusseted() {
		r.Thumb.Increase, r.Stitch = cmp.Or(m.Increase, mitt.MakeOne), &reportEdgesMade{!p.Stitch.OneSided}
	}
	if p.Ribbed() {
		r.Cuff.Knits, r.Cuff.Purls = p.CuffRib()
	}
	if f := p.Cuff.Flare; f != nil {
		r.Cuff.Girth = f.Girth
	}
	if p.Top != nil {
		r.Top = &reportTopMade{Kind: cmp.Or(m.Top, mitt.RoundedTop), Band: m.BandStitches(), Wedges: m.WedgeCount()}
	}
	return r
}

func reportCuffOf(c *mitt.Cuff) reportCuff {
	r := reportCuff{CastOn: c.CastOn.N, Rounds: c.Rounds, Plain: c.PlainRounds}
	if f := c.Flare; f != nil {
		r.Wrist, r.Edge, r.Decreases = c.Wrist.N, f.Edge, f.Rounds
	}
	return r
}
