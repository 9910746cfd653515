package grade

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/mitt"
)

// ears is a design of fingerless mitts whose motif has six stitches, in the glove
// sizes 6 to 11.
func ears(more string) string {
	var sizes []string
	for n := 6; n <= 11; n++ {
		sizes = append(sizes, fmt.Sprintf(`{"name": "%d", "hand": {"size": %d}}`, n, n))
	}
	return `{"format": "thenar/design@1", "sheet": {"kind": "fingerless", "gauge": {"swatches": [{"stitches": 24, "width": 10, "rounds": 32, "height": 10}]},
		"ease": {"hand": 0}, "stitch": {"repeat": 6}}, "sizes": [` + strings.Join(sizes, ", ") + `]` + more + `}`
}

func graded(t *testing.T, text string) *Graded {
	t.Helper()
	d, err := ParseDesign([]byte(text))
	require.NoError(t, err)
	g, err := Grade(t.Context(), d)
	require.NoError(t, err)
	return g
}

// What the computation's own text works out for this design: notches at √μ = 5.0, 5.4
// and 7.5 mm with 2, 1 and 0 changes. Each size's own best has 6 changes here: there
// the stitches picked up are counted as a reader meets them, not as more than the bridge.
func TestSixSizesOfEars(t *testing.T) {
	g := graded(t, ears(""))
	var notches []string
	for _, n := range g.Notches {
		notches = append(notches, fmt.Sprintf("%.1f %d", math.Sqrt(n.From), n.Changes))
	}
	require.Equal(t, []string{"0.0 6", "2.6 3", "5.0 2", "5.4 1", "7.5 0"}, notches)
	require.Equal(t, 2, g.Notches[g.At].Changes, "the fewest changes at which no size pays more than 4 mm")
	for i, s := range g.Sizes {
		require.NoError(t, s.Err)
		require.Equal(t, 36+6*i, s.Plan.Body.Stitches.N, "size n has n ears")
		require.Equal(t, s.Text[:4], []int{s.Plan.Gusset.Base, s.Plan.Bridge.CastOn, s.Plan.Thumb.PickedUp, s.Plan.Thumb.Decreased})
		require.Empty(t, s.Falls)
		require.False(t, s.Same)
	}
	require.Equal(t, "3.4 0.8 0.3 0.5 0.0 0.0", pays(g))
	require.Equal(t, Split{mitt.PickedUp, []Group{{[]string{"6"}, 4}, {[]string{"7", "8", "9", "10", "11"}, 6}}}, g.Splits[2])
	require.Equal(t, Split{mitt.Rhythm, []Group{{[]string{"6", "7", "8"}, 4}, {[]string{"9", "10", "11"}, 3}}}, g.Splits[4])
	require.Equal(t, []int{1, 5, 9, 13}, g.Sizes[1].Plan.Gusset.IncreaseRounds)
}

func pays(g *Graded) string {
	var list []string
	for _, s := range g.Sizes {
		list = append(list, fmt.Sprintf("%.1f", s.Pays))
	}
	return strings.Join(list, " ")
}

// The designer's price takes the notch that is the best at it: own bests for
// nothing, one text for much.
func TestPriceOfAChange(t *testing.T) {
	for price, changes := range map[string]int{"0": 6, "6.7": 6, "7": 3, "26": 2, "29.5": 1, "57": 0, "10000": 0} {
		g := graded(t, ears(`, "rules": {"price_mm2": `+price+`}`))
		require.Equal(t, changes, g.Notches[g.At].Changes, "at %s mm²", price)
	}
}

// What is fixed for all sizes is the same in all, and what is fixed for one only there.
func TestFixedForAllAndForOne(t *testing.T) {
	g := graded(t, ears(`, "pins": {"all": {"gusset_base": 3}, "8": {"gusset_rounds": 24, "rhythm": 4}}`))
	for i, s := range g.Sizes {
		require.Equal(t, 3, s.Plan.Gusset.Base)
		require.Equal(t, i >= 2, s.Plan.Gusset.Rounds.N == 24, s.Name)
	}
	require.Equal(t, 4, g.Sizes[2].Text[4])
	// The next sizes would have fewer rounds; they are held, at a cost.
	require.Equal(t, 24, g.Sizes[3].Plan.Gusset.Rounds.N)
	require.True(t, g.Sizes[3].Falls[0].Held)
	require.Equal(t, mitt.GussetRounds, g.Sizes[3].Falls[0].Number)
	require.Positive(t, g.Sizes[3].Falls[0].MM)
}

// Rounds keep to a motif's height, lengths go in proportion to the hand or stay.
func TestRulesOfLength(t *testing.T) {
	const lengths = `, "hand": {"size": 8}, "length": {"cuff": 4, "thumb": 3}}, "sizes"`
	with := func(more string) *Graded {
		return graded(t, strings.Replace(ears(more), `}, "sizes"`, lengths, 1))
	}
	g := with(`, "rules": {"multiples": {"rounds_above_gusset": 4, "gusset_rounds": [6, 1]}}`)
	require.Less(t, g.Sizes[0].Plan.Cuff.Rounds, g.Sizes[5].Plan.Cuff.Rounds)
	for _, s := range g.Sizes {
		require.Zero(t, s.Plan.Body.RoundsAbove%4, s.Name)
		require.Equal(t, 1, s.Plan.Gusset.Rounds.N%6, s.Name)
	}
	g = with(`, "rules": {"length": "fixed"}`)
	require.Equal(t, g.Sizes[0].Plan.Cuff.Rounds, g.Sizes[5].Plan.Cuff.Rounds)
}

// Sizes too near each other come out the same, which is told.
func TestSpareSize(t *testing.T) {
	g := graded(t, strings.Replace(ears(""), `{"name": "7", "hand": {"size": 7}}`, `{"name": "6½", "hand": {"hand_circumference": 15.3, "hand_length": 16}}, {"name": "7", "hand": {"hand_circumference": 15.31, "hand_length": 16}}`, 1))
	require.Equal(t, "7", g.Sizes[2].Name)
	require.True(t, g.Sizes[2].Same)
	require.False(t, g.Sizes[3].Same)
}

func TestDesignIsRefused(t *testing.T) {
	for name, c := range map[string][2]string{
		"nothing":        {``, "design: is not JSON"},
		"list":           {`[]`, "design: is []; write an object in braces"},
		"no format":      {`{"sizes": []}`, "format: is missing"},
		"other format":   {`{"format": "thenar/sheet@1"}`, `format: is "thenar/sheet@1"; write "thenar/design@1"`},
		"unknown key":    {`{"format": "thenar/design@1", "grade": 1}`, "grade: is not known here; known keys are format, sheet, sizes, rules, pins, pattern"},
		"twice":          {`{"format": "thenar/design@1", "rules": {}, "rules": {}}`, "design: is not JSON as expected: "},
		"after":          {ears("") + "{}", "design: is not JSON as expected: it goes on"},
		"no sizes":       {`{"format": "thenar/design@1", "sheet": {}}`, "sizes: is empty"},
		"nameless":       {strings.Replace(ears(""), `"name": "7"`, `"name": " "`, 1), "sizes[1].name: is missing"},
		"name twice":     {strings.Replace(ears(""), `"name": "7"`, `"name": "6"`, 1), `sizes[1].name: is "6", as that of size 1`},
		"comma in name":  {strings.Replace(ears(""), `"name": "7"`, `"name": "6, 7"`, 1), `sizes[1].name: is "6, 7"`},
		"sheet":          {strings.Replace(ears(""), `"ease"`, `"eese"`, 1), `sheet.eese: is not known here`},
		"hand":           {strings.Replace(ears(""), `{"size": 7}`, `{"sise": 7}`, 1), `sizes[1].hand.sise: is not known here`},
		"hand's value":   {strings.Replace(ears(""), `{"size": 7}`, `{"hand_circumference": "wide"}`, 1), `sizes[1].hand.hand_circumference: is not a number`},
		"no hand":        {strings.Replace(ears(""), `{"size": 7}`, `{}`, 1), `sizes[1].hand.hand_circumference: is missing`},
		"rule":           {ears(`, "rules": {"length": "long"}`), "rules.length: is \"long\"; write in_proportion or fixed"},
		"price":          {ears(`, "rules": {"price_mm2": -1}`), "rules.price_mm2: is -1"},
		"multiple":       {ears(`, "rules": {"multiples": {"gusset_rounds": [4, 4]}}`), "rules.multiples.gusset_rounds: is 4 and 4"},
		"multiple of":    {ears(`, "rules": {"multiples": {"cast_on": 4}}`), "rules.multiples.cast_on: is not known here"},
		"odd multiple":   {ears(`, "rules": {"multiples": {"gusset_rounds": "4"}}`), `rules.multiples.gusset_rounds: is "4"`},
		"pin":            {ears(`, "pins": {"all": {"cast_of": 4}}`), "pins.all.cast_of: is not known here"},
		"pins of nobody": {ears(`, "pins": {"12": {}}`), "pins.12: is no size of this design; write all, or one of: 6, 7, 8, 9, 10, 11"},
		"lengths":        {strings.Replace(ears(""), `}, "sizes"`, `, "length": {"cuff": 4}}, "sizes"`, 1), "sheet.hand: is missing or wrong"},
	} {
		d, err := ParseDesign([]byte(c[0]))
		if err == nil {
			_, err = Grade(t.Context(), d)
		}
		require.ErrorContains(t, err, c[1], name)
		var fields fault.Fields
		require.ErrorAs(t, err, &fields, name)
	}
	// One request is bounded: a gusset of so many rounds would take a minute.
	d, err := ParseDesign([]byte(strings.Replace(ears(""), `{"size": 7}`, `{"hand_circumference": 40, "hand_length": 90, "gusset_length": 85}`, 1)))
	require.NoError(t, err)
	_, err = Grade(t.Context(), d)
	require.ErrorContains(t, err, "].hand.gusset_length: asks for 272 rounds of gusset; one text for several sizes takes at most 200")
	many := strings.Repeat(`{"name": "x", "hand": {}},`, MaxSizes)
	_, err = ParseDesign([]byte(strings.Replace(ears(""), `"sizes": [`, `"sizes": [`+many, 1)))
	require.ErrorContains(t, err, "sizes: has 13 sizes; 12 are the most")
}
