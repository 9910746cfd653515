// Package readback is a test helper that knits written instructions, stitch by
// stitch, with needles, waste yarn and markers of its own. It knows the trade's
// abbreviations (the Craft Yarn Council's list, from memory) and what each takes
// and makes, but not how the program writes instructions.
package readback

import (
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
)

// Mitt is a mitt knitted from a text, part by part.
type Mitt struct{ Parts []*Part }

// Part is one section of a text.
type Part struct {
	Title    string
	CastOn   int      // stitches cast on before round 1
	From     []string // names of the held sets with which it begins; "" for a set without a name
	Moved    int      // stitches by which the beginning of the round moves on
	Rounds   []Round
	Finish   string // "BO", "draw up", "graft" or ""
	Finished int    // stitches that the finish takes

	schedules []schedule // stated before the rounds
	ends      int        // stitches at either end of every row that were said to be knitted
	texts     []string   // of the rounds worked
	multiples []multipleOf
	open      bool     // the seam stays open along it
	rows      bool     // it was worked to and fro
	edge      int      // rounds of garter stitch that were said to begin it
	lastEdge  int      // and to end it
	brings    [2]int   // a round that was said to bring the stitches to the hand's or the wrist's, and to how many
	atOnce    bool     // it is the first
	shares    []string // what its first round was said to be made of
	stop      int      // the round after which it was said where the part ends; 0: it was not
	named     int      // the round that was said to begin that end; 0: none
	loops     int      // stitches that were said to be picked up; 0: none
	over      []string // what was said of the round's way over the loops of a bridge
	inFront   int      // loops that were said to be cast on in front of the palm
}

// multipleOf is a round that was said to bring the stitches to a multiple.
type multipleOf struct{ round, of, besides int }

// checkSaid compares what was said of single rounds with what was knitted.
func (p *Part) checkSaid() error {
	if err := p.checkStop(); err != nil {
		return err
	}
	for i, r := range p.Rounds {
		if !p.edged(i+1, r.Ops) {
			return fmt.Errorf("row %d was to begin and end with %d knit stitches", i+1, p.ends)
		}
	}
	if p.loops > 0 && (len(p.Rounds) == 0 || count(p.Rounds[0].Ops, "pick up") != p.loops) {
		return fmt.Errorf("%d were to be picked up", p.loops)
	}
	if err := p.wentOver(); err != nil {
		return err
	}
	for _, m := range p.multiples {
		if m.of < 1 || m.round > len(p.Rounds) || (p.Rounds[m.round-1].After-m.besides)%m.of != 0 {
			return fmt.Errorf("round %d was to bring the stitches to a multiple of %d", m.round, m.of)
		}
	}
	last := len(p.Rounds)
	if p.rows && last > 1 {
		last-- // the one on the wrong side is not shaped
	}
	if p.atOnce {
		last = 1
	}
	if r, to := p.brings[0], p.brings[1]; r > 0 && (r != last || p.Rounds[r-1].After != to) {
		return fmt.Errorf("round %d was to end with the %d stitches of hand or wrist", r, to)
	}
	for i := range p.lastEdge {
		if r := len(p.Rounds) - i; r < 1 || p.Rounds[r-1].After != p.Finished {
			return fmt.Errorf("round %d is no round of the edge in garter stitch", r)
		}
	}
	for r := range p.edge {
		if r >= len(p.Rounds) || p.Rounds[r].After != p.CastOn { // its stitches may be painted
			return fmt.Errorf("round %d is no round of the edge in garter stitch", r+1)
		}
	}
	return nil
}

// Round is one round as it was worked.
type Round struct {
	Ops    []string // of a row as they look on the right side, from right to left
	After  int      // stitches on the needles after it
	Gusset int      // of these, stitches before the gusset's marker; −1 without a marker
	Yarns  []string // of the operations, as they stand; "" where none is told, which is the main colour
	Caught []string // the yarns whose strands were caught
}

// Read knits a text to its end. It returns an error for the first line that can't
// be followed or that contradicts what is on the needles.
func Read(text string) (*Mitt, error) {
	m, n := &Mitt{}, newNeedles()
	var part *Part
	for number, line := range strings.Split(strings.TrimRight(text, "\n"), "\n") {
		var err error
		switch {
		case line == "":
			err, part = n.end(part), nil
		case part == nil:
			part = &Part{Title: line}
			m.Parts = append(m.Parts, part)
		default:
			err = n.follow(part, line)
		}
		if err != nil {
			return nil, fmt.Errorf("line %d, %q: %w", number+1, line, err)
		}
	}
	if err := n.end(part); err != nil {
		return nil, err
	}
	if len(n.live) > 0 || n.waiting() > 0 {
		return nil, fmt.Errorf("at the end %d stitches are on the needles and %d on waste yarn", len(n.live), n.waiting())
	}
	if err := n.along(m); err != nil {
		return nil, err
	}
	return m, n.seams(m)
}

var (
	labelled = regexp.MustCompile(`^(Round|Row)s? (\d+)(?:[–-](\d+))?(?: \((right|wrong) side\))?: (.*)$`)
	workMore = regexp.MustCompile(`^Work (?:round|row)s? (\d+)(?:–(\d+))?,? (once|twice|(\d+) times) more(?:, then (?:round|row)s? (\d+)(?:–(\d+))?)? \((\d+)[^()]*\)\.$`)
)

// follow works one line.
func (n *needles) follow(p *Part, line string) error {
	found := labelled.FindStringSubmatch(line)
	if found == nil {
		if said, err := p.stops(line); said {
			return err
		}
		return n.otherLine(p, line)
	}
	from, to := span(found[2], found[3])
	if from != len(p.Rounds)+1 || to < from || to > 5000 {
		return fmt.Errorf("round %d follows", len(p.Rounds)+1)
	}
	if err := n.faces(found[1], found[4], to-from); err != nil {
		return err
	}
	if strings.HasPrefix(found[5], "Work ") {
		if more := workMore.FindStringSubmatch(found[5]); more != nil {
			return n.workMore(p, more, to)
		}
	}
	for range to - from + 1 {
		if err := n.oneRound(p, found[5]); err != nil {
			return err
		}
	}
	return nil
}

// oneRound works one round of a part.
func (n *needles) oneRound(p *Part, text string) error {
	r, err := n.round(text)
	if err == nil && n.rows {
		p.rows = true
		if n.wrong {
			slices.Reverse(r.Yarns)
		}
		r.Ops, err = n.turn(r.Ops)
	}
	if err == nil {
		p.Rounds, p.texts = append(p.Rounds, r), append(p.texts, text)
	}
	if err == nil && len(p.Rounds) == 1 && p.shares != nil {
		err = n.divided(p)
	}
	return err
}

// workMore works rounds again that were worked already, up to round to.
func (n *needles) workMore(p *Part, found []string, to int) error {
	from, last := span(found[1], found[2])
	var list []int
	for range times(found[3], found[4]) {
		for r := from; r <= last; r++ {
			list = append(list, r)
		}
	}
	if found[5] != "" {
		first, end := span(found[5], found[6])
		for r := first; r <= end; r++ {
			list = append(list, r)
		}
	}
	if worked := len(p.Rounds); last != worked || from < 1 || len(list) != to-worked {
		return fmt.Errorf("%d rounds are worked, %d more are told, to round %d", worked, len(list), to)
	}
	for _, r := range list {
		if r < from || r > last {
			return fmt.Errorf("round %d is none of those worked again", r)
		}
		if err := n.oneRound(p, p.texts[r-1]); err != nil {
			return err
		}
	}
	if after := p.Rounds[len(p.Rounds)-1].After; after != atoi(found[7]) {
		return fmt.Errorf("%d stitches are on the needles", after)
	}
	return nil
}

// span returns the first and last of rounds.
func span(from, to string) (first, last int) {
	first = atoi(from)
	if to == "" {
		return first, first
	}
	return first, atoi(to)
}

// end checks the stated schedules of a part that is worked to its end.
func (n *needles) end(p *Part) error {
	if p == nil {
		return nil
	}
	n.gusset, n.before = -1, 0
	if p.open {
		n.open = len(p.Rounds)
	}
	if err := p.checkSaid(); err != nil {
		return fmt.Errorf("%s: %w", p.Title, err)
	}
	n.gap = noGap
	for _, s := range p.schedules {
		if err := s.check(p); err != nil {
			return fmt.Errorf("%s: %w", p.Title, err)
		}
	}
	return nil
}

// atoi returns the number that digits stand for, −1 if it is too large.
func atoi(digits string) int {
	n, err := strconv.Atoi(digits)
	if err != nil {
		return -1
	}
	return n
}
