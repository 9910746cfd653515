package project

import (
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// InColours says which rounds of a part have more colours than the main one, as
// in "Rounds 1–12 have colours"; it is empty if none has. The words give only
// the stitches of such rounds.
func (o *Outputs) InColours(part stitch.Part) string {
	section := o.Mitt.Section(part)
	if section == nil || len(o.Colours) == 0 {
		return ""
	}
	var rounds []int
	for n := range section.Rounds {
		if o.Charts.InWork(part, n+1) != nil {
			rounds = append(rounds, n+1)
		}
	}
	switch text := words.Ranges(rounds); len(rounds) {
	case 0:
		return ""
	case 1:
		return "R" + text[1:] + " has colours"
	default:
		return "R" + text[1:] + " have colours"
	}
}
