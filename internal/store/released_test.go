package store

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/exportfile"
	"thenar/internal/testenv"
)

// released are files as the program wrote them when a schema was its newest:
// testdata/schema-N.sqlite, with something in each of its tables. A new schema
// brings the file of the one before it here.
func released(t *testing.T) (paths []string) {
	t.Helper()
	for n := 1; n < NewestSchema(); n++ {
		raw, err := os.ReadFile(filepath.Join("testdata", fmt.Sprintf("schema-%d.sqlite", n)))
		require.NoError(t, err, "every released schema has its file")
		path := filepath.Join(t.TempDir(), "thenar.db")
		require.NoError(t, os.WriteFile(path, raw, 0o600))
		paths = append(paths, path)
	}
	return paths
}

// Every file of an earlier program is brought on with all that is in it, and
// can be written, exported and taken in elsewhere; as it was, it is kept.
func TestEveryReleasedSchemaIsBroughtOn(t *testing.T) {
	for i, path := range released(t) {
		n := i + 1
		t.Run(fmt.Sprintf("schema %d", n), func(t *testing.T) {
			before, err := os.ReadFile(path)
			require.NoError(t, err)
			s := openAt(t, path)
			assert.Equal(t, 1, rows(t, s, `SELECT 1 FROM pragma_user_version WHERE user_version = ?`, NewestSchema()))
			list, err := s.List(t.Context())
			require.NoError(t, err)
			require.Len(t, list, 3)
			m, err := s.Load(t.Context(), 1)
			require.NoError(t, err)
			assert.Contains(t, string(m.Document), "Reading mitts, finished")
			assert.Equal(t, marksOf(cell(3, 1, chart.Stitches, "p"), cell(4, 2, chart.Colours, "b")), m.Marks, "drawn, taken back, brought again")
			alone := 0
			if n >= 3 {
				tries := read(t, s, 1, Wants{Tries: true}).Tries
				require.Len(t, tries, 1)
				assert.NotNil(t, tries[0].Answer)
				alone++
			}
			if n >= 5 {
				classes, _, err := s.Classes(t.Context())
				require.NoError(t, err)
				require.Len(t, classes, 1)
				assert.Contains(t, string(classes[0].Document), "Bertil")
			}
			_, err = s.Append(t.Context(), 1, m.Revision, purl(9, 1))
			require.NoError(t, err)

			kept, err := s.Backups()
			require.NoError(t, err)
			require.Len(t, kept, 1)
			assert.Equal(t, fmt.Sprintf("schema-%d", n), kept[0].Why)
			old := filepath.Join(t.TempDir(), "old.db")
			raw, err := os.ReadFile(kept[0].Path)
			require.NoError(t, err)
			require.NoError(t, os.WriteFile(old, raw, 0o600))
			require.NoError(t, verify(t.Context(), old))
			assert.Len(t, raw, len(before), "the same, packed as it was")

			f, err := s.ExportAll(t.Context())
			require.NoError(t, err)
			var tries int
			for _, m := range f.Mitts {
				tries += len(m.Tries)
			}
			assert.Equal(t, alone, tries)
			done, err := fresh(t).Import(t.Context(), reread(t, f))
			require.NoError(t, err)
			assert.Len(t, done.Mitts, 3)
		})
	}
}

// reread is a file as another program reads it.
func reread(t *testing.T, f exportfile.File) exportfile.File {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, exportfile.Write(&b, f))
	require.NoError(t, testenv.Validate(t, testenv.Schema(t, "export.schema.json"), b.Bytes()))
	again, err := exportfile.Read(t.Context(), b.Bytes())
	require.NoError(t, err)
	return again
}

// A backup of an earlier program can be put back into a file of this one.
func TestRestoreOfAnEarlierSchema(t *testing.T) {
	path := filepath.Join(t.TempDir(), "thenar.db")
	s := openAt(t, path)
	mittIn(t, s)
	for _, backup := range released(t) {
		_, err := Restore(t.Context(), path, backup)
		require.NoError(t, err)
		assert.Len(t, names(t, s), 3)
		mittIn(t, s)
	}
}
