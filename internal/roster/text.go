package roster

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"

	"thenar/internal/fault"
)

// Largest is the most bytes that a table may have.
const Largest = 16 << 20

// programs are files of other kinds that people take for a table, by how they
// begin: zipped and older spreadsheets, a PDF, a picture.
var programs = [][]byte{{'P', 'K', 3, 4}, {0xD0, 0xCF, 0x11, 0xE0}, []byte("%PDF"), {0x89, 'P', 'N', 'G'}, {0xFF, 0xD8, 0xFF}, {0x1F, 0x8B}}

// text reads a table's bytes: UTF-8, UTF-16 with a byte-order mark or without,
// or else Windows-1252, in which every byte means something.
func text(raw []byte) (string, error) {
	if len(raw) > Largest {
		return "", fault.New(fault.Invalid, "The table has more than %d MB; leave out what is no student.", Largest>>20)
	}
	for _, p := range programs {
		if bytes.HasPrefix(raw, p) {
			return "", fault.New(fault.Invalid, "This is a file of another kind; save the sheet as CSV and send that, or paste its cells.")
		}
	}
	var from encoding.Encoding
	switch order := wide(raw); {
	case bytes.HasPrefix(raw, []byte{0xFF, 0xFE}), bytes.HasPrefix(raw, []byte{0xFE, 0xFF}):
		from = unicode.UTF16(unicode.LittleEndian, unicode.UseBOM)
	case order == 1:
		from = unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM)
	case order == 0:
		from = unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM)
	case utf8.Valid(raw):
		return strings.TrimPrefix(string(raw), "\uFEFF"), nil
	default:
		from = charmap.Windows1252
	}
	out, err := from.NewDecoder().Bytes(raw)
	if err != nil {
		return "", fault.New(fault.Invalid, "The table's letters can't be read; save it as CSV in UTF-8.")
	}
	return strings.TrimPrefix(strings.ToValidUTF8(string(out), "\uFFFD"), "\uFEFF"), nil
}

// wide tells text in two bytes a letter: 1 where every second byte is often 0,
// 0 where every first one is, −1 for other text.
func wide(raw []byte) int {
	n := min(len(raw), 2000) &^ 1
	var zeros [2]int
	for i := range n {
		if raw[i] == 0 {
			zeros[i%2]++
		}
	}
	for order := range 2 {
		if n >= 4 && zeros[order] > n/4 && zeros[1-order] < n/20+1 {
			return order
		}
	}
	return -1
}

// record is one row of a table.
type record struct {
	cells []string
	line  int    // at which it begins, from 1
	raw   string // as it stands in the table
	fault string // what is wrong with its quotes, if anything is
}

func (r *record) empty() bool {
	for _, c := range r.cells {
		if strings.TrimSpace(c) != "" {
			return false
		}
	}
	return r.fault == ""
}

// longestCell bounds a cell in quotes: without its end it would swallow the
// table.
const longestCell = 2000

// records splits a text into its rows. A cell in quotes may hold the delimiter,
// line breaks, and quotes that are doubled; a quote elsewhere in a cell is the
// sign for inches. A row with a quote that is not closed ends with its line.
func records(text string, delimiter byte, each func(record) bool) {
	for at, line := 0, 1; at < len(text); {
		r, end := next(text, at, delimiter)
		r.line, r.raw = line, text[at:end]
		line += breaks(r.raw)
		at = end
		if !each(r) {
			return
		}
	}
}

// breaks counts line ends: LF, CR, or both together.
func breaks(s string) int {
	return strings.Count(s, "\n") + strings.Count(s, "\r") - strings.Count(s, "\r\n")
}

// next reads the row that begins at a place, and where the next one begins.
func next(text string, at int, delimiter byte) (r record, end int) {
	start := at
	for {
		cell, to, ok := cellAt(text, at, delimiter)
		if !ok {
			end := lineEnd(text, start)
			r.fault = "has a quote that is not closed, or text after a closing one; close it, or leave the quotes out"
			r.cells = strings.Split(strings.TrimRight(text[start:end], "\r\n"), string(delimiter))
			return r, end
		}
		r.cells = append(r.cells, cell)
		if to >= len(text) {
			return r, len(text)
		}
		if text[to] != delimiter {
			return r, pastBreak(text, to)
		}
		if at = to + 1; at >= len(text) {
			r.cells = append(r.cells, "")
			return r, len(text)
		}
	}
}

// cellAt reads the cell that begins at a place, and where what ends it stands;
// ok is false for quotes that don't close.
func cellAt(text string, at int, delimiter byte) (cell string, to int, ok bool) {
	from := at
	for from < len(text) && text[from] == ' ' {
		from++
	}
	if from >= len(text) || text[from] != '"' {
		for to = at; to < len(text) && text[to] != delimiter && text[to] != '\n' && text[to] != '\r'; to++ {
		}
		return text[at:to], to, true
	}
	var b strings.Builder
	for i := from + 1; i < len(text) && i-from < longestCell; i++ {
		if text[i] != '"' {
			b.WriteByte(text[i])
			continue
		}
		if i+1 < len(text) && text[i+1] == '"' {
			b.WriteByte('"')
			i++
			continue
		}
		for to = i + 1; to < len(text) && text[to] == ' '; to++ {
		}
		return b.String(), to, to >= len(text) || text[to] == delimiter || text[to] == '\n' || text[to] == '\r'
	}
	return "", 0, false
}

// lineEnd is where the line after that of a place begins.
func lineEnd(text string, at int) int {
	if n := strings.IndexAny(text[at:], "\r\n"); n >= 0 {
		return pastBreak(text, at+n)
	}
	return len(text)
}

func pastBreak(text string, at int) int {
	if strings.HasPrefix(text[at:], "\r\n") {
		return at + 2
	}
	return at + 1
}
