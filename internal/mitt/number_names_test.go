package mitt

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// The names of numbers below are written by hand, one line each, from the foot of the
// ladder up: label, name on the ladder, and what is counted. They are common practice, no
// source.
const usualNames = `
cast_on: Cast on | cast on | stitch
cuff_rounds: Cuff’s edge, rounds | rib rounds | round
cuff_plain_rounds: Plain rounds of the cuff | plain rounds | round
hand_stitches: Hand, stitches | hand | stitch
gusset_base: Gusset base | base | stitch
increases: Increase rounds | increases | 
first_increase: First increase round | first in | round
gusset_rounds: Gusset, rounds | gusset rounds | round
rhythm: Rhythm | every | round
increase_rounds: Increases in rounds | increases in | round
kept_on_hand: Left on the hand | left on hand | stitch
held: Held for the thumb | held | stitch
bridge: Bridge | bridge | stitch
rounds_above_gusset: Above the gusset, rounds | rounds above | round
top_rounds: Top, rounds | top rounds | round
picked_up: Picked up | pick up | stitch
thumb_decreases: Decreased at the corners | at corners | stitch
thumb_stitches: Thumb, stitches | thumb | stitch
thumb_rounds: Thumb, rounds | thumb rounds | round
`

const noGusset = "-gusset_base -increases -first_increase -rhythm -increase_rounds -kept_on_hand -bridge -picked_up"

const straightNames = `
gusset_rounds: To the thumb, rounds | rounds to thumb | round
held: With waste yarn | waste yarn | stitch
rounds_above_gusset: Above the thumb, rounds | rounds above | round
`

const downNames = `
cast_on: Bind off | bind off | stitch
increases: Decrease rounds | decrease rounds | 
first_increase: Last decrease round | last decrease | round
increase_rounds: Decreases in rounds | decreases in | round
held: Thumb into the hand | into the hand | stitch
bridge: Gap | gap | stitch
`

const flatNames = `
cuff_rounds: Cuff’s edge, rows | rib rows | row
cuff_plain_rounds: Plain rows of the cuff | plain rows | row
increases: Increase rows | increases | 
first_increase: First increase row | first in | row
gusset_rounds: Gusset, rows | gusset rows | row
rhythm: Rhythm | every | row
increase_rounds: Increases in rows | increases in | row
rounds_above_gusset: Above the gusset, rows | rows above | row
top_rounds: Top, rows | top rows | row
thumb_rounds: Thumb, rows | thumb rows | row
`

func TestEveryNumberHasItsNameInEveryWay(t *testing.T) {
	// What a way has not is told behind its names, with a minus.
	const noThumb = noGusset + " -gusset_rounds -held -thumb_decreases -thumb_stitches -thumb_rounds"
	const fromTip = "-kept_on_hand -picked_up -thumb_decreases"
	for _, one := range []struct {
		way       string
		of        Names
		otherwise []string // the later counts
		without   string
	}{
		{"usual", Names{}, nil, "-top_rounds"},
		{"mitten", Names{Kind: Mitten}, nil, ""},
		{"in the palm", Names{Kind: Mitten, Make: Make{Place: InPalm}}, nil, ""},
		{"grown in its middle", Names{Kind: Mitten, Make: Make{Increase: InCentre}}, nil, ""},
		{"straight", Names{Kind: Mitten, Make: Make{Construction: Straight}}, []string{straightNames}, noGusset},
		{"slit", Names{Kind: Fingerless, Make: Make{Construction: Slit}}, []string{`
gusset_rounds: Opening, rows | opening rows | row
rounds_above_gusset: Above the opening, rounds | rounds above | round
`}, noGusset + " -held -thumb_decreases -thumb_stitches -thumb_rounds -top_rounds"},
		{"wristlet", Names{Kind: Wristlet}, []string{"rounds_above_gusset: Above the cuff, rounds | rounds above | round"}, noThumb + " -top_rounds"},
		{"without a thumb", Names{Kind: Thumbless}, []string{"rounds_above_gusset: Above the cuff, rounds | rounds above | round"}, noThumb},
		{"from the fingertips", Names{Kind: Mitten, Make: Make{Direction: Down}}, []string{downNames}, fromTip},
		{"wristlet from the fingertips", Names{Kind: Wristlet, Make: Make{Direction: Down}}, []string{downNames, "rounds_above_gusset: Above the cuff, rounds | rounds above | round"}, noThumb + " -top_rounds"},
		{"flat", Names{Kind: Mitten, Make: Make{Flat: true}}, []string{flatNames}, ""},
		{"flat from the fingertips", Names{Kind: Mitten, Make: Make{Flat: true, Direction: Down}}, []string{flatNames, downNames, `
increases: Decrease rows | decrease rows | 
first_increase: Last decrease row | last decrease | row
increase_rounds: Decreases in rows | decreases in | row
`}, fromTip},
		{"straight and flat", Names{Kind: Mitten, Make: Make{Flat: true, Construction: Straight}}, []string{flatNames, straightNames, `
gusset_rounds: To the thumb, rows | rows to thumb | row
rounds_above_gusset: Above the thumb, rows | rows above | row
`}, noGusset},
		{"slit and flat", Names{Kind: Fingerless, Make: Make{Flat: true, Construction: Slit}}, []string{flatNames, `
gusset_rounds: Opening, rows | opening rows | row
rounds_above_gusset: Above the opening, rows | rows above | row
`}, noGusset + " -held -thumb_decreases -thumb_stitches -thumb_rounds -top_rounds"},
		{"wristlet, flat", Names{Kind: Wristlet, Make: Make{Flat: true}}, []string{flatNames, "rounds_above_gusset: Above the cuff, rows | rows above | row"}, noThumb + " -top_rounds"},
		{"garter", Names{Kind: Mitten, Make: Make{Cuff: GarterCuff}}, []string{"cuff_rounds: Garter stitch, rounds | garter rounds | round"}, ""},
		{"rolled", Names{Kind: Mitten, Make: Make{Cuff: RolledCuff}}, []string{"cuff_rounds: Rolled edge, rounds | rolled rounds | round"}, ""},
		{"hem", Names{Kind: Mitten, Make: Make{Cuff: HemCuff}}, []string{"cuff_rounds: Hem, rounds | hem rounds | round"}, ""},
		{"gauntlet", Names{Kind: Mitten, Make: Make{Cuff: Gauntlet}}, []string{"cuff_rounds: Gauntlet, rounds | gauntlet rounds | round"}, ""},
		{"gauntlet, flat", Names{Kind: Mitten, Make: Make{Cuff: Gauntlet, Flat: true}}, []string{flatNames, "cuff_rounds: Gauntlet, rows | gauntlet rows | row"}, ""},
	} {
		want := map[string]string{}
		for _, names := range append([]string{usualNames}, one.otherwise...) {
			for line := range strings.Lines(strings.TrimSpace(names)) {
				key, said, _ := strings.Cut(strings.TrimSuffix(line, "\n"), ": ")
				want[key] = strings.TrimSpace(said)
			}
		}
		for _, key := range strings.Fields(one.without) {
			delete(want, strings.TrimPrefix(key, "-"))
		}
		got := map[string]string{}
		for _, n := range Ladder() {
			if one.of.Has(n) {
				got[n.Key()] = strings.TrimSpace(fmt.Sprintf("%s | %s | %s", one.of.Label(n), one.of.Rung(n), one.of.Noun(n)))
			}
		}
		assert.Equal(t, want, got, one.way)
	}
}

// TestNamesAreThoseOfThePlan holds that what is asked without a plan is what its plan says.
func TestNamesAreThoseOfThePlan(t *testing.T) {
	for _, p := range sampled(t) {
		for _, n := range Ladder() {
			assert.Equal(t, p.Number(n) != "", p.Names().Has(n), "%s of a %s", n, p.Kind)
		}
	}
}

func TestRowsComeInPairs(t *testing.T) {
	round, flat, slit := Names{}, Names{Make: Make{Flat: true}}, Names{Make: Make{Construction: Slit}}
	assert.Equal(t, []int{1, 2, 2, 1, 1}, []int{
		round.Step(GussetRounds), flat.Step(GussetRounds), slit.Step(GussetRounds), slit.Step(CuffRounds), flat.Step(HandStitches),
	})
}
