package project

import (
	"slices"

	"thenar/internal/chart"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
)

// kindWays are the kinds of mitt that are offered, as they are with a thumb.
var kindWays = []mitt.Kind{mitt.Fingerless, mitt.Mitten, mitt.Glove}

// Kinds returns the kinds of mitt that out may be made into, its own among them: each is
// planned for this very hand, as Thumbs does. In place of a kind that is not made for so
// small a hand, what is made instead is offered.
func (pl *Planner) Kinds(d Document, marks chart.Marks, out *Outputs) []ThumbWay {
	offered := make([]mitt.Kind, len(kindWays))
	for i, kind := range kindWays {
		offered[i] = kind.For(out.Plan.Hand.Length)
	}
	now := out.Plan.Kind
	if !slices.Contains(offered, now) {
		now = now.Whole()
	}
	list := make([]ThumbWay, len(offered))
	for i, kind := range offered {
		w := &list[i]
		*w = ThumbWay{Kind: kind, Chosen: kind == now, Sets: []Setting{{sheet.PathKind, string(kind)}}}
		if d.Sheet.Given(mitt.PathConstruction) == string(mitt.NoThumb) && slices.Contains(offered, kind.By(mitt.NoThumb)) {
			w.Sets = append(w.Sets, Setting{mitt.PathConstruction, ""}) // without a thumb it is offered by itself
		}
		if w.Chosen {
			w.Plan = out.Plan
			w.judge(out.Fit, out, out.Lost)
		} else {
			pl.otherThumb(w, d, marks, out)
		}
	}
	return list
}
