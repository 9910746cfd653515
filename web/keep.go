package web

import (
	"context"
	"errors"

	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/store"
)

// keep is a changed document with the rounds that are counted already, of both
// hands, as they were knitted by the document before: whatever is changed
// plans the rest. A form may let go of a hand's work: then it is planned anew.
func (s *Server) keep(ctx context.Context, m store.Mitt, was, is project.Document, form bool) (project.Document, error) {
	pl, done := s.planner()
	defer done()
	var hands []project.Knitted
	for _, side := range []project.Side{opposite(is.Side), is.Side} {
		before, after := was, is
		before.Side, after.Side = side, side
		if form && letsGo(before, after) {
			continue
		}
		at, p, err := s.standing(ctx, pl, m, before)
		var fields fault.Fields
		switch {
		case errors.As(err, &fields): // there was no plan to knit by
		case err != nil:
			return is, err
		default:
			hands = append(hands, project.Knitted{Side: side, Plan: p, At: at})
		}
	}
	return pl.Keep(is, hands), nil
}

// letsGo tells whether a change takes out the work that a hand's plan kept.
func letsGo(was, is project.Document) bool {
	return was.Sheet.InForce(string(was.Side)) != "" && is.Sheet.InForce(string(is.Side)) == ""
}

// startOver sets the count of a hand that was let go of to its cast-on.
func (s *Server) startOver(ctx context.Context, id int64, was, is project.Document) error {
	was.Side = is.Side
	if !letsGo(was, is) {
		return nil
	}
	return s.store.NoteCount(ctx, id, store.Count{Key: newKey(), Side: string(is.Side)})
}
