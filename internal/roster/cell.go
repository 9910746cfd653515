package roster

import (
	"errors"
	"fmt"
	"regexp"
	"strings"
	"unicode"
	"unicode/utf8"

	"thenar/internal/hand"
	"thenar/internal/sheet"
	"thenar/internal/units"
)

// unitNames maps the ways to write a unit to the unit.
var unitNames = map[string]units.Unit{
	"mm": units.MM, "millimetre": units.MM, "millimeter": units.MM, "millimetres": units.MM, "millimeters": units.MM,
	"cm": units.CM, "cms": units.CM, "centimetre": units.CM, "centimeter": units.CM, "centimetres": units.CM, "centimeters": units.CM,
	"centimetros": units.CM, "zentimeter": units.CM, "sentimeter": units.CM, "senttia": units.CM, "millimetros": units.MM, "milimetros": units.MM,
	"zoll": units.IN, "pouces": units.IN, "pulgada": units.IN, "pulgadas": units.IN, "tum": units.IN, "tommer": units.IN, "tumaa": units.IN,
	"in": units.IN, "ins": units.IN, "inch": units.IN, "inches": units.IN, `"`: units.IN, "″": units.IN, "”": units.IN, "''": units.IN,
}

// isFormula reports whether a spreadsheet would work the cell out; full-width signs
// count, too. A minus sign before a plain number makes no formula.
func isFormula(cell string) bool {
	first, size := utf8.DecodeRuneInString(cell)
	switch first {
	case '=', '+', '@', '＝', '＋', '＠':
		return true
	case '-', '－':
		return len(cell) == size || strings.Trim(cell[size:], "0123456789.,") != ""
	}
	return false
}

// reader puts the cells of a row into a student.
type reader struct {
	student Student
	first   string // first name, from a column of its own
	last    string // surname, from a column of its own
	unit    units.Unit
	comma   bool // the table's delimiter is a comma
	reasons []string
	from    map[string]string // path → heading that it was read from
	bad     map[string]bool   // fields that have a reason already
}

// begin resets the reader for the next row.
func (r *reader) begin() {
	r.student, r.reasons, r.first, r.last = Student{Sheet: sheet.Sheet{}}, nil, "", ""
	clear(r.from)
	clear(r.bad)
}

// wrong adds a reason why a cell can't be used.
func (r *reader) wrong(c Column, cell, format string, args ...any) {
	r.bad[c.Field] = true
	r.reasons = append(r.reasons, fmt.Sprintf("%s: “%s” %s", clip(c.Heading), clip(cell), fmt.Sprintf(format, args...)))
}

// clip shortens a text to 40 characters on one line, for messages.
func clip(s string) string {
	const maxLen = 40
	cut := len(s) > 8*maxLen // more than can be shown, whatever the letters
	if cut {
		s = strings.ToValidUTF8(s[:8*maxLen], "")
	}
	letters := []rune(strings.Join(strings.FieldsFunc(s, unicode.IsControl), " "))
	if len(letters) > maxLen {
		letters, cut = letters[:maxLen], true
	}
	if cut {
		return string(letters) + "…"
	}
	return string(letters)
}

// oneLine returns a text with single spaces for all white space.
func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// plainSigns replaces non-breaking and thin spaces, and the fraction slash.
var plainSigns = strings.NewReplacer("\u00a0", " ", "\u202f", " ", "\u2009", " ", "\u2044", "/")

// trimInvisible trims spaces and invisible characters, behind which a formula
// might hide.
func trimInvisible(cell string) string {
	return strings.TrimFunc(plainSigns.Replace(cell), func(r rune) bool { return unicode.IsSpace(r) || unicode.Is(unicode.Cf, r) })
}

// put reads one cell. Cells of a column without a field are ignored.
func (r *reader) put(c Column, cell string) {
	if c.Field == "" {
		return
	}
	cell = trimInvisible(cell)
	switch {
	case strings.Trim(cell, "-–—") == "": // empty, or a dash for "none"
	case strings.ContainsRune(cell, utf8.RuneError):
		r.wrong(c, cell, "has lost a letter on the way; save the table as CSV in UTF-8, or write it here")
	case isFormula(cell), c.isName() && strings.HasPrefix(cell, "-"):
		r.wrong(c, cell, "is a formula; paste its value, which does not begin with = + - or @")
	default:
		r.read(c, cell)
	}
}

func (r *reader) read(c Column, cell string) {
	switch c.Field {
	case fieldName, fieldFirst, fieldLast:
		if strings.ContainsAny(cell, "\r\n") && strings.ContainsAny(cell, ",;|\t") {
			r.wrong(c, cell, "runs on into the next boxes; close the quote before it, or leave the quotes out")
			return
		}
		switch cell = oneLine(cell); c.Field {
		case fieldFirst:
			r.first = cell
		case fieldLast:
			r.last = cell
		default:
			r.student.Name = cell
		}
	case fieldNote:
		r.student.Note = oneLine(cell)
	case fieldKnits:
		r.knits(c, cell)
	case fieldFrom:
		r.gaugeFrom(c, cell)
	case stitchesPath, roundsPath:
		r.gauge(c, cell)
	case hand.FieldSize:
		r.size(c, cell)
	default:
		if c.isLength() {
			r.length(c, cell)
		} else {
			r.whole(c, cell)
		}
	}
}

// joinName makes one name of several columns. A column "name" beside one of first
// names holds surnames, and beside one of surnames first names.
func (r *reader) joinName() {
	switch name := r.student.Name; {
	case r.first != "" && r.last != "":
		r.student.Name = r.first + " " + r.last
	case r.first != "":
		r.student.Name = strings.TrimSpace(r.first + " " + name)
	case r.last != "":
		r.student.Name = strings.TrimSpace(name + " " + r.last)
	}
}

func (r *reader) set(c Column, path, text string) {
	r.student.Sheet[path] = text
	r.from[path] = c.Heading
}

// cutUnit splits a unit off the end of a cell; ok is false if there is none.
func cutUnit(cell string) (rest string, u units.Unit, ok bool) {
	rest = strings.TrimRightFunc(cell, func(r rune) bool { return unicode.IsLetter(r) || strings.ContainsRune(`"″”'.`, r) })
	u, ok = unitNames[strings.ToLower(strings.Trim(cell[len(rest):], "."))]
	if !ok {
		return cell, "", false
	}
	return strings.TrimSpace(rest), u, true
}

var (
	hyphened  = regexp.MustCompile(`^(\d+)-(\d+/\d+)$`)
	thousands = regexp.MustCompile(`^\d{1,3}([.,' ’]\d{3})+([.,]\d*)?$`)
)

// length reads a length, which may have a unit of its own. In the class's unit it
// is kept as typed; from another it is converted.
func (r *reader) length(c Column, cell string) {
	u, typed := r.unit, cell
	if c.Unit != "" {
		u = c.Unit
	}
	if rest, own, ok := cutUnit(cell); ok {
		cell, u = rest, own
	}
	cell = hyphened.ReplaceAllString(cell, "$1 $2") // "7-1/2", as the trade writes it
	l, err := units.Parse(cell, u)
	switch {
	case errors.Is(err, units.ErrNumber) && thousands.MatchString(cell):
		r.wrong(c, typed, "has a sign between thousands; write the digits alone, such as 185 or 18.5")
	case errors.Is(err, units.ErrNumber):
		r.wrong(c, typed, "is not a number; write 18.5, 18,5, 7 1/2 or 7½, with mm, cm or in if you like")
	case err != nil:
		r.wrong(c, typed, "%v", err)
	case u == r.unit:
		r.set(c, c.Field, cell)
	default:
		r.set(c, c.Field, l.Exact(r.unit))
	}
}

// size reads a glove size.
func (r *reader) size(c Column, cell string) {
	text := strings.TrimSpace(strings.TrimPrefix(strings.ToLower(cell), "size"))
	if _, ok := sheet.Count(text); !ok {
		r.wrong(c, cell, "is no glove size; write one from 4 to 13, whole or half: 7, 7.5 or 7½")
		return
	}
	r.set(c, c.Field, text)
}

var wholeCell = regexp.MustCompile(`(?i)^(\d+)(?:[.,]0{1,2})?\s*(?:sts?|stitch|stitches|rnds?|rounds?|rows?)?\.?$`)

// whole reads a whole number; spreadsheets may have added ".0". Student.Check
// checks its range.
func (r *reader) whole(c Column, cell string) {
	m := wholeCell.FindStringSubmatch(cell)
	if m == nil {
		r.wrong(c, cell, "is no whole number; write digits such as 40")
		return
	}
	r.set(c, c.Field, m[1])
}

// Parts of the patterns for a gauge: a number, a count with its word, a unit, and
// the length over which it was counted. After a slash stands the other count, or
// a length if it has a unit.
const (
	aNumber = `(\d+\s+\d+/\d+|\d*[.,]?\d+\s?[½¼¾⅓⅔⅛⅜⅝⅞]|\d+[.,]?\d*|[½¼¾⅓⅔⅛⅜⅝⅞])`
	counted = aNumber + `\s*(sts?|stitch|stitches|rnds?|rounds?|rows?)?\.?`
	aUnit   = `\s*(mm|cm|in|inch|inches|"|″|”|'')\.?`
	across  = `(?:(?:\s*(\b(?:over|per|in|to|on|for|across)\b|/|=)\s*|\s+)` + aNumber + `(?:(?:` + aUnit + `)?\s*[x×]\s*` + aNumber + `)?` + aUnit +
		`|\s*(?:\bper\b|\bto the\b|/)` + aUnit + `)?$`
)

var (
	oneCount  = regexp.MustCompile(`(?i)^` + counted + across)
	twoCounts = regexp.MustCompile(`(?i)^` + counted + `\s*(?:x|×|\*|/|&|\bby\b|\band\b)\s*` + counted + across)
	listed    = regexp.MustCompile(`([A-Za-z.])\s*,\s*`) // "24 sts, 32 rows", but not "24, 32", which may be decimals
	// swatchLengths are the lengths that may follow a bare slash, as in "24/10 cm":
	// "5/7 in" could be two counts (common practice, no source)
	swatchLengths = map[string]bool{"1 cm": true, "5 cm": true, "10 cm": true, "50 mm": true, "100 mm": true, "1 in": true, "2 in": true, "4 in": true}
)

// span is the length over which a count was made, as a cell gives it.
type span struct {
	after         string // the word or sign before it
	width, height string
	unit, upright units.Unit // of width and of height
	given         bool       // whether the cell names a length or unit at all
}

// spanOf reads the groups of the pattern across: word, width, its unit, height,
// unit of the last of them, or a bare unit.
func spanOf(m []string) span {
	unit := func(i int) units.Unit { return unitNames[strings.ToLower(m[i])] }
	s := span{m[0], m[1], m[3], unit(2), unit(4), m[1] != "" || m[5] != ""}
	if s.unit == "" {
		s.unit = s.upright
	}
	if s.height == "" {
		s.height = s.width
	}
	if m[5] != "" {
		s.width, s.height, s.unit, s.upright = "1", "1", unit(5), unit(5)
	}
	return s
}

// gauge reads a count, perhaps with the other count and the length of both: "24",
// "24 x 32", "24 sts over 4 in", "24/32 per 10 x 10 cm".
func (r *reader) gauge(c Column, cell string) {
	typed, cell := cell, listed.ReplaceAllString(cell, "$1 x ")
	if m := oneCount.FindStringSubmatch(cell); m != nil {
		at := spanOf(m[3:])
		counts := [2]string{m[1], ""}
		if c.Field == roundsPath {
			counts = [2]string{"", m[1]}
		}
		switch {
		case m[2] != "" && isRounds(m[2]) != (c.Field == roundsPath):
			r.wrong(c, typed, "is a count of something else than the heading says; write it under a heading of its own")
		case m[2] == "" && at.after == "/" && !swatchLengths[at.width+" "+string(at.unit)]:
			r.wrong(c, typed, "may be two counts or one over a length; write 24 x 32, or 24 sts over 10 cm")
		default:
			r.over(c, typed, counts, at)
		}
		return
	}
	m := twoCounts.FindStringSubmatch(cell)
	if m == nil || c.Field == roundsPath {
		r.wrong(c, typed, "is no count; write %s", countSample(c))
		return
	}
	counts := [2]string{m[1], m[3]}
	switch first, second := m[2], m[4]; {
	case first != "" && second != "" && isRounds(first) == isRounds(second):
		r.wrong(c, typed, "has the same count twice; write stitches and rounds such as 24 sts x 32 rounds")
		return
	case isRounds(first), second != "" && !isRounds(second):
		counts = [2]string{m[3], m[1]}
	}
	r.over(c, typed, counts, spanOf(m[5:]))
}

// countSample returns examples of what a count under a heading looks like.
func countSample(c Column) string {
	if c.Field == roundsPath {
		return "rounds such as 32, or 32 rounds over 10 cm"
	}
	return "stitches such as 24 or 24 sts over 4 in, or with their rounds 24 x 32"
}

func isRounds(word string) bool { return strings.HasPrefix(strings.ToLower(word), "r") }

// over sets counts with the length over which they were made: that of the cell,
// else of the heading, else GaugeOver.
func (r *reader) over(c Column, cell string, counts [2]string, at span) {
	if !at.given {
		at = span{width: c.Over, height: c.Over, unit: c.Unit, upright: c.Unit}
	}
	lengths, own := [2]string{at.width, at.height}, [2]units.Unit{at.unit, at.upright}
	for i, p := range [2][2]string{{stitchesPath, widthPath}, {roundsPath, heightPath}} {
		if counts[i] == "" {
			continue
		}
		length := GaugeOver(r.unit)
		if lengths[i] != "" {
			l, err := units.Parse(lengths[i], own[i])
			if err != nil {
				r.wrong(c, cell, "is counted over a length that %v", err)
				return
			}
			length = l.Exact(r.unit)
		}
		if was, twice := r.student.Sheet[p[0]]; twice && (was != counts[i] || r.student.Sheet[p[1]] != length) {
			r.wrong(c, cell, "is not what stands under “%s”; write it once", clip(r.from[p[0]]))
			return
		}
		r.set(c, p[0], counts[i])
		r.set(c, p[1], length)
	}
}

// knits reads the direction of knitting: a side, yes or no, or words for the way.
func (r *reader) knits(c Column, cell string) {
	switch strings.ToLower(oneLine(cell)) {
	case "yes", "y", "x", "1", "true", "✓", "✔", "left", "l", "ja", "j", "oui", "o", "sí", "si", "kyllä", "links", "gauche", "izquierda", "venstre", "vänster", "from left", "left to right", "from left to right", "ltr":
		r.student.FromLeft = true
	case "no", "n", "0", "false", "right", "r", "nein", "non", "nee", "nej", "nei", "ei", "rechts", "droite", "derecha", "højre", "høyre", "höger", "from right", "right to left", "from right to left", "rtl":
		r.student.FromLeft = false
	default:
		if first := firstSide(cell); first != "" {
			r.student.FromLeft = first == "left"
			return
		}
		r.wrong(c, cell, "is no direction; write left for who knits from left to right, or leave it empty")
	}
}

// firstSide returns the side at which a way begins, "left" for "von links nach
// rechts"; "" for any other words.
func firstSide(cell string) string {
	if len(cell) > maxHeading {
		return ""
	}
	switch way := fieldKey(wordsOf(cell)); strings.TrimPrefix(way, "from ") {
	case "left", "left to right", "left right":
		return "left"
	case "right", "right to left", "right left":
		return "right"
	}
	return ""
}

// gaugeFrom reads what the gauge was counted on.
func (r *reader) gaugeFrom(c Column, cell string) {
	switch strings.TrimPrefix(strings.TrimPrefix(strings.ToLower(oneLine(cell)), "the "), "a ") {
	case "swatch", "maschenprobe", "échantillon", "muestra", "proeflapje", "strikkeprøve", "own swatch", "their own swatch", "their swatch":
		r.student.Gauge = FromSwatch
	case "cuff", "cuff on the needles", "on the needles", "needles", "on needles":
		r.student.Gauge = FromCuff
	case "band", "banderole", "ball band", "label", "ball", "ball label", "yarn label":
		r.student.Gauge = FromBand
	default:
		r.wrong(c, cell, "is no place to count stitches; write swatch, cuff or ball band")
	}
}
