package chart

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/stitch"
)

// TestPalmShowsEveryPurl paints a purl decrease: it lies on the drawn hand as it
// lies on the chart.
func TestPalmShowsEveryPurl(t *testing.T) {
	purls := func(marks Marks) (n int) {
		s := Source{Mitt: small(t), Base: 3, Marks: marks, Rules: Rules{2, 5}}.Prepare()
		for _, rounds := range s.Palm() {
			for _, r := range rounds {
				for _, c := range append(r.Gusset, r.Hand...) {
					if c.Purl {
						n++
					}
				}
			}
		}
		return n
	}
	at := Anchor{Section: stitch.Hand, Round: 2, Column: "H2"}
	assert.Equal(t, purls(Marks{})+1, purls(Marks{at: {Stitch: "p"}}))
	assert.Equal(t, purls(Marks{})+1, purls(Marks{at: {Stitch: "p2tog"}}))
}
