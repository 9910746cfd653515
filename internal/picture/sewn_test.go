package picture

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/mitt"
)

// The seam of a flat mitt is drawn up the little finger's side of its palm, which on a
// right hand lies at the left; that of one with an opening up the thumb's side, and not
// along the opening: by hand, that is between its plain rows and the hand's, each as high
// as its rows.
func TestSeamsAreDrawnOnTheirSide(t *testing.T) {
	plan := func(how mitt.Construction) *mitt.Plan {
		p := adult(t)
		own, err := mitt.New().Plan(&mitt.Request{
			Kind: mitt.Fingerless, Gauge: p.Gauge, Stitch: p.Stitch, Make: mitt.Make{Construction: how, Flat: true},
			Hand: hand.Hand{Circumference: 190 * mm, Length: 180 * mm, Thumb: 65 * mm},
		})
		require.NoError(t, err)
		return own
	}
	for _, how := range []mitt.Construction{mitt.ByGusset, mitt.Straight, mitt.Slit} {
		for _, left := range []bool{false, true} {
			p := plan(how)
			list := elements(t, Small(p, SmallOptions{Left: left}))
			require.Len(t, having(list, "class", "sewn"), 1)
			cloth, sewn := extent(t, having(list, "class", "cloth")[0].attr["d"]), having(list, "class", "sewn")[0].attr["d"]
			middle, foot := (cloth.left+cloth.right)/2, extent(t, sewn).bottom
			opening := [2]float64{float64(p.Cuff.Rounds+p.Cuff.PlainRounds) / 0.32, 0}
			opening[1] = opening[0] + float64(p.Gusset.Rounds.N)/0.32
			along, within, ends := 0, 0, 0
			all := numbers.FindAllString(sewn, -1)
			for i := 0; i+1 < len(all); i += 2 {
				x, above := num(t, all[i]), foot-num(t, all[i+1])
				if (x > middle) == (how == mitt.Slit) != left {
					along++
				}
				if above > opening[0]+4 && above < opening[1]-4 {
					within++
				}
				if above > opening[1]+4 {
					ends++
				}
			}
			if how == mitt.Slit {
				assert.Equal(t, len(all)/2, along, "left: %t", left)
				assert.Zero(t, within, "left: %t", left)
			} else {
				assert.Greater(t, along, len(all)/4, "%s, left: %t; the thumb’s seam lies at the other side", how, left)
				assert.Positive(t, within)
			}
			assert.Positive(t, ends)
		}
	}
}
