package roster

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/hand"
	"thenar/internal/sheet"
	"thenar/internal/units"
)

// readCell reads one cell under a heading.
func readCell(u units.Unit, heading, cell string) reader {
	r := reader{unit: u, from: map[string]string{}, bad: map[string]bool{}}
	r.begin()
	r.put(columnOf(heading), cell)
	return r
}

// Lengths with their units. 1 in = 25.4 mm exactly (international yard and
// pound agreement, 1959). In the class's unit they stay as typed.
func TestLengthCells(t *testing.T) {
	for _, c := range []struct {
		unit                units.Unit
		heading, cell, want string
	}{
		{units.CM, "hand", "18,5", "18,5"},
		{units.CM, "hand", " 18.50 cm ", "18.50"},
		{units.CM, "hand", "185mm", "18.5"},
		{units.CM, "hand (mm)", "185", "18.5"},
		{units.CM, "hand (in)", "7 1/2", "19.05"},
		{units.CM, "hand", "7 1/2 in", "19.05"},
		{units.CM, "hand", `7½"`, "19.05"},
		{units.CM, "hand", "7-1/2 in.", "19.05"},
		{units.CM, "hand", "7 1⁄2”", "19.05"},
		{units.CM, "hand (in)", "19 cm", "19"},
		{units.CM, "hand", "7,5 Inches", "19.05"},
		{units.CM, "hand", "7''", "17.78"},
		{units.IN, "hand", "7½", "7½"},
		{units.IN, "hand", "7 3/8″", "7 3/8"},
		{units.IN, "hand", "19 cm", "7.4803"},
		{units.IN, "hand (mm)", "190.5", "7.5"},
		{units.IN, "hand", "7-1/2", "7 1/2"},
		{units.MM, "hand", "19 centimetres", "190"},
		{units.MM, "hand", "7⅜ in", "187.325"},
		{units.MM, "hand (cm)", "18,55", "185.5"},
		{units.MM, "hand", "185\u00a0mm", "185"},
	} {
		r := readCell(c.unit, c.heading, c.cell)
		assert.Empty(t, r.reasons, c.cell)
		assert.Equal(t, c.want, r.student.Sheet[hand.FieldCircumference], "%s under %s", c.cell, c.heading)
	}
	for cell, says := range map[string]string{
		"1,900.5": "thousands", "1 900": "thousands", "1.900,5 mm": "thousands", "1’900": "thousands", "wide": "“wide” is not a number; write 18.5", "19 ells": "not a number",
		"0": "is zero", "3 m": "not a number", "201 cm": "is above 2 m", "7 1/0": "nothing below the line", "18.5.5": "not a number", "１８": "not a number", "1e2": "not a number", "-19": "not a number",
	} {
		r := readCell(units.CM, "Hand [cm]", cell)
		if assert.Len(t, r.reasons, 1, cell) {
			assert.Contains(t, r.reasons[0], "Hand [cm]: ")
			assert.Contains(t, r.reasons[0], says, cell)
		}
	}
}

// Counts, alone and together, over the length that the cell names, or the heading,
// or the usual one in the class's unit.
func TestGaugeCells(t *testing.T) {
	both := func(sts, width, rows, height string) sheet.Sheet {
		return sheet.Sheet{stitchesPath: sts, widthPath: width, roundsPath: rows, heightPath: height}
	}
	sts := func(n, over string) sheet.Sheet { return sheet.Sheet{stitchesPath: n, widthPath: over} }
	rows := func(n, over string) sheet.Sheet { return sheet.Sheet{roundsPath: n, heightPath: over} }
	for _, c := range []struct {
		unit          units.Unit
		heading, cell string
		want          sheet.Sheet
	}{
		{units.CM, "gauge", "24", sts("24", "10")},
		{units.MM, "sts", "24", sts("24", "100")},
		{units.IN, "stitches", "22", sts("22", "4")},
		{units.CM, "gauge", "24,5", sts("24,5", "10")},
		{units.CM, "gauge", "24 1/2 sts", sts("24 1/2", "10")},
		{units.CM, "gauge", "24½", sts("24½", "10")},
		{units.CM, "gauge", "24/32", both("24", "10", "32", "10")},
		{units.CM, "gauge", "24 sts x 32 rounds", both("24", "10", "32", "10")},
		{units.IN, "gauge", "24 x 32", both("24", "4", "32", "4")},
		{units.CM, "gauge", "24×32", both("24", "10", "32", "10")},
		{units.CM, "gauge", "24 sts, 32 rnds", both("24", "10", "32", "10")},
		{units.CM, "gauge", "32 rows x 24 sts", both("24", "10", "32", "10")},
		{units.CM, "gauge", "24 1/2 / 32", both("24 1/2", "10", "32", "10")},
		{units.CM, "gauge", "24,5 x 32,5", both("24,5", "10", "32,5", "10")},
		{units.CM, "gauge", "24 sts over 4 in", sts("24", "10.16")},
		{units.CM, "gauge", "24 sts / 10 cm", sts("24", "10")},
		{units.CM, "gauge", "24/10cm", sts("24", "10")},
		{units.CM, "gauge", "6 sts per inch", sts("6", "2.54")},
		{units.IN, "gauge", "6/in", sts("6", "1")},
		{units.CM, "gauge", "6 sts to the inch", sts("6", "2.54")},
		{units.IN, "gauge", "24 Sts. = 10 cm", sts("24", "3.937")},
		{units.CM, "gauge", `24 sts in 4"`, sts("24", "10.16")},
		{units.MM, "gauge", "24/32 per 10 cm", both("24", "100", "32", "100")},
		{units.CM, "gauge", "24/32/10 cm", both("24", "10", "32", "10")},
		{units.CM, "gauge", "24 sts and 32 rounds over 10 x 15 cm", both("24", "10", "32", "15")},
		{units.CM, "gauge", "24 x 32 on 10 cm x 100 mm", both("24", "10", "32", "10")},
		{units.CM, "gauge (5 cm)", "12", sts("12", "5")},
		{units.CM, "gauge (5 cm)", "24 sts over 10 cm", sts("24", "10")},
		{units.CM, "stitches per inch", "6/8", both("6", "2.54", "8", "2.54")},
		{units.CM, "rounds", "32", rows("32", "10")},
		{units.CM, "rows / 4 in", "32 rows", rows("32", "10.16")},
		{units.IN, "rounds", "32 over 10 cm", rows("32", "3.937")},
	} {
		r := readCell(c.unit, c.heading, c.cell)
		assert.Empty(t, r.reasons, c.cell)
		assert.Equal(t, c.want, r.student.Sheet, "%s under %s", c.cell, c.heading)
	}
}

// A cell that could mean two counts, or a count of something else, is refused.
func TestAmbiguousCountsAreRefused(t *testing.T) {
	for _, c := range [][3]string{
		{"gauge", "many", "is no count"},
		{"gauge", "24 by", "is no count"},
		{"gauge", "x32", "is no count"},
		{"gauge", "24x32x3", "is no count"},
		{"gauge", "24 x 32 cm", "is no count"},
		{"gauge", "24 cm", "is no count"},
		{"gauge", "24 sts in", "is no count"},
		{"gauge", "24, 32", "is no count"},
		{"gauge", "24-26", "is no count"},
		{"gauge", "1.024,5", "is no count"},
		{"gauge", "24 32", "is no count"},
		{"rounds", "24 x 32", "is no count; write rounds"},
		{"gauge", "5/7 in", "may be two counts"},
		{"gauge", "24 sts x 32 sts", "the same count twice"},
		{"stitches", "32 rounds", "something else than the heading"},
		{"rounds", "24 sts", "something else than the heading"},
		{"gauge", "24 over 0 cm", "is zero"},
		{"gauge", "24 sts over 3000 mm", "above 2 m"},
	} {
		r := readCell(units.CM, c[0], c[1])
		if assert.Len(t, r.reasons, 1, c[1]) {
			assert.Contains(t, r.reasons[0], c[2], c[1])
		}
		assert.Empty(t, r.student.Sheet, c[1])
	}
}

// Two columns may give the same count if they agree.
func TestSameCountInTwoColumns(t *testing.T) {
	r := readCell(units.CM, "gauge", "24/32")
	r.put(columnOf("rounds"), "32")
	assert.Empty(t, r.reasons)
	r.put(columnOf("rounds"), "40")
	assert.Equal(t, []string{"rounds: “40” is not what stands under “rounds”; write it once"}, r.reasons)
}

// Formulas are refused, also behind invisible characters. Negative numbers, and
// texts with the same signs inside, are no formulas.
func TestFormulasAreRefused(t *testing.T) {
	for _, cell := range []string{
		"=1+1", "+19", "@SUM(A1)", "-2+3", "-A1", "- 5", "=", "\t=1", "\r=1", "\n@x", "\u200b=1", "\u00a0=1", "\u202e+1", "＝1", "＠x", "－a", `=HYPERLINK("x")`, "-5 cm",
	} {
		for _, heading := range []string{"hand", "name", "note", "size", "gauge", "cast on", "knits", "gauge from"} {
			r := readCell(units.CM, heading, cell)
			if assert.Len(t, r.reasons, 1, "%q under %s", cell, heading) {
				assert.Contains(t, r.reasons[0], "is a formula; paste its value")
			}
			assert.Equal(t, Student{Sheet: sheet.Sheet{}}, r.student, "%q", cell)
		}
		assert.Empty(t, readCell(units.CM, "shoe size", cell).reasons, "unused columns are not read")
	}
	for _, cell := range []string{"a=b", "1+1", "Ada @ noon", "Jean-Luc", "5", "'=1"} {
		assert.Empty(t, readCell(units.CM, "name", cell).reasons, cell)
		assert.Empty(t, readCell(units.CM, "note", cell).reasons, cell)
	}
	assert.Contains(t, readCell(units.CM, "name", "-5").reasons[0], "is a formula")
	assert.Contains(t, readCell(units.CM, "hand", "-5").reasons[0], "is not a number")
	assert.Empty(t, readCell(units.CM, "note", "-5").reasons)
	for _, dash := range []string{"-", "–", "--", "—"} {
		for _, heading := range []string{"hand", "name", "note", "gauge", "knits"} {
			r := readCell(units.CM, heading, dash)
			assert.Empty(t, r.reasons, "a dash under %s", heading)
			assert.Equal(t, Student{Sheet: sheet.Sheet{}}, r.student)
		}
	}
}

func TestWordsOfSideAndGaugeSource(t *testing.T) {
	for cell, want := range map[string]bool{
		"yes": true, "X": true, "1": true, "TRUE": true, "left": true, "Left  to right": true, "no": false, "0": false, "false": false, "right": false, "": false,
		"von links nach rechts": true, "De gauche à droite": true, "van links naar rechts": true, "fra venstre til højre": true, "från vänster till höger": true, "de izquierda a derecha": true,
		"von rechts nach links": false, "de droite à gauche": false, "från höger till vänster": false,
	} {
		r := readCell(units.CM, "knits", cell)
		assert.Empty(t, r.reasons, cell)
		assert.Equal(t, want, r.student.FromLeft, cell)
	}
	for cell, want := range map[string]GaugeFrom{
		"swatch": FromSwatch, "a swatch": FromSwatch, "Cuff": FromCuff, "on the needles": FromCuff, "the cuff on the needles": FromCuff, "band": FromBand, "Ball band": FromBand, "label": FromBand,
	} {
		r := readCell(units.CM, "gauge from", cell)
		assert.Empty(t, r.reasons, cell)
		assert.Equal(t, want, r.student.Gauge, cell)
	}
	assert.Contains(t, readCell(units.CM, "knits", "sideways").reasons[0], "“sideways” is no direction; write left")
	assert.Contains(t, readCell(units.CM, "gauge from", "guess").reasons[0], "write swatch, cuff or ball band")
	assert.Contains(t, readCell(units.CM, "name", "A\uFFFDa").reasons[0], "has lost a letter")
	assert.Equal(t, "Ada Lovelace", readCell(units.CM, "name", " Ada\n Lovelace ").student.Name)
	assert.Contains(t, readCell(units.CM, "name", "Ada,19\nBo").reasons[0], "runs on into the next boxes")
}

func TestWholeNumbersAndSizes(t *testing.T) {
	for cell, want := range map[string]string{"40": "40", "40 sts": "40", "40.0": "40", "40,00 stitches": "40"} {
		assert.Equal(t, want, readCell(units.CM, "cast on", cell).student.Sheet["pins.cast_on"], cell)
	}
	for _, cell := range []string{"40.5", "40,000", "4O", "40-44"} {
		assert.Contains(t, readCell(units.CM, "cast on", cell).reasons[0], "is no whole number", cell)
	}
	for cell, want := range map[string]string{"7.5": "7.5", "7½": "7½", "7,5": "7,5", "Size 8": "8"} {
		assert.Equal(t, want, readCell(units.CM, "glove size", cell).student.Sheet["hand.size"], cell)
	}
	assert.Contains(t, readCell(units.CM, "glove size", "M").reasons[0], "“M” is no glove size; write one from 4 to 13")
}

// A quotation in a message is short, on one line, and printable.
func TestClipShortens(t *testing.T) {
	long := make([]byte, 1_000_000)
	for i := range long {
		long[i] = 'x'
	}
	assert.Equal(t, string(long[:40])+"…", clip(string(long)))
	assert.Equal(t, "a b c", clip("a\nb\x00\tc"))
	assert.Equal(t, "åäö", clip("åäö"))
}
