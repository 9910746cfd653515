package mitt

import (
	"thenar/internal/division"
	"thenar/internal/hand"
	"thenar/internal/stitch"
)

// FingerNumber is what a number of a finger says.
type FingerNumber uint8

// The numbers of a finger. Those without a capital are only recorded of what is knitted.
const (
	FingerPalm      FingerNumber = iota // f
	FingerBack                          // k
	FingerStitches                      // n, in its first round
	FingerDecreases                     // at its corners
	FingerRounds
	fingerEdgingRounds
	fingerEdging
	fingerEdgingRib
	fingerDecreaseRounds
	fingerNumbers
)

// The numbers of a glove's fingers follow those of every mitt: finger by finger in the
// order worked, then the bridges between them.
const (
	firstOfBridges    = firstOfFingers + Number(division.Fingers)*Number(fingerNumbers)
	LittleLowerRounds = firstOfBridges + Number(division.Bridges)
	CapRounds         = LittleLowerRounds + 1
	CapTopRounds      = CapRounds + 1
	capBack           = CapTopRounds + 1
	capPalm           = capBack + 1
	capRibbed         = capPalm + 1
	capDecreases      = capRibbed + 1
	numberCount       = capDecreases + 1
)

// OfFinger returns the number that says something of a finger.
func OfFinger(what FingerNumber, f hand.Finger) Number {
	return firstOfFingers + Number(division.Little-f)*Number(fingerNumbers) + Number(what)
}

// OfBridge returns the number of stitches between a finger, from the index on, and the
// next.
func OfBridge(j int) Number { return firstOfBridges + Number(division.RingLittle-j) }

// widestFingerBridge is the widest bridge between fingers that may be fixed.
const widestFingerBridge = 12

var fingerNames = [division.Fingers]string{"index", "middle", "ring", "little"}

var bridgeNames = [division.Bridges]struct{ key, said string }{
	{"index_middle", "index to middle"}, {"middle_ring", "middle to ring"}, {"ring_little", "ring to little"},
}

// fingersNumbers makes the rows of the fingers, of the bridges between them and of the
// upper hand.
func fingersNumbers() []row {
	var rows []row
	for _, i := range inOrderWorked {
		rows = append(rows, numbersOfFinger(hand.Finger(i))...)
	}
	for j := range division.Bridges {
		name := bridgeNames[j]
		rows = append(rows, row{OfBridge(j), info{
			key: "bridges." + name.key, label: "Bridge, " + name.said, said: "bridge " + name.said, rung: name.said, reason: "bridges." + name.key,
			part: fingerParts[j+1], needs: withFingers, measure: InStitches, low: 1, high: widestFingerBridge, at: ranks{15, 0, 21}, everyHand: true,
			pin: func(p *Pins) *Pin { return &p.FingerBridges[j] }, count: func(p *Plan) int { return p.Fingers.Bridge[j] },
			worked: func(k *Progress) *int { return &k.FingerBridges[j] },
		}})
	}
	return append(rows, row{LittleLowerRounds, info{
		key: "little_lower_rounds", label: "Upper hand, rounds", said: "upper hand", rung: "upper hand", reason: "little_lower_rounds", part: stitch.UpperHand, rounds: stitch.UpperHand,
		needs: withFingers, measure: InRounds, high: maxRounds, at: ranks{15, 0, 22},
		pin: func(p *Pins) *Pin { return &p.LowerRounds }, count: func(p *Plan) int { return p.Fingers.Lower }, worked: func(k *Progress) *int { return &k.LowerRounds },
	}})
}

// numbersOfFinger makes the rows of one finger.
func numbersOfFinger(f hand.Finger) []row {
	name, part := fingerNames[f], fingerParts[f]
	of := func(p *Plan) *Finger { return &p.Fingers.Each[f] }
	pins := func(p *Pins) *FingerPins { return &p.Fingers[f] }
	was := func(k *Progress) *FingerWorked { return &k.Fingers[f] }
	girth, _ := PlacesOfFinger(f)
	title := string(name[0]-'a'+'A') + name[1:] + " finger"
	make := func(what FingerNumber, key string, r info) row {
		r.key, r.reason, r.part, r.needs = "fingers."+name+"."+key, "fingers."+name+"."+key, part, withFingers
		return row{OfFinger(what, f), r}
	}
	fixed := func(what FingerNumber, key, label, rung string, r info) row {
		r.label, r.said, r.rung = title+", "+label, name+" finger, "+label, rung
		r.at = ranks{15, 0, 20}
		return make(what, key, r)
	}
	return []row{
		fixed(FingerPalm, "palm", "of the palm", "palm", info{
			measure: InStitches, low: 1, high: maxStitches,
			pin: func(p *Pins) *Pin { return &pins(p).Palm }, count: func(p *Plan) int { return of(p).Palm }, worked: func(k *Progress) *int { return &was(k).Palm },
		}),
		fixed(FingerBack, "back", "of the back", "back", info{
			measure: InStitches, low: 1, high: maxStitches,
			pin: func(p *Pins) *Pin { return &pins(p).Back }, count: func(p *Plan) int { return of(p).Back }, worked: func(k *Progress) *int { return &was(k).Back },
		}),
		fixed(FingerStitches, "stitches", "stitches", name, info{
			measure: InStitches, low: fewestOfFinger, high: maxStitches, girth: func(*Plan) Place { return girth },
			pin: func(p *Pins) *Pin { return &pins(p).Stitches }, count: func(p *Plan) int { return of(p).FirstRound }, worked: func(k *Progress) *int { return &was(k).Stitches },
		}),
		fixed(FingerDecreases, "decreases", "decreased at the corners", "at corners", info{
			measure: InStitches, high: maxDecreases, everyHand: true,
			pin: func(p *Pins) *Pin { return &pins(p).Decreases }, count: func(p *Plan) int { return of(p).Decreased }, worked: func(k *Progress) *int { return &was(k).Decreases },
		}),
		fixed(FingerRounds, "rounds", "rounds", name+" rounds", info{
			measure: InRounds, low: 1, high: maxRounds, rounds: part,
			pin: func(p *Pins) *Pin { return &pins(p).Rounds }, count: func(p *Plan) int { return of(p).Rounds }, worked: func(k *Progress) *int { return &was(k).Rounds },
		}),
		make(fingerEdgingRounds, "edging_rounds", info{
			measure: InRounds, high: maxRounds,
			count: func(p *Plan) int { return of(p).EdgingRounds }, worked: func(k *Progress) *int { return &was(k).Edging },
		}),
		make(fingerEdging, "edging", info{
			measure: InStitches, high: maxStitches,
			count: func(p *Plan) int { return of(p).EdgingStitches }, worked: func(k *Progress) *int { return &was(k).Edged },
		}),
		make(fingerEdgingRib, "edging_rib", info{
			measure: InStitches, high: maxStitches,
			count: func(p *Plan) int { return p.ownRib(of(p).EdgingRib) }, worked: func(k *Progress) *int { return &was(k).Rib },
		}),
		make(fingerDecreaseRounds, "decrease_rounds", info{
			measure: AtRounds, low: 1, high: maxRounds,
			list: func(p *Plan) []int { return of(p).DecreaseRounds }, listed: func(k *Progress) *[]int { return &was(k).Corners },
		}),
	}
}

var capNumbers = []row{
	{CapRounds, info{
		key: "cap_rounds", label: "Cap, rounds", said: "cap", rung: "cap rounds", reason: "cap.rounds", part: stitch.Cap, rounds: stitch.Cap, needs: withCap,
		measure: InRounds, low: 1, high: maxRounds, at: ranks{20, 0, 23},
		pin: func(p *Pins) *Pin { return &p.CapRounds }, count: func(p *Plan) int { return p.Fingers.Cap.Rounds }, worked: func(k *Progress) *int { return &k.Cap.Rounds },
	}},
	{CapTopRounds, info{
		key: "cap_top_rounds", label: "Top of the cap, rounds", said: "top of the cap", rung: "cap’s top", reason: "cap.top_rounds", part: stitch.CapTop, rounds: stitch.CapTop, needs: withCap,
		measure: InRounds, low: 1, high: maxRounds, at: ranks{21, 0, 24},
		pin: func(p *Pins) *Pin { return &p.CapTopRounds }, count: func(p *Plan) int { return p.Fingers.Cap.Top.Rounds }, worked: func(k *Progress) *int { return &k.Cap.TopRounds },
	}},
	{capBack, info{
		key: "cap_back", measure: InStitches, high: maxStitches, needs: withCap,
		count: func(p *Plan) int { return p.Fingers.Cap.Back }, worked: func(k *Progress) *int { return &k.Cap.Back },
	}},
	{capPalm, info{
		key: "cap_palm", measure: InStitches, high: maxStitches, needs: withCap,
		count: func(p *Plan) int { return p.Fingers.Cap.Palm }, worked: func(k *Progress) *int { return &k.Cap.Palm },
	}},
	{capRibbed, info{
		key: "cap_rib_rounds", measure: InRounds, high: maxRounds, needs: withCap,
		count: func(p *Plan) int { return p.Fingers.Cap.Ribbed }, worked: func(k *Progress) *int { return &k.Cap.Ribbed },
	}},
	{capDecreases, info{
		key: "cap_decrease_rounds", measure: AtRounds, low: 1, high: maxRounds, needs: withCap,
		list: func(p *Plan) []int { return p.Fingers.Cap.Top.DecreaseRounds }, listed: func(k *Progress) *[]int { return &k.Cap.Decreases },
	}},
}
