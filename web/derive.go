package web

import (
	"context"
	"fmt"
	"net/http"

	"thenar/internal/chart"
	"thenar/internal/project"
	"thenar/internal/store"
	"thenar/web/view"
)

// derive works out a mitt with a document that may not be saved yet.
func (s *Server) derive(ctx context.Context, m store.Mitt, doc project.Document, ask view.ChartAsk) view.Answer {
	pl, done := s.planner()
	defer done()
	out, err := pl.Derive(doc, m.Marks)
	if err == nil {
		if out.Changed, err = s.changed(ctx, pl, m, doc, out); err != nil { // the page does without
			s.log.Error("what a try changed can't be told", "mitt", m.ID, "error", err)
			err = nil
		}
	}
	if err == nil {
		if err = s.markNeedles(ctx, m, doc, out); err != nil {
			s.log.Error("where the work stands can't be told", "mitt", m.ID, "error", err)
			err = nil
		}
	}
	a := view.NewAnswer(doc, out, ask, err)
	if out != nil {
		a.Chart.Page.Revision, a.Chart.Page.Decided, a.Chart.Page.Marks = m.Revision, m.Decided, out.Charts.Marks.Edits()
		a.Chart.Page.CanUndo, a.Chart.Page.CanRedo = m.CanUndo, m.CanRedo
		a.Chart.Page.Href = fmt.Sprintf("/mitts/%d/chart", m.ID)
	}
	return a
}

// chartAsk reads from an address what of a mitt is charted, and how; what is
// unknown is left to the chart.
func chartAsk(r *http.Request) view.ChartAsk {
	q := r.URL.Query()
	return view.ChartAsk{
		Options: chart.Options{View: chart.View(q.Get("view")), Layout: chart.Layout(q.Get("layout")), Middle: q.Get("middle")},
		Square:  q.Get("cells") == "square",
	}
}
