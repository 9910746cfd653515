package roster

import (
	"fmt"
	"maps"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/mitt"
	"thenar/internal/project"
)

// The teacher's table has the columns that the pattern's mitts have, called as they are
// made, and what is cast on includes the seam's stitches.
func TestColumnsAreThoseOfThePattern(t *testing.T) {
	for _, one := range []struct {
		sets  map[string]string
		heads []string
		seam  string
	}{
		{nil, []string{"cast on", "increases", "rounds", "held", "thumb", "above"}, ""},
		{map[string]string{mitt.PathFlat: "true"}, []string{"cast on", "increases", "rows", "held", "thumb", "above"}, "Cast on with 2 for the seam."},
		{map[string]string{mitt.PathConstruction: "straight"}, []string{"cast on", "to thumb", "waste yarn", "thumb", "above"}, ""},
		{map[string]string{mitt.PathConstruction: "slit"}, []string{"cast on", "opening", "above"}, ""},
		{map[string]string{mitt.PathConstruction: "none"}, []string{"cast on", "above"}, ""},
		{map[string]string{mitt.PathDirection: "down"}, []string{"bind off", "decreases", "rounds", "into hand", "thumb", "above"}, ""},
	} {
		doc := project.Samples()[0]
		doc.Sheet = doc.Sheet.Clone()
		maps.Copy(doc.Sheet, one.sets)
		class := New("Tuesday")
		class.SetPattern(Pattern{Mitt: 1, Name: doc.Name, Side: doc.Side, Sheet: doc.Sheet})
		table, err := Read([]byte("name\thand\tstitches\trounds\nAda\t18.5\t24\t32\nFinn\t\t\t\n"), class.Unit)
		require.NoError(t, err)
		_, err = class.Add(table.Students...)
		require.NoError(t, err)
		columns := NumberColumns(class.Names())
		var heads []string
		for _, c := range columns[1 : len(columns)-1] {
			heads = append(heads, c.Head)
		}
		assert.Equal(t, one.heads, heads)
		assert.Equal(t, one.seam, class.Names().SeamWords())
		lines, err := class.Review(t.Context(), project.NewPlanner(), class.Whole())
		require.NoError(t, err)
		numbers := lines[0].Numbers()
		require.Len(t, numbers, len(columns), "%v", one.sets)
		p := class.Line(project.NewPlanner(), class.Students[0]).Out.Plan
		assert.Equal(t, fmt.Sprint(p.Cuff.CastOn.N+p.SeamStitches()), numbers[1])
		for i, c := range columns {
			if c.Of == mitt.GussetRounds || c.Of == mitt.Held {
				assert.Equal(t, fmt.Sprint(p.Count(c.Of)), numbers[i], c.Head)
			}
		}
		assert.Empty(t, lines[1].Numbers())
		for _, w := range p.Warnings {
			assert.NotEqual(t, "swatch", w.Code, "a flat class's swatches are flat")
		}
	}
}
