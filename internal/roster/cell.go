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

// unitNames are the ways to write a unit.
var unitNames = map[string]units.Unit{
	"mm": units.MM, "millimetre": units.MM, "millimeter": units.MM, "millimetres": units.MM, "millimeters": units.MM,
	"cm": units.CM, "cms": units.CM, "centimetre": units.CM, "centimeter": units.CM, "centimetres": units.CM, "centimeters": units.CM,
	"centimetros": units.CM, "zentimeter": units.CM, "sentimeter": units.CM, "senttia": units.CM, "millimetros": units.MM, "milimetros": units.MM,
	"zoll": units.IN, "pouces": units.IN, "pulgada": units.IN, "pulgadas": units.IN, "tum": units.IN, "tommer": units.IN, "tumaa": units.IN,
	"in": units.IN, "ins": units.IN, "inch": units.IN, "inches": units.IN, `"`: units.IN, "″": units.IN, "”": units.IN, "''": units.IN,
}

// formula tells a cell that a spreadsheet would work out, also in wide letters.
// It is never worked out here: its value is asked for. A minus sign before a
// plain number is none.
func formula(cell string) bool {
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
	first   string // of a name in several columns
	last    string
	unit    units.Unit
	comma   bool // parts the cells of the table
	reasons []string
	from    map[string]string // path → heading that it was read from
	bad     map[string]bool   // fields of which a reason is told already
}

// begin makes ready for the next row.
func (r *reader) begin() {
	r.student, r.reasons, r.first, r.last = Student{Sheet: sheet.Sheet{}}, nil, "", ""
	clear(r.from)
	clear(r.bad)
}

// wrong notes why a cell can't be used.
func (r *reader) wrong(c Column, cell, format string, args ...any) {
	r.bad[c.Field] = true
	r.reasons = append(r.reasons, fmt.Sprintf("%s: “%s” %s", clip(c.Heading), clip(cell), fmt.Sprintf(format, args...)))
}

// clip keeps a text short enough for a message, on one line.
func clip(s string) string {
	const most = 40
	cut := len(s) > 8*most // more than can be shown, whatever the letters
	if cut {
		s = strings.ToValidUTF8(s[:8*most], "")
	}
	letters := []rune(strings.Join(strings.FieldsFunc(s, unicode.IsControl), " "))
	if len(letters) > most {
		letters, cut = letters[:most], true
	}
	if cut {
		return string(letters) + "…"
	}
	return string(letters)
}

// oneLine is a text without line breaks and tabs.
func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// spaces are those that don't break, and the slash of a fraction sign.
var spaces = strings.NewReplacer("\u00a0", " ", "\u202f", " ", "\u2009", " ", "\u2044", "/")

// tidy is a cell without what can't be seen around it, behind which a formula
// might hide.
func tidy(cell string) string {
	return strings.TrimFunc(spaces.Replace(cell), func(r rune) bool { return unicode.IsSpace(r) || unicode.Is(unicode.Cf, r) })
}

// put reads one cell. What stands in a column that means nothing is not read.
func (r *reader) put(c Column, cell string) {
	if c.Field == "" {
		return
	}
	cell = tidy(cell)
	switch {
	case strings.Trim(cell, "-–—") == "": // a dash says that there is none
	case strings.ContainsRune(cell, utf8.RuneError):
		r.wrong(c, cell, "has a letter that was lost on the way; save the sheet as CSV in UTF-8, or write it here anew")
	case formula(cell), c.isName() && strings.HasPrefix(cell, "-"):
		r.wrong(c, cell, "is a formula; paste its value, which does not begin with = + - or @")
	default:
		r.read(c, cell)
	}
}

func (r *reader) read(c Column, cell string) {
	switch c.Field {
	case fieldName, fieldFirst, fieldLast:
		if strings.ContainsAny(cell, "\r\n") && strings.ContainsAny(cell, ",;|\t") {
			r.wrong(c, cell, "runs over several cells; close the quote before it, or leave the quotes out")
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

// joinName makes one name of those in several columns: a column of names
// beside one of first names holds surnames, beside one of surnames first names.
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

// cutUnit parts a number from the unit that may follow it.
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

// length reads a length, which may have its own unit, and gives it in that of
// the class. It is kept as typed where that is its unit.
func (r *reader) length(c Column, cell string) {
	u, typed := r.unit, cell
	if c.Unit != "" {
		u = c.Unit
	}
	if rest, own, ok := cutUnit(cell); ok {
		cell, u = rest, own
	}
	cell = hyphened.ReplaceAllString(cell, "$1 $2") // "7-1/2", as it is written in the trade
	l, err := units.Parse(cell, u)
	switch {
	case errors.Is(err, units.ErrNumber) && thousands.MatchString(cell):
		r.wrong(c, typed, "has a sign between thousands; write the digits alone, such as 185 or 18.5")
	case errors.Is(err, units.ErrNumber):
		r.wrong(c, typed, "is not a number; write digits such as 18.5, 18,5, 7 1/2 or 7½, and mm, cm or in behind them if you like")
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

// whole reads a whole number, also where a spreadsheet puts decimals of 0
// behind it. Its range is told with the student.
func (r *reader) whole(c Column, cell string) {
	m := wholeCell.FindStringSubmatch(cell)
	if m == nil {
		r.wrong(c, cell, "is no whole number; write digits such as 40")
		return
	}
	r.set(c, c.Field, m[1])
}

// A count, what was counted, and the length over which it was. After a slash
// stands the other count, or a length if it has a unit.
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
	// usual are the lengths that "24/10 cm" may have: "5/7 in" could be two counts
	usual = map[string]bool{"1 cm": true, "5 cm": true, "10 cm": true, "50 mm": true, "100 mm": true, "1 in": true, "2 in": true, "4 in": true}
)

// span is what a cell says of the length over which a count was made, after a
// word or a sign: the width, the height, and whether one was named at all.
type span struct {
	after         string
	width, height string
	unit, upright units.Unit
	given         bool
}

// spanOf reads the groups of across: the word, width, its unit, height, unit of
// the last of them, or a bare unit.
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

// gauge reads a count, perhaps with the other count and the length over which
// both were made: "24", "24 x 32", "24 sts over 4 in", "24/32 per 10 x 10 cm".
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
		case m[2] == "" && at.after == "/" && !usual[at.width+" "+string(at.unit)]:
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

// countSample is what a count looks like under a heading.
func countSample(c Column) string {
	if c.Field == roundsPath {
		return "rounds such as 32, or 32 rounds over 10 cm"
	}
	return "stitches such as 24 or 24 sts over 4 in, or with their rounds 24 x 32"
}

func isRounds(word string) bool { return strings.HasPrefix(strings.ToLower(word), "r") }

// over puts counts into the student with the length over which they were made:
// that of the cell, else of the heading, else the usual one.
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

// knits reads the direction: the hand's side, or the way in words.
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

// firstSide is the side at which a way begins, as in "von links nach rechts";
// empty where the words say anything else.
func firstSide(cell string) string {
	if len(cell) > longestHeading {
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

// gaugeFrom reads on what the gauge was counted.
func (r *reader) gaugeFrom(c Column, cell string) {
	switch strings.TrimPrefix(strings.TrimPrefix(strings.ToLower(oneLine(cell)), "the "), "a ") {
	case "swatch", "maschenprobe", "échantillon", "muestra", "proeflapje", "strikkeprøve", "own swatch", "their own swatch", "their swatch":
		r.student.Gauge = FromSwatch
	case "cuff", "cuff on the needles", "on the needles", "needles", "on needles":
		r.student.Gauge = FromCuff
	case "band", "banderole", "ball band", "label", "ball", "ball label", "yarn label":
		r.student.Gauge = FromBand
	default:
		r.wrong(c, cell, "is nothing that a gauge is counted on; write swatch, cuff or ball band")
	}
}
