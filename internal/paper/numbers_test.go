package paper

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/mitt"
	"thenar/internal/project"
	"thenar/internal/testenv"
)

// numberWords are the phrases that give a number of the plan on paper, each with a unit or
// with what it counts; %s is its value in words. Rounds of parts stand beside the part's
// name.
var numberWords = map[mitt.Number]string{
	mitt.CastOn: "cast on %s", mitt.HandStitches: "%s", mitt.GussetBase: "gusset begins on %s",
	mitt.Held: "hold %s", mitt.KeptOnHand: "%s of the gusset left on the hand",
	mitt.FirstIncrease: "the first in %s", mitt.Rhythm: ", %s", mitt.IncreaseRounds: ": %s", mitt.ThumbStitches: ": %s",
}

// numbersSaid returns the phrases of all numbers of a plan that are printed: those that are
// not 0, or fixed.
func numbersSaid(s *Sheet) (list []string) {
	p := s.Out.Plan
	for _, r := range s.Out.Reasons {
		if r.Number == "0" && !r.Fixed {
			continue
		}
		text := ""
		switch r.Of {
		case mitt.Increases:
			text = r.Number + " increase rounds"
			if r.Number == "1" {
				text = "1 increase round"
			}
		case mitt.BridgeStitches:
			if text = "cast on " + r.Number + " over the gap"; r.Number == "0" {
				text = "nothing is cast on over the gap"
			}
		case mitt.PickedUp:
			text = r.Number + " picked up"
		case mitt.ThumbDecreases:
			text = r.Number + " decreased at the corners"
		case mitt.CuffRounds, mitt.CuffPlainRounds, mitt.GussetRounds, mitt.RoundsAboveGusset, mitt.TopRounds, mitt.ThumbRounds:
			text = r.Value
		default:
			words, known := numberWords[r.Of]
			if !known {
				panic("no words for " + r.Name)
			}
			text = fmt.Sprintf(words, r.Value)
		}
		if r.Of == mitt.HandStitches {
			if text = "the hand has " + text; p.Cuff.Change != 0 {
				text = fmt.Sprintf("%d → %s", p.Cuff.CastOn.N, r.Value)
			}
		}
		if r.Fixed {
			text += " (fixed)"
		}
		list = append(list, text)
	}
	return list
}

// wildSheets returns mitts of all kinds and sizes of hand and gauge, with many numbers
// fixed.
func wildSheets(t *testing.T, n int) (list []Sheet) {
	t.Helper()
	rng := rand.New(rand.NewPCG(22, 1))
	pl := project.NewPlanner()
	pins := [][2]string{
		{"pins.gusset_base", "1"},
		{"pins.increases", "5"},
		{"pins.gusset_rounds", "21"},
		{"pins.held", "13"},
		{"pins.bridge", "0"},
		{"pins.kept_on_hand", "2"},
		{"pins.picked_up", "0"},
		{"pins.thumb_decreases", "2"},
		{"pins.cuff_plain_rounds", "0"},
		{"pins.cuff_rounds", "30"},
		{"pins.rounds_above_gusset", "3"},
		{"pins.thumb_rounds", "1"},
		{"pins.increase_rounds", "1, 2, 3, 5, 8, 13, 21"},
	}
	var last error
	for tries := 0; len(list) < n; tries++ {
		require.Less(t, tries, 20*n+50, "too few plans: %v", last)
		doc := project.Samples()[rng.IntN(3)]
		doc.Sheet = doc.Sheet.Clone()
		if rng.IntN(2) == 0 {
			doc.Side = project.Left
		}
		doc.Sheet["kind"] = []string{"fingerless", "mitten", "mitten_without_thumb"}[rng.IntN(3)]
		unit := []struct {
			name string
			cm   float64
		}{{"cm", 1}, {"in", 2.54}}[rng.IntN(2)]
		doc.Sheet["unit"] = unit.name
		gauge := []float64{8, 20, 32, 60}[rng.IntN(4)]
		for key, value := range map[string]string{
			"stitches": fmt.Sprint(gauge), "rounds": fmt.Sprint(gauge * 1.35), "width": fmt.Sprintf("%.4f", 10/unit.cm), "height": fmt.Sprintf("%.4f", 10/unit.cm),
		} {
			doc.Sheet["gauge.swatches[0]."+key] = value
		}
		for _, girth := range []string{"hand.wrist_circumference", "hand.thumb_circumference", "hand.gusset_length", "hand.thumb_length", "hand.wrist_to_crotch"} {
			delete(doc.Sheet, girth)
		}
		size := 11 + rng.Float64()*16
		doc.Sheet["hand.hand_circumference"], doc.Sheet["hand.hand_length"] = fmt.Sprintf("%.1f", size/unit.cm), fmt.Sprintf("%.1f", size/unit.cm*(0.8+rng.Float64()*0.3))
		for _, pin := range pins {
			if rng.IntN(5) == 0 {
				doc.Sheet[pin[0]] = pin[1]
			}
		}
		out, err := pl.Derive(doc, nil)
		if last = err; err == nil {
			list = append(list, Sheet{Doc: doc, Out: out})
		}
	}
	return list
}

// Every number of the plan is on the paper, once, with its unit, and "(fixed)" where it is;
// for every kind of mitt, at all gauges, with many numbers fixed: nothing is off the paper
// or lies on anything else.
func TestEveryNumberIsOnThePaper(t *testing.T) {
	all := []Options{{Paper: A4}, {Paper: Letter}, {Paper: A4, Sideways: true}, {Paper: Letter, Sideways: true}, {Paper: A4, Large: true}, {Paper: Letter, Large: true, Sideways: true}}
	for k, s := range wildSheets(t, testenv.Cases(12, 300)) {
		o := all[k%len(all)]
		o.Pieces = []Piece{Plan}
		pages := Handout(s, o)
		what := fmt.Sprintf("%d: %v, %s", k, s.Doc.Sheet, o.said())
		shot(t, fmt.Sprintf("numbers-%d", k), pages)
		saidOnce(t, pages, numbersSaid(&s), what)
		for _, p := range pages {
			checkPage(t, p)
			marksAreOnPaper(t, p, what)
			nothingOverlaps(t, p, o, what)
		}
		if t.Failed() {
			return
		}
	}
}

// On upright paper all numbers stand on the first page of an ordinary handout, with the
// hand at half of life wherever that fits.
func TestNumbersStandTogether(t *testing.T) {
	doc := project.Samples()[0]
	doc.Sheet = doc.Sheet.Clone()
	doc.Sheet["pins.increase_rounds"], doc.Sheet["pins.gusset_rounds"] = "2, 4, 8, 11, 14, 17", "21"
	s := derived(t, doc, chart.Marks{})
	for _, size := range papers() {
		for _, sideways := range []bool{false, true} {
			o := Options{Paper: size, Sideways: sideways, Pieces: []Piece{Plan}}
			pages := Handout(s, o)
			require.Len(t, pages, 1)
			saidOnce(t, pages, numbersSaid(&s), o.said())
			half := false
			pages[0].Each(draw.Place{Scale: 1}, func(i *draw.Item, at draw.Place) { half = half || i.Kind == draw.PathItem && at.Scale == 0.5 })
			assert.True(t, half, o.said())
		}
	}
}
