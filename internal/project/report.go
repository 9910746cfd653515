package project

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strconv"

	"thenar/internal/fit"
	"thenar/internal/mitt"
	"thenar/internal/words"
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
	Gusset    reportGusset    `json:"gusset"`
	Bridge    reportBridge    `json:"bridge"`
	Thumb     reportThumb     `json:"thumb"`
	Top       *reportTop      `json:"top"`
	Residuals reportResiduals `json:"residuals_mm"`
	Yarn      *struct{}       `json:"yarn"` // not estimated yet
	Filled    []reportFilled  `json:"filled"`
	Warnings  []reportWarning `json:"warnings"`
}

type reportGauge struct {
	Stitches     float64 `json:"stitches_per_mm"`
	Rounds       float64 `json:"rounds_per_mm"`
	RoundsFilled bool    `json:"rounds_filled"`
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
	Base           int     `json:"base"`
	Rounds         int     `json:"rounds"`
	IncreaseRounds []int   `json:"increase_rounds"`
	Counts         []int   `json:"counts"`
	Stitches       int     `json:"stitches"`
	KeptOnHand     int     `json:"kept_on_hand"`
	Cost           float64 `json:"cost"`
	Words          string  `json:"words"`
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
func Report(p *mitt.Plan, brief bool) ([]byte, error) {
	raw, err := json.Marshal(reportOf(p))
	if err != nil {
		return nil, fmt.Errorf("project.Report: %w", err)
	}
	if brief {
		return raw, nil
	}
	rows, err := fit.Rows(p, p.Mitt(), fit.DefaultBands)
	if err != nil {
		return nil, fmt.Errorf("project.Report: %w", err)
	}
	return appendFit(slices.Grow(raw[:len(raw)-1], fitBytes*len(rows)), rows), nil
}

// fitBytes is a little more than a row of the fit takes.
const fitBytes = 170

// appendFit ends an object with the fit rows. They are most of a plan's
// bytes; written by hand they take a sixth of the time of encoding/json.
func appendFit(b []byte, rows []fit.Row) []byte {
	b = append(b, `,"fit":[`...)
	for i, r := range rows {
		if i > 0 {
			b = append(b, ',')
		}
		b = append(b, `{"section":"`...)
		b = append(b, r.Section...)
		b = append(b, `","round":`...)
		b = strconv.AppendInt(b, int64(r.Round), 10)
		b = appendFloat(b, `,"height_mm":`, r.Height)
		b = appendFloat(b, `,"above_cast_on_mm":`, r.AboveCastOn)
		b = appendFloat(b, `,"fabric_mm":`, r.Fabric)
		b = appendFloat(b, `,"body_mm":`, r.Body)
		b = appendFloat(b, `,"stretch":`, r.Stretch)
		b = append(b, '}')
	}
	return append(b, `]}`...)
}

// appendFloat writes a key and a finite number; JSON takes the exponent form
// that very small numbers get.
func appendFloat(b []byte, key string, v float64) []byte {
	b = append(b, key...)
	if math.IsInf(v, 0) || math.IsNaN(v) {
		return append(b, "null"...)
	}
	format := byte('f')
	if a := math.Abs(v); a != 0 && (a < 1e-6 || a >= 1e21) {
		format = 'e'
	}
	return strconv.AppendFloat(b, v, format, -1, 64)
}

func reportOf(p *mitt.Plan) report {
	g, t := &p.Gusset, &p.Thumb
	counts := make([]int, g.Rounds.N)
	for i := range counts {
		counts[i] = g.Count(i + 1)
	}
	r := report{
		Format: Format, Kind: string(p.Kind),
		Gauge:  reportGauge{p.Gauge.Stitches, p.Gauge.Rounds, p.Gauge.RoundsFilled},
		Ease:   reportEase(p.Ease),
		Cuff:   reportCuff{p.Cuff.CastOn.N, p.Cuff.Rounds, p.Cuff.PlainRounds},
		Hand:   reportHand{p.Body.Stitches.N, p.Body.RoundsAbove, p.Body.EdgingRounds, p.Body.EdgingStitches},
		Bridge: reportBridge(p.Bridge),
		Gusset: reportGusset{
			Base: g.Base, Rounds: g.Rounds.N, IncreaseRounds: g.IncreaseRounds, Counts: counts, Stitches: g.Stitches,
			KeptOnHand: g.Kept, Cost: g.Cost, Words: words.Schedule(g.IncreaseRounds, g.Base, g.Stitches, g.Step, g.Rounds.N),
		},
		Thumb: reportThumb{
			t.Held, t.PickedUp, t.FirstRound, t.Decreased, t.Stitches.N, t.Rounds, t.EdgingRounds, t.EdgingStitches,
		},
		Residuals: reportResiduals(p.Residual),
		Filled:    reportFilledOf(p),
		Warnings:  make([]reportWarning, len(p.Warnings)),
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
