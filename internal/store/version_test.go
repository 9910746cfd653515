package store

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
)

// Versions are numbered in the order in which they went out, one sent twice is kept once, and
// they are read with their mitt.
func TestVersions(t *testing.T) {
	s := fresh(t)
	id, other := mittIn(t, s), mittIn(t, s)
	record := []byte(`{"sizes": ["7"]}`)
	for range 2 {
		n, err := s.AddVersion(t.Context(), id, 1, "sent to testers", record)
		require.NoError(t, err)
		require.EqualValues(t, 1, n)
	}
	n, err := s.AddVersion(t.Context(), id, 1, "sent to the shop", record)
	require.NoError(t, err)
	require.EqualValues(t, 2, n)
	n, err = s.AddVersion(t.Context(), other, 1, "", record)
	require.NoError(t, err)
	require.EqualValues(t, 1, n, "each mitt has its own")
	for _, revision := range []int64{0, 2} {
		_, err = s.AddVersion(t.Context(), id, revision, "", record)
		require.Equal(t, fault.NotFound, fault.KindOf(err))
	}
	_, err = s.AddVersion(t.Context(), 99, 1, "", record)
	require.Equal(t, fault.NotFound, fault.KindOf(err))

	went := read(t, s, id, Wants{Went: true}).Went
	require.Len(t, went, 2)
	assert.Equal(t, "sent to testers", went[0].Name)
	assert.EqualValues(t, 1, went[0].Revision)
	assert.Equal(t, record, went[0].Record)
	assert.False(t, went[0].At.IsZero())
	assert.Empty(t, read(t, s, id, Wants{}).Went)
}

// Versions move house with their mitt, each once; what went out in both places is there
// behind what was, under a number of its own.
func TestVersionsMoveHouse(t *testing.T) {
	s, there := fresh(t), fresh(t)
	id, err := s.Create(t.Context(), []byte(`{"name": "first", "side": "right", "sheet": {}}`))
	require.NoError(t, err)
	_, err = s.AddVersion(t.Context(), id, 1, "sent to testers", []byte(`{"sizes": ["7"]}`))
	require.NoError(t, err)
	f, err := s.ExportMitt(t.Context(), id)
	require.NoError(t, err)
	for range 2 {
		done, err := there.Import(t.Context(), reread(t, f))
		require.NoError(t, err)
		went := read(t, there, done.Mitts[0].ID, Wants{Went: true}).Went
		require.Len(t, went, 1)
		assert.Equal(t, "sent to testers", went[0].Name)
		assert.JSONEq(t, `{"sizes": ["7"]}`, string(went[0].Record))
	}
	_, err = there.AddVersion(t.Context(), 1, 1, "sent from there", []byte(`{}`))
	require.NoError(t, err)
	_, err = s.AddVersion(t.Context(), id, 1, "sent from here", []byte(`{}`))
	require.NoError(t, err)
	f, err = s.ExportMitt(t.Context(), id)
	require.NoError(t, err)
	_, err = there.Import(t.Context(), reread(t, f))
	require.NoError(t, err)
	var list []string
	for _, v := range read(t, there, 1, Wants{Went: true}).Went {
		list = append(list, v.Name)
	}
	assert.Equal(t, []string{"sent to testers", "sent from there", "sent from here"}, list)
}
