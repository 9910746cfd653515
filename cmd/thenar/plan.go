package main

import (
	"context"
	"errors"
	"io"

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
		return answerLines(f.Arg(0), std, func(in io.Reader) error { return app.PlanLines(ctx, in, std.Out, *brief) })
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

// answerLines answers the lines of a file.
func answerLines(name string, std stdio, answer func(in io.Reader) error) error {
	in, err := open(name, std.In)
	if err != nil {
		return err
	}
	defer in.Close()
	if err := answer(in); !errors.Is(err, app.ErrBadLines) {
		return err
	}
	return errTold
}
