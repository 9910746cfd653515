package paper

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/draw"
	"thenar/internal/grade"
	"thenar/internal/mitt"
	"thenar/internal/project"
)

// No two columns of a table of sizes have one head, none of which breaks within a word, and
// its rates have at most one decimal.
func TestSizeTableNamesItsColumnsApart(t *testing.T) {
	for _, g := range []grade.Grid{
		{Names: mitt.Names{Kind: mitt.Fingerless}},
		{Names: mitt.Names{Kind: mitt.Mitten}},
		{Names: mitt.Names{Kind: mitt.Mitten, Make: mitt.Make{Construction: mitt.Straight}}},
		{Names: mitt.Names{Kind: mitt.Fingerless, Make: mitt.Make{Construction: mitt.Slit}}},
		{Names: mitt.Names{Kind: mitt.Mitten, Make: mitt.Make{Direction: mitt.Down}}},
		{Names: mitt.Names{Kind: mitt.Thumbless}},
		{Names: mitt.Names{Kind: mitt.Glove}},
	} {
		seen := map[string]bool{}
		for _, c := range sizeColumns(g) {
			assert.False(t, seen[c.head], "%s: two columns are called %q", g.Names, c.head)
			seen[c.head] = true
		}
		for _, o := range []Options{{Paper: A4}, {Paper: Letter}, {Paper: A4, Large: true}, {Paper: Letter, Large: true}} {
			f := newFlow(o, "")
			first, second := f.twoLines(sizeColumns(g))
			assert.True(t, o.Large || second == nil, "in ordinary print a line is enough")
			for _, columns := range [][]column{first, second} {
				for i, mm := range f.widths(columns) {
					for _, word := range strings.Fields(columns[i].head) {
						assert.LessOrEqual(t, draw.Measure(word, f.small, draw.Regular), mm-betweenCells+1e-9, "%v, %+v: %q would break", g.Names, o, word)
					}
				}
			}
		}
		assert.Equal(t, g.Names.Has(mitt.Held) && !g.Names.Has(mitt.Increases), seen["to thumb"], "%v", g.Names)
	}
	ask := grade.DefaultRequest("cm")
	for _, kind := range []string{"glove", "mitten"} {
		sheet, o := project.Samples()[0].Sheet.Clone(), Usual()
		sheet["kind"], o.Large = kind, true
		grid, err := grade.Table(t.Context(), sheet, ask)
		assert.NoError(t, err)
		for _, p := range SizeTable(o, "Mitts", ask, grid) {
			checkPage(t, p)
			nothingOverlaps(t, p, o, kind)
		}
	}
	grid, err := grade.Table(t.Context(), project.Samples()[0].Sheet, ask)
	assert.NoError(t, err)
	for _, page := range SizeTable(Usual(), "Mitts", ask, grid) {
		for _, text := range textsOf(page) {
			assert.NotRegexp(t, `\d\.\d\d`, text)
		}
	}
}

// Every length on a measuring sheet can be written in centimetres or inches, and a
// gauge over 10 cm or over 4 in; ordinary print takes one page, upright and sideways, large
// print two. Those of the fingers take as many again.
func TestMeasuringSheetNamesBothUnits(t *testing.T) {
	for i, o := range []Options{
		{Paper: A4},
		{Paper: Letter},
		{Paper: A4, Sideways: true},
		{Paper: Letter, Sideways: true},
		{Paper: A4, Large: true},
		{Paper: Letter, Large: true, Sideways: true},
		{Paper: A4},
		{Paper: Letter},
		{Paper: A4, Sideways: true},
		{Paper: Letter, Sideways: true},
		{Paper: A4, Large: true},
		{Paper: Letter, Large: true, Sideways: true},
	} {
		fingers := i >= 6
		pages := Measuring(o, i%2 == 0, fingers)
		count := map[string]int{}
		for _, p := range pages {
			for _, text := range textsOf(p) {
				count[text]++
			}
		}
		lines := len(measures)
		if fingers {
			lines += 4 + 4 + 3 // girths, lengths, and where two fingers part
			assert.Equal(t, 1, count[fingersTitle])
			for _, name := range []string{"index", "middle", "ring", "little"} {
				assert.Equal(t, 1, count[name], "the drawing names the %s finger", name)
			}
			for _, p := range pages {
				nothingOverlaps(t, p, o, o.said())
			}
		}
		for _, unit := range []string{"cm", "in"} {
			assert.Equal(t, lines, count[unit], "%s, %+v", unit, o)
		}
		assert.Equal(t, 2, count["10 cm"])
		assert.Equal(t, 2, count["4 in"])
		most := 1
		if o.Large {
			most = 2
		}
		if fingers {
			most *= 2
		}
		assert.Len(t, pages, most, "%+v", o)
	}
}

// A long name breaks behind a hyphen, never within a word that has room; who is to be
// looked at has a tab behind their name, and nobody else.
func TestNamesOfTheSummary(t *testing.T) {
	f := newFourteen(t)
	looks := 0
	for i := range f.lines {
		if f.lines[i].NeedsAttention() {
			looks++
		}
	}
	for _, large := range []bool{false, true} {
		o := Usual()
		o.Large = large
		tabs, whole := 0, 0
		for _, p := range summary(f.class, f.class.Whole(), f.lines, o) {
			for _, i := range p.Items {
				if i.Kind == draw.PathItem && i.Style.Fill == tabGrey {
					tabs++
				}
			}
			for _, text := range textsOf(p) {
				if strings.HasSuffix(text, "Schimmelpenninck") || strings.HasSuffix(text, "Wittelsbach") {
					whole++
				}
			}
		}
		assert.Equal(t, looks, tabs)
		assert.Equal(t, 2, whole, "large %v", large)
	}
}
