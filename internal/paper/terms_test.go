package paper

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/project"
	"thenar/internal/testenv"
)

// TestHandoutSpeaksOneSidesTerms prints every piece of three kinds of mitt in the
// terms of either side, and looks for words of the other.
func TestHandoutSpeaksOneSidesTerms(t *testing.T) {
	for _, kind := range []string{"fingerless", "mitten", "mitten_without_thumb"} {
		for _, side := range []struct {
			terms        string
			own, foreign *regexp.Regexp
		}{{"us", testenv.OfUS, testenv.OfUK}, {"uk", testenv.OfUK, testenv.OfUS}} {
			doc := project.Samples()[0]
			doc.Sheet["kind"], doc.Sheet["terms"] = kind, side.terms
			doc.Sheet["stitch.rib"] = "1"    // a cuff of plain stitches,
			doc.Sheet["ease.cuff"] = "-0.2"  // too narrow for the hand,
			doc.Sheet["pins.cast_on"] = "28" // so that its warning names the fabric
			o := Usual()
			o.Pieces = Pieces()
			s := derived(t, doc, nil)
			require.NotEmpty(t, s.Out.Plan.Warnings)
			var all []string
			for _, page := range Handout(s, o) {
				all = append(all, textsOf(page)...)
			}
			text := strings.Join(all, " ")
			assert.Empty(t, side.foreign.FindAllString(text, -1), "%s in %s", kind, side.terms)
			assert.Regexp(t, side.own, text, "%s in %s", kind, side.terms)
		}
	}
}
