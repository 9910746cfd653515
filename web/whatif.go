package web

import (
	"context"
	"errors"
	"net/http"
	"strconv"

	"github.com/a-h/templ"

	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/store"
	"thenar/web/view"
)

// whatIf is the address of the second variant, below a mitt.
const whatIf = "/what-if"

// whatIfPage compares a mitt with a second variant of it.
func (s *Server) whatIfPage(ctx context.Context, m store.Mitt, doc, variant project.Document) view.WhatIf {
	p := s.mittPage(ctx, m, variant, view.ChartAsk{})
	p.Form = whatIf
	return view.NewWhatIf(p, doc, s.derive(ctx, m, doc, view.ChartAsk{}))
}

func (s *Server) showWhatIf(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	return page(w, r, http.StatusOK, view.WhatIfPage(s.whatIfPage(r.Context(), m, doc, doc.Variant())))
}

// readWhatIf reads the form of the second variant: name and side are the
// mitt's own.
func readWhatIf(r *http.Request, m store.Mitt, doc project.Document) (form, error) {
	f, err := readForm(r, m, doc.Variant())
	f.doc.Name, f.doc.Side = doc.Name, doc.Side
	return f, err
}

func (s *Server) saveWhatIf(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	f, err := readWhatIf(r, m, doc)
	if err != nil {
		return err
	}
	variant := f.doc
	f.doc = doc
	f.doc.WhatIf = variant.Sheet
	return s.saved(w, r, m.ID, f, func() (templ.Component, error) {
		m, saved, err := s.mitt(r.Context(), m.ID)
		if err != nil {
			return nil, err
		}
		p := s.whatIfPage(r.Context(), m, saved, variant)
		p.Conflict = "Another version of this mitt was saved in between."
		was, err := s.before(r.Context(), m.ID, f.after)
		if err != nil {
			return nil, err
		}
		if was != nil {
			*was = was.Variant()
		}
		p.Between = view.Betweens(variant, saved.Variant(), was)
		return view.WhatIfPage(p), nil
	}, whatIf)
}

func (s *Server) previewWhatIf(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	f, err := readWhatIf(r, m, doc)
	var fields fault.Fields
	if err != nil && !errors.As(err, &fields) {
		return err
	}
	p := s.whatIfPage(r.Context(), m, doc, f.doc)
	for _, field := range fields {
		p.Answer.Faults[field.Path] = field.Message
	}
	return page(w, r, http.StatusOK, view.WhatIfFragments(p))
}

// takeWhatIf makes the second variant the mitt; what the mitt was becomes the
// second variant, so that nothing is lost.
func (s *Server) takeWhatIf(w http.ResponseWriter, r *http.Request) error {
	return s.changeWhatIf(w, r, "", func(doc *project.Document) {
		doc.Sheet, doc.WhatIf = doc.WhatIf, doc.Sheet
	})
}

func (s *Server) dropWhatIf(w http.ResponseWriter, r *http.Request) error {
	return s.changeWhatIf(w, r, "", func(doc *project.Document) { doc.WhatIf = nil })
}

// changeWhatIf changes a document that has a second variant; one without is
// left as it is.
func (s *Server) changeWhatIf(w http.ResponseWriter, r *http.Request, below string, edit func(*project.Document)) error {
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	if doc.WhatIf != nil {
		edit(&doc)
		if _, err := s.saveDoc(r.Context(), m.ID, m.Decided, doc); err != nil {
			return err
		}
	}
	http.Redirect(w, r, "/mitts/"+strconv.FormatInt(m.ID, 10)+below, http.StatusSeeOther)
	return nil
}

// copyWhatIf begins a mitt of its own with the second variant.
func (s *Server) copyWhatIf(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	variant := doc.Variant()
	variant.Name = suffixed(doc.Name, " (variant)")
	return s.create(w, r, variant, m.Marks.Edits())
}

// suffixed is a name with an ending, short enough to be one.
func suffixed(name, suffix string) string {
	if letters := []rune(name); len(letters) > project.LongestName-len(suffix) {
		name = string(letters[:project.LongestName-len(suffix)])
	}
	return name + suffix
}
