// Package readback is a test helper that knits written instructions, stitch by
// stitch, with needles, waste yarn and markers of its own. It knows the trade's
// abbreviations (the Craft Yarn Council's list, from memory) and what each takes
// and makes, but not how the program writes instructions.
package readback

import (
	"fmt"
	"regexp"
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
}

// Round is one round as it was worked.
type Round struct {
	Ops    []string
	After  int // stitches on the needles after it
	Gusset int // of these, stitches before the gusset's marker; −1 without a marker
}

// Read knits a text to its end. It returns an error for the first line that can't
// be followed or that contradicts what is on the needles.
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

// follow works one line.
func (n *needles) follow(p *Part, line string) error {
	found := labelled.FindStringSubmatch(line)
	if found == nil {
		return n.otherLine(p, line)
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

// end checks the stated schedules of a part that is worked to its end.
func (n *needles) end(p *Part) error {
	if p == nil {
		return nil
	}
	n.gusset = -1
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
