package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"

	"thenar/internal/project"
	"thenar/internal/sheet"
)

// plan turns a measure sheet into its plan, or one sheet a line into one plan
// a line.
func plan(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	lines := f.Bool("lines", false, "one sheet a line in, one plan a line out, in order")
	brief := f.Bool("brief", false, "leave out the fit, round by round")
	if err := v.parse(f, args, 1, std); err != nil {
		return err
	}
	if *lines {
		in, err := open(f.Arg(0), std.In)
		if err != nil {
			return err
		}
		defer in.Close()
		return planLines(ctx, in, std.Out, *brief)
	}
	raw, err := readSheet(f.Arg(0), std)
	if err != nil {
		return err
	}
	out, err := planOne(nil, project.NewPlanner(), raw, *brief)
	if err != nil {
		return err
	}
	var pretty bytes.Buffer
	if err := json.Indent(&pretty, out, "", "  "); err != nil {
		return fmt.Errorf("plan: %w", err)
	}
	pretty.WriteByte('\n')
	_, err = pretty.WriteTo(std.Out)
	return err
}

// planOne appends the plan of a sheet to b.
func planOne(b []byte, pl *project.Planner, raw []byte, brief bool) ([]byte, error) {
	s, err := sheet.Parse(raw)
	if err != nil {
		return nil, err
	}
	p, err := pl.Plan(s)
	if err != nil {
		return nil, err
	}
	return pl.AppendReport(b, p, brief)
}
