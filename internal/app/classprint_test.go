package app

import (
	"context"
	"fmt"
	"net/url"
	"path/filepath"
	"strings"
	"sync"
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

// A class set is read in one transaction, and each student is planned once,
// for the summary and the handout.
func TestClassSetReadsAndPlansOnce(t *testing.T) {
	t.Parallel()
	const students = 12
	a := fresh(t)
	class := many(t, a, students)
	for name, ask := range map[string]ClassAsk{"pages of a browser": {}, "a PDF": {PDF: true}, "pages of a command": {Layout: Layout{Final: true}}} {
		reads, writes := a.store.Transactions()
		plans := a.Plans().Plans
		set, err := a.ClassSet(t.Context(), class, ask)
		require.NoError(t, err)
		pages, _, err := set.SVG(t.Context(), 0)
		require.NoError(t, err)
		assert.Greater(t, len(pages), students, name)
		moreReads, moreWrites := a.store.Transactions()
		assert.EqualValues(t, 1, moreReads-reads, "transactions for %s", name)
		assert.EqualValues(t, 0, moreWrites-writes, name)
		assert.Equal(t, students, a.Plans().Plans-plans, "plans for %s", name)
	}
}

// A form of a class is one read and one write, and plans nothing; its page is
// one read, and each student planned once.
func TestClassFormsReadOnceAndWriteOnce(t *testing.T) {
	t.Parallel()
	a := fresh(t)
	class := many(t, a, 3)
	c, err := a.Class(t.Context(), class)
	require.NoError(t, err)
	one, err := a.Student(t.Context(), class, c.Lines[0].Student.ID)
	require.NoError(t, err)
	ctx := t.Context()
	for name, do := range map[string]struct {
		reads, writes, plans int
		do                   func() error
	}{
		"the page":         {1, 0, 3, func() error { _, err := a.Class(ctx, class); return err }},
		"a student's page": {1, 0, 1, func() error { _, err := a.Student(ctx, class, one.ID); return err }},
		"the list":         {1, 0, 0, func() error { _, _, err := a.Classes(ctx); return err }},
		"a student saved": {1, 1, 0, func() error {
			unsaved, err := a.SaveStudent(ctx, class, one.ID, one.Stamp, Texts{"name": "Ada"})
			assert.Nil(t, unsaved)
			return err
		}},
		"remarks saved and a student moved": {1, 1, 0, func() error {
			typed := []TypedRemark{{Student: c.Lines[1].Student.ID, Now: Remark{FromLeft: true, Note: "from the left"}}}
			unsaved, err := a.SaveRemarks(ctx, class, typed, &Move{one.ID, 0})
			assert.Nil(t, unsaved)
			return err
		}},
		"the class saved": {1, 1, 0, func() error { _, err := a.SaveClass(ctx, class, c.Stamp, Texts{"place": "the barn"}); return err }},
		"a layout kept":   {1, 1, 0, func() error { return a.KeepClassPrint(ctx, class, "large=1") }},
	} {
		reads, writes := a.store.Transactions()
		plans := a.Plans().Plans
		require.NoError(t, do.do(), name)
		moreReads, moreWrites := a.store.Transactions()
		assert.EqualValues(t, []int64{int64(do.reads), int64(do.writes)}, []int64{moreReads - reads, moreWrites - writes}, "reads and writes of %s", name)
		assert.Equal(t, do.plans, a.Plans().Plans-plans, "plans of %s", name)
	}
}

// Handouts of a class are laid at the same time, for two readers at once: both get
// the same pages in the order of the list, each as the student's own sheet.
//
//thenar:race
func TestClassSetIsLaidAtTheSameTime(t *testing.T) {
	t.Parallel()
	a := fresh(t)
	class := many(t, a, 5)
	svg := func(ask ClassAsk) (pages []string) {
		set, err := a.ClassSet(t.Context(), class, ask)
		if assert.NoError(t, err) {
			pages, _, err = set.SVG(t.Context(), 0)
			assert.NoError(t, err)
		}
		return pages
	}
	var both sync.WaitGroup
	var sets [2][]string
	for i := range sets {
		both.Go(func() { sets[i] = svg(ClassAsk{Layout: ownLines}) })
	}
	both.Wait()
	assert.Equal(t, sets[0], sets[1])
	var one []string
	for student := range 5 {
		one = append(one, svg(ClassAsk{Layout: ownLines, Student: student + 1})...)
	}
	require.Greater(t, len(sets[0]), len(one))
	assert.Equal(t, one, sets[0][len(sets[0])-len(one):], "behind the teacher’s summary")
}
