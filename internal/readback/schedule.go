package readback

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// schedule is a rhythm stated before the rounds of a part.
type schedule struct {
	action   []int // rounds of the changes that follow from the rhythm
	until    int   // last round that the rhythm covers
	steady   bool  // the rhythm covers the part to its end
	listed   []int // rounds of the changes that the text lists
	times    int   // stated number of changes
	from, to int   // stated counts of stitches
	number   bool  // only the number of changes was told
}

var (
	wholeSchedule = regexp.MustCompile(`^(.*?)(?:\. (\d+) (?:in|de)crease (?:round|row)s)?, (\d+) → (\d+) stitch(?:es)?\. (?:Round|Row)s? ([\d, ]+)\.$`)
	inSoMany      = regexp.MustCompile(`^From (\d+) stitch(?:es)? to (\d+) in (\d+) (?:in|de)crease (?:round|row)s?\.$`)
	plainSchedule = regexp.MustCompile(`^Plain for (\d+) (?:round|row)s?: (\d+) stitch(?:es)? (?:stays as it is|stay as they are)\.$`)
	afterEdge     = regexp.MustCompile(`^after the edge `)
	lead          = regexp.MustCompile(`^(\d+) plain (?:round|row)s?, then `)
	steady        = regexp.MustCompile(`^an? (?:in|de)crease (?:round|row)(?: every (?:round|row)|, then (\d+) plain (?:round|row)s?); (once|twice|(\d+) times) in all(?:, then (\d+) plain (?:round|row)s? more)?$`)
	changing      = regexp.MustCompile(`^an? (?:in|de)crease (?:round|row), then another (.*)$`)
	single        = regexp.MustCompile(`^one (?:in|de)crease (?:round|row)$`)
	interval      = regexp.MustCompile(`^every (?:(\d+)(?:st|nd|rd|th) )?(?:round|row) (once|twice|(\d+) times)$`)
)

// readSchedule reads a schedule of a part whose first rounds, so many, are an edge.
func readSchedule(line string, edge int) (schedule, bool) {
	if found := plainSchedule.FindStringSubmatch(line); found != nil {
		return schedule{from: atoi(found[2]), to: atoi(found[2])}, true
	}
	if found := inSoMany.FindStringSubmatch(line); found != nil {
		return schedule{number: true, from: atoi(found[1]), to: atoi(found[2]), times: atoi(found[3])}, true
	}
	found := wholeSchedule.FindStringSubmatch(line)
	if found == nil {
		return schedule{}, false
	}
	s := schedule{times: 1, from: atoi(found[3]), to: atoi(found[4])}
	if found[2] != "" {
		s.times = atoi(found[2])
	}
	for _, r := range strings.Split(found[5], ",") {
		s.listed = append(s.listed, atoi(strings.TrimSpace(r)))
	}
	rhythm := strings.ToLower(found[1])
	told := afterEdge.FindString(rhythm)
	rhythm = rhythm[len(told):]
	s.action, s.until = action(rhythm)
	if told != "" {
		for i := range s.action {
			s.action[i] += edge
		}
		s.until += edge
	}
	s.steady = steady.MatchString(lead.ReplaceAllString(rhythm, ""))
	return s, true
}

// action returns the rounds of the changes that follow from a rhythm, and the last
// round that it covers. It returns nil for a rhythm that can't be followed. Plain
// rounds before a repeated step make one, since they may belong to the step or
// not.
func action(text string) (rounds []int, until int) {
	first := 1
	if found := lead.FindStringSubmatch(text); found != nil {
		first, text = atoi(found[1])+1, text[len(found[0]):]
	}
	rounds = []int{first}
	more := func(every, times int) {
		for range min(times, 5000) {
			rounds = append(rounds, rounds[len(rounds)-1]+every)
		}
	}
	if single.MatchString(text) {
		return rounds, first
	}
	if found := steady.FindStringSubmatch(text); found != nil {
		every := 1
		if found[1] != "" {
			every = atoi(found[1]) + 1
		}
		if every > 1 && first > 1 {
			return nil, 0
		}
		more(every, times(found[2], found[3])-1)
		until = rounds[len(rounds)-1] + every - 1
		if found[4] != "" {
			until += atoi(found[4])
		}
		return rounds, until
	}
	found := changing.FindStringSubmatch(text)
	if found == nil {
		return nil, 0
	}
	for _, group := range strings.Split(found[1], ", then ") {
		one := interval.FindStringSubmatch(group)
		if one == nil {
			return nil, 0
		}
		every := 1
		if one[1] != "" {
			every = atoi(one[1])
		}
		more(every, times(one[2], one[3]))
	}
	return rounds, rounds[len(rounds)-1]
}

func times(word, digits string) int {
	if digits != "" {
		return atoi(digits)
	}
	return map[string]int{"once": 1, "twice": 2}[word]
}

// check compares the schedule with the rounds that were knitted.
func (s schedule) check(p *Part) error {
	if !s.number && (!slices.Equal(s.action, s.listed) || len(s.listed) != s.times) {
		return fmt.Errorf("the rhythm gives rounds %v, the list says %v, %d in all", s.action, s.listed, s.times)
	}
	if end := len(p.Rounds) - p.lastEdge; s.until > end || s.steady && s.until < end {
		return fmt.Errorf("the rhythm ends with round %d, of %d", s.until, end)
	}
	var changed []int
	before, rounds, first := 0, p.Rounds, 1
	switch {
	case p.atOnce:
		first, rounds = 2, rounds[1:]
	case p.brings[0] > 0:
		rounds = rounds[:p.brings[0]-1]
	}
	for i, r := range rounds {
		eaten := 0
		for _, op := range r.Ops {
			eaten += ledger[op][0]
		}
		if i == 0 {
			before = eaten
		}
		if r.After != eaten {
			changed = append(changed, i+first)
		}
	}
	if len(rounds) == 0 {
		return fmt.Errorf("a rhythm was told, and there are no rounds")
	}
	last := rounds[len(rounds)-1]
	end := last.Gusset
	if end < 0 {
		end = last.After
	}
	if s.to != end || s.to-s.from != last.After-before {
		return fmt.Errorf("from %d to %d was told; the rounds go from %d to %d", s.from, s.to, before, last.After)
	}
	if s.number && len(changed) != s.times {
		return fmt.Errorf("%d changes were told; the count changes in rounds %v", s.times, changed)
	}
	if !s.number && !slices.Equal(changed, s.listed) {
		return fmt.Errorf("rounds %v were told; the count changes in %v", s.listed, changed)
	}
	return nil
}
