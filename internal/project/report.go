package project

import (
	"bytes"
	"encoding/json"
	"fmt"

	"thenar/internal/fit"
	"thenar/internal/gauge"
	"thenar/internal/mitt"
	"thenar/internal/words"
	"thenar/internal/yarn"
)

// Format names the version of the plan's JSON.
const Format = "thenar/plan@1"

// Report returns a plan as JSON without line breaks. If brief is set, it leaves
// out the fit.
func (pl *Planner) Report(p *Planned, brief bool) ([]byte, error) {
	return pl.AppendReport(nil, p, brief)
}

// AppendReport appends what Report returns to b, so that a caller with many plans
// to write can use the memory again.
func (pl *Planner) AppendReport(b []byte, p *Planned, brief bool) ([]byte, error) {
	m := p.Mitt()
	r := reportOf(p.Plan)
	r.Yarn = reportYarnOf(yarn.Of(p.Plan, m, p.extra.yarn), p.extra.yarn.Ball, p.extra.terms)
	for _, c := range pl.engine.PinCosts(p.request, p.Plan) {
		r.Pins = append(r.Pins, reportPinOf(&c, p.Plan))
	}
	if len(p.extra.repeats) > 0 {
		r.addRepeats(p, m)
	}
	b, err := pl.appendJSON(b, r)
	if err != nil || brief {
		return b, err
	}
	if pl.rows, err = fit.AppendRows(pl.rows[:0], p.Plan, m, p.extra.bands); err != nil {
		return nil, fmt.Errorf("project.Report: %w", err)
	}
	b = append(b[:len(b)-1], `,"fit_summary":`...)
	if b, err = pl.appendJSON(b, reportSummaryOf(fit.Summarise(p.Plan, pl.rows, p.extra.tolerance), &p.extra)); err != nil {
		return nil, err
	}
	if pl.texts == nil {
		pl.texts = new(fitTexts)
	}
	return pl.texts.appendFit(b, pl.rows, &p.Gauge), nil
}

// appendJSON appends a value as JSON, by way of the planner's buffer.
func (pl *Planner) appendJSON(b []byte, v any) ([]byte, error) {
	pl.buffer.Reset()
	if err := json.NewEncoder(&pl.buffer).Encode(v); err != nil {
		return nil, fmt.Errorf("project.Report: %w", err)
	}
	return append(b, bytes.TrimSuffix(pl.buffer.Bytes(), []byte("\n"))...), nil
}

func reportPinOf(c *mitt.PinCost, p *mitt.Plan) reportPin {
	out := reportPin{Field: c.Number.Path(), Value: c.Value, MM: c.MM, Changes: make([]reportChange, len(c.Changes))}
	if c.Free != "" {
		out.Free = &c.Free
	}
	for i, ch := range c.Changes {
		out.Changes[i] = reportChange{ch.Place.Words(p), ch.With, ch.Free}
	}
	return out
}

func reportOf(p *mitt.Plan) report {
	r := report{
		Format: Format, Kind: string(p.Kind), Made: reportMadeOf(p),
		Gauge: reportGauge{
			p.Gauge.Stitches, p.Gauge.Rounds, p.Gauge.RoundsFilled,
			p.Gauge.StitchDoubt.Half(), p.Gauge.RoundDoubt.Half(), p.Gauge.Treated,
			append([]gauge.Use{}, p.Gauge.Uses...), append([]gauge.Query{}, p.Gauge.Queries...),
		},
		Ease:      reportEase{p.Ease.Hand, p.Ease.Cuff, p.Ease.ThumbAdded},
		Cuff:      reportCuffOf(&p.Cuff),
		Hand:      reportHand{p.Body.Stitches.N, p.Body.RoundsAbove, p.Body.EdgingRounds, p.Body.EdgingStitches, 0, nil},
		Residuals: reportResiduals{Hand: p.Residual.Hand, Thumb: p.Residual.Thumb, GussetLength: p.Residual.GussetLength, Crotch: p.Residual.Crotch},
		Filled:    reportFilledOf(p),
		Pins:      []reportPin{},
		Warnings:  make([]reportWarning, len(p.Warnings)),
	}
	if p.Thumbed() {
		r.addThumb(p)
	}
	if rows := p.OpeningRows(); rows > 0 {
		r.Opening, r.Hand.MoundStretch = &reportOpening{rows, p.OpeningEdge()}, &p.MoundStretch
	}
	if p.Fingered() {
		r.addFingers(p)
	}
	if p.Top != nil {
		r.Top = reportTopOf(p)
	}
	for i, w := range p.Warnings {
		r.Warnings[i] = reportWarning(w)
	}
	return r
}

// reportTopOf is the top of a plan that has one.
func reportTopOf(p *mitt.Plan) *reportTop {
	top := p.Top
	return &reportTop{top.Stitches, top.Rounds, append([]int{}, top.DecreaseRounds...), top.End, words.Top(p)}
}

// addThumb adds the thumb, with gusset and bridge or with what stands in for them.
func (r *report) addThumb(p *mitt.Plan) {
	t := &p.Thumb
	r.Thumb = &reportThumb{
		t.Held, t.PickedUp, t.FirstRound, t.Decreased, t.Stitches.N, t.Rounds, t.EdgingRounds, t.EdgingStitches,
	}
	if p.Gusseted() {
		bridge := reportBridge(p.Bridge)
		r.Bridge = &bridge
		r.addGusset(p)
		return
	}
	r.Hand.RoundsToThumb, r.Hand.MoundStretch = p.Gusset.Rounds.N, &p.MoundStretch
}

func (r *report) addGusset(p *mitt.Plan) {
	g := &p.Gusset
	r.Gusset = &reportGusset{
		Base: g.Base, Rounds: g.Rounds.N, IncreaseRounds: g.IncreaseRounds, Counts: make([]int, g.Rounds.N), Stitches: g.Stitches,
		KeptOnHand: g.Kept, Cost: g.Cost, Words: words.Gusset(p),
		Ways: make([]reportWay, len(g.Ways)),
	}
	for i := range r.Gusset.Counts {
		r.Gusset.Counts[i] = g.Count(i + 1)
	}
	for i, w := range g.Ways {
		r.Gusset.Ways[i] = reportWay(w)
	}
}

func reportFilledOf(p *mitt.Plan) []reportFilled {
	list := make([]reportFilled, 0, len(p.Filled)+len(p.Defaults))
	for _, f := range p.Filled {
		mm := f.Value.MM()
		list = append(list, reportFilled{Field: f.Field, MM: &mm, From: f.From, Source: f.Source})
	}
	for i := range p.Defaults {
		d := &p.Defaults[i]
		r := reportFilled{Field: d.Field, MM: &d.MM, From: d.From, Source: d.Source}
		if d.Ratio != nil {
			r.MM, r.Value = nil, d.Ratio
		}
		list = append(list, r)
	}
	return list
}
