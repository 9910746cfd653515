package words

import "thenar/internal/stitch"

// Select returns the instructions for rounds from to to of one section, without
// those before and after its rounds. It is empty if there are no such rounds.
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
			return []Passage{{p.Part, p.Title, steps}}
		}
	}
	return nil
}
