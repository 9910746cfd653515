package store

import (
	"fmt"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/stitch"
)

// clock tells a time that goes on by a second with each look at it.
func clock() func() time.Time {
	now := time.Date(2024, 2, 29, 23, 59, 58, 123456789, time.FixedZone("", 3600))
	return func() time.Time {
		now = now.Add(time.Second)
		return now
	}
}

// openAt opens a store that is closed when the test ends.
func openAt(t *testing.T, path string) *Store {
	t.Helper()
	s, err := Open(t.Context(), path)
	require.NoError(t, err)
	t.Cleanup(func() { require.NoError(t, s.Close()) })
	return s
}

// fresh opens a new file, with a clock of its own.
func fresh(t *testing.T) *Store {
	t.Helper()
	s := openAt(t, filepath.Join(t.TempDir(), "thenar.db"))
	s.Now = clock()
	return s
}

// mittIn makes a mitt.
func mittIn(t *testing.T, s *Store) int64 {
	t.Helper()
	id, err := s.Create(t.Context(), []byte(`{"name": "first"}`))
	require.NoError(t, err)
	return id
}

// read reads a mitt with what is wanted beside it.
func read(t *testing.T, s *Store, id int64, wants Wants) *Work {
	t.Helper()
	w, err := s.ReadWork(t.Context(), id, wants)
	require.NoError(t, err)
	return &w
}

// earlier wants a mitt as it stood at a revision, with its marks.
func earlier(revision int64) Wants {
	return Wants{Earlier: []Pick{func(Work) (int64, bool) { return revision, true }}}
}

// cell is an edit of one cell of the gusset.
func cell(round, column int, layer chart.Layer, value string) chart.Edit {
	return chart.Edit{Section: stitch.Gusset, Round: round, Column: fmt.Sprintf("A%d", column), Layer: layer, Value: value}
}

// purl paints one cell.
func purl(round, column int) []chart.Edit {
	return []chart.Edit{cell(round, column, chart.Stitches, "p")}
}

// marksOf is what edits come to on an empty chart.
func marksOf(edits ...chart.Edit) chart.Marks {
	m := chart.Marks{}
	m.Apply(edits)
	return m
}

// rows counts what a query finds.
func rows(t *testing.T, s *Store, query string, args ...any) (n int) {
	t.Helper()
	require.NoError(t, s.writer.QueryRowContext(t.Context(), `SELECT count(*) FROM (`+query+`)`, args...).Scan(&n))
	return n
}

// execute runs SQL past the store's own functions.
func execute(t *testing.T, s *Store, statement string, args ...any) {
	t.Helper()
	_, err := s.writer.ExecContext(t.Context(), statement, args...)
	require.NoError(t, err)
}
