package store

import (
	"context"
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/fault"
)

// begun gives saves to carry out together, past the queue.
func begun(changes ...change) (list []*save) {
	for _, c := range changes {
		list = append(list, &save{change: c, done: make(chan error, 1)})
	}
	return list
}

// makes is a change that makes a mitt, and then goes wrong with err.
func makes(err error) change {
	return func(ctx context.Context, tx *txn) error {
		if _, err := tx.ExecContext(ctx, `INSERT INTO mitt (created) VALUES ('x')`); err != nil {
			return err
		}
		return err
	}
}

// Saves that share a transaction are kept or refused each by itself.
//
//thenar:race
func TestTogetherEachByItself(t *testing.T) {
	s := fresh(t)
	refused := fault.New(fault.Conflict, "no")
	broken := func(ctx context.Context, tx *txn) error {
		_, err := tx.ExecContext(ctx, `INSERT INTO nowhere VALUES (1)`)
		return err
	}
	against := func(ctx context.Context, tx *txn) error {
		_, err := tx.ExecContext(ctx, `INSERT INTO decision (mitt, revision, at, document) VALUES (1, 7, '', '{}')`)
		return err
	}
	list := begun(makes(nil), makes(refused), makes(nil), broken, against, makes(nil))
	s.writeBatch(list)
	var got []error
	for _, w := range list {
		got = append(got, <-w.done)
	}
	assert.NoError(t, errors.Join(got[0], got[2], got[5]))
	assert.ErrorIs(t, got[1], refused)
	assert.ErrorContains(t, got[3], "no such table")
	assert.ErrorContains(t, got[4], "must follow")
	assert.Equal(t, 3, rows(t, s, `SELECT 1 FROM mitt`))
}

// A save that breaks the whole transaction, as one does that no longer fits on
// the disk, fails alone: those before and after it are kept.
//
//thenar:race
func TestTogetherWhereOneBreaksAll(t *testing.T) {
	s := fresh(t)
	execute(t, s, `PRAGMA max_page_count = 100`)
	large := func(ctx context.Context, tx *txn) error {
		_, err := tx.ExecContext(ctx, `INSERT INTO motif (at, name, cells) SELECT '', '', json_quote(hex(zeroblob(1000000)))`)
		return err
	}
	list := begun(makes(nil), large, makes(nil))
	s.writeBatch(list)
	assert.NoError(t, <-list[0].done)
	err := <-list[1].done
	assert.Equal(t, fault.Unavailable, fault.KindOf(err), "%v", err)
	assert.NoError(t, <-list[2].done)
	assert.Equal(t, 2, rows(t, s, `SELECT 1 FROM mitt`))
}

// A panic in a save reaches who asked for it, and nobody else.
//
//thenar:race
func TestPanicInASave(t *testing.T) {
	s := fresh(t)
	assert.PanicsWithValue(t, "oh", func() {
		_ = s.write(t.Context(), func(context.Context, *txn) error { panic("oh") })
	})
	mittIn(t, s)
}

// Who no longer waits before their turn has saved nothing; after Close nobody
// can save, and nobody waits for ever.
//
//thenar:race
func TestSavesThatAreNotBegun(t *testing.T) {
	s := fresh(t)
	mittIn(t, s)
	ctx, stop := context.WithCancel(t.Context())
	stop()
	for range 20 { // a save that was taken all the same is finished
		if _, err := s.Create(ctx, []byte(`{}`)); err != nil {
			require.ErrorIs(t, err, context.Canceled)
		}
	}
	require.NoError(t, s.Close())
	_, err := s.Create(t.Context(), []byte(`{}`))
	assert.Error(t, err)
}

// What the writer has cached of a mitt is dropped when a save that changed it
// is taken back: the inverse of the next stroke tells what the file holds.
//
//thenar:race
func TestCachedReplayAfterARefusal(t *testing.T) {
	s := fresh(t)
	id := mittIn(t, s)
	_, err := s.Append(t.Context(), id, 1, purl(1, 1))
	require.NoError(t, err)
	try, err := s.NoteTry(t.Context(), id, "k", []byte(`{}`), nil)
	require.NoError(t, err)
	knit := []chart.Edit{cell(1, 1, chart.Stitches, "k")}
	_, err = s.Commit(t.Context(), id, Change{ // drawn, then refused
		After: 2, Strokes: []Request{{Kind: Do, After: 2, Edits: knit}}, Answer: &Answer{Try: try, Text: []byte(`{`)},
	})
	require.Error(t, err)
	_, err = s.Append(t.Context(), id, 2, []chart.Edit{cell(1, 1, chart.Stitches, "")})
	require.NoError(t, err)
	back, err := s.Undo(t.Context(), id, 3)
	require.NoError(t, err)
	assert.Equal(t, purl(1, 1), back.Edits)
}
