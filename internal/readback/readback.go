// Package readback is a test helper: it reads written instructions as a knitter
// does, stitch by stitch, and keeps its own needles, waste yarn and markers. It
// knows the trade's abbreviations (the Craft Yarn Council's list, from memory)
// and the ledger of each, and nothing of how the instructions are written.
package readback

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

// Mitt is what was knitted from a text, part by part.
type Mitt struct{ Parts []*Part }

// Part is one section of a text.
type Part struct {
	Title    string
	CastOn   int      // stitches cast on before round 1
	From     []string // whom the stitches waited for with which it begins; "" where only one set waits
	Moved    int      // stitches by which the beginning of the round moves on
	Rounds   []Round
	Finish   string // "BO", "draw up", "graft", or nothing
	Finished int    // stitches that the finish takes

	said []schedule
}

// Round is one round as it was worked, operation by operation, and what is on
// the needles after it: in all, and before the gusset's marker (−1: no marker).
type Round struct {
	Ops    []string
	After  int
	Gusset int
}

// Read knits a text to its end. It fails at the first line that can't be
// followed, or that says something else than what is on the needles.
func Read(text string) (*Mitt, error) {
	m, n := &Mitt{}, &needles{gusset: -1}
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
	return m, nil
}

var labelled = regexp.MustCompile(`^Rounds? (\d+)(?:[–-](\d+))?: (.*)$`)

// follow does what one line says.
func (n *needles) follow(p *Part, line string) error {
	found := labelled.FindStringSubmatch(line)
	if found == nil {
		return n.step(p, line)
	}
	from := atoi(found[1])
	to := from
	if found[2] != "" {
		to = atoi(found[2])
	}
	if from != len(p.Rounds)+1 || to < from || to > 5000 {
		return fmt.Errorf("round %d follows", len(p.Rounds)+1)
	}
	for range to - from + 1 {
		r, err := n.round(found[3])
		if err != nil {
			return err
		}
		p.Rounds = append(p.Rounds, r)
	}
	return nil
}

// end looks back on a whole part.
func (n *needles) end(p *Part) error {
	if p == nil {
		return nil
	}
	n.gusset = -1
	for _, s := range p.said {
		if err := s.check(p); err != nil {
			return fmt.Errorf("%s: %w", p.Title, err)
		}
	}
	return nil
}

// atoi is a number that was matched as digits; too long a one is −1.
func atoi(digits string) int {
	n, err := strconv.Atoi(digits)
	if err != nil {
		return -1
	}
	return n
}
