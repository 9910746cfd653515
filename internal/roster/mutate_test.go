package roster

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"
	"time"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/encoding/charmap"

	"thenar/internal/units"
)

// want is what a made row must come to: a hand in µm, or a reason.
type want struct {
	name   string
	girth  units.Length
	count  string
	reason string // part of it; empty: the row is right
	line   int
}

// mutant makes tables of which every row's fate is known.
type mutant struct {
	*rand.Rand
	delimiter string
	unit      string // of the heading
	comma     bool
	quoted    bool
	end       string
	columns   []string // name, hand, sts, note in any order
	line      int
	out       strings.Builder
	wants     []want
}

func newMutant(seed uint64) *mutant {
	m := &mutant{Rand: rand.New(rand.NewPCG(seed, 6)), line: 1}
	m.delimiter = m.pick(",", ";", "\t", "|")
	m.comma = m.delimiter != "," && m.IntN(2) == 0
	m.unit = m.pick("cm", "mm", "in")
	m.quoted = m.IntN(3) == 0
	m.end = m.pick("\n", "\r\n", "\r")
	m.columns = []string{"name", "hand", "sts", "note"}
	m.Shuffle(4, func(i, j int) { m.columns[i], m.columns[j] = m.columns[j], m.columns[i] })
	return m
}

func (m *mutant) pick(list ...string) string { return list[m.IntN(len(list))] }

// cell writes a cell, in quotes where it must be or by chance.
func (m *mutant) cell(s string) string {
	if m.quoted || m.IntN(8) == 0 || strings.ContainsAny(s, "\"\r\n"+m.delimiter) {
		return `"` + strings.ReplaceAll(s, `"`, `""`) + `"`
	}
	return s
}

func (m *mutant) row(cells map[string]string) {
	var list []string
	for _, c := range m.columns {
		list = append(list, m.cell(cells[c]))
	}
	text := strings.Join(list, m.delimiter) + strings.Repeat(m.delimiter, m.IntN(2)*m.IntN(3))
	m.out.WriteString(text + m.end)
	m.line += 1 + breaks(text)
}

func (m *mutant) number(f float64) string {
	s := strconv.FormatFloat(f, 'f', -1, 64)
	if m.comma {
		s = strings.Replace(s, ".", ",", 1)
	}
	return s
}

func (m *mutant) table(rows int) {
	if m.IntN(4) == 0 {
		m.out.WriteString(m.end)
		m.line++
	}
	hand := m.pick("hand", "Hand circumference", "ROUND the knuckles", "girth")
	m.row(map[string]string{
		"name": m.pick("name", "Student", "initials", " Knitter "), "sts": m.pick("sts", "Stitches (10 cm)", "gauge, 10cm", "stitch gauge / 10 cm"), "note": m.pick("note", "Remarks"),
		"hand": m.pick(hand+" ("+m.unit+")", hand+" in "+m.unit, hand+" ["+m.unit+"]", hand+"/"+m.unit, hand+" "+m.unit),
	})
	for i := range rows {
		if m.IntN(5) == 0 { // an empty row
			m.out.WriteString(m.pick("", m.delimiter, strings.Repeat(m.delimiter, 3), "  ") + m.end)
			m.line++
		}
		m.student(i)
	}
}

// student writes a row, which one time in three is wrong in one of many ways.
func (m *mutant) student(i int) {
	tenths := 140 + m.IntN(100) // of a cm
	girth := units.Length(tenths) * units.Millimetre
	typed := map[string]string{
		"cm": m.number(float64(tenths) / 10), "mm": strconv.Itoa(tenths), "in": m.number(float64(tenths) * 10 / 254),
	}[m.unit]
	if m.unit == "in" {
		girth, _ = units.Parse(typed, units.IN)
	}
	if m.IntN(5) == 0 { // its own unit in the cell
		typed, girth = m.pick(strconv.Itoa(tenths)+" mm", strconv.Itoa(tenths)+"mm"), units.Length(tenths)*units.Millimetre
	}
	w := want{name: fmt.Sprintf("%s %d", m.pick("Åse", "Zoë", "Ana", "O'Neil", "Žofia", `Kit "K"`), i), girth: girth, count: strconv.Itoa(18 + m.IntN(14)), line: m.line}
	cells := map[string]string{"name": w.name, "hand": typed, "sts": w.count, "note": m.pick("", "likes wool", "left early", "a"+m.delimiter+"b", "two\nlines")}
	if m.IntN(15) == 0 {
		cells["note"], w.reason = "a\x01b", "can't be shown"
	}
	if m.IntN(3) == 0 {
		w.reason = m.spoil(cells)
	}
	m.row(cells)
	m.wants = append(m.wants, w)
}

// spoil makes a row wrong and gives a part of the reason.
func (m *mutant) spoil(cells map[string]string) string {
	switch m.IntN(9) {
	case 0:
		cells["name"] = m.pick("", " ")
		return "name: is empty"
	case 1:
		cells["hand"] = m.pick("wide", "18.5.5", "1e3", "NaN", "½½", "0x12", "19 ells", "１８")
		return "is not a number"
	case 2:
		cells["hand"] = m.pick("=A1+B1", "+19", "@SUM(A1)", "-2+3", `=HYPERLINK("x","y")`)
		return "is a formula"
	case 3:
		cells["name"] = m.pick("=1+1", "@here", "+x", "-x", "=cmd|' /C calc'!A0")
		return "is a formula"
	case 4:
		cells["sts"] = m.pick("many", "24 by", "x32", "24x32x3")
		return "is no count"
	case 5:
		cells["hand"] = m.pick("0", "0,0")
		return "is zero"
	case 6:
		cells["hand"] = "9999"
		return "is above 2 m"
	case 7:
		cells["name"] = strings.Repeat("x", longestName+1)
		return "60 are the most"
	}
	cells["sts"] = "0"
	return "is 0"
}

// encode gives the bytes of a text in one of the encodings that spreadsheets
// save.
func (m *mutant) encode(text string) []byte {
	switch m.IntN(5) {
	case 0:
		return append([]byte{0xEF, 0xBB, 0xBF}, text...)
	case 1, 2:
		little := m.IntN(2) == 0
		out := []byte{0xFE, 0xFF}
		if little {
			out = []byte{0xFF, 0xFE}
		}
		for _, u := range utf16.Encode([]rune(text)) {
			if little {
				out = append(out, byte(u), byte(u>>8))
			} else {
				out = append(out, byte(u>>8), byte(u))
			}
		}
		return out
	case 3:
		if raw, err := charmap.Windows1252.NewEncoder().Bytes([]byte(text)); err == nil {
			return raw
		}
	}
	return []byte(text)
}

// A thousand tables in any encoding, with any delimiter, quotes, byte-order
// marks, empty rows, formulas and rubbish: the rows that are right go in with
// their values, the others are named with line and reason.
func TestMutatedTables(t *testing.T) {
	right, wrong := 0, 0
	for seed := range uint64(1000) {
		m := newMutant(seed)
		m.table(3 + m.IntN(12))
		raw := m.encode(m.out.String())
		table, err := Read(raw, units.CM)
		require.NoError(t, err, "table %d: %q", seed, m.out.String())
		names, reasons := map[string]Student{}, map[int]string{}
		for _, s := range table.Students {
			names[s.Name] = s
			require.Empty(t, s.Check(units.CM))
		}
		for _, w := range table.Wrong {
			reasons[w.Line] = strings.Join(w.Reasons, " / ")
		}
		rights := 0
		for _, w := range m.wants {
			if w.reason != "" {
				wrong++
				require.Contains(t, reasons[w.line], w.reason, "table %d, line %d: %q", seed, w.line, m.out.String())
				continue
			}
			rights++
			s, in := names[w.name]
			require.True(t, in, "table %d: %s is not in; %v\n%q", seed, w.name, reasons, m.out.String())
			girth, err := units.Parse(s.Sheet["hand.hand_circumference"], units.CM)
			require.NoError(t, err)
			require.InDelta(t, float64(w.girth), float64(girth), 2, "table %d: %s", seed, w.name)
			require.Equal(t, w.count, s.Sheet[stitchesPath])
		}
		require.Len(t, table.Students, rights, "table %d", seed)
		require.Len(t, table.Wrong, len(m.wants)-rights, "table %d", seed)
		right += rights
	}
	t.Logf("%d rows right, %d wrong", right, wrong)
}

// A hundred thousand rows: a class's worth goes in, the rest is counted.
func TestManyRows(t *testing.T) {
	var b strings.Builder
	b.WriteString("name,hand,note\n")
	for i := range 100_000 {
		fmt.Fprintf(&b, "student %d,%d.5,\"a, b\"\n", i, 15+i%8)
	}
	table, err := Read([]byte(b.String()), units.CM)
	require.NoError(t, err)
	assert.Len(t, table.Students, MostStudents)
	assert.Equal(t, 100_000-MostStudents, len(table.Wrong)+table.More)
	assert.Equal(t, MostStudents+2, table.Wrong[0].Line)

	b.Reset() // and as many with a quote that is never closed
	b.WriteString("name,hand\n")
	for i := range 100_000 {
		fmt.Fprintf(&b, "\"student %d,19\n", i)
	}
	table, err = Read([]byte(b.String()), units.CM)
	require.NoError(t, err)
	assert.Equal(t, 100_000, len(table.Students)+len(table.Wrong)+table.More)
	assert.Empty(t, table.Students)
}

// FuzzRead holds that no bytes bring it down, that every student can be kept,
// that every wrong row has a line of the file and a reason, and that the same
// bytes read alike.
func FuzzRead(f *testing.F) {
	for seed := range uint64(30) {
		m := newMutant(seed)
		m.table(4)
		f.Add(m.encode(m.out.String()))
	}
	f.Add([]byte("name,hand\n\"a,19\nb,\"1\"\"9\"\n"))
	f.Add([]byte{0xFF, 0xFE, 'n', 0})
	f.Fuzz(func(t *testing.T, raw []byte) {
		table, err := Read(raw, units.IN)
		if err != nil {
			return
		}
		lines := breaks(strings.ReplaceAll(string(raw), "\x00", "")) + 1
		for _, s := range table.Students {
			if faults := s.Check(units.IN); len(faults) > 0 {
				t.Fatalf("%q is in with %v", s.Name, faults)
			}
		}
		for _, w := range table.Wrong {
			if w.Line < 1 || w.Line > lines+bytes.Count(raw, []byte{0x0A})+bytes.Count(raw, []byte{0x0D}) || len(w.Reasons) == 0 {
				t.Fatalf("line %d of %d, %v", w.Line, lines, w.Reasons)
			}
		}
		again, err := Read(raw, units.IN)
		if err != nil || len(again.Students) != len(table.Students) || len(again.Wrong) != len(table.Wrong) {
			t.Fatalf("read again: %v", err)
		}
	})
}

// BenchmarkRead says how long a table takes over splitting it into cells alone.
func BenchmarkRead(b *testing.B) {
	var text strings.Builder
	text.WriteString("name,hand,stitches,rounds,note\n")
	for i := range MostStudents {
		fmt.Fprintf(&text, "student %d,%d.5,24,32,\"a, b\"\n", i, 15+i%8)
	}
	raw := []byte(text.String())
	start := time.Now()
	const times = 20
	for range times {
		_, err := csv.NewReader(bytes.NewReader(raw)).ReadAll()
		require.NoError(b, err)
	}
	cells := float64(time.Since(start).Nanoseconds()) / times
	for b.Loop() {
		_, err := Read(raw, units.CM)
		require.NoError(b, err)
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/cells, "times-the-cells")
}
