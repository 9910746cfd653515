package store

import (
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/fault"
)

// A document comes back byte for byte, with its times to the nanosecond.
func TestDocumentIsKeptAsItWas(t *testing.T) {
	s := fresh(t)
	document := []byte(" {\"b\": 1.50,\n\t\"a\": \"ä\\u0000<&>\", \"b\": 2}\n")
	id, err := s.Create(t.Context(), document)
	require.NoError(t, err)
	m, err := s.Load(t.Context(), id)
	require.NoError(t, err)
	first := time.Date(2024, 2, 29, 22, 59, 59, 123456789, time.UTC)
	assert.Equal(t, Mitt{ID: id, Revision: 1, Decided: 1, Created: first, Changed: first, Document: document, Marks: chart.Marks{}, Restored: m.Restored}, m)

	_, err = s.Create(t.Context(), []byte(`{"a": `))
	assert.Equal(t, fault.Internal, fault.KindOf(err), "the caller makes the JSON")
	list, err := s.List(t.Context())
	require.NoError(t, err)
	assert.Len(t, list, 1, "nothing is left of a mitt that could not be made")
}

// Saving adds a revision; a stale save changes nothing; the same document is
// not saved again, also where the answer to the first save was lost.
func TestSave(t *testing.T) {
	s := fresh(t)
	id := mittIn(t, s)
	a, b, c := []byte(`{"a": 1}`), []byte(`{"b": 1}`), []byte(`{"c": 1}`)

	revision, err := s.Save(t.Context(), id, 1, a)
	require.NoError(t, err)
	assert.EqualValues(t, 2, revision)
	for _, after := range []int64{-1, 0, 1, 3} {
		_, err = s.Save(t.Context(), id, after, b)
		assert.Equal(t, fault.Conflict, fault.KindOf(err), "after %d", after)
		assert.Contains(t, fault.Message(err), "saved")
	}
	for _, after := range []int64{1, 2} {
		revision, err = s.Save(t.Context(), id, after, a)
		require.NoError(t, err)
		assert.EqualValues(t, 2, revision, "unchanged")
	}
	// A stroke in between is no other document.
	_, err = s.Append(t.Context(), id, 2, purl(1, 1))
	require.NoError(t, err)
	revision, err = s.Save(t.Context(), id, 2, a)
	require.NoError(t, err)
	assert.EqualValues(t, 2, revision, "unchanged still")
	revision, err = s.Save(t.Context(), id, 2, c)
	require.NoError(t, err)
	assert.EqualValues(t, 4, revision)

	m, err := s.Load(t.Context(), id)
	require.NoError(t, err)
	assert.EqualValues(t, 4, m.Revision)
	assert.EqualValues(t, 4, m.Decided)
	assert.Equal(t, c, m.Document)
	assert.Equal(t, marksOf(purl(1, 1)...), m.Marks)

	w := read(t, s, id, Wants{History: true})
	history := w.History
	assert.Nil(t, w.Stood, "it goes back to the beginning")
	assert.Equal(t, c, history[3].Document)
	assert.Equal(t, purl(1, 1), history[2].Edits)
	for i := range history {
		history[i].Document, history[i].Edits, history[i].Inverse, history[i].size = nil, nil, nil, 0
	}
	at := time.Date(2024, 2, 29, 22, 59, 59, 123456789, time.UTC)
	assert.Equal(t, []Revision{
		{Revision: 1, At: at, Kind: "decision"},
		{Revision: 2, At: at.Add(time.Second), Kind: "decision"},
		{Revision: 3, At: at.Add(2 * time.Second), Kind: "do"},
		{Revision: 4, At: at.Add(3 * time.Second), Kind: "decision"},
	}, history)
}

// The mitt that was touched last, by a save or by a stroke, comes first.
func TestListIsNewestFirst(t *testing.T) {
	s := fresh(t)
	list, err := s.List(t.Context())
	require.NoError(t, err)
	assert.Empty(t, list)
	a, b, c := mittIn(t, s), mittIn(t, s), mittIn(t, s)
	order := func() (ids []int64) {
		list, err = s.List(t.Context())
		require.NoError(t, err)
		for _, m := range list {
			ids = append(ids, m.ID)
		}
		return ids
	}
	assert.Equal(t, []int64{c, b, a}, order())
	_, err = s.Append(t.Context(), a, 1, purl(1, 1))
	require.NoError(t, err)
	assert.Equal(t, []int64{a, c, b}, order())
	_, err = s.Save(t.Context(), b, 1, []byte(`{"name": "second"}`))
	require.NoError(t, err)
	assert.Equal(t, []int64{b, a, c}, order())

	for _, listed := range list {
		loaded, err := s.Load(t.Context(), listed.ID)
		require.NoError(t, err)
		loaded.Marks, loaded.CanUndo, loaded.CanRedo = nil, false, false
		assert.Equal(t, loaded, listed)
	}
	s.Now = func() time.Time { return time.Date(2030, 1, 1, 0, 0, 0, 0, time.UTC) }
	for _, id := range []int64{a, b} {
		_, err = s.Append(t.Context(), id, 1, purl(1, 2))
		require.NoError(t, err)
	}
	assert.Equal(t, []int64{b, a, c}, order(), "at the same time, the younger mitt")
}

// Every question about a mitt that there is not is answered alike.
func TestUnknownMitt(t *testing.T) {
	s := fresh(t)
	mittIn(t, s)
	for name, ask := range map[string]func() error{
		"Load":          func() error { _, err := s.Load(t.Context(), 7); return err },
		"Save":          func() error { _, err := s.Save(t.Context(), 7, 1, []byte(`{}`)); return err },
		"Draw(7, do)":   func() error { _, err := s.Append(t.Context(), 7, 0, purl(1, 1)); return err },
		"Draw(7, undo)": func() error { _, err := s.Undo(t.Context(), 7, 0); return err },
		"Draw(7, redo)": func() error { _, err := s.Redo(t.Context(), 7, 0); return err },
		"ReadWork":      func() error { _, err := s.ReadWork(t.Context(), 7, Wants{History: true}); return err },
		"Commit":        func() error { _, err := s.Commit(t.Context(), 7, Change{}); return err },
		"Since":         func() error { _, err := s.Since(t.Context(), 7, 1); return err },
		"Name":          func() error { return s.Name(t.Context(), 7, 1, "x") },
	} {
		err := ask()
		assert.Equal(t, fault.NotFound, fault.KindOf(err), name)
		assert.Equal(t, "There is no mitt 7.", fault.Message(err), name)
		assert.ErrorContains(t, err, "store."+name)
	}
}

// A closed store says so instead of making a file anew.
func TestClosed(t *testing.T) {
	s, err := Open(t.Context(), filepath.Join(t.TempDir(), "thenar.db"))
	require.NoError(t, err)
	require.NoError(t, s.Close())
	_, err = s.List(t.Context())
	assert.ErrorContains(t, err, "closed")
	_, err = s.Create(t.Context(), []byte(`{}`))
	assert.ErrorContains(t, err, "closed")
}
