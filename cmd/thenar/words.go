package main

import (
	"context"
	"fmt"
	"io"
	"slices"
	"strconv"
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

// printWords prints the instructions of a measure sheet or an exported mitt as
// plain text.
func printWords(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	left := f.Bool("left", false, "for the left hand")
	some := f.String("rounds", "", "only these: gusset:3-7, or gusset:3")
	if err := v.parse(f, args, 1, std); err != nil {
		return err
	}
	_, out, err := derived(ctx, f.Arg(0), *left, std)
	if err != nil || *some == "" {
		if err == nil {
			err = words.Write(std.Out, out.Words)
		}
		return err
	}
	part, from, to := rounds(*some)
	passages := words.Select(out.Words, part, from, to)
	if len(passages) == 0 {
		return fault.Fields{{Path: "rounds", Message: fmt.Sprintf("is %q, which this mitt doesn't have; write a section and its rounds, such as gusset:3-7", *some)}}
	}
	return words.Write(std.Out, passages)
}

// rounds reads "gusset:3-7" or "gusset:3"; 0 stands for what can't be read.
func rounds(text string) (part stitch.Part, from, to int) {
	name, span, _ := strings.Cut(text, ":")
	first, last, isSpan := strings.Cut(span, "-")
	from, _ = strconv.Atoi(first)
	to = from
	if isSpan {
		to, _ = strconv.Atoi(last)
	}
	return stitch.Part(name), from, to
}

// chartCell is the width of a stitch in a chart that is written to a file, in
// mm.
const chartCell = 6

// printChart prints the chart of a measure sheet or an exported mitt, as it is
// drawn or as a table.
func printChart(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	format := f.String("format", "svg", "svg, to scale in mm, png, or csv, one field for each stitch")
	layout := f.String("layout", "wedge", "wedge, which grows outward, or columns, which stand upright")
	section := f.String("section", "gusset", "the part: gusset, hand (all round, with the gusset), thumb, top or cuff")
	left := f.Bool("left", false, "for the left hand")
	if err := v.parse(f, args, 1, std); err != nil {
		return err
	}
	var faults fault.Fields
	if *format != "svg" && *format != "csv" && *format != "png" {
		faults.Add("format", "is %q; write svg, png or csv", *format)
	}
	if *layout != string(chart.Wedge) && *layout != string(chart.Columns) {
		faults.Add("layout", "is %q; write wedge or columns", *layout)
	}
	if !slices.Contains(chart.AllViews(), *section) {
		faults.Add("section", "is %q; write one of: %s", *section, strings.Join(chart.AllViews(), ", "))
	}
	if err := faults.Err(); err != nil {
		return err
	}
	doc, out, err := derived(ctx, f.Arg(0), *left, std)
	if err != nil {
		return err
	}
	if !slices.Contains(out.Charts.Views(), chart.View(*section)) {
		return fault.Fields{{Path: "section", Message: fmt.Sprintf("is %s, which this %s doesn't have", *section, out.Plan.Kind.Words())}}
	}
	g := out.Charts.Grid(chart.Options{View: chart.View(*section), Layout: chart.Layout(*layout)})
	if *format == "csv" {
		return chart.CSV(std.Out, g)
	}
	scene, _ := picture.Chart(g, picture.Look{
		Cell: chartCell, Gauge: out.Plan.Gauge, Symbols: picture.Convention(doc.Sheet.Given("chart.symbols")), Unit: doc.Sheet.Unit(),
	})
	if *format == "png" {
		return draw.WritePNG(ctx, std.Out, scene)
	}
	return draw.WriteSVG(std.Out, scene, true)
}

// derived works out all that follows from the sheet of a file, or from the
// mitt that was exported to it, with what is painted on its chart.
func derived(ctx context.Context, name string, left bool, std stdio) (project.Document, *project.Outputs, error) {
	doc, marks := project.New(name), chart.Marks{}
	raw, err := readFile(name, exportfile.MaxBytes, std)
	if err != nil {
		return doc, nil, err
	}
	if exportfile.Is(raw) {
		doc, marks, err = fromExportFile(ctx, raw)
	} else {
		doc.Sheet, err = sheet.Parse(raw)
	}
	if err != nil {
		return doc, nil, err
	}
	if left {
		doc.Side = project.Left
	}
	out, err := project.NewPlanner().Derive(doc, marks)
	return doc, out, err
}

// readSheet reads a sheet's file, no further than a sheet may be long.
func readSheet(name string, std stdio) ([]byte, error) { return readFile(name, sheet.Largest, std) }

// readFile reads a file, and no more than one byte over its most.
func readFile(name string, most int64, std stdio) ([]byte, error) {
	in, err := open(name, std.In)
	if err != nil {
		return nil, err
	}
	defer in.Close()
	raw, err := io.ReadAll(io.LimitReader(in, most+1))
	if err != nil {
		return nil, fault.New(fault.Invalid, "FILE: %v; name a file that can be read", err)
	}
	return raw, nil
}
