package paper

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/project"
	"thenar/internal/stitch"
)

// textsOf returns the page's own texts.
func textsOf(p *draw.Scene) []string {
	var list []string
	for _, i := range p.Items {
		if i.Kind == draw.TextItem {
			list = append(list, i.Text)
		}
	}
	return list
}

// If many rounds don't add up, their list doesn't take the chart's room: each part says
// that there are some, and the list follows once.
func TestManyUnsoundRounds(t *testing.T) {
	marks := chart.Marks{}
	for round := 1; round <= 18; round++ {
		marks.Apply([]chart.Edit{{Section: stitch.Gusset, Round: round, Column: "H2", Layer: chart.Stitches, Value: "k3tog"}})
	}
	s := derived(t, project.Samples()[0], marks)
	require.Greater(t, len(s.Out.Unsound), 15)
	o := Options{Paper: A4, Pieces: []Piece{Chart, Key}}
	pages := Handout(s, o)
	assert.LessOrEqual(t, len(pages), 3, "a chart, and what doesn't add up")
	wall := Wall(s, o, chart.GussetView)
	assert.Contains(t, textsOf(wall[len(wall)-1]), "Does not add up: "+s.Out.Unsound[len(s.Out.Unsound)-1].Words+".")
	told := map[string]int{}
	for _, p := range pages {
		checkPage(t, p)
		marksAreOnPaper(t, p, p.Label)
		for _, text := range textsOf(p) {
			told[text]++
		}
	}
	assert.Equal(t, 1, told["Some rounds do not add up: they stand listed after the charts."])
	for _, u := range s.Out.Unsound {
		assert.Equal(t, 1, told["Does not add up: "+u.Words+"."], u.Words)
	}
}

// Each of the materials begins a little below the last line of the one before it, in
// ordinary and in large print, so that they do not run together.
func TestMaterialsStandApart(t *testing.T) {
	for _, large := range []bool{false, true} {
		o := Usual()
		o.Large = large
		s := derived(t, project.Samples()[0], nil)
		small := newFlow(o, "").note()
		var names, lines []draw.Item
		Handout(s, o)[0].Each(draw.Place{Scale: 1}, func(i *draw.Item, at draw.Place) {
			item := *i
			item.X, item.Y = at.At(i.X, i.Y)
			if item.Kind == draw.TextItem && item.Letter.Size == small {
				lines = append(lines, item)
				for _, m := range s.Out.Materials("", "") {
					if item.Text == m.Name {
						names = append(names, item)
					}
				}
			}
		})
		require.Len(t, names, 6)
		for _, name := range names[1:] {
			above := 0.0
			for _, line := range lines {
				if line.Y < name.Y-0.1 && line.X >= name.X && line.X < name.X+40 {
					above = max(above, line.Y)
				}
			}
			if name.Y > names[0].Y+0.1 {
				assert.Greater(t, name.Y-above, lineOf(small)+0.5, name.Text)
			}
		}
	}
}

// The ladder says how each cuff is worked, and keeps a rib's own knits and purls.
func TestLadderNamesTheCuff(t *testing.T) {
	for note, texts := range map[string]map[string]string{
		"k1, p1 ribbing":             {},
		"k3, p1 ribbing":             {"cuff.knits": "3", "cuff.purls": "1"},
		"knit, without a rib":        {"stitch.rib": "1"},
		"garter stitch":              {"cuff.kind": "garter"},
		"rolled edge":                {"cuff.kind": "rolled"},
		"gauntlet, 53 → 37 stitches": {"cuff.kind": "gauntlet"},
		"a hem, 3 folded inside":     {"cuff.kind": "hem", "cuff.depth": "1"},
	} {
		doc := project.Samples()[0]
		for path, text := range texts {
			doc.Sheet[path] = text
		}
		var list []string
		s := derived(t, doc, nil)
		ladder := newHandout(&s, Usual()).newLadder()
		for _, stage := range ladder.stages {
			list = append(list, stage.notes...)
		}
		assert.Contains(t, list, note)
		top := s.Out.Fit[len(s.Out.Fit)-s.Out.Plan.Thumb.Rounds-1]
		assert.InDelta(t, top.AboveCastOn, ladder.rungs[len(ladder.rungs)-1].above, 1e-6, "%s: as high as the fit says", note)
		measures := newHandout(&s, Usual()).measured()
		whole := slices.IndexFunc(measures, func(m measure) bool { return strings.HasPrefix(m.name, "whole ") })
		require.NotEqual(t, -1, whole)
		assert.InDelta(t, top.AboveCastOn, measures[whole].long, 1e-6)
		assert.Equal(t, strings.HasSuffix(note, " ribbing"), strings.Contains(newHandout(&s, Usual()).easeWords(), "ribbed"), note)
	}
}
