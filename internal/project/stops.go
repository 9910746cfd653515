package project

import "thenar/internal/words"

// WithStops returns the instructions with where on the hand each part ends.
func (o *Outputs) WithStops() []words.Passage { return o.stopping(o.Words) }

// Listed returns the instructions as a page or a text lists them, with where on the hand
// each part ends.
func (o *Outputs) Listed() []words.Passage { return o.stopping(words.Told(o.Words)) }

func (o *Outputs) stopping(passages []words.Passage) []words.Passage {
	return words.WithStops(passages, words.Lengths(o.Plan, o.Mitt, o.Unit))
}
