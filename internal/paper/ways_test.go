package paper

import (
	"maps"
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
