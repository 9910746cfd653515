package picture

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Two plans whose gussets end at different heights are aligned at the last knitted round. The
// height above the cast-on is rounds over rounds per mm, so the knitted part is equally high in
// both, and the rest differs by its rounds.
func TestOnwardLinesUpAtWhatIsKnitted(t *testing.T) {
	h := hand.Hand{Circumference: 190 * mm, Length: 180 * mm, Thumb: 65 * mm}
	was := planned(t, mitt.Fingerless, 24, 32, h)
	h.GussetLength = was.Hand.GussetLength + 12*units.Millimetre
	is := planned(t, mitt.Fingerless, 24, 32, h)
	more := is.Gusset.Rounds.N - was.Gusset.Rounds.N
	require.Positive(t, more)
	for _, at := range []Progress{{}, {stitch.Cuff, 4}, {stitch.CuffPlain, 2}, {stitch.Gusset, 8}} {
		f := newFigure(&is.Hand)
		now := newFabric(is, f)
		before := alignedFabric(was, f, now, at)
		assert.InDelta(t, now.heightAt(at), before.heightAt(at), 1e-9, "%v", at)
		assert.InDelta(t, now.foot().y, before.foot().y, 1e-9, "%v: and so do the rounds below", at)
		top := func(m *fabric) float64 { return m.heightAt(Progress{stitch.Gusset, math.MaxInt}) }
		assert.InDelta(t, float64(more)/0.32, top(now)-top(before), 1e-9, "%v: the gusset ends higher by its rounds", at)
		assert.NotEqual(t, before.foot(), newFabric(was, f).foot(), "the gusset's tops do not lie on each other")
	}
}

// The knitted part is drawn as cloth with both contours above it, and texts are readable, for
// either hand, any place and every kind.
func TestOnwardIsDrawn(t *testing.T) {
	for _, p := range []*mitt.Plan{adult(t), child(t), planned(t, mitt.Thumbless, 24, 32, hand.Hand{Circumference: 110 * mm})} {
		for _, s := range p.Mitt().Sections {
			for _, left := range []bool{false, true} {
				scene := Onward(p, p, Progress{s.Part, len(s.Rounds)}, HandOptions{Left: left, Unit: units.CM})
				readable(t, scene)
				list := elements(t, scene)
				cloth := 0
				for _, other := range p.Mitt().Sections {
					if other.Part.Order() <= s.Part.Order() {
						cloth++
					}
				}
				assert.Len(t, having(list, "class", "cloth"), cloth)
				require.Len(t, having(list, "class", "as-planned"), 1)
				assert.Equal(t, having(list, "class", "as-planned")[0].attr["d"], having(list, "class", "as-it-will-be")[0].attr["d"], "nothing changed")
				assert.Contains(t, list[0].attr["aria-label"], "knitted up to round")
			}
		}
	}
}
