package app

import (
	"context"
	"fmt"
	"io"
	"slices"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/exportfile"
	"thenar/internal/fault"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// fileCell is the width of a stitch in a chart file, in mm.
const fileCell = 6

// Written is a mitt worked out so that its words and charts can be written to
// files.
type Written struct {
	Name string
	doc  project.Document
	out  *project.Outputs
}

// Written works out a mitt of the shelf for its files.
func (a *App) Written(ctx context.Context, id int64) (Written, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, wantsChart()))
	if err != nil {
		return Written{}, err
	}
	pl, done := a.Planner()
	defer done()
	out, err := w.outputs(pl, w.doc)
	return Written{w.doc.Name, w.doc, out}, err
}

// ReadMitt works out a mitt from a file: a measure sheet, or an exported mitt
// with the marks of its chart. If left is set, it is the left hand.
func ReadMitt(ctx context.Context, name string, raw []byte, left bool) (Written, error) {
	doc, marks := project.New(name), chart.Marks{}
	var err error
	if exportfile.Is(raw) {
		doc, marks, err = exportedMitt(ctx, raw)
	} else {
		doc.Sheet, err = sheet.Parse(raw)
	}
	if err != nil {
		return Written{}, err
	}
	if left {
		doc.Side = project.Left
	}
	out, err := project.NewPlanner().Derive(doc, marks)
	return Written{name, doc, out}, err
}

// exportedMitt returns the only mitt of an exported file, in its newest
// revision.
func exportedMitt(ctx context.Context, raw []byte) (project.Document, chart.Marks, error) {
	file, err := exportfile.Read(ctx, raw)
	if err != nil {
		return project.Document{}, nil, err
	}
	m, err := file.OnlyMitt()
	if err != nil {
		return project.Document{}, nil, err
	}
	document, marks := m.Newest()
	doc, err := project.Decode(document)
	return doc, marks, err
}

// Words writes all the instructions as plain text.
func (m Written) Words(w io.Writer) error { return words.Write(w, m.out.Words) }

// WordsOf writes the instructions for the rounds from–to of a section. found is
// false if the mitt has none of them.
func (m Written) WordsOf(w io.Writer, section string, from, to int) (found bool, err error) {
	some := words.Select(m.out.Words, stitch.Part(section), from, to)
	if len(some) == 0 {
		return false, nil
	}
	return true, words.Write(w, some)
}

// ChartAsk says which chart is asked for, and how it is drawn. The chart
// package chooses what is unknown or left empty.
type ChartAsk struct {
	View   string // gusset, hand, thumb, top, cuff
	Layout string // wedge, columns
	Middle string // what stands in the middle of a round
	Square bool   // cells are square instead of in the proportions of the stitches
}

func (a ChartAsk) options() chart.Options {
	return chart.Options{View: chart.View(a.View), Layout: chart.Layout(a.Layout), Middle: a.Middle}
}

// The file formats of a chart.
const (
	SVG = "svg"
	PNG = "png"
	CSV = "csv"
)

// CheckChart refuses a format, layout or section that no chart has.
func CheckChart(format, layout, section string) error {
	var faults fault.Fields
	if format != SVG && format != CSV && format != PNG {
		faults.Add("format", "is %q; write svg, png or csv", format)
	}
	if layout != string(chart.Wedge) && layout != string(chart.Columns) {
		faults.Add("layout", "is %q; write wedge or columns", layout)
	}
	if !slices.Contains(chart.AllViews(), section) {
		faults.Add("section", "is %q; write one of: %s", section, strings.Join(chart.AllViews(), ", "))
	}
	return faults.Err()
}

// HasChart returns a fault if the mitt doesn't have the section.
func (m Written) HasChart(section string) error {
	if slices.Contains(m.out.Charts.Views(), chart.View(section)) {
		return nil
	}
	return fault.Fields{{Path: "section", Message: fmt.Sprintf("is %s, which this %s doesn't have", section, m.out.Plan.Kind.Words())}}
}

// Chart writes a chart as SVG to scale in mm, as PNG, or as a CSV table with a
// field for each stitch.
func (m Written) Chart(ctx context.Context, w io.Writer, format string, ask ChartAsk) error {
	g := m.out.Grid(ask.options())
	if format == CSV {
		return chart.CSV(w, g)
	}
	scene, _ := picture.Chart(g, picture.Look{
		Cell: fileCell, Gauge: m.out.Plan.Gauge, Square: ask.Square, Symbols: picture.Convention(m.doc.Sheet.Given("chart.symbols")), Unit: m.doc.Sheet.Unit(),
	})
	if format == PNG {
		return draw.WritePNG(ctx, w, scene)
	}
	return draw.WriteSVG(w, scene, true)
}
