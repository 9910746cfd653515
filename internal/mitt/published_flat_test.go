package mitt

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/stitch"
)

// flatLeaflet is a published flat gusset: its printed counts are those of the row, with
// the stitches at its edges.
type flatLeaflet struct {
	source        string
	pins          Pins
	inset         Pin // the thumb sits in the palm
	left          bool
	before, after int   // of the gusset, in every row
	counts        []int // after each increase row
	division      string
	onHand        int
}

// Published flat gussets are planned row by row as they were printed: so many stitches
// before and after the gusset in each row, so many after it, the thumb's put aside and
// the gap bridged in the printed place.
//
// The steering gloves increase in every 3rd row, so on wrong sides too. Flat, only right
// sides are shaped; with every 2nd row all their counts are as printed. Their gusset
// begins 21 stitches from one edge and 27 from the other: in the palm, one stitch from
// the side line, of a left hand.
func TestPublishedFlatGussets(t *testing.T) {
	for _, l := range []flatLeaflet{
		{
			source: "classic mitten, Jack Frost vol. 56, 1950s: K14, inc 2, K14 on 30, every other row 5 times",
			pins: Pins{
				CastOn: Fix(28), HandStitches: Fix(28), GussetBase: Fix(2), Increases: Fix(5), GussetRounds: Fix(10), KeptOnHand: Fix(2), Bridge: Fix(2),
			},
			before: 14, after: 14, counts: []int{32, 34, 36, 38, 40}, division: "k15 hold10 co2 k15", onHand: 32,
		},
		{
			source: "steering gloves, Woman's Own, Jan 1915: 52, of which 20 + 1 + 4 + 1 + 26, the first makes 6, 7 in all",
			pins: Pins{
				CastOn: Fix(50), HandStitches: Fix(50), GussetBase: Fix(4), Increases: Fix(7), GussetRounds: Fix(14), KeptOnHand: Fix(0), Bridge: Fix(4),
			},
			inset: Fix(1), left: true,
			before: 21, after: 27, counts: []int{54, 56, 58, 60, 62, 64, 66}, division: "k21 hold18 co4 k27", onHand: 52,
		},
	} {
		t.Run(l.source, func(t *testing.T) {
			r := request(Mitten, per10(22, 30), hand.Hand{Circumference: 200 * mm})
			r.Make.Flat, r.Pins = true, l.pins
			if l.inset.On {
				r.Make.Place, r.Make.Inset = InPalm, l.inset
			}
			p, err := New().Plan(r)
			require.NoError(t, err)
			assert.Equal(t, everyOf(1, len(l.counts), []int{2}), p.Gusset.IncreaseRounds)
			m := p.Mitt()
			if l.left {
				m = stitch.Mirror(m)
			}
			assert.Equal(t, l.counts[0]-2, m.Sections[0].CastOn)
			for i, row := range m.Section(stitch.Gusset).Rounds {
				assert.Equal(t, l.before, row.Before, "row %d", i+1)
				assert.Equal(t, l.after, len(row.Ops)-row.Before-row.Lead, "row %d", i+1)
				assert.Equal(t, l.counts[i/2], row.Out(), "row %d", i+1)
			}
			first := m.Section(stitch.Hand).Rounds[0]
			assert.Equal(t, typed(t, l.division).Ops, first.Ops)
			assert.Equal(t, l.onHand, first.Out())
		})
	}
}

// The rhythm of the steering gloves is refused at its field, with the nearest that rows
// can have. The ladies' mitten of about 1890 (48 stitches, one more at the edge every 2nd
// row for 40 rows, 68) can't be planned: its thumb grows at the very edge, so that the
// seam runs up the thumb's side and not the little finger's. The thumb of the classic
// mitten has its 10 held stitches alone, and nothing picked up along its gap of 2; here
// at least as many are picked up as were cast on.
func TestPublishedRhythmOnWrongSides(t *testing.T) {
	r := request(Mitten, per10(22, 30), hand.Hand{Circumference: 200 * mm})
	r.Make.Flat, r.Pins = true, Pins{HandStitches: Fix(50), GussetBase: Fix(4), Increases: Fix(7), Bridge: Fix(4), Rhythm: []int{3}}
	_, err := New().Plan(r)
	var faults fault.Fields
	require.True(t, errors.As(err, &faults), "%v", err)
	require.Equal(t, Rhythm.Path(), faults[0].Path)
	assert.Equal(t, "4", faults[0].Works)
	r.Pins = Pins{PickedUp: Fix(0), Bridge: Fix(2), HandStitches: Fix(28)}
	_, err = New().Plan(r)
	require.True(t, errors.As(err, &faults) && faults.Has(PickedUp.Path()), "%v", err)
}
