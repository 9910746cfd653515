package project

import (
	"thenar/internal/mitt"
	"thenar/internal/sheet"
)

// Planner derives; it keeps the engine's scratch, so one Planner serves one
// goroutine.
type Planner struct{ engine *mitt.Planner }

// NewPlanner gives a Planner.
func NewPlanner() *Planner { return &Planner{mitt.New()} }

// Plan works out the plan of a sheet. What can't be planned is fault.Fields
// that name the fields in the way.
func (pl *Planner) Plan(s sheet.Sheet) (*mitt.Plan, error) {
	req, err := s.Request()
	if err != nil {
		return nil, err
	}
	return pl.engine.Plan(req)
}
