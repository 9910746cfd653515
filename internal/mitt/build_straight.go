package mitt

import "thenar/internal/stitch"

// belowThumb builds the hand beside the base of the thumb, where a gusset would grow:
// its round begins with the stitches over which the thumb will stand.
func (p *Plan) belowThumb() stitch.Section {
	s := stitch.Section{Part: stitch.BelowThumb, Rounds: make([]stitch.Round, 0, p.Gusset.Rounds.N), About: stitch.About{
		Until: "where the thumb parts from the hand",
		Palm:  true, Inset: p.Gusset.Inset,
	}}
	for range p.Gusset.Rounds.N {
		s.Rounds = append(s.Rounds, stitch.Round{Ops: allKnit(p.Body.Stitches.N), Lead: p.Thumb.OnWaste})
	}
	return s
}

// openHandOnWaste builds an open hand from the waste yarn to its bind-off.
func (p *Plan) openHandOnWaste() stitch.Section { return p.openHandFrom(p.wasteRound()) }

// handOnWasteToTop builds the hand from the waste yarn to the top.
func (p *Plan) handOnWasteToTop() stitch.Section { return p.handFromToTop(p.wasteRound()) }

// wasteRound knits the thumb's w stitches with waste yarn, and then again with the
// working yarn, like the rest of the round. So their loops of the round below wait on
// the waste yarn, while the hand goes on over them.
func (p *Plan) wasteRound() stitch.Round {
	ops := times(nil, stitch.Waste, p.Thumb.OnWaste)
	return stitch.Round{Ops: times(ops, stitch.Knit, p.Body.Stitches.N-p.Thumb.OnWaste), Lead: p.Thumb.OnWaste}
}

// openStraightThumb builds a thumb on what the waste yarn frees, to its bind-off.
func (p *Plan) openStraightThumb() stitch.Section { return p.openThumbOf(p.thumbOnWaste()) }

// closedStraightThumb builds a thumb on what the waste yarn frees, to its tip.
func (p *Plan) closedStraightThumb() stitch.Section { return p.closedThumbOf(p.thumbOnWaste()) }

// thumbOnWaste begins the thumb on the loops that are free once the waste yarn is taken
// out: w below and w − 1 whole ones above. At each corner half a loop is left, which is
// lifted with its strand and twisted.
func (p *Plan) thumbOnWaste() stitch.Section {
	w := p.Thumb.OnWaste
	ops := []stitch.Op{stitch.CornerM1}
	ops = append(times(ops, stitch.Knit, w-1), stitch.CornerM1)
	lead := len(ops)
	s := stitch.Section{Part: stitch.Thumb, Rounds: []stitch.Round{{Ops: times(ops, stitch.Knit, w), Lead: lead}}}
	if w > 1 {
		s.From = append(s.From, stitch.ThumbSet.Above())
	}
	s.From = append(s.From, stitch.ThumbSet)
	return s
}
