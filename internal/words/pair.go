package words

import (
	"slices"
	"strings"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Pair is how the other hand of a pair is worked, beside the one in hand.
type Pair struct {
	Parts   []stitch.Part // that are not worked alike; none: make two
	Numbers []string      // in which its plan differs: "21 rounds of gusset instead of 20"
}

// Between returns in which numbers the plan of the other hand differs.
func Between(this, other *mitt.Plan) []string {
	var list []string
	if this.Gusseted() && other.Gusseted() {
		list = differing(onwardGusset(this, other))
		if in := other.Gusset.IncreaseRounds; !slices.Equal(in, this.Gusset.IncreaseRounds) {
			list = append(list, "increases in "+Ranges(in))
		}
	}
	list = append(list, differing(onwardNumbers(this, other))...)
	for i := range list {
		list[i] = this.Make.InRows(list[i])
	}
	return list
}

// Words says in what the other hand differs; "" if both are alike.
func (p Pair) Words() string {
	switch {
	case len(p.Parts) == 0:
		return ""
	case len(p.Numbers) == 1:
		return p.Numbers[0]
	case len(p.Numbers) > 1:
		return p.Numbers[0] + ", and more"
	}
	return Listed(p.names())
}

// names returns what is not worked alike, the fingers of a glove as one.
func (p Pair) names() []string {
	var names []string
	for _, part := range p.Parts {
		name := part.Words()
		if slices.Contains(fingerParts, part) && slices.ContainsFunc(p.Parts, func(o stitch.Part) bool { return o != part && slices.Contains(fingerParts, o) }) {
			name = "fingers"
		}
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	return names
}

// Listed joins words as a sentence lists them: "palm, wrist and thumb".
func Listed(list []string) string {
	if last := len(list) - 1; last > 0 {
		return strings.Join(list[:last], ", ") + " and " + list[last]
	}
	return strings.Join(list, "")
}

// pair says how the other hand is worked, and where that is told.
func (h Hands) pair() string {
	other := "left"
	if h.Left {
		other = "right"
	}
	verb := "are"
	if len(h.Pair.Parts) == 1 {
		verb = "is"
	}
	switch {
	case len(h.Pair.Parts) == 0:
		return "Both hands are alike: make two."
	case len(h.Pair.Numbers) > 0:
		return "The " + other + " hand has its own sheet: " + h.Pair.Words() + "."
	}
	said := "The " + other + " hand has its own sheet: palm and back change places"
	if slices.ContainsFunc(h.Pair.Parts, func(p stitch.Part) bool { return slices.Contains(fingerParts, p) }) {
		return said + "." // of fingers there is more than can be listed
	}
	return said + ", the " + h.Pair.Words() + " " + verb + " mirrored."
}
