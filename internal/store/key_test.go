package store

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A phone that knows the key need not be told again: it outlives the program.
func TestKeyStays(t *testing.T) {
	path := filepath.Join(t.TempDir(), "thenar.db")
	s, err := Open(t.Context(), path)
	require.NoError(t, err)
	key, err := s.Key(t.Context())
	require.NoError(t, err)
	assert.GreaterOrEqual(t, len(key), 26, "26 letters of base 32 are 130 bits")
	require.NoError(t, s.Close())
	again, err := openAt(t, path).Key(t.Context())
	require.NoError(t, err)
	assert.Equal(t, key, again)
	other, err := fresh(t).Key(t.Context())
	require.NoError(t, err)
	assert.NotEqual(t, key, other)
}
