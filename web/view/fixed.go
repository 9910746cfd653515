package view

import (
	"slices"
	"strings"

	"thenar/internal/chart"
)

// maxListed are the rounds of a list that are read out.
const maxListed = 5

// Fixed says which numbers a change of the chart has fixed and let go, in a
// sentence; empty where there are none.
func Fixed(edits []chart.Edit) string {
	var fixed, free []string
	for _, e := range chart.OfSheet(edits) {
		name, ok := strings.CutPrefix(e.Column, "pins.")
		if !ok {
			continue
		}
		if e.Value == "" {
			free = append(free, lower(pinLabel(name)))
		} else if name == "increase_rounds" {
			fixed = slices.Insert(fixed, 0, "increases in rounds "+shortened(e.Value))
		} else if part, ok := strings.CutSuffix(lower(pinLabel(name)), ", rounds"); ok {
			fixed = append(fixed, part+" "+e.Value+" rounds")
		} else {
			fixed = append(fixed, lower(pinLabel(name))+" "+e.Value)
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

// shortened leaves out the end of a long list.
func shortened(list string) string {
	if parts := strings.Split(list, ", "); len(parts) > maxListed+1 {
		return strings.Join(parts[:maxListed], ", ") + " …"
	}
	return list
}

// pinLabel is what a number that can be fixed is called.
func pinLabel(name string) string {
	for _, n := range pinNames {
		if n.Value == name {
			return n.Words
		}
	}
	return strings.ReplaceAll(name, "_", " ")
}

func lower(text string) string { return strings.ToLower(text[:1]) + text[1:] }
