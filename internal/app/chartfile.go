package app

import (
	"context"
	"fmt"
	"io"
	"slices"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/fault"
	"thenar/internal/pdf"
	"thenar/internal/picture"
	"thenar/internal/plain"
)

// fileCell is the width of a stitch in a chart file, in mm.
const fileCell = 6

// MaxCaption is the most characters of a chart file's caption.
const MaxCaption = 300

// ChartAsk says which chart is asked for, and how it is drawn. The chart
// package chooses what is unknown or left empty.
type ChartAsk struct {
	View   string // gusset, hand, thumb, top, cuff
	Layout string // wedge, columns
	Middle string // what stands in the middle of a round
	Square bool   // cells are square instead of in the proportions of the stitches
	Boxed  bool   // one of what repeats, boxed; the whole where nothing repeats whole

	// What a picture shows besides the chart.
	Title, Key, Caption bool
	Text                string // of the caption; empty: how the chart is read
	Marks               bool   // what is painted, noted, unsound or on the needles, floats, and rulers
}

func (a ChartAsk) options() chart.Options {
	return chart.Options{View: chart.View(a.View), Layout: chart.Layout(a.Layout), Middle: a.Middle}
}

// The file formats of a chart.
const (
	SVG = "svg"
	PNG = "png"
	PDF = "pdf"
	CSV = "csv"
)

// CheckChart refuses a format, layout or section that no chart has.
func CheckChart(format, layout, section string) error {
	var faults fault.Fields
	if !slices.Contains([]string{SVG, PNG, PDF, CSV}, format) {
		faults.Add("format", "is %q; write svg, png, pdf or csv", format)
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

// check refuses a caption that can't be written.
func (a ChartAsk) check() error {
	if wrong := plain.Line(a.Text, MaxCaption); a.Caption && wrong != "" {
		return fault.Fields{{Path: "caption", Message: wrong}}
	}
	return nil
}

// View returns the part whose chart is written when it is asked for.
func (m Written) View(ask ChartAsk) string { return string(m.out.Grid(ask.options()).View) }

// Chart writes a chart as SVG or PDF to scale in mm, as PNG, or as a CSV table with
// a field for each stitch.
func (m Written) Chart(ctx context.Context, w io.Writer, format string, ask ChartAsk) error {
	if err := ask.check(); err != nil {
		return err
	}
	g := m.out.Grid(ask.options())
	var boxed []chart.Grid
	if ask.Boxed {
		boxed = m.out.Boxed(ask.options())
	}
	if format == CSV {
		return writeTable(w, g, boxed, ask.Boxed)
	}
	scene := m.drawChart(g, boxed, ask)
	switch format {
	case PNG:
		return draw.WritePNG(ctx, w, scene)
	case PDF:
		_, err := pdf.Write(ctx, w, pdf.About{Title: m.Name + ": " + g.View.Title()}, slices.Values([]*draw.Scene{scene}))
		return err
	}
	return draw.WriteSVG(w, scene, true)
}

// writeTable writes a chart as a table; if it was asked for boxed, always in the way of a
// boxed one, so that a program need not ask whether anything repeats.
func writeTable(w io.Writer, g chart.Grid, boxed []chart.Grid, asked bool) error {
	switch {
	case len(boxed) > 0:
		return chart.BoxedCSV(w, boxed)
	case asked:
		return chart.BoxedCSV(w, []chart.Grid{g})
	}
	return chart.CSV(w, g)
}

// drawChart draws a chart, or what is boxed of it, with what stands round it.
func (m Written) drawChart(g chart.Grid, boxed []chart.Grid, ask ChartAsk) *draw.Scene {
	look := picture.Look{
		Cell: fileCell, Gauge: m.out.Plan.Gauge, Square: ask.Square, Symbols: picture.Convention(m.doc.Sheet.Given("chart.symbols")), Unit: m.doc.Sheet.Unit(),
	}
	f := m.surround(g, ask)
	switch {
	case len(boxed) > 0:
		if ask.Title {
			f.Under += ", one repeat, boxed"
		}
		if ask.Caption && strings.TrimSpace(ask.Text) == "" {
			f.Caption = picture.HowToReadBoxed(boxed)
		}
		return picture.BoxedFile(boxed, look, f)
	case ask.Boxed && ask.Title:
		f.Under += ". Nothing repeats whole here, so all is shown"
	}
	return picture.ChartFile(g, look, f)
}

// surround returns what the picture of a chart shows besides it.
func (m Written) surround(g chart.Grid, ask ChartAsk) picture.Surround {
	f := picture.Surround{Key: ask.Key, Marks: ask.Marks}
	if ask.Title {
		f.Title, f.Under = m.Name, g.View.Title()
		if m.out.Plan.Parted() {
			f.Under += ", " + string(m.doc.Side) + " hand"
		}
	}
	if ask.Caption {
		if f.Caption = strings.TrimSpace(ask.Text); f.Caption == "" {
			f.Caption = picture.HowToRead(g)
		}
	}
	return f
}
