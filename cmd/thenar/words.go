package main

import (
	"context"
	"io"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/fault"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// printWords prints the instructions of a measure sheet as plain text.
func printWords(_ context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	left := f.Bool("left", false, "for the left hand")
	if err := v.parse(f, args, 1, std); err != nil {
		return err
	}
	out, err := derived(f.Arg(0), *left, std)
	if err != nil {
		return err
	}
	return words.Write(std.Out, out.Words)
}

// chartCell is the width of a stitch in a chart that is written to a file, in
// mm.
const chartCell = 6

// printChart prints the chart of a measure sheet, as it is drawn or as a table.
func printChart(_ context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	format := f.String("format", "svg", "svg, to scale in mm, or csv, one field for each stitch")
	section := f.String("section", "gusset", "the part: gusset")
	left := f.Bool("left", false, "for the left hand")
	if err := v.parse(f, args, 1, std); err != nil {
		return err
	}
	var faults fault.Fields
	if *format != "svg" && *format != "csv" {
		faults.Add("format", "is %q; write svg or csv", *format)
	}
	if *section != string(stitch.Gusset) {
		faults.Add("section", "is %q; the gusset is charted", *section)
	}
	if err := faults.Err(); err != nil {
		return err
	}
	out, err := derived(f.Arg(0), *left, std)
	if err != nil {
		return err
	}
	if !out.Plan.Thumbed() {
		return fault.Fields{{Path: sheet.PathKind, Message: "is a mitten without a thumb, which has no gusset to chart"}}
	}
	if *format == "csv" {
		return chart.CSV(std.Out, out.Grid)
	}
	scene, _ := picture.Chart(out.Grid, out.Plan.Gauge, chartCell)
	return draw.WriteSVG(std.Out, scene, true)
}

// derived works out all that follows from the sheet of a file.
func derived(name string, left bool, std stdio) (*project.Outputs, error) {
	raw, err := readSheet(name, std)
	if err != nil {
		return nil, err
	}
	s, err := sheet.Parse(raw)
	if err != nil {
		return nil, err
	}
	doc := project.New(name)
	doc.Sheet = s
	if left {
		doc.Side = project.Left
	}
	return project.NewPlanner().Derive(doc, chart.Marks{})
}

// readSheet reads a sheet's file, no further than a sheet may be long.
func readSheet(name string, std stdio) ([]byte, error) {
	in, err := open(name, std.In)
	if err != nil {
		return nil, err
	}
	defer in.Close()
	raw, err := io.ReadAll(io.LimitReader(in, sheet.Largest+1))
	if err != nil {
		return nil, fault.New(fault.Invalid, "FILE: %v; name a file that can be read", err)
	}
	return raw, nil
}
