package app

import (
	"context"
	"fmt"

	"thenar/internal/fault"
	"thenar/internal/paper"
	"thenar/internal/roster"
)

// The most students printed at a time: a PDF is held in memory until it is
// whole, and a page has to be laid out by a browser.
const (
	maxInPDF  = 100
	maxOnPage = 30
)

// ClassAsk says whom of a class to print: one student, a part of the list such
// as 101-200, or everybody.
type ClassAsk struct {
	Layout
	Student int    // the number of the student; 0 for the part
	Part    string // "" for everybody
	PDF     bool   // a PDF holds at most maxInPDF students
}

// ClassSheets are the sheets of a class, or of one of its students.
type ClassSheets struct {
	Sheets
	Class        roster.Class
	Student      int
	Part         roster.Part   // the part that is printed
	Parts, Files []roster.Part // if not everybody is printed: the parts that fit a page, and those that fit a PDF
}

// ClassSet returns the sheets of a class: the teacher's summary, then every
// student's handout. They are laid out as their pages are asked for, while ctx
// lasts. A web page shows as many students as it has room for; a PDF of too
// many is refused.
func (a *App) ClassSet(ctx context.Context, id int64, ask ClassAsk) (ClassSheets, error) {
	doc, err := classOf(a.store.LoadClass(ctx, id))
	if err != nil {
		return ClassSheets{}, err
	}
	at := doc.At(ask.Student)
	if ask.Student != 0 && at < 0 && !ask.Final {
		return ClassSheets{}, errNoStudent
	}
	s := ClassSheets{Class: doc, Student: ask.Student}
	if s.Sheets, err = ask.sheets(doc.Name, doc.Print); err != nil {
		return ClassSheets{}, err
	}
	switch {
	case len(doc.Students) == 0 && ask.Final:
		return ClassSheets{}, fault.New(fault.Invalid, "ID: the class %d has nobody on its list yet", id)
	case len(doc.Students) == 0:
		s.Trouble = []string{"Nobody is on the list yet."}
		return s, nil
	case ask.Student != 0 && at < 0:
		return ClassSheets{}, fault.New(fault.Invalid, "student: nobody on the list has the number %d; it stands in the address of the student’s page", ask.Student)
	case ask.Student != 0:
		err = a.layStudent(&s, ask, doc.Students[at])
		return s, err
	}
	s.Trouble = doc.LeftOut()
	if s.Part, err = doc.Part(ask.Part); err != nil {
		return ClassSheets{}, err
	}
	if err := s.fit(ask); err != nil {
		return ClassSheets{}, err
	}
	err = a.layPart(ctx, &s)
	return s, err
}

// layStudent lays out the handout of one student.
func (a *App) layStudent(s *ClassSheets, ask ClassAsk, one roster.Student) error {
	if err := s.ask(ask.Layout, s.Class.Asks(one), "the student’s page"); err != nil {
		return err
	}
	pl, done := a.Planner()
	defer done()
	line := s.Class.Line(pl, one)
	s.lay(paper.Student(s.Class, &line, s.Options))
	return nil
}

// fit cuts the part to what can be shown at a time, and refuses a PDF of too
// many.
func (s *ClassSheets) fit(ask ClassAsk) error {
	switch {
	case ask.PDF && s.Part.Len() > maxInPDF:
		return fault.Fields{{Path: "students", Message: fmt.Sprintf("are %d; a PDF holds at most %d: ask for %d-%d, then for the next", s.Part.Len(), maxInPDF, s.Part.From, s.Part.From+maxInPDF-1)}}
	case !ask.PDF && !ask.Final:
		s.Part.To = min(s.Part.To, s.Part.From+maxOnPage-1)
	}
	if s.Part != s.Class.Whole() {
		s.Parts, s.Files = s.Class.Parts(maxOnPage), s.Class.Parts(maxInPDF)
	}
	return nil
}

// layPart plans each student of the part once; their handouts are laid out as
// they are asked for.
func (a *App) layPart(ctx context.Context, s *ClassSheets) error {
	pl, done := a.Planner()
	defer done()
	lines, err := s.Class.Review(ctx, pl, s.Part)
	if err != nil {
		return err
	}
	doc, part, o := s.Class, s.Part, s.Options
	complete := func(l roster.Line) roster.Line {
		pl, done := a.Planner()
		defer done()
		return doc.Complete(pl, l)
	}
	s.scenes = paper.Class(ctx, doc, part, lines, complete, o)
	return nil
}

// KeepClassPrint keeps how the handouts of a class are laid out.
func (a *App) KeepClassPrint(ctx context.Context, class int64, options string) error {
	kept, err := keptLayout(options)
	if err != nil {
		return err
	}
	_, err = a.changeClass(ctx, class, func(doc *roster.Class) error {
		doc.Print = kept
		return nil
	})
	return err
}
