package web

import (
	"io"
	"mime"
	"net/http"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/web/view"
)

// showChart answers with everything drawn on a chart, as one list of edits.
func (s *Server) showChart(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	drawn, err := s.app.Chart(r.Context(), id)
	if err != nil {
		return err
	}
	writeJSON(w, http.StatusOK, drawn)
	return nil
}

// saveChart takes one stroke, an undo or redo, or a change of the rounds. The
// script is told what it did and what others did before it; or, with "stale",
// that its chart belongs to another file and has to be read anew.
func (s *Server) saveChart(w http.ResponseWriter, r *http.Request) error {
	if sent, _, _ := mime.ParseMediaType(r.Header.Get("Content-Type")); sent != "application/json" {
		return fault.New(fault.Invalid, "A chart's strokes are sent as application/json.")
	}
	id, err := mittID(r)
	if err != nil {
		return err
	}
	body, err := io.ReadAll(r.Body)
	if err != nil {
		return err
	}
	drawn, err := s.app.Draw(r.Context(), id, body)
	if app.Stale(err) {
		writeJSON(w, http.StatusConflict, map[string]any{"error": []string{fault.Message(err)}, "stale": true})
		return nil
	}
	if err != nil {
		return err
	}
	if drawn.Reshaped {
		drawn.Said = view.Fixed(drawn.Names, drawn.Edits)
	}
	writeJSON(w, http.StatusOK, drawn)
	return nil
}
