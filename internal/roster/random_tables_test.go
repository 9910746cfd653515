package roster

import (
	"fmt"
	"math/big"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"golang.org/x/text/encoding/charmap"

	"thenar/internal/hand"
	"thenar/internal/sheet"
	"thenar/internal/testenv"
	"thenar/internal/units"
)

// wantedRow is the expected result for a generated row: the student, or the reasons
// for refusing it, each as heading and part of the message.
type wantedRow struct {
	line    int
	student Student
	reasons [][2]string
}

// generator makes random tables with the expected result for each row.
type generator struct {
	*rand.Rand
	delimiter string
	end       string
	quoted    bool // every cell is in quotes
	stray     bool // some quotes are not closed; then none means inches
	unit      units.Unit
	columns   []generatedColumn
	line      int
	out       strings.Builder
	wanted    []wantedRow
	spoilt    map[string]int // number of spoilt cells by field, to see that all were tried
}

// generatedColumn is a column of a generated table.
type generatedColumn struct {
	heading string
	field   string
	unit    units.Unit // named in its heading
	over    string     // the length of a gauge, in the class's unit
	least   int        // of a length, in tenths of a millimetre
	span    int
}

func newGenerator(seed uint64) *generator {
	m := &generator{Rand: rand.New(rand.NewPCG(seed, 6)), line: 1, spoilt: map[string]int{}}
	m.delimiter, m.end = m.pick(",", ";", "\t", "|"), m.pick("\n", "\r\n", "\r")
	m.quoted, m.stray = m.IntN(3) == 0, m.IntN(3) == 0
	m.unit = []units.Unit{units.MM, units.CM, units.IN}[m.IntN(3)]
	m.columns = []generatedColumn{{heading: m.pick("name", "Student", "INITIALS", " Knitter ", "Name (or initials)", "Student's name"), field: fieldName}}
	for _, c := range [][]string{
		{"pins.cast_on", "cast on", "Cuff stitches", "stitches on the needles"},
		{"pins.cuff_rounds", "cuff rounds", "Cuff rows"},
		{"pins.gusset_base", "base", "Gusset base"},
		{"pins.bridge", "bridge"},
		{fieldNote, "note", "Remarks"},
		{hand.FieldSize, "size", "Glove size"},
		{fieldKnits, "knits", "Direction", "left to right"},
		{fieldFrom, "gauge from", "counted on"},
		{"", "shoe size", "e-mail", "paid", "Phone no."},
	} {
		if m.IntN(2) == 0 {
			m.columns = append(m.columns, generatedColumn{heading: m.pick(c[1:]...), field: c[0]})
		}
	}
	m.lengthColumns()
	m.gaugeColumns()
	m.Shuffle(len(m.columns), func(i, j int) { m.columns[i], m.columns[j] = m.columns[j], m.columns[i] })
	return m
}

func (m *generator) pick(list ...string) string { return list[m.IntN(len(list))] }

// lengthColumns adds columns of lengths in ranges that make possible hands: no
// thumb as wide as the hand, no breadth of half the girth.
func (m *generator) lengthColumns() {
	for _, c := range []struct {
		field       string
		least, span int
		headings    []string
	}{
		{hand.FieldCircumference, 1500, 800, []string{"hand", "Hand circumference", "ROUND the knuckles", "girth of the hand"}},
		{hand.FieldWrist, 1300, 500, []string{"wrist", "round the wrist"}},
		{hand.FieldThumb, 500, 300, []string{"thumb", "Thumb circ."}},
		{hand.FieldLength, 1500, 600, []string{"hand length", "Length"}},
		{hand.FieldGussetLength, 400, 300, []string{"gusset length"}},
		{hand.FieldThumbLength, 400, 300, []string{"thumb length", "length of the thumb"}},
		{hand.FieldWristToCrotch, 500, 300, []string{"wrist to thumb", "Wrist to crotch"}},
		{hand.FieldPalm, 1900, 600, []string{"palm and thumb", "Palm + thumb"}},
		{hand.FieldBreadth, 600, 120, []string{"breadth of hand", "Hand width"}},
		{hand.Index.FieldGirth(), 500, 300, []string{"index finger girth", "Round the forefinger"}},
		{hand.Middle.FieldGirth(), 500, 300, []string{"middle finger circumference", "girth of the middle finger"}},
		{hand.Ring.FieldGirth(), 500, 300, []string{"ring finger girth", "around ring finger"}},
		{hand.Little.FieldGirth(), 400, 300, []string{"little finger girth", "Pinky circ."}},
		{hand.Index.FieldLength(), 500, 300, []string{"index finger length"}},
		{hand.Middle.FieldLength(), 600, 300, []string{"length of middle finger"}},
		{hand.Ring.FieldLength(), 500, 300, []string{"Ring length"}},
		{hand.Little.FieldLength(), 400, 300, []string{"pinkie length", "little finger, length"}},
		{hand.Index.FieldCrotch(), 700, 200, []string{"wrist to index/middle", "Crotch between index, middle"}},
		{hand.Middle.FieldCrotch(), 700, 200, []string{"wrist to middle and ring"}},
		{hand.Ring.FieldCrotch(), 600, 200, []string{"wrist to crotch ring/little"}},
	} {
		if c.field != hand.FieldCircumference && m.IntN(3) > 0 {
			continue
		}
		col := generatedColumn{heading: m.pick(c.headings...), field: c.field, least: c.least, span: c.span}
		if m.IntN(2) == 0 {
			col.unit = []units.Unit{units.MM, units.CM, units.IN}[m.IntN(3)]
			u := string(col.unit)
			col.heading = m.pick(col.heading+" ("+u+")", col.heading+" in "+u, col.heading+" ["+u+"]", col.heading+"/"+u, col.heading+" "+u, col.heading+", "+strings.ToUpper(u))
		}
		m.columns = append(m.columns, col)
	}
}

func (m *generator) gaugeColumns() {
	over := func(stem string) generatedColumn {
		switch m.IntN(3) {
		case 1:
			return generatedColumn{heading: m.pick(stem+" (10 cm)", stem+" / 100 mm", stem+" over 10cm", stem+", 10 x 10 cm"), over: exact(100_000, m.unit)}
		case 2:
			return generatedColumn{heading: m.pick(stem+" / 4 in", stem+" (4 inches)", stem+" over 4in"), over: exact(101_600, m.unit)}
		}
		return generatedColumn{heading: stem, over: GaugeOver(m.unit)}
	}
	if m.IntN(4) > 0 {
		c := over(m.pick("stitches", "sts", "gauge", "Stitch gauge"))
		c.field = stitchesPath
		m.columns = append(m.columns, c)
		if m.IntN(2) == 0 {
			c := over(m.pick("rounds", "Rows", "round gauge"))
			c.field = roundsPath
			m.columns = append(m.columns, c)
		}
	}
}

// exact writes a length in micrometres in a unit, to at most four decimals, worked
// out in fractions.
func exact(um int64, u units.Unit) string {
	size := map[units.Unit]int64{units.MM: 1000, units.CM: 10_000, units.IN: 25_400}[u]
	s := big.NewRat(um, size).FloatString(map[units.Unit]int{units.MM: 3, units.CM: 4, units.IN: 4}[u])
	return strings.TrimRight(strings.TrimRight(s, "0"), ".")
}

// cell writes a cell, in quotes where it needs them or by chance.
func (m *generator) cell(s string) string {
	inches := strings.HasSuffix(s, `"`) && strings.Count(s, `"`) == 1 && len(s) > 1
	if m.quoted || m.IntN(8) == 0 || strings.ContainsAny(s, "\r\n"+m.delimiter) || strings.Contains(s, `"`) && (!inches || m.stray || m.IntN(2) == 0) {
		return `"` + strings.ReplaceAll(s, `"`, `""`) + `"`
	}
	return s
}

func (m *generator) write(text string) {
	m.out.WriteString(text + m.end)
	m.line += 1 + breaks(text)
}

// row writes cells, and perhaps delimiters behind them.
func (m *generator) row(cells []string) {
	var list []string
	for _, c := range cells {
		list = append(list, m.cell(c))
	}
	m.write(strings.Join(list, m.delimiter) + strings.Repeat(m.delimiter, m.IntN(2)*m.IntN(3)))
}

func (m *generator) table(rows int) {
	for range m.IntN(3) {
		m.write(m.pick("", "Tuesday’s class", "sep="+m.delimiter, m.delimiter+m.delimiter))
	}
	var heads []string
	for _, c := range m.columns {
		heads = append(heads, c.heading)
	}
	m.row(heads)
	for i := range rows {
		if m.IntN(5) == 0 {
			m.write(m.pick("", m.delimiter, strings.Repeat(m.delimiter, 3), "  ", `""`))
		}
		if m.stray && m.IntN(5) == 0 {
			m.strayRow(i)
		} else {
			m.student(i)
		}
	}
}

// strayRow writes a row with an unclosed quote, or text behind a closing one.
func (m *generator) strayRow(i int) {
	m.spoilt["quotes"]++
	cells := make([]string, len(m.columns))
	at := m.IntN(len(cells))
	for j, c := range m.columns {
		if c.field == fieldName {
			cells[j] = fmt.Sprintf("Stray %d", i)
		}
	}
	cells[at] = m.pick(`"open`, `"closed"too early`, `"open, and "" doubled`)
	m.wanted = append(m.wanted, wantedRow{line: m.line, reasons: [][2]string{{"", "The row has "}}})
	m.write(strings.Join(cells, m.delimiter))
}

// student writes a row; one in three is spoilt in one column or two.
func (m *generator) student(i int) {
	f := wantedRow{line: m.line, student: Student{Sheet: sheet.Sheet{}}}
	cells := make([]string, len(m.columns))
	for j, c := range m.columns {
		cells[j] = m.good(c, &f.student, i)
	}
	counted := f.student.Sheet[stitchesPath] != ""
	for j, c := range m.columns {
		if c.field == roundsPath && !counted { // rounds alone are wrong
			cells[j] = ""
			delete(f.student.Sheet, roundsPath)
			delete(f.student.Sheet, heightPath)
		}
	}
	if m.IntN(3) == 0 {
		first := m.IntN(len(cells))
		m.spoil(first, cells, &f, counted)
		if second := m.IntN(len(cells)); second != first {
			m.spoil(second, cells, &f, counted)
		}
	}
	if m.IntN(25) == 0 {
		m.spoilt["surplus"]++
		cells = append(cells, "surplus")
		f.reasons = append(f.reasons, [2]string{"beyond the last heading", "“surplus” has no heading"})
	}
	m.row(cells)
	if strings.TrimSpace(strings.Join(cells, "")) != "" {
		m.wanted = append(m.wanted, f)
	}
}

// spoil makes the cell of a column wrong, if it can be.
func (m *generator) spoil(at int, cells []string, f *wantedRow, counted bool) {
	c := m.columns[at]
	text, reason := m.bad(c)
	if reason == "" || c.field == roundsPath && !counted {
		return
	}
	m.spoilt[c.field]++
	cells[at] = text
	f.reasons = append(f.reasons, [2]string{strings.TrimSpace(c.heading), reason})
}

// encode encodes a text in one of the encodings in which spreadsheets save.
func (m *generator) encode(text string) []byte {
	switch m.IntN(5) {
	case 0:
		return append([]byte{0xEF, 0xBB, 0xBF}, text...)
	case 1, 2:
		return in16(text, m.IntN(2) == 0, m.IntN(3) > 0)
	case 3:
		if raw, err := charmap.Windows1252.NewEncoder().Bytes([]byte(text)); err == nil {
			return raw
		}
	}
	return []byte(text)
}

// sameReasons reports whether each wanted part is in a reason of its own, and no
// reason is left over.
func sameReasons(reasons []string, parts [][2]string) bool {
	left := slices.Clone(reasons)
	for _, part := range parts {
		i := slices.IndexFunc(left, func(r string) bool {
			return strings.Contains(r, part[1]) && (part[0] == "" || strings.HasPrefix(r, part[0]+": "))
		})
		if i < 0 {
			return false
		}
		left = slices.Delete(left, i, i+1)
	}
	return len(left) == 0
}

// differs describes the first difference of a table from the wanted rows; "" if
// there is none.
func (m *generator) differs(table Table) string {
	if len(table.Columns) != len(m.columns) {
		return fmt.Sprintf("%d columns", len(table.Columns))
	}
	name := ""
	for i, c := range table.Columns {
		if c.Field != m.columns[i].field {
			return fmt.Sprintf("%q is read as %q", c.Heading, c.Field)
		}
		if c.Field == fieldName {
			name = c.Heading
		}
	}
	students, named := table.Students, table.Wrong
	for _, f := range m.wanted {
		switch {
		case len(f.reasons) == 0 && len(students) == 0, len(f.reasons) > 0 && len(named) == 0:
			return fmt.Sprintf("line %d is missing; wrong are %+v", f.line, table.Wrong)
		case len(f.reasons) == 0:
			if !reflect.DeepEqual(students[0], f.student) || len(students[0].Check(m.unit)) > 0 {
				return fmt.Sprintf("line %d is %+v, not %+v", f.line, students[0], f.student)
			}
			students = students[1:]
		default:
			spoilt := slices.ContainsFunc(f.reasons, func(r [2]string) bool { return r[0] == name || r[0] == "" })
			if named[0].Line != f.line || !spoilt && named[0].Name != f.student.Name || !sameReasons(named[0].Reasons, f.reasons) {
				return fmt.Sprintf("line %d is %+v, not %q", f.line, named[0], f.reasons)
			}
			named = named[1:]
		}
	}
	if len(students)+len(named)+table.More > 0 {
		return fmt.Sprintf("left over are %+v, %+v and %d", students, named, table.More)
	}
	return ""
}

// A thousand random tables with any encoding, delimiter, order, headings, units,
// quotes, empty rows, formulas and rubbish: exactly the rows without a fault
// become students, with their values; every other row is returned with its line
// and exactly its reasons.
func TestRandomTables(t *testing.T) {
	right, wrong, spoilt := 0, 0, map[string]int{}
	for seed := range uint64(testenv.Cases(220, 1000)) {
		m := newGenerator(seed)
		m.table(3 + m.IntN(12))
		table, err := Read(m.encode(m.out.String()), m.unit)
		if err != nil {
			t.Fatalf("table %d: %v: %q", seed, err, m.out.String())
		}
		if differs := m.differs(table); differs != "" {
			t.Fatalf("table %d in %s: %s: %q", seed, m.unit, differs, m.out.String())
		}
		right, wrong = right+len(table.Students), wrong+len(table.Wrong)
		for field, n := range m.spoilt {
			spoilt[field] += n
		}
	}
	t.Logf("%d rows right, %d wrong, spoilt: %v", right, wrong, spoilt)
	for _, field := range append(Paths(), fieldName, fieldNote, fieldKnits, fieldFrom, "quotes", "surplus") {
		if field != widthPath && field != heightPath {
			assert.Greater(t, spoilt[field], 5, "%s was spoilt often enough", field)
		}
	}
}
