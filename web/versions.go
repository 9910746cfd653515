package web

import (
	"net/http"
	"strconv"

	"github.com/go-chi/chi/v5"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/web/view"
)

// showVersions shows the patterns of a mitt that went out.
func (s *Server) showVersions(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	v, err := s.app.OpenVersions(r.Context(), id)
	if err != nil {
		return err
	}
	return page(w, r, http.StatusOK, view.VersionsPage(view.Versions{Versions: v}))
}

// sendVersion keeps the pattern as it is as a version. What can't be kept comes back with the
// name that was typed.
func (s *Server) sendVersion(w http.ResponseWriter, r *http.Request) error {
	id, _, err := typed(r)
	if err != nil {
		return err
	}
	name := r.PostForm.Get("name")
	_, failed := s.app.SendVersion(r.Context(), id, name, r.PostForm.Get("stamp"))
	if failed == nil {
		return toMitt(w, r, id, view.VersionsBelow)
	}
	status := http.StatusBadRequest
	switch fault.KindOf(failed) {
	case fault.Conflict:
		status = http.StatusConflict
	case fault.Invalid:
	default:
		return failed
	}
	v, err := s.app.OpenVersions(r.Context(), id)
	if err != nil {
		return err
	}
	return page(w, r, status, view.VersionsPage(view.Versions{Versions: v, Name: name, Message: fault.Message(failed)}))
}

// since reads what changed since the version in the address.
func (s *Server) since(r *http.Request) (app.Since, error) {
	id, err := mittID(r)
	if err != nil {
		return app.Since{}, err
	}
	number, err := strconv.ParseInt(chi.URLParam(r, "number"), 10, 64)
	if err != nil {
		return app.Since{}, fault.New(fault.NotFound, "There is no version %.20q.", chi.URLParam(r, "number"))
	}
	return s.app.SinceVersion(r.Context(), id, number)
}

// showSince shows what changed since a version.
func (s *Server) showSince(w http.ResponseWriter, r *http.Request) error {
	since, err := s.since(r)
	if err != nil {
		return err
	}
	return page(w, r, http.StatusOK, view.SincePage(since))
}

// downloadErrata sends what changed since a version as plain text.
func (s *Server) downloadErrata(w http.ResponseWriter, r *http.Request) error {
	since, err := s.since(r)
	if err != nil {
		return err
	}
	w.Header().Set("Content-Type", "text/plain; charset=utf-8")
	keepAs(w, "attachment", since.Doc.Name+", since version "+strconv.FormatInt(since.Version.Number, 10), ".txt")
	_, err = w.Write([]byte(since.Errata()))
	return err
}
