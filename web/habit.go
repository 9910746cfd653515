package web

import (
	"context"
	"encoding/json"
	"fmt"
	"net/http"
	"slices"

	"github.com/go-chi/chi/v5"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/tryon"
)

// learned are the person's habits, from the tries of all mitts.
func (s *Server) learned(ctx context.Context) ([]tryon.Habit, error) {
	list, err := s.store.Tries(ctx, 0)
	if err != nil || len(list) == 0 {
		return nil, err
	}
	unlearned, err := s.store.Unlearned(ctx)
	if err != nil {
		return nil, err
	}
	stands, err := s.tried(ctx)
	if err != nil {
		return nil, err
	}
	var judged []tryon.GivenAnswer
	for _, t := range list {
		if t.Verdict == nil || !stands[t.ID] {
			continue
		}
		j := tryon.GivenAnswer{ID: t.Verdict.ID, Mitt: t.Mitt}
		if err := json.Unmarshal(t.Verdict.Answer, &j.Answer); err != nil {
			return nil, fmt.Errorf("verdict %d: %w", t.Verdict.ID, err)
		}
		judged = append(judged, j)
	}
	slices.SortFunc(judged, func(a, b tryon.GivenAnswer) int { return int(a.ID - b.ID) })
	return tryon.Learn(judged, unlearned), nil
}

// tried are the tries whose corrections stand in their mitts.
func (s *Server) tried(ctx context.Context) (map[int64]bool, error) {
	mitts, err := s.store.List(ctx)
	if err != nil {
		return nil, err
	}
	stands := map[int64]bool{}
	for _, m := range mitts {
		doc, err := project.Decode(m.Document)
		if err != nil {
			return nil, err
		}
		for _, id := range doc.Sheet.Tried() {
			stands[id] = true
		}
	}
	return stands, nil
}

// useHabits brings the person's habits into a mitt, as one stroke: into those
// zones of which nothing was decided yet.
func (s *Server) useHabits(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	pl, done := s.planner()
	defer done()
	p, err := pl.Plan(doc.Effective())
	if err != nil {
		return err
	}
	list, err := s.learned(r.Context())
	if err != nil {
		return err
	}
	var edits []chart.Edit
	for _, h := range list {
		for _, e := range h.Edits(doc.Sheet, p.Plan) {
			edits = append(edits, chart.Edit{Layer: chart.Sheet, Column: e.Path, Value: e.Text})
		}
	}
	if _, err := s.drawEdits(r.Context(), m.ID, m.Revision, edits); err != nil {
		return err
	}
	http.Redirect(w, r, fmt.Sprintf("/mitts/%d/tries#habits", m.ID), http.StatusSeeOther)
	return nil
}

// removeHabit takes off what was learned of a zone.
func (s *Server) removeHabit(w http.ResponseWriter, r *http.Request) error {
	m, _, err := s.load(r)
	if err != nil {
		return err
	}
	zone := tryon.Zone(chi.URLParam(r, "zone"))
	if !slices.Contains(tryon.Zones(), zone) {
		return fault.New(fault.NotFound, "There is no zone %.20q of a mitt.", string(zone))
	}
	if err := s.store.Unlearn(r.Context(), string(zone)); err != nil {
		return err
	}
	http.Redirect(w, r, fmt.Sprintf("/mitts/%d/tries#habits", m.ID), http.StatusSeeOther)
	return nil
}
