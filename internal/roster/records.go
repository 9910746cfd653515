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

// MaxBytes is the largest size of a table that is read.
const MaxBytes = 16 << 20

// otherFiles holds the first bytes of files that people send in place of a table:
// zipped and older spreadsheets, gzip, rich text, HTML, XML, PDF, pictures.
var otherFiles = [][]byte{
	[]byte("PK\x03\x04"), []byte("PK\x05\x06"),
	{0xD0, 0xCF, 0x11, 0xE0},
	{0x1F, 0x8B},
	[]byte(`{\rtf`),
	[]byte("<!doctype"), []byte("<html"), []byte("<table"), []byte("<?xml"), []byte("%PDF"),
	{0x89, 'P', 'N', 'G'},
	{0xFF, 0xD8, 0xFF},
}

var utf8Mark = []byte("\uFEFF")

// text decodes a table: UTF-8, UTF-16 with or without a byte-order mark, or else
// Windows-1252, in which nearly every byte is a character. Invalid bytes in text
// marked as UTF-8 become U+FFFD.
func text(raw []byte) (string, error) {
	if len(raw) > MaxBytes {
		return "", fault.New(fault.Invalid, "The table has more than %d MB; leave out what is no student.", MaxBytes>>20)
	}
	begins := raw[:min(len(raw), 64)]
	for _, p := range otherFiles {
		if bytes.HasPrefix(begins, p) || bytes.HasPrefix(bytes.ToLower(bytes.TrimSpace(bytes.TrimPrefix(begins, utf8Mark))), p) {
			return "", fault.New(fault.Invalid, "This is a file of another kind; save the sheet as CSV and send that, or paste the table itself.")
		}
	}
	var from encoding.Encoding
	switch order := utf16Order(raw); {
	case bytes.HasPrefix(raw, []byte{0xFF, 0xFE}), bytes.HasPrefix(raw, []byte{0xFE, 0xFF}):
		from = unicode.UTF16(unicode.LittleEndian, unicode.UseBOM)
	case order == 1:
		from = unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM)
	case order == 0:
		from = unicode.UTF16(unicode.BigEndian, unicode.IgnoreBOM)
	case bytes.HasPrefix(raw, utf8Mark), utf8.Valid(raw):
		return strings.ToValidUTF8(string(bytes.TrimPrefix(raw, utf8Mark)), "\uFFFD"), nil
	default:
		from = charmap.Windows1252
	}
	out, err := from.NewDecoder().Bytes(raw)
	if err != nil {
		return "", fault.New(fault.Invalid, "The table's letters can't be read; save it as CSV in UTF-8.")
	}
	return strings.ToValidUTF8(string(bytes.TrimPrefix(out, utf8Mark)), "\uFFFD"), nil
}

// Text decodes a table in any of the encodings that Read takes; "" if it can't.
func Text(raw []byte) string {
	s, err := text(raw)
	if err != nil {
		return ""
	}
	return s
}

// utf16Order recognises UTF-16 without a mark by its zero bytes: 1 if many second
// bytes of pairs are 0 (little-endian), 0 if many first ones are (big-endian),
// −1 for other text.
func utf16Order(raw []byte) int {
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

// record is one row of a table. Its cells are valid until the next is read.
type record struct {
	cells []string
	line  int    // the line it begins on, from 1
	raw   string // the row as it stands in the table
	fault string // why it can't be split into cells; empty: it can
}

func (r *record) empty() bool {
	for _, c := range r.cells {
		if strings.TrimSpace(c) != "" {
			return false
		}
	}
	return r.fault == ""
}

// Bounds of a row. Without maxQuoted a quote that is never closed would swallow
// the rest of the table.
const (
	maxQuoted = 2000 // bytes of a quoted cell
	maxCells  = 500  // cells; further empty ones are ignored
)

const (
	notClosed = "has a quote that isn't closed, or over 2000 letters in one; close it, or leave the quotes out"
	notEnded  = "has text after a closing quote; write a quote inside quotes twice, or leave the quotes out"
	tooWide   = "has more than 500 columns; leave out columns that are no measurements"
)

// records splits a text into rows and calls each until it returns false. A quoted
// cell may hold the delimiter, line breaks, and doubled quotes; a quote elsewhere
// in a cell is the sign for inches. If a quote is not closed, the row is at fault
// and ends with its line, so that the rows below are still read. The same holds
// if a quoted cell contains a whole row of so many columns (0: unknown), since
// then it was closed by the quote of another row.
func records(text string, delimiter byte, columns int, each func(record) bool) {
	s := splitter{text: text, delimiter: delimiter, columns: columns}
	for at, line := 0, 1; at < len(text); {
		r, end := s.next(at)
		s.cells = r.cells
		r.line, r.raw = line, text[at:end]
		line += breaks(r.raw)
		at = end
		if !each(r) {
			return
		}
	}
}

// breaks counts line ends: LF, CR, or CR LF.
func breaks(s string) int {
	return strings.Count(s, "\n") + strings.Count(s, "\r") - strings.Count(s, "\r\n")
}

// splitter splits a text into cells.
type splitter struct {
	text      string
	delimiter byte
	columns   int      // of a row; 0: unknown
	cells     []string // reused from row to row
}

// next reads the row at start, and returns where the next one begins.
func (s *splitter) next(start int) (r record, end int) {
	r.cells = s.cells[:0]
	for at := start; ; {
		cell, to, wrong := s.cellAt(at)
		if wrong != "" {
			end := lineEnd(s.text, start)
			r.fault = wrong
			r.cells = append(r.cells[:0], strings.SplitN(strings.TrimRight(s.text[start:end], "\r\n"), string(s.delimiter), maxCells)...)
			return r, end
		}
		switch {
		case len(r.cells) < maxCells:
			r.cells = append(r.cells, cell)
		case strings.TrimSpace(cell) != "":
			r.fault = tooWide
		}
		if to >= len(s.text) {
			return r, len(s.text)
		}
		if s.text[to] != s.delimiter {
			return r, pastBreak(s.text, to)
		}
		at = to + 1
	}
}

// cellEnds reports whether a cell may end at a place.
func (s *splitter) cellEnds(at int) bool {
	return at >= len(s.text) || s.text[at] == s.delimiter || s.text[at] == '\n' || s.text[at] == '\r'
}

// cellAt reads the cell at a place, and returns the place of the delimiter or line
// end behind it; or it says what is wrong with the quotes.
func (s *splitter) cellAt(at int) (cell string, to int, wrong string) {
	from := at
	for from < len(s.text) && s.text[from] == ' ' {
		from++
	}
	if from >= len(s.text) || s.text[from] != '"' {
		for to = at; !s.cellEnds(to); to++ {
		}
		return s.text[at:to], to, ""
	}
	doubled := false
	for i := from + 1; i < len(s.text) && i-from <= maxQuoted; i++ {
		if s.text[i] != '"' {
			continue
		}
		if i+1 < len(s.text) && s.text[i+1] == '"' {
			doubled = true
			i++
			continue
		}
		for to = i + 1; to < len(s.text) && s.text[to] == ' '; to++ {
		}
		cell = s.text[from+1 : i]
		switch lines := strings.ContainsAny(cell, "\r\n"); {
		case lines && (!s.cellEnds(to) || s.holdsRow(cell)):
			return "", 0, notClosed
		case !s.cellEnds(to):
			return "", 0, notEnded
		case doubled:
			cell = strings.ReplaceAll(cell, `""`, `"`)
		}
		return cell, to, ""
	}
	return "", 0, notClosed
}

// holdsRow reports whether a later line of a cell looks like a whole row. With
// fewer than three columns a note of two lines could, so it is false.
func (s *splitter) holdsRow(cell string) bool {
	if s.columns < 3 {
		return false
	}
	_, rest, _ := strings.Cut(strings.ReplaceAll(cell, "\r", "\n"), "\n")
	for line := range strings.SplitSeq(rest, "\n") {
		if strings.Count(line, string(s.delimiter)) >= s.columns-1 {
			return true
		}
	}
	return false
}

// lineEnd returns where the line after the one at a place begins.
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
