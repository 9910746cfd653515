package main

import (
	"context"
	"encoding/json"
	"fmt"

	"thenar/internal/app"
	"thenar/internal/fault"
)

// shape prints the cheapest schedule of changes over rounds.
func shape(_ context.Context, v *verb, args []string, io stdio) error {
	f := v.flags(io)
	var ask app.Shaping
	f.IntVar(&ask.From, "from", 0, "`stitches` before the first change")
	f.IntVar(&ask.To, "to", 0, "`stitches` after the last change")
	f.IntVar(&ask.Step, "step", 2, "`stitches` that one change makes; negative to decrease")
	f.IntVar(&ask.Rounds, "rounds", 0, "`rounds` in all")
	f.IntVar(&ask.Gap, "gap", 2, "least `rounds` from one change to the next")
	f.IntVar(&ask.LeadIn, "lead-in", 0, "plain `rounds` at the beginning, at least")
	f.IntVar(&ask.LeadOut, "lead-out", 1, "plain `rounds` at the end, at least")
	first := f.Int("first", 0, "`round` of the first change; free without it")
	f.BoolVar(&ask.Quicken, "quicken", false, "never slower again: no stretch is longer than the one before it")
	f.StringVar(&ask.Only, "only", "", "`odd or even`: change in such rounds only, as where right-side rows alone are shaped")
	f.StringVar(&ask.Lambda, "lambda", "8", "`price` of a change of rhythm, in stitches²")
	f.StringVar(&ask.Target, "target", "", "ideal `counts` after rounds 1 … R, in place of the straight line")
	if err := v.parse(f, args, 0, io); err != nil {
		return err
	}
	var faults fault.Fields
	for _, name := range []string{"from", "to", "rounds"} {
		if !given(f, name) {
			faults.Add(name, "is missing; thenar shape %s", v.args)
		}
	}
	if given(f, "first") {
		ask.First = first
	}
	found, err := app.Shape(ask, faults)
	if err != nil {
		return err
	}
	return printJSON(io.Out, found)
}

func printJSON(out interface{ Write([]byte) (int, error) }, v any) error {
	raw, err := json.Marshal(v)
	if err != nil {
		return fmt.Errorf("printJSON: %w", err)
	}
	_, err = out.Write(append(raw, '\n'))
	return err
}
