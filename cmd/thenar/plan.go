package main

import (
	"context"
	"errors"

	"thenar/internal/app"
)

// plan prints the plan of a measure sheet, or with -lines that of each line.
func plan(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	lines := f.Bool("lines", false, "one sheet a line in, one plan a line out, in order")
	brief := f.Bool("brief", false, "leave out the fit, round by round")
	if err := v.parse(f, args, 1, std); err != nil {
		return err
	}
	if *lines {
		return planLines(ctx, f.Arg(0), *brief, std)
	}
	raw, err := readFile(f.Arg(0), app.MaxSheet, std)
	if err != nil {
		return err
	}
	out, err := app.PlanSheet(raw, *brief)
	if err != nil {
		return err
	}
	return indented(out, std)
}

// planLines plans the lines of a file.
func planLines(ctx context.Context, name string, brief bool, std stdio) error {
	in, err := open(name, std.In)
	if err != nil {
		return err
	}
	defer in.Close()
	err = app.PlanLines(ctx, in, std.Out, brief)
	if errors.Is(err, app.ErrBadLines) {
		return errTold
	}
	return err
}
