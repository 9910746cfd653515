package roster

import (
	"fmt"
	"strconv"
	"strings"

	"thenar/internal/hand"
	"thenar/internal/units"
)

// good returns a valid or empty cell, and sets its value in the student.
func (m *generator) good(c generatedColumn, s *Student, i int) string {
	if c.field != fieldName && m.IntN(4) == 0 {
		return m.pick("", "", " ", "–")
	}
	put := func(text, value string) string {
		s.Sheet[c.field] = value
		return text
	}
	switch c.field {
	case "":
		return m.pick("38", "=A1+B1", "x@y.example", "-", "+49 1", `say "no"`, "a\x00b")
	case fieldName:
		s.Name = fmt.Sprintf("%s %d", m.pick("Åse", "Zoë", "Ana", "O'Neil", "Žofia", `Kit "K"`, "Smith, J.", "A|B", "Jean-Luc;"), i)
		return s.Name
	case fieldNote:
		text := m.pick("likes wool", "left early", "a"+m.delimiter+"b", "two"+m.end+"lines", "50 %")
		s.Note = strings.NewReplacer("\t", " ", m.end, " ").Replace(text) // on one line
		return text
	case fieldKnits:
		text := m.pick("yes", "X", "1", "true", "left", "no", "Right", "0", "false")
		s.FromLeft = strings.Contains("yes X 1 true left", text)
		return text
	case fieldFrom:
		text := m.pick("swatch", "Ball band", "label", "band", "cuff", "On the needles")
		s.Gauge = map[string]GaugeFrom{"Ball band": FromBand, "label": FromBand, "band": FromBand, "cuff": FromCuff, "On the needles": FromCuff}[text]
		return text
	case hand.FieldSize:
		text := m.pick("7", "7.5", "7½", "7,5", "10")
		return put(text, text)
	case stitchesPath, roundsPath:
		return m.goodGauge(c, s)
	}
	if !strings.HasPrefix(c.field, "hand.") {
		n := strconv.Itoa(map[string]int{"pins.cast_on": 30, "pins.cuff_rounds": 10, "pins.gusset_base": 1, "pins.bridge": 2}[c.field] + m.IntN(3))
		return put(m.pick(n, n+" sts", n+".0"), n)
	}
	return m.goodLength(c, put)
}

// goodLength writes a length in the unit of the class, of the heading or one of its
// own, in one of the ways people write it.
func (m *generator) goodLength(c generatedColumn, put func(text, value string) string) string {
	unit, suffix := m.unit, ""
	if c.unit != "" {
		unit = c.unit
	}
	if m.IntN(4) == 0 {
		unit = []units.Unit{units.MM, units.CM, units.IN}[m.IntN(3)]
		suffix = m.pick(" "+string(unit), string(unit), strings.ToUpper(string(unit)))
		if unit == units.IN {
			suffix = m.pick(" in", "in.", " inches", `"`)
		}
	}
	tenths := c.least + m.IntN(c.span)
	um, text := int64(tenths)*100, ""
	switch unit {
	case units.MM:
		text = exact(um, units.MM)
	case units.CM:
		text = exact(um, units.CM)
	default:
		eighths := int64(tenths) * 8 / 254
		um = eighths * 3175
		whole, part := strconv.FormatInt(eighths/8, 10), eighths%8
		text = exact(um, units.IN)
		if part > 0 && m.IntN(2) == 0 {
			text = whole + m.pick([]string{"", "⅛", "¼", "⅜", "½", "⅝", "¾", "⅞"}[part], fmt.Sprintf(" %d/8", part))
		}
	}
	if m.IntN(2) == 0 {
		text = strings.Replace(text, ".", ",", 1)
	}
	if unit == m.unit {
		return put(text+suffix, text)
	}
	return put(text+suffix, exact(um, m.unit))
}

// goodGauge writes a count; under stitches perhaps both counts, unless the table
// has a column of rounds.
func (m *generator) goodGauge(c generatedColumn, s *Student) string {
	n, width := m.pick("24", "22.5", "22,5", "19½"), c.over
	word, tail := m.pick("", " sts"), ""
	if c.field == roundsPath {
		word = m.pick("", " rounds", " rows")
	}
	switch m.IntN(6) {
	case 0:
		tail, width = m.pick(" over 10 cm", " per 10cm", " = 100 mm", " in 10 cm"), exact(100_000, m.unit)
	case 1:
		tail, width = m.pick(" over 4 in", " to 4 inches"), exact(101_600, m.unit)
	}
	if c.field == roundsPath {
		s.Sheet[roundsPath], s.Sheet[heightPath] = n, width
		return n + word + tail
	}
	s.Sheet[stitchesPath], s.Sheet[widthPath] = n, width
	for _, other := range m.columns {
		if other.field == roundsPath {
			return n + word + tail
		}
	}
	if m.IntN(2) == 0 {
		s.Sheet[roundsPath], s.Sheet[heightPath] = "32", width
		return m.pick(n+" x 32", n+"/32", n+" sts x 32 rounds", n+" sts, 32 rows", "32 rounds × "+n+" sts") + tail
	}
	return n + word + tail
}

// bad returns a cell at fault and part of the reason; no reason if the field has no
// faults.
func (m *generator) bad(c generatedColumn) (text, reason string) {
	formula := m.pick("=A1+B1", "+19", "@SUM(A1)", "-2+3", `=HYPERLINK("x","y")`, "\t=1", "=cmd|' /C calc'!A0")
	if m.stray && m.delimiter == "\t" {
		formula = strings.TrimSpace(formula) // behind a stray quote, a quote and a tab would end a cell
	}
	if c.field != "" && m.IntN(4) == 0 {
		return formula, "“" + strings.TrimSpace(formula) + "” is a formula; paste its value"
	}
	switch c.field {
	case fieldName:
		switch m.IntN(4) {
		case 0:
			return "-x", "is a formula"
		case 1:
			return strings.Repeat("ö", maxName+1), "has 61 characters; 60 are the most"
		case 2:
			return m.pick("a\x00b", "a\x01b"), "has characters that can't be shown"
		}
		return m.pick("", " ", "-"), "is empty; write a name or initials"
	case fieldNote:
		if m.IntN(2) == 0 {
			return strings.Repeat("x", maxText+1), "has 201 characters; 200 are the most"
		}
		return m.pick("a\x00b", "\x02"), "has characters that can't be shown"
	case fieldKnits:
		return m.pick("sideways", "2", "yes and no"), "is no direction; write left"
	case fieldFrom:
		return m.pick("guess", "7"), "write swatch, cuff or ball band"
	case hand.FieldSize:
		switch m.IntN(3) {
		case 0:
			return m.pick("M", "7.5.5", "7x"), "is no glove size"
		case 1:
			return "7\x00", "is no glove size"
		}
		return m.pick("99", "3", "7.3"), "write a glove size from 4 to 13"
	case stitchesPath, roundsPath:
		return m.badGauge(c)
	case "":
		return "", ""
	}
	if !strings.HasPrefix(c.field, "hand.") {
		if m.IntN(3) == 0 {
			return "100000", "write a whole number from"
		}
		return m.pick("many", "4.5", "40,000", "1e3"), "is no whole number; write digits"
	}
	return m.badLength()
}

func (m *generator) badGauge(c generatedColumn) (text, reason string) {
	switch m.IntN(4) {
	case 0:
		return "0", "write a number above 0"
	case 1:
		return "9999", "knitting lies between 2 and 500"
	case 2:
		if c.field == stitchesPath {
			return "32 rounds", "is a count of something else"
		}
		return "24 sts", "is a count of something else"
	}
	return m.pick("many", "24 by", "x32", "24x32x3", "24\x00"), "is no count; write"
}

func (m *generator) badLength() (text, reason string) {
	switch m.IntN(5) {
	case 0:
		return m.pick("0", "0,0", "0 mm"), "is zero; write a length above 0"
	case 1:
		return m.pick("9999", "201 cm"), "is above 2 m"
	case 2:
		return m.pick("1,900.5", "1.900,5", "1 900"), "has a sign between thousands"
	case 3:
		return "7 1/0", "nothing below the line"
	}
	return m.pick("wide", "18.5.5", "1e3", "NaN", "½½", "0x12", "19 ells", "１８", "19\x00", "-19"), "is not a number; write 18.5"
}
