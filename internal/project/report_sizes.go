package project

import (
	"cmp"
	"encoding/json"
	"math"
	"slices"

	"thenar/internal/fault"
	"thenar/internal/grade"
	"thenar/internal/mitt"
)

// SizesFormat names the version of a graded design's JSON.
const SizesFormat = "thenar/sizes@1"

// sizesReport is a graded design as JSON. The schema in testdata/sizes.schema.json
// says what each key means.
type sizesReport struct {
	Format string       `json:"format"`
	Kind   string       `json:"kind"`
	Text   reportText   `json:"text"`
	Sizes  []reportSize `json:"sizes"`
	Worst  []reportOff  `json:"worst"`

	Common  map[string]any `json:"common"`
	Differ  []string       `json:"differ"`
	Same    []string       `json:"same_as_neighbour"`
	Raised  []reportRaised `json:"raised"`
	Notches []reportStep   `json:"notches"`
}

// reportRaised is a number that is held at that of the size before.
type reportRaised struct {
	Size   string  `json:"size"`
	Number string  `json:"number"`
	From   int     `json:"from"`
	To     int     `json:"to"`
	MM     float64 `json:"mm"`
}

// reportStep is a place where the answer changes.
type reportStep struct {
	Price   float64 `json:"price_mm2"`
	Changes int     `json:"changes"`
	Most    float64 `json:"most_mm"`
}

type reportText struct {
	Changes int           `json:"changes"`
	Barred  bool          `json:"gusset_never_falls"`
	Notches []reportNotch `json:"notches"`
	Splits  []reportSplit `json:"numbers"`
}

type reportNotch struct {
	From    float64   `json:"from_price_mm2"`
	FromMM  float64   `json:"from_price_root_mm"`
	Changes int       `json:"changes"`
	Cost    float64   `json:"cost_mm2"`
	Pays    []float64 `json:"pays_mm"`
	Taken   bool      `json:"taken"`
}

type reportSplit struct {
	Number string        `json:"number"`
	Groups []reportGroup `json:"groups"`
}

type reportGroup struct {
	Sizes []string `json:"sizes"`
	Value int      `json:"value"`
}

type reportSize struct {
	Name   string          `json:"name"`
	Cannot []string        `json:"cannot,omitempty"`
	Own    []int           `json:"own_text,omitempty"`
	Text   []int           `json:"text,omitempty"`
	Pays   float64         `json:"pays_mm"`
	Common float64         `json:"common_mm"`
	Best   float64         `json:"own_mm"`
	Same   bool            `json:"same_as_size_before"`
	Falls  []reportFall    `json:"falls"`
	Plan   json.RawMessage `json:"plan"`
}

type reportFall struct {
	Number string  `json:"number"`
	From   int     `json:"from"`
	To     int     `json:"to"`
	Held   bool    `json:"held"`
	MM     float64 `json:"mm"`
}

type reportOff struct {
	Size  string  `json:"size"`
	Place string  `json:"place"`
	MM    float64 `json:"mm"`
}

// AppendSizes appends a graded design to b as JSON without line breaks: what the common
// text costs at each notch and whom, each size with its plan as Report has it, and
// where each size is furthest from its hand, the worst first.
func (pl *Planner) AppendSizes(b []byte, g *grade.Graded) ([]byte, error) {
	notch := g.Notches[g.At]
	r := sizesReport{
		Format: SizesFormat, Kind: string(g.Design.Sheet.Kind()), Sizes: make([]reportSize, len(g.Sizes)), Worst: []reportOff{},
		Common: map[string]any{}, Differ: []string{}, Same: []string{}, Raised: []reportRaised{}, Notches: []reportStep{},
		Text: reportText{Changes: notch.Changes, Barred: g.Barred, Notches: make([]reportNotch, len(g.Notches)), Splits: make([]reportSplit, len(g.Splits))},
	}
	for i, n := range g.Notches {
		r.Text.Notches[i] = reportNotch{n.From, math.Sqrt(n.From), n.Changes, n.Cost, n.Pays, i == g.At}
		r.Notches = append(r.Notches, reportStep{n.From, n.Changes, slices.Max(n.Pays)})
	}
	r.common(g)
	for i, s := range g.Splits {
		r.Text.Splits[i] = reportSplit{Number: s.Number.Key(), Groups: []reportGroup{}}
		for _, group := range s.Groups {
			r.Text.Splits[i].Groups = append(r.Text.Splits[i].Groups, reportGroup(group))
		}
	}
	for i := range g.Sizes {
		size, err := pl.reportSizeOf(&g.Sizes[i])
		if err != nil {
			return nil, err
		}
		r.Sizes[i] = size
		s := &g.Sizes[i]
		if s.Same {
			r.Same = append(r.Same, s.Name)
		}
		for _, f := range s.Falls {
			if f.Held {
				r.Raised = append(r.Raised, reportRaised{s.Name, f.Number.Key(), f.To, f.From, f.MM})
			}
		}
		if s.Plan != nil && s.Off != 0 {
			r.Worst = append(r.Worst, reportOff{s.Name, s.Worst.Words(s.Plan), s.Off})
		}
	}
	slices.SortStableFunc(r.Worst, func(a, b reportOff) int { return cmp.Compare(math.Abs(b.MM), math.Abs(a.MM)) })
	return pl.appendJSON(b, r)
}

// common tells the common text: each of its numbers as most sizes have it, the first of
// equals, and which of them differ. A rhythm is a list, empty where most have their own.
func (r *sizesReport) common(g *grade.Graded) {
	for _, s := range g.Splits {
		most := slices.MaxFunc(append([]grade.Group{{}}, s.Groups...), func(a, b grade.Group) int { return cmp.Compare(len(a.Sizes), len(b.Sizes)) })
		switch {
		case len(s.Groups) == 0:
			continue
		case s.Number != mitt.Rhythm:
			r.Common[s.Number.Key()] = most.Value
		case most.Value == 0:
			r.Common[s.Number.Key()] = []int{}
		default:
			r.Common[s.Number.Key()] = []int{most.Value}
		}
		if len(s.Groups) > 1 {
			r.Differ = append(r.Differ, s.Number.Key())
		}
	}
}

func (pl *Planner) reportSizeOf(s *grade.Planned) (reportSize, error) {
	out := reportSize{Name: s.Name, Own: s.Own, Text: s.Text, Pays: s.Pays, Common: s.Near, Best: s.Best, Same: s.Same, Falls: []reportFall{}, Plan: json.RawMessage("null")}
	if s.Plan == nil {
		out.Cannot = fault.Lines(s.Err)
		return out, nil
	}
	for _, f := range s.Falls {
		out.Falls = append(out.Falls, reportFall{f.Number.Key(), f.From, f.To, f.Held, f.MM})
	}
	p, err := pl.Plan(s.Sheet)
	if err != nil {
		return out, err
	}
	out.Plan, err = pl.Report(p, true)
	return out, err
}
