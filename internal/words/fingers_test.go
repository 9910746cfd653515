package words

import (
	"bytes"
	"fmt"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/units"
)

// glove plans a glove for a hand of a circumference and a length in mm.
func glove(t *testing.T, round, long float64, change func(*mitt.Request)) *mitt.Plan {
	t.Helper()
	r := &mitt.Request{
		Kind: mitt.Glove, Gauge: gauge.Gauge{Stitches: 0.28, Rounds: 0.38, Treated: true},
		Hand:   hand.Hand{Circumference: units.FromMM(round), Length: units.FromMM(long)},
		Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
	}
	if change != nil {
		change(r)
	}
	p, err := mitt.New().Plan(r)
	require.NoError(t, err)
	require.Empty(t, stitch.Ledger(p.Mitt()))
	return p
}

// The whole instructions, lengths and reasons of gloves.
func TestGloves(t *testing.T) {
	half := [4]mitt.FingerEnd{mitt.HalfFinger, mitt.HalfFinger, mitt.OpenFinger, mitt.HalfFinger}
	for name, c := range map[string]struct {
		round, long float64
		by          Hands
		unit        units.Unit
		change      func(*mitt.Request)
	}{
		"glove_adult": {190, 180, Hands{Tails: Tails{CastOn: 650, End: 200}}, units.CM, nil},
		"glove_child": {150, 130, Hands{Terms: UK}, units.CM, nil},
		"glove_half": {200, 190, Hands{Left: true, Tails: Tails{CastOn: 650, End: 200, Thumb: 350, Fingers: [4]float64{380, 400, 0, 340}}}, units.IN, func(r *mitt.Request) {
			r.Make.Fingers, r.Make.ThumbEnd = half, mitt.OpenFinger
			r.Pins.Fingers[hand.Middle].Decreases = mitt.Fix(3)
		}},
		"glove_level": {190, 180, Hands{}, units.CM, func(r *mitt.Request) { r.Make.Level = true }},
		"glove_palm":  {190, 180, Hands{}, units.CM, func(r *mitt.Request) { r.Make.Place = mitt.InPalm }},
		"glove_cap": {190, 180, Hands{Tails: Tails{CastOn: 650, End: 200}}, units.CM, func(r *mitt.Request) {
			r.Make.Fingers, r.Make.Cap = [4]mitt.FingerEnd{mitt.HalfFinger, mitt.HalfFinger, mitt.HalfFinger, mitt.HalfFinger}, true
		}},
		"glove_straight": {190, 180, Hands{FromLeft: true}, units.CM, func(r *mitt.Request) { r.Make.Construction = mitt.Straight }},
	} {
		t.Run(name, func(t *testing.T) {
			p := glove(t, c.round, c.long, c.change)
			m, by := p.Mitt(), c.by
			by.Pair.Parts = stitch.Differing(m, stitch.Mirror(m))
			if by.Left != by.FromLeft {
				m = stitch.Mirror(m)
			}
			if by.FromLeft {
				m = stitch.FromLeft(m)
			}
			var b bytes.Buffer
			for _, passage := range Instructions(m, by) {
				fmt.Fprintf(&b, "# %s\n", passage.Title)
				for _, s := range passage.Steps {
					fmt.Fprintf(&b, "%s | %s\n", s.Label(), s.Text)
					for _, sentence := range testenv.Sentences(s.Text) {
						if s.From == 0 {
							assert.LessOrEqual(t, testenv.WordCount(sentence), longest, sentence)
						}
					}
				}
			}
			for _, l := range Lengths(p, m, c.unit) {
				fmt.Fprintf(&b, "%s: %s\n", l.Part, l.Words())
			}
			for _, r := range Reasons(p, c.unit, by.Terms) {
				fmt.Fprintf(&b, "%s (%s, round %d): %s = %s. %s\n", r.Key, r.Part, r.Round, r.Name, r.Value, r.Why)
			}
			testenv.Golden(t, filepath.Join("testdata", name+".txt"), b.Bytes())
		})
	}
}
