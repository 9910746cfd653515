package likeness

import (
	"math"
	"regexp"
	"strings"

	"thenar/internal/tally"
	"thenar/internal/units"
	"thenar/internal/written"
)

// measured matches a length: "7.5 cm", "2¼ in", "3 inches".
var measured = regexp.MustCompile(`(\d+(?:[.,]\d+)?)?\s*([¼½¾⅓⅔⅛⅜⅝⅞]|\d/\d)?[ \x{a0}]*(mm|cm|inches|inch|ins|in|"|”)(?:[^\pL]|$)`)

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

// Rounds returns how many rounds are worked beyond those that were counted, where that is told
// by a length, at so many rounds over a mm. ok is false where the length can't be read, or
// it isn't told from where it is measured.
func (l Lines) Rounds(of tally.Long, perMM float64) (n int, ok bool) {
	said := l.sentence(of.From, of.To)
	m := measured.FindStringSubmatch(said)
	if m == nil || of.Stitches < 0 || perMM <= 0 {
		return 0, false
	}
	unit := units.IN
	if m[3] == "cm" || m[3] == "mm" {
		unit = units.Unit(m[3])
	}
	length, err := units.Parse(strings.TrimSpace(m[1]+" "+m[2]), unit)
	if err != nil {
		return 0, false
	}
	n = int(math.Round(length.MM() * perMM))
	text := strings.ToLower(said)
	switch {
	case contains(text, "cast-on", "cast on", "beginning", " beg", " co ", "from the edge", "bottom edge", "thumb measures", "measures in all", "total"):
		if n -= of.Since; n == 1 {
			n = 0 // lengths are told to the nearest half a centimetre at best
		}
	case contains(text, " from ", "above", "below", "short of", "less", "before", "until", "till", "measures"):
		return 0, false
	}
	if n = max(0, n); of.Again > 1 {
		n = (n + of.Again/2) / of.Again * of.Again
	}
	return n, true
}

func contains(text string, any ...string) bool {
	for _, one := range any {
		if strings.Contains(text, one) {
			return true
		}
	}
	return false
}
