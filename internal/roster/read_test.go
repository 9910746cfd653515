package roster

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/testenv"
	"thenar/internal/units"
)

func read(t *testing.T, text string) Table {
	t.Helper()
	table, err := Read([]byte(text), units.CM)
	require.NoError(t, err)
	return table
}

// Tables as spreadsheets write them: every delimiter, decimal commas, units in
// headings and cells, columns in any order. 1 in = 2.54 cm exactly.
func TestReadAcceptsTablesOfSpreadsheets(t *testing.T) {
	for name, text := range map[string]string{
		"commas":            "Name,Hand (cm),Stitches,Rounds\nAda,18.5,24,32\n",
		"semicolons":        "Name;Hand (cm);Stitches;Rounds\r\nAda;18,5;24;32\r\n",
		"tabs":              "Hand/mm\tstudent\tGauge over 10 cm\r\n185\tAda\t24 x 32\r\n",
		"bars":              "rounds | hand | name | sts / 10 cm\n32 | 18,5 | Ada | 24\n",
		"quotes":            "\"Name\",\"Round the knuckles, in cm\",\"sts\",\"rnds\"\n\"Ada\",\"18,5\",\"24\",\"32\"\n",
		"unit in the cell":  "initials,hand circumference,gauge\nAda,185 mm,24 sts x 32 rounds per 10 cm\n",
		"a title above":     "Tuesday's class\n\nname,hand,sts,rows\nAda,18.5,24,32",
		"byte-order mark":   "\uFEFFname,hand,sts,rows\nAda,18.5,24,32",
		"empty rows, CR":    "name,hand,sts,rows\r\r,,,\rAda,18.5,24,32\r",
		"trailing commas":   "name,hand,sts,rows,,,\nAda,18.5,24,32,,,\n",
		"over another":      "name,hand,sts (5 cm),rows (20cm)\nAda,18.5,12,64\n",
		"unused headings":   "name,shoe size,hand,sts,rows\nAda,38,18.5,24,32\n",
		"a slash":           "name,hand,gauge,rounds\nAda,18.5,24 sts / 10 cm,32\n",
		"one heading more":  "Seat,Name,hand\nAda?,Ada,18.5\n",
		"a space, and nbsp": " Name , Hand \nAda\u00a0, 18.5 \n",
		"one heading":       "name;\r\nAda;\r\n",
		"in a frame":        "| name | hand | gauge |\n| Ada | 18,5 cm | 24/32 |\n",
		"a delimiter named": "sep=;\nname;hand;gauge\nAda;18,5;24 sts, 32 rnds\n",
		"no heading above":  ",name,hand,sts,rows\n1,Ada,18.5,24,32\n",
	} {
		table := read(t, text)
		require.Empty(t, table.Wrong, name)
		require.Len(t, table.Students, 1, name)
		s := table.Students[0]
		assert.Equal(t, "Ada", s.Name, name)
		if name != "one heading" {
			girth, err := units.Parse(s.Sheet["hand.hand_circumference"], units.CM)
			require.NoError(t, err, name)
			assert.Equal(t, 185*units.Millimetre, girth, name)
		}
		if s.hasGauge() {
			sheet := s.Sheet.Clone()
			sheet["unit"] = "cm"
			req, err := sheet.Request()
			require.NoError(t, err, name)
			assert.InDelta(t, 0.24, req.Gauge.Stitches, 1e-12, name)
			assert.InDelta(t, 0.32, req.Gauge.Rounds, 1e-12, name)
		}
	}
}

func TestReadOfEveryField(t *testing.T) {
	table := read(t, strings.Join([]string{
		"name\tsize\twrist (in)\tthumb length\tgauge\tgauge from\tcast on\tknits\tnote",
		"Bo\t7½\t6 1/4\t2.5 in\t22 sts over 4 in\tball band\t40\tleft\twants wool",
		"Cy\t8\t6,25\t6\t\tcuff\t\tno\t",
	}, "\n"))
	require.Empty(t, table.Wrong)
	require.Len(t, table.Students, 2)
	bo := table.Students[0]
	assert.Equal(t, Student{
		Name: "Bo", FromLeft: true, Gauge: FromBand, Note: "wants wool",
		Sheet: map[string]string{
			"hand.size": "7½", "hand.wrist_circumference": "15.875", "hand.thumb_length": "6.35",
			"gauge.swatches[0].stitches": "22", "gauge.swatches[0].width": "10.16", "pins.cast_on": "40",
		},
	}, bo)
	assert.Equal(t, FromCuff, table.Students[1].Gauge)
	assert.Equal(t, "6", table.Students[1].Sheet["hand.thumb_length"], "in the class's unit it stays as typed")
}

// A row at fault is returned with its line and every reason; the others become
// students.
func TestWrongRowsHaveReasons(t *testing.T) {
	table := read(t, strings.Join([]string{
		"name,hand (cm),sts,rounds,knits,gauge from", // 1
		"Ada,18.5,24,32,,",                           // 2
		"Bo,wide,24,x,sideways,",                     // 3
		",19,24,32,,",                                // 4
		"Cy,=1+1,24,32,,",                            // 5
		"=cmd|' /C calc'!A0,19,,,,",                  // 6
		"Di,19,24,32,,,,surplus",                     // 7
		`"Ed,19,24`,                                  // 8
		"Fi,500,24,32,,",                             // 9
		"Gus,\"1,900.5\",24,32,,guess",               // 10
		`Hal,"19",24,32,,`,                           // 11
		"Io,19,,32,,",                                // 12
		"Jo,-19,24,32,,",                             // 13
		"Kit,19,9000,32,,",                           // 14
		"Lo,,,,,",                                    // 15
	}, "\n"))
	var names []string
	for _, s := range table.Students {
		names = append(names, s.Name)
	}
	assert.Equal(t, []string{"Ada", "Hal", "Lo"}, names)
	lines := map[int]Wrong{}
	for _, w := range table.Wrong {
		lines[w.Line] = w
	}
	for line, says := range map[int][]string{
		3: {"hand (cm): “wide” is not a number; write 18.5", "rounds: “x” is no count", "knits: “sideways” is no direction"},
		4: {"name: is empty"}, 5: {"hand (cm): “=1+1” is a formula; paste its value"}, 6: {"name: “=cmd|' /C calc'!A0” is a formula"},
		7: {"“surplus” has no heading"}, 8: {"a quote that isn't closed"}, 9: {"is above 2 m"}, 10: {"hand (cm): “1,900.5” has a sign between thousands", "write swatch, cuff or ball band"},
		12: {"sts: is missing beside the rounds"}, 13: {"is not a number"}, 14: {"knitting lies between 2 and 500"},
	} {
		require.Contains(t, lines, line)
		assert.Len(t, lines[line].Reasons, len(says), "line %d: %q", line, lines[line].Reasons)
		for _, part := range says {
			assert.Contains(t, strings.Join(lines[line].Reasons, " / "), part, "line %d", line)
		}
	}
	assert.Len(t, lines, 11)
	for line, name := range map[int]string{3: "Bo", 4: "", 6: "=cmd|' /C calc'!A0", 8: "Ed", 10: "Gus"} {
		assert.Equal(t, name, lines[line].Name, "line %d", line)
	}
	assert.Equal(t, `"Ed,19,24`, lines[8].Raw)
}

// Reasons name the headings of the table, and include those that show only once
// the other values can be read.
func TestEveryReasonNamesItsHeading(t *testing.T) {
	table := read(t, "Knitter;Glove size;Thumb (in);gauge;cuff stitches;Remarks\n;99;9;9000;4;a\x00b\nAda;8;9 1/2;24 x 9000;;\n")
	assert.Empty(t, table.Students)
	require.Len(t, table.Wrong, 2)
	for i, says := range [][]string{
		{"Knitter: is empty", "Glove size: is 99; write a glove size", "gauge: makes", "cuff stitches: is 4; write a whole number", "Remarks: has characters"},
		{"Thumb (in): is 241.3 mm, not narrower than the hand", "gauge: makes 9000 rounds"},
	} {
		require.Len(t, table.Wrong[i].Reasons, len(says), "%q", table.Wrong[i].Reasons)
		for _, part := range says {
			assert.Contains(t, strings.Join(table.Wrong[i].Reasons, "\n"), part)
		}
	}
}

// The table says how each column was read; a cell without a heading is reported.
func TestColumnsAreReturned(t *testing.T) {
	table := read(t, ",name,shoe size,hand (mm),stitches (5 cm),,\n1,Ada,38,185,12,,\n2,Bo,40,18,5,12,\n")
	assert.Equal(t, []Column{
		{Heading: "column 1, which has no heading", key: "#1"},
		{Heading: "name", Field: fieldName, key: "name"},
		{Heading: "shoe size", key: "sho size"},
		{Heading: "hand (mm)", Field: "hand.hand_circumference", Unit: units.MM, key: "hand mm"},
		{Heading: "stitches (5 cm)", Field: stitchesPath, Unit: units.CM, Over: "5", key: "stitches 5 cm"},
	}, table.Columns)
	assert.Equal(t, ",name,shoe size,hand (mm),stitches (5 cm),,", table.Heading)
	require.Len(t, table.Students, 1)
	require.Len(t, table.Wrong, 1, "a decimal comma between commas is told")
	assert.Contains(t, table.Wrong[0].Reasons[0], "“12” has no heading")
	assert.Contains(t, table.Wrong[0].Reasons[0], "put “18,5” into quotes")
}

func TestSurplusCellsAreCounted(t *testing.T) {
	for row, says := range map[string]string{
		"Ada;19;7":     "“7” has no heading",
		"Ada;19;7;8":   "“7” and 1 more box have no heading",
		"Ada;19;7;8;9": "“7” and 2 more boxes have no heading",
	} {
		table := read(t, "name;hand\n"+row+"\n")
		require.Len(t, table.Wrong, 1, row)
		assert.Contains(t, table.Wrong[0].Reasons[0], says)
		assert.NotContains(t, table.Wrong[0].Reasons[0], "comma", "no comma parts the cells of this table")
	}
}

// If columns of a table without headings are chosen by hand, its first row is
// read as a student.
func TestFirstRowWithoutHeadingsIsAStudent(t *testing.T) {
	const text = "Ada;19,5;24\nBo;20;23\n"
	first, err := Read([]byte(text), units.CM)
	require.Error(t, err)
	c := Class{}
	c.Choose(map[string]string{first.Columns[0].Key(): fieldName, first.Columns[1].Key(): hand.FieldCircumference, first.Columns[2].Key(): stitchesPath})
	table, err := ReadAs([]byte(text), units.CM, c.Columns)
	require.NoError(t, err)
	require.Len(t, table.Students, 2)
	assert.Equal(t, "Ada", table.Students[0].Name)
	assert.Equal(t, "19,5", table.Students[0].Sheet[hand.FieldCircumference])
}

// The error says why the whole table is unusable, and what to do.
func TestUnusableTables(t *testing.T) {
	for text, says := range map[string]string{
		"":                              "is empty",
		" \n\t\n":                       "is empty",
		"hand,sts\n19,24":               "has no headings",
		"Ada\nBo":                       "has no headings",
		"name,student,hand\nAda,Bo,19":  "mean the same",
		"name,hand,knuckles\nAda,19,19": "mean the same",
		"PK\x03\x04 and so on":          "save the sheet as CSV",
		"\xD0\xCF\x11\xE0 old":          "save the sheet as CSV",
		"name;\"hand;sts\nAda;19;24":    "row of headings, line 1, has a quote that isn't closed",
		"name,gauge,sts\nAda,24,24":     "mean the same",
	} {
		_, err := Read([]byte(text), units.CM)
		require.Error(t, err, text)
		assert.Equal(t, fault.Invalid, fault.KindOf(err))
		assert.Contains(t, fault.Message(err), says, text)
	}
	_, err := Read(make([]byte, MaxBytes+1), units.CM)
	require.Error(t, err)
	assert.Contains(t, fault.Message(err), "16 MB")
	_, err = Read([]byte("name"+strings.Repeat("\n=1", maxRows+1)), units.CM)
	require.Error(t, err)
	assert.Contains(t, fault.Message(err), "more than 200000 rows")
}

// Of a hundred thousand rows a class's worth become students; the rest are counted.
func TestManyRowsAreBounded(t *testing.T) {
	rows := testenv.Cases(10_000, 100_000)
	many := func(heading, row string) Table {
		table := read(t, heading+"\n"+strings.Repeat(row+"\n", rows))
		assert.Equal(t, rows, len(table.Students)+len(table.Wrong)+table.More, row)
		return table
	}
	table := many("name,hand,note", `Ada,18.5,"a, b"`)
	assert.Len(t, table.Students, MaxStudents)
	assert.Len(t, table.Wrong, maxWrong)
	assert.Equal(t, MaxStudents+2, table.Wrong[0].Line)
	assert.Equal(t, []string{"a class has at most 1000 students; begin a second class for the rest"}, table.Wrong[0].Reasons)
	for _, row := range []string{`"Ada,18.5`, "Ada,wide,x", "Ada,18.5,a\x00b", "=1"} {
		assert.Empty(t, many("name,hand,note", row).Students, row)
	}
	table = read(t, "name"+strings.Repeat("\nAda", MaxStudents)+strings.Repeat("\n=1", 5))
	assert.Len(t, table.Students, MaxStudents)
	assert.Len(t, table.Wrong, 5)
}

// A letter followed by a combining accent becomes the accented letter.
func TestCombiningAccents(t *testing.T) {
	table, err := Read([]byte("name\thand (cm)\nElse Ma\u030arten\t18\nZoe\u0308\t19\n"), units.CM)
	require.NoError(t, err)
	require.Len(t, table.Students, 2)
	assert.Equal(t, "Else M\u00e5rten", table.Students[0].Name)
	assert.Equal(t, "Zo\u00eb", table.Students[1].Name)
}

// No bytes make Read panic. Every student it returns can be kept, every wrong row
// has a line of the file and a reason, and the same bytes give the same table.
func FuzzRead(f *testing.F) {
	for seed := range uint64(40) {
		m := newGenerator(seed)
		m.table(4)
		f.Add(m.encode(m.out.String()))
	}
	f.Add([]byte("name,hand\n\"a,19\nb,\"1\"\"9\"\n"))
	f.Add([]byte{0xFF, 0xFE, 'n', 0})
	f.Fuzz(func(t *testing.T, raw []byte) {
		table, err := Read(raw, units.IN)
		again, errAgain := Read(raw, units.IN)
		if !reflect.DeepEqual(table, again) || fmt.Sprint(err) != fmt.Sprint(errAgain) {
			t.Fatalf("read twice: %+v, %v; %+v, %v", table, err, again, errAgain)
		}
		if err != nil {
			if fault.KindOf(err) != fault.Invalid {
				t.Fatal(err)
			}
			return
		}
		for _, s := range table.Students {
			if faults := s.Check(units.IN); len(faults) > 0 {
				t.Fatalf("%q is in with %v", s.Name, faults)
			}
		}
		decoded, err := text(raw)
		if err != nil {
			t.Fatal(err)
		}
		line := 1
		for _, w := range table.Wrong {
			if w.Line <= line || w.Line > breaks(decoded)+1 || len(w.Reasons) == 0 || slices.Contains(w.Reasons, "") {
				t.Fatalf("line %d after %d, %q", w.Line, line, w.Reasons)
			}
			line = w.Line
		}
	})
}

// BenchmarkRead reports the time for a row, and the time as a multiple of what
// encoding/csv of the standard library takes to split the same bytes.
func BenchmarkRead(b *testing.B) {
	for _, c := range []struct {
		name, row string
		rows      int
	}{
		{"right", "Ada,18.5,24,32,\"a, b\"\n", MaxStudents},
		{"names", "Ada,,,,\n", MaxStudents},
		{"wrong", "Ada,wide,24,32,\"a, b\"\n", MaxStudents},
		{"100000", "Ada,18.5,24,32,\"a, b\"\n", 100_000},
	} {
		raw := []byte("name,hand,stitches,rounds,note\n" + strings.Repeat(c.row, c.rows))
		b.Run(c.name, func(b *testing.B) {
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
			each := float64(b.Elapsed().Nanoseconds()) / float64(b.N)
			b.ReportMetric(each/float64(c.rows), "ns/row")
			b.ReportMetric(each/cells, "times-encoding/csv")
		})
	}
}
