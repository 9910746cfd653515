package view

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"thenar/internal/mitt"
	"thenar/internal/sheet"
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

// inWords replaces the keys of numbers, or the values of choices, in a message by
// their words.
func (a Answer) inWords(path, message string) string {
	if f, made := makeField(path); made && len(f.Choices) > 0 {
		return choicesWorded(f, message)
	}
	if path == sheet.PathKind {
		message, _, _ = strings.Cut(message, ": write ") // the button does it
	}
	if !pinned(path) {
		return message
	}
	longest := slices.Clone(mitt.Ladder()) // a key may be the end of another
	slices.SortStableFunc(longest, func(a, b mitt.Number) int { return len(b.Key()) - len(a.Key()) })
	for _, n := range longest {
		message = strings.ReplaceAll(message, n.Key(), a.Names.Words(n))
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
	sum := "costs about " + a.small(c.MM) + " in all."
	if c.MM < 0 {
		sum = "comes about " + a.small(-c.MM) + " nearer in all."
	}
	return fmt.Sprintf("Free, it would be %s; fixed, it %s", c.Free, sum) + a.movedWords(c) + whyFree(c, a.Out.Plan.Ribbed())
}

// movedWords says which places a fixed number brings nearer to the wish, and
// which it takes farther from it.
func (a Answer) movedWords(c mitt.PinCost) string {
	moved := map[string][]string{}
	for _, ch := range c.Changes {
		to := "Nearer"
		if math.Abs(ch.With) > math.Abs(ch.Free) {
			to = "Farther"
		}
		moved[to] = append(moved[to], fmt.Sprintf("%s (%s; free: %s)", ch.Place.Words(a.Out.Plan), a.placeWords(ch.Place, ch.With), a.placeWords(ch.Place, ch.Free)))
	}
	text := ""
	for _, to := range []string{"Nearer", "Farther"} {
		if len(moved[to]) > 0 {
			text += " " + to + ": " + strings.Join(moved[to], ", ") + "."
		}
	}
	return text
}

// whyFree says why a free number is chosen otherwise although a fixed one brings
// the whole nearer: counts are settled one after the other, and a rhythm is
// weighed by how easily it is kept in mind, too.
func whyFree(c mitt.PinCost, ribbed bool) string {
	if c.MM >= 0 {
		return ""
	}
	if c.Number == mitt.CastOn && ribbed {
		return " The plan keeps to whole ribs."
	}
	switch c.Number.Measure() {
	case mitt.InStitches, mitt.InTimes:
		return " The plan settles the hand first, then the thumb, then the rest."
	case mitt.InRounds:
		return " The plan takes the nearest for each length by itself."
	}
	return " The plan weighs how easily a rhythm is kept in mind, too."
}

// placeWords says how far off a place of the mitt is: "4 mm tighter".
func (a Answer) placeWords(p mitt.Place, mm float64) string {
	if girthOfFinger(p) {
		return a.offWords(mm, "tighter", "looser")
	}
	switch p {
	case mitt.PlaceCuff, mitt.PlaceCrotch, mitt.PlaceHand, mitt.PlaceThumb:
		return a.offWords(mm, "tighter", "looser")
	case mitt.PlaceGussetShape:
		return a.small(mm) + " off, on average"
	}
	return a.offWords(mm, "shorter", "longer")
}
