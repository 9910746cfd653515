package project

import (
	"cmp"
	"encoding/json"
	"math"
	"slices"

	"thenar/internal/fault"
	"thenar/internal/grade"
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
		Text: reportText{Changes: notch.Changes, Barred: g.Barred, Notches: make([]reportNotch, len(g.Notches)), Splits: make([]reportSplit, len(g.Splits))},
	}
	for i, n := range g.Notches {
		r.Text.Notches[i] = reportNotch{n.From, math.Sqrt(n.From), n.Changes, n.Cost, n.Pays, i == g.At}
	}
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
		if s := &g.Sizes[i]; s.Plan != nil && s.Off != 0 {
			r.Worst = append(r.Worst, reportOff{s.Name, s.Worst.Words(s.Plan), s.Off})
		}
	}
	slices.SortStableFunc(r.Worst, func(a, b reportOff) int { return cmp.Compare(math.Abs(b.MM), math.Abs(a.MM)) })
	return pl.appendJSON(b, r)
}

func (pl *Planner) reportSizeOf(s *grade.Planned) (reportSize, error) {
	out := reportSize{Name: s.Name, Own: s.Own, Text: s.Text, Pays: s.Pays, Same: s.Same, Falls: []reportFall{}, Plan: json.RawMessage("null")}
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
