package main

import (
	"context"
	"flag"

	"thenar/internal/app"
)

// evenly prints the most even spread of increases or decreases.
func evenly(_ context.Context, v *verb, args []string, io stdio) error {
	f := v.flags(io)
	var ask app.Spreading
	f.IntVar(&ask.Stitches, "stitches", 0, "`stitches` on the needles")
	increase := f.Int("increase", 0, "`stitches` to increase")
	decrease := f.Int("decrease", 0, "`stitches` to decrease")
	f.BoolVar(&ask.Flat, "flat", false, "back and forth, with plain stitches at both ends")
	f.StringVar(&ask.With, "with", "", "`stitch`: m1 or kfb to increase, k2tog to decrease (default m1, k2tog)")
	if err := v.parse(f, args, 0, io); err != nil {
		return err
	}
	if given(f, "increase") {
		ask.Increase = increase
	}
	if given(f, "decrease") {
		ask.Decrease = decrease
	}
	found, err := app.Evenly(ask)
	if err != nil {
		return err
	}
	return printJSON(io.Out, found)
}

// given reports whether a flag was set on the command line.
func given(f *flag.FlagSet, name string) bool {
	found := false
	f.Visit(func(g *flag.Flag) { found = found || g.Name == name })
	return found
}
