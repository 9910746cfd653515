package app

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A cache gives back what was put under the same key, and never holds more mitts
// than it may.
func TestACacheIsBounded(t *testing.T) {
	t.Parallel()
	c := cache[int, string]{most: 3}
	for id := range int64(3) {
		c.put(id, 1, "first")
	}
	c.put(2, 2, "second")
	for id, want := range map[int64]string{0: "first", 1: "first"} {
		got, ok := c.get(id, 1)
		assert.True(t, ok)
		assert.Equal(t, want, got)
	}
	_, ok := c.get(2, 1)
	assert.False(t, ok, "it was worked out from something else")
	got, ok := c.get(2, 2)
	assert.True(t, ok)
	assert.Equal(t, "second", got)
	c.put(3, 1, "one more")
	assert.Len(t, c.of, 1)
	got, _ = c.get(3, 1)
	assert.Equal(t, "one more", got)
}
