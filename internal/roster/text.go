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
// begin: zipped, older and rich ones, pages, a PDF, pictures.
var programs = [][]byte{
	[]byte("PK\x03\x04"), []byte("PK\x05\x06"),
	{0xD0, 0xCF, 0x11, 0xE0},
	{0x1F, 0x8B},
	[]byte(`{\rtf`),
	[]byte("<!doctype"), []byte("<html"), []byte("<table"), []byte("<?xml"), []byte("%PDF"),
	{0x89, 'P', 'N', 'G'},
	{0xFF, 0xD8, 0xFF},
}

var utf8Mark = []byte("\uFEFF")

// text reads a table's bytes: UTF-8, UTF-16 with a byte-order mark or without,
// or else Windows-1252, in which every byte means something. A letter that is
// spoilt in what is marked as UTF-8 becomes U+FFFD.
func text(raw []byte) (string, error) {
	if len(raw) > Largest {
		return "", fault.New(fault.Invalid, "The table has more than %d MB; leave out what is no student.", Largest>>20)
	}
	begins := raw[:min(len(raw), 64)]
	for _, p := range programs {
		if bytes.HasPrefix(begins, p) || bytes.HasPrefix(bytes.ToLower(bytes.TrimSpace(bytes.TrimPrefix(begins, utf8Mark))), p) {
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

// Text is a table as text, whatever the encoding; empty where it is none.
func Text(raw []byte) string {
	s, err := text(raw)
	if err != nil {
		return ""
	}
	return s
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

// record is one row of a table. Its cells hold until the next one is read.
type record struct {
	cells []string
	line  int    // at which it begins, from 1
	raw   string // as it stands in the table
	fault string // why it can't be parted into cells, if it can't
}

func (r *record) empty() bool {
	for _, c := range r.cells {
		if strings.TrimSpace(c) != "" {
			return false
		}
	}
	return r.fault == ""
}

// The most bytes of a cell in quotes, which without its end would swallow the
// table, and the most cells of a row; empty ones may follow.
const (
	longestCell = 2000
	maxCells    = 500
)

const (
	notClosed = "has a quote that is not closed, or one round more than 2000 letters; close it, or leave the quotes out"
	notEnded  = "has text after a closing quote; write a quote inside quotes twice, or leave the quotes out"
	tooWide   = "has more than 500 cells; leave out columns that are no measurements"
)

// records splits a text into its rows. A cell in quotes may hold the delimiter,
// line breaks, and quotes that are doubled; a quote elsewhere in a cell is the
// sign for inches. A row with a quote that is not closed ends with its line, so
// that the rows below it are read; so does one with a cell in which a whole row
// of so many columns stands, since that quote was closed by another one's.
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

// breaks counts line ends: LF, CR, or both together.
func breaks(s string) int {
	return strings.Count(s, "\n") + strings.Count(s, "\r") - strings.Count(s, "\r\n")
}

// splitter parts a text into cells.
type splitter struct {
	text      string
	delimiter byte
	columns   int      // of a row, if it is known
	cells     []string // room for those of a row
}

// next reads the row that begins at a place, and says where the next one does.
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

// ends tells whether a cell may end at a place.
func (s *splitter) ends(at int) bool {
	return at >= len(s.text) || s.text[at] == s.delimiter || s.text[at] == '\n' || s.text[at] == '\r'
}

// cellAt reads the cell that begins at a place, and where what ends it stands;
// or says what is wrong with its quotes.
func (s *splitter) cellAt(at int) (cell string, to int, wrong string) {
	from := at
	for from < len(s.text) && s.text[from] == ' ' {
		from++
	}
	if from >= len(s.text) || s.text[from] != '"' {
		for to = at; !s.ends(to); to++ {
		}
		return s.text[at:to], to, ""
	}
	doubled := false
	for i := from + 1; i < len(s.text) && i-from <= longestCell; i++ {
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
		case lines && (!s.ends(to) || s.holdsRow(cell)):
			return "", 0, notClosed
		case !s.ends(to):
			return "", 0, notEnded
		case doubled:
			cell = strings.ReplaceAll(cell, `""`, `"`)
		}
		return cell, to, ""
	}
	return "", 0, notClosed
}

// holdsRow tells whether a line within a cell, but the first, looks like a row.
// With fewer than three columns any note of two lines might.
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
