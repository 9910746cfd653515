package readback

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A round in one yarn may begin with an abbreviation in capitals.
func TestARoundInOneYarn(t *testing.T) {
	for text, want := range map[string][]string{
		"In rust: M1L, k2 (3).":       {"M1L", "k", "k"},
		"In rust: (k1, p1) once (2).": {"k", "p"},
		"In rust: knit (2).":          {"k", "k"},
		"Knit (2).":                   {"k", "k"},
	} {
		n := newNeedles()
		n.gusset, n.live, n.going = -1, []int{1, 2}, "rust"
		_, err := n.told("Yarns: cream, rust. Where no yarn is named, go on in the one before.")
		require.NoError(t, err)
		r, err := n.round(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, r.Ops)
		for _, yarn := range r.Yarns {
			assert.Equal(t, "rust", yarn, text)
		}
	}
}
