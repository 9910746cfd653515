package web

import (
	"io"
	"mime"
	"net/http"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/store"
)

// chartAnswer is what a script is told of a chart after a stroke.
type chartAnswer struct {
	Revision int64        `json:"revision"`
	Edits    []chart.Edit `json:"edits"`   // what an undo or redo did
	Between  []chart.Edit `json:"between"` // what others did since "after"
	CanUndo  bool         `json:"can_undo"`
	CanRedo  bool         `json:"can_redo"`
}

// showChart gives the strokes of a chart as one list of edits.
func (s *Server) showChart(w http.ResponseWriter, r *http.Request) error {
	m, _, err := s.load(r)
	if err != nil {
		return err
	}
	writeJSON(w, http.StatusOK, chartAnswer{
		Revision: m.Revision, Edits: m.Marks.Edits(), Between: []chart.Edit{}, CanUndo: m.CanUndo, CanRedo: m.CanRedo,
	})
	return nil
}

// saveChart takes one stroke, or an undo or redo.
func (s *Server) saveChart(w http.ResponseWriter, r *http.Request) error {
	if sent, _, _ := mime.ParseMediaType(r.Header.Get("Content-Type")); sent != "application/json" {
		return fault.New(fault.Invalid, "A chart's strokes are sent as application/json.")
	}
	m, _, err := s.load(r)
	if err != nil {
		return err
	}
	body, err := io.ReadAll(r.Body)
	if err != nil {
		return err
	}
	stroke, err := chart.Parse(body)
	if err != nil {
		return err
	}
	var applied store.Applied
	switch {
	case stroke.Undo:
		applied, err = s.store.Undo(r.Context(), m.ID, stroke.After)
	case stroke.Redo:
		applied, err = s.store.Redo(r.Context(), m.ID, stroke.After)
	default:
		applied, err = s.store.Append(r.Context(), m.ID, stroke.After, stroke.Edits)
	}
	if err != nil {
		return err
	}
	writeJSON(w, http.StatusOK, chartAnswer{
		Revision: applied.Revision, Edits: list(applied.Edits), Between: list(applied.Between),
		CanUndo: applied.CanUndo, CanRedo: applied.CanRedo,
	})
	return nil
}

// list is never null in JSON.
func list(edits []chart.Edit) []chart.Edit {
	if edits == nil {
		return []chart.Edit{}
	}
	return edits
}
