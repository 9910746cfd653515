package picture

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
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
				require.Len(t, having(list, "class", "cloth"), 1)
				assert.Equal(t, cloth, strings.Count(having(list, "class", "cloth")[0].attr["d"], "M"), "a contour for each part")
				require.Len(t, having(list, "class", "as-planned"), 1)
				assert.Equal(t, having(list, "class", "as-planned")[0].attr["d"], having(list, "class", "as-it-will-be")[0].attr["d"], "nothing changed")
				assert.Contains(t, list[0].attr["aria-label"], "knitted up to round")
			}
		}
	}
}

// Where it is tried on and where it goes on, what is knitted wears its colours, as far as it
// is knitted: rust in the rounds of the gusset and none above.
func TestWhatIsKnittedWearsItsColours(t *testing.T) {
	p := adult(t)
	for _, left := range []bool{false, true} {
		s, _ := painted(t, left)
		o := HandOptions{Left: left, Worn: NewWorn(s)}
		for part, rust := range map[stitch.Part]int{stitch.CuffPlain: 0, stitch.Gusset: 6} {
			at := Progress{part, 6}
			for _, scene := range []*draw.Scene{Tried(p, at, nil, nil, o), Onward(p, p, at, o)} {
				list := elements(t, scene)
				stitches := 0
				for _, e := range having(list, "stroke", "#B9694A") {
					stitches += strings.Count(e.attr["d"], "M") / 2 // two strokes each
				}
				assert.Equal(t, rust, stitches, "%s", part)
				assert.Len(t, having(list, "class", "worn-edge"), 1)
				assert.Empty(t, having(list, "class", "cloth"))
				edge := extent(t, having(list, "class", "worn-edge")[0].attr["d"])
				for _, e := range having(list, "class", "worn undyed-strand") {
					a := extent(t, e.attr["d"])
					assert.True(t, a.bottom <= edge.bottom+0.1 && a.top >= edge.top-0.1, "within what is knitted")
				}
			}
		}
	}
}
