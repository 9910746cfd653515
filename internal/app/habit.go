package app

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/store"
	"thenar/internal/tryon"
)

// learned returns the person's habits, learned from the tries whose corrections
// are in their mitts.
func learned(h store.Habits) ([]tryon.Habit, error) {
	stands := map[int64]bool{}
	for _, m := range h.Mitts {
		doc, err := project.Decode(m.Document)
		if err != nil {
			return nil, err
		}
		for _, id := range doc.Sheet.Tried() {
			stands[id] = true
		}
	}
	var answered []tryon.GivenAnswer
	for _, t := range h.Tries {
		if t.Answer == nil || !stands[t.ID] {
			continue
		}
		one := tryon.GivenAnswer{ID: t.Answer.ID, Mitt: t.Mitt}
		if err := json.Unmarshal(t.Answer.Text, &one.Answer); err != nil {
			return nil, fmt.Errorf("answer %d: %w", t.Answer.ID, err)
		}
		answered = append(answered, one)
	}
	slices.SortFunc(answered, func(a, b tryon.GivenAnswer) int { return int(a.ID - b.ID) })
	return tryon.Learn(answered, h.Unlearned), nil
}

// UseHabits brings the person's habits into the zones of a mitt that nothing
// was decided about yet, as one stroke that can be undone.
func (a *App) UseHabits(ctx context.Context, id int64) error {
	_, err := a.change(ctx, id, store.Wants{Habits: true}, func(w *work, pl *project.Planner) (store.Change, error) {
		p, err := pl.Plan(w.doc.Effective())
		if err != nil {
			return store.Change{}, err
		}
		list, err := learned(w.Habits)
		if err != nil {
			return store.Change{}, err
		}
		var edits []chart.Edit
		for _, h := range list {
			for _, e := range h.Edits(w.doc.Sheet, p.Plan) {
				edits = append(edits, chart.Edit{Layer: chart.Sheet, Column: e.Path, Value: e.Text})
			}
		}
		return w.stroke(edits), nil
	})
	return err
}

// RemoveHabit forgets what was learned about a zone, for all mitts. What is
// learned about it later counts again.
func (a *App) RemoveHabit(ctx context.Context, zone string) error {
	if !slices.Contains(tryon.Zones(), tryon.Zone(zone)) {
		return fault.New(fault.NotFound, "There is no zone %.20q of a mitt.", zone)
	}
	return a.store.Unlearn(ctx, zone)
}
