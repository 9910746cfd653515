package sheet

import (
	"slices"
	"strings"

	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/repeat"
)

// The greatest numbers of rows of a sheet's lists.
const (
	maxSwatches = 20
	maxProfile  = 50
	MaxYarns    = 8 // of the chart's palette
)

// increaseWords are the ways in which a gusset may grow.
var increaseWords = []string{string(mitt.MakeOne), string(mitt.Lifted), string(mitt.YoClosed), string(mitt.FrontAnd), string(mitt.InCentre)}

// cuffWords are the ways in which a cuff may be worked.
var cuffWords = []string{string(mitt.RibCuff), string(mitt.HemCuff), string(mitt.GarterCuff), string(mitt.RolledCuff), string(mitt.Gauntlet)}

// topWords are the ways in which a top may be closed.
var topWords = []string{string(mitt.RoundedTop), string(mitt.PointedTop), string(mitt.BandedTop), string(mitt.WedgesTop), string(mitt.GatheredTop)}

// constructionWords are the ways to make a mitt round the thumb.
var constructionWords = []string{string(mitt.ByGusset), string(mitt.Straight), string(mitt.Slit), string(mitt.NoThumb)}

// placeWords are the places where a thumb may sit.
var placeWords = []string{string(mitt.AtSide), string(mitt.InPalm)}

// endWords are the ways to end a finger of a glove, or its thumb.
var endWords = []string{string(mitt.FullFinger), string(mitt.HalfFinger), string(mitt.OpenFinger)}

func keys(k kind, names ...string) []node {
	nodes := make([]node, len(names))
	for i, name := range names {
		nodes[i] = node{key: name, kind: k}
	}
	return nodes
}

// tree is all that a sheet may hold, in the order in which a person fills it.
var tree = node{members: []node{
	{key: "format", kind: choice, words: []string{Format}},
	{key: PathKind, kind: choice, words: []string{"fingerless", "mitten", "mitten_without_thumb", "glove"}},
	{key: PathUnit, kind: choice, words: []string{"mm", "cm", "in"}},
	{key: PathTerms, kind: choice, words: []string{"us", "uk"}},
	{key: "thumb", members: []node{
		{key: "construction", kind: choice, words: constructionWords},
		{key: "place", kind: choice, words: placeWords},
		{key: "inset", kind: whole},
		{key: "increase", kind: choice, words: increaseWords},
	}},
	{key: "piece", members: []node{
		{key: "direction", kind: choice, words: []string{"up", "down"}},
		{key: "flat", kind: flag},
	}},
	{key: "cuff", members: []node{
		{key: "kind", kind: choice, words: cuffWords},
		{key: "knits", kind: whole},
		{key: "purls", kind: whole},
		{key: "upper_girth", kind: length},
		{key: "depth", kind: length},
	}},
	{key: "top", members: []node{
		{key: "kind", kind: choice, words: topWords},
		{key: "band", kind: whole},
		{key: "wedges", kind: whole},
	}},
	{key: "fingers", members: fingerKeys()},
	{key: "gauge", members: []node{
		{key: "swatches", kind: list, maxRows: maxSwatches, members: swatchKeys},
		{key: "hand_variation", kind: ease},
	}},
	{key: "hand", members: handKeys()},
	{key: "ease", members: append(keys(ease, "hand", "cuff", "gusset", "palm", "cap"), node{key: "thumb_girth_added", kind: length})},
	{key: "length", members: keys(length, "cuff", "cuff_plain", "above_gusset", "edging", "thumb", "thumb_edging", "cap")},
	{key: "stitch", members: append(keys(whole, "repeat", "offset", "rib"), node{key: "both_edges", kind: flag})},
	{key: "schedule", members: []node{
		{key: "follows", kind: choice, words: []string{"profile", "rhythm"}},
		{key: "lambda", kind: amount},
	}},
	{key: mitt.PathPins, members: pinKeys()},
	{key: pathWorked, members: workedKeys()},
	{key: pathOther, members: workedKeys()},
	{key: PathSecond, kind: choice, words: []string{"alike", Anew}},
	{key: PathTried, kind: rounds},
	{key: "fit", members: append([]node{{key: "tolerance", kind: length}}, keys(ease, "loose_below", "snug_from", "tight_above")...)},
	{key: "yarn", members: append(append([]node{
		{key: "length_unit", kind: choice, words: []string{"m", "yd"}},
	}, keys(number, "ball_length", "ball_mass", "swatch_stitches", "swatch_rounds", "swatch_mass", "swatch_length")...),
		node{key: "swatch_kept", kind: flag})},
	{key: "chart", members: []node{
		{key: "symbols", kind: choice, words: []string{"trade", "jis"}},
		{key: "colours", kind: whole},
		{key: "float", kind: whole},
		{key: "yarns", kind: list, maxRows: MaxYarns, members: yarnKeys},
	}},
	{key: PathRepeats, kind: list, maxRows: repeat.Most, rows: "motifs", members: repeatKeys},
	{key: PathKnitted, members: keys(drawn, "right", "left")},
}}

// fingerKeys returns the keys of how the fingers of a glove are made.
func fingerKeys() []node {
	var nodes []node
	for _, path := range slices.Concat(eachFinger(mitt.PathFinger), []string{mitt.PathThumbEnd}) {
		nodes = append(nodes, node{key: strings.TrimPrefix(path, "fingers."), kind: choice, words: endWords})
	}
	return append(nodes, keys(flag, strings.TrimPrefix(mitt.PathCap, "fingers."), strings.TrimPrefix(mitt.PathLower, "fingers."))...)
}

// eachFinger returns a path of each finger.
func eachFinger(path func(hand.Finger) string) []string {
	var list []string
	for i := hand.Index; i <= hand.Little; i++ {
		list = append(list, path(i))
	}
	return list
}

// handKeys returns the keys of the hand.
func handKeys() []node {
	hands := node{members: append(keys(length,
		"hand_circumference", "wrist_circumference", "thumb_circumference", "hand_length",
		"gusset_length", "thumb_length", "wrist_to_crotch", "palm_and_thumb_circumference", "hand_breadth"),
		node{key: "size", kind: number},
		node{key: "reference", kind: choice, words: []string{"both", "women", "men"}},
		node{key: "profile", kind: list, maxRows: maxProfile, members: girthKeys},
		node{key: "profile_above", kind: list, maxRows: maxProfile, members: girthKeys},
	)}
	for _, path := range hand.FieldsOfFingers() {
		hands.plant(strings.TrimPrefix(path, "hand."), node{kind: length})
	}
	return hands.members
}

var swatchKeys = []node{
	{key: "stitches", kind: number},
	{key: "width", kind: length},
	{key: "rounds", kind: number},
	{key: "height", kind: length},
	{key: "worked", kind: choice, words: []string{"round", "flat"}},
	{key: "washed", kind: flag},
	{key: "on_needles", kind: flag},
	{key: "counted_to", kind: number},
	{key: "piece", kind: text},
	{key: "needle", kind: text},
	{key: "date", kind: date},
}

var girthKeys = []node{{key: "height", kind: height}, {key: "girth", kind: length}}

var yarnKeys = []node{
	{key: "name", kind: text},
	{key: "colour", kind: text},
	{key: "held", kind: choice, words: []string{"left", "right"}},
}
