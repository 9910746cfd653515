package web

import (
	"context"
	"fmt"
	"iter"
	"net/http"
	"net/url"
	"slices"
	"strconv"

	"thenar/internal/draw"
	"thenar/internal/fault"
	"thenar/internal/paper"
	"thenar/internal/roster"
	"thenar/web/view"
)

// printClass shows the class set, or one student's handout of it.
func (s *Server) printClass(w http.ResponseWriter, r *http.Request) error {
	c, doc, err := s.loadClass(r)
	if err != nil {
		return err
	}
	one := 0
	if text := r.URL.Query().Get("student"); text != "" {
		if one, err = strconv.Atoi(text); err != nil || doc.At(one) < 0 {
			return errNoStudent
		}
	}
	o, p := printOptions(r, doc.Print)
	p.Back, p.BackName = fmt.Sprintf("/classes/%d", c.ID), doc.Name
	p.Title = "Print " + doc.Name
	p.Action, p.Handout, p.Class, p.Keep = p.Back+"/print", true, true, p.Back+"/print"
	if one > 0 {
		p.Hidden = map[string]string{"student": strconv.Itoa(one)}
		p.Title = "Print " + doc.Students[doc.At(one)].Name
	}
	if len(doc.Students) == 0 {
		p.Trouble = []string{"Nobody is on the list yet."}
		return s.sheets(w, r, p, nil)
	}
	if one > 0 {
		p.Ask(fmt.Sprintf("%s/students/%d/sure", p.Back, one), doc.Asks(doc.Students[doc.At(one)]))
		return s.sheets(w, r, p, s.oneStudent(doc, o, one))
	}
	p.Trouble = doc.LeftOut()
	part, err := doc.Part(r.URL.Query().Get("students"))
	if err != nil {
		return err
	}
	if part, err = fitting(part, asPDF(r), &p, doc); err != nil {
		return err
	}
	pages, err := s.classSet(r.Context(), doc, o, part)
	if err != nil {
		return err
	}
	return s.stream(w, r, p, pages)
}

// The most students of a PDF, which is held in memory until it is whole, and of
// a page, which a browser has to lay out.
const (
	maxInPDF  = 100
	maxOnPage = 30
)

// fitting is what of a part is printed at a time: a PDF of more than it can
// hold is refused, a page begins with those that it shows. The page offers the
// other parts.
func fitting(part roster.Part, pdf bool, p *view.Print, doc roster.Class) (roster.Part, error) {
	if pdf && part.Len() > maxInPDF {
		return part, tooMany(part)
	}
	if !pdf {
		part.To = min(part.To, part.From+maxOnPage-1)
	}
	if part == doc.Whole() {
		return part, nil
	}
	p.Hidden, p.Part = map[string]string{"students": part.String()}, part
	p.Parts, p.Files = doc.Parts(maxOnPage), doc.Parts(maxInPDF)
	if pdf {
		p.Title += ", " + part.Words()
	}
	return part, nil
}

// tooMany refuses a PDF of a part that is too large for one.
func tooMany(part roster.Part) error {
	return fault.Fields{{Path: "students", Message: fmt.Sprintf("are %d; a PDF holds at most %d: ask for %d-%d, then for the next", part.Len(), maxInPDF, part.From, part.From+maxInPDF-1)}}
}

// classSet lays out the handouts of a part of a class, student by student.
func (s *Server) classSet(ctx context.Context, doc roster.Class, o paper.Options, part roster.Part) (iter.Seq[*draw.Scene], error) {
	pl, done := s.planner()
	defer done()
	lines, err := doc.Review(ctx, pl, part)
	if err != nil {
		return nil, err
	}
	return func(yield func(*draw.Scene) bool) {
		pl, done := s.planner()
		defer done()
		paper.Class(ctx, doc, part, lines, func(l roster.Line) roster.Line { return doc.Complete(pl, l) }, o)(yield)
	}, nil
}

// LeftOut tells of the students of a class for whom nothing is printed yet.
func (s *Server) LeftOut(ctx context.Context, id int64) ([]string, error) {
	_, doc, err := s.class(ctx, id)
	return doc.LeftOut(), err
}

// oneStudent lays out the handout of one who is on the list.
func (s *Server) oneStudent(doc roster.Class, o paper.Options, one int) []*draw.Scene {
	pl, done := s.planner()
	defer done()
	line := doc.Line(pl, doc.Students[doc.At(one)])
	return paper.Student(doc, &line, o)
}

// ClassAsk is what of a class is printed: one student by their number, else a
// part of the list such as 101-200, else everybody; how it is laid out goes
// before what was kept.
type ClassAsk struct {
	Student int
	Part    string
	PDF     bool // which can't hold everybody
	Layout  url.Values
}

// ClassSet gives the pages of a class set as the print page shows them, laid
// out as they are asked for, as long as ctx lasts.
func (s *Server) ClassSet(ctx context.Context, id int64, ask ClassAsk) (title string, pages iter.Seq[*draw.Scene], err error) {
	_, doc, err := s.class(ctx, id)
	if err != nil {
		return "", nil, err
	}
	o, err := paper.Read(before(ask.Layout, doc.Print))
	switch {
	case err != nil:
		return "", nil, err
	case len(doc.Students) == 0:
		return "", nil, fault.New(fault.Invalid, "ID: the class %d has nobody on its list yet", id)
	case ask.Student > 0 && doc.At(ask.Student) < 0:
		return "", nil, fault.New(fault.Invalid, "student: nobody on the list has the number %d; it stands in the address of the student’s page", ask.Student)
	case ask.Student > 0:
		if err := unsure(doc.Asks(doc.Students[doc.At(ask.Student)]), "the student’s page"); err != nil {
			return "", nil, err
		}
		return doc.Name, slices.Values(s.oneStudent(doc, o, ask.Student)), nil
	}
	part, err := doc.Part(ask.Part)
	if err != nil {
		return "", nil, err
	}
	if ask.PDF && part.Len() > maxInPDF {
		return "", nil, tooMany(part)
	}
	pages, err = s.classSet(ctx, doc, o, part)
	return doc.Name, pages, err
}

// keepClassPrint keeps how a class's handouts are laid out.
func (s *Server) keepClassPrint(w http.ResponseWriter, r *http.Request) error {
	kept, err := postedPrint(r)
	if err != nil {
		return err
	}
	if err := s.changeClass(r, func(doc *roster.Class) error {
		doc.Print = kept
		return nil
	}); err != nil {
		return err
	}
	return toClass(w, r, "/print")
}
