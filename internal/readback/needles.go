package readback

import (
	"fmt"
	"regexp"
	"strings"
)

// needles are the stitches being knitted, each with a number of its own.
type needles struct {
	live      []int            // on the needles, in the order of the next round
	held      map[string][]int // on waste yarn, by the name of their set
	keepsFor  string           // name of the set for stitches put aside now
	corners   map[string]int   // strands at the corners of the gaps that are not yet worked in, by the set that left the gap
	gap       string           // the set that left the gap at which the work is
	made      int              // number of stitches made so far
	cornerAt  [2]int           // stitches of a thumb's first row before each corner, without that of the seam
	edge      int              // loops of the cast-on that nothing is joined to
	lower     []int            // under the waste yarn that was knitted in, in the order worked
	bridges   map[string][]int // stitches cast on over a gap, in the order made, by the set that left it
	picked    map[int]bool     // stitches that were picked up
	inset     int              // stitches of the palm on the far side of the thumb
	palmFirst bool             // these come right after the thumb's; else they end the round
	first     int              // stitches before those that stay on waste yarn while the others are taken up
	stay      int              // and how many stay; 0: none
	ends      int              // ends of yarn since the last were woven in
	gusset    int              // live stitches before the gusset's marker, or between its two; −1 without one
	before    int              // live stitches before the first of two
	open      int              // rows along which the seam was said to stay open
	leftOpen  bool             // they were left open when it was sewn
	sewn      int              // seams that were sewn
	unsewn    bool             // a thumb that was worked flat and first is not sewn yet
	rows      bool             // the work goes to and fro
	wrong     bool             // the wrong side faces
	dyes
}

// ledger has the number of stitches that each operation takes and makes.
var ledger = map[string][2]int{
	"k": {1, 1}, "p": {1, 1}, "k tbl": {1, 1}, "p tbl": {1, 1}, "sl": {1, 1},
	"M1L": {0, 1}, "M1R": {0, 1}, "M1": {0, 1}, "yo": {0, 1}, "LLI": {0, 1}, "RLI": {0, 1},
	"kfb": {1, 2}, "k2tog": {2, 1}, "ssk": {2, 1}, "p2tog": {2, 1}, "ssp": {2, 1},
	"k3tog": {3, 1}, "sk2p": {3, 1}, "s2kp": {3, 1},
	"hold": {1, 0}, "CO": {0, 1}, "pick up": {0, 1}, "knit in": {0, 1}, joinHem: {1, 1},
	waste: {1, 1}, cornerM1: {0, 1},
	"k2tog with the gap strand": {1, 1}, "ssk with the gap strand": {1, 1},
}

// joinHem knits a stitch together with its loop of the cast-on, of which there is one
// for each stitch that was cast on.
const joinHem = "k with its cast-on loop"

// A stitch knitted with waste yarn and again leaves its loop of the round below on the
// waste yarn. Once that is out, half a loop is left at each end of it.
const (
	waste    = "k with waste yarn"
	cornerM1 = "M1 at the corner"
)

// work works one operation, of which the ledger has the effect: it takes stitches off
// the left needle and puts those that it makes on the right one.
func (n *needles) work(op string, effect [2]int, right *[]int) error {
	eats := effect[0]
	if eats > len(n.live) {
		return fmt.Errorf("%s takes %d, and %d are left of the round", op, eats, len(n.live))
	}
	taken := n.live[:eats]
	n.live = n.live[eats:]
	switch op {
	case joinHem:
		if n.edge == 0 {
			return fmt.Errorf("no loop of the cast-on is left")
		}
		n.edge--
		*right = append(*right, taken[0])
		return nil
	case "k", "p", "k tbl", "p tbl", "sl", "k2tog", "ssk", "p2tog", "ssp", "k3tog", "sk2p", "s2kp":
		*right = append(*right, taken[0])
		return nil
	case waste:
		if len(n.lower) == 0 {
			n.leaveGap(onWaste)
		}
		n.lower = append(n.lower, taken[0])
		n.made++
		*right = append(*right, n.made)
		return nil
	case cornerM1:
		if err := n.workIn(op); err != nil {
			return err
		}
	case "hold":
		if n.held == nil {
			n.held = map[string][]int{}
		}
		if len(n.held[n.keepsFor]) == 0 {
			n.leaveGap(n.keepsFor)
		}
		n.held[n.keepsFor] = append(n.held[n.keepsFor], taken[0])
		return nil
	case "knit in":
		return n.bring(right)
	case "k2tog with the gap strand", "ssk with the gap strand":
		if err := n.workIn(op); err != nil {
			return err
		}
		*right = append(*right, taken[0])
		return nil
	}
	for range effect[1] {
		n.made++
		*right = append(*right, n.made)
		switch op {
		case "CO":
			n.bridges[n.keepsFor] = append(n.bridges[n.keepsFor], n.made)
		case "pick up":
			n.picked[n.made] = true
		}
	}
	return nil
}

// Patterns of the lines that are not rounds.
var (
	garter   = regexp.MustCompile(`^The (?:first|(last)) (\d+) (?:round|row)s are an edge in garter stitch:`)
	brings   = regexp.MustCompile(`^The next (?:round|row) brings the stitches to the (?:hand|(wrist))’s (\d+)(?:, and the seam’s (\d+))?\.$`)
	castOn   = regexp.MustCompile(`^Cast on (\d+) stitch(?:es)?\b`)
	takeUp   = regexp.MustCompile(`^Put the (\d+) (?:held )?stitch(?:es)?(?: held((?: and)? for the .*))? back on the needles\b`)
	takeSome = regexp.MustCompile(`^Of the (\d+) held((?: and)? for the .*)? take up the first(?: (\d+))? and the last(?: (\d+))?\. The (\d+) between them stay where they are\.(?: |$)`)
	knitOn   = regexp.MustCompile(`^Knit (\d+) (?:more(?:,? (?:each )?in [^:]+)?: the round now begins|stitch(?:es)? of the next round(?:,? (?:each )?in [^.]+)?\. The little finger begins here)\b[^.\d]*(?:between stitches (\d+) and (\d+) of the bridge)?\.`)
	goBack   = regexp.MustCompile(`^The round now begins (\d+) stitch(?:es)? earlier, [a-z’ ]+\. Slip (it|them) back to the (?:left|right) needle\b`)
	marker   = regexp.MustCompile(`^Place the second marker after the first (?:stitch|(\d+) stitches):`)
	markers  = regexp.MustCompile(`^Place a marker after the first (?:(\d+) stitches|stitch), and another after the next (?:one|(\d+)): the gusset (?:grows|narrows) between them\.$`)
	passes   = regexp.MustCompile(`^A row begins at the seam, on the little finger’s side\. The (?:right|left) hand’s right side crosses [^.]*\bthe back and (\d+) stitch(?:es)? of the palm\b`)
	crosses  = regexp.MustCompile(`^The round begins (?:with the first stitch of the gusset\. After the gusset|where the thumb will be\. From there) .* crosses .*the palm’s (last|first) (?:stitch|(\d+) stitches)\b`)
	sets     = regexp.MustCompile(`^Slip (\d+) to waste yarn(?: for the gap, slip (\d+) to waste yarn)?\.`)
	gap      = regexp.MustCompile(`^Put the thumb’s (\d+) stitch(?:es)? that waits? for the gap on one needle, the hand’s (\d+) on another\b`)
	grafts   = regexp.MustCompile(`^Graft the thumb’s (\d+) to the hand’s (\d+)[;.]`)
	multiple = regexp.MustCompile(`^The next (?:round|row) brings the stitches to a multiple of (\d+)(?:, and the seam’s (\d+))?, for the ribbing\.$`)
	bindOff  = regexp.MustCompile(`^(?:Bind|Cast) off (?:all |the )?(\d+) stitch(?:es)?\b(?:[^.:]*: work 2, \*slip both back, k2tog, work 1; repeat from \*)?[^:*\d]*\.`)
	drawUp   = regexp.MustCompile(`^Cut the yarn(?:, leaving a tail[^.]*)?[.,] [Dd]raw it through the (\d+) stitch(?:es)?\b`)
	stayOpen = regexp.MustCompile(`^Leave the (\d+) rows of the opening open for the thumb\.`)
	last     = regexp.MustCompile(`: leave the first (?:(\d+) )?for the row’s end\.$`)
	takeOut  = regexp.MustCompile(`^Take the waste yarn out, loop by loop\. Put the (\d+) loops? below it on (?:a needle|one needle, the (\d+) above on another)\.$`)
	drawLast = regexp.MustCompile(`^Draw the yarn through the last (\d+)\b`)
	graft    = regexp.MustCompile(`^Graft the last (\d+)\b`)
	measured = regexp.MustCompile(`\b\d+ (?:cm|mm|in)\b`)
	digit    = regexp.MustCompile(`\d`)
)

// otherLine works a line that is not a round.
func (n *needles) otherLine(p *Part, line string) error {
	number := func(re *regexp.Regexp) (int, bool) {
		found := re.FindStringSubmatch(line)
		if found == nil {
			return 0, false
		}
		return atoi(found[1]), true
	}
	if err := n.goesOver(line); err != nil {
		return err
	}
	n.ends += joinsAndCuts(line)
	if ok, err := n.told(line); ok {
		return err
	}
	if ok, err := n.fingers(p, line); ok {
		return err
	}
	if found := takeOut.FindStringSubmatch(line); found != nil {
		return n.takeOut(p, atoi(found[1]), found[2])
	}
	if ok, err := n.edges(p, line); ok {
		return err
	}
	if found := last.FindStringSubmatch(line); found != nil {
		return n.leave(p, oneOr(found[1]))
	}
	if ok, err := n.thumbInRows(p, line); ok {
		return err
	}
	switch {
	case strings.HasPrefix(line, "Sew the thumb’s seam and the long one in mattress stitch"):
		n.sewn = 2
	case strings.HasPrefix(line, "The seam stays open here:"):
		p.open = true
	case strings.HasPrefix(line, "Sew the seam in mattress stitch"):
		n.sewn = 1
	}
	if k, ok := number(stayOpen); ok {
		return n.leaveOpen(k)
	}
	if k, ok := number(castOn); ok {
		return n.castOn(p, k)
	}
	if found := brings.FindStringSubmatch(line); found != nil {
		p.brings, p.atOnce = [2]int{len(p.Rounds) + 1, atoi(found[2])}, found[1] != ""
		if found[3] != "" {
			p.brings[1] += atoi(found[3])
		}
		return nil
	}
	if found := garter.FindStringSubmatch(line); found != nil {
		if p.edge = atoi(found[2]); found[1] != "" {
			p.edge, p.lastEdge = 0, atoi(found[2])
		}
		return nil
	}
	if found := takeUp.FindStringSubmatch(line); found != nil {
		return n.takeUp(p, atoi(found[1]), found[2])
	}
	if found := takeSome.FindStringSubmatch(line); found != nil {
		return n.takeSome(p, found)
	}
	if found := knitOn.FindStringSubmatch(line); found != nil {
		if found[2] != "" && !n.between(atoi(found[1]), atoi(found[2]), atoi(found[3])) {
			return fmt.Errorf("the round would not begin there")
		}
		return n.move(p, atoi(found[1]))
	}
	if found := goBack.FindStringSubmatch(line); found != nil {
		if (found[1] == "1") != (found[2] == "it") {
			return fmt.Errorf("%s stitches are slipped back, as %s", found[1], found[2])
		}
		return n.move(p, -atoi(found[1]))
	}
	if found := sets.FindStringSubmatch(line); found != nil {
		return n.setAside(p, atoi(found[1]), found[2])
	}
	if found := gap.FindStringSubmatch(line); found != nil {
		return n.takeGap(p, atoi(found[1]), atoi(found[2]))
	}
	if found := grafts.FindStringSubmatch(line); found != nil {
		if found[1] != found[2] {
			return fmt.Errorf("%s are grafted to %s", found[1], found[2])
		}
		return n.finish(p, "graft", 2*atoi(found[1]))
	}
	if found := marker.FindStringSubmatch(line); found != nil {
		if n.gusset = 1; found[1] != "" {
			n.gusset = atoi(found[1])
		}
		if n.gusset < 1 || n.gusset >= len(n.live) || len(p.Rounds) > 0 {
			return fmt.Errorf("%d stitches are on the needles", len(n.live))
		}
		return nil
	}
	if found := markers.FindStringSubmatch(line); found != nil {
		return n.twoMarkers(p, found[1], found[2])
	}
	if k, ok := number(passes); ok {
		if k >= len(n.live)/2 {
			return fmt.Errorf("%d stitches are on the needles, half of them the palm's", len(n.live))
		}
		return nil
	}
	if found := crosses.FindStringSubmatch(line); found != nil {
		n.palmFirst = found[1] == "first"
		if n.inset = oneOr(found[2]); n.inset >= len(n.live)/2 {
			return fmt.Errorf("%d stitches are on the needles, half of them the palm's", len(n.live))
		}
		return nil
	}
	for _, finish := range []struct {
		re *regexp.Regexp
		op string
	}{{bindOff, "BO"}, {drawUp, "draw up"}, {drawLast, "draw up"}, {graft, "graft"}} {
		if k, ok := number(finish.re); ok {
			return n.finish(p, finish.op, k)
		}
	}
	if found := multiple.FindStringSubmatch(line); found != nil {
		besides := 0
		if found[2] != "" {
			besides = atoi(found[2])
		}
		p.multiples = append(p.multiples, multipleOf{len(p.Rounds) + 1, atoi(found[1]), besides})
		return nil
	}
	if s, ok := readSchedule(line, p.edge); ok {
		p.schedules = append(p.schedules, s)
		return nil
	}
	if digit.MatchString(line) && digit.MatchString(measured.ReplaceAllString(line, "")) {
		return fmt.Errorf("it has a number, and nobody can tell what to do with it")
	}
	return nil // advice
}

func (n *needles) castOn(p *Part, k int) error {
	if len(n.live) > 0 || len(p.Rounds) > 0 {
		return fmt.Errorf("%d stitches are on the needles already", len(n.live))
	}
	for range k {
		n.made++
		n.live = append(n.live, n.made)
	}
	p.CastOn, n.edge = k, k
	return nil
}

// takeUp puts the k stitches of one or more held sets back on the needles. sets
// names them, " for the index and for the middle", or is empty for a set without a
// name.
func (n *needles) takeUp(p *Part, k int, sets string) error {
	var back []int
	p.From = strings.Split(strings.TrimPrefix(sets, " for the "), " and for the ")
	for _, name := range p.From {
		back = append(back, n.held[name]...)
		delete(n.held, name)
	}
	if len(n.live) > 0 || len(p.Rounds) > 0 || k != len(back) {
		return fmt.Errorf("%d stitches are on the needles, %d on waste yarn", len(n.live), len(back)+n.waiting())
	}
	n.live, n.gap = back, p.From[0]
	return nil
}

// takeSome puts the first and the last stitches of a held set back on the needles; those
// between stay on waste yarn until the round tells for which set they wait.
func (n *needles) takeSome(p *Part, found []string) error {
	if err := n.takeUp(p, atoi(found[1]), found[2]); err != nil {
		return err
	}
	n.first, n.stay = oneOr(found[3]), atoi(found[5])
	if n.first < 1 || n.stay < 1 || n.first+n.stay+oneOr(found[4]) != len(n.live) {
		return fmt.Errorf("%d stitches are held", len(n.live))
	}
	return nil
}

// takeOut takes the waste yarn out: of k loops below it, and of one fewer above, since
// each of those lies between two below. The thumb's round runs along the upper edge first.
func (n *needles) takeOut(p *Part, k int, above string) error {
	if len(n.live) > 0 || len(p.Rounds) > 0 || k != len(n.lower) || atoi("0"+above) != k-1 {
		return fmt.Errorf("%d stitches are on the needles, %d were knitted with waste yarn", len(n.live), len(n.lower))
	}
	for range k - 1 {
		n.made++
		n.live = append(n.live, n.made)
	}
	if n.live, n.lower = append(n.live, n.lower...), nil; k > 1 {
		p.From = append(p.From, "above")
	}
	p.From = append(p.From, "below")
	n.cornerAt, n.gap = [2]int{k - 1, 2 * k}, onWaste
	return nil
}

// leave makes a thumb's row begin k loops on, among those above what was the waste yarn.
func (n *needles) leave(p *Part, k int) error {
	if !n.rows || k < 1 || k > n.cornerAt[0] {
		return fmt.Errorf("%d loops are above", n.cornerAt[0])
	}
	n.cornerAt[0] -= k
	n.cornerAt[1] -= k
	return n.move(p, k)
}

// waiting returns the number of stitches on waste yarn.
func (n *needles) waiting() int {
	all := len(n.lower)
	for _, list := range n.held {
		all += len(list)
	}
	return all
}

// between reports whether the kth stitch of the round and the next one are two stitches
// of the thumb's bridge.
func (n *needles) between(k, one, other int) bool {
	bridge := n.bridges[""]
	return k > 0 && k < len(n.live) && one > 0 && other == one+1 && other <= len(bridge) &&
		n.live[k-1] == bridge[one-1] && n.live[k] == bridge[other-1]
}

// move makes the round begin k stitches further on, or back if k is negative.
func (n *needles) move(p *Part, k int) error {
	if k > len(n.live) || -k > len(n.live) || len(p.Rounds) > 0 {
		return fmt.Errorf("the round has %d stitches", len(n.live))
	}
	at := (k + len(n.live)) % len(n.live)
	n.live = append(append([]int(nil), n.live[at:]...), n.live[:at]...)
	p.Moved = k
	return nil
}

func (n *needles) finish(p *Part, op string, k int) error {
	if k != len(n.live) {
		return fmt.Errorf("%d stitches are on the needles", len(n.live))
	}
	p.Finish, p.Finished, n.live, n.going = op, k, nil, ""
	return nil
}
