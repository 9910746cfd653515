package view

import (
	"fmt"
	"strings"

	"thenar/internal/mitt"
	"thenar/internal/words"
)

// pinned reports whether a path belongs to a number that can be fixed.
func pinned(path string) bool {
	_, ok := mitt.NumberAt(path)
	return ok
}

// maxLength returns the most characters that a field takes; a list of rounds
// takes more.
func maxLength(path string) string {
	if n, ok := mitt.NumberAt(path); ok && n.List() {
		return "200"
	}
	return "40"
}

// inWords replaces the keys of numbers in a message by their words.
func inWords(path, message string) string {
	if !pinned(path) {
		return message
	}
	for _, n := range mitt.Ladder() {
		message = strings.ReplaceAll(message, n.Key(), n.Words())
	}
	return message
}

// typed returns a fixed number as the person wrote it.
func (a Answer) typed(r words.Reason) string {
	if text := a.Pins[r.Of]; text != "" {
		return text
	}
	return r.Number
}

// cost says what a fixed number costs, and what it would be if it were free.
func (a Answer) cost(n mitt.Number) string {
	for _, c := range a.Out.Costs {
		if c.Number == n {
			return a.costWords(c)
		}
	}
	return ""
}

func (a Answer) costWords(c mitt.PinCost) string {
	switch {
	case c.Free == "":
		return "Without it there is no plan beside the other fixed numbers."
	case c.Free == c.Value:
		return fmt.Sprintf("It would be %s by itself, too.", c.Free)
	}
	parts := make([]string, 0, len(c.Changes))
	for _, ch := range c.Changes {
		with, free := a.placeWords(ch.Place, ch.With), a.placeWords(ch.Place, ch.Free)
		parts = append(parts, fmt.Sprintf("%s %s (free: %s)", ch.Place.Words(a.Out.Plan.Kind), with, free))
	}
	sum := "costs about " + a.small(c.MM) + " in all"
	if c.MM < 0 {
		sum = "brings the whole " + a.small(-c.MM) + " nearer"
	}
	text := fmt.Sprintf("Free, it would be %s; fixed, it %s", c.Free, sum)
	if len(parts) > 0 {
		text += ": " + strings.Join(parts, ", ")
	}
	if c.MM < 0 {
		text += ". A free choice weighs how it knits as well as how it fits"
	}
	return text + "."
}

// placeWords says how far off a place of the mitt is: "4 mm tighter".
func (a Answer) placeWords(p mitt.Place, mm float64) string {
	switch p {
	case mitt.PlaceCuff, mitt.PlaceCrotch, mitt.PlaceHand, mitt.PlaceThumb:
		return a.offWords(mm, "tighter", "looser")
	case mitt.PlaceGussetShape:
		return a.small(mm) + " off, on average"
	}
	return a.offWords(mm, "shorter", "longer")
}
