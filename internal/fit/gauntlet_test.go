package fit

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Below a gauntlet's first round lies what its upper edge goes round, at the end of its
// last round the wrist; its two ridges of garter stitch are lower than four rounds of the
// gauge. Worked by hand from the definitions.
func TestUnderAGauntlet(t *testing.T) {
	r := &mitt.Request{
		Gauge: gauge.Gauge{Stitches: 0.24, Rounds: 0.32, Treated: true}, Make: mitt.Make{Cuff: mitt.Gauntlet, UpperGirth: 240 * mm},
		Hand:   hand.Hand{Circumference: 190 * mm, Thumb: 65 * mm, Length: 180 * mm, Wrist: 157 * mm},
		Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
	}
	p, err := mitt.New().Plan(r)
	require.NoError(t, err)
	list, err := Rows(p, p.Mitt(), DefaultBands)
	require.NoError(t, err)
	cuff := ofPart(list, stitch.Cuff)
	require.Len(t, cuff, 20)
	assert.InDelta(t, 240-(240-157)/20.0, cuff[0].Body, 1e-9)
	assert.InDelta(t, 157, cuff[19].Body, 1e-9)
	assert.InDelta(t, 4/0.48, cuff[3].Height, 1e-9)
	assert.InDelta(t, 4/0.48+16/0.32, cuff[19].Height, 1e-9)
	for _, row := range cuff {
		assert.InDelta(t, 0, row.Stretch, 0.08, "round %d", row.Round)
	}
}

// Of rows from the fingertips the last of the hand lies below the join: it goes round hand
// and thumb, like the gusset's uppermost, and not round the hand alone.
func TestTheRowBelowTheJoin(t *testing.T) {
	r := &mitt.Request{
		Kind: mitt.Mitten, Gauge: gauge.Gauge{Stitches: 0.24, Rounds: 0.32, Treated: true}, Make: mitt.Make{Direction: mitt.Down, Flat: true},
		Hand:   hand.Hand{Circumference: 190 * mm, Thumb: 65 * mm, Length: 180 * mm},
		Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
	}
	p, err := mitt.New().Plan(r)
	require.NoError(t, err)
	list, err := Rows(p, p.Mitt(), DefaultBands)
	require.NoError(t, err)
	of, gusset := ofPart(list, stitch.Hand), ofPart(list, stitch.Gusset)
	below, join, top := of[0], of[1], gusset[len(gusset)-1]
	assert.InDelta(t, top.Fabric, below.Fabric, 1e-9)
	assert.InDelta(t, p.Hand.Palm.MM(), below.Body, 1e-9)
	assert.InDelta(t, float64(p.Bridge.HandAfter)/0.24, join.Fabric, 1e-9)
	assert.InDelta(t, 190, join.Body, 1e-9)
}
