package store

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/fault"
)

// rewriteTo stands for a project: it writes one document whatever is asked.
func rewriteTo(text string) func([]byte, []chart.Edit) ([]byte, []chart.Edit, error) {
	return func([]byte, []chart.Edit) ([]byte, []chart.Edit, error) {
		return []byte(text), []chart.Edit{{Layer: chart.Sheet, Column: "unit", Value: "cm"}}, nil
	}
}

var toMM = []chart.Edit{{Layer: chart.Sheet, Column: "unit", Value: "mm"}}

func TestTryIsNotedOnce(t *testing.T) {
	s := fresh(t)
	id := mittIn(t, s)
	first, err := s.NoteTry(t.Context(), id, "k1", []byte(`{"note":"tight"}`), []byte("jpeg"))
	require.NoError(t, err)
	again, err := s.NoteTry(t.Context(), id, "k1", []byte(`{"note":"tight"}`), nil)
	require.NoError(t, err)
	assert.Equal(t, first, again)
	other, err := s.NoteTry(t.Context(), id, "k1", []byte(`{"note":"another, after going back"}`), nil)
	require.NoError(t, err)
	assert.NotEqual(t, first, other, "nothing that was typed is lost")
	list := read(t, s, id, Wants{Tries: true}).Tries
	require.Len(t, list, 2)
	assert.JSONEq(t, `{"note":"tight"}`, string(list[0].Record))
	assert.True(t, list[0].Photo)
	assert.EqualValues(t, 1, list[0].Revision)
	assert.Nil(t, list[0].Answer)
	photo, err := s.Photo(t.Context(), id, first)
	require.NoError(t, err)
	assert.Equal(t, "jpeg", string(photo))
	_, err = s.Photo(t.Context(), id+1, first)
	assert.Equal(t, fault.NotFound, fault.KindOf(err))
	_, err = s.NoteTry(t.Context(), 99, "k", []byte(`{}`), nil)
	assert.Equal(t, fault.NotFound, fault.KindOf(err))
}

// An answer is one stroke of the sheet with what it came from; undone, the
// sheet stands as before and the answer is still told. A mitt that was
// changed meanwhile takes no answer.
func TestAnswerLeadsToARevision(t *testing.T) {
	s := fresh(t)
	id := mittIn(t, s)
	try, err := s.NoteTry(t.Context(), id, "k1", []byte(`{}`), nil)
	require.NoError(t, err)
	r := Request{Kind: Do, After: 1, Key: "v1", Edits: toMM, Rewrite: rewriteTo(`{"name": "corrected"}`)}
	answer := func(try int64, text string) (Committed, error) {
		return s.Commit(t.Context(), id, Change{After: 1, Strokes: []Request{r}, Answer: &Answer{Try: try, Text: []byte(text)}, Moment: "after the try"})
	}
	done, err := answer(try, `{"accepted":["cuff"]}`)
	require.NoError(t, err)
	assert.EqualValues(t, 3, done.Revision, "the decision, and the stroke that made it")
	list := read(t, s, id, Wants{Habits: true}).Habits.Tries
	require.NotNil(t, list[0].Answer)
	assert.EqualValues(t, 1, list[0].Answer.Before)
	assert.EqualValues(t, 3, list[0].Answer.Revision)

	_, err = answer(try, `{"accepted":["hand"]}`)
	require.NoError(t, err, "the same again, since its answer was lost")
	list = read(t, s, id, Wants{Tries: true}).Tries
	assert.JSONEq(t, `{"accepted":["cuff"]}`, string(list[0].Answer.Text))
	r.Key = "v2"
	_, err = answer(try, `{}`)
	assert.Equal(t, fault.Conflict, fault.KindOf(err), "revision 1 is not the newest decision")
	_, err = answer(77, `{}`)
	assert.Equal(t, fault.NotFound, fault.KindOf(err))
	m, err := s.Load(t.Context(), id)
	require.NoError(t, err)
	assert.JSONEq(t, `{"name": "corrected"}`, string(m.Document))
	assert.True(t, m.CanUndo)
}

func TestWhatIsUnlearnedStaysUnlearned(t *testing.T) {
	s := fresh(t)
	id := mittIn(t, s)
	require.NoError(t, s.Unlearn(t.Context(), "cuff"))
	unlearned := func() map[string]int64 {
		w, err := s.ReadWork(t.Context(), id, Wants{Habits: true})
		require.NoError(t, err)
		return w.Habits.Unlearned
	}
	assert.Empty(t, unlearned(), "nothing was learned yet")
	try, err := s.NoteTry(t.Context(), id, "k", []byte(`{}`), nil)
	require.NoError(t, err)
	_, err = s.Commit(t.Context(), id, Change{After: 1, Answer: &Answer{Try: try, Text: []byte(`{}`)}})
	require.NoError(t, err)
	require.NoError(t, s.Unlearn(t.Context(), "cuff"))
	assert.Equal(t, map[string]int64{"cuff": 1}, unlearned())
}

// Each hand of the pair has its own count; the last one stands, and one whose
// answer was lost is noted once, whatever came after it.
func TestCountsOfBothHands(t *testing.T) {
	s := fresh(t)
	id := mittIn(t, s)
	assert.Empty(t, read(t, s, id, Wants{}).Last)
	for _, c := range []Count{
		{Key: "a", Side: "right", Section: "cuff", Round: 1},
		{Key: "b", Side: "right", Section: "cuff", Round: 2},
		{Key: "c", Side: "left"},
		{Key: "a", Side: "right", Section: "cuff", Round: 1},
	} {
		revision, err := s.NoteCount(t.Context(), id, c)
		require.NoError(t, err)
		assert.EqualValues(t, 1, revision)
	}
	w := read(t, s, id, Wants{Counts: true})
	assert.Equal(t, 2, w.Last["right"].Round)
	assert.Contains(t, w.Last, "left")
	assert.Empty(t, w.Last["left"].Section)
	assert.Len(t, w.Counts, 3)
	assert.Equal(t, w.Last, read(t, s, id, Wants{}).Last)
	_, err := s.NoteCount(t.Context(), 99, Count{Key: "x", Side: "right"})
	assert.Equal(t, fault.NotFound, fault.KindOf(err))
}
