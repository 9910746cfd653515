package paper

import (
	"slices"

	"thenar/internal/chart"
	"thenar/internal/picture"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// keySigns returns what the key explains beside stitches and yarns: the signs of the
// words, and the lines of a gusset's chart.
func (h *handout) keySigns() []picture.Sign {
	list := h.roundSigns()
	for i := range list {
		if s := &list[i]; h.Out.Plan.Make.Flat {
			switch {
			case s.Sign == "|" || s.Drawn == picture.SecondEdge:
				s.Line = "a marker"
			case s.Drawn == picture.FirstEdge:
				s.Line = "edge of the gusset"
			}
			s.Line = stitch.InRows(s.Line)
		}
	}
	return list
}

// roundSigns is that of a mitt in the round.
func (h *handout) roundSigns() []picture.Sign {
	list := h.signsOfWords()
	if !h.o.Has(Chart) {
		return list
	}
	more := h.signsOfLaid()
	if len(h.laid) == 0 || len(h.laid[0]) == 0 || h.laid[0][0].printed == 0 {
		return append(more, list...)
	}
	second := picture.Sign{Line: "the second marker", Drawn: picture.SecondEdge}
	if i := slices.IndexFunc(list, func(s picture.Sign) bool { return s.Sign == "|" }); i >= 0 {
		second.Sign, second.Line = list[i].Sign, list[i].Line
		list = slices.Delete(list, i, i+1)
	}
	if len(more) == 0 || more[0].Drawn != picture.FifthLine {
		more = append([]picture.Sign{everyFifth}, more...)
	}
	return slices.Concat([]picture.Sign{{Line: "the round begins", Drawn: picture.FirstEdge}, second}, more, list)
}

var everyFifth = picture.Sign{Line: "every fifth round", Drawn: picture.FifthLine}

// signsOfLaid returns the lines of the charts that are laid as on the screen: after a fifth
// round, at the gusset's edges, where the parts of a divided chart join.
func (h *handout) signsOfLaid() (list []picture.Sign) {
	edge, fifth, join := false, false, false
	for i, sizes := range h.laid {
		if len(sizes) == 0 || sizes[0].printed > 0 {
			continue
		}
		g := h.grids[i]
		edge = edge || g.View.Cut()
		fifth = fifth || slices.ContainsFunc(g.Rows, func(r chart.Row) bool { return r.Round%5 == 0 })
		join = join || sizes[0].parts() > 1
	}
	if fifth {
		list = append(list, everyFifth)
	}
	if edge {
		list = append(list, picture.Sign{Line: "edge of the gusset", Drawn: picture.GussetEdge})
	}
	if join {
		list = append(list, picture.Sign{Line: "lay the next part here", Drawn: picture.JoinLine})
	}
	return list
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
	for _, s := range h.Out.Terms.Signs(texts, charted, h.Doc.FromLeft) {
		if !s.Charted {
			list = append(list, picture.Sign{Sign: s.Sign, Line: s.Line})
		}
	}
	return list
}
