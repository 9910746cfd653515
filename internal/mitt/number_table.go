package mitt

import "thenar/internal/stitch"

// The rows of the table of numbers, in one set for each part of a mitt.

var cuffNumbers = []row{
	{Rib, info{
		key: "rib", measure: InStitches, low: 1, high: maxStitches,
		count: func(p *Plan) int { return p.Stitch.Rib }, worked: func(k *Progress) *int { return &k.Rib },
	}},
	{CastOn, info{
		key: "cast_on", label: "Cast on", said: "cast on", rung: "cast on", reason: "cuff.cast_on", part: stitch.Cuff,
		measure: InStitches, low: fewestStitches, high: maxStitches, at: ranks{1, 1, 1}, student: true, girth: (*Plan).castOnPlace,
		pin: func(p *Pins) *Pin { return &p.CastOn }, count: func(p *Plan) int { return p.Cuff.CastOn.N }, worked: func(k *Progress) *int { return &k.CastOn },
	}},
	{CuffRounds, info{
		key: "cuff_rounds", label: "Cuff’s edge, rounds", said: "ribbing", rung: "rib rounds", reason: "cuff.rounds", part: stitch.Cuff, rounds: stitch.Cuff,
		measure: InRounds, high: maxRounds, at: ranks{2, 2, 12}, student: true,
		pin: func(p *Pins) *Pin { return &p.CuffRounds }, count: func(p *Plan) int { return p.Cuff.Rounds }, worked: func(k *Progress) *int { return &k.CuffRounds },
	}},
	{CuffPlainRounds, info{
		key: "cuff_plain_rounds", label: "Plain rounds of the cuff", said: "plain rounds", rung: "plain rounds", reason: "cuff.plain_rounds", part: stitch.CuffPlain, rounds: stitch.CuffPlain,
		measure: InRounds, high: maxRounds, at: ranks{3, 3, 13},
		pin: func(p *Pins) *Pin { return &p.CuffPlainRounds }, count: func(p *Plan) int { return p.Cuff.PlainRounds }, worked: func(k *Progress) *int { return &k.CuffPlainRounds },
	}},
	{RibKnits, info{
		key: "rib_knits", measure: InStitches, high: maxStitches,
		count: func(p *Plan) int { return p.Stitch.Knits }, worked: func(k *Progress) *int { return &k.Knits },
	}},
	{CuffFacing, info{
		key: "cuff_facing", measure: InRounds, high: maxRounds,
		count: func(p *Plan) int { return p.Cuff.Facing }, worked: func(k *Progress) *int { return &k.Facing },
	}},
	{CuffEdge, info{
		key: "cuff_edge", measure: InRounds, high: maxRounds,
		count: func(p *Plan) int { return p.Cuff.flare().Edge }, worked: func(k *Progress) *int { return &k.CuffEdge },
	}},
	{CuffStep, info{
		key: "cuff_step", measure: InStitches, high: maxStitches,
		count: func(p *Plan) int { return p.Cuff.flare().Step }, worked: func(k *Progress) *int { return &k.CuffStep },
	}},
	{CuffDecreases, info{
		key: "cuff_decreases", measure: AtRounds, low: 1, high: maxRounds,
		list: func(p *Plan) []int { return p.Cuff.flare().Rounds }, listed: func(k *Progress) *[]int { return &k.CuffDecreases },
	}},
	{CuffRib, info{
		key: "cuff_rib", measure: InStitches, high: maxStitches,
		count: func(p *Plan) int { return p.ownRib(p.Cuff.Rib) }, worked: func(k *Progress) *int { return &k.CuffRib },
	}},
}

var gussetNumbers = []row{
	{HandStitches, info{
		key: "hand_stitches", label: "Hand, stitches", said: "hand", rung: "hand", reason: "hand.stitches", part: stitch.Gusset,
		measure: InStitches, low: fewestStitches, high: maxStitches, at: ranks{4, 4, 2}, company: beside,
		pin: func(p *Pins) *Pin { return &p.HandStitches }, count: func(p *Plan) int { return p.Body.Stitches.N }, worked: func(k *Progress) *int { return &k.HandStitches },
	}},
	{GussetBase, info{
		key: "gusset_base", label: "Gusset base", said: "gusset base", rung: "base", reason: "gusset.base", part: stitch.Gusset, needs: withGusset,
		measure: InStitches, low: 1, high: maxBase, at: ranks{5, 5, 3}, company: beside, everyHand: true, student: true,
		pin: func(p *Pins) *Pin { return &p.GussetBase }, count: func(p *Plan) int { return p.Gusset.Base }, worked: func(k *Progress) *int { return &k.GussetBase },
	}},
	{Increases, info{
		key: "increases", label: "Increase rounds", said: "increase rounds", rung: "increases", reason: "gusset.increase_rounds", part: stitch.Gusset, needs: withGusset,
		measure: InTimes, low: 1, high: maxRounds, at: ranks{6, 6, 4}, company: beside,
		pin: func(p *Pins) *Pin { return &p.Increases }, count: func(p *Plan) int { return p.Gusset.Increases },
	}},
	{FirstIncrease, info{
		key: "first_increase", label: "First increase round", said: "first increase", rung: "first in", with: Increases, reason: "gusset.first_increase", part: stitch.Gusset, needs: withGusset,
		help:    "left out: 1, unless the hand’s shape is followed",
		measure: AtRounds, low: 1, high: maxRounds, at: ranks{7, 7, 17}, company: beside, everyHand: true,
		pin: func(p *Pins) *Pin { return &p.FirstIncrease }, count: func(p *Plan) int { return p.Gusset.IncreaseRounds[0] },
	}},
	{GussetRounds, info{
		key: "gusset_rounds", label: "Gusset, rounds", said: "gusset", rung: "gusset rounds", reason: "gusset.rounds", part: stitch.Gusset, rounds: stitch.Gusset, needs: whereParted,
		measure: InRounds, low: 1 + gussetLeadOut, high: maxRounds, at: ranks{8, 10, 11}, company: beside,
		pin: func(p *Pins) *Pin { return &p.GussetRounds }, count: func(p *Plan) int { return p.Gusset.Rounds.N }, worked: func(k *Progress) *int { return &k.GussetRounds },
	}},
	{Rhythm, info{
		key: "rhythm", label: "Rhythm", said: "from one increase round to the next", rung: "every", reason: "gusset.rhythm", part: stitch.Gusset, needs: withGusset,
		help:    "3: every 3rd round; 2, 3: in turn",
		measure: Between, low: gussetGap, high: maxRounds, at: ranks{9, 8, 18}, company: beside, everyHand: true,
		pinned: func(p *Pins) *[]int { return &p.Rhythm },
		list:   func(p *Plan) []int { return rhythmOf(p.Gusset.IncreaseRounds, p.Pins.FirstIncrease.Or(1)) },
	}},
	{IncreaseRounds, info{
		key: "increase_rounds", label: "Increases in rounds", said: "increases in", rung: "increases in", with: Increases, reason: "gusset.list", part: stitch.Gusset, needs: withGusset,
		help:    "all of them: 1, 4, 7",
		measure: AtRounds, low: 1, high: maxRounds, at: ranks{10, 9, 19}, company: beside,
		pinned: func(p *Pins) *[]int { return &p.IncreaseRounds }, list: func(p *Plan) []int { return p.Gusset.IncreaseRounds }, listed: func(k *Progress) *[]int { return &k.Increases },
	}},
}

var divisionNumbers = []row{
	{KeptOnHand, info{
		key: "kept_on_hand", label: "Left on the hand", said: "left on the hand", rung: "left on hand", with: Held, reason: "gusset.kept_on_hand", part: stitch.Hand, needs: withGusset,
		measure: InStitches, high: maxStitches, at: ranks{11, 11, 5}, company: beside, everyHand: true,
		pin: func(p *Pins) *Pin { return &p.KeptOnHand }, count: func(p *Plan) int { return p.Gusset.Kept }, worked: func(k *Progress) *int { return &k.Kept },
	}},
	{Held, info{
		key: "held", label: "Held for the thumb", said: "held for the thumb", rung: "held", reason: "thumb.held", part: stitch.Hand, needs: withThumb,
		measure: InStitches, low: 1, high: maxStitches, at: ranks{12, 12, 6}, company: beside,
		pin: func(p *Pins) *Pin { return &p.Held }, count: func(p *Plan) int { return p.Thumb.Held }, worked: func(k *Progress) *int { return &k.Held },
	}},
	{BridgeStitches, info{
		key: "bridge", label: "Bridge", said: "bridge", rung: "bridge", reason: "bridge.cast_on", part: stitch.Hand, needs: withGusset,
		measure: InStitches, high: maxBridge, at: ranks{13, 13, 7}, company: beside, everyHand: true, student: true,
		pin: func(p *Pins) *Pin { return &p.Bridge }, count: func(p *Plan) int { return p.Bridge.CastOn }, worked: func(k *Progress) *int { return &k.Bridge },
	}},
}

var topNumbers = []row{
	{RoundsAboveGusset, info{
		key: "rounds_above_gusset", label: "Above the gusset, rounds", said: "above the gusset", rung: "rounds above", reason: "hand.rounds_above_gusset", part: stitch.Hand, rounds: stitch.Hand,
		measure: InRounds, low: 1, high: maxRounds, at: ranks{14, 15, 14}, company: besideInTop,
		pin: func(p *Pins) *Pin { return &p.RoundsAboveGusset }, count: func(p *Plan) int { return p.Body.RoundsAbove }, worked: func(k *Progress) *int { return &k.RoundsAbove },
	}},
	{EdgingRounds, info{
		key: "edging_rounds", measure: InRounds, high: maxRounds,
		count: func(p *Plan) int { return p.Body.EdgingRounds }, worked: func(k *Progress) *int { return &k.EdgingRounds },
	}},
	{EdgingStitches, info{
		key: "edging", measure: InStitches, high: maxStitches,
		count: func(p *Plan) int { return p.Body.EdgingStitches }, worked: func(k *Progress) *int { return &k.Edging },
	}},
	{EdgingRib, info{
		key: "edging_rib", measure: InStitches, high: maxStitches,
		count: func(p *Plan) int { return p.ownRib(p.Body.EdgingRib) }, worked: func(k *Progress) *int { return &k.EdgingRib },
	}},
	{TopRounds, info{
		key: "top_rounds", label: "Top, rounds", said: "top", rung: "top rounds", reason: "top.rounds", part: stitch.Top, rounds: stitch.Top, needs: withTop,
		measure: InRounds, low: 1, high: maxRounds, at: ranks{15, 0, 16}, company: besideInTop,
		pin: func(p *Pins) *Pin { return &p.TopRounds }, count: func(p *Plan) int { return p.Top.Rounds }, worked: func(k *Progress) *int { return &k.TopRounds },
	}},
	{PalmInset, info{
		key: "inset", measure: InStitches, high: MaxInset, needs: withThumb,
		count: func(p *Plan) int { return p.Gusset.Inset }, worked: func(k *Progress) *int { return &k.Inset },
	}},
	{TopBand, info{
		key: "top_band", measure: InStitches, high: MaxBand, needs: withAnyTop,
		count: func(p *Plan) int { return p.Make.Band.Or(0) }, worked: func(k *Progress) *int { return &k.Band },
	}},
	{TopWedges, info{
		key: "top_wedges", measure: InTimes, high: MaxWedge, needs: withAnyTop,
		count: func(p *Plan) int { return p.Make.Wedges.Or(0) }, worked: func(k *Progress) *int { return &k.Wedges },
	}},
	{DecreaseRounds, info{
		key: "decrease_rounds", measure: AtRounds, low: 1, high: maxRounds, needs: withTop,
		list: func(p *Plan) []int { return p.Top.DecreaseRounds }, listed: func(k *Progress) *[]int { return &k.Decreases },
	}},
}

var thumbNumbers = []row{
	{PickedUp, info{
		key: "picked_up", label: "Picked up", said: "picked up", rung: "pick up", reason: "thumb.picked_up", part: stitch.Thumb, needs: withGusset,
		measure: InStitches, high: maxBridge + maxExtra, at: ranks{16, 14, 8}, company: beside,
		pin: func(p *Pins) *Pin { return &p.PickedUp }, count: func(p *Plan) int { return p.Thumb.PickedUp }, worked: func(k *Progress) *int { return &k.PickedUp },
	}},
	{ThumbDecreases, info{
		key: "thumb_decreases", label: "Decreased at the corners", said: "decreased at the corners", rung: "at corners", with: ThumbStitches, reason: "thumb.decreased", part: stitch.Thumb, needs: withThumb,
		measure: InStitches, high: maxDecreases, at: ranks{18, 0, 10}, company: beside,
		pin: func(p *Pins) *Pin { return &p.ThumbDecreases }, count: func(p *Plan) int { return p.Thumb.Decreased }, worked: func(k *Progress) *int { return &k.ThumbDecreases },
	}},
	{ThumbStitches, info{
		key: "thumb_stitches", label: "Thumb, stitches", said: "thumb", rung: "thumb", reason: "thumb.stitches", part: stitch.Thumb, needs: withThumb,
		measure: InStitches, low: 1, high: maxStitches, at: ranks{17, 0, 9}, company: beside, girth: func(*Plan) Place { return PlaceThumb },
		pin: func(p *Pins) *Pin { return &p.ThumbStitches }, count: func(p *Plan) int { return p.Thumb.Stitches.N }, worked: func(k *Progress) *int { return &k.Thumb },
	}},
	{ThumbRounds, info{
		key: "thumb_rounds", label: "Thumb, rounds", said: "thumb length", rung: "thumb rounds", reason: "thumb.rounds", part: stitch.Thumb, rounds: stitch.Thumb, needs: withThumb,
		measure: InRounds, low: 1, high: maxRounds, at: ranks{19, 0, 15}, company: beside,
		pin: func(p *Pins) *Pin { return &p.ThumbRounds }, count: func(p *Plan) int { return p.Thumb.Rounds }, worked: func(k *Progress) *int { return &k.ThumbRounds },
	}},
	{ThumbEdgingRounds, info{
		key: "thumb_edging_rounds", measure: InRounds, high: maxRounds, needs: withThumb,
		count: func(p *Plan) int { return p.Thumb.EdgingRounds + p.Thumb.Closing }, worked: func(k *Progress) *int { return &k.ThumbEdging },
	}},
	{ThumbEdgingStitches, info{
		key: "thumb_edging", measure: InStitches, high: maxStitches, needs: withThumb,
		count: func(p *Plan) int { return p.Thumb.EdgingStitches }, worked: func(k *Progress) *int { return &k.ThumbEdged },
	}},
	{ThumbDecreaseRounds, info{
		key: "thumb_decrease_rounds", measure: AtRounds, low: 1, high: maxRounds, needs: withThumb,
		list: func(p *Plan) []int { return p.Thumb.DecreaseRounds }, listed: func(k *Progress) *[]int { return &k.ThumbCorners },
	}},
	{ThumbEdgingRib, info{
		key: "thumb_edging_rib", measure: InStitches, high: maxStitches, needs: withThumb,
		count: func(p *Plan) int { return p.ownRib(p.Thumb.EdgingRib) }, worked: func(k *Progress) *int { return &k.ThumbRib },
	}},
}
