package app

import (
	"context"
	"errors"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/roster"
)

// MaxTable is the most bytes that a table of students may have.
const MaxTable = roster.MaxBytes

// maxEcho is the most bytes of a table that go back with its page, to be read
// again as somebody chooses.
const maxEcho = 1 << 20

// Difference is a value on which a table differs from what is kept.
type Difference = roster.Difference

// TableRead is what a table came to.
type TableRead struct {
	Class  Class
	Table  roster.Table
	Merged roster.Merged
	Fault  error  // why it can't be read; Table has its columns, if they were told
	Whole  string // what was read, to be read again; empty: too long
	Mend   string // what is to be mended and sent again: the heading and the wrong rows
}

// ReadTable reads a table into a class: right rows go in, wrong ones are named,
// and every column is told with how it was read. Chosen is the field as which a
// column is read, by its key. Who is in the class already gets what is empty;
// what differs is left to be asked about.
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
		return nil // the choice is kept all the same
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

// mend is what of a table is to be mended and sent again; empty if nothing is
// wrong.
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

// TakeValues puts values of a table in the place of those that differ from
// them. A value that was changed in between stays: those that were not taken
// come back, with the class as it is.
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
