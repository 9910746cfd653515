package picture

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/fit"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Above the hand's curves stands a panel for each finger, with its name and the same axis
// for all, and none of their texts lies on another.
func TestFingersHavePanels(t *testing.T) {
	for circumference := 150; circumference <= 240; circumference += 30 {
		p := glove(t, circumference, mitt.Make{})
		rows := fitRows(t, p)
		s := FitCurve(rows, p, FitOptions{Half: 0.03})
		said := map[string]int{}
		for _, i := range s.Items {
			if i.Kind == draw.TextItem {
				said[i.Text]++
				assert.Greater(t, i.Y, 0.7*i.Letter.Size, "%q", i.Text)
			}
		}
		for _, name := range []string{"index", "middle", "ring", "little", "thumb"} {
			assert.Equal(t, 1, said[name], "%d mm: %s", circumference, name)
		}
		text := svg(t, s)
		for i := range rows {
			if rows[i].Section.Over() == stitch.OverDigit {
				assert.Contains(t, text, `data-says="`+string(rows[i].Section.Words()))
			}
		}
		assert.NotContains(t, text, "NaN")
		large := FitCurve(rows, p, FitOptions{Half: 0.03, Letter: 1.3 * letterSize(&p.Hand), Width: s.Width})
		assert.Contains(t, svg(t, large), ">little<")
	}
}

// Beside the hand the fingers have narrow panels with one axis. A tip that is narrower stays
// inside, and no line joins the girths below and above where a finger parts.
func TestFingersHaveCurvesBesideTheHand(t *testing.T) {
	p := glove(t, 190, mitt.Make{})
	rows := fitRows(t, p)
	b := NewBench(p, HandOptions{})
	panels := b.FingerCurves(rows, fit.DefaultBands, FitOptions{Half: 0.03})
	require.Len(t, panels, 4)
	rungs := b.FingerRungs()
	require.Len(t, rungs, 4)
	for i, part := range []stitch.Part{stitch.Little, stitch.Ring, stitch.Middle, stitch.Index} {
		one := panels[i]
		assert.InDelta(t, rungs[i][0].Low, one.Foot, 1e-6, "%s: ladder and curves stand at one height", part)
		assert.Equal(t, part, one.Part())
		assert.Equal(t, part, rungs[i][0].Part)
		assert.Len(t, rungs[i], len(p.Mitt().Section(part).Rounds))
		assert.Equal(t, panels[0].Low, one.Low)
		assert.False(t, one.Thumb())
		assert.NotRegexp(t, ` d="[^"]*-[0-9]`, svg(t, one.Scene), "left of its panel")
	}
	for i, of := range p.Fingers.Each {
		below := BelowTip(rows, mitt.PartOfFinger(hand.Finger(i)))
		assert.InDelta(t, float64(of.Stitches.N)/p.Gauge.Stitches, below.Fabric, 1e-9, "finger %d", i)
	}
	assert.Len(t, b.Curves(rows, fit.DefaultBands, FitOptions{Half: 0.03}), 2, "hand and thumb")
	tube, _, _ := splitDigits(rows)
	assert.Len(t, profiles(tube), 3, "up to the thumb, to the little finger, above it")
	mittens := NewBench(plan(t, mitt.Mitten, 190), HandOptions{})
	assert.Empty(t, mittens.FingerRungs())
}

// The numbers of fingers stand on the ladder where they happen.
func TestNumbersOfFingersHaveAHeight(t *testing.T) {
	p := glove(t, 190, mitt.Make{})
	b := NewBench(p, HandOptions{})
	rungs := b.FingerRungs()
	at := func(n mitt.Number) float64 { return b.Marks([]mitt.Number{n})[0].Level }
	little := rungs[0]
	assert.InDelta(t, little[0].Low, at(mitt.OfFinger(mitt.FingerPalm, 3)), 1e-9)
	assert.InDelta(t, (little[0].Low+little[len(little)-1].High)/2, at(mitt.OfFinger(mitt.FingerRounds, 3)), 1e-9)
	assert.Greater(t, little[0].Low, at(mitt.LittleLowerRounds))
	assert.Less(t, rungs[1][0].Low, at(mitt.LittleLowerRounds))
}

// A cap has no curve of its own: the curves are those of the glove without it. It may be on
// the needles.
func TestACapHasNoCurve(t *testing.T) {
	half := [...]mitt.FingerEnd{mitt.HalfFinger, mitt.HalfFinger, mitt.HalfFinger, mitt.HalfFinger}
	bare, capped := glove(t, 190, mitt.Make{Fingers: half}), glove(t, 190, mitt.Make{Fingers: half, Cap: true})
	require.NotNil(t, capped.Mitt().Section(stitch.Cap))
	curve := func(p *mitt.Plan) []draw.Item { return FitCurve(fitRows(t, p), p, FitOptions{Half: 0.03}).Items }
	assert.Equal(t, len(curve(bare)), len(curve(capped)))
	b := NewBench(capped, HandOptions{})
	assert.Len(t, b.Curves(fitRows(t, capped), fit.DefaultBands, FitOptions{}), 2)
	whole := 0
	for _, s := range bare.Mitt().Sections {
		whole += len(s.Rounds)
	}
	for _, n := range []int{whole, whole + 5} {
		assert.NotContains(t, svg(t, Small(capped, SmallOptions{Needles: true, Knitted: n})), "NaN")
	}
	assert.NotContains(t, svg(t, Tried(capped, Progress{stitch.Cap, 6}, []Pull{{"cap", stitch.Cap, 0.5}}, nil, HandOptions{})), "NaN")
	assert.NotContains(t, svg(t, Onward(capped, capped, Progress{stitch.CapTop, 2}, HandOptions{})), "NaN")
}
