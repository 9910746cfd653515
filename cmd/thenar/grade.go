package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"

	"thenar/internal/app"
)

// gradeDesign prints the sizes of a graded design as JSON.
func gradeDesign(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	if err := v.parse(f, args, 1, std); err != nil {
		return err
	}
	raw, err := readFile(f.Arg(0), app.MaxDesign, std)
	if err != nil {
		return err
	}
	out, err := app.GradeDesign(ctx, raw)
	if err != nil {
		return err
	}
	return indented(out, std)
}

// indented prints JSON with line breaks.
func indented(raw []byte, std stdio) error {
	var pretty bytes.Buffer
	if err := json.Indent(&pretty, raw, "", "  "); err != nil {
		return fmt.Errorf("indented: %w", err)
	}
	pretty.WriteByte('\n')
	_, err := pretty.WriteTo(std.Out)
	return err
}
