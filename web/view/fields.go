package view

import (
	"thenar/internal/project"
)

// Field is one field of the measure form. Its name is the path of the sheet,
// so that a fault finds its place by itself.
type Field struct {
	Path    string
	Label   string
	Help    string   // where the tape goes, or what is meant
	Unit    string   // shown behind the field
	Choices []Choice // of a select; a text field without
	Need    bool     // a plan can't do without it
}

// Choice is one option of a select.
type Choice struct{ Value, Words string }

// Group is some fields under one heading.
type Group struct {
	Title  string
	Note   string
	Fields []Field
	Folded bool // shown when asked for
}

// unitSign stands for the sheet's unit in Field.Unit.
const unitSign = "unit"

// groups are the fields of the measure form, in the order in which a tape
// goes round a hand, the swatch beside it, then what is seldom changed.
var groups = []Group{
	{Title: "Mitt", Fields: []Field{
		{Path: "kind", Label: "Kind", Choices: []Choice{{"fingerless", "fingerless mitt"}, {"mitten", "mitten"}}},
		{Path: "side", Label: "Hand", Choices: []Choice{{"right", "right hand"}, {"left", "left hand"}}},
		{Path: "unit", Label: "Lengths in", Help: "the unit of what is typed below; the numbers stay as they are", Choices: []Choice{{"cm", "centimetres"}, {"mm", "millimetres"}, {"in", "inches"}}},
	}},
	{Title: "Swatch", Note: "Knit it in the round, wash it, let it dry; count over 10 cm (4 in) or more.", Fields: []Field{
		{Path: "gauge.swatches[0].stitches", Label: "Stitches counted", Help: "whole or half stitches, side by side", Need: true},
		{Path: "gauge.swatches[0].width", Label: "over a width of", Unit: unitSign, Need: true},
		{Path: "gauge.swatches[0].rounds", Label: "Rounds counted", Help: "one above the other; left out, 1.36 for every stitch is taken"},
		{Path: "gauge.swatches[0].height", Label: "over a height of", Unit: unitSign},
		{Path: "gauge.swatches[0].worked", Label: "Worked", Choices: []Choice{{"round", "in the round"}, {"flat", "back and forth"}}},
		{Path: "gauge.swatches[0].washed", Label: "Washed", Choices: []Choice{{"true", "washed and dry"}, {"false", "not washed"}}},
	}},
	{Title: "Hand", Note: "Lay the tape without pulling. Only the hand is needed; the rest is filled until you measure it.", Fields: []Field{
		{Path: "hand.wrist_circumference", Label: "Wrist", Help: "round the wrist bones", Unit: unitSign},
		{Path: "hand.hand_circumference", Label: "Hand", Help: "round the knuckles, without the thumb", Unit: unitSign, Need: true},
		{Path: "hand.thumb_circumference", Label: "Thumb", Help: "round its joint", Unit: unitSign},
		{Path: "hand.palm_and_thumb_circumference", Label: "Palm with thumb", Help: "where the thumb parts, the thumb laid along the palm", Unit: unitSign},
		{Path: "hand.gusset_length", Label: "Gusset length", Help: "along the thumb's side, from the bone at the wrist to where thumb and hand part", Unit: unitSign},
		{Path: "hand.wrist_to_crotch", Label: "Wrist to thumb", Help: "from the wrist crease straight up to where the thumb parts", Unit: unitSign},
		{Path: "hand.thumb_length", Label: "Thumb length", Help: "from where it parts to its tip", Unit: unitSign},
		{Path: "hand.hand_length", Label: "Hand length", Help: "from the wrist crease to the tip of the middle finger", Unit: unitSign},
	}},
	{Title: "Stitches", Fields: []Field{
		{Path: "stitch.rib", Label: "Rib", Choices: []Choice{{"2", "k1, p1"}, {"4", "k2, p2"}, {"3", "k2, p1"}, {"6", "k3, p3"}, {"1", "none, plain"}}},
		{Path: "stitch.repeat", Label: "Hand is a multiple of", Help: "stitches in the pattern's repeat; 2 without"},
		{Path: "stitch.offset", Label: "plus", Help: "stitches beside the repeats"},
		{Path: "stitch.both_edges", Label: "Increases", Choices: []Choice{{"true", "at both edges of the gusset"}, {"false", "at one edge"}}},
	}, Folded: true},
	{Title: "Ease", Note: "Fabric over body: −5 % is 5 % smaller than the hand.", Fields: []Field{
		{Path: "ease.hand", Label: "Hand", Help: "left out: −5 % fingerless, +5 % mitten, 5 % more below 16 stitches over 10 cm (common practice)"},
		{Path: "ease.cuff", Label: "Cuff", Help: "on the wrist; left out: none (common practice)"},
		{Path: "ease.thumb_girth_added", Label: "Room for the thumb", Help: "added to its girth; left out: about 12 mm (common practice)", Unit: unitSign},
	}, Folded: true},
	{Title: "Lengths", Note: "Left out, they follow the hand's length (common practice).", Fields: []Field{
		{Path: "length.cuff", Label: "Ribbed cuff", Unit: unitSign},
		{Path: "length.cuff_plain", Label: "Plain cuff", Help: "between the ribbing and the gusset", Unit: unitSign},
		{Path: "length.above_gusset", Label: "Above the gusset", Help: "edging included, a mitten's top not", Unit: unitSign},
		{Path: "length.edging", Label: "Edging of the hand", Unit: unitSign},
		{Path: "length.thumb", Label: "Thumb", Help: "edging included", Unit: unitSign},
		{Path: "length.thumb_edging", Label: "Edging of the thumb", Unit: unitSign},
	}, Folded: true},
}

// FormPaths lists the names of the form's fields.
func FormPaths() []string {
	var paths []string
	for _, g := range groups {
		for _, f := range g.Fields {
			paths = append(paths, f.Path)
		}
	}
	return paths
}

// defaults are what a select shows where the sheet says nothing.
var defaults = map[string]string{
	"kind": "fingerless", "unit": "cm", "gauge.swatches[0].worked": "round", "gauge.swatches[0].washed": "false",
	"stitch.rib": "2", "stitch.both_edges": "true",
}

// value is what a field shows: the text as it was typed.
func value(d project.Document, path string) string {
	if path == "side" {
		return string(d.Side)
	}
	if text, ok := d.Sheet[path]; ok {
		return text
	}
	return defaults[path]
}

// choices are a select's options; a value that is none of them stays as one,
// so that nothing typed elsewhere is lost.
func choices(f Field, value string) []Choice {
	for _, c := range f.Choices {
		if c.Value == value {
			return f.Choices
		}
	}
	return append([]Choice{{value, value}}, f.Choices...)
}

// faultID is the element that holds a field's message.
func faultID(path string) string { return "fault-" + path }

// fieldID is the element of the field.
func fieldID(path string) string { return "field-" + path }
