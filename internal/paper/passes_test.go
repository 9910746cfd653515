package paper

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/chart"
	"thenar/internal/mitt"
	"thenar/internal/project"
)

// The first page says the count that would let the hand pass through a cuff that gives
// less than a rib, before anything is cast on; a ribbed cuff's is left to the cautions.
func TestTheFirstPageSaysWhetherTheHandPasses(t *testing.T) {
	for cuff, says := range map[string]bool{"hem": true, "gauntlet": true, "rib": false} {
		doc := project.Samples()[0]
		doc.Sheet = doc.Sheet.Clone()
		doc.Sheet[mitt.PathCuff] = cuff
		first := strings.Join(textsOf(Handout(derived(t, doc, chart.Marks{}), Usual())[0]), " ")
		assert.Equal(t, says, strings.Contains(first, "would pass the hand"), "%s: %s", cuff, first)
		assert.Equal(t, says, strings.Contains(first, "Look at this first"), cuff)
	}
}
