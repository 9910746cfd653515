package main

import (
	"context"
	"fmt"
	"io"
	"strconv"
	"strings"

	"thenar/internal/app"
	"thenar/internal/fault"
)

// printWords prints the instructions of a measure sheet or an exported mitt as
// plain text.
func printWords(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	left := f.Bool("left", false, "for the left hand")
	some := f.String("rounds", "", "only these `rounds`: gusset:3-7, or gusset:3")
	if err := v.parse(f, args, 1, std); err != nil {
		return err
	}
	m, err := readMitt(ctx, f.Arg(0), *left, std)
	if err != nil {
		return err
	}
	if *some == "" {
		return m.Words(std.Out)
	}
	section, from, to := rounds(*some)
	found, err := m.WordsOf(std.Out, section, from, to)
	if err == nil && !found {
		err = fault.Fields{{Path: "rounds", Message: fmt.Sprintf("is %q, which this mitt doesn't have; write a section and its rounds, such as gusset:3-7", *some)}}
	}
	return err
}

// rounds reads "gusset:3-7" or "gusset:3". A number that can't be read becomes
// 0.
func rounds(text string) (section string, from, to int) {
	name, span, _ := strings.Cut(text, ":")
	first, last, isSpan := strings.Cut(span, "-")
	from, _ = strconv.Atoi(first)
	to = from
	if isSpan {
		to, _ = strconv.Atoi(last)
	}
	return name, from, to
}

// printChart prints the chart of a measure sheet or an exported mitt, as a
// picture or as a table.
func printChart(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	format := f.String("format", "svg", "`format`: svg or pdf, to scale in mm, png, or csv, one field for each stitch")
	layout := f.String("layout", "wedge", "`layout`: wedge, which grows outward, or columns, which stand upright")
	section := f.String("section", "gusset", "the `part`: gusset, hand (with the gusset), thumb, top, cuff; of a glove also little, upper_hand, ring, middle, index")
	left := f.Bool("left", false, "for the left hand")
	boxed := f.Bool("boxed", false, "one of what repeats, in a box with the number of times that it is worked; else the whole. "+
		"As csv, one chart for each part and motif, the last first. Each line has its stitches, the round, the count of the round and the part: "+
		"6x3 is one of 6 rounds that are worked 3 times. A line \"times\" ends each chart: 8x5 is one of 8 columns that are worked 5 times")
	if err := v.parse(f, args, 1, std); err != nil {
		return err
	}
	if err := app.CheckChart(*format, *layout, *section); err != nil {
		return err
	}
	m, err := readMitt(ctx, f.Arg(0), *left, std)
	if err == nil {
		err = m.HasChart(*section)
	}
	if err != nil {
		return err
	}
	return m.Chart(ctx, std.Out, *format, app.ChartAsk{View: *section, Layout: *layout, Boxed: *boxed})
}

// readMitt works out the mitt of a file.
func readMitt(ctx context.Context, name string, left bool, std stdio) (app.Written, error) {
	raw, err := readFile(name, app.MaxExport, std)
	if err != nil {
		return app.Written{}, err
	}
	return app.ReadMitt(ctx, name, raw, left)
}

// readFile reads a file, but no more of it than one byte over maxBytes.
func readFile(name string, maxBytes int64, std stdio) ([]byte, error) {
	in, err := open(name, std.In)
	if err != nil {
		return nil, err
	}
	defer in.Close()
	raw, err := io.ReadAll(io.LimitReader(in, maxBytes+1))
	if err != nil {
		return nil, fault.New(fault.Invalid, "FILE: %v; name a file that can be read", err)
	}
	return raw, nil
}
