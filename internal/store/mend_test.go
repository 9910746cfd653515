package store

import (
	"bytes"
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/exportfile"
	"thenar/internal/fault"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
)

// Keys that an earlier version took can't be written or read back: they are
// replaced in the file, each different from the others, and that is told. The
// same file taken in where it comes from, or twice elsewhere, doubles nothing.
func TestExportMendsKeys(t *testing.T) {
	here := fresh(t)
	id, err := here.Create(t.Context(), []byte(`{"name":"first","side":"right","sheet":{}}`))
	require.NoError(t, err)
	keys := []string{"good", "\xff", "\xfe", "a\x00b", "a\nb", "", "\ufffd", "\ufffd 2"}
	for _, key := range keys {
		_, err := here.NoteTry(t.Context(), id, key, []byte(`{}`), nil)
		require.NoError(t, err)
		_, err = here.NoteCount(t.Context(), id, Count{Key: key, Side: "right", Section: "cuff", Round: 1})
		require.NoError(t, err)
		_, err = here.Draw(t.Context(), id, Request{Kind: Do, Key: key, Edits: purl(3, 1)})
		require.NoError(t, err)
	}
	f, err := here.ExportMitt(t.Context(), id)
	require.NoError(t, err)
	assert.Len(t, f.Mended, 5+5+4, "a stroke without a key is right")
	assert.Contains(t, f.Mended, "mitt 1, try 2: its key")
	seen := map[string]bool{}
	for _, try := range f.Mitts[0].Tries {
		assert.False(t, seen[try.Key], "%q", try.Key)
		seen[try.Key] = true
	}
	assert.True(t, seen["good"] && seen["\ufffd"] && seen["\ufffd 2"], "right keys stay")

	there := fresh(t)
	assert.Equal(t, Fresh, take(t, there, f).Mitts[0].How)
	assert.Equal(t, There, take(t, there, f).Mitts[0].How)
	assert.Equal(t, There, take(t, here, f).Mitts[0].How)
	for name, s := range map[string]*Store{"here": here, "there": there} {
		again, err := s.ExportAll(t.Context())
		require.NoError(t, err)
		require.Len(t, again.Mitts, 1, name)
		assert.Equal(t, f.Mitts[0].Tries, again.Mitts[0].Tries, name)
		assert.Equal(t, f.Mitts[0].Counts, again.Mitts[0].Counts, name)
		assert.Equal(t, f.Mitts[0].Revisions, again.Mitts[0].Revisions, name)
	}
}

// A mitt that was painted stroke by stroke, and copied with all its cells in
// one, can be moved; one with more cells than any mitt has can't be painted.
func TestManyMarksMove(t *testing.T) {
	s := fresh(t)
	id, err := s.Create(t.Context(), []byte(`{"name":"first","side":"right","sheet":{}}`))
	require.NoError(t, err)
	n := testenv.Cases(6_000, 60_000)
	var painted []chart.Edit
	for i := range n {
		painted = append(painted, chart.Edit{Section: stitch.Hand, Round: 1 + i/200, Column: fmt.Sprint("H", 1+i%200), Layer: chart.Colours, Value: "a"})
	}
	_, err = s.Append(t.Context(), id, 1, painted)
	require.NoError(t, err)
	f, err := s.ExportMitt(t.Context(), id)
	require.NoError(t, err)
	var file bytes.Buffer
	require.NoError(t, exportfile.Write(&file, f))
	read, err := exportfile.Read(t.Context(), file.Bytes())
	require.NoError(t, err)
	done, err := fresh(t).Import(t.Context(), read)
	require.NoError(t, err)
	assert.Equal(t, Fresh, done.Mitts[0].How)

	var more []chart.Edit
	for i := range chart.MaxMarks + 1 {
		more = append(more, chart.Edit{Section: stitch.Hand, Round: 1 + i/1000, Column: fmt.Sprint("H", 1+i%1000), Layer: chart.Colours, Value: "a"})
	}
	_, err = s.Append(t.Context(), id, 1, more)
	assert.Equal(t, fault.Invalid, fault.KindOf(err))
	now, err := s.Load(t.Context(), id)
	require.NoError(t, err)
	assert.Len(t, now.Marks, n, "nothing of it was drawn")
}
