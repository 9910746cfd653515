package paper

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
)

// gloveOf is a glove made from the first sample, with more fields of its sheet.
func gloveOf(side project.Side, more map[string]string) project.Document {
	doc := project.Samples()[0]
	doc.Name, doc.Side, doc.Sheet = "Marit’s gloves", side, doc.Sheet.Clone()
	doc.Sheet["kind"] = "glove"
	for path, text := range more {
		doc.Sheet[path] = text
	}
	return doc
}

var gloves = []struct {
	name string
	doc  project.Document
}{
	{"full", gloveOf(project.Right, nil)},
	{"half-left", gloveOf(project.Left, map[string]string{"fingers.index": "half", "fingers.middle": "half", "fingers.ring": "half", "fingers.little": "half", "fingers.thumb": "open", "fingers.little_lower": "false"})},
	{"capped", gloveOf(project.Left, map[string]string{"fingers.index": "half", "fingers.middle": "half", "fingers.ring": "half", "fingers.little": "half", "fingers.cap": "true"})},
	{"mixed", gloveOf(project.Right, map[string]string{"fingers.index": "open", "fingers.middle": "half", "pins.fingers.ring.decreases": "2", "pins.bridges.ring_little": "3", "thumb.place": "palm", "unit": "in", "hand.hand_circumference": "7 1/2", "hand.wrist_circumference": "", "hand.thumb_circumference": "", "hand.hand_length": "", "hand.gusset_length": "", "hand.thumb_length": "", "hand.wrist_to_crotch": "", "gauge.swatches[0].width": "4", "gauge.swatches[0].height": "4"})},
}

// The handout of a glove says every number of every finger, keeps within its pages, and
// takes no more of them than six of the usual size.
func TestHandoutOfAGlove(t *testing.T) {
	for i, c := range gloves {
		out, err := project.NewPlanner().Derive(c.doc, nil)
		require.NoError(t, err, c.name)
		ways := []string{"a4", "letter", "large", "grey", "sideways"}
		if i > 0 {
			ways = testenv.Some(3, ways)
		}
		for _, how := range ways {
			o := Usual()
			switch how {
			case "letter":
				o.Paper = Letter
			case "large":
				o.Large = true
			case "grey":
				o.Grey, o.Double = true, true
			case "sideways":
				o.Sideways = true
			}
			name := c.name + "-" + how
			pages := Handout(Sheet{Doc: c.doc, Out: out}, o)
			shot(t, name, pages)
			for _, p := range pages {
				checkPage(t, p)
				nothingOverlaps(t, p, o, name)
			}
			if most := map[string]int{"a4": 6, "letter": 7}[how]; most > 0 && c.name != "capped" {
				assert.LessOrEqual(t, len(pages), most, name)
			}
			var list []string
			for _, p := range pages {
				list = append(list, textsOf(p)...)
			}
			said := strings.Join(list, " ")
			if c := out.Plan.Fingers.Cap; c != nil {
				assert.Contains(t, said, fmt.Sprintf("pick up %d along the back, cast on %d", c.Back, c.Palm), name)
			}
			for _, f := range out.Plan.Fingers.Each {
				assert.Contains(t, said, fmt.Sprint(f.FirstRound), name)
			}
		}
	}
}

// A finger that is painted on is printed as a chart, which says how many stitches wait; with
// every piece of a handout its pages hold, on both hands.
func TestPaintedFingerIsPrinted(t *testing.T) {
	for _, side := range []project.Side{project.Right, project.Left} {
		doc, marks := gloveOf(side, nil), chart.Marks{}
		for _, column := range []string{"H30", "H31", "P2"} {
			marks.Apply([]chart.Edit{{Section: stitch.Ring, Round: 5, Column: column, Layer: chart.Colours, Value: "b"}})
		}
		out, err := project.NewPlanner().Derive(doc, marks)
		require.NoError(t, err)
		o := Usual()
		o.Pieces = Pieces()
		pages := Handout(Sheet{Doc: doc, Out: out}, o)
		shot(t, "painted-"+string(side), pages)
		var list []string
		for _, p := range pages {
			checkPage(t, p)
			list = append(list, textsOf(p)...)
		}
		said := strings.Join(list, " ")
		assert.Contains(t, said, "Chart of the ring finger")
		assert.Contains(t, said, fmt.Sprintf("%d stitches wait here", out.Plan.Fingers.Each[0].Palm+out.Plan.Fingers.Each[0].Back+out.Plan.Fingers.Each[1].Palm+out.Plan.Fingers.Each[1].Back))
	}
}

// In large print the parts stand in the order worked: the little finger before the upper
// hand.
func TestPartsOfAGloveInTheOrderWorked(t *testing.T) {
	doc := gloveOf(project.Right, nil)
	out, err := project.NewPlanner().Derive(doc, nil)
	require.NoError(t, err)
	o := Usual()
	o.Large = true
	h := newHandout(&Sheet{Doc: doc, Out: out}, o)
	var names []string
	for _, step := range h.steps(h.newLadder()) {
		names = append(names, step[0])
	}
	assert.Equal(t, []string{"Cuff", "Plain rounds", "Thumb gusset", "Hand", "Little finger", "Upper hand", "Ring finger", "Middle finger", "Index finger", "Thumb"}, names)
}

// Large print says of every finger how large it is around and in length, and its tube.
func TestLargePrintHasTheSizesOfFingers(t *testing.T) {
	out, err := project.NewPlanner().Derive(gloves[0].doc, nil)
	require.NoError(t, err)
	o := Usual()
	o.Large, o.Pieces = true, []Piece{Plan}
	var list []string
	for _, p := range Handout(Sheet{Doc: gloves[0].doc, Out: out}, o) {
		list = append(list, textsOf(p)...)
	}
	h := newHandout(&Sheet{Doc: gloves[0].doc, Out: out}, o)
	require.Len(t, h.fingers(), 4)
	for _, f := range h.fingers() {
		for _, text := range h.sizesOf(&f) {
			assert.Contains(t, list, text)
		}
	}
}
