package grade

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/gauge"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/units"
)

func design(kind string) sheet.Sheet {
	return sheet.Sheet{
		"kind": kind, "unit": "cm", "hand.hand_circumference": "18.6", "hand.thumb_circumference": "6.3",
		"gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10", "gauge.swatches[0].rounds": "36", "gauge.swatches[0].height": "10",
		"ease.hand": "0", "pins.gusset_base": "3",
	}
}

// Every cell equals a plan of the same hand at the same gauge, made without the
// design's own hand and swatches.
func TestCellsArePlans(t *testing.T) {
	for _, kind := range []string{"fingerless", "mitten", "mitten_without_thumb", "glove"} {
		g, err := Table(t.Context(), design(kind), DefaultRequest(units.CM))
		require.NoError(t, err)
		require.Len(t, g.Hands, 6, "EN 420:2003 has the sizes 6 to 11")
		require.Len(t, g.Blocks, 7)
		for _, b := range g.Blocks {
			assert.InDelta(t, 1.5*b.Stitches, b.Rounds, 1e-9, "36 rounds to 24 stitches, as in the swatch")
			require.Len(t, b.Cells, len(g.Hands))
			for i, c := range b.Cells {
				s := sheet.Sheet{
					"kind": kind, "hand.size": strconv.Itoa(6 + i), "ease.hand": "0", "pins.gusset_base": "3",
					"gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10",
				}
				req, err := s.Request()
				require.NoError(t, err)
				req.Gauge = gauge.Gauge{Stitches: b.Stitches / 100, Rounds: b.Rounds / 100, Treated: true}
				p, err := mitt.New().Plan(req)
				require.NoError(t, err)
				assert.Equal(t, numbers(p), c.Numbers)
				// By hand: size n is n inches round (EN 420:2003), so without ease the
				// hand has 25.4 n g stitches, to the nearest even number.
				assert.InDelta(t, 25.4*float64(6+i)*b.Stitches/100, float64(c.Hand), 1.06)
			}
		}
	}
}

// A table of gloves has the numbers of every finger. Those of a finger add up with the
// bridges beside it, and all of them with the hand. Two hands whose gloves differ in one
// finger alone are two sizes.
func TestGlovesAreGradedFingerByFinger(t *testing.T) {
	g, err := Table(t.Context(), design("glove"), DefaultRequest(units.CM))
	require.NoError(t, err)
	for _, b := range g.Blocks {
		for i, c := range b.Cells {
			require.Empty(t, c.Why)
			shared := 0
			for j, f := range c.Fingers {
				between := 0
				if j > 0 {
					between += c.Between[j-1]
				}
				if j < len(c.Between) {
					between += c.Between[j]
				}
				require.Equal(t, f.Stitches, f.Palm+f.Back+between)
				require.Positive(t, f.Rounds)
				shared += f.Palm + f.Back
			}
			require.Equal(t, c.HandAfter, shared)
			if i > 0 {
				other := b.Cells[i-1]
				require.Equal(t, other.Numbers == c.Numbers, c.Same)
			}
		}
	}
	first := g.Blocks[0].Cells[0]
	assert.Contains(t, g.FingersOf(first), fmt.Sprintf("index finger %d, %d rounds · middle finger", first.Fingers[0].Stitches, first.Fingers[0].Rounds))
	mittens, err := Table(t.Context(), design("mitten"), DefaultRequest(units.CM))
	require.NoError(t, err)
	assert.Empty(t, mittens.FingersOf(mittens.Blocks[0].Cells[0]))
	var b Block
	same := Cell{Numbers: Numbers{Fingers: [fingers]FingerNumbers{{8, 8, 18, 30}}}}
	b.Cells = append(b.Cells, same)
	req, err := design("glove").Request()
	require.NoError(t, err)
	p, err := mitt.New().Plan(req)
	require.NoError(t, err)
	b.add(p, nil)
	b.add(p, nil)
	assert.True(t, b.Cells[2].Same)
	p.Fingers.Each[2].Rounds++
	b.add(p, nil)
	assert.False(t, b.Cells[3].Same, "the ring finger is a round longer")
}

// Of adults' hands a larger one never has fewer stitches (children's hands are
// filled by other averages). Of two neighbours with the same numbers the second
// one is marked.
func TestLargerHandsAreNotSmaller(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	collide := 0
	for range 200 {
		a := Request{Unit: units.CM, From: 15.5 + 3*r.Float64(), Step: 0.1 + 0.5*r.Float64(), Gauge: [3]float64{8 + 30*r.Float64(), 40, 7}}
		a.To = a.From + 12*a.Step
		if a.Gauge[0] > 40 {
			continue
		}
		g, err := Table(t.Context(), design("fingerless"), a)
		require.NoError(t, err)
		for _, b := range g.Blocks {
			for i, c := range b.Cells {
				if i == 0 || c.Why != "" || b.Cells[i-1].Why != "" {
					continue
				}
				before := b.Cells[i-1]
				assert.GreaterOrEqual(t, c.HandAfter, before.HandAfter)
				assert.GreaterOrEqual(t, c.CastOn, before.CastOn)
				assert.Equal(t, c.Numbers == before.Numbers, c.Same)
				if c.Same {
					collide++
				}
			}
		}
	}
	assert.Positive(t, collide)
}

// A hand that can't be planned gets a cell with the reason; a design that can't
// be read is an error.
func TestCellsWithoutPlan(t *testing.T) {
	s := design("fingerless")
	s["pins.cast_on"], s["pins.cuff_rounds"] = "44", "10"
	s["pins.held"], s["pins.bridge"], s["pins.thumb_stitches"] = "40", "0", "12"
	request := DefaultRequest(units.CM)
	request.Keep = true
	g, err := Table(t.Context(), s, request)
	require.NoError(t, err)
	for _, b := range g.Blocks {
		for _, c := range b.Cells {
			assert.NotEmpty(t, c.Why)
			assert.Zero(t, c.Numbers)
		}
	}
	_, err = Table(t.Context(), sheet.Sheet{"kind": "sock"}, DefaultRequest(units.CM))
	require.Error(t, err)
}

func TestRead(t *testing.T) {
	form := func(m map[string]string) func(string) string { return func(n string) string { return m[n] } }
	a, err := Read(form(map[string]string{"by": "girth", "from": "17,5", "to": "21", "step": "0.5", "gauge_from": "22", "gauge_to": "28", "gauge_step": "3", "rounds": "1.4"}), units.CM)
	require.NoError(t, err)
	assert.Len(t, a.hands(), 8)
	assert.Equal(t, []float64{22, 25, 28}, a.gauges())
	assert.InDelta(t, 1.4, a.Rounds, 0)
	a, err = Read(form(nil), units.IN)
	require.NoError(t, err)
	assert.Equal(t, DefaultRequest(units.IN), a)
	assert.InDelta(t, 20/1.016, a.gauges()[0], 1e-9, "4 in are 101.6 mm")
	for field, m := range map[string]map[string]string{
		"from": {"from": "wide"}, "to": {"to": "5"}, "step": {"step": "0.25"}, "gauge_to": {"gauge_to": "10"},
		"gauge_step": {"gauge_step": "0.1"}, "rounds": {"rounds": "9"}, "gauge_from": {"gauge_from": "NaN"},
		"by": {"by": "weight"},
	} {
		_, err := Read(form(m), units.CM)
		var fields fault.Fields
		require.True(t, errors.As(err, &fields), "%v", m)
		assert.True(t, fields.Has(field), "%v: %v", m, fields)
	}
	_, err = Read(form(map[string]string{"from": "6.25"}), units.CM)
	assert.ErrorContains(t, err, "from: is 6.25, neither a whole nor a half size")
	for range 300 { // no accepted request makes a table larger than the bounds
		v := func() string { return strconv.FormatFloat(math.Round(rand.Float64()*400)/10, 'f', -1, 64) }
		a, err := Read(form(map[string]string{"by": "girth", "from": v(), "to": v(), "step": v(), "gauge_from": v(), "gauge_to": v(), "gauge_step": v()}), units.CM)
		if err == nil {
			assert.LessOrEqual(t, len(a.hands()), MaxHands)
			assert.LessOrEqual(t, len(a.gauges()), MaxGauges)
			assert.NotEmpty(t, a.hands())
		}
	}
}

// A fixed count of one hand changes nothing in the table and is listed; any other
// fixed number changes the table. Which is which is common practice, no source.
func TestCountsOfOneHandStayOut(t *testing.T) {
	request := Request{Unit: units.CM, BySize: true, From: 7, To: 9, Step: 1, Gauge: [3]float64{24, 24, 1}}
	plain, err := Table(t.Context(), design("mitten"), request)
	require.NoError(t, err)
	for name, text := range map[string]string{
		"cast_on": "46", "hand_stitches": "50", "increases": "5", "held": "13", "thumb_stitches": "16", "gusset_rounds": "23",
		"cuff_rounds": "9", "cuff_plain_rounds": "7", "rounds_above_gusset": "11", "picked_up": "5", "top_rounds": "9", "thumb_rounds": "14", "thumb_decreases": "2", "increase_rounds": "1, 4, 7, 10, 13, 16",
	} {
		s := design("mitten")
		s["pins."+name] = text
		got, err := Table(t.Context(), s, request)
		require.NoError(t, err)
		assert.Equal(t, plain.Blocks, got.Blocks, name)
		assert.Len(t, got.OneHand, 1, name)
		assert.Contains(t, got.OneHand[0], text)
	}
	for name, text := range map[string]string{"gusset_base": "5", "bridge": "5", "rhythm": "4", "first_increase": "14", "kept_on_hand": "1"} {
		s := design("mitten")
		s["pins."+name] = text
		got, err := Table(t.Context(), s, request)
		require.NoError(t, err)
		assert.NotEqual(t, plain.Blocks, got.Blocks, name)
		assert.Empty(t, got.OneHand)
	}
}
