package grade

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
)

// anyDesign is a design of six sizes with a gusset.
func anyDesign(rng *rand.Rand) *Design {
	pick := func(list ...string) string { return list[rng.IntN(len(list))] }
	stitches := 16 + rng.IntN(22)
	d := &Design{Sheet: sheet.Sheet{
		"kind": pick("fingerless", "mitten", "glove"), "unit": "mm",
		"gauge.swatches[0].stitches": fmt.Sprint(stitches), "gauge.swatches[0].width": "100",
		"gauge.swatches[0].rounds": fmt.Sprint(stitches * (12 + rng.IntN(4)) / 10), "gauge.swatches[0].height": "100",
		"ease.hand": pick("", "-0.05", "0", "0.06"), "stitch.repeat": pick("", "2", "4", "6"), "piece.direction": pick("", "", "down"),
		"thumb.increase": pick("", "", "lifted"), "thumb.place": pick("", "", "palm"), "stitch.both_edges": pick("", "", "", "false"),
	}}
	if d.Sheet["kind"] == "glove" {
		delete(d.Sheet, "piece.direction") // it is worked up
	}
	if d.Sheet["piece.direction"] == "down" {
		delete(d.Sheet, "thumb.increase") // it is decreased
	}
	girth := 140 + 30*rng.Float64()
	for i := range 6 {
		h := sheet.Sheet{"hand.hand_circumference": fmt.Sprintf("%.1f", girth)}
		if rng.IntN(3) == 0 {
			h["hand.hand_length"] = fmt.Sprintf("%.1f", girth*(0.9+0.1*rng.Float64()))
		}
		d.Sizes = append(d.Sizes, Size{fmt.Sprint("n", i), h})
		girth += 5 + 15*rng.Float64()
	}
	return d
}

// In random designs of six sizes every plan is sound and as the common text says, no
// number falls that could be held, and by default nobody pays more than 4 mm unless a
// gusset would fall.
func TestRandomDesigns(t *testing.T) {
	rng := rand.New(rand.NewPCG(26, 3))
	var notches, changes, paid []float64
	most, worst := map[int][]float64{}, 0.0
	held, falls, kept := 0, 0, 0
	for range 200 {
		d := anyDesign(rng)
		g, err := Grade(t.Context(), d)
		require.NoError(t, err, "%+v", d)
		if slices.Max(g.Notches[0].Pays) > 0 {
			kept++ // a gusset that would fall is kept from it, at a cost
		}
		var before *mitt.Plan
		for _, s := range g.Sizes {
			require.NoError(t, s.Err, "%+v", d)
			require.Empty(t, stitch.Ledger(s.Plan.Mitt()), "%+v", d)
			p := s.Plan
			require.Equal(t, s.Text[:4], []int{p.Gusset.Base, p.Bridge.CastOn, p.Count(mitt.PickedUp), p.Count(mitt.ThumbDecreases)}, "%+v", d)
			for i, r := range p.Gusset.IncreaseRounds {
				require.True(t, s.Text[4] == 0 || r == 1+i*s.Text[4], "%v in every %dth", p.Gusset.IncreaseRounds, s.Text[4])
			}
			require.True(t, g.At == 0 || s.Pays <= mostPaid, "%+v", d)
			for _, n := range neverFall {
				told := slices.IndexFunc(s.Falls, func(f Fall) bool { return f.Number == n })
				if before == nil || p.Count(n) >= before.Count(n) || rising(p, n) < rising(before, n) {
					continue
				}
				require.True(t, told >= 0 && !s.Falls[told].Held, "%v falls from %d to %d, untold: %+v", n, before.Count(n), p.Count(n), d)
				falls++
			}
			for _, f := range s.Falls {
				if f.Held {
					held++
					worst = max(worst, math.Abs(f.MM))
				}
			}
			require.True(t, before == nil || !g.Barred || p.Gusset.Stitches >= before.Gusset.Stitches || palm(p) < palm(before), "%+v", d)
			before = p
		}
		at := g.Notches[g.At]
		notches, changes, paid = append(notches, float64(len(g.Notches))), append(changes, float64(at.Changes)), append(paid, slices.Max(at.Pays))
		for i, n := range g.Notches {
			most[min(i, 9)] = append(most[min(i, 9)], slices.Max(n.Pays))
		}
	}
	t.Logf("200 designs: notches %s, changes by default %s, the size that pays most then %s mm; held %d times, at most %.1f mm, %d fall; gussets kept from falling in %d", spread(notches), spread(changes), spread(paid), held, worst, falls, kept)
	require.Less(t, kept, 100)
	for i := range len(most) {
		t.Logf("notch %d of %d designs: the size that pays most %s mm", i, len(most[i]), spread(most[i]))
	}
}

// spread is the median and the greatest of a list.
func spread(list []float64) string {
	slices.Sort(list)
	return fmt.Sprintf("%.1f (%.1f)", list[len(list)/2], list[len(list)-1])
}

// Six sizes are planned jointly in a small part of the tenth of a second that they may take.
func BenchmarkSixSizes(b *testing.B) {
	d := anyDesign(rand.New(rand.NewPCG(26, 4)))
	for b.Loop() {
		if _, err := Grade(b.Context(), d); err != nil {
			b.Fatal(err)
		}
	}
}
