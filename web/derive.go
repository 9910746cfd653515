package web

import (
	"fmt"

	"thenar/internal/project"
	"thenar/internal/store"
	"thenar/web/view"
)

// derive works out a mitt with a document that may not be saved yet.
func (s *Server) derive(m store.Mitt, doc project.Document) view.Answer {
	pl, done := s.planner()
	defer done()
	out, err := pl.Derive(doc, m.Marks)
	a := view.NewAnswer(doc, out, err)
	if out != nil {
		a.Chart.Page.Revision, a.Chart.Page.Marks = m.Revision, m.Marks.Edits()
		a.Chart.Page.CanUndo, a.Chart.Page.CanRedo = m.CanUndo, m.CanRedo
		a.Chart.Page.Href = fmt.Sprintf("/mitts/%d/chart", m.ID)
	}
	return a
}
