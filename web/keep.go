package web

import (
	"context"
	"crypto/rand"
	"errors"

	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/store"
	"thenar/internal/tryon"
)

// keep is a changed document with the rounds that are counted already, of both
// hands, as they were knitted by the document before: whatever is changed
// plans the rest. A form may let go of a hand's work: then it is planned anew.
func (s *Server) keep(ctx context.Context, m store.Mitt, was, is project.Document, form bool) (project.Document, error) {
	pl, done := s.planner()
	defer done()
	var hands []project.Knitted
	for _, side := range []project.Side{is.Side.Other(), is.Side} {
		if form && letsGo(was, is, side) {
			continue
		}
		h, err := s.knitted(ctx, pl, m, was, side)
		var fields fault.Fields
		switch {
		case errors.As(err, &fields): // there was no plan to knit by
		case err != nil:
			return is, err
		default:
			hands = append(hands, h)
		}
	}
	return pl.Keep(is, hands), nil
}

// knitted is what is on the needles of one hand, by its count and by the plan
// that a document has for it. A hand that is not begun needs no plan.
func (s *Server) knitted(ctx context.Context, pl *project.Planner, m store.Mitt, doc project.Document, side project.Side) (project.Knitted, error) {
	h := project.Knitted{Side: side}
	c, begun, err := s.store.Standing(ctx, m.ID, string(side))
	if err != nil || !begun || c.Section == "" {
		return h, err
	}
	doc.Side = side
	if h.Plan, err = pl.Plan(doc.Effective()); err != nil {
		return h, err
	}
	is := h.Plan.Mitt()
	h.At = tryon.PlaceAfter(is, reached(c, tryon.Tasks(is)))
	return h, nil
}

// letsGo tells whether a change takes out the work that a hand's plan kept.
func letsGo(was, is project.Document, side project.Side) bool {
	return was.Sheet.InForce(string(side)) != "" && is.Sheet.InForce(string(side)) == ""
}

// startOver sets the count of a hand that was let go of to its cast-on.
func (s *Server) startOver(ctx context.Context, id int64, was, is project.Document) error {
	if !letsGo(was, is, is.Side) {
		return nil
	}
	return s.store.NoteCount(ctx, id, store.Count{Key: rand.Text(), Side: string(is.Side)})
}
