package stitch_test

import (
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/stretchr/testify/assert"

	"thenar/internal/stitch"
)

// A made-up piece of twelve stitches, worked to and fro, that grows two inside the row.
func rows() stitch.Mitt {
	grows := stitch.Round{
		Ops:    join(ops(4, stitch.Knit), ops(1, stitch.M1R), ops(1, stitch.Knit), ops(1, stitch.M1L), ops(7, stitch.Knit)),
		Before: 4, Lead: 3, Side: stitch.RightSide,
	}
	back := stitch.Round{Ops: join(ops(1, stitch.Purl), ops(13, stitch.Knit)), Before: 4, Lead: 3, Side: stitch.WrongSide}
	parts := stitch.Round{Ops: join(ops(4, stitch.Knit), ops(3, stitch.Hold), ops(2, stitch.CastOn), ops(7, stitch.Knit)), Before: 4, Lead: 5, Side: stitch.RightSide}
	parts.Keep(stitch.ThumbSet)
	return stitch.Mitt{Left: []stitch.Set{stitch.ThumbSet}, Sections: []stitch.Section{{
		Part: stitch.Gusset, CastOn: 12, Rounds: []stitch.Round{grows, back, parts}, Finish: stitch.Round{Ops: ops(13, stitch.BindOff)},
	}}}
}

// The row of the other hand is worked from its other end, and the leading block stands
// in the mirrored place; the mirror's mirror is the piece itself.
func TestRowsAreMirroredFromTheirEnd(t *testing.T) {
	m := rows()
	assert.Empty(t, said(m))
	left := stitch.Mirror(m)
	assert.Empty(t, said(left))
	assert.Empty(t, cmp.Diff(m, stitch.Mirror(left)))
	grows, parts := left.Sections[0].Rounds[0], left.Sections[0].Rounds[2]
	assert.Equal(t, join(ops(7, stitch.Knit), ops(1, stitch.M1R), ops(1, stitch.Knit), ops(1, stitch.M1L), ops(4, stitch.Knit)), grows.Ops)
	assert.Equal(t, 7, grows.Before)
	assert.Equal(t, 1, grows.LeadIn())
	assert.Equal(t, 3, grows.LeadOut())
	assert.Equal(t, join(ops(7, stitch.Knit), ops(3, stitch.Hold), ops(2, stitch.CastOn), ops(4, stitch.Knit)), parts.Ops)
	assert.Equal(t, stitch.ThumbSet, parts.SetAt(7))
}

// On the wrong side a row is met from its other end, and what is to look knitted is
// purled; a chart's row of the right side is worked as it is drawn (facts of the trade:
// symbols show the right side, Japanese Industrial Standard L 0201:1995, read in part).
func TestWrongSideRowsAreTurned(t *testing.T) {
	row := stitch.Round{Ops: join(ops(2, stitch.Knit), ops(1, stitch.Purl), ops(1, stitch.SSK)), Side: stitch.WrongSide}
	assert.Equal(t, join(ops(1, stitch.SSP), ops(1, stitch.Knit), ops(2, stitch.Purl)), row.Worked())
	row.Side = stitch.RightSide
	assert.Equal(t, row.Ops, row.Worked())
	for _, o := range stitch.All() {
		assert.Equal(t, o, o.Turned().Turned(), "%v", o)
		assert.Equal(t, o.In(), o.Turned().In(), "%v", o)
		assert.Equal(t, o.Out(), o.Turned().Out(), "%v", o)
	}
}

// A text about rounds becomes one about rows, word by word; the work in the round and
// words that only look so stay.
func TestInRows(t *testing.T) {
	for text, want := range map[string]string{
		"":                                  "",
		"Knit around the thumb, on ground.": "Knit around the thumb, on ground.",
		"Rounds 1–3: every round.":          "Rows 1–3: every row.",
		"worked in the round, washed":       "worked in the round, washed",
		"Begin the round in the Rounds above; in the round.": "Begin the round in the Rows above; in the round.",
		"round":                   "row",
		"rounds, rounded, 2round": "rows, rounded, 2round",
		"ound (round) é round":    "ound (row) é row",
	} {
		assert.Equal(t, want, stitch.InRows(text))
	}
}
