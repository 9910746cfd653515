package view

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/project"
	"thenar/internal/roster"
)

func rendered(t *testing.T, a Answer) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, benchFragment(a).Render(t.Context(), &b))
	require.NoError(t, planFragment(a).Render(t.Context(), &b))
	return b.String()
}

// Every number that can be fixed has a field of the form under its label, a
// button in the plan that fixes it, and, while there is no plan, a line of its
// own; a message names it by its label.
func TestEveryNumberStandsOnThePage(t *testing.T) {
	seen := map[mitt.Number]bool{}
	for _, kind := range []mitt.Kind{mitt.Fingerless, mitt.Mitten, mitt.Glove} {
		d := project.New("Mitts")
		if kind == mitt.Glove {
			for _, path := range []string{"fingers.index", "fingers.middle", "fingers.ring", "fingers.little"} {
				d.Sheet[path] = "half"
			}
			d.Sheet["fingers.cap"] = "true"
		}
		for path, text := range map[string]string{"kind": string(kind), "hand.hand_circumference": "19", "gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10"} {
			d.Sheet[path] = text
		}
		out, err := project.NewPlanner().Derive(d, chart.Marks{})
		require.NoError(t, err)
		page := rendered(t, NewAnswer(d, out, FitDesk, ChartAsk{}, nil))
		for _, n := range mitt.Fixable() {
			text := out.Plan.Number(n)
			if text == "" {
				continue
			}
			seen[n] = true
			assert.True(t, strings.Contains(page, `value="`+n.Path()+"="+text+`" data-keep="`+n.Key()+`"`), "no button fixes %s", n)
		}
	}
	assert.Len(t, seen, len(mitt.Fixable()))

	var class strings.Builder
	require.NoError(t, ClassPage(Class{Doc: roster.New("Tuesday"), Columns: &roster.Table{}}).Render(t.Context(), &class))
	for _, n := range mitt.ForClass() {
		assert.Contains(t, class.String(), `name="`+n.Path()+`"`)
		assert.Contains(t, class.String(), ">"+n.Label()+"</label>", "a class calls %s otherwise", n)
	}

	for _, n := range mitt.Fixable() {
		g, f, _, ok := find(n.Path())
		assert.True(t, ok && f.Label == n.Label() && f.Help == n.Help(), "%s has no field", n)
		assert.Equal(t, n.List(), maxLength(n.Path()) == "200", "%s", n)

		d := project.New("Mitts")
		d.Sheet[n.Path()] = "wide"
		page := rendered(t, NewAnswer(d, nil, FitDesk, ChartAsk{}, fault.Fields{{Path: n.Path(), Message: "is wide beside " + n.Key(), Works: "3"}}))
		assert.Contains(t, page, ">"+g.Title+": "+n.Label()+"</a>", "the message does not name %s", n)
		assert.Contains(t, page, "is wide beside "+n.Words(), "%s", n)
		assert.Contains(t, page, `data-keep="`+n.Key()+`"`, "%s can't be typed over", n)
		assert.Equal(t, "Let go: "+lower(n.Label())+".", Fixed(mitt.Names{}, []chart.Edit{{Layer: chart.Sheet, Column: n.Path()}}))
	}
}
