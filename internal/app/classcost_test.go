package app

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What a class set costs is counted on the pages that are printed, on one side
// and on both, once for each state of the class: the page of the class shows it
// then, and lays nothing out.
func TestCostIsThatOfThePrint(t *testing.T) {
	t.Parallel()
	a := fresh(t)
	class := many(t, a, 3)
	for _, kept := range []string{"pieces=plan&pieces=chart&pieces=words", "double=1&pieces=plan&pieces=chart&pieces=words", "double=1&pieces=own"} {
		require.NoError(t, a.KeepClassPrint(t.Context(), class, kept))
		c, err := a.Class(t.Context(), class)
		require.NoError(t, err)
		assert.Nil(t, c.Cost, "nothing is laid out for the page")
		set, err := a.ClassSet(t.Context(), class, ClassAsk{PDF: true})
		require.NoError(t, err)
		pages := 0
		begins := []int{} // the pages, counted from 0, on which handouts begin
		for p := range set.Pages() {
			if strings.HasSuffix(strings.Split(p.Label(), " of ")[0], ", page 1") {
				begins = append(begins, pages)
			}
			pages++
		}
		require.Len(t, begins, 4, "the summary and three students")
		sheets := pages
		if set.Options.Double { // counted by handouts, each on sheets of its own
			sheets = 0
			for i, first := range begins {
				last := pages
				if i+1 < len(begins) {
					last = begins[i+1]
				}
				sheets += (last - first + 1) / 2
			}
		}
		cost, ok, err := a.CountSheets(t.Context(), class)
		require.NoError(t, err)
		require.True(t, ok)
		assert.Equal(t, Cost{pages, sheets, set.Options.Double}, cost, kept)

		plans := a.Plans().Plans
		_, _, err = a.CountSheets(t.Context(), class)
		require.NoError(t, err)
		assert.Equal(t, plans, a.Plans().Plans, "counted once")
		c, err = a.Class(t.Context(), class)
		require.NoError(t, err)
		require.NotNil(t, c.Cost)
		assert.Equal(t, cost, *c.Cost)
	}
	_, err := a.SaveRemarks(t.Context(), class, []TypedRemark{{Student: 1}}, &Move{1, 0})
	require.NoError(t, err)
	c, err := a.Class(t.Context(), class)
	require.NoError(t, err)
	assert.Nil(t, c.Cost, "the class is another one now")
	gone, cancel := context.WithCancel(t.Context())
	cancel()
	_, _, err = a.CountSheets(gone, class)
	require.Error(t, err, "half a count is none")
}

// The sheets of a class that fits no PDF are not counted, nor those of nobody.
func TestCostIsBounded(t *testing.T) {
	t.Parallel()
	a := fresh(t)
	for _, students := range []int{0, maxInPDF + 1} {
		class, err := a.NewClass(t.Context(), "Tuesday", 0)
		require.NoError(t, err)
		if students > 0 {
			class = many(t, a, students)
		}
		plans := a.Plans().Plans
		_, ok, err := a.CountSheets(t.Context(), class)
		require.NoError(t, err)
		assert.False(t, ok)
		assert.Equal(t, plans, a.Plans().Plans)
	}
}
