package web

import (
	"context"
	"fmt"
	"net/http"
	"time"

	"thenar/internal/chart"
	"thenar/internal/project"
	"thenar/internal/store"
	"thenar/web/view"
)

// derive works out a mitt with a document that may not be saved yet.
func (s *Server) derive(ctx context.Context, m store.Mitt, doc project.Document, ask view.ChartAsk) view.Answer {
	out, err := s.outputs(ctx, m, doc)
	if out != nil {
		s.without(ctx, "what a try changed", err)
		err = nil
	}
	a := view.NewAnswer(doc, out, ask, err)
	if out != nil {
		a.Chart.Page.Revision, a.Chart.Page.Decided, a.Chart.Page.Marks = m.Revision, m.Decided, out.Charts.Marks.Edits()
		a.Chart.Page.CanUndo, a.Chart.Page.CanRedo, a.Chart.Page.Restored = m.CanUndo, m.CanRedo, m.Restored
		a.Chart.Page.Mitt = m.Created.Format(time.RFC3339Nano)
		a.Chart.Page.Href = fmt.Sprintf("/mitts/%d/chart", m.ID)
	}
	return a
}

// outputs works out a mitt, with what the store knows of its knitting: the
// rounds that a try changed, and the round that is on the needles. Where only
// that can't be told, the outputs stand beside the error.
func (s *Server) outputs(ctx context.Context, m store.Mitt, doc project.Document) (*project.Outputs, error) {
	pl, done := s.planner()
	defer done()
	out, err := pl.Derive(doc, m.Marks)
	if err != nil {
		return nil, err
	}
	if out.Changed, err = s.changed(ctx, pl, m, doc, out); err != nil {
		return out, err
	}
	return out, s.markNeedles(ctx, m, doc, out)
}

// without writes down what a page has to do without, unless it is only that
// nobody waits for it any more.
func (s *Server) without(ctx context.Context, what string, err error) {
	if err != nil && ctx.Err() == nil {
		s.log.Error("a page does without "+what, "error", err)
	}
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
