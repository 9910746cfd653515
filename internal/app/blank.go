package app

import (
	"cmp"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/gauge"
	"thenar/internal/paper"
	"thenar/internal/sheet"
)

// Measuring is the sheet on which a hand is measured, with a page of its fingers if it was
// asked for.
type Measuring struct {
	Sheets
	Fingers bool
}

// MeasuringSheet returns the sheet on which a hand is measured.
func MeasuringSheet(l Layout) (Measuring, error) {
	s, err := l.sheets("", "")
	if err != nil {
		return Measuring{}, err
	}
	m := Measuring{Sheets: s, Fingers: l.Asked.Get("fingers") == "1"}
	m.lay(paper.Measuring(m.Options, false, m.Fingers))
	return m, nil
}

// Ruler returns a sheet with rulers for swatches.
func Ruler(l Layout) (Sheets, error) {
	s, err := l.sheets("", "")
	if err == nil {
		s.lay(paper.Ruler(s.Options))
	}
	return s, err
}

// Grid is blank grid paper, with what it was asked for: stitches and rounds
// over 10 cm, and the width of a cell in mm.
type Grid struct {
	Sheets
	Stitches, Rounds, Cell string
	GaugeFaults            error
}

// GridPaper returns blank grid paper in the proportions of a gauge, 24 by 32
// unless another is asked for.
func GridPaper(l Layout) (Grid, error) {
	s, err := l.sheets("", "")
	if err != nil {
		return Grid{}, err
	}
	asked := func(name, usual string) string { return cmp.Or(strings.TrimSpace(l.Asked.Get(name)), usual) }
	g := Grid{Sheets: s, Stitches: asked("stitches", "24"), Rounds: asked("rounds", "32"), Cell: asked("cell", "5")}
	over10, err := gaugeOf(g.Stitches, g.Rounds)
	if g.GaugeFaults = err; err != nil {
		g.Trouble = []string{"No grid can be made of this; the reason stands at its field."}
		return g, nil
	}
	g.lay(paper.Grid(s.Options, over10))
	return g, nil
}

// gaugeOf reads stitches and rounds over 10 cm as a measure sheet does.
func gaugeOf(stitches, rounds string) (gauge.Gauge, error) {
	const swatch = "gauge.swatches[0]."
	g, err := sheet.Sheet{
		sheet.PathUnit: "cm", swatch + "stitches": stitches, swatch + "width": "10", swatch + "rounds": rounds, swatch + "height": "10",
	}.Gauge()
	if err == nil {
		return g, nil
	}
	fields, _ := err.(fault.Fields)
	var faults fault.Fields
	for _, f := range fields {
		faults.Add(strings.TrimPrefix(f.Path, swatch), "%s", f.Message)
	}
	return gauge.Gauge{}, faults
}
