package words

import (
	"bytes"
	"fmt"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/units"
)

func TestSchedule(t *testing.T) {
	for want, c := range map[string]struct {
		rounds                []int
		from, to, step, total int
	}{
		"An increase round, then 2 plain rounds; 6 times in all, then 1 plain round more. 6 increase rounds, 3 → 15 stitches. Rounds 1, 4, 7, 10, 13, 16.":                        {[]int{1, 4, 7, 10, 13, 16}, 3, 15, 2, 19},
		"1 plain round, then a decrease round, then another every 2nd round 4 times, then every round twice. 7 decrease rounds, 48 → 20 stitches. Rounds 2, 4, 6, 8, 10, 11, 12.": {[]int{2, 4, 6, 8, 10, 11, 12}, 48, 20, -4, 15},
		"A decrease round every round; 3 times in all. 3 decrease rounds, 20 → 8 stitches. Rounds 1, 2, 3.":                                                                       {[]int{1, 2, 3}, 20, 8, -4, 3},
		"One increase round, 3 → 5 stitches. Round 1.":                                                                                                                            {[]int{1}, 3, 5, 2, 4},
		"3 plain rounds, then one increase round, 7 → 8 stitches. Round 4.":                                                                                                       {[]int{4}, 7, 8, 1, 9},
		"A decrease round, then 1 plain round; 3 times in all. 3 decrease rounds, 22 → 10 stitches. Rounds 1, 3, 5.":                                                              {[]int{1, 3, 5}, 22, 10, -4, 6},
		"A decrease round, then another every 2nd round twice. 3 decrease rounds, 22 → 10 stitches. Rounds 1, 3, 5.":                                                              {[]int{1, 3, 5}, 22, 10, -4, 5},
		"1 plain round, then a decrease round, then another every 2nd round 3 times. 4 decrease rounds, 24 → 8 stitches. Rounds 2, 4, 6, 8.":                                      {[]int{2, 4, 6, 8}, 24, 8, -4, 8},
		"Plain for 4 rounds: 8 stitches stay as they are.":                                                                                                                        {nil, 8, 8, 2, 4},
		"An increase round, then another every 21st round once, then every 22nd round once, then every 13th round once. 4 increase rounds, 1 → 9 stitches. Rounds 1, 22, 44, 57.": {[]int{1, 22, 44, 57}, 1, 9, 2, 60},
	} {
		assert.Equal(t, want, Schedule(c.rounds, c.from, c.to, c.step, c.total))
	}
}

func TestPhrase(t *testing.T) {
	for want, ops := range map[string][]stitch.Op{
		"k1, M1L, k2, M1R, k1": {stitch.Knit, stitch.M1L, stitch.Knit, stitch.Knit, stitch.M1R, stitch.Knit},
		"(k1, p1) 3 times":     {stitch.Knit, stitch.Purl, stitch.Knit, stitch.Purl, stitch.Knit, stitch.Purl},
		"(k2tog) twice, k1":    {stitch.K2tog, stitch.K2tog, stitch.Knit},
		"":                     {stitch.NoStitch},
	} {
		assert.Equal(t, want, phrase(stitch.Round{Ops: ops}))
	}
}

func plan(t *testing.T, kind mitt.Kind, rib int) *mitt.Plan {
	t.Helper()
	p, err := mitt.New().Plan(&mitt.Request{
		Kind: kind, Gauge: gauge.Gauge{Stitches: 0.24, Rounds: 0.32, Treated: true},
		Hand: hand.Hand{Circumference: 190 * units.Millimetre}, Stitch: mitt.Stitches{Repeat: 2, Rib: rib},
	})
	require.NoError(t, err)
	return p
}

// The whole instructions and reasons of three mitts and of a left hand.
func TestInstructions(t *testing.T) {
	for name, c := range map[string]struct {
		kind mitt.Kind
		rib  int
		left bool
		unit units.Unit
	}{
		"fingerless": {mitt.Fingerless, 4, false, units.CM},
		"mitten":     {mitt.Mitten, 2, false, units.IN},
		"left":       {mitt.Fingerless, 2, true, units.MM},
		"thumbless":  {mitt.Thumbless, 2, false, units.CM},
	} {
		t.Run(name, func(t *testing.T) {
			p := plan(t, c.kind, c.rib)
			m := p.Mitt()
			var pair Pair
			if p.Parted() {
				pair.Parts = stitch.Differing(m, stitch.Mirror(m))
			}
			if c.left {
				m = stitch.Mirror(m)
			}
			var b bytes.Buffer
			for _, passage := range Instructions(m, Hands{Left: c.left, Pair: pair, Tails: Tails{CastOn: 650, End: 200}}) {
				fmt.Fprintf(&b, "# %s\n", passage.Title)
				for _, s := range passage.Steps {
					fmt.Fprintf(&b, "%s | %s\n", s.Label(), s.Text)
				}
			}
			for _, r := range Reasons(p, c.unit, US) {
				fmt.Fprintf(&b, "%s (%s, round %d): %s = %s. %s\n", r.Key, r.Part, r.Round, r.Name, r.Value, r.Why)
			}
			testenv.Golden(t, filepath.Join("testdata", name+".txt"), b.Bytes())
		})
	}
}

// Every round of a section is in exactly one step, in order.
func TestStepsCoverEveryRound(t *testing.T) {
	p := plan(t, mitt.Mitten, 2)
	m := p.Mitt()
	for i, passage := range Instructions(m, Hands{}) {
		next := 1
		for _, s := range passage.Steps {
			if s.From == 0 {
				continue
			}
			require.Equal(t, next, s.From)
			next = s.To + 1
		}
		require.Equal(t, len(m.Sections[i].Rounds)+1, next)
	}
}
