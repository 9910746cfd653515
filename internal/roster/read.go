package roster

import (
	"fmt"
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"

	"thenar/internal/fault"
	"thenar/internal/units"
)

// Table is a table of students as it was read.
type Table struct {
	Students []Student  // from the rows without a fault, in order
	Wrong    []Wrong    // the first rows at fault
	More     int        // the number of further rows at fault
	Columns  []Column   // how each heading was read
	Samples  [][]string // the first values of each column
	Heading  string     // the row of headings as it stands in the table
}

// Wrong is a row that was refused, with every reason.
type Wrong struct {
	Line    int // the line the row begins on, from 1
	Name    string
	Reasons []string
	Raw     string // the row as it stands in the table
}

// maxWrong is the most rows that are listed as wrong.
const maxWrong = 200

// maxRows bounds the work on a table in which no row is right.
const maxRows = 200_000

// headRows is the number of rows at the top among which the headings are looked
// for, empty rows left out.
const headRows = 5

// Read reads a table of students: one a row below a row of headings, columns in
// any order, lengths in unit unless heading or cell names another. Empty rows and
// columns without a meaning are left out; formulas are refused, never worked out.
// The error says what makes the whole table unusable.
func Read(raw []byte, unit units.Unit) (Table, error) { return ReadAs(raw, unit, nil) }

// ReadAs reads a table like Read. Chosen holds fields of Readable by the keys of
// columns, as Class.Choose remembers them, and goes before the headings. Beside
// an error the table still has its columns, as far as there are any, so that a
// person can choose their fields.
func ReadAs(raw []byte, unit units.Unit, chosen map[string]string) (Table, error) {
	text, err := text(raw)
	if err != nil {
		return Table{}, err
	}
	text = norm.NFC.String(text) // an accent may be a character of its own
	delimiter, heads, err := headings(text, chosen)
	t := Table{Heading: strings.TrimRight(heads.raw, "\r\n")}
	for i, cell := range heads.cells {
		t.Columns = append(t.Columns, column(cell, i, chosen))
	}
	for n := len(t.Columns); n > 0 && t.Columns[n-1].Heading == ""; n-- {
		t.Columns = t.Columns[:n-1] // trailing delimiters
	}
	if t.lacksHeadings() {
		heads.line-- // read the row as a student's
	}
	t.sample(text, delimiter, heads)
	if err == nil {
		err = t.checkColumns()
	}
	if err != nil {
		return Table{Columns: t.Columns, Samples: t.Samples}, err
	}
	r := reader{unit: unit, comma: delimiter == ',', from: map[string]string{}, bad: map[string]bool{}}
	n := 0
	records(text, delimiter, len(t.Columns), func(row record) bool {
		if row.line > heads.line && !row.empty() {
			n++
			t.take(row, &r)
		}
		return n <= maxRows
	})
	if n > maxRows {
		return Table{}, fault.New(fault.Invalid, "The table has more than %d rows; leave out what is no student.", maxRows)
	}
	return t, nil
}

// lacksHeadings reports whether the row taken for headings is a student's: its
// columns were chosen by a person, and a number stands in one of a measurement.
func (t *Table) lacksHeadings() bool {
	named, measured := false, false
	for _, c := range t.Columns {
		letters := strings.ContainsFunc(c.Heading, unicode.IsLetter)
		switch {
		case !c.Chosen || c.Field == "":
		case c.isName():
			named = named || letters
		default:
			measured = measured || !letters && strings.ContainsFunc(c.Heading, unicode.IsDigit)
		}
	}
	return named && measured
}

// headings finds the delimiter and the row, among the first ones, that give the
// most known headings; between two delimiters alike in this, the one that gives
// more cells. Beside an error it returns the first row, split by the delimiter
// that gives the most cells.
func headings(text string, chosen map[string]string) (delimiter byte, heads record, err error) {
	best, rows := 0, 0
	var first record
	parts := byte(',')
	for _, d := range []byte{'\t', ';', ',', '|'} {
		n := 0
		records(text, d, 0, func(r record) bool {
			if r.empty() {
				return true
			}
			n++
			if n == 1 && len(r.cells) > len(first.cells) {
				first, parts = r, d
				first.cells = slices.Clone(r.cells)
			}
			known := knownOf(r.cells, chosen)
			if known > best || known > 0 && known == best && len(r.cells) > len(heads.cells) {
				best, delimiter, heads = known, d, r
				heads.cells = slices.Clone(r.cells)
			}
			return n < headRows
		})
		rows = max(rows, n)
	}
	switch {
	case rows == 0:
		return 0, record{}, fault.New(fault.Invalid, "The table is empty; paste it from your spreadsheet, headings first.")
	case best == 0:
		return parts, first, fault.New(fault.Invalid, "The table has no headings; write them above the rows, such as: name, hand, stitches, rounds.")
	case heads.fault != "":
		return 0, record{}, fault.New(fault.Invalid, "The row of headings, line %d, %s.", heads.line, heads.fault)
	}
	return delimiter, heads, nil
}

// knownOf returns the number of known headings; 0 if none of them is a name.
func knownOf(cells []string, chosen map[string]string) int {
	n, name := 0, false
	for i, cell := range cells {
		if c := column(cell, i, chosen); c.Field != "" {
			n++
			name = name || c.isName()
		}
	}
	if !name {
		return 0
	}
	return n
}

// checkColumns refuses two columns with the same field, and a gauge that names a
// unit but not over how many of it.
func (t *Table) checkColumns() error {
	seen := map[string]string{}
	for _, c := range t.Columns {
		if c.Field == "" {
			continue
		}
		if other, twice := seen[c.Field]; twice {
			return fault.New(fault.Invalid, "The headings “%s” and “%s” mean the same; leave one of the columns out.", clip(other), clip(c.Heading))
		}
		if c.isVague() {
			return fault.New(fault.Invalid, "“%s” doesn’t say over how many %s it was counted; write “per %[2]s”, or a length such as 10 cm.", clip(c.Heading), c.Unit)
		}
		seen[c.Field] = c.Heading
	}
	return nil
}

// take reads a row. Once maxWrong rows are listed, a wrong row is only counted,
// and its further reasons are not looked for.
func (t *Table) take(row record, r *reader) {
	r.begin()
	switch {
	case len(t.Students) >= MaxStudents:
		t.wrong(row, fmt.Sprintf("a class has at most %d students; begin a second class for the rest", MaxStudents))
		return
	case row.fault != "":
		t.wrong(row, "The row "+row.fault+".")
		return
	}
	for i, c := range t.Columns[:min(len(t.Columns), len(row.cells))] {
		if c.Heading == "" && strings.TrimSpace(row.cells[i]) != "" {
			t.Columns[i].Heading = fmt.Sprintf("column %d, which has no heading", i+1)
		}
		r.put(c, row.cells[i])
	}
	t.surplus(row, r)
	r.joinName()
	r.student.OverGauge(r.unit)
	if len(r.reasons) == 0 || len(t.Wrong) < maxWrong {
		for _, f := range r.student.Check(r.unit) {
			if !r.bad[f.Path] {
				r.reasons = append(r.reasons, clip(t.headingOf(f.Path, r))+": "+f.Message)
			}
		}
	}
	if len(r.reasons) > 0 {
		t.wrong(row, r.reasons...)
		return
	}
	t.Students = append(t.Students, r.student)
}

// surplus refuses cells beyond the last heading, unless they are empty.
func (t *Table) surplus(row record, r *reader) {
	first, n := "", 0
	for _, cell := range row.cells[min(len(t.Columns), len(row.cells)):] {
		if cell = trimInvisible(cell); cell != "" {
			if n++; n == 1 {
				first = cell
			}
		}
	}
	says := "has no heading; give its column one, or leave it out"
	switch {
	case n == 2:
		says = "and 1 more box have no heading; give their columns one, or leave them out"
	case n > 2:
		says = fmt.Sprintf("and %d more boxes have no heading; give their columns one, or leave them out", n-1)
	}
	if r.comma {
		says += ". A comma may part what belongs together: put “18,5” into quotes"
	}
	if n > 0 {
		r.wrong(Column{Heading: "beyond the last heading"}, first, "%s", says)
	}
}

// headingOf returns the heading under which the value of a path was read, or would
// be read; without such a column, the path's own name.
func (t *Table) headingOf(path string, r *reader) string {
	if heading := r.from[path]; heading != "" {
		return heading
	}
	for _, c := range t.Columns {
		if c.Field == path || path == fieldName && c.isName() {
			return c.Heading
		}
	}
	return strings.ReplaceAll(path[strings.LastIndex(path, ".")+1:], "_", " ")
}

// wrong notes a refused row.
func (t *Table) wrong(row record, reasons ...string) {
	if len(t.Wrong) >= maxWrong {
		t.More++
		return
	}
	w := Wrong{Line: row.line, Reasons: reasons, Raw: strings.TrimRight(row.raw, "\r\n")}
	named := reader{}
	for i, c := range t.Columns {
		if c.isName() && i < len(row.cells) {
			name := clip(oneLine(strings.Trim(trimInvisible(row.cells[i]), `"`)))
			switch c.Field {
			case fieldFirst:
				named.first = name
			case fieldLast:
				named.last = name
			default:
				named.student.Name = name
			}
		}
	}
	named.joinName()
	w.Name = named.student.Name
	t.Wrong = append(t.Wrong, w)
}
