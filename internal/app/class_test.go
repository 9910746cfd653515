package app

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/roster"
)

// Two windows that change a class at the same time lose nothing: the later one
// is worked out again on what the earlier one saved. Whoever comes too late
// three times is told, and nothing of theirs is saved.
func TestChangeOfAClassIsWorkedOutAgain(t *testing.T) {
	t.Parallel()
	a := fresh(t)
	class := many(t, a, 2)
	for between, wants := range map[int]fault.Kind{1: 0, 2: 0, 3: fault.Conflict} {
		asked := 0
		_, err := a.changeClass(t.Context(), class, func(doc *roster.Class) error {
			if asked++; asked <= between {
				_, _, err := a.AddStudent(t.Context(), class, Texts{"name": fmt.Sprintf("Between %d/%d", asked, between)})
				require.NoError(t, err)
			}
			doc.Note = fmt.Sprintf("typed %d", between)
			return nil
		})
		if wants != 0 {
			assert.Equal(t, wants, fault.KindOf(err))
		} else {
			require.NoError(t, err)
		}
		assert.Equal(t, min(between+1, maxAttempts), asked)
		c, err := a.Class(t.Context(), class)
		require.NoError(t, err)
		assert.Equal(t, wants == 0, c.Doc.Note == fmt.Sprintf("typed %d", between))
	}
	c, err := a.Class(t.Context(), class)
	require.NoError(t, err)
	assert.Len(t, c.Lines, 2+1+2+3)
}

// What was changed elsewhere since a form was opened is not written over, of a
// class and of a student; other parts of the class may have been.
func TestFormsOfAClassKnowWhatTheyShow(t *testing.T) {
	t.Parallel()
	a := fresh(t)
	class := many(t, a, 1)
	c, err := a.Class(t.Context(), class)
	require.NoError(t, err)
	one, err := a.Student(t.Context(), class, c.Lines[0].Student.ID)
	require.NoError(t, err)
	_, _, err = a.AddStudent(t.Context(), class, Texts{"name": "Zita"})
	require.NoError(t, err)
	unsaved, err := a.SaveClass(t.Context(), class, c.Stamp, Texts{"place": "the barn"})
	require.NoError(t, err)
	assert.Nil(t, unsaved, "another student is nothing of the form")
	unsaved, err = a.SaveClass(t.Context(), class, c.Stamp, Texts{"place": "the mill"})
	require.NoError(t, err)
	require.NotNil(t, unsaved)
	assert.Equal(t, "the barn", unsaved.Saved.Place)
	assert.Equal(t, "the mill", unsaved.Doc.Place)
	again, err := a.SaveClass(t.Context(), class, unsaved.Stamp, Texts{"place": "the mill"})
	require.NoError(t, err)
	assert.Nil(t, again)

	left, err := a.SaveStudent(t.Context(), class, one.ID, one.Stamp, Texts{"name": "Ada"})
	require.NoError(t, err)
	assert.Nil(t, left)
	left, err = a.SaveStudent(t.Context(), class, one.ID, one.Stamp, Texts{"name": "Ida"})
	require.NoError(t, err)
	require.NotNil(t, left)
	assert.Equal(t, "Ada", left.Saved.Name)
	assert.Equal(t, "Ida", left.Student.Student.Name)
}
