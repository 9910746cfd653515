package app

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
)

// remarks returns what stands beside the students of a class, in their order.
func remarks(t *testing.T, a *App, class int64) (names []string, list []Remark) {
	t.Helper()
	c, err := a.Class(t.Context(), class)
	require.NoError(t, err)
	for _, s := range c.Doc.Students {
		names, list = append(names, s.Name), append(list, s.Remark())
	}
	return names, list
}

// Remarks of all students and one move are saved together. What a window didn't
// change leaves alone what another one saved; what both changed comes back, as it
// was typed, and is saved once it stands on what it saw.
func TestRemarksAreSavedBesideOtherWindows(t *testing.T) {
	t.Parallel()
	a := fresh(t)
	class := many(t, a, 3)
	none, left, late := Remark{}, Remark{FromLeft: true}, Remark{Note: "comes late"}
	unsaved, err := a.SaveRemarks(t.Context(), class, []TypedRemark{{1, none, left}, {2, none, Remark{Note: " comes late "}}, {3, none, none}}, &Move{3, 1})
	require.NoError(t, err)
	require.Nil(t, unsaved)
	names, list := remarks(t, a, class)
	assert.Equal(t, []string{"Student 3", "Student 1", "Student 2"}, names)
	assert.Equal(t, []Remark{none, left, late}, list)

	// A second window, opened before that, knows of none of it.
	typed := []TypedRemark{{1, none, none}, {2, none, Remark{Note: "comes early"}}, {3, none, left}}
	unsaved, err = a.SaveRemarks(t.Context(), class, typed, &Move{3, 0})
	require.NoError(t, err)
	require.NotNil(t, unsaved)
	assert.Equal(t, []int{2}, unsaved.Others)
	assert.Equal(t, late, unsaved.Saved[2])
	assert.Equal(t, "comes early", unsaved.Lines[2].Student.Note, "what was typed is not lost")
	assert.Equal(t, fault.Conflict, fault.KindOf(unsaved.Err()))
	_, still := remarks(t, a, class)
	assert.Equal(t, list, still, "nothing of it is saved")
	typed[1].Was = unsaved.Saved[2]
	unsaved, err = a.SaveRemarks(t.Context(), class, typed, nil)
	require.NoError(t, err)
	require.Nil(t, unsaved)
	_, list = remarks(t, a, class)
	assert.Equal(t, []Remark{left, left, {Note: "comes early"}}, list, "the first one stays as the other window left it")
}

// A note that can't be kept is told at its student, a student who is gone by name
// of the field; sent twice, a remark is saved once.
func TestRemarksThatCantBeKept(t *testing.T) {
	t.Parallel()
	a := fresh(t)
	class := many(t, a, 2)
	long := Remark{Note: strings.Repeat("x", 500)}
	unsaved, err := a.SaveRemarks(t.Context(), class, []TypedRemark{{2, Remark{}, long}}, &Move{2, 1})
	require.NoError(t, err)
	require.NotNil(t, unsaved)
	assert.Contains(t, unsaved.Faults[2], "200")
	assert.ErrorContains(t, unsaved.Err(), "The note on Student 2")
	assert.Equal(t, long.Note, unsaved.Lines[1].Student.Note)
	names, _ := remarks(t, a, class)
	assert.Equal(t, []string{"Student 1", "Student 2"}, names)

	for range 2 {
		unsaved, err = a.SaveRemarks(t.Context(), class, []TypedRemark{{1, Remark{}, Remark{Note: "tea"}}}, nil)
		require.NoError(t, err)
		require.Nil(t, unsaved)
	}
	_, err = a.SaveRemarks(t.Context(), class, nil, &Move{7, 1})
	require.ErrorContains(t, err, "move: names nobody on the list")
	_, err = a.SaveRemarks(t.Context(), class, []TypedRemark{{7, Remark{}, Remark{Note: "x"}}}, nil)
	assert.Equal(t, fault.NotFound, fault.KindOf(err))
	unsaved, err = a.SaveRemarks(t.Context(), class, []TypedRemark{{Student: 7}}, nil)
	require.NoError(t, err)
	assert.Nil(t, unsaved, "nothing was typed about who is gone")
}
