package app

import (
	"thenar/internal/project"
	"thenar/internal/sheet"
)

// MaxSheet is the most bytes in a measure sheet.
const MaxSheet = sheet.Largest

// PlanSheet returns the plan of a measure sheet, both as JSON. brief leaves out
// the fit round by round.
func PlanSheet(raw []byte, brief bool) ([]byte, error) {
	return appendPlan(nil, project.NewPlanner(), raw, brief)
}

// appendPlan appends the plan of a sheet to b.
func appendPlan(b []byte, pl *project.Planner, raw []byte, brief bool) ([]byte, error) {
	s, err := sheet.Parse(raw)
	if err != nil {
		return nil, err
	}
	p, err := pl.Plan(s)
	if err != nil {
		return nil, err
	}
	return pl.AppendReport(b, p, brief)
}
