package pattern

import (
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/likeness"
	"thenar/internal/project"
	"thenar/internal/tally"
	"thenar/internal/testenv"
	reading "thenar/internal/written"
)

// Each size of a text for several opens as the mitt of that size: where it is said to have the
// same counts it has them, in every round, and nearly always it has.
func TestEachSizeOpensAsItsMitt(t *testing.T) {
	rng := rand.New(rand.NewPCG(2728, 1))
	pl := project.NewPlanner()
	all, same := 0, 0
	for i := 0; i < testenv.Cases(12, 300); {
		sizes, _ := drawn(rng, pl, false)
		if len(sizes) < 2 {
			continue
		}
		i++
		text, err := Of(sizes, Style{Rhythm: rng.IntN(2) == 0, Wording: Wording(rng.IntN(3))})
		require.NoError(t, err)
		words := written(t, text)
		read := reading.Read(words)
		report := tally.Work(read)
		for k, s := range sizes {
			size := &report.Sizes[k]
			trace, ok := tally.TraceOf(read, size.Name, size.Hand)
			require.True(t, ok)
			g := s.Out.Plan.Gauge
			on10 := func(perMM float64) string { return strconv.FormatFloat(perMM*100, 'f', 4, 64) }
			l := likeness.Of(words, &trace, size, likeness.Gauge{Stitches: on10(g.Stitches), Rounds: on10(g.Rounds), StitchesPerMM: g.Stitches, RoundsPerMM: g.Rounds})
			if all++; !l.Same() {
				continue
			}
			same++
			again, err := pl.Plan(l.Sheet)
			require.NoError(t, err)
			assert.NoError(t, countedAs(*size, again.Plan.Mitt()), "%v\n%s", l.Sheet, words)
		}
	}
	t.Logf("%d of %d", same, all)
	assert.GreaterOrEqual(t, 100*same, 90*all)
}
