package fit

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

const mm = units.Millimetre

// rows plans a mitt at 24 stitches and 32 rounds over 10 cm.
func rows(t *testing.T, kind mitt.Kind) (*mitt.Plan, []Row) {
	t.Helper()
	return rowsAt(t, kind, gauge.Gauge{Stitches: 0.24, Rounds: 0.32, Treated: true})
}

func rowsAt(t *testing.T, kind mitt.Kind, g gauge.Gauge) (*mitt.Plan, []Row) {
	t.Helper()
	p, err := mitt.New().Plan(&mitt.Request{
		Kind: kind, Gauge: g,
		Hand:   hand.Hand{Circumference: 190 * mm, Thumb: 65 * mm, Length: 180 * mm, Wrist: 157 * mm},
		Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
	})
	require.NoError(t, err)
	list, err := Rows(p, p.Mitt(), DefaultBands)
	require.NoError(t, err)
	return p, list
}

func ofPart(list []Row, part stitch.Part) []Row {
	var out []Row
	for _, r := range list {
		if r.Section == part {
			out = append(out, r)
		}
	}
	return out
}

// Worked by hand from the definitions.
func TestRows(t *testing.T) {
	p, list := rows(t, mitt.Fingerless)
	cuff, gusset, thumb := ofPart(list, stitch.Cuff), ofPart(list, stitch.Gusset), ofPart(list, stitch.Thumb)
	assert.InDelta(t, 3.125, cuff[0].Height, 1e-9)
	assert.InDelta(t, 38/0.24, cuff[0].Fabric, 1e-9)
	assert.InDelta(t, 157, cuff[0].Body, 1e-9)
	assert.InDelta(t, 157/(38/0.24)-1, cuff[0].Stretch, 1e-12)

	require.Len(t, gusset, 19)
	assert.InDelta(t, 46/0.24, gusset[0].Fabric, 1e-9, "44 and the first two made")
	assert.InDelta(t, 56/0.24, gusset[18].Fabric, 1e-9)
	palm := 190 + 0.55*65.0
	assert.InDelta(t, 190+(palm-190)*(59.375/59.4), gusset[18].Body, 1e-9, "the gusset is 59.4 mm long, where the girth is P")
	assert.InDelta(t, 190+(palm-190)*(3.125/59.4), gusset[0].Body, 1e-9)

	division := float64(p.Cuff.Rounds+p.Cuff.PlainRounds+19) / 0.32
	assert.InDelta(t, division+3.125, thumb[0].AboveCastOn, 1e-9)
	assert.InDelta(t, division+3.125, ofPart(list, stitch.Hand)[0].AboveCastOn, 1e-9)
	assert.InDelta(t, 65, thumb[3].Body, 1e-9)
}

// The body of a plain cuff widens evenly from wrist to hand; that of the top and
// of the thumb's tip narrows with the stitches.
func TestTaperingRows(t *testing.T) {
	p, list := rows(t, mitt.Mitten)
	plain, top, thumb := ofPart(list, stitch.CuffPlain), ofPart(list, stitch.Top), ofPart(list, stitch.Thumb)
	assert.InDelta(t, 190, plain[len(plain)-1].Body, 1e-9)
	assert.InDelta(t, 157+33.0/float64(len(plain)), plain[0].Body, 1e-9)
	last := top[len(top)-1]
	assert.InDelta(t, float64(p.Top.End)/0.24, last.Fabric, 1e-9)
	assert.InDelta(t, 190*float64(p.Top.End)/float64(p.Top.Stitches), last.Body, 1e-9)
	assert.Less(t, thumb[len(thumb)-1].Body, 65.0)
	for _, r := range list {
		assert.InDelta(t, r.Body/r.Fabric-1, r.Stretch, 1e-12)
	}
}

// A mitten without a thumb has it inside the palm. By hand: the thumb parts 60 mm
// above the wrist, 19.2 rounds of the hand, and the palm widens to
// 120 + 0.55 × 0.34 × 120 = 142.44 mm over the last 0.33 × 120 = 39.6 mm below.
// 20 mm above, at 25.6 rounds, the hand is 100 mm. The mitten is one tube, 5 %
// wider than the palm: 1.05 × 142.44 = 149.562 mm. The room for the thumb counts
// as filled, so the fabric is too loose only where the hand is that much narrower.
func TestMittenWithoutThumb(t *testing.T) {
	p, err := mitt.New().Plan(&mitt.Request{
		Kind: mitt.Thumbless, Gauge: gauge.Gauge{Stitches: 0.24, Rounds: 0.32, Treated: true},
		Hand: hand.Hand{
			Circumference: 120 * mm, Length: 120 * mm, WristToCrotch: 60 * mm,
			Above: []hand.Point{{Height: 20 * mm, Girth: 100 * mm}},
		},
		Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
	})
	require.NoError(t, err)
	list, err := Rows(p, p.Mitt(), DefaultBands)
	require.NoError(t, err)
	assert.Empty(t, ofPart(list, stitch.Gusset))
	assert.Empty(t, ofPart(list, stitch.Thumb))
	above := ofPart(list, stitch.Hand)
	assert.InDelta(t, 120, above[5].Body, 1e-9, "6 rounds are 18.75 mm, below where it widens")
	assert.InDelta(t, 120+22.44*(59.375-20.4)/39.6, above[18].Body, 1e-6, "19 rounds are 59.375 mm")
	assert.InDelta(t, 149.562, above[18].Wanted, 1e-9, "the palm itself is narrower")
	assert.InDelta(t, 149.562, above[5].Wanted, 1e-9)
	assert.InDelta(t, 120-2.5, above[19].Body, 1e-9, "20 rounds are 62.5 mm")
	assert.InDelta(t, 100, above[25].Body, 1e-9, "26 rounds are 81.25 mm")
	for i, r := range above[:20] {
		assert.Equal(t, Easy, r.Band, "round %d: 36 stitches are 150 mm, a palm of 142.44", i+1)
	}
	assert.Equal(t, TooLoose, above[25].Band, "100 × 1.187 = 118.7 mm")
	var names []string
	for _, site := range Summarise(p, list, Tolerance).Sites {
		names = append(names, site.Name)
	}
	assert.Equal(t, []string{"wrist", "palm with thumb", "hand"}, names)
}

// Girths measured above where the thumb parts are used, and the top begins with
// the last of them. By hand: 12.5 mm up is half-way from 190 to 184 on a straight
// line.
func TestGirthsMeasuredAbove(t *testing.T) {
	p, err := mitt.New().Plan(&mitt.Request{
		Kind: mitt.Mitten, Gauge: gauge.Gauge{Stitches: 0.24, Rounds: 0.32, Treated: true},
		Hand: hand.Hand{
			Circumference: 190 * mm, Thumb: 65 * mm, Length: 180 * mm,
			Above: []hand.Point{{Height: 25 * mm, Girth: 184 * mm}},
		},
		Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
	})
	require.NoError(t, err)
	list, err := Rows(p, p.Mitt(), DefaultBands)
	require.NoError(t, err)
	above, top := ofPart(list, stitch.Hand), ofPart(list, stitch.Top)
	assert.InDelta(t, 187, above[3].Body, 1e-9, "4 rounds are 12.5 mm")
	assert.InDelta(t, 184, above[len(above)-1].Body, 1e-9)
	assert.InDelta(t, 184*float64(p.Top.End)/float64(p.Top.Stitches), top[len(top)-1].Body, 1e-9)
}
