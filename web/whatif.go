package web

import (
	"context"
	"net/http"

	"thenar/internal/fault"
	"thenar/web/view"
)

func (s *Server) showWhatIf(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	both, err := s.app.WhatIf(r.Context(), id)
	if err != nil {
		return err
	}
	s.logDegraded(r.Context(), both.Variant.Lacks)
	return page(w, r, http.StatusOK, view.WhatIfPage(view.NewWhatIf(both)))
}

// saveWhatIf saves the form of the second variant.
func (s *Server) saveWhatIf(w http.ResponseWriter, r *http.Request) error {
	id, form, err := typed(r)
	if err != nil {
		return err
	}
	revision, err := s.app.SaveWhatIf(r.Context(), id, form)
	if fault.KindOf(err) == fault.Conflict && !wantsJSON(r) {
		u, err := s.app.UnsavedWhatIf(r.Context(), id, form)
		if err != nil {
			return err
		}
		return page(w, r, http.StatusConflict, view.WhatIfPage(view.NewContestedWhatIf(u)))
	}
	return saved(w, r, id, revision, err, "/what-if")
}

// previewWhatIf answers a change of the second variant with the fragments of
// the page that follow from it. Nothing is saved.
func (s *Server) previewWhatIf(w http.ResponseWriter, r *http.Request) error {
	id, form, err := typed(r)
	if err != nil {
		return err
	}
	both, err := s.app.PreviewWhatIf(r.Context(), id, form)
	if err != nil {
		return err
	}
	s.logDegraded(r.Context(), both.Variant.Lacks)
	return page(w, r, http.StatusOK, view.WhatIfFragments(view.NewWhatIf(both)))
}

// takeWhatIf makes the second variant the mitt.
func (s *Server) takeWhatIf(w http.ResponseWriter, r *http.Request) error {
	return changeMitt(w, r, "", s.app.TakeWhatIf)
}

func (s *Server) dropWhatIf(w http.ResponseWriter, r *http.Request) error {
	return changeMitt(w, r, "", s.app.DropWhatIf)
}

// changeMitt carries out a change of the mitt in the address, and redirects to
// its page.
func changeMitt(w http.ResponseWriter, r *http.Request, below string, change func(context.Context, int64) error) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	if err := change(r.Context(), id); err != nil {
		return err
	}
	return toMitt(w, r, id, below)
}

// copyWhatIf begins a new mitt with the second variant.
func (s *Server) copyWhatIf(w http.ResponseWriter, r *http.Request) error {
	return copyOf(w, r, s.app.CopyWhatIf)
}

// copyOf begins a mitt from the one in the address, and redirects to it.
func copyOf(w http.ResponseWriter, r *http.Request, begin func(context.Context, int64) (int64, error)) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	made, err := begin(r.Context(), id)
	if err != nil {
		return err
	}
	return toMitt(w, r, made, "")
}
