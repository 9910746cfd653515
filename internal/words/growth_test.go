package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/stitch"
)

// The left lifted increase is knitted two rows below the stitch just worked, the right one
// right below the next (teaching pages read for knitting from right to left). From left to
// right the hands do the other, and the stitch leans as it is called.
func TestLiftedIncreasesFromEitherSide(t *testing.T) {
	const two, one = "two rows below the one just worked", "right below the next one"
	for _, c := range []struct {
		op       stitch.Op
		fromLeft bool
		want     string
	}{{stitch.LLI, false, two}, {stitch.RLI, false, one}, {stitch.LLI, true, one}, {stitch.RLI, true, two}} {
		signs := US.Signs([]string{"k1, " + c.op.Abbr() + ", k1."}, nil, c.fromLeft)
		line := ""
		for _, s := range signs {
			if s.Op == c.op {
				line = s.Line
			}
		}
		assert.Contains(t, line, c.op.Words()+": ")
		assert.Contains(t, line, c.want)
	}
}
