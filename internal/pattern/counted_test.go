package pattern

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/tally"
	"thenar/internal/testenv"
	reading "thenar/internal/written"
)

// countedAs compares the rounds that were counted of a size with those of its mitt.
func countedAs(size tally.Size, m stitch.Mitt) error {
	at := 0
	for _, s := range m.Sections {
		for r, round := range s.Rounds {
			if at >= len(size.Rounds) {
				return fmt.Errorf("%s, round %d: not counted", s.Part, r+1)
			}
			got := size.Rounds[at]
			if got.After != round.Out() || got.Number != r+1 || s.Part == stitch.Gusset && got.Inside != round.LeadOut() {
				return fmt.Errorf("size %s: %s, round %d: %+v, and the plan has %d (%d)", size.Name, s.Part, r+1, got, round.Out(), round.LeadOut())
			}
			at++
		}
	}
	if at != len(size.Rounds) {
		return fmt.Errorf("%d rounds, of %d", len(size.Rounds), at)
	}
	return nil
}

// The text for all sizes passes the count check without a finding, and in every size every
// round comes to the count of its plan: by rhythm or round by round, in abbreviations, full
// words or both, of either hand.
func TestEachSizeIsCounted(t *testing.T) {
	const shards = 4
	for shard := range uint64(shards) {
		t.Run("", func(t *testing.T) {
			t.Parallel()
			rng := rand.New(rand.NewPCG(2727, shard))
			pl := project.NewPlanner()
			for i := 0; i < testenv.Cases(40, 1000)/shards; {
				right, left := drawn(rng, pl, rng.IntN(4) == 0)
				if len(right) < 2 {
					continue
				}
				i++
				style := Style{Rhythm: rng.IntN(2) == 0, Wording: Wording(rng.IntN(3))}
				for _, sizes := range [][]Size{right, left} {
					text, err := Of(sizes, style)
					require.NoError(t, err)
					all := written(t, text)
					report := tally.Work(reading.Read(all))
					require.Len(t, report.Sizes, len(sizes), "%v\n%s", text.Sizes, all)
					for i, s := range sizes {
						require.Equal(t, strings.ToLower(s.Name), strings.ToLower(report.Sizes[i].Name), all)
						require.NoError(t, countedAs(report.Sizes[i], s.Out.Mitt), "%v\nmap[]\n%s", report.Findings, all)
					}
					require.Empty(t, report.Findings, "map[]\n%s", all)
				}
			}
		})
	}
}
