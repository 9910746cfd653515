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
		s.without(ctx, "what a try changed", s.tell(ctx, pl, m, doc, out))
	}
	a := view.NewAnswer(doc, out, ask, err)
	if out != nil {
		a.Chart.Page.Revision, a.Chart.Page.Decided, a.Chart.Page.Marks = m.Revision, m.Decided, out.Charts.Marks.Edits()
		a.Chart.Page.CanUndo, a.Chart.Page.CanRedo = m.CanUndo, m.CanRedo
		a.Chart.Page.Href = fmt.Sprintf("/mitts/%d/chart", m.ID)
	}
	return a
}

// tell adds to outputs what the store knows of the knitting: the rounds that a
// try changed, and the round that is on the needles.
func (s *Server) tell(ctx context.Context, pl *project.Planner, m store.Mitt, doc project.Document, out *project.Outputs) error {
	var err error
	if out.Changed, err = s.changed(ctx, pl, m, doc, out); err != nil {
		return err
	}
	return s.markNeedles(ctx, m, doc, out)
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
