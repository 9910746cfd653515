package roster

import (
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"unicode/utf16"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
)

// rows returns the records of a text.
func rows(text string, delimiter byte, columns int) (list []record) {
	records(text, delimiter, columns, func(r record) bool {
		r.cells = append([]string{}, r.cells...)
		list = append(list, r)
		return true
	})
	return list
}

// in16 writes a text as UTF-16, by the standard library.
func in16(text string, little, mark bool) []byte {
	if mark {
		text = "\uFEFF" + text
	}
	var out []byte
	for _, u := range utf16.Encode([]rune(text)) {
		if little {
			out = append(out, byte(u), byte(u>>8))
		} else {
			out = append(out, byte(u>>8), byte(u))
		}
	}
	return out
}

// Every encoding in which spreadsheets save. The bytes of Windows-1252 are
// those of Unicode's mapping table CP1252.TXT: 80 €, 8A Š, 93 “, BD ½, E5 å.
func TestEncodings(t *testing.T) {
	const want = "name,hand\nSå Žofia “€”,7½\n"
	for name, raw := range map[string][]byte{
		"UTF-8": []byte(want), "UTF-8, marked": []byte("\uFEFF" + want),
		"UTF-16 LE": in16(want, true, true), "UTF-16 BE": in16(want, false, true),
		"UTF-16 LE, not marked": in16(want, true, false), "UTF-16 BE, not marked": in16(want, false, false),
		"Windows-1252": []byte("name,hand\nS\xE5 \x8Eofia \x93\x80\x94,7\xBD\n"),
	} {
		got, err := text(raw)
		require.NoError(t, err, name)
		assert.Equal(t, want, got, name)
	}
	got, err := text([]byte("\uFEFFname\nHei\xF0ar\n"))
	require.NoError(t, err)
	assert.Equal(t, "name\nHei\uFFFDar\n", got, "text marked as UTF-8 is never read as another encoding")
}

// A file of another kind is recognised as such, not as a table without headings.
func TestOtherFilesAreRecognised(t *testing.T) {
	for name, raw := range map[string]string{
		"zipped sheet": "PK\x03\x04\x14\x00", "empty zip": "PK\x05\x06", "old sheet": "\xD0\xCF\x11\xE0\xA1\xB1", "PDF": "%PDF-1.7", "rich text": `{\rtf1`,
		"page": "\uFEFF\r\n<HTML><table>", "XML": "<?xml version='1.0'?>", "picture": "\x89PNG\r\n", "photo": "\xFF\xD8\xFF\xE0", "gzip": "\x1F\x8B\x08",
	} {
		_, err := text([]byte(raw))
		require.Error(t, err, name)
		assert.Equal(t, fault.Invalid, fault.KindOf(err))
		assert.Contains(t, fault.Message(err), "save the sheet as CSV", name)
	}
	_, err := text(make([]byte, MaxBytes+1))
	require.Error(t, err)
	assert.Contains(t, fault.Message(err), "16 MB")
	_, err = text([]byte(strings.Repeat(" ", MaxBytes)))
	require.NoError(t, err)
}

// Random mixtures of quotes, line breaks and delimiters: whatever encoding/csv of
// the standard library accepts is split alike. (It leaves out empty lines.)
func TestRecordsLikeCSV(t *testing.T) {
	rnd := rand.New(rand.NewPCG(1, 4180))
	parts := []string{`"`, `""`, ",", ",", "a", "b c", "\n", "\n", ` "`, `",`, `,"`, "7\"", "\n\""}
	taken := 0
	for range 60_000 {
		var b strings.Builder
		for range 1 + rnd.IntN(14) {
			b.WriteString(parts[rnd.IntN(len(parts))])
		}
		plain := csv.NewReader(strings.NewReader(b.String()))
		plain.FieldsPerRecord = -1
		want, err := plain.ReadAll()
		if err != nil {
			continue
		}
		taken++
		var got [][]string
		for _, r := range rows(b.String(), ',', 0) {
			require.Empty(t, r.fault, "%q", b.String())
			if len(r.cells) > 1 || strings.Trim(r.raw, "\n") != "" {
				got = append(got, r.cells)
			}
		}
		require.Equal(t, fmt.Sprintf("%q", want), fmt.Sprintf("%q", got), "%q", b.String())
	}
	assert.Greater(t, taken, 10_000, "enough of them were valid")
}

// An unclosed quote spoils its own row only: the rows below are read.
func TestUnclosedQuoteSpoilsOneRow(t *testing.T) {
	for text, faulty := range map[string][]int{
		"a,b,c\n\"d,e,f\ng,h,i\n":                     {2},
		"a,b,c\n\"d,e,f\n\"g\",h,i\n":                 {2},
		"a,b,c\nd,\"e,f\ng,7\"\nh,i,j":                nil, // valid by the rules of quotes, and no line in it is a whole row
		"a,b,c\nd,e,\"f\ng,h,7\"\ni,j,k":              {2},
		"a,b,c\nd,e,\"\r\ng,h,\"\r\ni,j,k":            {2, 3},
		"a,b,c\n\"d\"x,e,f\ng,h,i":                    {2},
		"a,b,c\nd,e,\"two\nlines\"\ng,h,i":            nil,
		"a,b,c\nd,e,\"two\nli,nes\"\ng,h,i":           nil,
		"a,b,c\nd,e,f\"g\nh,7\",i":                    nil,
		"a,b,c\nd,e,\"":                               {2},
		"a,b,c\n\"\"\"d,e,f\ng,h,i":                   {2},
		"\"a\nb,c":                                    {1},
		"a\n\"" + strings.Repeat("x", 2001) + "\"\nb": {2},
		"a\n\"" + strings.Repeat("x", 1999) + "\"\nb": nil,
	} {
		var got []int
		for _, r := range rows(text, ',', 3) {
			if r.fault != "" {
				got = append(got, r.line)
			}
		}
		assert.Equal(t, faulty, got, "%.60q", text)
	}
}

// Lines are counted as an editor counts them, whatever their ends and however many
// are within a cell.
func TestLinesAreCountedAsInAnEditor(t *testing.T) {
	text := "a\nb\r\nc\rd\n\n\"e\r\nf\n\rg\"\r\nh\r\ri"
	var got []string
	for _, r := range rows(text, ',', 0) {
		got = append(got, fmt.Sprintf("%d %q", r.line, r.cells))
	}
	assert.Equal(t, []string{
		`1 ["a"]`, `2 ["b"]`, `3 ["c"]`, `4 ["d"]`, `5 [""]`, `6 ["e\r\nf\n\rg"]`, `10 ["h"]`, `11 [""]`, `12 ["i"]`,
	}, got)
}

// The number of cells in a row is bounded.
func TestRowsAreBounded(t *testing.T) {
	got := rows(strings.Repeat(",", 100_000)+"\n"+strings.Repeat("x,", maxCells+1)+"\na,b", ',', 0)
	require.Len(t, got, 3)
	assert.Empty(t, got[0].fault)
	assert.Len(t, got[0].cells, maxCells)
	assert.Contains(t, got[1].fault, "more than 500 columns")
	assert.Equal(t, []string{"a", "b"}, got[2].cells)
}
