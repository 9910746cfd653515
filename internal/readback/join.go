package readback

import "fmt"

// gapOf names the stitches that wait for a gap, of the thumb or of the hand.
func gapOf(whose string) string { return "gap, " + whose }

// setAside puts all stitches of a thumb aside that is worked first: those for the gap, if
// any, and the others, which join the hand.
func (n *needles) setAside(p *Part, first int, others string) error {
	if n.held == nil {
		n.held = map[string][]int{}
	}
	waits, joins := 0, first
	if others != "" {
		waits, joins = first, atoi(others)
	}
	if waits+joins != len(n.live) {
		return fmt.Errorf("%d stitches are on the needles", len(n.live))
	}
	n.held[gapOf("thumb")], n.held[""] = n.live[:waits], n.live[waits:]
	return n.finish(p, "hold", waits+joins)
}

// takeGap puts the stitches that wait for the gap on two needles.
func (n *needles) takeGap(p *Part, ofThumb, ofHand int) error {
	thumb, hand := n.held[gapOf("thumb")], n.held["gap"]
	if len(n.live) > 0 || len(p.Rounds) > 0 || len(thumb) != ofThumb || len(hand) != ofHand {
		return fmt.Errorf("%d stitches are on the needles, %d of the thumb wait for the gap and %d of the hand", len(n.live), len(thumb), len(hand))
	}
	n.live = append(append(n.live, thumb...), hand...)
	delete(n.held, gapOf("thumb"))
	delete(n.held, "gap")
	p.From = []string{gapOf("thumb"), gapOf("hand")}
	return nil
}

// bring takes a stitch of a thumb that was worked first off the waste yarn.
func (n *needles) bring(right *[]int) error {
	left := n.held[""]
	if len(left) == 0 {
		return fmt.Errorf("no stitch is left on waste yarn")
	}
	*right = append(*right, left[0])
	if n.held[""] = left[1:]; len(left) == 1 {
		delete(n.held, "")
	}
	return nil
}
