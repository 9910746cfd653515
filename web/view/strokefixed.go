package view

import (
	"slices"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/mitt"
)

// maxListed is the number of rounds of a long list that are read out.
const maxListed = 5

// Fixed says which numbers a change of the chart fixed and let go, or "" if
// there are none.
func Fixed(w mitt.Names, edits []chart.Edit) string {
	var fixed, free []string
	for _, e := range chart.OfSheet(edits) {
		n, ok := mitt.NumberAt(e.Column)
		if !ok {
			continue
		}
		if e.Value == "" {
			free = append(free, lower(w.Label(n)))
		} else if n == mitt.IncreaseRounds {
			fixed = slices.Insert(fixed, 0, fixedAs(w, n, e.Value))
		} else {
			fixed = append(fixed, fixedAs(w, n, e.Value))
		}
	}
	var says []string
	if len(fixed) > 0 {
		says = append(says, "Fixed: "+strings.Join(fixed, "; ")+".")
	}
	if len(free) > 0 {
		says = append(says, "Let go: "+strings.Join(free, ", ")+".")
	}
	return strings.Join(says, " ")
}

// fixedAs returns a number with the value that it is fixed to.
func fixedAs(w mitt.Names, n mitt.Number, value string) string {
	name, rounds := bareName(w, n)
	if n.List() {
		value = shortened(value)
	}
	if rounds {
		return name + " " + value + " " + plural(w.Noun(n))
	}
	return name + " " + value
}

// shortened leaves out the end of a long list.
func shortened(list string) string {
	if parts := strings.Split(list, ", "); len(parts) > maxListed+1 {
		return strings.Join(parts[:maxListed], ", ") + " …"
	}
	return list
}

func lower(text string) string { return strings.ToLower(text[:1]) + text[1:] }
