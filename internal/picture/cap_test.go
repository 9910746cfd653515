package picture

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

func capped(t *testing.T, circumference int, level bool) *mitt.Plan {
	t.Helper()
	half := mitt.HalfFinger
	return glove(t, circumference, mitt.Make{Fingers: [4]mitt.FingerEnd{half, half, half, half}, Cap: true, Level: level})
}

// A cap lies on the hand where it is picked up, so many rounds below where the first finger
// parts. It is as wide as its stitches, and ends a little above the middle finger, as it is
// planned to.
func TestACapReachesOverTheMiddleFinger(t *testing.T) {
	for circumference := 130; circumference <= 250; circumference += 30 {
		for _, level := range []bool{false, true} {
			p := capped(t, circumference, level)
			f := posed(p)
			m := newFabric(p, f)
			require.Len(t, m.caps, 2)
			foot, q := m.caps[0].edges[0], p.Gauge.Rounds
			assert.InDelta(t, m.tube(stitch.Little).edges[0].left.y-float64(p.Fingers.Cap.Below)/q, foot.left.y, 1e-9)
			assert.InDelta(t, float64(p.Fingers.Cap.Stitches())/p.Gauge.Stitches/2*flatHand, foot.out.x-foot.left.x, 0.02*(foot.out.x-foot.left.x))
			end := m.caps[1].last()
			assert.InDelta(t, float64(p.Fingers.Cap.Rounds+p.Fingers.Cap.Top.Rounds)/q, end.left.y-foot.left.y, 1e-9)
			middle := f.fingers()[2].tip[2].y
			assert.Greater(t, m.capReach(), middle)
			assert.Less(t, end.left.y, middle+mitt.TipRoom+1/q+4)
		}
	}
	m := newFabric(glove(t, 190, mitt.Make{}), posed(glove(t, 190, mitt.Make{})))
	assert.Empty(t, m.caps)
	assert.Zero(t, m.capReach())
}

// It is drawn over the fingers, which are seen through it, on every drawing and for both
// hands; the drawing has room for it and its rounds can be pointed at, under those of the
// fingers. A glove without one has nothing of it.
func TestACapIsDrawnOverTheFingers(t *testing.T) {
	p, without := capped(t, 190, false), glove(t, 190, mitt.Make{})
	var cloths []string
	for _, left := range []bool{false, true} {
		o := HandOptions{Left: left}
		page := draw.Scene{Width: 1000, Height: 1000}
		NewDressed(p, o).Draw(&page, 100, 900, 1)
		scenes := map[string]*draw.Scene{"hand": Hand(p, o), "bench": NewBench(p, o).Hand, "small": Small(p, SmallOptions{Left: left}), "dressed": &page}
		for name, s := range scenes {
			list := elements(t, s)
			at := slices.IndexFunc(list, func(e element) bool { return e.attr["class"] == "cap" })
			require.Positive(t, at, name)
			assert.Equal(t, "0.5", list[at+1].attr["fill-opacity"], name)
			assert.Less(t, slices.IndexFunc(list, func(e element) bool { return e.attr["class"] == "ribs" }), at, "%s: it lies over the half fingers", name)
			a := extent(t, list[at+1].attr["d"])
			if s != &page { // whose drawing is moved into its place
				assert.True(t, a.left >= 0 && a.top >= 0 && a.right <= s.Width && a.bottom <= s.Height, "%s: %v", name, a)
			}
		}
		s := scenes["hand"]
		checkTexts(t, s)
		assert.Contains(t, s.Label, "top of the cap "+draw.Number(float64(p.Fingers.Cap.Top.Rounds))+" rounds")
		list := elements(t, s)
		at := func(section string) int {
			return slices.IndexFunc(list, func(e element) bool { return e.attr["class"] == "band" && e.attr["data-section"] == section })
		}
		assert.Positive(t, at("cap_top"))
		assert.Less(t, at("cap_top"), at("little"))
		cloths = append(cloths, having(list, "class", "cap-cloth")[0].attr["d"])
		assert.False(t, strings.Contains(svg(t, Hand(without, o)), `class="cap`))
	}
	right, left := extent(t, cloths[0]), extent(t, cloths[1])
	assert.InDelta(t, right.right-right.left, left.right-left.left, 0.1)
	assert.NotEqual(t, cloths[0], cloths[1])
}

// While it is knitted, so much of it is cloth as its rounds are, the rest dashed; on the
// shelf it hangs on the needle by its last round.
func TestACapOnTheNeedles(t *testing.T) {
	p := capped(t, 190, false)
	of := p.Fingers.Cap
	for _, at := range []Progress{{stitch.Index, 3}, {stitch.Cap, 10}, {stitch.Cap, of.Rounds}, {stitch.CapTop, 3}, {stitch.CapTop, of.Top.Rounds}} {
		knitted := map[stitch.Part]int{stitch.Cap: at.Round, stitch.CapTop: of.Rounds + at.Round}[at.Part]
		for name, s := range map[string]*draw.Scene{"tried": Tried(p, at, nil, nil, HandOptions{}), "onward": Onward(p, p, at, HandOptions{})} {
			list := elements(t, s)
			cloth := having(list, "class", "cap-edge")
			if knitted == 0 {
				assert.Empty(t, cloth, name)
			} else {
				require.Len(t, cloth, 1, name)
				a := extent(t, cloth[0].attr["d"])
				assert.InDelta(t, float64(knitted)/p.Gauge.Rounds, a.bottom-a.top, 12, "%s %v: but for its sagging edge and round end", name, at)
			}
			ahead := having(list, "class", "as-planned")
			require.Len(t, ahead, 1)
			assert.Equal(t, knitted == of.Rounds+of.Top.Rounds, strings.TrimSpace(ahead[0].attr["d"]) == "", "%s %v", name, at)
			if name == "onward" {
				checkTexts(t, s)
			}
		}
	}
	m := newFabric(p, posed(p))
	under := 0
	for i := range m.tubes {
		under += m.tubes[i].rounds()
	}
	assert.Equal(t, m.caps[0].edges[4], m.upTo(under+4).stop())
	assert.Equal(t, m.caps[1].edges[2], m.upTo(under+of.Rounds+2).stop())
	assert.Empty(t, m.upTo(under).caps)
}
