package app

import (
	"context"
	"errors"
	"slices"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/roster"
)

// Remark is what a teacher notes beside a student's numbers.
type Remark = roster.Remark

// TypedRemark is what was typed beside the numbers of a student, and what stood
// there before.
type TypedRemark struct {
	Student  int
	Was, Now Remark
}

// Move moves a student before another, or to the end of the list if Before is 0.
type Move struct{ Student, Before int }

// UnsavedRemarks is a class whose remarks could not be saved. Its lines have them
// as they were typed.
type UnsavedRemarks struct {
	Class
	Faults map[int]string // why a note can't be kept, by its student
	Saved  map[int]Remark // of each student who is typed about, as saved now
	Others []int          // the students whom another window changed in between
}

// SaveRemarks saves what was typed beside the numbers of students and moves one
// of them if move is not nil, and returns nil. A remark that was not changed
// leaves alone what another window saved. If one can't be kept, or was changed
// elsewhere, too, all come back unsaved and nobody is moved.
func (a *App) SaveRemarks(ctx context.Context, class int64, typed []TypedRemark, move *Move) (*UnsavedRemarks, error) {
	var u UnsavedRemarks
	doc, err := a.changeClass(ctx, class, func(doc *roster.Class) error {
		u = UnsavedRemarks{Faults: map[int]string{}, Saved: map[int]Remark{}}
		doc.Students = slices.Clone(doc.Students)
		for _, t := range typed {
			if err := u.lay(doc, t); err != nil {
				return err
			}
		}
		switch {
		case len(u.Faults)+len(u.Others) > 0:
			return errUnsaved
		case move != nil:
			return doc.MoveBefore(move.Student, move.Before)
		}
		return nil
	})
	if !errors.Is(err, errUnsaved) {
		return nil, err
	}
	u.Class, err = a.unsaved(ctx, class, doc)
	return &u, err
}

// lay lays a remark over the class, and notes why it can't be saved.
func (u *UnsavedRemarks) lay(doc *roster.Class, t TypedRemark) error {
	t.Now.Note = strings.TrimSpace(t.Now.Note)
	at := doc.At(t.Student)
	switch {
	case at < 0 && t.Now == t.Was:
		return nil
	case at < 0:
		return errNoStudent
	}
	s := &doc.Students[at]
	saved := s.Remark()
	u.Saved[t.Student] = saved
	if t.Now == t.Was || t.Now == saved {
		return nil
	}
	s.SetRemark(t.Now)
	for _, f := range s.Check(doc.Unit) {
		if f.Path == "note" {
			u.Faults[t.Student] = f.Message
		}
	}
	if saved != t.Was {
		u.Others = append(u.Others, t.Student)
	}
	return nil
}

// Err returns why the first of the remarks that are not saved is not.
func (u *UnsavedRemarks) Err() error {
	for _, s := range u.Doc.Students {
		switch why := u.Faults[s.ID]; {
		case why != "":
			return fault.New(fault.Invalid, "The note on %s %s.", s.Name, why)
		case slices.Contains(u.Others, s.ID):
			return fault.New(fault.Conflict, "Another window changed what stands beside %s.", s.Name)
		}
	}
	return nil
}
