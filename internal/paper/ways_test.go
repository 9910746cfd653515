package paper

import (
	"maps"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/project"
	keys "thenar/internal/sheet"
	"thenar/internal/testenv"
)

// otherWays are mitts that are made otherwise than the samples, by keys of a sheet.
var otherWays = []keys.Sheet{
	{"thumb.construction": "slit"},
	{"thumb.construction": "straight", "kind": "mitten"},
	{"thumb.construction": "none", "cuff.kind": "gauntlet"},
	{"thumb.place": "palm", "thumb.increase": "lifted", "cuff.kind": "hem"},
	{"thumb.construction": "straight"},
	{"thumb.construction": "none", "kind": "mitten", "top.kind": "wedges"},
	{"piece.flat": "true"},
	{"piece.direction": "down", "kind": "mitten"},
	{"piece.flat": "true", "kind": "mitten", "top.kind": "banded", "thumb.place": "palm"},
	{"piece.direction": "down"},
	{"piece.direction": "down", "cuff.kind": "gauntlet", "kind": "mitten"},
	{"piece.flat": "true", "thumb.construction": "straight", "kind": "mitten"},
	{"piece.flat": "true", "thumb.construction": "slit"},
	{"piece.direction": "down", "piece.flat": "true", "kind": "mitten"},
	{"piece.direction": "down", "piece.flat": "true", "cuff.kind": "hem", "thumb.place": "palm"},
}

// The paper of a mitt that is made another way: texts keep within the margins and off
// each other and off the drawings, and no count of nothing is asked for.
func TestOtherWaysOnPaper(t *testing.T) {
	for k, way := range testenv.Some(2, otherWays) {
		doc := project.Samples()[0]
		doc.Sheet = doc.Sheet.Clone()
		maps.Copy(doc.Sheet, way)
		for i, size := range Papers() {
			doc.Side = []project.Side{project.Right, project.Left}[i]
			o := Usual()
			o.Paper, o.Large = size, i == 1
			pages := Handout(derived(t, doc, nil), o)
			shot(t, "way-"+size.Name+string(rune('a'+k)), pages)
			for _, p := range pages {
				checkPage(t, p)
				nothingOverlaps(t, p, o, p.Label)
			}
			said := onPages(pages)
			for _, nothing := range []string{"hold 0 ", "nothing is cast on", "pick up 0 "} {
				assert.NotContains(t, said, compact(nothing), "%v", way)
			}
		}
	}
}

// A mitt from the fingertips is bound off at its cuff, and its gusset loses stitches there:
// the rounds are those that are worked. By hand: 20 rounds with increases in rounds 1, 5,
// 9, 13 and 17 from the cuff are worked down with decreases in 20 + 1 − 17 = 4, 8, 12, 16
// and 20; of rows, which keep their pairs, in 20 − 17 = 3, 7, 11, 15 and 19. Flat, its tips
// are cast on with two stitches more for the seam, and no ring is drawn.
func TestFromTheFingertipsOnPaper(t *testing.T) {
	doc := project.Samples()[0]
	doc.Sheet = doc.Sheet.Clone()
	maps.Copy(doc.Sheet, keys.Sheet{"kind": "mitten", "piece.direction": "down", "pins.increase_rounds": "1, 5, 9, 13, 17", "pins.gusset_rounds": "20"})
	said := onPages(Handout(derived(t, doc, nil), Usual()))
	for _, want := range []string{"rounds 4, 8, 12, 16, 20", "Gusset at its start", "Each dot is a decrease round", "Wait for the gap"} {
		assert.Contains(t, said, compact(want))
	}
	assert.NotContains(t, said, compact("My own numbers printed: the plan; yours on the line Cast on"))
	large := Usual()
	large.Large = true
	assert.Equal(t, 2, strings.Count(onPages(Handout(derived(t, doc, nil), large)), compact("cuff’s edge")), "the heights begin and end with it")
	doc.Sheet["piece.flat"] = "true"
	said = onPages(Handout(derived(t, doc, nil), Usual()))
	for _, want := range []string{"rows 3, 7, 11, 15, 19", "Each dot is a decrease row", "+ 2 stitches", "narrows between them", "Close the tip first"} {
		assert.Contains(t, said, compact(want))
	}
	assert.NotContains(t, said, compact("Closed cast-on"))
	flat := project.Samples()[0]
	flat.Sheet = flat.Sheet.Clone()
	flat.Sheet["piece.flat"] = "true"
	assert.Contains(t, onPages(Handout(derived(t, flat, nil), Usual())), compact("add or drop plain rows two at a time"))
}

// A flat piece's counts on the first page say what the seam takes besides: by hand 36, 42
// and 18 stitches, and one at each edge. What a mitt from the fingertips sets aside waits on
// a yarn for each set.
func TestFirstPageCountsTheSeamAndTheHolders(t *testing.T) {
	doc := project.Samples()[0]
	doc.Sheet = doc.Sheet.Clone()
	doc.Sheet["piece.flat"] = "true"
	said := onPages(Handout(derived(t, doc, nil), Usual()))
	for _, want := range []string{
		"cast on 36 + 2 for the seam · hand 42 + 2 ·", "thumb 18 + 2", "36 + 2 → 42 + 2 stitches", "4 + 2 picked up", "18 + 2 stitches, 10 rows",
		"in stockinette, worked flat and washed", "Turn it fingers up for the held stitches, then down again: pick up from the right corner to the middle.",
	} {
		assert.Contains(t, said, compact(want))
	}
	down := project.Samples()[0]
	down.Sheet = down.Sheet.Clone()
	maps.Copy(down.Sheet, keys.Sheet{"piece.direction": "down"})
	said = onPages(Handout(derived(t, down, nil), Usual()))
	assert.Contains(t, said, compact("smooth waste yarn, 3 times 20 cm / 8 in, for 3, 15 and 3 stitches."))
	assert.Contains(t, said, compact("off: try it on before the thumb is joined."))
	assert.Less(t, strings.Index(said, compact("Try it on before round 12")), strings.Index(said, compact("The next round joins the thumb")))
}

// Nothing is joined again above an opening that is left in a seam: it ends there. In the
// round it is joined.
func TestAnOpeningOnPaper(t *testing.T) {
	for flat, want := range map[string]string{"true": "the opening ends", "false": "join in the round again"} {
		doc := project.Samples()[0]
		doc.Sheet = doc.Sheet.Clone()
		maps.Copy(doc.Sheet, keys.Sheet{"thumb.construction": "slit", "piece.flat": flat})
		said := onPages(Handout(derived(t, doc, nil), Usual()))
		assert.Contains(t, said, compact(want))
		assert.Equal(t, flat == "false", strings.Contains(said, compact("join in the round again")))
		assert.NotContains(t, said, compact("for the thumb. The seam"), "no thumb is bound off")
		assert.Equal(t, flat == "true", strings.Contains(said, compact("below the opening")), "two lengths of yarn for two seams")
	}
}
