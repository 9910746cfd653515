package web

import (
	"net/http"

	"thenar/internal/fault"
	"thenar/web/view"
)

func (s *Server) shelf(w http.ResponseWriter, r *http.Request) error {
	mitts, err := s.app.Shelf(r.Context())
	if err != nil {
		return err
	}
	return page(w, r, http.StatusOK, view.ShelfPage(view.NewShelf(mitts)))
}

// newMitt begins a mitt: a blank one or the sample.
func (s *Server) newMitt(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	id, err := s.app.NewMitt(r.Context(), r.PostForm.Get("name"), r.PostForm.Get("sample") == "1")
	if err != nil {
		return err
	}
	return toMitt(w, r, id, "")
}

// copyMitt begins a mitt with another's decisions and chart.
func (s *Server) copyMitt(w http.ResponseWriter, r *http.Request) error {
	return copyOf(w, r, s.app.CopyMitt)
}

// beginFrom begins a mitt with another's decisions, without its chart.
func (s *Server) beginFrom(w http.ResponseWriter, r *http.Request) error {
	id, _, err := typed(r)
	if err != nil {
		return err
	}
	pins := r.PostForm.Get("pins")
	if pins != "" && pins != "true" {
		return fault.New(fault.Invalid, "pins: is %.20q; write true, or leave it out", pins)
	}
	made, err := s.app.BeginFrom(r.Context(), id, r.PostForm.Get("name"), pins == "true")
	if err != nil {
		return err
	}
	return toMitt(w, r, made, "")
}

func (s *Server) renameMitt(w http.ResponseWriter, r *http.Request) error {
	id, _, err := typed(r)
	if err != nil {
		return err
	}
	if err := s.app.RenameMitt(r.Context(), id, r.PostForm.Get("name")); err != nil {
		return err
	}
	if to := r.PostForm.Get("to"); view.IsDesk(to) {
		return toMitt(w, r, id, "/desk/"+to)
	}
	return toShelf(w, r)
}

// showHand shows the other hand of a pair, from now on and on every desk.
func (s *Server) showHand(w http.ResponseWriter, r *http.Request) error {
	id, _, err := typed(r)
	if err != nil {
		return err
	}
	side := r.PostForm.Get("side")
	if err := s.app.ShowHand(r.Context(), id, side); err != nil {
		return err
	}
	if to := r.PostForm.Get("to"); view.IsDesk(to) {
		return toMitt(w, r, id, "/desk/"+to+"?side="+side)
	}
	return toMitt(w, r, id, "")
}

func (s *Server) archiveMitt(w http.ResponseWriter, r *http.Request) error {
	id, _, err := typed(r)
	if err != nil {
		return err
	}
	if err := s.app.ArchiveMitt(r.Context(), id, r.PostForm.Get("archived") != "false"); err != nil {
		return err
	}
	return toShelf(w, r)
}

func toShelf(w http.ResponseWriter, r *http.Request) error {
	http.Redirect(w, r, "/", http.StatusSeeOther)
	return nil
}
