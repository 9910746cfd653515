package roster

import (
	"regexp"
	"slices"
	"strings"
	"unicode"

	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

// Fields of a table that are not paths of a measure sheet.
const (
	fieldName  = "name"
	fieldFirst = "first_name"
	fieldLast  = "last_name"
	fieldNote  = "note"
	fieldKnits = "knits"
	fieldFrom  = "gauge_from"
)

// Column is a column as its heading was read.
type Column struct {
	Heading string     // as it stands in the table, on one line
	Field   string     // a path of Paths, or name, first_name, last_name, note, knits, gauge_from; empty: not used
	Unit    units.Unit // named in the heading; empty: none
	Over    string     // the number before the unit: "4" of "sts over 4 in"
	Chosen  bool       // the field was chosen by a person

	key string
}

// synonyms maps fields to the headings that mean them, in canonical words (common
// practice, no source). A heading that could mean two measurements ("palm",
// "cuff") is not among them, since ignoring it is better than misreading it.
var synonyms = withFingers(map[string][]string{
	fieldName: {
		"name", "initials", "student", "knitter", "participant", "pupil", "person", "who", "full name",
		"name or initials", "name initials", "student name", "knitter name", "participant name", "name student",
		"first name and surname", "first and last name", "first name and name", "name and first name", "surname and first name", "vor and surname", "voor surname", "for and surname",
		"name first name", "surname first name", "first name surname",
	},
	fieldFirst:     {"first", "first name", "given name", "forename", "first name student", "student first name"},
	fieldLast:      {"last", "last name", "surname", "family name", "name family", "surname student", "student surname"},
	hand.FieldSize: {"size", "glove", "glove size", "hand size", "size glove", "size hand", "en 420", "glove size en 420", "size en 420"},
	hand.FieldCircumference: {
		"hand", "girth", "hand girth", "girth hand", "round hand", "hand round", "knuckles", "round knuckles", "hand knuckles", "hand round knuckles",
		"girth knuckles", "knuckles girth", "hand girth knuckles", "hand girth round knuckles", "girth round knuckles", "girth hand round knuckles", "girth hand knuckles",
		"hand without thumb", "hand girth without thumb", "girth hand without thumb", "round hand without thumb",
	},
	hand.FieldWrist:        {"wrist", "wrist girth", "girth wrist", "round wrist"},
	hand.FieldThumb:        {"thumb", "thumb girth", "girth thumb", "round thumb"},
	hand.FieldLength:       {"hand length", "length", "length hand", "wrist to fingertip", "hand length wrist to fingertip", "wrist to tip"},
	hand.FieldGussetLength: {"gusset length", "gusset", "gusset height", "thumb gusset", "thumb gusset length", "length gusset", "length thumb gusset"},
	hand.FieldThumbLength:  {"thumb length", "length thumb"},
	hand.FieldWristToCrotch: {
		"wrist to thumb", "wrist to crotch", "wrist to thumb crotch", "wrist to crotch thumb", "wrist to thumb/crotch", "wrist to parting", "from wrist to thumb", "wrist thumb",
	},
	hand.FieldPalm: {
		"palm and thumb", "palm with thumb", "palm thumb", "hand with thumb", "hand and thumb", "palm and thumb girth", "round palm and thumb",
		"round hand and thumb", "round hand with thumb", "hand girth with thumb", "hand including thumb", "girth with thumb", "girth hand with thumb",
	},
	hand.FieldBreadth: {"breadth", "hand breadth", "breadth hand", "breadth knuckles", "hand breadth knuckles"},
	stitchesPath: {
		"sts", "sts gauge", "gauge", "gauge sts", "sts swatch", "swatch sts", "number sts", "swatch", "gauge swatch", "swatch gauge",
		"sts and rows", "sts rows", "sts x rows", "gauge sts and rows", "gauge sts rows", "gauge sts x rows", "sts to",
	},
	roundsPath:                 {"rows", "round gauge", "rows gauge", "gauge rows", "rows swatch", "swatch rows", "number rows", "rows to"},
	fieldFrom:                  {"gauge from", "gauge source", "gauge counted on", "counted on", "source gauge", "gauge taken from", "gauge taken on"},
	mitt.CastOn.Path():         {"cast on", "cast on sts", "co", "cuff sts", "sts cuff", "sts on needle", "on needle", "cuff on needle", "sts cast on", "cuff cast on", "cuff sts on needle"},
	mitt.CuffRounds.Path():     {"cuff rows", "rib rows", "ribbing rows", "rows ribbing", "cuff edge rows", "cuff s edge rows", "rows rib", "rows cuff"},
	mitt.GussetBase.Path():     {"base", "gusset base", "base gusset", "base sts", "gusset base sts", "sts base"},
	mitt.BridgeStitches.Path(): {"bridge", "bridge sts", "sts bridge"},
	fieldKnits: {
		"knits", "direction", "left to right", "knits left to right", "knits from left", "from left", "from left to right", "knits from left to right",
		"left right", "left to right", "knits left right", "from left right", "works", "works left to right", "works from left to right", "direction knitting", "knitting direction", "knits direction",
	},
	fieldNote: {"note", "remark", "comment"},
})

// canonical maps words of headings to the word that synonyms uses for them.
var canonical = map[string]string{
	"circumference": "girth", "circumf": "girth", "circ": "girth", "girths": "girth", "around": "round",
	"st": "sts", "stitch": "sts", "stitches": "sts", "row": "rows", "rounds": "rows", "rnd": "rows", "rnds": "rows",
	"tension": "gauge", "width": "breadth", "knuckle": "knuckles", "wrists": "wrist", "thumbs": "thumb", "hands": "hand", "gloves": "glove",
	"needles": "needle", "notes": "note", "remarks": "remark", "comments": "comment", "names": "name", "finger": "", "fingers": "", "pinky": "little", "pinkie": "little", "forefinger": "index", "pointer": "index", "crotches": "crotch", "tip": "fingertip",
	"students": "student", "knitters": "knitter", "participants": "participant", "pupils": "pupil", "incl": "including",
}

// stopWords are English words that add no meaning to a heading.
var stopWords = strings.Fields("the a an your my own their per over in of between no nr optional required measured approx approximately already")

// fieldOf maps each synonym, as fieldKey writes it, to its field.
var fieldOf = func() map[string]string {
	all := map[string]string{}
	for field, names := range synonyms {
		for _, n := range names {
			all[fieldKey(wordsOf(n))] = field
		}
	}
	return all
}()

// fieldKey returns the words of a heading in English, canonical and without stop
// words, so that synonyms have the same key.
func fieldKey(words []string) string {
	var kept []string
	for _, w := range words {
		for _, w := range inEnglish(w) {
			if same, ok := canonical[w]; ok {
				w = same
			}
			if w != "" && !slices.Contains(stopWords, w) && !slices.Contains(fillers, w) {
				kept = append(kept, w)
			}
		}
	}
	return strings.Join(kept, " ")
}

var (
	separators  = regexp.MustCompile(`[^\p{L}\p{N}"″”.]+`)
	fraction    = regexp.MustCompile(`(\d)[.,](\d)`)
	digitLetter = regexp.MustCompile(`(\d)(\p{L}|["″”])`)
	letterDigit = regexp.MustCompile(`(\p{L})(\d)`)
	perUnit     = regexp.MustCompile(`(?i)(\bper|/|\bto the|\ban?)\s*(mm|cm|in|inch|["″”])[\s)\].]*$`)
	twoUnits    = regexp.MustCompile(`(?i)\b(mm|cm|in|inch|inches)\s*(/|,|;|\+|\bor\b|\band\b)\s*(mm|cm|in|inch|inches)\b`)
	elided      = regexp.MustCompile(`(?i)\b[ld]['’]`) // "longueur de l’index"
	signs       = strings.NewReplacer("'", "", "’", "", "×", " x ", "*", " ")
)

// maxHeading is the most bytes of a heading; longer ones are ignored.
const maxHeading = 120

// columnOf reads a heading: "Hand (in)", "sts / 10 cm", "round the knuckles".
func columnOf(heading string) Column {
	if len(heading) > maxHeading {
		return Column{Heading: clip(heading)}
	}
	c := Column{Heading: oneLine(heading)}
	if !strings.ContainsFunc(heading, unicode.IsLetter) {
		return c
	}
	c.Field = fieldOf[fieldKey(c.takeUnit(wordsOf(heading)))]
	switch {
	case twoUnits.MatchString(heading):
		c.Field = ""
	case c.Field == stitchesPath || c.Field == roundsPath:
		if c.Unit != "" && c.Over == "" && perUnit.MatchString(heading) {
			c.Over = "1"
		}
	case c.isLength() && c.Over != "", !c.isLength() && c.Unit != "":
		c.Field = "" // "hand 10 cm" and "size (cm)" are something else
	}
	return c
}

// isLength reports whether the column holds lengths.
func (c *Column) isLength() bool {
	return strings.HasPrefix(c.Field, "hand.") && c.Field != hand.FieldSize
}

// isName reports whether the column holds names, or first names, or surnames.
func (c *Column) isName() bool {
	return c.Field == fieldName || c.Field == fieldFirst || c.Field == fieldLast
}

// isVague reports whether the column is a gauge that names a unit but not over how
// many of it: "gauge (in)" could be per inch or per 4 inches.
func (c *Column) isVague() bool {
	return (c.Field == stitchesPath || c.Field == roundsPath) && c.Unit != "" && c.Over == ""
}

// takeUnit takes a unit, and the number before it, out of a heading's words. "in"
// is a unit only as the last word.
func (c *Column) takeUnit(words []string) []string {
	at := -1
	for i, w := range words {
		if _, ok := unitNames[w]; ok && (w != "in" || i == len(words)-1) && len(words) > 1 {
			at = i
		}
	}
	if at < 0 {
		return words
	}
	c.Unit = unitNames[words[at]]
	before, after := words[:at], words[at+1:]
	if n := len(before); n > 0 && isNumber(before[n-1]) {
		c.Over, before = before[n-1], before[:n-1]
		// the other side of a square: "10 x 10 cm", "10 cm x 10 cm"
		for _, side := range [][]string{{c.Over, "x"}, {c.Over, words[at], "x"}} {
			if m := len(before) - len(side); m >= 0 && slices.Equal(before[m:], side) {
				before = before[:m]
			}
		}
	}
	return append(slices.Clone(before), after...)
}

// wordsOf returns the words of a heading, folded, with numbers as words of their
// own.
func wordsOf(heading string) []string {
	s := fold(fraction.ReplaceAllString(signs.Replace(elided.ReplaceAllString(heading, " ")), "${1}.${2}"))
	s = letterDigit.ReplaceAllString(digitLetter.ReplaceAllString(s, "$1 $2"), "$1 $2")
	words := strings.Fields(separators.ReplaceAllString(s, " "))
	kept := words[:0]
	for _, w := range words {
		if w = strings.Trim(w, "."); w != "" {
			kept = append(kept, w)
		}
	}
	return kept
}

func isNumber(s string) bool { return strings.Trim(s, "0123456789.") == "" }
