package roster

import (
	"regexp"
	"strings"

	"thenar/internal/hand"
	"thenar/internal/units"
)

// The fields of a table that are no path of a measure sheet.
const (
	fieldName  = "name"
	fieldNote  = "note"
	fieldKnits = "knits"
	fieldFrom  = "gauge_from"
)

// Column is how a heading was read.
type Column struct {
	Heading string     // as it stands in the table
	Field   string     // a path of Paths, or name, note, knits, gauge_from; empty: not used
	Unit    units.Unit // in the heading; empty: none
	Over    string     // the length over which a gauge was counted, as in "4" of "4 in"
}

// synonyms are what the columns may be called, without articles.
var synonyms = map[string][]string{
	fieldName:               {"name", "names", "student", "students", "initials", "knitter", "participant", "who", "first name", "full name", "name or initials"},
	hand.FieldSize:          {"size", "glove", "gloves", "glove size", "hand size", "size of glove", "en 420"},
	hand.FieldCircumference: {"hand", "hand circumference", "circumference", "circumference of hand", "hand girth", "girth", "round hand", "around hand", "round knuckles", "around knuckles", "knuckles", "hand round knuckles", "hand circ"},
	hand.FieldWrist:         {"wrist", "wrist circumference", "wrist girth", "round wrist", "around wrist", "wrist circ"},
	hand.FieldThumb:         {"thumb", "thumb circumference", "thumb girth", "round thumb", "around thumb", "thumb circ"},
	hand.FieldLength:        {"hand length", "length", "length of hand"},
	hand.FieldGussetLength:  {"gusset length", "gusset", "gusset height", "thumb gusset length", "length of gusset"},
	hand.FieldThumbLength:   {"thumb length", "length of thumb"},
	hand.FieldWristToCrotch: {"wrist to thumb", "wrist to crotch", "wrist to thumb crotch", "wrist to parting"},
	hand.FieldPalm:          {"palm and thumb", "palm with thumb", "hand with thumb", "hand and thumb", "palm and thumb circumference", "palm"},
	hand.FieldBreadth:       {"breadth", "hand breadth", "breadth of hand", "width of hand", "hand width"},
	stitchesPath:            {"stitches", "sts", "stitch", "stitch gauge", "gauge", "gauge stitches", "gauge sts", "tension", "stitches of swatch"},
	roundsPath:              {"rounds", "rnds", "rows", "round gauge", "row gauge", "gauge rounds", "gauge rows", "rounds of swatch"},
	fieldFrom:               {"gauge from", "gauge source", "gauge counted on", "counted on", "source of gauge"},
	"pins.cast_on":          {"cast on", "cast on stitches", "co", "cuff", "cuff stitches", "stitches on needles", "on needles", "cuff on needles", "stitches cast on"},
	"pins.cuff_rounds":      {"cuff rounds", "cuff rows", "rounds of ribbing", "rib rounds", "rounds of cuff"},
	"pins.gusset_base":      {"base", "gusset base", "base of gusset"},
	"pins.bridge":           {"bridge", "bridge stitches"},
	fieldKnits:              {"knits", "direction", "left to right", "knits left to right", "knits from left", "from left", "works"},
	fieldNote:               {"note", "notes", "remark", "remarks", "comment", "comments"},
}

// byName is the field of every synonym.
var byName = func() map[string]string {
	all := map[string]string{}
	for field, names := range synonyms {
		for _, n := range names {
			all[n] = field
		}
	}
	return all
}()

var (
	apart    = regexp.MustCompile(`[^\p{L}\p{N}"″.]+`)
	fraction = regexp.MustCompile(`(\d)[.,](\d)`)
	joined   = regexp.MustCompile(`(\d)(\p{L}|["″])`)
)

// unitNames are the ways to write a unit.
var unitNames = map[string]units.Unit{
	"mm": units.MM, "millimetres": units.MM, "millimeters": units.MM,
	"cm": units.CM, "centimetres": units.CM, "centimeters": units.CM,
	"in": units.IN, "inch": units.IN, "inches": units.IN, `"`: units.IN, "″": units.IN,
}

// columnOf reads a heading: "Hand (in)", "sts / 10 cm", "round the knuckles".
func columnOf(heading string) Column {
	c := Column{Heading: strings.TrimSpace(heading)}
	words := wordsOf(heading)
	if n := len(words); n > 1 {
		if u, ok := unitNames[words[n-1]]; ok {
			c.Unit, words = u, words[:n-1]
			if n := len(words); n > 1 && number(words[n-1]) {
				c.Over, words = words[n-1], words[:n-1]
			}
		}
	}
	kept := words[:0]
	for _, w := range words {
		switch w {
		case "the", "a", "your", "my", "per", "over", "in", "own":
		default:
			kept = append(kept, w)
		}
	}
	c.Field = byName[strings.Join(kept, " ")]
	if c.Field == stitchesPath || c.Field == roundsPath {
		if c.Unit != "" && c.Over == "" {
			c.Over = "1"
		}
		return c
	}
	if c.Over != "" { // a number means nothing in other headings
		c.Field = ""
	}
	return c
}

// wordsOf are the words of a heading in small letters, numbers apart from what
// follows them.
func wordsOf(heading string) []string {
	s := strings.ToLower(fraction.ReplaceAllString(heading, "${1}.${2}"))
	words := strings.Fields(apart.ReplaceAllString(joined.ReplaceAllString(s, "$1 $2"), " "))
	kept := words[:0]
	for _, w := range words {
		if w = strings.Trim(w, "."); w != "" {
			kept = append(kept, w)
		}
	}
	return kept
}

func number(s string) bool { return strings.Trim(s, "0123456789.") == "" }
