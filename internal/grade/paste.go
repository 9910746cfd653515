package grade

import (
	"regexp"
	"slices"
	"strings"
	"unicode/utf8"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/units"
)

// Paste adds sizes from a list: a line for each, with its name, the circumference of the
// hand and, if it is known, the hand's length. They stand apart by tabs, semicolons, commas
// or spaces; a length may be a fraction, and name its unit, else it is in u. Empty lines and
// a first line without numbers are left out. Nothing is added if a line can't be read, or if
// there are too many.
func (t Texts) Paste(list string, u units.Unit) (Texts, error) {
	out := t.clone()
	var faults fault.Fields
	before, n, over := t.Sizes(), t.Sizes(), 0
	heading := true
	for number, line := range strings.Split(strings.ReplaceAll(list, "\r", ""), "\n") {
		fields := parted(line)
		if len(fields) == 0 {
			continue
		}
		first := heading
		heading = false
		switch {
		case len(fields) > 1 && !slices.ContainsFunc(fields[1:], startsWithDigit):
			if !first {
				faults.Add("list", "line %d: %.40q is no circumference; write a number such as 18.5", number+1, fields[1])
			}
			continue
		case len(fields) < 2 || len(fields) > 3:
			faults.Add("list", "line %d has %d fields; write name, hand’s circumference and perhaps its length, with commas between", number+1, len(fields))
			continue
		}
		if n < MaxSizes {
			out[SizePath(n, "name")] = fields[0]
			for i, path := range []string{hand.FieldCircumference, hand.FieldLength}[:len(fields)-1] {
				text, why := lengthIn(fields[i+1], u)
				if why != "" {
					faults.Add("list", "line %d: %.40q %s", number+1, fields[i+1], why)
				}
				out[SizePath(n, path)] = text
			}
			n++
		} else {
			over++
		}
	}
	switch {
	case over > 0:
		faults.Add("list", "makes %d sizes with those that stand there; %d are the most. Leave %d out", n+over, MaxSizes, over)
	case len(faults) == 0 && n == before:
		faults.Add("list", "is empty; write a line for each size, such as: 7 17.8")
	}
	if err := faults.Err(); err != nil {
		return t, err
	}
	return out, nil
}

// apart are the ways in which the fields of a line stand apart, the surest first: a comma
// that no digit follows is none of a number's.
var apart = []*regexp.Regexp{regexp.MustCompile(`\s*[\t;|]\s*`), regexp.MustCompile(`\s*,\s+|,\s*$`)}

// measure finds a length at the end of a line whose fields stand apart by spaces: a number,
// perhaps with a fraction, and a unit.
var measure = regexp.MustCompile(`(?:^|\s)(\d+\s+\d+/\d+|\d*\s?[½¼¾⅓⅔⅛⅜⅝⅞]|\d+/\d+|\d+(?:[.,]\d*)?)\s*(mm|cm|in|inch|inches|"|″|”)?\s*$`)

// parted returns the fields of a line.
func parted(line string) []string {
	line = strings.TrimSpace(line)
	for _, by := range apart {
		if fields := by.Split(line, -1); len(fields) > 1 {
			for len(fields) > 0 && fields[len(fields)-1] == "" {
				fields = fields[:len(fields)-1]
			}
			return fields
		}
	}
	var fields []string
	for len(fields) < 3 { // one more than there may be, which is told
		at := measure.FindStringIndex(line)
		if at == nil || at[0] == 0 {
			break
		}
		fields = append([]string{strings.TrimSpace(line[at[0]:])}, fields...)
		line = strings.TrimSpace(line[:at[0]])
	}
	switch {
	case fields != nil:
		return append([]string{line}, fields...)
	case strings.Count(line, ",") > 0 && !strings.ContainsAny(line, " "):
		return strings.Split(line, ",") // S,17.5,18
	}
	return strings.Fields(line)
}

// unitsOf are the ways to write a unit behind a number.
var unitsOf = map[string]units.Unit{"mm": units.MM, "cm": units.CM, "in": units.IN, "inch": units.IN, "inches": units.IN, `"`: units.IN, "″": units.IN, "”": units.IN}

// lengthIn returns a length as it is typed in u: as it stands, unless it names another unit.
func lengthIn(text string, u units.Unit) (typed, why string) {
	number := strings.TrimRight(text, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ\"″” ")
	name := strings.ToLower(strings.TrimSpace(text[len(number):]))
	if name == "" {
		return number, ""
	}
	own, ok := unitsOf[name]
	l, err := units.Parse(number, own)
	switch {
	case !ok:
		return text, "has a unit that is not known; write mm, cm or in"
	case err != nil:
		return text, "is no length; write a number such as 18.5"
	case own == u:
		return number, ""
	}
	return l.Exact(u), ""
}

func startsWithDigit(text string) bool {
	first, _ := utf8.DecodeRuneInString(strings.TrimSpace(text))
	return strings.ContainsRune("0123456789.½¼¾⅓⅔⅛⅜⅝⅞", first)
}
