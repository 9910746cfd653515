package project

import (
	"slices"

	"thenar/internal/chart"
	"thenar/internal/repeat"
	"thenar/internal/sheet"
	"thenar/internal/tryon"
)

// Motifs are laid anew on every plan. What is knitted stays in its colours all the same: where
// a change would lay a knitted round otherwise, the sheet keeps the round as it was worked.

// keeps reports whether any round stays as it was worked.
func (e *extra) keeps() bool { return len(e.knitted[Right])+len(e.knitted[Left]) > 0 }

// kept returns the rounds that stay as they were worked, for the charts of a hand. The hands
// of a mitt without a thumb are not mirrored, and have charts of their own.
func (p *Planned) kept(side Side) chart.Kept {
	switch {
	case !p.extra.keeps():
		return nil
	case p.Plan.Parted():
		return chart.Kept{false: p.extra.knitted[Right], true: p.extra.knitted[Left]}
	}
	return chart.Kept{false: p.extra.knitted[side]}
}

// coloured reports whether anything is laid on the mitt.
func (p *Planned) coloured() bool { return len(p.extra.repeats) > 0 || p.extra.keeps() }

// withColours returns a document in which the rounds that are knitted look as they were
// worked. A hand that is not begun is worked like the other one, if the sheet has it so. A hand
// of which nothing is said stays as it is.
func (pl *Planner) withColours(d Document, hands []Progress) Document {
	laid := d.Sheet.Rows(sheet.PathRepeats) > 0 || d.Sheet.Knitted(string(Right)) != nil || d.Sheet.Knitted(string(Left)) != nil
	if !laid && !slices.ContainsFunc(hands, func(h Progress) bool { return h.At.Begun() && h.Plan.coloured() }) {
		return d
	}
	out := d
	out.Sheet = d.Sheet.Clone()
	for _, h := range hands {
		from := h
		if !h.At.Begun() && d.Sheet.Given(sheet.PathSecond) != sheet.Anew {
			if i := slices.IndexFunc(hands, func(other Progress) bool { return other.At.Begun() }); i >= 0 {
				from = hands[i]
			}
		}
		out.Sheet.SetKnitted(string(h.Side), nil)
		if from.At.Begun() {
			out.Sheet.SetKnitted(string(h.Side), pl.otherwise(out, h.Side, from))
		}
	}
	return out
}

// otherwise returns the knitted rounds of a hand that a document would lay otherwise than they
// were worked.
func (pl *Planner) otherwise(d Document, side Side, was Progress) repeat.Worked {
	d.Side, d.FromLeft = side, false
	before, w := was.Plan.Charts(d, nil), repeat.Worked{}
	after := chart.Source{}
	if p, err := pl.Plan(d.Effective()); err == nil {
		after = p.Charts(d, nil)
	}
	for _, at := range tryon.Places(was.Plan.Mitt())[:was.At.Nth] {
		looks := before.Looks(at.Part, at.Round)
		if !slices.Equal(looks, after.Looks(at.Part, at.Round)) {
			w.Keep(at.Part, at.Round, looks)
		}
	}
	return w
}
