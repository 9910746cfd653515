package web

import (
	"net/http"
	"strconv"

	"github.com/go-chi/chi/v5"

	"thenar/internal/fault"
	"thenar/web/view"
)

// showHistory lists the moments of a mitt: the newest, or those before the
// revision that the address names.
func (s *Server) showHistory(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	before := int64(0)
	if text := r.URL.Query().Get("before"); text != "" {
		if before, err = strconv.ParseInt(text, 10, 64); err != nil {
			return fault.New(fault.NotFound, "There is no moment at this address.")
		}
	}
	past, err := s.app.History(r.Context(), id, before)
	if err != nil {
		return err
	}
	list := view.NewHistory(past)
	if back, err := strconv.ParseInt(r.URL.Query().Get("back"), 10, 64); err == nil {
		if list.Brought, err = s.brought(r, id, back); err != nil {
			return err
		}
	}
	return page(w, r, http.StatusOK, view.HistoryPage(list))
}

// brought returns what is said after a moment was brought back.
func (s *Server) brought(r *http.Request, id, revision int64) (*view.Brought, error) {
	then, err := s.app.Moment(r.Context(), id, revision)
	if err != nil {
		return nil, err
	}
	now, err := s.app.OpenMitt(r.Context(), id)
	return view.NewBrought(then, now), err
}

// nameMoment names a revision, or the newest one if the form sends none.
func (s *Server) nameMoment(w http.ResponseWriter, r *http.Request) error {
	id, _, err := typed(r)
	if err != nil {
		return err
	}
	var revision *int64
	if at := r.PostForm.Get("revision"); at != "" {
		n, err := strconv.ParseInt(at, 10, 64)
		if err != nil {
			return fault.New(fault.Invalid, "revision: is %.20q; write a number", at)
		}
		revision = &n
	}
	if err := s.app.NameMoment(r.Context(), id, revision, r.PostForm.Get("name")); err != nil {
		return err
	}
	return toMitt(w, r, id, "/history")
}

// momentID returns the number of the mitt in the address, and the revision.
func momentID(r *http.Request) (id, revision int64, err error) {
	if id, err = mittID(r); err != nil {
		return 0, 0, err
	}
	revision, err = strconv.ParseInt(chi.URLParam(r, "revision"), 10, 64)
	if err != nil {
		return 0, 0, fault.New(fault.NotFound, "There is no moment at this address.")
	}
	return id, revision, nil
}

// showMoment shows a mitt as it stood at a revision.
func (s *Server) showMoment(w http.ResponseWriter, r *http.Request) error {
	id, revision, err := momentID(r)
	if err != nil {
		return err
	}
	m, err := s.app.Moment(r.Context(), id, revision)
	if err != nil {
		return err
	}
	s.logDegraded(r.Context(), m.Lacks)
	return page(w, r, http.StatusOK, view.MomentPage(view.NewMoment(m, chartAsk(r))))
}

// bringBack makes an earlier moment the newest revision.
func (s *Server) bringBack(w http.ResponseWriter, r *http.Request) error {
	id, revision, err := momentID(r)
	if err != nil {
		return err
	}
	if err := s.app.BringBack(r.Context(), id, revision); err != nil {
		return err
	}
	return toMitt(w, r, id, "/history?back="+strconv.FormatInt(revision, 10))
}
