package project

import (
	"errors"

	"thenar/internal/fault"
	"thenar/internal/fit"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/yarn"
)

// Planner derives; it keeps the engine's scratch, so one Planner serves one
// goroutine.
type Planner struct{ engine *mitt.Planner }

// NewPlanner gives a Planner.
func NewPlanner() *Planner { return &Planner{mitt.New()} }

// Planned is a plan with what it was made from.
type Planned struct {
	*mitt.Plan
	request *mitt.Request
	extra   extra
}

// Plan works out the plan of a sheet. What can't be planned is fault.Fields
// that name the fields in the way.
func (pl *Planner) Plan(s sheet.Sheet) (*Planned, error) {
	req, err := s.Request()
	if err != nil {
		return nil, err
	}
	more, faults := extraOf(s.Settings())
	p, err := pl.engine.Plan(req)
	var fields fault.Fields
	if errors.As(err, &fields) {
		return nil, append(fields, faults...)
	}
	if err == nil {
		err = faults.Err()
	}
	if err != nil {
		return nil, err
	}
	return &Planned{p, req, more}, nil
}

// extra is what a sheet decides beside the plan, with its defaults.
type extra struct {
	bands     fit.Bands
	tolerance float64 // mm
	yarn      yarn.Request
}

func extraOf(s sheet.Settings) (extra, fault.Fields) {
	e := extra{bands: fit.DefaultBands, tolerance: fit.Tolerance}
	for _, b := range []struct {
		given *float64
		band  *float64
	}{{s.Loose, &e.bands.Loose}, {s.Snug, &e.bands.Snug}, {s.Tight, &e.bands.Tight}} {
		if b.given != nil {
			*b.band = *b.given
		}
	}
	e.yarn = yarn.Request{
		Ball: yarn.Ball{Length: s.Yarn.BallLength, Mass: s.Yarn.BallMass},
		Swatch: yarn.Swatch{
			Stitches: s.Yarn.Stitches, Rounds: s.Yarn.Rounds, Mass: s.Yarn.SwatchMass, Unravelled: s.Yarn.Unravelled, Kept: s.Yarn.Kept,
		},
	}
	if s.Tolerance != 0 {
		e.tolerance = s.Tolerance.MM()
	}
	return e, e.bands.Check()
}
