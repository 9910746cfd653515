package store

import (
	"fmt"
	"path/filepath"
	"slices"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
)

// Two programs with many hands draw and save on one mitt: every revision that
// was acknowledged is there, none twice, and the numbering has no hole.
//
//thenar:race
func TestTwoStoresOnOneFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "thenar.db")
	stores := []*Store{openAt(t, path), openAt(t, path)}
	id := mittIn(t, stores[0])

	const hands, strokes = 4, 12
	var all sync.WaitGroup
	var mu sync.Mutex
	kinds := map[int64]string{1: "decision"}
	acknowledge := func(revision int64, kind string) {
		mu.Lock()
		defer mu.Unlock()
		assert.NotContains(t, kinds, revision, "acknowledged twice")
		kinds[revision] = kind
	}
	for hand := range hands * len(stores) {
		s := stores[hand%len(stores)]
		all.Go(func() {
			for i := range strokes {
				applied, err := s.Append(t.Context(), id, 1, purl(hand+1, i+1))
				if assert.NoError(t, err) {
					acknowledge(applied.Revision, "do")
				}
				if i%3 > 0 {
					continue
				}
				m, err := s.Load(t.Context(), id)
				assert.NoError(t, err)
				revision, err := s.Save(t.Context(), id, m.Revision, fmt.Appendf(nil, `[%d, %d]`, hand, i))
				if fault.KindOf(err) == fault.Conflict {
					continue // somebody was faster, and nothing was written
				}
				if assert.NoError(t, err) {
					acknowledge(revision, "decision")
				}
			}
		})
	}
	all.Wait()

	for _, s := range stores {
		history := read(t, s, id, Wants{History: true}).History
		require.Len(t, history, len(kinds))
		for i, r := range history {
			assert.EqualValues(t, i+1, r.Revision)
			assert.Equal(t, kinds[r.Revision], r.Kind)
		}
		m, err := s.Load(t.Context(), id)
		require.NoError(t, err)
		assert.Len(t, m.Marks, hands*len(stores)*strokes, "every cell that was painted")
	}
}

// A reader sees one state of a mitt while others write: never a revision
// without its marks.
//
//thenar:race
func TestLoadIsOneState(t *testing.T) {
	path := filepath.Join(t.TempDir(), "thenar.db")
	writing, reading := openAt(t, path), openAt(t, path)
	id := mittIn(t, writing)
	const strokes = 60
	var all sync.WaitGroup
	all.Go(func() {
		for i := range strokes {
			_, err := writing.Append(t.Context(), id, 1, purl(1, i+1))
			assert.NoError(t, err)
		}
	})
	var seen []int64
	for len(seen) == 0 || seen[len(seen)-1] < strokes+1 {
		m, err := reading.Load(t.Context(), id)
		require.NoError(t, err)
		require.Len(t, m.Marks, int(m.Revision)-1)
		require.Equal(t, m.Revision > 1, m.CanUndo)
		seen = append(seen, m.Revision)
	}
	all.Wait()
	assert.True(t, slices.IsSorted(seen))
}

// A full disk loses the save that did not fit, says so, and nothing else.
func TestFullDisk(t *testing.T) {
	s := fresh(t)
	id := mittIn(t, s)
	var pages int
	require.NoError(t, s.writer.QueryRow(`PRAGMA page_count`).Scan(&pages))
	execute(t, s, fmt.Sprintf(`PRAGMA max_page_count = %d`, pages+4))
	head, err := int64(1), error(nil)
	for err == nil {
		var applied Applied
		if applied, err = s.Append(t.Context(), id, head, purl(1, int(head))); err == nil {
			head = applied.Revision
		}
	}
	assert.Equal(t, fault.Unavailable, fault.KindOf(err))
	assert.Contains(t, fault.Message(err), "full. Free some space")
	m, err := s.Load(t.Context(), id)
	require.NoError(t, err)
	assert.Equal(t, head, m.Revision)
	assert.Len(t, m.Marks, int(head)-1)

	execute(t, s, `PRAGMA max_page_count = 4294967294`)
	applied, err := s.Append(t.Context(), id, head, purl(1, int(head)))
	require.NoError(t, err)
	assert.Equal(t, head+1, applied.Revision, "no hole where the save was lost")
}
