package view

import (
	"strconv"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/words"
)

// unitSign in Field.Unit stands for the sheet's unit.
const unitSign = "unit"

// groups are the fields of the measure form: in the order in which a tape goes
// round a hand, the swatch first, and at the end what is seldom changed.
var groups = []Group{
	{Title: "Mitt", Fields: []Field{
		{Path: "kind", Label: "Kind", Choices: []Choice{{"fingerless", "fingerless mitt"}, {"mitten", "mitten"}, {"mitten_without_thumb", "mitten, no thumb"}, {"glove", "glove"}}},
		{Path: "side", Label: "Hand", Choices: []Choice{{"right", "right hand"}, {"left", "left hand"}}},
	}},
	{Title: "Swatch", Terms: []words.Term{words.TermSwatch, words.TermGauge}, Note: "Knit it in the round, or flat for a flat mitt; wash it, let it dry. Count over {over} or more. Each further swatch makes the plan surer.", Fields: swatchFields, Rows: "gauge.swatches", Row: "Swatch", Max: 20, More: 6},
	{Title: "Hand", Terms: []words.Term{words.TermGusset}, Note: "Lay the tape without pulling. Only the hand is needed; the rest is filled until you measure it.", Fields: []Field{
		{Path: "hand.wrist_circumference", Label: "Wrist", Help: "round the wrist bones", Unit: unitSign},
		{Path: "hand.hand_circumference", Label: "Hand", Help: "round the knuckles, without the thumb", Unit: unitSign, Need: true},
		{Path: "hand.thumb_circumference", Label: "Thumb", Help: "round its joint", Unit: unitSign},
		{Path: "hand.palm_and_thumb_circumference", Label: "Palm with thumb", Help: "where the thumb parts, the thumb laid along the palm", Unit: unitSign},
		{Path: "hand.gusset_length", Label: "Gusset length", Help: "along the thumb's side, from the bone at the wrist to where thumb and hand part", Unit: unitSign},
		{Path: "hand.wrist_to_crotch", Label: "Wrist to thumb", Help: "from the wrist crease straight up to where the thumb parts", Unit: unitSign},
		{Path: "hand.thumb_length", Label: "Thumb length", Help: "from where it parts to its tip", Unit: unitSign},
		{Path: "hand.hand_length", Label: "Hand length", Help: "from the wrist crease to the tip of the middle finger", Unit: unitSign},
	}},
	fingerGroup(),
	{Title: "Units and terms", Fields: []Field{
		{Path: "unit", Label: "Lengths in", Help: "the unit of what is typed above; the numbers stay as they are", Choices: []Choice{{"cm", "centimetres"}, {"mm", "millimetres"}, {"in", "inches"}}},
		{Path: sheet.PathTerms, Label: "Terms", Help: "in the pattern, too", Choices: []Choice{{string(words.US), "US: bind off, gauge"}, {string(words.UK), "UK: cast off, tension"}}},
	}},
	{Title: "No tape? Start from", Note: "Fills what is missing above, until you measure it.", Fields: []Field{
		{Path: "hand.size", Label: "Glove size", Help: "EN 420, EN ISO 21420: the hand in inches", Choices: sizeChoices()},
		{Path: "hand.hand_breadth", Label: "Breadth of the hand", Help: "straight across the knuckles, without the thumb", Unit: unitSign},
		{Path: "hand.reference", Label: "Averages of", Help: "whose averages fill the rest; a hand length alone will do, too", Choices: []Choice{{"both", "women and men"}, {"women", "women"}, {"men", "men"}}},
	}, Folded: true},
	{Title: "The hand’s own shape", Note: "The tape round hand and thumb, thumb laid in, at four heights or more. Wrist bone, thumb’s base, half-way up its mound, where it parts.", Fields: []Field{
		{Path: "height", Label: "Height above the base", Help: "0 is the base of the thumb’s mound, where a gusset begins", Unit: unitSign},
		{Path: "girth", Label: "Girth there", Help: "with the thumb", Unit: unitSign},
	}, Rows: "hand.profile", Row: "Girth", Max: 50, Folded: true},
	{Title: "Above the thumb", Note: "Girths without the thumb, if the hand is not as wide all the way up.", Fields: []Field{
		{Path: "height", Label: "Height above the parting", Unit: unitSign},
		{Path: "girth", Label: "Girth there", Help: "without the thumb", Unit: unitSign},
	}, Rows: "hand.profile_above", Row: "Girth above", Max: 50, Folded: true},
	{Title: "Stitches", Fields: []Field{
		{Path: "stitch.rib", Label: "Rib", Choices: []Choice{{"2", "k1, p1"}, {"4", "k2, p2"}, {"3", "k2, p1"}, {"6", "k3, p3"}, {"1", "none, plain"}}},
		{Path: "stitch.repeat", Label: "Hand is a multiple of", Help: "stitches in the pattern's repeat; 2 without"},
		{Path: "stitch.offset", Label: "plus", Help: "stitches beside the repeats"},
	}, Folded: true},
	{Title: madeTitle, Note: "Measures and fixed numbers stay, whatever you choose. What has no use for them says so.", Fields: makeFields, Folded: true},
	{Title: "How far fingers are covered", Note: "Each by itself, and the thumb, too.", Fields: coveredFields(), AtOnce: allCovered(), Folded: true},
	{Title: "Increases", Note: "Close to the hand, or easy to remember? The plan says what each costs.", Fields: []Field{
		{Path: "schedule.follows", Label: "Follow", Choices: []Choice{{"", "the hand’s shape where it is measured"}, {"profile", "the hand’s shape"}, {"rhythm", "a plain rhythm"}}},
		{Path: "schedule.lambda", Label: "Price of a changed rhythm", Help: "in stitches²; left out: 8 (common practice)", Steps: lambdaSteps},
	}, Folded: true},
	{Title: "Ease", Terms: []words.Term{words.TermEase, words.TermGusset}, Note: "How much larger than the hand it is knitted: −5\u00a0% is 5\u00a0% smaller.", Fields: []Field{
		{Path: "ease.hand", Label: "Hand", Help: "left out: −5\u00a0% fingerless, +5\u00a0% mitten, +15\u00a0% thumbless, more in thick yarn (common practice)"},
		{Path: "ease.cuff", Label: "Cuff", Help: "on the wrist; left out: none (common practice)"},
		{Path: "ease.gusset", Label: "Half-way up the gusset", Help: "left out: between hand and parting"},
		{Path: "ease.palm", Label: "Where the thumb parts", Help: "left out: as the hand, but never less than none (common practice)"},
		{Path: mitt.PathCapEase, Label: "A mitten’s cap", Help: "on the hand; left out: +5\u00a0% (common practice)"},
		{Path: "ease.thumb_girth_added", Label: "Room for the thumb", Help: "added to its girth; left out: about 12 mm (common practice)", Unit: unitSign},
	}, Folded: true},
	{Title: "The pair", Note: "Once one hand is on the needles.", Fields: []Field{
		{Path: sheet.PathSecond, Label: "The other hand", Choices: []Choice{{"", "like the one on the needles, mirrored"}, {sheet.Anew, "from its cast-on, with all that was learned"}}},
	}, Folded: true},
	{Title: "Lengths", Note: "Left out, they follow the hand's length (common practice).", Fields: []Field{
		{Path: "length.cuff", Label: "Ribbing, or another cuff", Unit: unitSign},
		{Path: "length.cuff_plain", Label: "Plain cuff", Help: "between the cuff’s edge and the gusset", Unit: unitSign},
		{Path: "length.above_gusset", Label: "Above the gusset", Help: "edging included, a mitten's top not", Unit: unitSign},
		{Path: "length.edging", Label: "Edging of the hand", Unit: unitSign},
		{Path: "length.thumb", Label: "Thumb", Help: "edging included", Unit: unitSign},
		{Path: "length.thumb_edging", Label: "Edging of the thumb", Unit: unitSign},
		{Path: mitt.PathCapLength, Label: "A mitten’s cap", Help: "from where it is picked up to its end", Unit: unitSign},
	}, Folded: true},
	{Title: "Fit", Note: "How far off still fits. How far it stretches before it is snug, or tight (common practice).", Fields: []Field{
		{Path: "fit.tolerance", Label: "Fits within", Help: "of what was wanted; left out: 5 mm", Unit: unitSign},
		{Path: "fit.loose_below", Label: "Too loose below", Help: "left out: −20\u00a0%"},
		{Path: "fit.snug_from", Label: "Snug from", Help: "left out: 0\u00a0%"},
		{Path: "fit.tight_above", Label: "Too tight above", Help: "left out: 15\u00a0%"},
		{Path: "gauge.hand_variation", Label: "How unevenly you knit", Help: "from day to day; left out: 1.5\u00a0%"},
	}, Folded: true},
	{Title: "Yarn", Note: "As on the ball’s band. A weighed or unravelled swatch tells more than the gauge.", Fields: []Field{
		{Path: "yarn.ball_length", Label: "Length of a ball"},
		{Path: "yarn.length_unit", Label: "in", Choices: []Choice{{"m", "metres"}, {"yd", "yards"}}},
		{Path: "yarn.ball_mass", Label: "Weight of a ball", Help: "grams"},
		{Path: "yarn.swatch_stitches", Label: "Swatch: stitches", Help: "all of them, across"},
		{Path: "yarn.swatch_rounds", Label: "Swatch: rounds", Help: "all of them, from bottom to top"},
		{Path: "yarn.swatch_mass", Label: "Swatch: weight", Help: "grams, dry, without its tails"},
		{Path: "yarn.swatch_length", Label: "Swatch: unravelled", Help: "length of its yarn, in place of the weight"},
		{Path: "yarn.swatch_kept", Label: "The swatch", Choices: []Choice{{"false", "is unravelled for the mitts"}, {"true", "is kept"}}},
	}, Folded: true},
	{Title: "Charts and their yarns", Note: "A strand is carried behind so many stitches at most, and never over {inch}.", Fields: chartFields(), Folded: true, Yarns: true, Desk: ChartDesk},
	{Title: "Fixed numbers", Note: "To fix a number, press it in the plan, or write it here. Clear it to let it go.", Fields: pinFields(), Folded: true, Ladder: true},
	{Title: fingersFixed, Note: "What each finger takes of palm and back, its bridge and stitches, how many are decreased, its rounds.", Fields: fingerPinFields(), Table: pinTable(), Folded: true},
}

// fingersFixed heads the fixed numbers of the fingers.
const fingersFixed = "Fixed numbers, fingers"

var swatchFields = []Field{
	{Path: "stitches", Label: "Stitches counted", Help: "whole or half stitches, side by side", Need: true},
	{Path: "width", Label: "over a width of", Unit: unitSign},
	{Path: "rounds", Label: "Rounds counted", Help: "one above the other; left out, 1.36 for every stitch is taken"},
	{Path: "height", Label: "over a height of", Unit: unitSign},
	{Path: "worked", Label: "Worked", Choices: []Choice{{"round", "in the round"}, {"flat", "back and forth"}}},
	{Path: "washed", Label: "Washed", Choices: []Choice{{"true", "washed and dry"}, {"false", "not washed"}}},
	{Path: "on_needles", Label: "Counted", Choices: []Choice{{"false", "off the needles"}, {"true", "on the needles"}}},
	{Path: "counted_to", Label: "to the nearest", Choices: []Choice{{"0.5", "half stitch"}, {"1", "whole stitch"}}},
	{Path: "piece", Label: "Piece", Help: "a name; swatches without one are the same piece"},
	{Path: "needle", Label: "Needle"},
	{Path: "date", Label: "Date", Day: true},
}

// lambdaSteps name prices of a changed rhythm, from one that follows the hand's
// shape to one that never changes the rhythm.
var lambdaSteps = []Choice{
	{"0", "as close to the hand as it goes"},
	{"2", "close to the hand"},
	{"8", "between the two"},
	{"32", "easy to remember"},
	{"128", "one rhythm throughout"},
}

// sizeChoices returns the glove sizes, half sizes included.
func sizeChoices() []Choice {
	list := []Choice{{"", "none"}}
	for n := 4; n <= 13; n++ {
		list = append(list, Choice{strconv.Itoa(n), strconv.Itoa(n)})
		if n < 13 {
			list = append(list, Choice{strconv.Itoa(n) + ".5", strconv.Itoa(n) + "½"})
		}
	}
	return list
}

// pinFields returns a field for each number that can be fixed, but those of fingers.
func pinFields() []Field {
	var fields []Field
	for _, n := range mitt.Ladder() {
		if !ofFingers(n) {
			fields = append(fields, Field{Path: n.Path(), Label: n.Label(), Help: n.Help()})
		}
	}
	return fields
}

// yarnParts is how many fields a yarn of the palette has.
const yarnParts = 3

// yarn returns the fields of a yarn of the palette, which come last in its group.
func (g Group) yarn(i int) []Field {
	first := len(g.Fields) - yarnParts*(chart.MaxYarns-i)
	return g.Fields[first : first+yarnParts]
}

// chartFields returns the fields of the chart and its palette.
func chartFields() []Field {
	fields := []Field{
		{Path: "chart.symbols", Label: "Symbols", Choices: []Choice{{"trade", "the trade’s common symbols"}, {"jis", "JIS L 0201"}}},
		{Path: "chart.colours", Label: "Yarns in a round", Help: "at most; 2 if it is left empty"},
		{Path: "chart.float", Label: "Strands", Help: "over at most so many stitches; 5 if it is left empty"},
	}
	for i := range chart.MaxYarns {
		at, id := "chart.yarns["+strconv.Itoa(i)+"].", strings.ToUpper(chart.ID(i))
		help := ""
		if i < len(chart.Yarns) {
			help = chart.Yarns[i].Name + ", if it is left empty"
		}
		fields = append(fields,
			Field{Path: at + "name", Label: "Yarn " + id, Help: help},
			Field{Path: at + "colour", Label: "Yarn " + id + ", colour", Help: "such as #B9694A", Colour: true},
			Field{Path: at + "held", Label: "Yarn " + id + ", carried", Choices: []Choice{{"", "in either hand"}, {"left", "in the left hand"}, {"right", "in the right hand"}}},
		)
	}
	return fields
}
