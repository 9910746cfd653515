package project

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
)

// drawn is a document as people fill it in, that follows the hand's shape or a
// plain rhythm, now and then with numbers that are fixed already.
func drawn(rng *rand.Rand, follows string) Document {
	cm := func(low, high float64) string { return strconv.FormatFloat(low+(high-low)*rng.Float64(), 'f', 1, 64) }
	s := sheet.Sheet{
		"gauge.swatches[0].stitches": strconv.Itoa(18 + rng.IntN(18)), "gauge.swatches[0].width": "10",
		"gauge.swatches[0].rounds": strconv.Itoa(26 + rng.IntN(22)), "gauge.swatches[0].height": "10",
		"hand.hand_circumference": cm(15, 23), "hand.thumb_circumference": cm(5, 7.5), "schedule.follows": follows,
		"kind": []string{"fingerless", "mitten"}[rng.IntN(2)],
	}
	if rng.IntN(2) == 0 {
		s["hand.gusset_length"] = cm(4, 8)
	}
	if rng.IntN(6) == 0 {
		s["stitch.both_edges"] = "false"
	}
	if rng.IntN(2) == 0 {
		s["thumb.increase"] = []string{"lifted", "yo_closed", "kfb", "centre"}[rng.IntN(4)]
	}
	for _, pin := range [][2]string{{"pins.rhythm", "2"}, {"pins.first_increase", "2"}, {"pins.gusset_base", "2"}, {"pins.kept_on_hand", "1"}} {
		if rng.IntN(6) == 0 {
			s[pin[0]] = pin[1]
		}
	}
	return Document{Name: "drawn", Sheet: s, Side: Right}
}

// asked is a change of the gusset drawn at random, and the increase rounds and
// the number of rounds that it asks for.
func asked(rng *rand.Rand, list []int, rounds int) (c chart.Change, want []int, length int, ok bool) {
	c, want, length = chart.Change{Section: stitch.Gusset}, slices.Clone(list), rounds
	at := rng.IntN(len(list))
	switch rng.IntN(3) {
	case 0:
		c.Kind, c.Round = chart.Move, list[at]
		c.To = c.Round + 1 - 2*rng.IntN(2)
		want[at] = c.To
		ok = c.To >= 1 && c.To <= rounds && !slices.Contains(list, c.To)
		return c, want, length, ok
	case 1:
		c.Kind, c.Round = chart.Insert, 1+rng.IntN(rounds)
		length++
	default:
		c.Kind, c.Round = chart.Remove, 1+rng.IntN(rounds)
		length--
		if slices.Contains(list, c.Round) || length < 2 {
			return c, want, length, false
		}
	}
	for i, r := range list {
		if r > c.Round {
			want[i] += length - rounds
		}
	}
	return c, want, length, true
}

// workable reports whether a gusset can grow in the rounds of a list: a lifted
// increase and a yarn over need a round after them, the latter also at the end.
func workable(how string, list []int, rounds int) bool {
	if how != "lifted" && how != "yo_closed" {
		return true
	}
	for i := range list[1:] {
		if list[i+1]-list[i] < 2 {
			return false
		}
	}
	return how == "lifted" || list[len(list)-1] < rounds
}

// Whatever the increases follow, each can be moved by a round, and rounds can
// be put in and taken out: the plan has just the list that was asked for, and
// nothing else of it changes. One step takes it back.
func TestGussetRoundsChangeWithoutFixingFirst(t *testing.T) {
	for _, follows := range []string{"profile", "rhythm"} {
		t.Run(follows, func(t *testing.T) {
			t.Parallel()
			rng := rand.New(rand.NewPCG(19, uint64(len(follows))))
			pl := NewPlanner()
			done := map[chart.ChangeKind]int{}
			for range testenv.Cases(150, 1_500) {
				d := drawn(rng, follows)
				before, err := pl.Plan(d.Sheet)
				if err != nil {
					continue
				}
				c, want, length, ok := asked(rng, before.Gusset.IncreaseRounds, before.Gusset.Rounds.N)
				if !ok {
					continue
				}
				edits, err := pl.Reshape(d, nil, c)
				if !workable(d.Sheet["thumb.increase"], want, length) {
					require.Error(t, err)
					continue
				}
				require.NoError(t, err, "%v of %v\n%s", c, before.Gusset.IncreaseRounds, d.Sheet.JSON())
				after, _ := carry(t, d, nil, edits)
				is, err := pl.Plan(after.Sheet)
				require.NoError(t, err)
				require.Equal(t, want, is.Gusset.IncreaseRounds, "%v\n%s", c, d.Sheet.JSON())
				require.Equal(t, length, is.Gusset.Rounds.N)
				require.Equal(t, others(before.Plan), others(is.Plan), "%v\n%s", c, d.Sheet.JSON())
				require.Empty(t, stitch.Ledger(is.Mitt()))
				done[c.Kind]++
			}
			t.Log(done)
			for kind, n := range done {
				assert.Greater(t, n, testenv.Cases(150, 1_500)/10, "%s", kind)
			}
			assert.Len(t, done, 3)
		})
	}
}

// others are the numbers of a plan that a change of the gusset's rounds leaves
// alone.
func others(p *mitt.Plan) map[string]string {
	numbers := map[string]string{}
	for _, n := range mitt.Fixable() {
		if text := p.Number(n); text != "" {
			numbers[n.Key()] = text
		}
	}
	for _, n := range []mitt.Number{mitt.GussetRounds, mitt.FirstIncrease, mitt.Rhythm, mitt.IncreaseRounds} {
		delete(numbers, n.Key())
	}
	numbers["top"] = fmt.Sprint(p.Top)
	return numbers
}

// What is on the needles stays, and is told so; what lies above it can change.
func TestKnittedRoundsAreNotReshaped(t *testing.T) {
	pl := NewPlanner()
	d := Samples()[0]
	plan, err := pl.Plan(d.Sheet)
	require.NoError(t, err)
	list := plan.Gusset.IncreaseRounds
	d.Sheet = d.Sheet.Clone()
	d.Sheet.SetProgress(plan.ProgressAt(stitch.Gusset, list[2]), string(d.Side))
	for _, c := range []chart.Change{
		{Kind: chart.Move, Section: stitch.Gusset, Round: list[2], To: list[2] + 1},
		{Kind: chart.Move, Section: stitch.Gusset, Round: list[3], To: list[2]},
		{Kind: chart.Insert, Section: stitch.Gusset, Round: list[2] - 1},
		{Kind: chart.Remove, Section: stitch.CuffPlain, Round: 2},
	} {
		_, err := pl.Reshape(d, nil, c)
		require.ErrorContains(t, err, "knitted already", "%v", c)
	}
	edits, err := pl.Reshape(d, nil, chart.Change{Kind: chart.Move, Section: stitch.Gusset, Round: list[3], To: list[3] + 1})
	require.NoError(t, err)
	after, _ := carry(t, d, nil, edits)
	moved, err := pl.Plan(after.Effective())
	require.NoError(t, err)
	want := slices.Clone(list)
	want[3]++
	assert.Equal(t, want, moved.Gusset.IncreaseRounds)
}
