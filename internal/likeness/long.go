package likeness

import (
	"math"
	"regexp"
	"strings"

	"thenar/internal/tally"
	"thenar/internal/units"
	"thenar/internal/written"
)

// oneNumber matches a number as lengths have it: "7.5", "2¼", "2 1/4".
const oneNumber = `(?:\d+(?:[.,]\d+)?(?:[ -]?(?:[¼½¾⅓⅔⅛⅜⅝⅞]|\d/\d))?|[¼½¾⅓⅔⅛⅜⅝⅞]|\d/\d)`

// measured matches a length, which may be another in each size: "7.5 cm", "6 (6½, 7) inches".
var measured = regexp.MustCompile(`(` + oneNumber + `)(?:\s*[(\[](` + oneNumber + `(?:[,;] *` + oneNumber + `)*)[)\]])?[ \x{a0}]*(mm|cm|inches|inch|ins|in|"|”)(?:[^\pL]|$)`)

// lengthOf returns the length that a text tells for the size in some place.
func lengthOf(text string, place int) (units.Length, bool) {
	m := measured.FindStringSubmatch(text)
	if m == nil {
		return 0, false
	}
	list := []string{m[1]}
	if m[2] != "" {
		list = append(list, strings.FieldsFunc(strings.ReplaceAll(m[2], ", ", ";"), func(r rune) bool { return r == ';' })...)
	}
	if len(list) == 1 {
		place = 0
	}
	if place >= len(list) {
		return 0, false
	}
	unit := units.IN
	if m[3] == "cm" || m[3] == "mm" {
		unit = units.Unit(m[3])
	}
	length, err := units.Parse(strings.TrimSpace(strings.ReplaceAll(list[place], "-", " ")), unit)
	return length, err == nil
}

// Lines are those of a text.
type Lines []string

// LinesOf takes a text apart.
func LinesOf(text string) Lines { return strings.Split(strings.ReplaceAll(text, "\r\n", "\n"), "\n") }

// sentence is what stands from a spot on, to the end of the line in which another lies.
func (l Lines) sentence(from, to written.Spot) string {
	var b strings.Builder
	for no := from.Line; no <= to.Line && no <= len(l); no++ {
		line := []rune(l[no-1])
		if no == from.Line {
			line = line[min(max(0, from.Column-1), len(line)):]
		}
		b.WriteString(string(line) + " ")
	}
	return b.String()
}

// Rounds returns of each length that is told how many rounds it takes beyond those that were
// counted, at so many rounds over a mm. ok is false where a length can't be read, or it
// isn't told from where it is measured.
func (l Lines) Rounds(list []tally.Long, perMM float64) (n []int, ok bool) {
	for i, of := range list {
		for before := i - 1; before >= 0 && list[before].At-list[before].Since == of.At-of.Since; before-- {
			of.Since += n[before] // of the same piece
		}
		rounds, ok := l.rounds(of, perMM)
		if !ok {
			return nil, false
		}
		n = append(n, rounds)
	}
	return n, true
}

// rounds is that of one length.
func (l Lines) rounds(of tally.Long, perMM float64) (n int, ok bool) {
	text := strings.ToLower(l.sentence(of.From, of.To))
	length, ok := lengthOf(text, of.Place)
	if !ok || of.Stitches < 0 || perMM <= 0 {
		return 0, false
	}
	n = int(math.Round(length.MM() * perMM))
	switch whole := contains(text, beginnings...); {
	case whole, !strings.Contains(text, " from ") && contains(text, "measures", " it is ", "measure "):
		if n -= of.Since; n == 1 {
			n = 0 // lengths are told to the nearest half a centimetre at best
		}
	case contains(text, " from ", "above", "below", "short of", "less", "before", "until", "till"):
		return 0, false
	}
	if n = max(0, n); of.Again > 1 {
		n = (n + of.Again/2) / of.Again * of.Again
	}
	return n, true
}

// beginnings are how it is told that a length is that of the whole piece.
var beginnings = []string{
	"from the cast-on", "from cast-on", "from the cast on", "from cast on", "from co", "from beg", "from the beg", "from start", "from the start",
	"from the lower edge", "from lower edge", "from the bottom", "from bottom", "from the edge", "from the fold", "from the lower fold", "from the turn", "from the hem",
}

func contains(text string, any ...string) bool {
	for _, one := range any {
		if strings.Contains(text, one) {
			return true
		}
	}
	return false
}
