package view

import (
	"thenar/internal/mitt"
	"thenar/internal/project"
	"thenar/internal/tryon"
)

// Habit is a habit that was learned, and whether the mitt has use for it.
type Habit struct {
	tryon.Habit
	Usable bool
}

// HabitsFor returns the habits, each with whether the mitt has use for it.
func HabitsFor(list []tryon.Habit, doc project.Document, p *mitt.Plan) []Habit {
	var out []Habit
	for _, h := range list {
		out = append(out, Habit{Habit: h, Usable: len(h.Edits(doc.Sheet, p)) > 0})
	}
	return out
}
