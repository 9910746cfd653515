package app

import (
	"context"
	"fmt"
	"net/url"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/store"
)

// fresh is an App on an empty file of its own.
func fresh(t *testing.T) *App {
	t.Helper()
	st, err := store.Open(t.Context(), filepath.Join(t.TempDir(), "thenar.db"))
	require.NoError(t, err)
	t.Cleanup(func() { assert.NoError(t, st.Close()) })
	return New(st)
}

// many is a class of so many students on the sample mitt.
func many(t *testing.T, a *App, n int) (class int64) {
	t.Helper()
	raw, err := project.Samples()[0].Encode()
	require.NoError(t, err)
	mitt, err := a.store.Create(t.Context(), raw)
	require.NoError(t, err)
	class, err = a.NewClass(t.Context(), "Tuesday", mitt)
	require.NoError(t, err)
	var table strings.Builder
	table.WriteString("name,hand,stitches,rounds\n")
	for i := range n {
		fmt.Fprintf(&table, "Student %d,%.1f,%d,%d\n", i+1, 16+float64(i%60)/10, 20+i%12, 28+i%14)
	}
	read, err := a.ReadTable(t.Context(), class, []byte(table.String()), nil)
	require.NoError(t, err)
	require.NoError(t, read.Fault)
	require.Len(t, read.Class.Lines, n)
	return class
}

// ownLines is the layout that prints least of a student.
var ownLines = Layout{Asked: url.Values{"pieces": {"own"}}, Final: true}

// The command line prints any part as pages, one student after the other, and
// stops when it is told to; a PDF is bounded.
func TestClassSetOfACommand(t *testing.T) {
	t.Parallel()
	a := fresh(t)
	class := many(t, a, 130)
	_, err := a.ClassSet(t.Context(), class, ClassAsk{Layout: ownLines, PDF: true})
	assert.Equal(t, fault.Invalid, fault.KindOf(err))
	assert.ErrorContains(t, err, "students: are 130")
	set, err := a.ClassSet(t.Context(), class, ClassAsk{Layout: ownLines, Part: "101-200", PDF: true})
	require.NoError(t, err)
	n := 0
	for p := range set.Pages() {
		if strings.Contains(p.Label(), "Student ") {
			n++
		}
	}
	assert.Equal(t, 30, n)
	ctx, cancel := context.WithCancel(t.Context())
	defer cancel()
	set, err = a.ClassSet(ctx, class, ClassAsk{Layout: ownLines})
	require.NoError(t, err)
	n = 0
	for range set.Pages() {
		if n++; n == 10 {
			cancel()
		}
	}
	assert.Equal(t, 10, n, "nobody waits for the rest")
}
