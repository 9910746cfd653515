package app

import (
	"context"
	"errors"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/roster"
)

// MaxTable is the most bytes in a table of students.
const MaxTable = roster.MaxBytes

// maxEcho is the most bytes of a table that its page carries, so that it can be
// read again with other columns.
const maxEcho = 1 << 20

// Difference is a value that a table has otherwise than the class.
type Difference = roster.Difference

// TableRead is what came of reading a table.
type TableRead struct {
	Class  Class
	Table  roster.Table
	Merged roster.Merged
	Fault  error  // why it can't be read; Table has its columns as far as they are known
	Whole  string // the text, to be read again; empty if it is too long
	Mend   string // what to correct and send again: the heading and the wrong rows
}

// ReadTable reads a table into a class. Right rows go in, wrong ones are named,
// and every column is shown with how it was read. chosen says, by the key of a
// column, which field the person reads it as. A student who is in the class
// already gets only the values they lack; values that differ are asked about.
func (a *App) ReadTable(ctx context.Context, class int64, raw []byte, chosen map[string]string) (TableRead, error) {
	var t TableRead
	if len(raw) <= maxEcho {
		t.Whole = roster.Text(raw)
	}
	doc, err := a.changeClass(ctx, class, func(doc *roster.Class) (err error) {
		doc.Choose(chosen)
		if err := doc.Check(); err != nil {
			return err
		}
		if t.Table, t.Fault = roster.ReadAs(raw, doc.Unit, doc.Columns); t.Fault == nil {
			t.Merged, err = doc.Merge(t.Table.Students)
			return err
		}
		switch {
		case fault.KindOf(t.Fault) != fault.Invalid:
			return t.Fault
		case len(chosen) == 0:
			return errUnsaved
		}
		return nil // the chosen columns are kept all the same
	})
	if err != nil && !errors.Is(err, errUnsaved) {
		return TableRead{}, err
	}
	if t.Fault == nil {
		t.Mend = mend(t.Table)
	}
	t.Class, err = a.unsaved(ctx, class, doc)
	return t, err
}

// mend returns the heading and the wrong rows of a table, to correct and send
// again; "" if no row is wrong.
func mend(t roster.Table) string {
	if len(t.Wrong) == 0 {
		return ""
	}
	rows := []string{t.Heading}
	for _, w := range t.Wrong {
		rows = append(rows, w.Raw)
	}
	return strings.Join(rows, "\n")
}

// TakeValues replaces values of a class with the differing ones of a table. A
// value that was changed in between stays; such differences come back, with the
// class as it is now.
func (a *App) TakeValues(ctx context.Context, class int64, list []Difference) (left []Difference, c Class, err error) {
	doc, err := a.changeClass(ctx, class, func(doc *roster.Class) error {
		left = nil
		for _, d := range list {
			if !doc.Accept(d) {
				left = append(left, d)
			}
		}
		return nil
	})
	if err != nil || len(left) == 0 {
		return nil, Class{}, err
	}
	c, err = a.unsaved(ctx, class, doc)
	return left, c, err
}
