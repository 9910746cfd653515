package view

import (
	"slices"
	"strings"

	"thenar/internal/mitt"
)

// madeTitle heads the fields of how a mitt is made.
const madeTitle = "How it is made"

// makeFields are the choices of how a mitt is made, those that can be planned. An
// empty choice is the usual one, so that a sheet without them stays without.
var makeFields = []Field{
	{Path: mitt.PathDirection, Label: "Begun", Usual: string(mitt.Up), Choices: []Choice{{"", "at the cuff"}, {string(mitt.Down), "at the fingertips"}}},
	{Path: mitt.PathConstruction, Label: "Thumb", Help: "left out of a fingerless mitt: a wristlet", Usual: string(mitt.ByGusset), Choices: []Choice{
		{"", "with a gusset"},
		{string(mitt.Straight), "on waste yarn, without a gusset"},
		{string(mitt.Slit), "an opening, in rows"},
		{string(mitt.NoThumb), "left out"},
	}},
	{Path: mitt.PathPlace, Label: "Thumb sits", Usual: string(mitt.AtSide), Choices: []Choice{{"", "at the side"}, {string(mitt.InPalm), "in the palm"}}},
	{Path: mitt.PathInset, Label: "In the palm by", Help: "stitches from the side; left out: a sixteenth of the hand, 1 on waste yarn"},
	{Path: mitt.PathIncrease, Label: "Gusset grows by", Usual: string(mitt.MakeOne), Choices: []Choice{
		{"", "make ones"},
		{string(mitt.Lifted), "lifted increases"},
		{string(mitt.YoClosed), "yarn overs, closed"},
		{string(mitt.FrontAnd), "knit front and back"},
		{string(mitt.InCentre), "make ones in its middle"},
	}},
	{Path: "stitch.both_edges", Label: "Increases", Choices: []Choice{{"true", "at both edges of the gusset"}, {"false", "at one edge"}}},
	{Path: mitt.PathFlat, Label: "The mitt is", Usual: "false", Choices: []Choice{{"", "knitted in the round"}, {"true", "knitted flat, with a seam"}}},
	{Path: mitt.PathCuff, Label: "Cuff is", Usual: string(mitt.RibCuff), Choices: []Choice{
		{"", "ribbed"}, {string(mitt.GarterCuff), "garter stitch"}, {string(mitt.RolledCuff), "a rolled edge"}, {string(mitt.HemCuff), "a folded hem"}, {string(mitt.Gauntlet), "a gauntlet"},
	}},
	{Path: mitt.PathKnits, Label: "Knits of its rib", Help: "with the purls, in place of the rib above"},
	{Path: mitt.PathPurls, Label: "Purls of its rib"},
	{Path: mitt.PathCuffDepth, Label: "Depth of hem or gauntlet", Help: "once a hem is folded; left out, it follows the hand’s length", Unit: unitSign},
	{Path: mitt.PathUpperGirth, Label: "Gauntlet’s upper girth", Help: "round the sleeve; left out: 1.4 times the wrist (common practice)", Unit: unitSign},
	{Path: mitt.PathTop, Label: "Top is", Help: "of a mitten", Usual: string(mitt.RoundedTop), Choices: []Choice{
		{"", "rounded"},
		{string(mitt.PointedTop), "pointed"},
		{string(mitt.BandedTop), "rounded, with bands"},
		{string(mitt.WedgesTop), "in wedges"},
		{string(mitt.GatheredTop), "gathered"},
	}},
	{Path: mitt.PathBand, Label: "Stitches of a band", Help: "1 to 6; left out: 3"},
	{Path: mitt.PathWedges, Label: "Wedges", Help: "3 to 8; left out: 4"},
}

// makeField returns the field of a choice of how a mitt is made.
func makeField(path string) (f Field, ok bool) {
	for _, list := range [][]Field{makeFields, coveredFields()} {
		if i := slices.IndexFunc(list, func(o Field) bool { return o.Path == path }); i >= 0 {
			return list[i], true
		}
	}
	return Field{}, false
}

// choiceWords returns what a value of a field is called; ok is false where it is
// none of the field's choices.
func (f Field) choiceWords(value string) (words string, ok bool) {
	for _, c := range f.Choices {
		if value != "" && (c.Value == value || c.Value == "" && f.Usual == value) {
			return c.Words, true
		}
	}
	return "", false
}

// choicesWorded replaces the values of a choice in a message at its field by
// their words: "is lifted; write m1" is said as the form says it.
func choicesWorded(f Field, message string) string {
	said := strings.Split(message, " ")
	for i, word := range said {
		bare := strings.TrimRight(word, ",;.")
		if w, ok := f.choiceWords(bare); ok {
			said[i] = w + word[len(bare):]
		}
	}
	return strings.Replace(strings.Join(said, " "), "; write ", "; choose ", 1)
}

// wayOut says what a button does that takes the nearest that works in place of
// what is refused at a field; empty if there is none.
func wayOut(path, nearest string) string {
	f, made := makeField(path)
	if _, of, _, ok := find(path); ok && !made {
		f = of
	}
	words, choice := f.choiceWords(nearest)
	switch {
	case otherFields(nearest):
		return "Half for all"
	case choice:
		return "Take " + words
	case made && nearest == "":
		return "Leave it out"
	case nearest != "" && (made || pinned(path)):
		return "Use " + nearest
	}
	return ""
}

// otherFields reports whether what works beside a fault is a query of other fields, not a
// value of its own.
func otherFields(works string) bool { return strings.Contains(works, "=") }
