package web

import (
	"bytes"
	"context"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/web/view"
)

// anything is a sheet of odd but readable numbers, most of which make a plan.
func anything(rng *rand.Rand) sheet.Sheet {
	s := sheet.Sheet{"unit": "mm"}
	pick := func(path string, of ...string) {
		if rng.IntN(3) == 0 {
			s[path] = of[rng.IntN(len(of))]
		}
	}
	number := func(path string, low, high int) { pick(path, fmt.Sprint(low+rng.IntN(high-low+1))) }
	s["gauge.swatches[0].stitches"], s["gauge.swatches[0].width"] = fmt.Sprint(10+rng.IntN(45)), fmt.Sprint(40+rng.IntN(160))
	for i := 1; i < rng.IntN(4); i++ {
		row := fmt.Sprintf("gauge.swatches[%d].", i)
		s[row+"stitches"], s[row+"width"] = fmt.Sprint(10+rng.IntN(45)), fmt.Sprint(40+rng.IntN(160))
		pick(row+"washed", "true", "false")
		pick(row+"worked", "flat", "round")
		pick(row+"on_needles", "true", "false")
	}
	s["hand.hand_circumference"] = fmt.Sprint(80 + rng.IntN(200))
	number("hand.hand_length", 60, 240)
	number("hand.wrist_circumference", 70, 230)
	number("hand.thumb_circumference", 30, 90)
	number("hand.gusset_length", 15, 90)
	pick("hand.reference", "women", "men")
	at := 0
	for i := range rng.IntN(6) {
		s[fmt.Sprintf("hand.profile[%d].height", i)], s[fmt.Sprintf("hand.profile[%d].girth", i)] = fmt.Sprint(at), fmt.Sprint(80+rng.IntN(220))
		at += 1 + rng.IntN(20)
	}
	for i := range rng.IntN(3) {
		s[fmt.Sprintf("hand.profile_above[%d].height", i)], s[fmt.Sprintf("hand.profile_above[%d].girth", i)] = fmt.Sprint(10*(i+1)), fmt.Sprint(80+rng.IntN(200))
	}
	pick("kind", "mitten", "mitten_without_thumb", "fingerless")
	pick("ease.hand", "-30 %", "20 %", "0")
	pick("schedule.follows", "profile", "rhythm")
	pick("schedule.lambda", "0", "2", "1000")
	pick("fit.tolerance", "1", "300")
	pick("fit.tight_above", "1 %", "200 %")
	pick("gauge.hand_variation", "0", "20 %")
	pick("yarn.ball_length", "1", "9000")
	pick("yarn.ball_mass", "0.1", "1000")
	pick("yarn.swatch_stitches", "1", "300")
	pick("yarn.swatch_rounds", "1", "300")
	pick("yarn.swatch_mass", "0.1", "900")
	pick("stitch.both_edges", "false")
	pick("stitch.rib", "1", "4", "7")
	number("pins.cast_on", 20, 60)
	number("pins.gusset_base", 1, 8)
	number("pins.thumb_stitches", 8, 30)
	number("pins.top_rounds", 1, 30)
	pick("pins.rhythm", "2", "2, 3", "5")
	number("pins.first_increase", 1, 9)
	pick("pins.increase_rounds", "1, 4, 7, 10", "3, 4, 9", "2")
	return s
}

// Whatever is typed: a page with a plan, or with what is in its way; no
// picture has a number that is none, and the report can be written.
func TestAnythingMakesAPage(t *testing.T) {
	t.Parallel()
	rng := rand.New(rand.NewPCG(3, 2026))
	pl := project.NewPlanner()
	plans := 0
	for i := range 400 {
		doc := project.New("anything")
		doc.Sheet = anything(rng)
		doc.Side = []project.Side{project.Left, project.Right}[i%2]
		out, err := pl.Derive(doc, chart.Marks{})
		a := view.NewAnswer(doc, out, "", view.ChartAsk{}, err)
		var b bytes.Buffer
		require.NoError(t, view.Fragments(view.Mitt{Doc: doc, Answer: a}).Render(context.Background(), &b), "%v", doc.Sheet)
		require.False(t, strings.Contains(b.String(), "NaN") || strings.Contains(b.String(), "Inf"), "%v", doc.Sheet)
		if out == nil {
			require.NotEmpty(t, a.Faults, "%v", doc.Sheet)
			continue
		}
		plans++
		planned, err := pl.Plan(doc.Sheet)
		require.NoError(t, err)
		_, err = pl.Report(planned, false)
		require.NoError(t, err, "%v", doc.Sheet)
	}
	t.Logf("%d of 400 planned", plans)
	require.Greater(t, plans, 100)
}
