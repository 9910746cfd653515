package main

import (
	"context"
	"flag"

	"thenar/internal/app"
)

// readChart is what is asked for of the chart of instructions.
type readChart struct {
	format, size, section *string
}

func chartFlags(f *flag.FlagSet) readChart {
	return readChart{
		format:  f.String("chart", "", "draws the chart of what was read, as `format`: svg, png, or csv. Csv has one field for each stitch, the last round first"),
		size:    f.String("size", "", "the `size` that is drawn or opened, such as 48, or \"48 left\" where the hands differ. Without it: the first"),
		section: f.String("section", "", "the `section` that is drawn, by its heading or its place from 1. Without it: all, the last first"),
	}
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
