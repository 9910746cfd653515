package paper

import (
	"slices"

	"thenar/internal/picture"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// keySigns returns what the key explains beside stitches and yarns: the signs of the
// words, and the lines of a gusset's chart.
func (h *handout) keySigns() []picture.Sign {
	list := h.signsOfWords()
	if !h.o.Has(Chart) || len(h.laid) == 0 || len(h.laid[0]) == 0 || h.laid[0][0].printed == 0 {
		return list
	}
	second := picture.Sign{Line: "the second marker", Drawn: picture.SecondEdge}
	if i := slices.IndexFunc(list, func(s picture.Sign) bool { return s.Sign == "|" }); i >= 0 {
		second.Sign, second.Line = list[i].Sign, list[i].Line
		list = slices.Delete(list, i, i+1)
	}
	return append([]picture.Sign{
		{Line: "the round begins", Drawn: picture.FirstEdge},
		second,
		{Line: "every fifth round", Drawn: picture.FifthLine},
	}, list...)
}

// signsOfWords returns what the printed words use and no printed chart shows.
func (h *handout) signsOfWords() (list []picture.Sign) {
	if !h.o.Has(Words) {
		return nil
	}
	var texts []string
	for _, passage := range words.Merged(h.Out.Words) {
		for _, r := range passage.Rows() {
			texts = append(texts, r.Bare)
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
