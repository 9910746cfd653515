package paper

import (
	"context"
	"sync"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is laid ahead comes in its order, of few at a time: here every item waits for
// the one after it to be begun, so none would end if they were worked off one by one,
// and no more are begun than are allowed.
func TestLaidAheadInOrder(t *testing.T) {
	t.Parallel()
	const n = 20
	list, begun := make([]int, n), make([]chan struct{}, n+1)
	for i := range begun {
		begun[i] = make(chan struct{})
	}
	close(begun[n])
	for i := range list {
		list[i] = i
	}
	var mu sync.Mutex
	inWork, most := 0, 0
	var got []int
	for i := range ahead(t.Context(), list, func(i int) int {
		mu.Lock()
		inWork++
		most = max(most, inWork)
		mu.Unlock()
		close(begun[i])
		<-begun[i+1]
		mu.Lock()
		inWork--
		mu.Unlock()
		return i
	}) {
		got = append(got, i)
	}
	assert.Equal(t, list, got)
	assert.LessOrEqual(t, most, maxAhead)
	assert.Greater(t, most, 1)
}

// Whoever stops asking, or leaves, has nothing more begun, and nothing goes on behind
// their back; a panic comes where it can be caught.
func TestNothingIsLaidForNobody(t *testing.T) {
	t.Parallel()
	list := make([]int, 100)
	list[0] = 1 // ends at once, and the others only when somebody has stopped asking
	stopped := make(chan struct{})
	var begun, ended atomic.Int32
	work := func(first int) int {
		begun.Add(1)
		if first == 0 {
			<-stopped
		}
		ended.Add(1)
		return 0
	}
	for range ahead(t.Context(), list, work) {
		close(stopped)
		break
	}
	assert.Equal(t, begun.Load(), ended.Load())
	assert.LessOrEqual(t, begun.Load(), int32(1+maxAhead))

	ctx, leave := context.WithCancel(t.Context())
	defer leave()
	begun.Store(0)
	for range ahead(ctx, list, work) {
		leave()
	}
	assert.LessOrEqual(t, begun.Load(), int32(1+maxAhead))

	require.PanicsWithValue(t, "caught", func() {
		defer func() {
			assert.Contains(t, recover(), "no yarn")
			panic("caught")
		}()
		for range ahead(t.Context(), list, func(int) int { panic("no yarn") }) {
			t.Error("nothing was made")
		}
	})
}
