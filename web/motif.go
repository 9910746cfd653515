package web

import (
	"io"
	"mime"
	"net/http"
	"strconv"

	"github.com/go-chi/chi/v5"

	"thenar/internal/fault"
)

// showMotifs lists the person's own motifs.
func (s *Server) showMotifs(w http.ResponseWriter, r *http.Request) error {
	list, err := s.app.Motifs(r.Context())
	if err != nil {
		return err
	}
	writeJSON(w, http.StatusOK, list)
	return nil
}

// keepMotif adds a motif to the list of the person.
func (s *Server) keepMotif(w http.ResponseWriter, r *http.Request) error {
	if sent, _, _ := mime.ParseMediaType(r.Header.Get("Content-Type")); sent != "application/json" {
		return fault.New(fault.Invalid, "A motif is sent as application/json.")
	}
	body, err := io.ReadAll(r.Body)
	if err != nil {
		return err
	}
	m, err := s.app.KeepMotif(r.Context(), body)
	if err != nil {
		return err
	}
	writeJSON(w, http.StatusOK, m)
	return nil
}

// removeMotif takes a motif off the list.
func (s *Server) removeMotif(w http.ResponseWriter, r *http.Request) error {
	id, err := strconv.ParseInt(chi.URLParam(r, "motif"), 10, 64)
	if err != nil {
		return fault.New(fault.NotFound, "There is no motif at this address.")
	}
	if err := s.app.RemoveMotif(r.Context(), id); err != nil {
		return err
	}
	writeJSON(w, http.StatusOK, map[string]int64{"removed": id})
	return nil
}
