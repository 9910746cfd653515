package words

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"thenar/internal/stitch"
)

// Select returns the instructions for rounds from to to of one section, without
// those before and after its rounds, but with what explains them wherever it is told: how
// strands are caught, and the rows of motifs. It is empty if there are no such rounds.
func Select(passages []Passage, part stitch.Part, from, to int) []Passage {
	for _, p := range passages {
		if p.Part != part {
			continue
		}
		var steps []Step
		for _, s := range p.Steps {
			if s.From > 0 && s.From <= to && s.To >= from {
				if s.In != "" && len(steps) == 0 {
					s.Text, s.In = inOneYarn(s.In, s.Text), ""
				}
				s.From, s.To = max(s.From, from), min(s.To, to)
				steps = append(steps, s)
			}
		}
		if len(steps) > 0 {
			return []Passage{{p.Part, p.Title, append(explained(passages, steps), steps...)}}
		}
	}
	return nil
}

// rowTold is how a row of a motif is told.
var rowTold = regexp.MustCompile(`^Motif (\d+)(?: \([^)]*\))?, row (\d+): `)

// explained returns the sentences that explain what steps rely on.
func explained(passages []Passage, steps []Step) (list []Step) {
	used := func(is func(text string) bool) bool {
		return slices.ContainsFunc(steps, func(s Step) bool { return is(s.Text) })
	}
	for _, p := range passages {
		for _, s := range p.Steps {
			row := rowTold.FindStringSubmatch(s.Text)
			switch {
			case s.From > 0:
			case strings.HasPrefix(s.Text, catchSaid):
				if used(func(text string) bool { return strings.HasPrefix(text, "Catching ") }) {
					list = append(list, s)
				}
			case row != nil:
				refers := regexp.MustCompile(fmt.Sprintf(`\brow %s of motif %s\b`, row[2], row[1]))
				if used(refers.MatchString) {
					list = append(list, s)
				}
			}
		}
	}
	return list
}
