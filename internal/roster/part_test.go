package roster

import (
	"context"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/project"
)

// A part is given by places on the list; anything else is a fault.
func TestPartIsParsed(t *testing.T) {
	c := New("Tuesday")
	_, err := c.Add(make([]Student, 250)...)
	require.NoError(t, err)
	for text, want := range map[string]Part{
		"": {1, 250}, "1-100": {1, 100}, "101-200": {101, 200}, " 201 – 300 ": {201, 250}, "7": {7, 7}, "250-250": {250, 250},
	} {
		p, err := c.Part(text)
		require.NoError(t, err, text)
		assert.Equal(t, want, p, text)
	}
	for _, text := range []string{"0-10", "-", "a-b", "9-8", "1-", "-5", "251-300", "1-2-3", "99999999999999999999-1"} {
		_, err := c.Part(text)
		require.Error(t, err, text)
		assert.Equal(t, fault.Invalid, fault.KindOf(err))
		assert.Contains(t, err.Error(), "students: ")
	}
	assert.Equal(t, []Part{{1, 100}, {101, 200}, {201, 250}}, c.Parts(100))
	assert.Equal(t, "101-200", Part{101, 200}.String())
	none := New("Nobody")
	assert.Empty(t, none.Parts(100))
}

// Review returns the numbers that Line returns, keeps no outputs, and stops with
// its context. Completed, its lines are those of Line.
func TestReviewKeepsNumbersAndPlans(t *testing.T) {
	c, pl := New("Tuesday"), project.NewPlanner()
	doc := project.Samples()[0]
	c.SetPattern(Pattern{Mitt: 1, Name: doc.Name, Side: doc.Side, Sheet: doc.Sheet})
	table, err := Read([]byte("name\thand\tstitches\trounds\tgauge from\nAda\t18.5\t24\t32\t\nBertil\t21\t22\t30\tball band\nCelia\t16\t\t\t\nDilan\t\t\t\t\n"), c.Unit)
	require.NoError(t, err)
	_, err = c.Add(table.Students...)
	require.NoError(t, err)
	lines, err := c.Review(t.Context(), pl, c.Whole())
	require.NoError(t, err)
	require.Len(t, lines, 4)
	for i, l := range lines {
		whole := c.Line(pl, c.Students[i])
		assert.Nil(t, l.Out)
		assert.Equal(t, whole.Numbers(), l.Numbers())
		assert.Equal(t, whole.Metres(), l.Metres())
		assert.Equal(t, whole.Doubts, l.Doubts)
		assert.Equal(t, whole.Missing, l.Missing)
		assert.Equal(t, whole, c.Complete(pl, l))
	}
	some, err := c.Review(t.Context(), pl, Part{2, 3})
	require.NoError(t, err)
	assert.Equal(t, lines[1:3], some)
	gone, cancel := context.WithCancel(t.Context())
	cancel()
	_, err = c.Review(gone, pl, c.Whole())
	assert.ErrorIs(t, err, context.Canceled)
}
