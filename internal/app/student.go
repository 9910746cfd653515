package app

import (
	"context"
	"errors"
	"slices"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/roster"
	"thenar/internal/store"
	"thenar/internal/units"
)

var errNoStudent = fault.New(fault.NotFound, "There is no student at this address; somebody may have taken them off the list.")

// Student is one student of a class, saved or only typed, with what they knit.
type Student struct {
	Class     int64
	ClassName string
	Unit      units.Unit
	Names     mitt.Names // what the pattern calls its numbers
	roster.Student
	Stamp string // of the student as saved
	Line  roster.Line
}

// student returns s with the texts laid over it.
func (t Texts) student(s roster.Student, unit units.Unit) roster.Student {
	s.Name, s.Note = strings.TrimSpace(t["name"]), strings.TrimSpace(t["note"])
	s.FromLeft, s.Gauge = t["knits"] == "left", roster.GaugeFrom(t["gauge_from"])
	s.Sheet = s.Sheet.Clone()
	for _, path := range roster.Paths() {
		if typed, ok := t[path]; ok {
			s.Sheet.Put(path, strings.TrimSpace(typed))
		}
	}
	s.OverGauge(unit)
	return s
}

// UnsavedStudent is a student as a form has them.
type UnsavedStudent struct {
	Student
	Faults fault.Fields
	Saved  *roster.Student // as another window saved them in between; nil if none did
}

// AddStudent adds a student who was typed by hand. If they can't be kept, they
// come back unsaved, with the class as it stands; otherwise both are nil.
func (a *App) AddStudent(ctx context.Context, class int64, typed Texts) (*Class, *UnsavedStudent, error) {
	var u UnsavedStudent
	doc, err := a.changeClass(ctx, class, func(doc *roster.Class) error {
		u.Student.Student = typed.student(roster.Student{}, doc.Unit)
		if u.Faults = u.Check(doc.Unit); len(u.Faults) > 0 {
			return errUnsaved
		}
		_, err := doc.Add(u.Student.Student)
		return err
	})
	if !errors.Is(err, errUnsaved) {
		return nil, nil, err
	}
	c, err := a.unsaved(ctx, class, doc)
	return &c, &u, err
}

// Student returns one student of a class.
func (a *App) Student(ctx context.Context, class int64, id int) (Student, error) {
	doc, err := classOf(a.store.LoadClass(ctx, class))
	if err != nil {
		return Student{}, err
	}
	at := doc.At(id)
	if at < 0 {
		return Student{}, errNoStudent
	}
	return a.student(class, doc, doc.Students[at], true), nil
}

// classOf returns the document of a class that was read.
func classOf(c store.Class, err error) (roster.Class, error) {
	if err != nil {
		return roster.Class{}, err
	}
	return roster.Decode(c.Document)
}

// student returns one student, saved or typed, with what they knit if plan is
// set.
func (a *App) student(class int64, doc roster.Class, s roster.Student, plan bool) Student {
	out := Student{Class: class, ClassName: doc.Name, Unit: doc.Unit, Names: doc.Names(), Student: s}
	if at := doc.At(s.ID); at >= 0 {
		out.Stamp = stamp(doc.Students[at])
	}
	if plan {
		pl, done := a.Planner()
		defer done()
		out.Line = doc.Line(pl, s)
	}
	return out
}

// SaveStudent saves one student, leaving the others as they are now, and
// returns nil. What can't be kept, or was changed elsewhere since the form with
// this stamp was opened, comes back unsaved.
func (a *App) SaveStudent(ctx context.Context, class int64, id int, stamped string, typed Texts) (*UnsavedStudent, error) {
	var u UnsavedStudent
	doc, err := a.changeClass(ctx, class, func(doc *roster.Class) error {
		at := doc.At(id)
		if at < 0 {
			return errNoStudent
		}
		was := doc.Students[at]
		s := typed.student(was, doc.Unit)
		u = UnsavedStudent{Student: Student{Student: s}, Faults: s.Check(doc.Unit)}
		if now := stamp(was); len(u.Faults) == 0 && now != stamped && now != stamp(s) {
			u.Saved = &was
		}
		if len(u.Faults) > 0 || u.Saved != nil {
			return errUnsaved
		}
		doc.Students = slices.Clone(doc.Students)
		doc.Students[at] = s
		return nil
	})
	if !errors.Is(err, errUnsaved) {
		return nil, err
	}
	u.Student = a.student(class, doc, u.Student.Student, len(u.Faults) == 0)
	return &u, nil
}

// RemoveStudent takes a student off the list.
func (a *App) RemoveStudent(ctx context.Context, class int64, id int) error {
	_, err := a.changeClass(ctx, class, func(doc *roster.Class) error {
		at := doc.At(id)
		if at < 0 {
			return errNoStudent
		}
		doc.Students = slices.Delete(slices.Clone(doc.Students), at, at+1)
		return nil
	})
	return err
}

// AnswerStudent takes the answer to a question about an unusual measurement of
// a student: yes keeps it, otherwise it becomes text.
func (a *App) AnswerStudent(ctx context.Context, class int64, id int, path, text string, yes bool) error {
	_, err := a.changeClass(ctx, class, func(doc *roster.Class) error {
		if !doc.Answer(id, path, text, yes) {
			return errNoStudent
		}
		return nil
	})
	return err
}
