package web

import (
	"context"
	"errors"
	"net/http"
	"strconv"
	"time"

	"github.com/a-h/templ"
	"github.com/go-chi/chi/v5"

	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/store"
	"thenar/web/view"
)

// mittID is the number of the mitt of the address.
func mittID(r *http.Request) (int64, error) {
	id, err := strconv.ParseInt(chi.URLParam(r, "id"), 10, 64)
	if err != nil || id < 1 {
		return 0, fault.New(fault.NotFound, "There is no mitt at this address.")
	}
	return id, nil
}

// load finds the mitt of the address.
func (s *Server) load(r *http.Request) (store.Mitt, project.Document, error) {
	id, err := mittID(r)
	if err != nil {
		return store.Mitt{}, project.Document{}, err
	}
	return s.mitt(r.Context(), id)
}

// head finds the mitt of the address without what is painted on its chart, for
// those who only change its numbers.
func (s *Server) head(r *http.Request) (store.Mitt, project.Document, error) {
	id, err := mittID(r)
	if err != nil {
		return store.Mitt{}, project.Document{}, err
	}
	m, err := s.store.Head(r.Context(), id)
	if err != nil {
		return store.Mitt{}, project.Document{}, err
	}
	doc, err := project.Decode(m.Document)
	return m, doc, err
}

// mitt reads a mitt with its document.
func (s *Server) mitt(ctx context.Context, id int64) (store.Mitt, project.Document, error) {
	m, err := s.store.Load(ctx, id)
	if err != nil {
		return store.Mitt{}, project.Document{}, err
	}
	doc, err := project.Decode(m.Document)
	return m, doc, err
}

// saveDoc appends a document to a mitt's revisions.
func (s *Server) saveDoc(ctx context.Context, id, after int64, doc project.Document) (int64, error) {
	raw, err := doc.Encode()
	if err != nil {
		return 0, err
	}
	return s.store.Save(ctx, id, after, raw)
}

// clock is how a time of saving is shown: today's by the hour, others with
// their date.
func clock(t, now time.Time) string { return view.Clock(t, now) }

func (s *Server) showMitt(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	return page(w, r, http.StatusOK, view.MittPage(s.mittPage(r.Context(), m, doc, chartAsk(r))))
}

func (s *Server) mittPage(ctx context.Context, m store.Mitt, doc project.Document, ask view.ChartAsk) view.Mitt {
	p := view.Mitt{
		ID: m.ID, Doc: doc, After: m.Decided, Restored: m.Restored, Saved: clock(m.Changed, time.Now()),
		Answer: s.derive(ctx, m, doc, ask),
	}
	if p.Answer.Out == nil {
		return p
	}
	list, err := s.learned(ctx)
	s.without(ctx, "habits", err)
	for _, h := range view.HabitsFor(list, doc, p.Answer.Out.Plan) {
		if h.Usable {
			p.Habits = append(p.Habits, h)
		}
	}
	return p
}

// saveMitt saves the measure form, whether its numbers make a plan or not:
// nothing typed is lost. A script is told the revision, a plain form is shown
// the page again.
func (s *Server) saveMitt(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.head(r)
	if err != nil {
		return err
	}
	f, err := readForm(r, m, doc)
	if err != nil {
		return s.refuse(w, r, m.ID, f, err)
	}
	if f.doc, err = s.keep(r.Context(), m, doc, f.doc, true); err != nil {
		return err
	}
	if f.after >= m.Decided { // else it is not saved
		if err := s.startOver(r.Context(), m.ID, doc, f.doc); err != nil {
			return err
		}
	}
	return s.saved(w, r, m.ID, f, func() (templ.Component, error) { return s.contested(r.Context(), m.ID, f) }, "")
}

// saved saves a form's document and answers where it came from, at a place
// below the mitt; contested is the page for what was saved in between.
func (s *Server) saved(w http.ResponseWriter, r *http.Request, id int64, f form, contested func() (templ.Component, error), below string) error {
	revision, err := s.saveDoc(r.Context(), id, f.after, f.doc)
	switch {
	case fault.KindOf(err) == fault.Conflict && !wantsJSON(r) && contested != nil:
		both, err := contested()
		if err != nil {
			return err
		}
		return page(w, r, http.StatusConflict, both)
	case err != nil:
		return err
	case wantsJSON(r):
		writeJSON(w, http.StatusOK, map[string]any{"revision": revision, "saved": time.Now().Format("15:04")})
		return nil
	}
	http.Redirect(w, r, "/mitts/"+strconv.FormatInt(id, 10)+below, http.StatusSeeOther)
	return nil
}

// contested is the page of a form that could not be saved, since another
// version was saved in between: both stand on it, and saving once more puts the
// typed one over the other.
func (s *Server) contested(ctx context.Context, id int64, f form) (templ.Component, error) {
	m, saved, err := s.mitt(ctx, id)
	if err != nil {
		return nil, err
	}
	p := s.mittPage(ctx, m, f.doc, view.ChartAsk{})
	p.Conflict = "Another version of this mitt was saved in between."
	was, err := s.before(ctx, id, f.after)
	if err != nil {
		return nil, err
	}
	p.Between = view.Betweens(f.doc, saved, was)
	return view.MittPage(p), nil
}

// before is the document from which a page was made; nil where it is not
// known, as on a page from before a backup was put back.
func (s *Server) before(ctx context.Context, id, revision int64) (*project.Document, error) {
	m, err := s.store.At(ctx, id, revision)
	if fault.KindOf(err) == fault.NotFound {
		return nil, nil
	}
	if err != nil {
		return nil, err
	}
	doc, err := project.Decode(m.Document)
	return &doc, err
}

// refuse shows a form that can't be kept, with what was typed and the message
// at its field.
func (s *Server) refuse(w http.ResponseWriter, r *http.Request, id int64, f form, err error) error {
	var fields fault.Fields
	if wantsJSON(r) || !errors.As(err, &fields) {
		return err
	}
	m, _, err := s.mitt(r.Context(), id)
	if err != nil {
		return err
	}
	p := s.mittPage(r.Context(), m, f.doc, view.ChartAsk{})
	for _, field := range fields {
		p.Answer.Faults[field.Path] = field.Message
	}
	return page(w, r, http.StatusBadRequest, view.MittPage(p))
}

// preview answers a change of the form with the parts of the page that
// follow from it. Nothing is saved.
func (s *Server) preview(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	f, err := readForm(r, m, doc)
	if kept, failed := s.keep(r.Context(), m, doc, f.doc, true); failed != nil {
		return failed
	} else if err == nil {
		f.doc = kept
	}
	answer := s.derive(r.Context(), m, f.doc, chartAsk(r))
	var fields fault.Fields
	if errors.As(err, &fields) {
		for _, field := range fields {
			answer.Faults[field.Path] = field.Message
		}
	} else if err != nil {
		return err
	}
	return page(w, r, http.StatusOK, view.Fragments(answer))
}

func (s *Server) sheetJSON(w http.ResponseWriter, r *http.Request) error {
	_, doc, err := s.load(r)
	if err != nil {
		return err
	}
	w.Header().Set("Content-Type", "application/json")
	_, err = w.Write(doc.Sheet.JSON())
	return err
}
