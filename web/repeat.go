package web

import (
	"net/http"
	"strconv"

	"github.com/go-chi/chi/v5"

	"thenar/internal/fault"
	"thenar/web/view"
)

// layMotif lays a motif by rule, from its drawing in letters.
func (s *Server) layMotif(w http.ResponseWriter, r *http.Request) error {
	id, form, err := typed(r)
	if err != nil {
		return err
	}
	if err := s.app.LayMotif(r.Context(), id, form); err != nil {
		return err
	}
	return toMitt(w, r, id, view.LaidBelow)
}

// changeRepeat changes a motif that is laid.
func (s *Server) changeRepeat(w http.ResponseWriter, r *http.Request) error {
	id, form, err := typed(r)
	if err != nil {
		return err
	}
	at, err := strconv.Atoi(chi.URLParam(r, "at"))
	if err != nil || at < 0 {
		return fault.New(fault.NotFound, "There is no motif at this address.")
	}
	if err := s.app.ChangeRepeat(r.Context(), id, at, r.PostForm.Get("do"), form); err != nil {
		return err
	}
	return toMitt(w, r, id, view.LaidBelow)
}
