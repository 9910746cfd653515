package web

import (
	"context"
	"errors"
	"io"
	"mime"
	"net/http"
	"slices"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/store"
	"thenar/web/view"
)

// chartAnswer is what a script is told of a chart after a stroke.
type chartAnswer struct {
	Revision int64        `json:"revision"`
	Edits    []chart.Edit `json:"edits"`           // what an undo, a redo or a change of rounds did
	Between  []chart.Edit `json:"between"`         // what others did since "after"
	Later    []chart.Edit `json:"later,omitempty"` // what was done after a stroke that is sent again
	Said     string       `json:"said,omitempty"`  // what a change of rounds has fixed, in words
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

// saveChart takes one stroke, an undo or redo, or a change of the rounds. A
// script is told what it did, and what others did before it; or, with "stale",
// that its chart is not of this file and has to be read anew.
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
	stroke, err := chart.Parse(body)
	if err != nil {
		return err
	}
	request := store.Request{Kind: store.Do, After: stroke.After, Key: stroke.Key, Edits: stroke.Edits, Restored: stroke.Restored, Rewrite: project.Rewrite}
	var applied store.Applied
	if onlyCells(stroke) { // most strokes: the mitt need not be read for them
		applied, err = s.store.Draw(r.Context(), id, request)
	} else {
		applied, err = s.drawWhole(r.Context(), id, stroke, request)
	}
	if errors.Is(err, store.ErrStale) {
		writeJSON(w, http.StatusConflict, map[string]any{"error": []string{fault.Message(err)}, "stale": true})
		return nil
	}
	if err != nil {
		return err
	}
	answer := chartAnswer{
		Revision: applied.Revision, Edits: list(applied.Edits), Between: list(applied.Between), Later: applied.Later,
		CanUndo: applied.CanUndo, CanRedo: applied.CanRedo,
	}
	if stroke.Change != nil {
		answer.Said = view.Fixed(applied.Edits)
	}
	writeJSON(w, http.StatusOK, answer)
	return nil
}

// onlyCells tells whether a stroke sets cells and nothing that the numbers of
// the mitt or the count at the needles follow.
func onlyCells(stroke chart.Stroke) bool {
	marksNeedles := func(e chart.Edit) bool { return e.Layer == chart.Needles }
	return !stroke.Undo && !stroke.Redo && stroke.Change == nil && !slices.ContainsFunc(stroke.Edits, marksNeedles)
}

// drawWhole draws a stroke that may change more than cells.
func (s *Server) drawWhole(ctx context.Context, id int64, stroke chart.Stroke, request store.Request) (store.Applied, error) {
	m, doc, err := s.mitt(ctx, id)
	if err != nil {
		return store.Applied{}, err
	}
	switch {
	case stroke.Undo:
		request.Kind = store.Undo
	case stroke.Redo:
		request.Kind = store.Redo
	case stroke.Change != nil:
		pl, done := s.planner()
		request.Edits, err = pl.Reshape(doc, m.Marks, *stroke.Change)
		done()
		if err != nil {
			return store.Applied{}, err
		}
	}
	applied, err := s.store.Draw(ctx, id, request)
	if err != nil {
		return applied, err
	}
	if err := s.countMarked(ctx, id, doc, applied.Edits); err != nil {
		return applied, err
	}
	return s.keepAfter(ctx, m, doc, applied)
}

// drawEdits draws edits that the server makes itself, of the sheet or of the
// chart, as one stroke that can be undone.
func (s *Server) drawEdits(ctx context.Context, id, after int64, edits []chart.Edit) (store.Applied, error) {
	return s.store.Draw(ctx, id, store.Request{Kind: store.Do, After: after, Edits: edits, Rewrite: project.Rewrite})
}

// keepAfter puts back what is knitted where a stroke of the sheet, or one that
// was taken back, would have it otherwise.
func (s *Server) keepAfter(ctx context.Context, m store.Mitt, was project.Document, applied store.Applied) (store.Applied, error) {
	if len(chart.OfSheet(applied.Edits)) == 0 {
		return applied, nil
	}
	now, err := s.store.Load(ctx, m.ID)
	if err != nil {
		return applied, err
	}
	is, err := project.Decode(now.Document)
	if err != nil {
		return applied, err
	}
	kept, err := s.keep(ctx, m, was, is, false)
	if err != nil {
		return applied, err
	}
	edits := is.Difference(kept)
	if len(edits) == 0 {
		return applied, nil
	}
	more, err := s.drawEdits(ctx, m.ID, applied.Revision, edits)
	if err != nil {
		return applied, err
	}
	more.Edits, more.Between, more.Later = append(applied.Edits, edits...), applied.Between, applied.Later
	return more, nil
}

// list is never null in JSON.
func list(edits []chart.Edit) []chart.Edit {
	if edits == nil {
		return []chart.Edit{}
	}
	return edits
}
