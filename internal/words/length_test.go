package words

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// By hand: 19 rounds at 32 over 10 cm are 59.4 mm, 5.9 cm or 2⅜ in to the
// nearest eighth (2.34).
func TestLengthWords(t *testing.T) {
	l := Length{Part: stitch.Gusset, Rounds: 19, MM: 19 / 0.32, Until: "reaches where the thumb parts"}
	assert.Equal(t, "19 rounds, about 5.9 cm / 2⅜ in; stop when it reaches where the thumb parts", l.Words())
	assert.Equal(t, "1 round, about 0.3 cm / ⅛ in", Length{Rounds: 1, MM: 1 / 0.32}.Words())
}

// Every section with rounds has its length by the gauge; a closed mitten's
// top begins so far below the tip as its rounds are high, less the 5 mm that
// a mitten is longer than the hand.
func TestLengths(t *testing.T) {
	for _, kind := range []mitt.Kind{mitt.Fingerless, mitt.Mitten, mitt.Thumbless} {
		p, err := mitt.New().Plan(&mitt.Request{
			Kind: kind, Gauge: gauge.Gauge{Stitches: 0.22, Rounds: 0.30},
			Hand:   hand.Hand{Circumference: 190 * units.Millimetre, Length: 180 * units.Millimetre},
			Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
		})
		require.NoError(t, err)
		list := Lengths(p, p.Mitt(), units.CM)
		at := 0
		for _, s := range p.Mitt().Sections {
			if len(s.Rounds) == 0 {
				continue
			}
			require.Less(t, at, len(list), "%s of a %s has no length", s.Part, kind)
			assert.Equal(t, s.Part, list[at].Part)
			assert.Equal(t, len(s.Rounds), list[at].Rounds, "%s", s.Part)
			assert.InDelta(t, float64(len(s.Rounds))/0.30, list[at].MM, 1e-9)
			if s.Part == stitch.Hand && p.Top != nil {
				assert.Contains(t, list[at].Until, Both(float64(p.Top.Rounds)/0.30-5, units.CM))
			}
			at++
		}
		assert.Len(t, list, at)
	}
}

// A tail is never shorter than it has to be, and said no finer than it is measured off.
func TestTail(t *testing.T) {
	assert.Equal(t, "135 cm / 54 in", Tail(1304, units.CM)) // 135 cm are 53.1 in: a tail is never cut shorter
	assert.Equal(t, "145 cm / 58 in", Tail(1450, units.CM)) // 57.1 in
	assert.Equal(t, "60 cm / 24 in", Tail(600, units.CM))   // 23.6 in
	assert.Equal(t, "125 cm / 50 in", Tail(1250, units.CM)) // 49.2 in
	assert.Equal(t, "20 cm / 8 in", Tail(200, units.CM))
	assert.Equal(t, "5 cm / 2 in", Tail(50, units.CM))
}

// A sheet in inches tells inches first. 23.57 mm are 24 whole ones, 2.4 cm, and these
// nearest to 1 in (0.945), so that either can be worked out from the other.
func TestUnitsAgreeAndTheSheetsComesFirst(t *testing.T) {
	assert.Equal(t, "2.4 cm / 1 in", Both(23.57, units.CM))
	assert.Equal(t, "1 in / 2.4 cm", Both(23.57, units.IN))
	assert.Equal(t, "54 in / 135 cm", Tail(1304, units.IN))
	l := Length{Rounds: 19, MM: 19 / 0.32, edge: "the cast-on", Whole: 102, Until: "the hand begins there", unit: units.IN}
	assert.Equal(t, "Knit until it is 4 in / 10.2 cm from the cast-on: the hand begins there.", l.Stop())
}

// By hand, at 30 rounds over 10 cm: the last rounds of a part that ends in rib are begun
// so far below its end as they are high, and those that close a thumb, which is 4 mm
// longer than the one inside, as much less. A round that fits the stitches to the rib
// belongs to these.
func TestWhereAnEndIsBegun(t *testing.T) {
	for want, c := range map[string]struct {
		kind mitt.Kind
		rib  int
		part stitch.Part
	}{
		"Begin round 9, the ribbing, 1 cm / ⅜ in below where the fingers are to be free.":                  {mitt.Fingerless, 2, stitch.Hand},
		"Begin round 8, the ribbing, 1 cm / ⅜ in below where the tip of the thumb is to be free.":          {mitt.Fingerless, 2, stitch.Thumb},
		"Begin round 7, for the ribbing, 1.3 cm / ½ in below where the tip of the thumb is to be free.":    {mitt.Fingerless, 5, stitch.Thumb},
		"Try it on before round 18: it should end 0.6 cm / ¼ in below the tip of the thumb.":               {mitt.Mitten, 2, stitch.Thumb},
		"Closed, it has 0.5 cm / ¼ in of room over the tip of the longest finger.":                         {mitt.Mitten, 2, stitch.Top},
		"Knit until it is 6 cm / 2⅜ in from the cast-on: the gusset begins at the knob outside the wrist.": {mitt.Fingerless, 2, stitch.CuffPlain},
		"Stop when it reaches where the thumb parts from the hand.":                                        {mitt.Fingerless, 2, stitch.Gusset},
	} {
		p, err := mitt.New().Plan(&mitt.Request{
			Kind: c.kind, Gauge: gauge.Gauge{Stitches: 0.22, Rounds: 0.30},
			Hand:   hand.Hand{Circumference: 190 * units.Millimetre, Length: 180 * units.Millimetre},
			Stitch: mitt.Stitches{Repeat: 2, Rib: c.rib},
		})
		require.NoError(t, err)
		for _, l := range Lengths(p, p.Mitt(), units.CM) {
			if l.Part == c.part {
				assert.Equal(t, want, l.Stop(), "%d rounds", l.Rounds)
			}
		}
	}
}

// A hem's cast-on is folded inside, and a mitt from the fingertips has none at its cuff:
// its heights are measured from the edge that is seen.
func TestHeightsAreFromTheLowerEdge(t *testing.T) {
	section := func(about stitch.About, down bool) stitch.Mitt {
		return stitch.Mitt{Sections: []stitch.Section{{Part: stitch.Cuff, About: about, Down: down}}}
	}
	assert.Equal(t, "the cast-on", LowerEdge(section(stitch.About{}, false)))
	assert.Equal(t, "the hem’s edge", LowerEdge(section(stitch.About{Folded: 7}, false)))
	assert.Equal(t, "the cuff’s edge", LowerEdge(section(stitch.About{}, true)))
}

// From the fingertips a length is told from where the tube was begun, and the round that
// brings the thumb in is begun where the thumb parts. By hand: at 32 rounds over 10 cm the
// gusset of a fingerless mitt ends (hand + gusset) ÷ 3.2 cm from the cast-on, and a
// mitten's hand begins its last round (top + hand − 1) ÷ 3.2 cm from the tip.
func TestLengthsFromTheFingertips(t *testing.T) {
	for _, kind := range []mitt.Kind{mitt.Fingerless, mitt.Mitten} {
		p, err := mitt.New().Plan(&mitt.Request{
			Kind: kind, Gauge: gauge.Gauge{Stitches: 0.24, Rounds: 0.32}, Make: mitt.Make{Direction: mitt.Down},
			Hand: hand.Hand{Circumference: 190 * units.Millimetre}, Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
		})
		require.NoError(t, err)
		stops := map[stitch.Part]string{}
		for _, l := range Lengths(p, p.Mitt(), units.CM) {
			stops[l.Part] = l.Stop()
		}
		above, began := p.Body.RoundsAbove, "the cast-on"
		joins := fmt.Sprintf("Try it on before round %d: it should reach where the thumb parts from the hand.", above)
		if p.Top != nil {
			above, began = above+p.Top.Rounds, "the tip"
			joins += fmt.Sprintf(" That is about %s from the tip.", Both(float64(above-1)/0.32, units.CM))
		}
		assert.Equal(t, joins, stops[stitch.Hand])
		assert.Contains(t, stops[stitch.Gusset], fmt.Sprintf("Stop when it reaches the bone at the wrist, about %s from %s.", Both(float64(above+p.Gusset.Rounds.N)/0.32, units.CM), began))
		assert.NotContains(t, stops[stitch.Thumb], "about", "its length stands at its head")
	}
}

// A ring of yarn has no strands to lift, so its first round says how its stitches are made;
// after many stitches round two needles a row is knitted first.
func TestClosedCastOnSaysHowItGrows(t *testing.T) {
	grows := stitch.Section{CastOn: 10, About: stitch.About{Tip: true}, Rounds: []stitch.Round{{Ops: []stitch.Op{stitch.Knit, stitch.M1L}}}}
	assert.Contains(t, Hands{}.castOn(&grows), "in the first round make new stitches by backward loops")
	grows.CastOn = stitch.MostInRing + 2
	assert.NotContains(t, Hands{}.castOn(&grows), "backward loops")
	plain := stitch.Section{CastOn: 10, About: stitch.About{Tip: true}, Rounds: []stitch.Round{{Ops: []stitch.Op{stitch.Knit}}}}
	assert.NotContains(t, Hands{}.castOn(&plain), "backward loops")
}

// An end that is worked like the rounds before it, in one step with them, can't be told: no
// round begins there.
func TestAnEndInsideAStepIsNotTold(t *testing.T) {
	steps := func(spans ...[2]int) (p Passage) {
		for _, s := range spans {
			p.Steps = append(p.Steps, Step{From: s[0], To: s[1], Text: "Knit (20)."})
		}
		return p
	}
	l := Length{Until: "1 cm below the tips", End: 5, How: "the ribbing"}
	assert.Equal(t, 1, steps([2]int{1, 1}, [2]int{2, 4}, [2]int{5, 6}).StopAfter(l))
	assert.Equal(t, -1, steps([2]int{1, 1}, [2]int{2, 6}).StopAfter(l))
}
