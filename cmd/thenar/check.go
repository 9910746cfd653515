package main

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"

	"thenar/internal/app"
)

// check works written instructions, and prints what doesn't come out, and the yarn at a gauge.
func check(ctx context.Context, v *verb, args []string, std stdio) error {
	f := v.flags(std)
	asJSON := f.Bool("json", false, "every round of every size, and what was found, as JSON")
	gauge := f.String("gauge", "", "`stitches/rounds` on 10 cm, such as 24/32: the yarn is told, too")
	ball := f.String("ball", "", "`grams/metres` of a ball, such as 50/175: the yarn is told in grams, too")
	sheet := f.Bool("sheet", false, "the measure sheet of the mitt that a size is, as plan takes it; -gauge is needed")
	drawn := chartFlags(f)
	if err := v.parse(f, args, 1, std); err != nil {
		return err
	}
	raw, err := readFile(f.Arg(0), app.MaxWritten, std)
	if err != nil {
		return err
	}
	var m app.Measures
	m.Stitches, m.Rounds, _ = strings.Cut(*gauge, "/")
	m.BallGrams, m.BallMetres, _ = strings.Cut(*ball, "/")
	c, err := app.CheckMeasured(string(raw), m)
	if err != nil {
		return err
	}
	if drawn.wanted() {
		return drawn.write(ctx, c, std)
	}
	if *sheet {
		return checkedSheet(c, *drawn.size, std)
	}
	agrees, compared, err := drawn.compare(c, std)
	if err != nil {
		return err
	}
	if *asJSON {
		raw, err := json.Marshal(c.JSON())
		if err != nil {
			return fmt.Errorf("check: %w", err)
		}
		fmt.Fprint(std.Err, compared)
		err = indented(raw, std)
		if err != nil {
			return err
		}
	} else if _, err := fmt.Fprint(std.Out, c.Told(), compared); err != nil {
		return fmt.Errorf("check: %w", err)
	}
	if !c.Report.Sound() || !agrees {
		return errTold
	}
	return nil
}

// checkedSheet prints the measure sheet of the mitt that instructions are. What its plan
// has otherwise than they is a message.
func checkedSheet(c app.Checked, size string, std stdio) error {
	raw, differs, err := c.CheckedSheet(size)
	if err != nil {
		return err
	}
	for _, one := range differs {
		fmt.Fprintf(std.Err, "sheet: %s\n", one)
	}
	_, err = std.Out.Write(raw)
	if err != nil {
		return fmt.Errorf("check: %w", err)
	}
	return nil
}
