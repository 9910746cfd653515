package words

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

// Every number of a plan that can be fixed has one reason, called as the table
// of numbers calls it.
func TestEveryNumberHasAReason(t *testing.T) {
	seen := map[mitt.Number]bool{}
	plans := []*mitt.Plan{capped(t)}
	for _, kind := range []mitt.Kind{mitt.Fingerless, mitt.Mitten, mitt.Thumbless, mitt.Glove} {
		plans = append(plans, plan(t, kind, 2))
	}
	for _, p := range plans {
		told := map[mitt.Number]int{}
		for _, r := range Reasons(p, units.CM, US) {
			told[r.Of]++
			assert.Equal(t, r.Of.Reason(), r.Key)
			assert.Equal(t, p.Number(r.Of), r.Number, "%s", r.Of)
			assert.NotEmpty(t, r.Why, "%s", r.Of)
			if r.Name != "above the cuff" {
				assert.Equal(t, r.Of.Said(), r.Name)
			}
		}
		for _, n := range mitt.Fixable() {
			want := 0
			if p.Number(n) != "" {
				want, seen[n] = 1, true
			}
			assert.Equal(t, want, told[n], "reasons for %s of a %s", n, p.Kind.Words())
		}
	}
	assert.Len(t, seen, len(mitt.Fixable()))
}

// capped is a glove with half fingers and a mitten's cap over them.
func capped(t *testing.T) *mitt.Plan {
	t.Helper()
	p, err := mitt.New().Plan(&mitt.Request{
		Kind: mitt.Glove, Gauge: gauge.Gauge{Stitches: 0.24, Rounds: 0.32, Treated: true},
		Hand: hand.Hand{Circumference: 190 * units.Millimetre}, Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
		Make: mitt.Make{Cap: true, Fingers: [4]mitt.FingerEnd{mitt.HalfFinger, mitt.HalfFinger, mitt.HalfFinger, mitt.HalfFinger}},
	})
	require.NoError(t, err)
	return p
}
