package view

import (
	"thenar/internal/words"
)

// explainer returns what explains the terms of the instructions, each where it
// is first used.
func (a Answer) explainer() *words.Explainer {
	return words.NewExplainer(a.Out.Terms, words.InInstructions()...)
}
