package roster

import (
	"strings"

	"thenar/internal/fault"
	"thenar/internal/sheet"
	"thenar/internal/units"
)

// Table is what a list from a spreadsheet came to.
type Table struct {
	Students []Student // of the rows that are right, in their order
	Wrong    []Wrong   // the rows that are wrong, the first of them
	More     int       // further rows that are wrong
	Columns  []Column  // how each heading was read
	Heading  string    // the row of headings as it stands
}

// Wrong is a row that did not go in, and every reason for it.
type Wrong struct {
	Line    int // at which the row begins, from 1
	Name    string
	Reasons []string
	Raw     string // the row as it stands
}

// mostWrong is how many wrong rows are told one by one.
const mostWrong = 200

// above is how many rows may stand above the headings.
const above = 5

// Read reads a table of students: one a row, headings above, in any order,
// lengths in the unit of the class unless heading or cell names another. Right
// rows come as students, wrong ones with their line and reasons; empty rows are
// left out, and nothing is worked out or looked up. The error says what makes
// the whole table unusable.
func Read(raw []byte, unit units.Unit) (Table, error) {
	text, err := text(raw)
	if err != nil {
		return Table{}, err
	}
	delimiter, heads, err := headings(text)
	if err != nil {
		return Table{}, err
	}
	t := Table{Heading: strings.TrimRight(heads.raw, "\r\n")}
	for _, cell := range heads.cells {
		t.Columns = append(t.Columns, columnOf(cell))
	}
	if err := t.checkColumns(); err != nil {
		return Table{}, err
	}
	records(text, delimiter, func(r record) bool {
		if r.line > heads.line && !r.empty() {
			t.take(r, unit)
		}
		return true
	})
	return t, nil
}

// headings finds the delimiter by which the first rows have a row of headings,
// the one with the most of them that mean something.
func headings(text string) (delimiter byte, heads record, err error) {
	best := 0
	rows := 0
	for _, d := range []byte{'\t', ';', ',', '|'} {
		n := 0
		records(text, d, func(r record) bool {
			if r.empty() {
				return true
			}
			n++
			// of two delimiters with as many known headings, the one that parts more
			if known := 1000*knownOf(r.cells) + min(len(r.cells), 999); known > best && known > 999 {
				best, delimiter, heads = known, d, r
			}
			return n < above
		})
		rows = max(rows, n)
	}
	switch {
	case rows == 0:
		return 0, record{}, fault.New(fault.Invalid, "The table is empty; paste the cells of a spreadsheet, headings first.")
	case best == 0:
		return 0, record{}, fault.New(fault.Invalid, "The table has no row of headings with a name; write headings above the rows, such as: name, hand, stitches, rounds.")
	}
	return delimiter, heads, nil
}

// knownOf counts the headings that mean something; 0 where none is a name.
func knownOf(cells []string) int {
	n, name := 0, false
	for _, cell := range cells {
		if c := columnOf(cell); c.Field != "" {
			n++
			name = name || c.Field == fieldName
		}
	}
	if !name {
		return 0
	}
	return n
}

// checkColumns refuses two columns that mean the same.
func (t *Table) checkColumns() error {
	seen := map[string]string{}
	for _, c := range t.Columns {
		if other, twice := seen[c.Field]; twice && c.Field != "" {
			return fault.New(fault.Invalid, "The headings “%s” and “%s” mean the same; leave one of the columns out.", clip(other), clip(c.Heading))
		}
		seen[c.Field] = c.Heading
	}
	return nil
}

// take reads a row.
func (t *Table) take(row record, unit units.Unit) {
	r := reader{student: Student{Sheet: sheet.Sheet{}}, unit: unit, from: map[string]string{}}
	if len(t.Students) >= MostStudents {
		t.wrong(row, &r, []string{"a class has at most 1000 students; begin a second class for the rest"})
		return
	}
	if row.fault != "" {
		t.wrong(row, &r, []string{"The row " + row.fault + "."})
		return
	}
	for i, cell := range row.cells {
		if i < len(t.Columns) {
			r.put(t.Columns[i], cell)
		} else if strings.TrimSpace(cell) != "" {
			r.wrong(Column{Heading: "beyond the last heading"}, cell, "has no heading; give its column one, or leave it out")
		}
	}
	r.student.OverGauge(unit)
	for _, f := range r.student.Check(unit) {
		r.reasons = append(r.reasons, r.reason(f))
	}
	if len(r.reasons) > 0 {
		t.wrong(row, &r, r.reasons)
		return
	}
	t.Students = append(t.Students, r.student)
}

// reason is a fault of a student by the heading that it was read from.
func (r *reader) reason(f fault.Field) string {
	if heading, ok := r.from[f.Path]; ok {
		return heading + ": " + f.Message
	}
	return strings.ReplaceAll(strings.TrimPrefix(strings.TrimPrefix(f.Path, "hand."), "gauge.swatches[0]."), "_", " ") + ": " + f.Message
}

func (t *Table) wrong(row record, r *reader, reasons []string) {
	if len(t.Wrong) >= mostWrong {
		t.More++
		return
	}
	t.Wrong = append(t.Wrong, Wrong{Line: row.line, Name: clip(r.student.Name), Reasons: reasons, Raw: strings.TrimRight(row.raw, "\r\n")})
}
