package picture

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

func glove(t *testing.T, circumference int, make mitt.Make) *mitt.Plan {
	t.Helper()
	p, err := mitt.New().Plan(&mitt.Request{
		Kind: mitt.Glove, Make: make, Gauge: gauge.Gauge{Stitches: 0.28, Rounds: 0.38, Treated: true},
		Hand: hand.Hand{Circumference: units.Length(circumference) * units.Millimetre}, Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
	})
	require.NoError(t, err)
	return p
}

// A finger that is measured is drawn as measured, its neighbours as before; so is where two
// part.
func TestMeasuredFingersAreDrawn(t *testing.T) {
	h, _ := hand.Hand{Circumference: 190 * units.Millimetre}.Fill()
	before := newFigure(&h).fingers()
	usual, _ := h.FillFingers()
	h.Fingers.Length[hand.Index] = usual.Length[hand.Index] + 10*units.Millimetre
	h.Fingers.Girth[hand.Ring] = usual.Girth[hand.Ring] - 6*units.Millimetre
	h.Fingers.Crotch[hand.Ring] = usual.Crotch[hand.Ring] - 8*units.Millimetre
	after := newFigure(&h).fingers()
	const little, ring, middle, index = 0, 1, 2, 3
	assert.InDelta(t, before[index].long+10, after[index].long, 1e-9)
	assert.InDelta(t, before[ring].half-6/4.0*flatFinger, after[ring].half, 1e-9)
	assert.InDelta(t, before[little].web.y-8, after[little].web.y, 1e-9)
	assert.InDelta(t, before[middle].long, after[middle].long, 1e-9)
	assert.InDelta(t, h.Length.MM(), after[middle].tip[2].y, 0.02*h.Length.MM(), "unless it was measured it ends where the hand does")
}

// Each finger of cloth stands beside the next on the edge of the hand, from one side of it
// to the other, as wide as its stitches of the palm; the little one lower. A full one ends
// at the tip of its finger, a half and an open one leave it free.
func TestAGloveIsDrawnFingerByFinger(t *testing.T) {
	ends := [...]mitt.FingerEnd{mitt.FullFinger, mitt.HalfFinger, mitt.OpenFinger, mitt.FullFinger}
	for _, level := range []bool{false, true} {
		p := glove(t, 190, mitt.Make{Fingers: ends, Level: level})
		f := posed(p)
		m := newFabric(p, f)
		list := m.fingers()
		require.Len(t, list, 4)
		top := m.main()[len(m.main())-1].last()
		assert.InDelta(t, top.out.x, list[3].edges[0].out.x, 1e-9, "the index finger reaches the thumb's side")
		all := 0
		for _, one := range p.Fingers.Each {
			all += one.Palm
		}
		wide := m.tube(stitch.Hand).last()
		for i, one := range list {
			of := hand.Little - hand.Finger(i)
			assert.Equal(t, mitt.PartOfFinger(of), one.part)
			low := one.edges[0]
			if i > 0 {
				assert.InDelta(t, list[i-1].edges[0].out.x, low.left.x, 1e-9, "%s", one.part)
			} else {
				assert.InDelta(t, wide.left.x, low.left.x, 1e-9)
			}
			assert.InDelta(t, float64(p.Fingers.Each[of].Palm)/float64(all), length(low.out.plus(low.left.times(-1)))/length(wide.out.plus(wide.left.times(-1))), 1e-6, "%s", one.part)
			drawn, _ := f.drawnOf(one.part)
			tip, end := drawn.tip[2], one.last().left.to(one.last().out, 0.5)
			short := (tip.x-end.x)*drawn.along.x + (tip.y-end.y)*drawn.along.y
			switch ends[of] {
			case mitt.FullFinger:
				assert.InDelta(t, 0, short, 5, "%s", one.part)
				full, tip := one.edges[one.rounds()/2], one.last()
				assert.Greater(t, length(tip.out.plus(tip.left.times(-1))), 0.4*length(full.out.plus(full.left.times(-1))), "%s: its tip is round", one.part)
			case mitt.HalfFinger:
				assert.Greater(t, short, 0.4*drawn.long, "%s", one.part)
			default:
				assert.Greater(t, short, 0.75*drawn.long, "%s", one.part)
			}
		}
		assert.Equal(t, level, list[0].edges[0].left.y == list[1].edges[0].left.y)
	}
}

// While a finger is worked, the next ones wait on a thread, and so does the thumb until it
// is begun; on the upper hand only the thumb.
func TestWhatWaitsIsDrawn(t *testing.T) {
	p := glove(t, 190, mitt.Make{})
	m := newFabric(p, posed(p))
	waits := func(part stitch.Part, rounds int) []edge {
		n := 0
		for i := range m.tubes {
			n += m.tubes[i].roundsKnitted(Progress{part, rounds})
		}
		return m.waits(m.upTo(n))
	}
	assert.Empty(t, waits(stitch.Gusset, 3))
	assert.Len(t, waits(stitch.Hand, 3), 1, "the thumb")
	for part, beside := range map[stitch.Part]stitch.Part{stitch.Little: stitch.Ring, stitch.Ring: stitch.Middle, stitch.Middle: stitch.Index} {
		list := waits(part, 4)
		require.Len(t, list, 2, "%s", part)
		assert.Equal(t, m.tube(part).edges[0].out, list[0].left)
		assert.InDelta(t, m.tube(beside).edges[0].left.x, list[0].left.x, 1e-9)
		assert.InDelta(t, m.tube(stitch.UpperHand).last().out.x, list[0].out.x, 1)
	}
	assert.Len(t, waits(stitch.UpperHand, 2), 1)
	assert.Len(t, waits(stitch.Index, 4), 1)
	assert.Empty(t, waits(stitch.Thumb, 1))
}

// A glove is drawn on every desk, and on both hands, whatever hand it is for.
func TestGlovesAreDrawn(t *testing.T) {
	for circumference := 130; circumference <= 250; circumference += 30 {
		p := glove(t, circumference, mitt.Make{})
		for _, left := range []bool{false, true} {
			s := Hand(p, HandOptions{Left: left})
			checkTexts(t, s)
			assert.Contains(t, svg(t, s), `data-section="little"`)
			b := NewBench(p, HandOptions{Left: left})
			assert.NotContains(t, svg(t, b.Hand), "NaN")
			for _, part := range []stitch.Part{stitch.Hand, stitch.Little, stitch.UpperHand, stitch.Index} {
				at := Progress{part, 2}
				assert.NotContains(t, svg(t, Tried(p, at, nil, nil, HandOptions{Left: left})), "NaN")
				checkTexts(t, Onward(p, p, at, HandOptions{Left: left}))
			}
		}
	}
}

// The ends to choose from are as large as each other, and each leaves more of the finger free
// than the one before it.
func TestEndsOfFingersToChooseFrom(t *testing.T) {
	var before string
	free := func(s *draw.Scene) (y float64) { // where the cloth's line begins to close it
		for _, e := range having(elements(t, s), "class", "cloth-edge") {
			words := strings.Fields(e.attr["d"])
			y, _ = strconv.ParseFloat(words[5], 64)
		}
		return y
	}
	last := 0.0
	for _, end := range []mitt.FingerEnd{mitt.FullFinger, mitt.HalfFinger, mitt.OpenFinger} {
		s := FingerEnd(end, false)
		if size := fmt.Sprintf("%.0f × %.0f", s.Width, s.Height); before != "" {
			assert.Equal(t, before, size)
		} else {
			before = size
		}
		assert.Greater(t, free(s), last, "%s", end)
		last = free(s)
	}
}

// The tape round a finger is pulled away from the hand: to the little finger's side for the
// outer two there, to the thumb's for the others.
func TestTapesOfFingersArePulledOutward(t *testing.T) {
	p := glove(t, 190, mitt.Make{})
	m := newFabric(p, posed(p))
	for part, little := range map[stitch.Part]bool{stitch.Little: true, stitch.Ring: true, stitch.Middle: false, stitch.Index: false, stitch.Thumb: false} {
		assert.Equal(t, little, m.littleSide(m.tube(part)), "%s", part)
	}
}
