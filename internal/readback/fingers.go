package readback

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// A glove has the gaps of the thumb and of its fingers open at once, each with two strands
// at its corners and a bridge of its own. They are told apart by the set of stitches that
// was put aside there. onWaste is the gap of a thumb that was knitted with waste yarn, and
// noGap is none.
const onWaste, noGap = "waste yarn", "none"

func newNeedles() *needles {
	return &needles{gusset: -1, gap: noGap, keepsFor: noGap, corners: map[string]int{}, bridges: map[string][]int{}, picked: map[int]bool{}}
}

// leaveGap opens the gap that a set of stitches leaves.
func (n *needles) leaveGap(set string) {
	n.corners[set] = 2
	delete(n.bridges, set)
}

// workIn works in a strand at a corner of the gap at which the work is.
func (n *needles) workIn(op string) error {
	if n.corners[n.gap] == 0 {
		return fmt.Errorf("%s: there is no strand left", op)
	}
	n.corners[n.gap]--
	return nil
}

// joinsAndCuts returns how many ends of yarn a line leaves.
func joinsAndCuts(line string) int {
	return strings.Count(line, "Join the yarn") + strings.Count(line, "Cut the yarn")
}

var (
	alongIt   = regexp.MustCompile(`^Pick up along the bridge, (?:one in (?:each of its (\d+) loops|its (loop))|at both ends( and between its stitches)?|(evenly spread))\.(?: (\d+) more comes? out of the loops? in the middle\.)?`)
	strands   = regexp.MustCompile(`^At both corners lift the loose strand; it goes with the held stitch beside it\.$`)
	overLoops = regexp.MustCompile(`^(?:The (\d+) loops? (?:is|are) the bridge between fingers\. Go on with the first of the (\d+) stitches: pulled snug\b|After the (\d+) loops? knit on along the (palm|back), and pull the first stitch snug\.)`)
	onEdge    = regexp.MustCompile(`^Pick up 1 beyond the back’s edge, (\d+) across it and 1 beyond:`)
	inFront   = regexp.MustCompile(`^Cast on the (\d+) loops in front of the palm, then join in the round\.`)
	itsRound  = regexp.MustCompile(`^Its round: (.*)\.$`)
	share     = regexp.MustCompile(`^(\d+) (picked up|of the palm|of the back|of the bridge)$`)
	onBack    = regexp.MustCompile(`^Pick up along the back, (\d+) rounds? below where the (?:little finger parts|fingers part), from (?:left|right) to (?:left|right)\.$`)
	weaves    = regexp.MustCompile(`(?:^Turn it inside out and weave|^Weave) in its (?:(\d+) ends|end)\b`)
)

// fingers reads what is said of a finger beside its rounds; ok is false for another line.
func (n *needles) fingers(p *Part, line string) (ok bool, err error) {
	if found := alongIt.FindStringSubmatch(line); found != nil {
		return true, n.alongBridge(p, found)
	}
	if strands.MatchString(line) {
		if n.corners[n.gap] != 2 || len(p.Rounds) > 0 {
			return true, fmt.Errorf("%d strands are left at the gap", n.corners[n.gap])
		}
		return true, nil
	}
	if found := overLoops.FindStringSubmatch(line); found != nil {
		p.over = []string{found[1] + found[3], found[2], found[4]}
		return true, nil
	}
	if found := onEdge.FindStringSubmatch(line); found != nil {
		p.loops = atoi(found[1]) + 2
		return true, nil
	}
	if found := inFront.FindStringSubmatch(line); found != nil {
		p.inFront = atoi(found[1])
		return true, nil
	}
	if onBack.MatchString(line) {
		if len(n.live) > 0 || len(p.Rounds) > 0 {
			return true, fmt.Errorf("%d stitches are on the needles already", len(n.live))
		}
		return true, nil
	}
	if found := itsRound.FindStringSubmatch(line); found != nil {
		p.shares = strings.Split(found[1], ", ")
		return true, nil
	}
	if found := weaves.FindStringSubmatch(line); found != nil {
		if told := oneOr(found[1]); told != n.ends || p.Finish == "" {
			return true, fmt.Errorf("there are %d ends", n.ends)
		}
		n.ends = 0
		return true, nil
	}
	return false, nil
}

// alongBridge reads where stitches are picked up along the bridge of the gap at which the
// work is: in its loops, between and beside its stitches, or in both.
func (n *needles) alongBridge(p *Part, found []string) error {
	bridge := len(n.bridges[n.gap])
	switch {
	case len(p.Rounds) > 0:
		return fmt.Errorf("the round is worked already")
	case found[1] != "" && atoi(found[1]) != bridge, found[2] != "" && bridge != 1:
		return fmt.Errorf("the bridge has %d stitches", bridge)
	case found[4] != "":
		return nil
	case found[1] != "" || found[2] != "":
		p.loops = bridge
		return nil
	case bridge < 1 || (bridge == 1) != (found[3] == ""):
		return fmt.Errorf("the bridge has %d stitches", bridge)
	}
	p.loops = bridge + 1
	if found[5] != "" {
		if p.loops += atoi(found[5]); atoi(found[5]) > bridge {
			return fmt.Errorf("the bridge has %d loops", bridge)
		}
	}
	return nil
}

// stays compares stitches that are set aside with those that were said to stay on waste yarn.
func (w *worker) stays(leave bool, k int) error {
	if !leave && w.stay == 0 {
		return nil
	}
	if !leave || k != w.stay || w.eaten != w.first {
		return fmt.Errorf("%d were said to stay after the first %d, and %d stay after %d", w.stay, w.first, k, w.eaten)
	}
	w.stay = 0
	return nil
}

// wentOver compares what was said of a finger's bridge, and of a cap's, with the round that
// casts it on.
func (p *Part) wentOver() error {
	if p.over == nil && p.inFront == 0 {
		return nil
	}
	if len(p.Rounds) == 0 {
		return fmt.Errorf("no round casts a bridge on")
	}
	ops := p.Rounds[0].Ops
	cast, last := count(ops, "CO"), slices.Index(ops, "CO")+count(ops, "CO")
	switch {
	case p.inFront > 0 && (cast != p.inFront || last != len(ops)):
		return fmt.Errorf("%d loops were to be cast on at the round's end", p.inFront)
	case p.over == nil:
		return nil
	case atoi(p.over[0]) != cast:
		return fmt.Errorf("%s loops were told, and %d are cast on", p.over[0], cast)
	case p.over[1] != "" && (atoi(p.over[1]) != slices.Index(ops, "hold") || last != len(ops)):
		return fmt.Errorf("the %s stitches before the bridge were told", p.over[1])
	case p.over[2] != "" && (last == len(ops) || !strings.HasSuffix(p.shares[len(p.shares)-1], p.over[2])):
		return fmt.Errorf("along the %s was told, and the round ends otherwise", p.over[2])
	}
	return nil
}

// divided compares what the first round of a finger was said to be made of with what is on
// the needles after it. Palm and back are told once each; both are stitches of the hand.
func (n *needles) divided(p *Part) error {
	at, of := 0, map[string]int{}
	for _, text := range p.shares {
		found := share.FindStringSubmatch(text)
		if found == nil || of[found[2]] > 0 || atoi(found[1]) < 1 || at+atoi(found[1]) > len(n.live) {
			return fmt.Errorf("%q is no part of the round, which has %d stitches", text, len(n.live))
		}
		of[found[2]] = atoi(found[1])
		for _, stitch := range n.live[at : at+of[found[2]]] {
			if is := n.comesFrom(stitch); is != found[2] && (is != "" || !strings.HasPrefix(found[2], "of the ") || found[2] == "of the bridge") {
				return fmt.Errorf("%q was told, and stitch %d is %s", text, at+1, is)
			}
			at++
		}
	}
	if at != len(n.live) {
		return fmt.Errorf("%d stitches were told of %d", at, len(n.live))
	}
	if d := of["of the palm"] - of["of the back"]; d < -1 || d > 1 {
		return fmt.Errorf("palm and back differ by more than one: %v", p.shares)
	}
	return nil
}

// along checks that the little finger lies where the others leave it beside a thumb in the
// palm. Where the inset stitches of the palm end the round, the others' part of the palm
// comes before it, less these; where they follow the thumb's, it comes after the thumb's,
// these, and the others' part of the back.
func (n *needles) along(m *Mitt) error {
	var little *Part
	others := map[string]int{}
	for _, p := range m.Parts {
		for i, text := range p.shares {
			found := share.FindStringSubmatch(text)
			switch {
			case i == 0 && found[2] != "picked up":
				little = p
			case p != little:
				others[found[2]] += atoi(found[1])
			}
		}
	}
	if little == nil || n.inset == 0 {
		return nil
	}
	side, want := "of the palm", others["of the palm"]-n.inset
	if n.palmFirst {
		side, want = "of the back", m.overThumb()+n.inset+others["of the back"]
	}
	if first := share.FindStringSubmatch(little.shares[0])[2]; first != side {
		return fmt.Errorf("the little finger begins with its part %s, and %s comes first", first, side)
	}
	if little.Moved != want {
		return fmt.Errorf("the little finger begins after %d stitches; the others leave %d before it", little.Moved, want)
	}
	return nil
}

// overThumb returns how many stitches begin the hand's round above the thumb: what stays
// of a gusset and the bridge, or those above the waste yarn.
func (m *Mitt) overThumb() int {
	gusset := 0
	for _, p := range m.Parts {
		for i, r := range p.Rounds {
			if i == 0 && count(r.Ops, waste) > 0 {
				return count(r.Ops, waste)
			}
			if i == 0 && count(r.Ops, "hold") > 0 {
				return gusset - count(r.Ops, "hold") + count(r.Ops, "CO")
			}
			gusset = max(r.Gusset, 0)
		}
	}
	return 0
}

// comesFrom tells where a stitch comes from, or "" if it was on the hand.
func (n *needles) comesFrom(stitch int) string {
	if n.picked[stitch] {
		return "picked up"
	}
	for set, bridge := range n.bridges {
		if set != "" && slices.Contains(bridge, stitch) {
			return "of the bridge"
		}
	}
	return ""
}

// count returns how often an operation is in a round.
func count(ops []string, op string) (n int) {
	for _, o := range ops {
		if o == op {
			n++
		}
	}
	return n
}
