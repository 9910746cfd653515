package roster

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/units"
)

func read(t *testing.T, text string) Table {
	t.Helper()
	table, err := Read([]byte(text), units.CM)
	require.NoError(t, err)
	return table
}

// Tables as spreadsheets write them: every delimiter, decimal commas, units in
// headings and cells, in any order. 1 in = 2.54 cm exactly.
func TestRead(t *testing.T) {
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
		"one heading more":  "First,Name,hand\nAda?,Ada,18.5\n",
		"a space, and nbsp": " Name , Hand \nAda\u00a0, 18.5 \n",
	} {
		table := read(t, text)
		require.Empty(t, table.Wrong, name)
		require.Len(t, table.Students, 1, name)
		s := table.Students[0]
		assert.Equal(t, "Ada", s.Name, name)
		girth, err := units.Parse(s.Sheet["hand.hand_circumference"], units.CM)
		require.NoError(t, err, name)
		assert.Equal(t, 185*units.Millimetre, girth, name)
		if s.gauged() {
			sheet := s.Sheet.Clone()
			sheet["unit"] = "cm"
			req, err := sheet.Request()
			require.NoError(t, err, name)
			assert.InDelta(t, 0.24, req.Gauge.Stitches, 1e-12, name)
			assert.InDelta(t, 0.32, req.Gauge.Rounds, 1e-12, name)
		}
	}
}

func TestReadEverything(t *testing.T) {
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

// A row that is wrong is named with its line and every reason; the others go
// in.
func TestWrongRows(t *testing.T) {
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
	lines := map[int]string{}
	for _, w := range table.Wrong {
		lines[w.Line] = strings.Join(w.Reasons, " / ")
	}
	for line, says := range map[int][]string{
		3: {"hand (cm): “wide” is not a number; write digits", "rounds: “x” is no count", "knits: “sideways” is no direction"},
		4: {"name: is empty"}, 5: {"hand (cm): “=1+1” is a formula; paste its value"}, 6: {"is a formula"},
		7: {"“surplus” has no heading"}, 8: {"a quote that is not closed"}, 9: {"is above 2 m"}, 10: {"is not a number", "write swatch, cuff or ball band"},
		12: {"stitches: is missing beside the rounds"}, 13: {"is not a number"}, 14: {"knitting lies between 2 and 500"},
	} {
		for _, part := range says {
			assert.Contains(t, lines[line], part, "line %d", line)
		}
	}
	assert.Len(t, lines, 11)
}

// What makes a whole table unusable is said so that it can be mended.
func TestUnusable(t *testing.T) {
	for text, says := range map[string]string{
		"":                              "is empty",
		" \n\t\n":                       "is empty",
		"hand,sts\n19,24":               "no row of headings with a name",
		"Ada\nBo":                       "no row of headings with a name",
		"name,student,hand\nAda,Bo,19":  "mean the same",
		"name,hand,knuckles\nAda,19,19": "mean the same",
		"PK\x03\x04 and so on":          "save the sheet as CSV",
		"\xD0\xCF\x11\xE0 old":          "save the sheet as CSV",
	} {
		_, err := Read([]byte(text), units.CM)
		require.Error(t, err, text)
		assert.Equal(t, fault.Invalid, fault.KindOf(err))
		assert.Contains(t, fault.Message(err), says, text)
	}
	_, err := Read(make([]byte, Largest+1), units.CM)
	require.Error(t, err)
}
