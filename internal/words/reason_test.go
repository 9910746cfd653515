package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/mitt"
	"thenar/internal/units"
)

// Every number of a plan that can be fixed has one reason, called as the table
// of numbers calls it.
func TestEveryNumberHasAReason(t *testing.T) {
	seen := map[mitt.Number]bool{}
	for _, kind := range []mitt.Kind{mitt.Fingerless, mitt.Mitten, mitt.Thumbless, mitt.Glove} {
		p := plan(t, kind, 2)
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
			assert.Equal(t, want, told[n], "reasons for %s of a %s", n, kind.Words())
		}
	}
	assert.Len(t, seen, len(mitt.Fixable()))
}
