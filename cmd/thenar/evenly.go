package main

import (
	"context"
	"flag"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/shaping"
	"thenar/internal/words"
)

// evenly prints an even distribution of increases or decreases.
func evenly(_ context.Context, v *verb, args []string, io stdio) error {
	f := v.flags(io)
	stitches := f.Int("stitches", 0, "stitches on the needles")
	increase := f.Int("increase", 0, "stitches to increase")
	decrease := f.Int("decrease", 0, "stitches to decrease")
	flat := f.Bool("flat", false, "back and forth, with plain stitches at both ends")
	with := f.String("with", "", "m1 or kfb to increase, k2tog to decrease (default m1, k2tog)")
	if err := v.parse(f, args, 0, io); err != nil {
		return err
	}
	var faults fault.Fields
	if *stitches < 1 || *stitches > maxShapeStitches {
		faults.Add("stitches", "is %d; write a whole number from 1 to %d", *stitches, maxShapeStitches)
	}
	if given(f, "increase") == given(f, "decrease") {
		faults.Add("increase", "or decrease: give exactly one of the two")
	}
	s, how := spreadOf(*stitches, *increase, *decrease, given(f, "decrease"), strings.ToLower(*with), &faults)
	s.Flat = *flat
	if err := faults.Err(); err != nil {
		return err
	}
	runs, err := shaping.Evenly(s)
	if err != nil {
		return fault.Fields{{Path: eventName(given(f, "decrease")), Message: err.Error()}}
	}
	return printJSON(io.Out, struct {
		Intervals []int  `json:"intervals"`
		Words     string `json:"words"`
	}{append([]int{}, runs...), words.Evenly(runs, how, *flat)})
}

func eventName(decrease bool) string {
	if decrease {
		return "decrease"
	}
	return "increase"
}

// spreadOf checks what is to be spread and with which stitch.
func spreadOf(stitches, increase, decrease int, decreases bool, with string, faults *fault.Fields) (shaping.Spread, string) {
	s := shaping.Spread{Stitches: stitches, Events: increase}
	uses, byDefault := map[string]int{"m1": 0, "kfb": 1}, "m1"
	if decreases {
		s.Events = decrease
		uses, byDefault = map[string]int{"k2tog": 2, "ssk": 2}, "k2tog"
	}
	if with == "" {
		with = byDefault
	}
	n, known := uses[with]
	if !known {
		faults.Add("with", "is %q; write m1 or kfb to increase, k2tog to decrease", with)
	}
	s.Uses = n
	if s.Events < 1 || s.Events > maxShapeStitches {
		faults.Add(eventName(decreases), "is %d; write a whole number from 1 to %d", s.Events, maxShapeStitches)
	}
	return s, with
}

// given tells whether a flag was set on the command line.
func given(f *flag.FlagSet, name string) bool {
	found := false
	f.Visit(func(g *flag.Flag) { found = found || g.Name == name })
	return found
}
