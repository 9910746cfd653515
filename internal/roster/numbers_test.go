package roster

import (
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/mitt"
	"thenar/internal/sheet"
)

// A class can fix every number that the table gives it, and no other; it
// stands in the mitt of every student.
func TestEveryNumberOfAClassCanBeFixed(t *testing.T) {
	for _, n := range mitt.Fixable() {
		c := New("Tuesday")
		c.SetPattern(Pattern{Mitt: 1, Name: "Mitts", Side: "right", Sheet: sheet.Sheet{}})
		c.FixTyped(map[string]string{n.Path(): "3"})
		if !slices.Contains(mitt.ForClass(), n) {
			assert.Empty(t, c.Fixed, "%s", n)
			c.Fix(n.Key(), "3")
			assert.ErrorContains(t, c.Check(), "has no number", "%s", n)
			continue
		}
		c.Fix(n.Key(), "wide")
		assert.ErrorContains(t, c.Check(), n.Path()+": is wide", "%s", n)
		low, high := n.Range()
		c.Fix(n.Key(), strconv.Itoa(min(max(low, 12), high)))
		require.NoError(t, c.Check(), "%s", n)
		assert.Equal(t, c.Fixed[n.Key()], c.Document(Student{Name: "Ada"}).Sheet.Given(n.Path()), "%s", n)
	}
}

// A student may have every number that the table says, and a pasted table may
// hold it under a heading.
func TestEveryNumberOfAStudentIsRead(t *testing.T) {
	for _, n := range mitt.OfStudent() {
		assert.Contains(t, Paths(), n.Path())
		assert.Contains(t, Readable(), n.Path())
		assert.NotEmpty(t, synonyms[n.Path()], "%s has no heading in a table", n)
	}
}
