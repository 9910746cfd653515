package likeness

import (
	"strconv"
	"strings"

	"thenar/internal/mitt"
	"thenar/internal/sheet"
)

// Number is a number of the mitt as it was recognised.
type Number struct {
	Name, Value string
	Line        int // of the text; 0: nowhere in particular

	path  string // in the sheet
	of    mitt.Number
	fixed bool // it is one of the plan's numbers
}

// draft is a sheet while it is read out of a text.
type draft struct {
	kind    mitt.Kind
	sheet   sheet.Sheet
	numbers []Number
	groups  [][]row // the rows that each piece of the plan should have
	worked  int     // rows of the text in all
	topped  bool    // it ends in a top
	knits   int     // of the text's rib; 0: it has none
	purls   int
	plain   bool                // some part is bound off above plain rounds
	text    string              // in small letters
	lengths int                 // of them, told by a length
	edged   bool                // without a thumb: it is bound off, and begins or ends in rib
	down    bool                // it is worked from the fingertips
	tops    []top               // ways in which the top may be closed
	topRows []row               // those above the division, which end in it
	ways    []func(sheet.Sheet) // other choices that the text leaves open

	stitchesPerMM, roundsPerMM float64
}

// fix fixes a number as it was found in a line.
func (d *draft) fix(n mitt.Number, line int, values ...int) {
	if d.down && (n == mitt.KeptOnHand || n == mitt.PickedUp || n == mitt.ThumbDecreases) {
		return
	}
	texts := make([]string, len(values))
	for i, v := range values {
		texts[i] = strconv.Itoa(v)
	}
	text := strings.Join(texts, ", ")
	d.sheet[n.Path()] = text
	d.numbers = append(d.numbers, Number{Value: text, Line: line, path: n.Path(), of: n, fixed: true})
}

// or says what else a number may be.
func (d *draft) or(n mitt.Number, value int) {
	if was := d.sheet[n.Path()]; was == "" {
		return
	}
	if text := itoa(value); d.sheet[n.Path()] != text {
		d.ways = append(d.ways, func(s sheet.Sheet) { s[n.Path()] = text })
	}
}

// choose notes a choice of how it is made, in words and as a sheet has it.
func (d *draft) choose(name, said, path, value string, line int) {
	d.sheet[path] = value
	d.numbers = append(d.numbers, Number{Name: name, Value: said, Line: line, path: path})
}

// long sets a length that is so many rounds.
func (d *draft) long(path string, rounds int) {
	if rounds > 0 {
		d.sheet[path] = cm(float64(rounds) / d.roundsPerMM)
	}
}

// girth is what so many stitches measure, in cm.
func (d *draft) girth(n int) string { return cm(float64(n) / d.stitchesPerMM) }

// cm is a length as a sheet in centimetres has it.
func cm(mm float64) string {
	return strings.TrimSuffix(strings.TrimRight(strconv.FormatFloat(mm/10, 'f', 3, 64), "0"), ".")
}
