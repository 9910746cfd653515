package words

import (
	"fmt"
	"slices"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// bridge is what is cast on over the thumb's gap: how many stitches, and how many
// stitches of the hand's round come before them.
type bridge struct{ before, stitches int }

// bridgeOf returns the bridge of a mitt.
func bridgeOf(m stitch.Mitt) bridge {
	hand := m.Section(stitch.Hand)
	if hand == nil || len(hand.Rounds) == 0 {
		return bridge{}
	}
	b := bridge{stitches: count(hand.Rounds[0], stitch.CastOn)}
	for _, op := range hand.Rounds[0].Ops {
		if op == stitch.CastOn {
			break
		}
		b.before += op.Out()
	}
	return b
}

// count returns how often an operation is worked in a round.
func count(r stitch.Round, op stitch.Op) int {
	n := 0
	for _, o := range r.Ops {
		if o == op {
			n++
		}
	}
	return n
}

// castOn returns how the cast-on of a section is worked, and the marker at the join. The tail is
// that of a long-tail cast-on, which is worked from it; one that needs no tail is
// left with an end.
func (h Hands) castOn(s *stitch.Section) string {
	n, mm := s.CastOn, h.Tails.CastOn
	join := "Place a marker and join in the round, without a twist."
	rows := s.Noun() == "row"
	if rows {
		join = "Work to and fro: turn at the end of every row."
	}
	switch {
	case s.About.Tip && !rows:
		return fmt.Sprintf("Cast on %s%s with a closed cast-on%s. %s %s%s", Plural(n, "stitch"), h.yarns.castOn, h.leaving(h.Tails.End), closedCastOn(n), join, strandless(s))
	case s.Part.Over() == stitch.OverDigit:
		mm = h.Tails.Thumb
	}
	how := "stretchy long-tail cast-on"
	if h.Tails.CastOn == 0 {
		how = "stretchy cast-on"
	}
	return fmt.Sprintf("Cast on %s%s with a %s%s. %s", Plural(n, "stitch"), h.yarns.castOn, how, h.leaving(mm), join)
}

// closedCastOn says how stitches begin so that no hole stays in the tip.
func closedCastOn(n int) string {
	if n <= stitch.MostInRing {
		return "Lay the yarn in a ring, draw each stitch out of it, and pull the ring shut."
	}
	return "Wind the yarn round two needles held together, half of the stitches on each, and knit across both."
}

// strandless says how the first round after a ring makes stitches for which others lift the
// strand between two: out of a ring there is none yet (common practice, no source).
func strandless(s *stitch.Section) string {
	if s.CastOn > stitch.MostInRing || !liftsAtOnce(s) {
		return ""
	}
	return " The ring has no strands to lift: in the first round make new stitches by backward loops."
}

// liftsAtOnce reports whether the first round makes stitches out of strands.
func liftsAtOnce(s *stitch.Section) bool {
	lifts := func(op stitch.Op) bool { return op == stitch.M1 || op == stitch.M1L || op == stitch.M1R }
	return len(s.Rounds) > 0 && slices.ContainsFunc(s.Rounds[0].Ops, lifts)
}

// secondMarker returns where the gusset's second marker is placed. The first one
// shows where the round begins, which is the gusset's other edge.
func secondMarker(base int, down bool) string {
	return "Place the second marker after the first " + few(base) + ": the gusset " + grows(down) + " between the two."
}

// grows says what a gusset does between its markers.
func grows(down bool) string {
	if down {
		return "narrows"
	}
	return "grows"
}

// divides returns what is done in the round that sets the thumb's stitches aside,
// beside its stitches. They were its first, so the round begins with what follows.
func divides(bridge int) string {
	text := "Take the second marker off. "
	if bridge == 0 {
		text += "Nothing is cast on over the gap: knit across it and pull snug."
	} else {
		text += "The bridge’s first stitch now begins the round."
	}
	return text
}

// along returns where the thumb's stitches are picked up, as the mitt is held for it.
// The opening is seen from outside with the fingers up: the held stitches are its lower
// edge, the bridge its upper one. The held stitches are worked from right to left like
// all of the hand, so a round that goes on around the opening runs along the bridge
// from left to right: from right to left with the mitt turned round, as stitches are
// picked up. Who knits from left to right does both the other way. It is the same on
// either hand, since both are worked in one direction.
//
// Beside a finger another edge is told: see alongFinger.
func (h Hands) along(s *stitch.Section, bridge, picked int) []string {
	if s.About.Along != "" {
		return h.alongFinger(s.About.Along, picked)
	}
	from, _ := h.sides()
	if picked == 0 {
		return []string{
			"Hold it fingers up, outside towards you. " + h.joinAt("the gap’s "+from+" corner"),
			"The round begins there, with the held stitches. Put a marker before the first of them.",
		}
	}
	joined, edge := "the bridge’s "+from+" end", "along the bridge, "+places(bridge, picked)
	if bridge == 0 {
		joined, edge = "the gap’s "+from+" corner", "at the top of the gap"
	}
	return []string{
		heldDown + h.joinAt(joined),
		"Pick up " + edge + ". " + markFirst + " Turn it fingers up for the rest.",
	}
}

// places says where so many stitches are picked up along a bridge: in its loops, or between
// and beside its stitches, which has room for one more; in both where that is too few.
func places(bridge, picked int) string {
	more := picked - bridge - 1
	between := "at both ends and between its stitches"
	if bridge == 1 {
		between = "at both ends"
	}
	switch {
	case picked == bridge && bridge == 1:
		return "one in its loop"
	case picked == bridge:
		return fmt.Sprintf("one in each of its %d loops", bridge)
	case more == 0:
		return between
	case more == 1:
		return between + ". 1 more comes out of the loop in the middle"
	case more > 1 && more <= bridge:
		return fmt.Sprintf("%s. %d more come out of the loops in the middle", between, more)
	}
	return "evenly spread"
}

// strands says what becomes of the strands at both ends of a gap.
const strands = "At both corners lift the loose strand; it goes with the held stitch beside it."

// markFirst says where the marker of a round goes that begins with stitches picked up. It is
// that of the hand, which is bound off by then.
const markFirst = "Put a marker before the first."

// shift returns how the beginning of the round moves on by n stitches, or back if n
// is negative. The marker goes with it.
func (h Hands) shift(s *stitch.Section, bridge bridge) string {
	n := s.Shift
	const move = " Move the marker there."
	if s.Down {
		if n < 0 {
			return h.backBy(-n, "on the thumb’s side")
		}
		return fmt.Sprintf("Knit %d more%s: the round now begins on the thumb’s side.", n, h.yarns.more) + move
	}
	if n < 0 {
		return h.backBy(-n, "at the side line")
	}
	where := "at the side line"
	if at := n - bridge.before; at > 0 && at < bridge.stitches {
		where += fmt.Sprintf(", between stitches %d and %d of the bridge", at, at+1)
	}
	return fmt.Sprintf("Knit %d more%s: the round now begins %s.", n, h.yarns.more, where) + move
}

// backBy returns how the beginning of the round moves back by n stitches.
func (h Hands) backBy(n int, where string) string {
	_, hand := h.sides()
	which := "them"
	if n == 1 {
		which = "it"
	}
	return fmt.Sprintf("The round now begins %s earlier, %s. Slip %s back to the %s needle, the yarn slack inside. Move the marker there.", Plural(n, "stitch"), where, which, hand)
}

// after returns the steps that finish a section, which still carries the marker of its
// round. The way to bind off is told once, with the part that was bound off first.
func after(s *stitch.Section, by Hands, like stitch.Part) []Step {
	if len(s.Finish.Ops) == 0 {
		return nil
	}
	if s.JoinsSets() {
		return []Step{{Text: grafted(s)}}
	}
	if s.Seam > 0 && count(s.Finish, stitch.Hold) > 0 {
		return by.thumbSewn(s)
	}
	text := capital(phrase(s.Finish)) + "."
	switch s.Finish.Ops[0] {
	case stitch.BindOff:
		rib, mm := "", by.Tails.Hand
		if inRib(s) {
			rib = " in rib"
		}
		switch {
		case rib != "" && by.yarns.boundOff != "":
			rib += "," + by.yarns.boundOff
		default:
			rib += by.yarns.boundOff
		}
		f, finger := mitt.FingerOf(s.Part)
		switch {
		case finger:
			mm = by.Tails.Fingers[f]
		case s.Part.Over() == stitch.OverDigit:
			mm = by.Tails.Thumb
		}
		text = fmt.Sprintf("Bind off %s%s", all(s.Finish.In()), rib)
		if like != "" {
			text += " like the " + like.Words() + "."
		} else {
			text += ": work 2, *slip both back, k2tog, work 1; repeat from *."
		}
		if mm > 0 {
			text += " It takes about " + Tail(mm, by.Unit) + "."
		}
		text += " Cut the yarn, draw it through the last."
	case stitch.Hold:
		text += " Cut the yarn" + by.leaving(by.Tails.End) + "; it closes a corner of the gap."
	case stitch.DrawUp:
		text = fmt.Sprintf("Cut the yarn%s. Draw it through the %s left, pull tight and fasten off inside.", by.leaving(by.Tails.End), Plural(s.Finish.In(), "stitch"))
	}
	if s.Noun() == "row" {
		return []Step{{Text: text}}
	}
	return []Step{{Text: text + " Marker off."}}
}

// inRib reports whether a section's last round is ribbed, as it is knitted.
func inRib(s *stitch.Section) bool {
	n := len(s.Rounds)
	return n > 0 && s.About.Ribbed > 0 && count(s.Rounds[n-1], stitch.Knit) > 0 && count(s.Rounds[n-1], stitch.Purl) > 0
}
