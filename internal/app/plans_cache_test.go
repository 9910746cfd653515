package app

import (
	"fmt"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The plans by which a mitt is knitted are shared by those who type at the same
// time, and by later ones; each is answered as by an App that knows none.
//
//thenar:race
func TestPlansOfAMittOnTheNeedlesAreShared(t *testing.T) {
	t.Parallel()
	a, id := sampled(t)
	count(t, a, id, "hand", 4)
	typed := func(n int) Typed {
		return Typed{"after": {"1"}, "hand.hand_circumference": {fmt.Sprint(17 + n)}}
	}
	want := make([]Mitt, 6)
	for n := range want {
		var err error
		want[n], err = New(a.store).Preview(t.Context(), id, typed(n))
		require.NoError(t, err)
		require.NotNil(t, want[n].Out)
	}
	_, err := a.OpenMitt(t.Context(), id)
	require.NoError(t, err)
	before := a.Plans().Plans
	var all sync.WaitGroup
	for n := range want {
		all.Go(func() {
			for range 3 {
				is, err := a.Preview(t.Context(), id, typed(n))
				if assert.NoError(t, err) {
					assert.Equal(t, want[n].Doc, is.Doc)
					assert.Equal(t, want[n].Out.Plan, is.Out.Plan)
					assert.Equal(t, want[n].Out.Words, is.Out.Words)
				}
			}
		})
	}
	all.Wait()
	assert.LessOrEqual(t, a.Plans().Plans-before, 2*3*len(want), "a typed number makes two plans at most")
}
