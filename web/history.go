package web

import (
	"net/http"
	"strconv"
	"strings"
	"time"

	"github.com/go-chi/chi/v5"

	"thenar/internal/fault"
	"thenar/internal/plain"
	"thenar/internal/project"
	"thenar/internal/store"
	"thenar/web/view"
)

// maxMoment is the most characters of the name of a moment.
const maxMoment = 60

// showHistory lists the moments of a mitt.
func (s *Server) showHistory(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	revisions, err := s.store.History(r.Context(), m.ID)
	if err != nil {
		return err
	}
	entries := make([]view.Entry, len(revisions))
	for i, e := range revisions {
		entries[i] = view.Entry(e)
	}
	return page(w, r, http.StatusOK, view.HistoryPage(view.NewHistory(m.ID, doc, entries, time.Now(), clock)))
}

// nameMoment gives a revision a name, the newest one if none is said.
func (s *Server) nameMoment(w http.ResponseWriter, r *http.Request) error {
	m, _, err := s.load(r)
	if err != nil {
		return err
	}
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	name := strings.TrimSpace(r.PostForm.Get("name"))
	if why := plain.Line(name, maxMoment); why != "" {
		return fault.New(fault.Invalid, "name: %s", why)
	}
	revision := m.Revision
	if at := r.PostForm.Get("revision"); at != "" {
		if revision, err = strconv.ParseInt(at, 10, 64); err != nil {
			return fault.New(fault.Invalid, "revision: is %.20q; write a number", at)
		}
	}
	if err := s.store.Name(r.Context(), m.ID, revision, name); err != nil {
		return err
	}
	http.Redirect(w, r, "/mitts/"+strconv.FormatInt(m.ID, 10)+"/history", http.StatusSeeOther)
	return nil
}

// at is the mitt of the address as it stood at the revision of the address.
func (s *Server) at(r *http.Request) (store.Mitt, project.Document, error) {
	m, _, err := s.load(r)
	if err != nil {
		return store.Mitt{}, project.Document{}, err
	}
	revision, err := strconv.ParseInt(chi.URLParam(r, "revision"), 10, 64)
	if err != nil {
		return store.Mitt{}, project.Document{}, fault.New(fault.NotFound, "There is no moment at this address.")
	}
	then, err := s.store.At(r.Context(), m.ID, revision)
	if err != nil {
		return store.Mitt{}, project.Document{}, err
	}
	doc, err := project.Decode(then.Document)
	return then, doc, err
}

// showMoment shows a mitt as it stood.
func (s *Server) showMoment(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.at(r)
	if err != nil {
		return err
	}
	return page(w, r, http.StatusOK, view.MomentPage(view.Moment{
		ID: m.ID, Revision: m.Revision, At: clock(m.Changed, time.Now()), Doc: doc, Answer: s.derive(r.Context(), m, doc, chartAsk(r)),
	}))
}

// bringBack makes a moment the newest revision, as one stroke that can be
// undone: sheet, side and chart as they stood.
func (s *Server) bringBack(w http.ResponseWriter, r *http.Request) error {
	then, before, err := s.at(r)
	if err != nil {
		return err
	}
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	if before, err = s.keep(r.Context(), m, doc, before, false); err != nil {
		return err
	}
	edits := append(doc.Difference(before), m.Marks.Difference(then.Marks)...)
	if _, err = s.drawEdits(r.Context(), m.ID, m.Revision, edits); err != nil {
		return err
	}
	http.Redirect(w, r, "/mitts/"+strconv.FormatInt(m.ID, 10)+"#chart", http.StatusSeeOther)
	return nil
}
