package tryon

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/stitch"
)

// Plain rounds keep the count, so one count may be that of several rounds.
func TestWithCountReturnsEveryRound(t *testing.T) {
	_, p := adult(t)
	list := Places(p.Mitt())
	found := WithCount(list, stitch.Gusset, 50) // 44 and three increase rounds: rounds 7, 8, 9
	require.Len(t, found, 3)
	assert.Equal(t, stitch.Gusset, found[0].Part)
	assert.Equal(t, []int{7, 8, 9}, []int{found[0].Round, found[1].Round, found[2].Round})
	near, ok := Nearest(found, found[2].Nth+4)
	assert.True(t, ok)
	assert.Equal(t, 9, near.Round)
}
