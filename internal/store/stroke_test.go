package store

import (
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/fault"
)

// A stroke is drawn on what there is, and its answer says what the page that
// sent it had not seen: what others drew, took back and brought again.
func TestAppendTellsWhatCameBetween(t *testing.T) {
	s := fresh(t)
	id := mittIn(t, s)
	knit := []chart.Edit{cell(1, 1, chart.Stitches, "k"), cell(1, 2, chart.Stitches, "p")}

	first, err := s.Append(t.Context(), id, 1, purl(1, 1))
	require.NoError(t, err)
	assert.Equal(t, Applied{Revision: 2, Edits: purl(1, 1), CanUndo: true}, first)
	second, err := s.Append(t.Context(), id, 1, knit)
	require.NoError(t, err)
	assert.Equal(t, Applied{Revision: 3, Edits: knit, Between: purl(1, 1), CanUndo: true}, second, "the first came between")
	_, err = s.Save(t.Context(), id, 3, []byte(`{"name": "second"}`)) // revision 4
	require.NoError(t, err)
	third, err := s.Undo(t.Context(), id, 2)
	require.NoError(t, err)
	assert.EqualValues(t, 5, third.Revision)
	assert.Equal(t, knit, third.Between)
	assert.True(t, third.CanUndo)
	assert.True(t, third.CanRedo)
	fourth, err := s.Append(t.Context(), id, 4, purl(2, 2))
	require.NoError(t, err)
	assert.Equal(t, Applied{Revision: 6, Edits: purl(2, 2), Between: third.Edits, CanUndo: true}, fourth)

	m, err := s.Load(t.Context(), id)
	require.NoError(t, err)
	assert.Equal(t, marksOf(append(purl(1, 1), purl(2, 2)...)...), m.Marks)
	assert.EqualValues(t, 6, m.Revision)
	assert.EqualValues(t, 4, m.Decided)
}

// No edits are no stroke: nothing is written, and the answer still tells what
// came between.
func TestAppendNothing(t *testing.T) {
	s := fresh(t)
	id := mittIn(t, s)
	_, err := s.Append(t.Context(), id, 1, purl(1, 1))
	require.NoError(t, err)
	applied, err := s.Append(t.Context(), id, 1, nil)
	require.NoError(t, err)
	assert.Equal(t, Applied{Revision: 2, Between: purl(1, 1), CanUndo: true}, applied)
	assert.Equal(t, 1, rows(t, s, `SELECT 1 FROM stroke`))
}

// A revision that the mitt does not have comes from another state of the
// file: nothing is drawn on a guess.
func TestStrokeConflicts(t *testing.T) {
	s := fresh(t)
	id := mittIn(t, s)
	_, err := s.Append(t.Context(), id, 1, purl(1, 1))
	require.NoError(t, err)
	for _, after := range []int64{-1, 3, 1 << 60} {
		_, err = s.Append(t.Context(), id, after, purl(1, 2))
		assert.Equal(t, fault.Conflict, fault.KindOf(err), "after %d", after)
		_, err = s.Undo(t.Context(), id, after)
		assert.Equal(t, fault.Conflict, fault.KindOf(err), "after %d", after)
		_, err = s.Redo(t.Context(), id, after)
		assert.Equal(t, fault.Conflict, fault.KindOf(err), "after %d", after)
	}
	assert.Equal(t, 1, rows(t, s, `SELECT 1 FROM stroke`))
}

// What was drawn in one session is taken back and brought again in later
// ones, and nothing is forgotten on the way.
func TestUndoAcrossSessions(t *testing.T) {
	path := filepath.Join(t.TempDir(), "thenar.db")
	session := func(f func(s *Store)) {
		s, err := Open(t.Context(), path)
		require.NoError(t, err)
		f(s)
		require.NoError(t, s.Close())
	}
	var id int64
	marks := func(s *Store, undo, redo bool, edits ...chart.Edit) {
		m, err := s.Load(t.Context(), id)
		require.NoError(t, err)
		assert.Equal(t, marksOf(edits...), m.Marks)
		assert.Equal(t, []bool{undo, redo}, []bool{m.CanUndo, m.CanRedo})
	}
	session(func(s *Store) {
		id = mittIn(t, s)
		_, err := s.Undo(t.Context(), id, 1)
		assert.Equal(t, fault.Conflict, fault.KindOf(err))
		assert.Equal(t, "There is no stroke to take back.", fault.Message(err))
		_, err = s.Append(t.Context(), id, 1, purl(1, 1))
		require.NoError(t, err)
		_, err = s.Append(t.Context(), id, 2, append(purl(1, 2), cell(1, 1, chart.Stitches, "k")))
		require.NoError(t, err)
	})
	session(func(s *Store) {
		for range 2 {
			_, err := s.Undo(t.Context(), id, 3)
			require.NoError(t, err)
		}
		marks(s, false, true)
	})
	session(func(s *Store) {
		applied, err := s.Redo(t.Context(), id, 5)
		require.NoError(t, err)
		assert.Equal(t, Applied{Revision: 6, Edits: purl(1, 1), CanUndo: true, CanRedo: true}, applied)
		marks(s, true, true, purl(1, 1)...)
	})
	session(func(s *Store) {
		_, err := s.Append(t.Context(), id, 6, purl(3, 3))
		require.NoError(t, err)
		marks(s, true, false, append(purl(1, 1), purl(3, 3)...)...)
		_, err = s.Redo(t.Context(), id, 7)
		assert.Equal(t, fault.Conflict, fault.KindOf(err))
		assert.Contains(t, fault.Message(err), "Nothing was taken back since")
		history := read(t, s, id, Wants{History: true}).History
		var kinds []string
		for _, r := range history {
			kinds = append(kinds, r.Kind)
		}
		assert.Equal(t, []string{"decision", "do", "do", "undo", "undo", "redo", "do"}, kinds)
	})
}
