package main

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"

	"thenar/internal/app"
)

// gradeDesign prints the sizes of a graded design as JSON, or the text for all of them.
func gradeDesign(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	text := f.Bool("words", false, "the pattern’s text for all sizes")
	left := f.Bool("left", false, "the text for the left hand")
	byRound := f.Bool("rounds", false, "the text round by round, not by the gusset’s rhythm")
	if err := v.parse(f, args, 1, std); err != nil {
		return err
	}
	raw, err := readFile(f.Arg(0), app.MaxDesign, std)
	if err != nil {
		return err
	}
	if *text {
		return app.GradeWords(ctx, raw, app.PatternAsk{Left: *left, ByRound: *byRound}, std.Out)
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
