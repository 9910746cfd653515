package app

import (
	"context"
	"fmt"
	"io"
	"slices"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/charted"
	"thenar/internal/draw"
	"thenar/internal/fault"
	"thenar/internal/gauge"
	"thenar/internal/picture"
)

// ReadCharts are the charts of written instructions in one size, drawn of what was read.
type ReadCharts struct {
	Size string // the one that is drawn
	List []charted.Chart
	Cut  bool // there is more than is drawn

	gauge gauge.Gauge // 0: it isn't told
}

// Charts draws what was read of a size; of the first if none is named. Rounds in which
// something was found are marked.
func (c Checked) Charts(size string) (ReadCharts, error) {
	sizes := c.SizeNames()
	r := ReadCharts{Size: size, gauge: gauge.Gauge{Stitches: c.fabric.sts / 100, Rounds: c.fabric.rds / 100}}
	at := slices.Index(sizes, size)
	if size == "" {
		at, r.Size = 0, sizes[0]
	}
	if at < 0 {
		return r, c.noSize(size)
	}
	drawn := charted.Of(c.traced(at))
	r.List, r.Cut = drawn.List, drawn.Cut
	for i := range r.List {
		c.mark(&r.List[i], c.Report.Sizes[at].Name)
	}
	return r, nil
}

// mark marks the rows of a chart in which something was found.
func (c Checked) mark(one *charted.Chart, size string) {
	for i := range c.Report.Findings {
		f := &c.Report.Findings[i]
		if len(f.Sizes) > 0 && !slices.Contains(f.Sizes, size) {
			continue
		}
		for k := range one.Grid.Rows {
			row := &one.Grid.Rows[k]
			if one.Lines[k] == f.At.Line && (f.Number == 0 || f.Number == row.Round) && row.Fault == "" {
				row.Fault = f.Message
			}
		}
	}
}

// Only returns the charts of a section, or with a number the one at that place from 1.
func (r ReadCharts) Only(section string) (ReadCharts, error) {
	var list []charted.Chart
	var titles []string
	for i, c := range r.List {
		titles = append(titles, c.Title)
		if strings.EqualFold(c.Title, section) || len(c.Grid.Rows) > 0 && strings.EqualFold(string(c.Grid.Rows[0].Section), section) || fmt.Sprint(i+1) == section {
			list = append(list, c)
		}
	}
	if r.List = list; len(list) == 0 {
		return r, fault.Fields{{Path: "section", Message: fmt.Sprintf("is %q; write one of: %s", section, strings.Join(titles, ", "))}}
	}
	return r, nil
}

// look is how the charts are drawn: without a gauge in squares.
func (r ReadCharts) look() picture.Look {
	return picture.Look{Cell: fileCell, Gauge: r.gauge, Square: r.gauge.Stitches == 0 || r.gauge.Rounds == 0, Symbols: picture.Trade}
}

// Drawn draws one of the charts, for a page.
func (r ReadCharts) Drawn(i int) *draw.Scene {
	g := r.List[i].Grid
	return picture.ChartFile(g, r.look(), picture.Surround{Key: true, Caption: howToRead(r.List[i : i+1]), Marks: true})
}

// Write writes the charts as SVG or PNG, or as a table with a field for each stitch, the last at the
// head.
func (r ReadCharts) Write(ctx context.Context, w io.Writer, format string) error {
	var list []chart.Grid
	for _, c := range r.List {
		list = append(list, c.Grid)
	}
	switch {
	case len(list) == 0:
		return fault.New(fault.Invalid, "no round was found to draw; the count check tells what was read")
	case format == CSV:
		return chart.TableOf(w, list)
	case format != SVG && format != PNG:
		return fault.Fields{{Path: "chart", Message: fmt.Sprintf("is %q; write svg, png or csv", format)}}
	}
	scene := picture.ReadFile(list, r.look(), r.surround())
	if format == PNG {
		return draw.WritePNG(ctx, w, scene)
	}
	return draw.WriteSVG(w, scene, true)
}

// surround is what stands round the charts in a file.
func (r ReadCharts) surround() picture.Surround {
	f := picture.Surround{Title: "Chart of what was read", Key: true, Marks: true}
	if r.Size != "" {
		f.Under = "Size " + r.Size
	}
	f.Caption = howToRead(r.List)
	if r.Cut {
		f.Caption += " There is more than is drawn here."
	}
	return f
}

// howToRead says how charts are read.
func howToRead(list []charted.Chart) string {
	return "R" + strings.Join(append([]string{picture.Reading(list[0].Grid)[1:] + "."}, charted.Said(list)...), " ")
}
