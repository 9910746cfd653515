package project

import (
	"encoding/json"
	"fmt"
	"slices"

	"thenar/internal/fit"
	"thenar/internal/gauge"
	"thenar/internal/mitt"
	"thenar/internal/words"
	"thenar/internal/yarn"
)

// Format names the version of the plan's JSON.
const Format = "thenar/plan@1"

// report is a plan as JSON; the schema in testdata/plan.schema.json says what
// each key means. Lengths are in mm and not rounded.
type report struct {
	Format    string          `json:"format"`
	Kind      string          `json:"kind"`
	Gauge     reportGauge     `json:"gauge"`
	Ease      reportEase      `json:"ease"`
	Cuff      reportCuff      `json:"cuff"`
	Hand      reportHand      `json:"hand"`
	Gusset    *reportGusset   `json:"gusset"` // null without a thumb, as the two below
	Bridge    *reportBridge   `json:"bridge"`
	Thumb     *reportThumb    `json:"thumb"`
	Top       *reportTop      `json:"top"`
	Residuals reportResiduals `json:"residuals_mm"`
	Yarn      reportYarn      `json:"yarn"`
	Filled    []reportFilled  `json:"filled"`
	Warnings  []reportWarning `json:"warnings"`
	Pins      []reportPin     `json:"pins"`
}

type reportGauge struct {
	Stitches     float64       `json:"stitches_per_mm"`
	Rounds       float64       `json:"rounds_per_mm"`
	RoundsFilled bool          `json:"rounds_filled"`
	StitchHalf   float64       `json:"stitches_half_interval"`
	RoundHalf    float64       `json:"rounds_half_interval"`
	Treated      bool          `json:"in_the_round_and_washed"`
	Swatches     []gauge.Use   `json:"swatches"`
	Queries      []gauge.Query `json:"queries"`
}

type reportEase struct {
	Hand       float64 `json:"hand"`
	Cuff       float64 `json:"cuff"`
	ThumbAdded float64 `json:"thumb_girth_added_mm"`
}

type reportCuff struct {
	CastOn int `json:"cast_on"`
	Rounds int `json:"rounds"`
	Plain  int `json:"plain_rounds"`
}

type reportHand struct {
	Stitches       int `json:"stitches"`
	RoundsAbove    int `json:"rounds_above_gusset"`
	EdgingRounds   int `json:"edging_rounds"`
	EdgingStitches int `json:"edging_stitches"`
}

type reportGusset struct {
	Base           int         `json:"base"`
	Rounds         int         `json:"rounds"`
	IncreaseRounds []int       `json:"increase_rounds"`
	Counts         []int       `json:"counts"`
	Stitches       int         `json:"stitches"`
	KeptOnHand     int         `json:"kept_on_hand"`
	Cost           float64     `json:"cost"`
	Words          string      `json:"words"`
	Ways           []reportWay `json:"ways"`
}

// reportWay is a schedule that could be chosen, against the hand's own shape.
type reportWay struct {
	Follows mitt.Follow `json:"follows"`
	Fixed   bool        `json:"fixed"`
	Rounds  []int       `json:"increase_rounds"`
	Cost    float64     `json:"cost"`
	Mean    float64     `json:"mean_mm"`
	Worst   float64     `json:"worst_mm"`
	Changes int         `json:"rhythm_changes"`
}

// reportPin is a fixed number and what it costs; free is null where there is
// no plan without it.
type reportPin struct {
	Field   string         `json:"field"`
	Value   string         `json:"value"`
	Free    *string        `json:"free"`
	MM      float64        `json:"cost_mm"`
	Changes []reportChange `json:"changes"`
}

type reportChange struct {
	Place string  `json:"place"`
	With  float64 `json:"with_mm"`
	Free  float64 `json:"free_mm"`
}

type reportBridge struct {
	CastOn    int `json:"cast_on"`
	HandAfter int `json:"hand_stitches_after"`
}

type reportThumb struct {
	Held           int `json:"held"`
	PickedUp       int `json:"picked_up"`
	FirstRound     int `json:"stitches_in_first_round"`
	Decreased      int `json:"decreased"`
	Stitches       int `json:"stitches"`
	Rounds         int `json:"rounds"`
	EdgingRounds   int `json:"edging_rounds"`
	EdgingStitches int `json:"edging_stitches"`
}

type reportTop struct {
	Stitches       int    `json:"stitches"`
	Rounds         int    `json:"rounds"`
	DecreaseRounds []int  `json:"decrease_rounds"`
	End            int    `json:"stitches_at_end"`
	Words          string `json:"words"`
}

type reportResiduals struct {
	Hand         float64 `json:"hand"`
	Thumb        float64 `json:"thumb"`
	GussetLength float64 `json:"gusset_length"`
	Crotch       float64 `json:"crotch"`
}

// reportFilled is a value that was not given. One that is no length (an ease,
// rounds over 10 cm) has its number under value, and mm is left out.
type reportFilled struct {
	Field  string   `json:"field"`
	MM     *float64 `json:"mm,omitempty"`
	Value  *float64 `json:"value,omitempty"`
	From   string   `json:"from"`
	Source string   `json:"source"`
}

type reportWarning struct {
	Code    string `json:"code"`
	Message string `json:"message"`
}

// Report writes a plan as JSON, one document without line breaks. Brief
// leaves out the fit.
func (pl *Planner) Report(p *Planned, brief bool) ([]byte, error) {
	m := p.Mitt()
	r := reportOf(p.Plan)
	r.Yarn = reportYarnOf(yarn.Of(p.Plan, m, p.extra.yarn), p.extra.yarn.Ball)
	for _, c := range pl.engine.PinCosts(p.request, p.Plan) {
		r.Pins = append(r.Pins, reportPinOf(&c))
	}
	raw, err := json.Marshal(r)
	if err != nil {
		return nil, fmt.Errorf("project.Report: %w", err)
	}
	if brief {
		return raw, nil
	}
	rows, err := fit.Rows(p.Plan, m, p.extra.bands)
	if err != nil {
		return nil, fmt.Errorf("project.Report: %w", err)
	}
	sum, err := json.Marshal(reportSummaryOf(fit.Sum(p.Plan, rows, p.extra.tolerance), &p.extra))
	if err != nil {
		return nil, fmt.Errorf("project.Report: %w", err)
	}
	raw = slices.Grow(raw[:len(raw)-1], fitBytes*len(rows)+len(sum))
	raw = append(append(raw, `,"fit_summary":`...), sum...)
	return appendFit(raw, rows, p.Gauge.StitchDoubt.Half()), nil
}

func reportPinOf(c *mitt.PinCost) reportPin {
	out := reportPin{Field: "pins." + c.Name, Value: c.Value, MM: c.MM, Changes: make([]reportChange, len(c.Changes))}
	if c.Free != "" {
		out.Free = &c.Free
	}
	for i, ch := range c.Changes {
		out.Changes[i] = reportChange{ch.Place.Words(), ch.With, ch.Free}
	}
	return out
}

func reportOf(p *mitt.Plan) report {
	r := report{
		Format: Format, Kind: string(p.Kind),
		Gauge: reportGauge{
			p.Gauge.Stitches, p.Gauge.Rounds, p.Gauge.RoundsFilled,
			p.Gauge.StitchDoubt.Half(), p.Gauge.RoundDoubt.Half(), p.Gauge.Treated,
			append([]gauge.Use{}, p.Gauge.Uses...), append([]gauge.Query{}, p.Gauge.Queries...),
		},
		Ease:      reportEase(p.Ease),
		Cuff:      reportCuff{p.Cuff.CastOn.N, p.Cuff.Rounds, p.Cuff.PlainRounds},
		Hand:      reportHand{p.Body.Stitches.N, p.Body.RoundsAbove, p.Body.EdgingRounds, p.Body.EdgingStitches},
		Residuals: reportResiduals(p.Residual),
		Filled:    reportFilledOf(p),
		Pins:      []reportPin{},
		Warnings:  make([]reportWarning, len(p.Warnings)),
	}
	if p.Thumbed() {
		r.addThumb(p)
	}
	if top := p.Top; top != nil {
		r.Top = &reportTop{
			top.Stitches, top.Rounds, append([]int{}, top.DecreaseRounds...), top.End,
			words.Schedule(top.DecreaseRounds, top.Stitches, top.End, -4, top.Rounds),
		}
	}
	for i, w := range p.Warnings {
		r.Warnings[i] = reportWarning(w)
	}
	return r
}

// addThumb adds gusset, bridge and thumb.
func (r *report) addThumb(p *mitt.Plan) {
	g, t := &p.Gusset, &p.Thumb
	r.Gusset = &reportGusset{
		Base: g.Base, Rounds: g.Rounds.N, IncreaseRounds: g.IncreaseRounds, Counts: make([]int, g.Rounds.N), Stitches: g.Stitches,
		KeptOnHand: g.Kept, Cost: g.Cost, Words: words.Schedule(g.IncreaseRounds, g.Base, g.Stitches, g.Step, g.Rounds.N),
		Ways: make([]reportWay, len(g.Ways)),
	}
	for i := range r.Gusset.Counts {
		r.Gusset.Counts[i] = g.Count(i + 1)
	}
	for i, w := range g.Ways {
		r.Gusset.Ways[i] = reportWay(w)
	}
	bridge := reportBridge(p.Bridge)
	r.Bridge = &bridge
	r.Thumb = &reportThumb{
		t.Held, t.PickedUp, t.FirstRound, t.Decreased, t.Stitches.N, t.Rounds, t.EdgingRounds, t.EdgingStitches,
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
