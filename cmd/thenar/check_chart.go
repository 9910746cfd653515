package main

import (
	"context"
	"flag"

	"thenar/internal/app"
)

// readChart is what is asked for of the chart of instructions.
type readChart struct {
	format, against, size, section *string
}

func chartFlags(f *flag.FlagSet) readChart {
	return readChart{
		format:  f.String("chart", "", "draws the chart of what was read, as `format`: svg, png, or csv. Csv has one field for each stitch, the last round first"),
		against: f.String("against", "", "compares the text, round by round, with the chart in this `CSV` file. The file is as -chart csv writes it"),
		size:    f.String("size", "", "the `size` that is drawn, compared or opened, such as 48, or \"48 left\" where the hands differ. Without it: the first"),
		section: f.String("section", "", "the `section` that is drawn or compared, by its heading or its place from 1. Without it: all, the last first"),
	}
}

// compare compares the text with the chart of a file, if one is named.
func (r readChart) compare(c app.Checked, std stdio) (agrees bool, told string, err error) {
	if *r.against == "" {
		return true, "", nil
	}
	raw, err := readFile(*r.against, app.MaxChartTable, std)
	if err != nil {
		return false, "", err
	}
	charts, err := c.Charts(*r.size)
	if err != nil {
		return false, "", err
	}
	a, err := charts.Against(raw, *r.section)
	if err != nil {
		return false, "", err
	}
	return a.Agrees(), a.Told(), nil
}

// wanted reports whether a chart is asked for.
func (r readChart) wanted() bool { return *r.format != "" }

// write prints the charts.
func (r readChart) write(ctx context.Context, c app.Checked, std stdio) error {
	charts, err := c.Charts(*r.size)
	if err == nil && *r.section != "" {
		charts, err = charts.Only(*r.section)
	}
	if err != nil {
		return err
	}
	return charts.Write(ctx, std.Out, *r.format)
}
