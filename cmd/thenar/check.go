package main

import (
	"context"
	"encoding/json"
	"fmt"

	"thenar/internal/app"
)

// check works written instructions, and prints what doesn't come out.
func check(_ context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	asJSON := f.Bool("json", false, "every round of every size, and what was found, as JSON")
	if err := v.parse(f, args, 1, std); err != nil {
		return err
	}
	raw, err := readFile(f.Arg(0), app.MaxWritten, std)
	if err != nil {
		return err
	}
	c, err := app.CheckWritten(string(raw))
	if err != nil {
		return err
	}
	if *asJSON {
		raw, err := json.Marshal(c.Report.JSON())
		if err != nil {
			return fmt.Errorf("check: %w", err)
		}
		err = indented(raw, std)
		if err != nil {
			return err
		}
	} else if _, err := fmt.Fprint(std.Out, c.Told()); err != nil {
		return fmt.Errorf("check: %w", err)
	}
	if !c.Report.Sound() {
		return errTold
	}
	return nil
}
