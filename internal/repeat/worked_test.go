package repeat

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/stitch"
)

// Rounds that are knitted are read as they were written; alike rounds that follow each other
// stand in one line.
func TestWorkedRoundsAreReadAsWritten(t *testing.T) {
	t.Parallel()
	dots := slices.Concat(slices.Repeat([]Look{{Yarn: "b"}}, 5), []Look{{Yarn: "a"}}, slices.Repeat([]Look{{Yarn: "b", Op: stitch.Purl}}, 2))
	w := Worked{}
	w.Keep(stitch.Gusset, 3, dots)
	w.Keep(stitch.Gusset, 4, dots)
	w.Keep(stitch.Gusset, 7, dots)
	w.Keep(stitch.Cuff, 1, []Look{{Yarn: "c"}})
	lines := w.Lines()
	assert.ElementsMatch(t, []string{"cuff 1 c", "gusset 3-4 5b a 2bp", "gusset 7 5b a 2bp"}, lines)
	read, why := ReadWorked(lines)
	assert.Empty(t, why)
	assert.Equal(t, w, read)
	for _, wrong := range []string{"", "gusset", "gusset 0 a", "gusset 3 5x", "sleeve 3 5a", "gusset 3 9999a"} {
		_, why := ReadWorked([]string{wrong})
		assert.NotEmpty(t, why, wrong)
	}
}
