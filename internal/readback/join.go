package readback

import (
	"fmt"
	"regexp"
	"strings"
)

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
	if n.unsewn {
		return fmt.Errorf("the thumb's seam is open, and half of them stand at either edge")
	}
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

var (
	drawnAtEdges = regexp.MustCompile(`^Cut the yarn\b[^.]*\. Draw it through the first stitch and the last: both go into the seam\.$`)
	slipsEach    = regexp.MustCompile(`^[Ss]lip (\d+) to waste yarn( for the gap)?$`)
)

// thumbInRows reads how a thumb ends that was worked flat and first: its edge stitches go
// into the seam, and between them each stitch is put aside, those for the gap at both
// sides; then the seam is sewn. ok is false for another line.
func (n *needles) thumbInRows(p *Part, line string) (ok bool, err error) {
	switch {
	case drawnAtEdges.MatchString(line):
		if len(n.live) < 3 || !n.rows || n.wrong {
			return true, fmt.Errorf("%d stitches are on the needles", len(n.live))
		}
		n.unsewn = true
		p.Finish, p.Finished, n.live = "BO", len(n.live), n.live[1:len(n.live)-1]
		return true, nil
	case strings.HasPrefix(line, "Sew the thumb’s seam with that tail in mattress stitch"):
		if n.live != nil || p.Finish != "BO" {
			return true, fmt.Errorf("%d stitches are on the needles", len(n.live))
		}
		n.unsewn = false
		return true, nil
	case p.Finish != "BO" || len(n.live) == 0:
		return false, nil
	}
	n.held = map[string][]int{}
	for _, item := range strings.Split(strings.TrimSuffix(line, "."), ", ") {
		found := slipsEach.FindStringSubmatch(item)
		if found == nil || atoi(found[1]) > len(n.live) {
			return true, fmt.Errorf("%d stitches are on the needles", len(n.live))
		}
		set := ""
		if found[2] != "" {
			set = gapOf("thumb")
		}
		k := atoi(found[1])
		n.held[set], n.live = append(n.held[set], n.live[:k]...), n.live[k:]
	}
	if len(n.live) > 0 {
		return true, fmt.Errorf("%d stitches are left", len(n.live))
	}
	n.live = nil
	return true, nil
}
