package paper

import (
	"slices"

	"thenar/internal/picture"
	"thenar/internal/stitch"
)

// signsOfWords returns what the printed words use and no printed chart shows.
func (h *handout) signsOfWords() (list []picture.Sign) {
	if !h.o.Has(Words) {
		return nil
	}
	var texts []string
	for _, passage := range h.Out.Words {
		for _, s := range passage.Steps {
			texts = append(texts, s.Text)
		}
	}
	var charted []stitch.Op
	for _, g := range h.grids {
		for _, op := range g.Used() {
			if g.FromLeft { // named as who knits it says it
				op = op.FromLeft()
			}
			if !slices.Contains(charted, op) {
				charted = append(charted, op)
			}
		}
	}
	for _, s := range h.Out.Terms.Signs(texts, charted) {
		if !s.Charted {
			list = append(list, picture.Sign{Sign: s.Sign, Line: s.Line})
		}
	}
	return list
}
