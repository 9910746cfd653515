package paper

import (
	"maps"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/stitch"
)

// Every way in which a gusset grows, a top that is grafted, a gap and a seam are drawn on its handout,
// for both hands and for who knits from left to right: the steps name every operation of
// its rounds that is called for by a lesson, and no make one where there is none.
func TestStepsOfEveryWayAreDrawn(t *testing.T) {
	for name, c := range map[string]struct {
		more map[string]string
		want []string
		ops  []stitch.Op
	}{
		"lifted":   {map[string]string{"thumb.increase": "lifted"}, []string{"leaning left (LLI)", "leaning right (RLI)"}, []stitch.Op{stitch.LLI, stitch.RLI}},
		"yo":       {map[string]string{"thumb.increase": "yo_closed"}, []string{"Yarn over (yo), closed"}, []stitch.Op{stitch.YarnOver, stitch.KnitTBL}},
		"kfb":      {map[string]string{"thumb.increase": "kfb", "pins.gusset_base": "3"}, []string{"front and back (kfb)"}, []stitch.Op{stitch.KFB}},
		"straight": {map[string]string{"thumb.construction": "straight"}, []string{"Thumb on waste yarn"}, []stitch.Op{stitch.Waste, stitch.CornerM1}},
		"straight glove": {
			map[string]string{"kind": "glove", "thumb.construction": "straight"},
			[]string{"Thumb on waste yarn", "A bridge of loops", "Bridge beside a finger"},
			[]stitch.Op{stitch.Waste, stitch.CornerM1, stitch.GapK2tog},
		},
		"down": {map[string]string{"piece.direction": "down"}, []string{"Graft (the front needle", "Or bind off together"}, []stitch.Op{stitch.Graft}},
		"flat straight": {
			map[string]string{"thumb.construction": "straight", "piece.flat": "true"},
			[]string{"Thumb on waste yarn", "Cast on for the thumb’s seam", "Mattress stitch"},
			[]stitch.Op{stitch.Waste, stitch.CornerM1, stitch.CastOn},
		},
		"flat":   {map[string]string{"piece.flat": "true"}, []string{"Mattress stitch", "leaning right (M1R)"}, []stitch.Op{stitch.M1R}},
		"centre": {map[string]string{"thumb.increase": "centre"}, []string{"leaning left (M1L)", "leaning right (M1R)"}, []stitch.Op{stitch.M1L, stitch.M1R}},
		"graft": {map[string]string{
			"kind": "mitten", "top.kind": "banded", "top.band": "6", "gauge.swatches[0].stitches": "36", "gauge.swatches[0].rounds": "40",
		}, []string{"Graft (the front needle"}, []stitch.Op{stitch.Graft}},
	} {
		for n := range 4 {
			doc := project.Samples()[0]
			doc.Sheet = doc.Sheet.Clone()
			maps.Copy(doc.Sheet, c.more)
			doc.Side, doc.FromLeft = []project.Side{project.Left, project.Right}[n%2], n > 1
			s := derived(t, doc, chart.Marks{})
			for _, op := range c.ops {
				require.True(t, s.Out.Mitt.Ops()[op], "%s: the mitt has %s", name, op)
			}
			for _, o := range []Options{Usual(), {Paper: Letter, Large: true, Grey: true, Pieces: Usual().Pieces}} {
				o.FromLeft = doc.FromLeft
				pages := Handout(s, o)
				shot(t, name+"-steps-"+o.Paper.Name, pages)
				all := onPages(pages)
				for _, want := range c.want {
					assert.Contains(t, all, compact(want), name)
				}
				if s.Out.Mitt.Ops()[stitch.Waste] {
					assert.NotContains(t, all, compact("Pick up for the thumb"), name)
					assert.NotContains(t, all, compact("Not needed"), name)
				}
				assert.Equal(t, s.Out.Mitt.Ops()[stitch.M1L], strings.Contains(all, "Makeoneleaningleft"), name)
				for _, p := range pages {
					nothingOverlaps(t, p, o, name)
				}
			}
		}
	}
}

// Where a top is grafted, the plan says so as the words do.
func TestPlanGraftsWhereTheWordsDo(t *testing.T) {
	doc := project.Samples()[0]
	doc.Sheet = doc.Sheet.Clone()
	maps.Copy(doc.Sheet, map[string]string{"kind": "mitten", "top.kind": "banded", "top.band": "6", "gauge.swatches[0].stitches": "36", "gauge.swatches[0].rounds": "40"})
	all := onPages(Handout(derived(t, doc, chart.Marks{}), Options{Paper: A4, Pieces: []Piece{Plan, Words}}))
	assert.Contains(t, all, compact("graft the last 18 stitches"))
	assert.Contains(t, all, compact("Graft the last 18."))
	assert.NotContains(t, all, compact("through 18 stitches"))
	assert.NotContains(t, all, compact("through the 18"))
}

// The drawn steps and the key beside the words tell a lifted increase alike, from either
// side: where the words lift two rows below, so does the drawing.
func TestDrawnStepsAgreeWithTheKey(t *testing.T) {
	for _, fromLeft := range []bool{false, true} {
		doc := project.Samples()[0]
		doc.Sheet = doc.Sheet.Clone()
		doc.Sheet["thumb.increase"], doc.FromLeft = "lifted", fromLeft
		s := derived(t, doc, chart.Marks{})
		lines := map[string]string{}
		for _, sign := range s.Out.Terms.Signs([]string{"k1, LLI, k1, RLI, k1"}, nil, fromLeft) {
			lines[sign.Sign] = sign.Line
		}
		steps := drawnLetters(picture.Lesson(s.lessonOptions(Usual()))...)
		for _, op := range []string{"LLI", "RLI"} {
			require.NotEmpty(t, lines[op])
			_, step, found := strings.Cut(steps, "("+op+")")
			require.True(t, found)
			two := strings.Contains(lines[op], "two rows below")
			assert.Equal(t, two, strings.HasPrefix(step, "1Tworowsbelow"), "%s, from the left %v: %s", op, fromLeft, step[:40])
			assert.Equal(t, !two, strings.HasPrefix(step, "1Rightbelowthenext"), "%s, from the left %v", op, fromLeft)
		}
	}
}
