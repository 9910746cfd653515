package store

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/fault"
)

// A stroke whose answer was lost is sent again with its key: it stands once,
// and the answer is the one that was lost.
func TestAStrokeIsDrawnOnce(t *testing.T) {
	s := fresh(t)
	id := mittIn(t, s)
	r := Request{Kind: Do, After: 1, Key: "k1", Edits: purl(1, 1)}
	first, err := s.Draw(t.Context(), id, r)
	require.NoError(t, err)
	_, err = s.Append(t.Context(), id, 2, purl(2, 2))
	require.NoError(t, err)
	again, err := s.Draw(t.Context(), id, r)
	require.NoError(t, err)
	assert.Equal(t, purl(2, 2), again.Later)
	again.Later = nil
	assert.Equal(t, first, again)
	r.After = 3
	again, err = s.Draw(t.Context(), id, r)
	require.NoError(t, err)
	assert.Equal(t, purl(2, 2), again.Later, "also for a page that knows what came after it")
	undo := Request{Kind: Undo, After: 3, Key: "k2"}
	_, err = s.Draw(t.Context(), id, undo)
	require.NoError(t, err)
	_, err = s.Draw(t.Context(), id, undo)
	require.NoError(t, err)
	m, err := s.Load(t.Context(), id)
	require.NoError(t, err)
	assert.Equal(t, marksOf(purl(1, 1)...), m.Marks, "one undo took back one stroke")
	other := mittIn(t, s)
	r.After = 1
	_, err = s.Draw(t.Context(), other, r)
	require.NoError(t, err, "another mitt's keys are its own")
}

// rewrite appends the values to the document, and takes them off again.
func rewrite(document []byte, edits []chart.Edit) ([]byte, []chart.Edit, error) {
	back := []chart.Edit{}
	for _, e := range edits {
		if e.Value == "" {
			document = bytes.TrimRight(document, " ")
			back = append(back, chart.Edit{Layer: chart.Sheet, Column: "x", Value: "y"})
			continue
		}
		document = append(document, ' ')
		back = append(back, chart.Edit{Layer: chart.Sheet, Column: "x"})
	}
	return document, back, nil
}

// A stroke may change the sheet as well: it makes a decision of its own, and
// one undo takes both back.
func TestAStrokeThatChangesTheSheet(t *testing.T) {
	s := fresh(t)
	id := mittIn(t, s)
	edits := append(purl(1, 1), chart.Edit{Layer: chart.Sheet, Column: "x", Value: "y"})
	applied, err := s.Draw(t.Context(), id, Request{Kind: Do, After: 1, Edits: edits, Rewrite: rewrite})
	require.NoError(t, err)
	assert.EqualValues(t, 3, applied.Revision)
	m, err := s.Load(t.Context(), id)
	require.NoError(t, err)
	assert.EqualValues(t, 2, m.Decided)
	assert.Equal(t, `{"name": "first"} `, string(m.Document))
	_, err = s.Draw(t.Context(), id, Request{Kind: Undo, After: 3, Rewrite: rewrite})
	require.NoError(t, err)
	m, err = s.Load(t.Context(), id)
	require.NoError(t, err)
	assert.Equal(t, `{"name": "first"}`, string(m.Document))
	assert.Empty(t, m.Marks)
	_, err = s.Draw(t.Context(), id, Request{Kind: Redo, After: 5})
	assert.Equal(t, fault.Internal, fault.KindOf(err), "without a Rewrite nothing is half done")
	after, err := s.Load(t.Context(), id)
	require.NoError(t, err)
	assert.Equal(t, m.Revision, after.Revision)
}

// Every moment can be looked at, with snapshots on the way; a name stands at
// its revision until another is given.
func TestMoments(t *testing.T) {
	s := fresh(t)
	s.every = 3
	id := mittIn(t, s)
	want := []chart.Marks{1: {}}
	for i := 1; i <= 8; i++ {
		_, err := s.Append(t.Context(), id, int64(i), purl(i, 1))
		require.NoError(t, err)
		now := chart.Marks{}
		now.Apply(want[i].Edits())
		now.Apply(purl(i, 1))
		want = append(want, now)
	}
	for i := 1; i <= 9; i++ {
		m := read(t, s, id, earlier(int64(i))).At(int64(i))
		require.NotNil(t, m)
		assert.Equal(t, want[i], m.Marks, i)
		assert.EqualValues(t, i, m.Revision)
	}
	for _, i := range []int64{0, 10} {
		assert.Nil(t, read(t, s, id, earlier(i)).At(i))
		assert.Equal(t, fault.NotFound, fault.KindOf(s.Name(t.Context(), id, i, "x")))
	}
	require.NoError(t, s.Name(t.Context(), id, 4, "before the class"))
	require.NoError(t, s.Name(t.Context(), id, 4, "the class’s own"))
	history := read(t, s, id, Wants{History: true}).History
	assert.Equal(t, "the class’s own", history[3].Name)
	assert.Empty(t, history[4].Name)
}

// A long history is read a page at a time, each with the document that stood
// before it and the earlier revisions that have a name.
func TestHistoryComesInPages(t *testing.T) {
	s := fresh(t)
	id := mittIn(t, s)
	for i := 1; i <= maxPage+20; i++ {
		_, err := s.Append(t.Context(), id, int64(i), purl(i, 1))
		require.NoError(t, err)
	}
	require.NoError(t, s.Name(t.Context(), id, 5, "early"))
	require.NoError(t, s.Name(t.Context(), id, 6, "named by mistake"))
	require.NoError(t, s.Name(t.Context(), id, 6, ""))
	w := read(t, s, id, Wants{History: true})
	require.Len(t, w.History, maxPage)
	assert.EqualValues(t, maxPage+21, w.History[maxPage-1].Revision)
	assert.Equal(t, purl(maxPage+20, 1), w.History[maxPage-1].Edits)
	assert.Equal(t, `{"name": "first"}`, string(w.Stood))
	require.Len(t, w.Named, 1)
	assert.Equal(t, "early", w.Named[0].Name)

	w = read(t, s, id, Wants{History: true, Before: w.History[0].Revision})
	require.Len(t, w.History, 21)
	assert.Equal(t, "decision", w.History[0].Kind)
	assert.Equal(t, "early", w.History[4].Name)
	assert.Nil(t, w.Stood)
	assert.Empty(t, w.Named)
	assert.Empty(t, read(t, s, id, Wants{History: true, Before: 1}).History)
}

func TestSince(t *testing.T) {
	s := fresh(t)
	id := mittIn(t, s)
	_, err := s.Append(t.Context(), id, 1, purl(1, 1))
	require.NoError(t, err)
	_, err = s.Append(t.Context(), id, 2, purl(2, 1))
	require.NoError(t, err)
	n, err := s.Since(t.Context(), id, 2)
	require.NoError(t, err)
	n.Restored = 0 // TestRestoreWhileOpen looks at it
	assert.Equal(t, News{Strokes: []Drawn{{3, purl(2, 1)}}, Revision: 3, Decided: 1, CanUndo: true}, n)
	n, err = s.Since(t.Context(), id, 3)
	require.NoError(t, err)
	assert.Empty(t, n.Strokes)
	_, err = s.Since(t.Context(), 99, 0)
	assert.Equal(t, fault.NotFound, fault.KindOf(err))
}

func TestMotifs(t *testing.T) {
	s := fresh(t)
	star := chart.Motif{Name: "star", Cells: []chart.MotifCell{{Left: 1, Up: 2, Stitch: "p", Colour: "b"}}}
	id, err := s.KeepMotif(t.Context(), star)
	require.NoError(t, err)
	_, err = s.KeepMotif(t.Context(), chart.Motif{Name: "bird", Cells: star.Cells})
	require.NoError(t, err)
	list, err := s.Motifs(t.Context())
	require.NoError(t, err)
	require.Len(t, list, 2)
	assert.Equal(t, "bird", list[0].Motif.Name)
	assert.Equal(t, Motif{id, star}, list[1])
	require.NoError(t, s.RemoveMotif(t.Context(), id))
	assert.Equal(t, fault.NotFound, fault.KindOf(s.RemoveMotif(t.Context(), id)))
	list, err = s.Motifs(t.Context())
	require.NoError(t, err)
	assert.Len(t, list, 1)
}
