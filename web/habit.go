package web

import (
	"net/http"

	"github.com/go-chi/chi/v5"
)

// useHabits brings the person's habits into a mitt.
func (s *Server) useHabits(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	if err := s.app.UseHabits(r.Context(), id); err != nil {
		return err
	}
	return toMitt(w, r, id, "/desk/try#habits")
}

// removeHabit forgets what was learned about a zone.
func (s *Server) removeHabit(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	if err := s.app.RemoveHabit(r.Context(), chi.URLParam(r, "zone")); err != nil {
		return err
	}
	return toMitt(w, r, id, "/desk/try#habits")
}
