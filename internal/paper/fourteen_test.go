package paper

import (
	"os"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/project"
	"thenar/internal/roster"
)

// fourteen is the class of testdata/fourteen.tsv on the sample mitt: grown-ups, a
// child, one whose hand is not measured yet, two who knit from left to right, long
// names, one whose plan has warnings. All are invented.
type fourteen struct {
	class   roster.Class
	planner *project.Planner
	lines   []roster.Line
}

func newFourteen(t *testing.T) *fourteen {
	t.Helper()
	raw, err := os.ReadFile("../../testdata/fourteen.tsv")
	require.NoError(t, err)
	f := &fourteen{roster.New("Mitts by the fire"), project.NewPlanner(), nil}
	doc := project.Samples()[0]
	f.class.SetPattern(roster.Pattern{Mitt: 1, Name: doc.Name, Side: doc.Side, Sheet: doc.Sheet})
	f.class.Place, f.class.Date, f.class.Yarn, f.class.Needle = "the reading room", "2026-11-05", "two-ply wool, undyed", "a set of 3 mm"
	table, err := roster.Read(raw, f.class.Unit)
	require.NoError(t, err)
	_, err = f.class.Add(table.Students...)
	require.NoError(t, err)
	f.lines, err = f.class.Review(t.Context(), f.planner, f.class.Whole())
	require.NoError(t, err)
	return f
}

// complete returns a line with its outputs.
func (f *fourteen) complete(l roster.Line) roster.Line { return f.class.Complete(f.planner, l) }

// set lays out the whole set.
func (f *fourteen) set(t *testing.T, o Options) []*draw.Scene {
	return slices.Collect(Class(t.Context(), f.class, f.class.Whole(), f.lines, f.complete, o))
}
