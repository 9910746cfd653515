package project

import (
	"bytes"
	"cmp"
	"errors"
	"maps"
	"slices"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/fit"
	"thenar/internal/mitt"
	"thenar/internal/repeat"
	"thenar/internal/sheet"
	"thenar/internal/words"
	"thenar/internal/yarn"
)

// Planner plans sheets and derives all that follows. It keeps scratch memory
// between plans and reports, so one Planner serves one goroutine.
type Planner struct {
	engine *mitt.Planner
	rows   []fit.Row
	texts  *fitTexts // once a fit is written
	buffer bytes.Buffer

	remembers bool
	recent    []Made // the last plans, if it remembers them
	counted   Counted
}

// Made is a sheet with the plan that was made of it, or the reason why there is
// none. It is never changed, so that many may share it.
type Made struct {
	sheet sheet.Sheet
	plan  *Planned
	err   error
}

// maxRecent is the number of plans that a Planner remembers.
const maxRecent = 8

// Counted is the number of plans worked out for what was asked, and the number
// worked out in the search for a place to rip back to. The trial plans that show
// what fixed numbers cost are not counted.
type Counted struct{ Plans, Searched int }

// Begin begins a request. Until End the planner remembers its plans, so that no
// sheet is planned twice: a plan depends on its sheet alone.
func (pl *Planner) Begin() { pl.remembers, pl.counted = true, Counted{} }

// End ends a request, forgets its plans, and returns how many were made.
func (pl *Planner) End() Counted {
	clear(pl.recent)
	pl.remembers, pl.recent = false, pl.recent[:0]
	return pl.counted
}

// NewPlanner returns a Planner.
func NewPlanner() *Planner { return &Planner{engine: mitt.New()} }

// Planned is a plan with what it was made from.
type Planned struct {
	*mitt.Plan
	request *mitt.Request
	extra   extra
}

// Plan works out the plan of a sheet. If there is none, it returns fault.Fields
// that name the fields in the way.
func (pl *Planner) Plan(s sheet.Sheet) (*Planned, error) {
	if !pl.remembers {
		return pl.plan(s)
	}
	if m, ok := pl.Made(s); ok {
		return m.plan, m.err
	}
	p, err := pl.plan(s)
	pl.counted.Plans++
	pl.Recall(Made{s.Clone(), p, err})
	return p, err
}

// Recall makes the planner remember plans, such as those of another request.
func (pl *Planner) Recall(list ...Made) {
	pl.recent = append(pl.recent, list...)
	if over := len(pl.recent) - maxRecent; over > 0 {
		pl.recent = slices.Delete(pl.recent, 0, over)
	}
}

// Made returns the plan of a sheet if the planner remembers it.
func (pl *Planner) Made(s sheet.Sheet) (Made, bool) {
	at := slices.IndexFunc(pl.recent, func(m Made) bool { return maps.Equal(m.sheet, s) })
	if at < 0 {
		return Made{}, false
	}
	return pl.recent[at], true
}

func (pl *Planner) plan(s sheet.Sheet) (*Planned, error) {
	req, err := s.Request()
	if err != nil {
		return nil, err
	}
	more, faults := extraOf(s.Settings())
	more.terms, more.repeats = words.TermsOf(s.Given(sheet.PathTerms)), s.Repeats()
	more.knitted = map[Side]repeat.Worked{Right: s.Knitted(string(Right)), Left: s.Knitted(string(Left))}
	p, err := pl.engine.Plan(req)
	var fields fault.Fields
	if errors.As(err, &fields) {
		for i := range fields {
			fields[i].Message = more.terms.Say(fields[i].Message)
		}
		return nil, append(fields, faults...)
	}
	if err == nil {
		err = faults.Err()
	}
	if err != nil {
		return nil, err
	}
	for i := range p.Warnings {
		p.Warnings[i].Message = more.terms.Say(p.Warnings[i].Message)
	}
	return &Planned{p, req, more}, nil
}

// extra is what a sheet decides beside the plan, with defaults filled in.
type extra struct {
	bands     fit.Bands
	tolerance float64 // mm
	yarn      yarn.Request
	terms     words.Terms
	chart     sheet.Chart
	palette   chart.Palette
	repeats   []sheet.Numbered
	knitted   map[Side]repeat.Worked // rounds of each hand that stay as they were worked
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
	e.chart, e.palette = s.Chart, palette(s.Chart.Yarns[:])
	if s.Tolerance != 0 {
		e.tolerance = s.Tolerance.MM()
	}
	return e, e.bands.Check()
}

// rules returns the limits that colour work keeps to at the plan's gauge.
func (e extra) rules(p *mitt.Plan) chart.Rules {
	return chart.Rules{
		Colours: cmp.Or(e.chart.Colours, chart.DefaultColours),
		Float:   chart.FloatRule(cmp.Or(e.chart.Float, chart.DefaultFloat), p.Gauge.Stitches),
	}
}
