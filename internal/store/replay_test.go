package store

import (
	"context"
	"fmt"
	"maps"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/fault"
)

// model is a chart in memory that keeps a copy of itself before each stroke:
// the plainest undo there is.
type model struct {
	now        chart.Marks
	undo, redo []chart.Marks
}

func (m *model) draw(edits []chart.Edit) {
	m.undo, m.redo = append(m.undo, maps.Clone(m.now)), nil
	m.now.Apply(edits)
}

// move takes the last copy of one pile and leaves the present on the other.
func (m *model) move(from, to *[]chart.Marks) bool {
	if len(*from) == 0 {
		return false
	}
	last := len(*from) - 1
	*to = append(*to, m.now)
	m.now, *from = (*from)[last], (*from)[:last]
	return true
}

// scribble is a stroke of up to six cells on a small chart, so that strokes
// meet, also with themselves.
func scribble(r *rand.Rand) []chart.Edit {
	var edits []chart.Edit
	for range 1 + r.IntN(6) {
		if r.IntN(3) == 0 {
			edits = append(edits, cell(1+r.IntN(3), 1+r.IntN(3), chart.Colours, []string{"", "a", "b"}[r.IntN(3)]))
		} else {
			edits = append(edits, cell(1+r.IntN(3), 1+r.IntN(3), chart.Stitches, []string{"", "p", "k"}[r.IntN(3)]))
		}
	}
	return edits
}

// Whatever order strokes, undos and redos come in, the file says what the
// model in memory says; with snapshots on the way, and without them.
func TestLineAgainstModel(t *testing.T) {
	for seed := range uint64(4) {
		t.Run(fmt.Sprint("seed ", seed), func(t *testing.T) {
			r := rand.New(rand.NewPCG(seed, 1))
			s := fresh(t)
			s.every = 1 + 9*int(seed)
			id := mittIn(t, s)
			m := model{now: chart.Marks{}}
			head := int64(1)
			ahead := 2 + int(seed) // the share of strokes: some runs hit the bottom often
			for range 160 {
				var applied Applied
				var err error
				possible := true
				switch turn := r.IntN(ahead + 4); {
				case turn < 2:
					applied, err = s.Undo(t.Context(), id, head)
					possible = m.move(&m.undo, &m.redo)
				case turn < 4:
					applied, err = s.Redo(t.Context(), id, head)
					possible = m.move(&m.redo, &m.undo)
				default:
					edits := scribble(r)
					applied, err = s.Append(t.Context(), id, head, edits)
					m.draw(edits)
				}
				if !possible {
					require.Equal(t, fault.Conflict, fault.KindOf(err))
					continue
				}
				require.NoError(t, err)
				head++
				require.Equal(t, head, applied.Revision)
				require.Equal(t, []bool{len(m.undo) > 0, len(m.redo) > 0}, []bool{applied.CanUndo, applied.CanRedo})
				loaded, err := s.Load(t.Context(), id)
				require.NoError(t, err)
				require.Equal(t, m.now, loaded.Marks)
			}
			require.Equal(t, 1, rows(t, s, `SELECT 1 FROM snapshot`), "there is one to delete")
			with, err := s.Load(t.Context(), id)
			require.NoError(t, err)
			execute(t, s, `DELETE FROM snapshot`)
			without, err := s.Load(t.Context(), id)
			require.NoError(t, err)
			assert.Equal(t, with, without, "the snapshot is only a cache")
		})
	}
}

// A snapshot that was deleted comes back with the next stroke, and says the
// same as the one before.
func TestSnapshotComesBack(t *testing.T) {
	s := fresh(t)
	assert.Equal(t, snapshotEvery, s.every)
	s.every = 16
	id := mittIn(t, s)
	r := rand.New(rand.NewPCG(7, 7))
	for i := range s.every {
		require.Zero(t, rows(t, s, `SELECT 1 FROM snapshot`), "after %d strokes", i)
		_, err := s.Append(t.Context(), id, 1, scribble(r))
		require.NoError(t, err)
	}
	const read = `SELECT revision, marks FROM snapshot`
	var before, after struct {
		revision int64
		marks    string
	}
	require.NoError(t, s.writer.QueryRow(read).Scan(&before.revision, &before.marks))
	assert.EqualValues(t, s.every+1, before.revision)
	execute(t, s, `DELETE FROM snapshot`)
	again := cell(1, 1, chart.Stitches, "p")
	_, err := s.Append(t.Context(), id, 1, []chart.Edit{again})
	require.NoError(t, err)
	require.NoError(t, s.writer.QueryRow(read).Scan(&after.revision, &after.marks))
	assert.Equal(t, before.revision+1, after.revision)
	left, err := decode(before.marks)
	require.NoError(t, err)
	right, err := decode(after.marks)
	require.NoError(t, err)
	assert.Equal(t, marksOf(append(left, again)...), marksOf(right...))
	assert.LessOrEqual(t, len(right), 18, "one edit a cell and layer: 9 cells, 2 layers")
}

// written is how many bytes SQLite logs while f runs.
func written(t *testing.T, s *Store, path string, f func()) int64 {
	t.Helper()
	execute(t, s, `PRAGMA wal_checkpoint(TRUNCATE)`)
	f()
	info, err := os.Stat(path + "-wal")
	require.NoError(t, err)
	return info.Size()
}

// A save writes some kilobytes, however much is drawn: a stroke and a
// document as many on a chart of 40,000 cells as on an empty one. A snapshot
// is as large as the chart, but comes so rarely that its share in a stroke is
// a few pages.
func TestSaveWritesLittle(t *testing.T) {
	path := filepath.Join(t.TempDir(), "thenar.db")
	s := openAt(t, path)
	id := mittIn(t, s)
	head := int64(1)
	draw := func(edits []chart.Edit) {
		applied, err := s.Append(t.Context(), id, head, edits)
		require.NoError(t, err)
		head = applied.Revision
	}
	decide := func() {
		var err error
		head, err = s.Save(t.Context(), id, head, fmt.Appendf(nil, `{"after": %d}`, head))
		require.NoError(t, err)
	}
	save := func() (stroke, document int64) {
		stroke = written(t, s, path, func() { draw(purl(1, 1)) })
		return stroke, written(t, s, path, decide)
	}
	stroke, document := save()

	const side = 200
	var edits []chart.Edit
	for i := range side * side {
		edits = append(edits, cell(1+i/side, 1+i%side, chart.Stitches, "p"))
	}
	draw(edits)
	snapshot := written(t, s, path, func() {
		require.NoError(t, s.write(t.Context(), func(ctx context.Context, tx *txn) error {
			l, err := replay(t.Context(), tx, id, 1<<40)
			require.NoError(t, err)
			return l.keep(t.Context(), tx, id, head)
		}))
	})
	largeStroke, largeDocument := save()

	const page = 24 + 4096 // in the log, with its frame (https://sqlite.org/fileformat2.html, 4.1)
	assert.LessOrEqual(t, stroke, int64(4*page))
	assert.LessOrEqual(t, document, int64(4*page))
	assert.LessOrEqual(t, largeStroke, stroke+2*page, "the trees may be a level deeper")
	assert.LessOrEqual(t, largeDocument, document+2*page)
	assert.Greater(t, snapshot, int64(side*side), "it does hold the chart")
	assert.LessOrEqual(t, snapshot/snapshotEvery, int64(4*page))
}
