package store

import (
	"fmt"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
)

func TestClassIsKept(t *testing.T) {
	s := fresh(t)
	list, _, err := s.Classes(t.Context())
	require.NoError(t, err)
	assert.Empty(t, list)
	first, err := s.CreateClass(t.Context(), []byte(`{"name": "Tuesday"}`))
	require.NoError(t, err)
	second, err := s.CreateClass(t.Context(), []byte(`{}`))
	require.NoError(t, err)
	revision, err := s.SaveClass(t.Context(), first, 1, []byte(`{"name":  "Wednesday"}`))
	require.NoError(t, err)
	assert.EqualValues(t, 2, revision)

	c, err := s.LoadClass(t.Context(), first)
	require.NoError(t, err)
	assert.EqualValues(t, 2, c.Revision)
	assert.Equal(t, `{"name":  "Wednesday"}`, string(c.Document))
	list, _, err = s.Classes(t.Context())
	require.NoError(t, err)
	require.Len(t, list, 2)
	assert.Equal(t, []int64{first, second}, []int64{list[0].ID, list[1].ID}, "the one changed last first")

	_, err = s.LoadClass(t.Context(), 99)
	assert.Equal(t, fault.NotFound, fault.KindOf(err))
	_, err = s.SaveClass(t.Context(), 99, 1, []byte(`{}`))
	assert.Equal(t, fault.NotFound, fault.KindOf(err))
	_, err = s.CreateClass(t.Context(), []byte(`{`))
	require.Error(t, err, "what is no JSON is not kept")
}

// What was saved in between is not lost; the same again is no conflict and no
// new revision.
func TestClassConflict(t *testing.T) {
	s := fresh(t)
	id, err := s.CreateClass(t.Context(), []byte(`{}`))
	require.NoError(t, err)
	_, err = s.SaveClass(t.Context(), id, 1, []byte(`{"a": 1}`))
	require.NoError(t, err)
	for _, after := range []int64{0, 1, 3} {
		_, err = s.SaveClass(t.Context(), id, after, []byte(`{"b": 2}`))
		assert.Equal(t, fault.Conflict, fault.KindOf(err), "after %d", after)
	}
	revision, err := s.SaveClass(t.Context(), id, 1, []byte(`{"a": 1}`))
	require.NoError(t, err)
	assert.EqualValues(t, 2, revision)
}

// Many windows that go on from the newest state lose nothing.
//
//thenar:race
func TestClassManyWriters(t *testing.T) {
	s := fresh(t)
	id, err := s.CreateClass(t.Context(), []byte(`[]`))
	require.NoError(t, err)
	var wait sync.WaitGroup
	for i := range 8 {
		wait.Add(1)
		go func() {
			defer wait.Done()
			for n := range 5 {
				for {
					c, err := s.LoadClass(t.Context(), id)
					if !assert.NoError(t, err) {
						return
					}
					doc := fmt.Sprintf(`%s,"%d-%d"]`, string(c.Document[:len(c.Document)-1]), i, n)
					if string(c.Document) == "[]" {
						doc = fmt.Sprintf(`["%d-%d"]`, i, n)
					}
					_, err = s.SaveClass(t.Context(), id, c.Revision, []byte(doc))
					if fault.KindOf(err) != fault.Conflict || err == nil {
						assert.NoError(t, err)
						break
					}
				}
			}
		}()
	}
	wait.Wait()
	c, err := s.LoadClass(t.Context(), id)
	require.NoError(t, err)
	assert.EqualValues(t, 41, c.Revision)
	for i := range 8 {
		for n := range 5 {
			assert.Contains(t, string(c.Document), fmt.Sprintf(`"%d-%d"`, i, n))
		}
	}
}

// The file itself refuses what the store never does.
func TestClassIsAppendOnly(t *testing.T) {
	s := fresh(t)
	_, err := s.CreateClass(t.Context(), []byte(`{}`))
	require.NoError(t, err)
	for statement, says := range map[string]string{
		`UPDATE class SET created = ''`:           "a class is not changed",
		`DELETE FROM class`:                       "a class is not deleted",
		`UPDATE class_decision SET document = ''`: "a class decision is not changed",
		`DELETE FROM class_decision`:              "a class decision is not deleted",
		`INSERT OR REPLACE INTO class_decision (class, revision, at, document) VALUES (1, 1, '', '{}')`: "must follow",
		`INSERT INTO class_decision (class, revision, at, document) VALUES (1, 3, '', '{}')`:            "must follow",
	} {
		_, err := s.writer.ExecContext(t.Context(), statement)
		require.Error(t, err, statement)
		assert.Contains(t, err.Error(), says)
	}
}
