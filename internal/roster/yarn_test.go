package roster

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/project"
)

// For each student of a class, the yarn in the teacher's table is the most that the
// handout names.
func TestYarnOfTableAndHandoutAgree(t *testing.T) {
	raw, err := os.ReadFile("../../testdata/fourteen.tsv")
	require.NoError(t, err)
	c, doc, pl := New("Tuesday"), project.Samples()[0], project.NewPlanner()
	c.SetPattern(Pattern{Mitt: 1, Name: doc.Name, Side: doc.Side, Sheet: doc.Sheet})
	table, err := Read(raw, c.Unit)
	require.NoError(t, err)
	_, err = c.Add(table.Students...)
	require.NoError(t, err)
	planned := 0
	for _, s := range c.Students {
		l := c.Line(pl, s)
		if l.Out == nil {
			continue
		}
		planned++
		handout := l.Out.Materials("", "")[0].Text
		numbers := l.Numbers()
		assert.Contains(t, handout, " to "+numbers[len(numbers)-1]+",", s.Name)
		assert.Contains(t, handout, fmt.Sprintf(" to %d m,", l.Metres()), s.Name)
	}
	assert.GreaterOrEqual(t, planned, 13)
	assert.Equal(t, 14, strings.Count(string(raw), "\n")-1)
}
