package mitt

import (
	"thenar/internal/division"
	"thenar/internal/stitch"
)

// The fingers of a glove stand round the hand in this order, from the side line on the
// thumb's side, where the palm of a right hand begins:
//
//	f₁ f₂ f₃ f₄ | k₄ k₃ k₂ k₁
//
// The little finger is worked first, with the yarn of the hand. Every other one begins
// like the thumb, at what it picks up along the finger before it.

// handToFingers builds the hand from the division to where the little finger parts.
func (p *Plan) handToFingers() stitch.Section { return p.handToFingersFrom(p.divisionRound()) }

// handOnWasteToFingers builds it above a thumb on waste yarn.
func (p *Plan) handOnWasteToFingers() stitch.Section { return p.handToFingersFrom(p.wasteRound()) }

func (p *Plan) handToFingersFrom(first stitch.Round) stitch.Section {
	s := p.handFrom(first)
	s.About.Until = "where the little finger parts from the ring finger"
	if p.Fingers.Lower == 0 {
		s.About.Until = "where the fingers part"
	}
	return s
}

// sideLine returns how many stitches after the beginning of the hand's round the side line
// on the thumb's side runs, and how many after it on the other hand, which has the thumb's
// stitches in front too and all else in the opposite order. Above a gusset at the side it
// runs through the bridge; a thumb in the palm lies all on one side of it.
func (p *Plan) sideLine() (shift, across int) {
	n, c := p.Bridge.HandAfter, p.bridgeWidth()
	if p.Make.Place == InPalm || p.Thumb.OnWaste > 0 {
		return -p.Gusset.Inset, c + p.Gusset.Inset
	}
	across = n/2 - (n-c)/2
	return c - across, across
}

// littleFinger builds the little finger. The hand goes on to it; the other stitches wait.
func (p *Plan) littleFinger() stitch.Section {
	const i = division.Little
	f, x := &p.Fingers.Each[i], p.Fingers.Bridge[division.RingLittle]
	s := stitch.Section{Part: stitch.Little}
	s.Shift, s.Across = p.sideLine()
	for j := range i {
		s.Shift += p.Fingers.Each[j].Palm
		s.Across += p.Fingers.Each[j].Back
	}
	ops := times(nil, stitch.Knit, f.Palm+f.Back)
	lead := len(ops)
	ops = times(ops, stitch.Hold, p.Bridge.HandAfter-lead)
	round := stitch.Round{Ops: times(ops, stitch.CastOn, x), Lead: lead}
	round.Keep(stitch.OtherThree)
	s.Rounds = append(s.Rounds, round)
	p.endFinger(&s, i)
	return s
}

// upperHand builds the hand between the little finger and where the others part.
func (p *Plan) upperHand() stitch.Section {
	s := stitch.Section{Part: stitch.UpperHand}
	if p.Fingers.Lower == 0 {
		return s
	}
	x, left := p.Fingers.Bridge[division.RingLittle], p.Bridge.HandAfter-p.Fingers.Each[division.Little].both()
	s.From = []stitch.Set{stitch.OtherThree}
	s.About.Share = p.Hand.Fingers.WithoutLittle()
	s.About.Along, s.About.Until = along[division.Ring], "where the fingers part"
	s.Rounds = append(s.Rounds, joinRound(x, times(nil, stitch.Knit, left)))
	for r := 2; r <= p.Fingers.Lower; r++ {
		s.Rounds = append(s.Rounds, stitch.Round{Ops: allKnit(left + x), Lead: x})
	}
	return s
}

// both returns the stitches of palm and back that a finger takes.
func (f *Finger) both() int { return f.Palm + f.Back }

// along says beside which finger the stitches of another are picked up.
var along = [division.Fingers]string{"the middle finger", "the ring finger", "the little finger", ""}

func (p *Plan) ringFinger() stitch.Section {
	from := []stitch.Set{stitch.OtherThree}
	if p.Fingers.Lower > 0 {
		from = nil // it goes on from the upper hand, which has picked up
	}
	return p.fingerBeside(division.Ring, from, stitch.IndexAndMiddle)
}

func (p *Plan) middleFinger() stitch.Section {
	return p.fingerBeside(division.Middle, []stitch.Set{stitch.IndexAndMiddle}, stitch.IndexSet)
}

func (p *Plan) indexFinger() stitch.Section {
	return p.fingerBeside(division.Index, []stitch.Set{stitch.IndexSet}, "")
}

// fingerBeside builds a finger beside the one that was worked before it: what is picked up
// there, its part of the back, the bridge to the next finger, for which what remains of
// the hand is set aside, and its part of the palm.
func (p *Plan) fingerBeside(i int, from []stitch.Set, keep stitch.Set) stitch.Section {
	f, s := &p.Fingers.Each[i], stitch.Section{Part: fingerParts[i], From: from}
	outer := p.Fingers.Bridge[i]
	ops := times(nil, stitch.Knit, f.Back)
	if i > division.Index {
		remain := 0
		for j := range i {
			remain += p.Fingers.Each[j].both()
		}
		ops = times(times(ops, stitch.Hold, remain), stitch.CastOn, p.Fingers.Bridge[i-1])
	}
	ops = times(ops, stitch.Knit, f.Palm)
	round := stitch.Round{Ops: append(times(nil, stitch.Knit, outer), ops...), Lead: outer}
	if len(from) > 0 {
		round, s.About.Along = joinRound(outer, ops), along[i]
	}
	if keep != "" {
		round.Keep(keep)
	}
	s.Rounds = append(s.Rounds, round)
	p.endFinger(&s, i)
	return s
}

// joinRound picks up x stitches and works the strand at each corner together with the
// stitch beside it, the first and the last of the others.
func joinRound(x int, others []stitch.Op) stitch.Round {
	others[0], others[len(others)-1] = stitch.GapK2tog, stitch.GapSSK
	return stitch.Round{Ops: append(times(nil, stitch.PickUp, x), others...), Lead: x}
}

// endFinger goes on with a finger from its round 1 to its end.
func (p *Plan) endFinger(s *stitch.Section, i int) {
	f, name := &p.Fingers.Each[i], fingerNames[i]
	s.About.Digit = &stitch.Digit{
		Girth: p.Hand.Fingers.Girth[i].MM(), Added: p.fingerAdded(i), Stitches: f.Stitches.N, Closed: f.Closed, Palm: f.Palm,
	}
	if s.About.Until = "the tip of the " + name + " finger"; !f.Closed {
		if s.About.Until = ""; f.End == HalfFinger { // an open one ends soon, at no place
			s.About.Until = "where the tip of the " + name + " finger is to be free"
		}
		p.openTube(s, &f.Tube)
		return
	}
	p.closedTube(s, &f.Tube)
}

// thumbToEnd builds a thumb on held stitches that ends like a finger.
func (p *Plan) thumbToEnd() stitch.Section { return p.endThumb(p.thumbOnHeld()) }

// straightThumbToEnd builds it on what waste yarn frees.
func (p *Plan) straightThumbToEnd() stitch.Section { return p.endThumb(p.thumbOnWaste()) }

func (p *Plan) endThumb(s stitch.Section) stitch.Section {
	if p.Thumb.Closed {
		return p.closedThumbOf(s)
	}
	s = p.openThumbOf(s)
	if p.Make.ThumbEnd == OpenFinger {
		s.About.Until = ""
	}
	return s
}
