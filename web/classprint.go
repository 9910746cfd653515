package web

import (
	"context"
	"fmt"
	"net/http"
	"net/url"
	"strconv"

	"thenar/internal/draw"
	"thenar/internal/fault"
	"thenar/internal/paper"
	"thenar/internal/roster"
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
	} else {
		p.Trouble = doc.LeftOut()
	}
	return s.sheets(w, r, p, s.classSet(doc, o, one))
}

// classSet lays out the handouts of a class, or that of one student, who is on
// its list.
func (s *Server) classSet(doc roster.Class, o paper.Options, one int) []*draw.Scene {
	pl, done := s.planner()
	defer done()
	if one > 0 {
		line := doc.Line(pl, doc.Students[doc.At(one)])
		return paper.Student(doc, &line, o)
	}
	return paper.Class(doc, doc.Review(pl), o)
}

// LeftOut tells of the students of a class for whom nothing is printed yet.
func (s *Server) LeftOut(ctx context.Context, id int64) ([]string, error) {
	_, doc, err := s.class(ctx, id)
	return doc.LeftOut(), err
}

// ClassSet gives the pages of a class set as the print page shows them, or
// those of one student; what is asked goes before what was kept.
func (s *Server) ClassSet(ctx context.Context, id int64, one int, asked url.Values) (title string, pages []*draw.Scene, err error) {
	_, doc, err := s.class(ctx, id)
	if err != nil {
		return "", nil, err
	}
	o, err := paper.Read(before(asked, doc.Print))
	switch {
	case err != nil:
		return "", nil, err
	case len(doc.Students) == 0:
		return "", nil, fault.New(fault.Invalid, "ID: the class %d has nobody on its list yet", id)
	case one > 0 && doc.At(one) < 0:
		return "", nil, fault.New(fault.Invalid, "student: nobody on the list has the number %d; it stands in the address of the student’s page", one)
	}
	if one > 0 {
		if err := unsure(doc.Asks(doc.Students[doc.At(one)]), "the student’s page"); err != nil {
			return "", nil, err
		}
	}
	return doc.Name, s.classSet(doc, o, one), nil
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
