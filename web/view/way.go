package view

import (
	"fmt"
	"strings"
)

// wayWords says in a line what is in the way of a plan: "Three measurements to
// go:" if nothing is wrong and something is still to be measured.
func (a Answer) wayWords() string {
	wrong := len(a.Check)
	for _, message := range a.Faults {
		if !missing(message) {
			wrong++
		}
	}
	switch n := len(a.Faults); {
	case wrong > 1:
		return "These don’t go together yet:"
	case wrong == 1:
		return "One thing is in the way:"
	case n == 1:
		return "One measurement to go:"
	default:
		return capital(inLetters(n)) + " measurements to go:"
	}
}

// inLetters writes a small number as a word.
func inLetters(n int) string {
	names := []string{"no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"}
	if n >= 0 && n < len(names) {
		return names[n]
	}
	return fmt.Sprint(n)
}

// atField returns a message as it stands at its field: what is only missing is
// told by how to measure it.
func atField(message string) string { return strings.TrimPrefix(message, "is missing; ") }

// faultWords returns a message as it stands behind the name of its field: what
// is only missing is told by how to measure it.
func faultWords(message string) string {
	if rest, only := strings.CutPrefix(message, "is missing; "); only {
		return ": " + rest
	}
	return " " + message
}
