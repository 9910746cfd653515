package store

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/exportfile"
	"thenar/internal/project"
)

// lived is a store with something of everything in it, as somebody used it.
func lived(t *testing.T) *Store {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join("testdata", "schema-5.sqlite"))
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "thenar.db")
	require.NoError(t, os.WriteFile(path, raw, 0o600))
	return openAt(t, path)
}

// all is everything that a store holds, without what differs from file to
// file: when it was exported, and the numbers.
func all(t *testing.T, s *Store) exportfile.File {
	t.Helper()
	f, err := s.ExportAll(t.Context())
	require.NoError(t, err)
	f = reread(t, f)
	f.Made = ""
	for i := range f.Mitts {
		m := &f.Mitts[i]
		numbers := map[int64]int64{}
		for j := range m.Tries {
			numbers[m.Tries[j].ID], m.Tries[j].ID = int64(j+1), int64(j+1)
		}
		*m, err = m.Renumbered(numbers)
		require.NoError(t, err)
		m.ID = 0
	}
	for i := range f.Classes {
		c := &f.Classes[i]
		c.ID = 0
		*c, err = c.Renumbered(nil)
		require.NoError(t, err)
		for j := range c.Patterns {
			c.Patterns[j].Mitt = 0
		}
	}
	return f
}

func take(t *testing.T, s *Store, f exportfile.File) Imported {
	t.Helper()
	done, err := s.Import(t.Context(), reread(t, f))
	require.NoError(t, err)
	return done
}

// Everything moves house and is the same there, though all numbers are others:
// the sheet still names its try, the class its mitt. Twice is once.
func TestImportEverything(t *testing.T) {
	from, to := lived(t), fresh(t)
	mittIn(t, to) // takes the number 1
	require.NoError(t, to.Unlearn(t.Context(), "cuff"))
	other, err := to.NoteTry(t.Context(), 1, "theirs", []byte(`{}`), nil)
	require.NoError(t, err)
	f, err := from.ExportAll(t.Context())
	require.NoError(t, err)
	done := take(t, to, f)
	require.Len(t, done.Mitts, 3)
	for i, a := range done.Mitts {
		assert.Equal(t, Arrived{ID: int64(i + 2), How: Fresh, Added: len(f.Mitts[i].Revisions)}, a)
	}
	assert.Equal(t, 1, done.Motifs)

	tries := read(t, to, 2, Wants{Tries: true}).Tries
	require.Len(t, tries, 1)
	require.NotEqual(t, other, tries[0].ID)
	m, err := to.Load(t.Context(), 2)
	require.NoError(t, err)
	doc, err := project.Decode(m.Document)
	require.NoError(t, err)
	assert.Equal(t, []int64{tries[0].ID}, doc.Sheet.Tried())
	photo, err := to.Photo(t.Context(), 2, tries[0].ID)
	require.NoError(t, err)
	assert.NotEmpty(t, photo)
	c, err := to.LoadClass(t.Context(), 1)
	require.NoError(t, err)
	assert.Contains(t, string(c.Document), `"pattern":{"mitt":2,`)
	undone, err := to.Draw(t.Context(), 2, Request{Kind: Undo, After: m.Revision, Rewrite: project.Rewrite})
	require.NoError(t, err, "its history goes on")
	assert.True(t, undone.CanRedo)
	m, err = to.Load(t.Context(), 2)
	require.NoError(t, err)
	doc, err = project.Decode(m.Document)
	require.NoError(t, err)
	assert.Empty(t, doc.Sheet.Tried(), "what the try changed is taken back")

	empty := fresh(t)
	take(t, empty, f)
	assert.Equal(t, all(t, from), all(t, empty))
	before := all(t, empty)
	for _, a := range take(t, empty, f).Mitts {
		assert.Equal(t, There, a.How)
		assert.Zero(t, a.Added)
	}
	assert.Equal(t, before, all(t, empty))
	back := take(t, from, everything(t, empty))
	for _, a := range append(back.Mitts, back.Classes...) {
		assert.Equal(t, There, a.How, "known again where it came from")
	}
}

func everything(t *testing.T, s *Store) exportfile.File {
	t.Helper()
	f, err := s.ExportAll(t.Context())
	require.NoError(t, err)
	return f
}

// A mitt that was gone on with elsewhere gets the rest; an older state of it
// adds nothing; one that was changed in both places stands beside, once.
func TestImportGoesOn(t *testing.T) {
	here, there := lived(t), fresh(t)
	f, err := here.ExportMitt(t.Context(), 2)
	require.NoError(t, err)
	id := take(t, there, f).Mitts[0].ID
	m, err := there.Load(t.Context(), id)
	require.NoError(t, err)
	_, err = there.Append(t.Context(), id, m.Revision, purl(5, 1))
	require.NoError(t, err)
	_, err = there.NoteTry(t.Context(), id, "elsewhere", []byte(`{"key":"elsewhere"}`), nil)
	require.NoError(t, err)
	_, err = there.NoteCount(t.Context(), id, Count{Key: "n", Side: "right", Section: "cuff", Round: 3})
	require.NoError(t, err)
	require.NoError(t, there.Name(t.Context(), id, m.Revision+1, "with a purl"))

	on, err := there.ExportMitt(t.Context(), id)
	require.NoError(t, err)
	done := take(t, here, on).Mitts[0]
	assert.Equal(t, Arrived{ID: 2, How: Further, Added: 1}, done)
	tries := read(t, here, 2, Wants{Tries: true}).Tries
	assert.Len(t, tries, 1)
	c, ok := read(t, here, 2, Wants{}).Last["right"]
	assert.True(t, ok)
	assert.Equal(t, 3, c.Round)
	history := read(t, here, 2, Wants{History: true}).History
	assert.Equal(t, "with a purl", history[len(history)-1].Name)
	assert.Equal(t, Arrived{ID: 2, How: There}, take(t, here, f).Mitts[0], "the state of before")

	now, err := here.Load(t.Context(), 2)
	require.NoError(t, err)
	_, err = here.Append(t.Context(), 2, now.Revision, purl(6, 1))
	require.NoError(t, err)
	_, err = there.Append(t.Context(), id, m.Revision+1, purl(7, 1))
	require.NoError(t, err)
	otherwise, err := there.ExportMitt(t.Context(), id)
	require.NoError(t, err)
	beside := take(t, here, otherwise).Mitts[0]
	assert.Equal(t, Beside, beside.How)
	assert.NotEqual(t, int64(2), beside.ID)
	assert.Equal(t, Arrived{ID: beside.ID, How: There}, take(t, here, otherwise).Mitts[0])
	both := map[int64]chart.Marks{}
	for _, id := range []int64{2, beside.ID} {
		m, err := here.Load(t.Context(), id)
		require.NoError(t, err)
		both[id] = m.Marks
	}
	assert.Contains(t, both[2], cell(6, 1, chart.Stitches, "p").Anchor())
	assert.Contains(t, both[beside.ID], cell(7, 1, chart.Stitches, "p").Anchor())
}

// What the file itself refuses amid an import takes all of it back.
func TestImportIsWholeOrNothing(t *testing.T) {
	from, to := lived(t), fresh(t)
	f, err := from.ExportAll(t.Context())
	require.NoError(t, err)
	f.Classes[0].Revisions[0].Revision = 7 // past what reading would refuse
	_, err = to.Import(t.Context(), f)
	require.ErrorContains(t, err, "must follow")
	assert.Zero(t, rows(t, to, `SELECT 1 FROM mitt`))
	assert.Zero(t, rows(t, to, `SELECT 1 FROM try`))
	mittIn(t, to)
}

// What lets other machines in never leaves with an export.
func TestExportHasNoDevices(t *testing.T) {
	s := lived(t)
	token, _ := letIn(t, s, "phone")
	handle, _, _ := strings.Cut(token, ".")
	f, err := s.ExportAll(t.Context())
	require.NoError(t, err)
	var text strings.Builder
	require.NoError(t, exportfile.Write(&text, f))
	assert.NotContains(t, text.String(), handle)
}
