package app

import (
	"net/url"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/project"
)

// The set of fourteen of testdata/fourteen.tsv, made as a teacher makes it: a class on
// the sample mitt, its students pasted as a table. Everybody gets their pages, with
// their whole name and in their direction; who has no hand yet gets a measuring sheet.
func TestSetOfFourteen(t *testing.T) {
	t.Parallel()
	a := fresh(t)
	raw, err := project.Samples()[0].Encode()
	require.NoError(t, err)
	mitt, err := a.store.Create(t.Context(), raw)
	require.NoError(t, err)
	class, err := a.NewClass(t.Context(), "Mitts by the fire", mitt)
	require.NoError(t, err)
	table, err := os.ReadFile("../../testdata/fourteen.tsv")
	require.NoError(t, err)
	read, err := a.ReadTable(t.Context(), class, table, nil)
	require.NoError(t, err)
	require.NoError(t, read.Fault)
	require.Len(t, read.Class.Lines, 14)
	set, err := a.ClassSet(t.Context(), class, ClassAsk{Layout: Layout{Asked: url.Values{"double": {"1"}}}, PDF: true})
	require.NoError(t, err)
	pages, first, text := 0, map[string]int{}, map[string]string{}
	for p := range set.Pages() {
		pages++
		name, _, _ := strings.Cut(p.Label(), ", page ")
		if first[name] == 0 {
			first[name] = pages
		}
		var b strings.Builder
		require.NoError(t, p.WriteSVG(&b))
		text[name] += b.String()
	}
	assert.LessOrEqual(t, pages, 4*14+2)
	for _, l := range read.Class.Lines {
		name := l.Student.Name
		require.NotZero(t, first[name], "%s has no pages", name)
		assert.Equal(t, 1, first[name]%2, "%s begins on a fresh sheet", name)
		assert.Equal(t, l.Student.FromLeft, strings.Contains(text[name], "from left to right"), name)
		assert.Equal(t, name == "Hanna Okafor", strings.Contains(text[name], "No hand yet"), name)
	}
}
