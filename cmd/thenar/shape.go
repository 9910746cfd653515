package main

import (
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"math/big"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/shaping"
	"thenar/internal/words"
)

// The limits of what shape reads; far beyond anything knitted.
const (
	maxShapeStitches = 100_000
	maxShapeRounds   = 2_000
	maxLambda        = 1_000_000
)

// shape prints the exact schedule of a number of changes over rounds.
func shape(_ context.Context, v *verb, args []string, io stdio) error {
	f := v.flags(io)
	var p shaping.Problem
	f.IntVar(&p.From, "from", 0, "stitches before the first change")
	f.IntVar(&p.To, "to", 0, "stitches after the last change")
	f.IntVar(&p.Step, "step", 2, "stitches that one change makes; negative to decrease")
	f.IntVar(&p.Rounds, "rounds", 0, "rounds in all")
	f.IntVar(&p.Gap, "gap", 2, "least rounds from one change to the next")
	f.IntVar(&p.LeadIn, "lead-in", 0, "plain rounds at the beginning, at least")
	f.IntVar(&p.LeadOut, "lead-out", 1, "plain rounds at the end, at least")
	f.IntVar(&p.First, "first", 0, "round of the first change; free without it")
	f.BoolVar(&p.Quicken, "quicken", false, "never slower again: no interval is longer than the one before it")
	lambda := f.String("lambda", "8", "price of a change of rhythm, in stitches²")
	target := f.String("target", "", "ideal counts after rounds 1 … R, in place of the straight line")
	if err := v.parse(f, args, 0, io); err != nil {
		return err
	}
	var faults fault.Fields
	for _, name := range []string{"from", "to", "rounds"} {
		if !given(f, name) {
			faults.Add(name, "is missing; thenar shape %s", v.args)
		}
	}
	p.Lambda = scaled("lambda", *lambda, 1_000, maxLambda, &faults)
	if *target != "" {
		p.Target = targets(*target, &faults)
	}
	checkShape(p, given(f, "first"), &faults)
	if err := faults.Err(); err != nil {
		return err
	}
	found, err := shaping.Solve(p)
	if err != nil {
		return shapeFault(err)
	}
	return printJSON(io.Out, struct {
		Rounds []int   `json:"rounds"`
		Cost   float64 `json:"cost"`
		Words  string  `json:"words"`
	}{
		append([]int{}, found.Rounds...), math.Round(found.Cost.Float()*1e6) / 1e6,
		words.Schedule(found.Rounds, p.From, p.To, p.Step, p.Rounds),
	})
}

// checkShape names the flag that is out of range; what can't be scheduled is
// the solver's to say.
func checkShape(p shaping.Problem, first bool, faults *fault.Fields) {
	if len(*faults) > 0 {
		return
	}
	check := func(name string, n, low, high int) {
		if n < low || n > high {
			faults.Add(name, "is %d; write a whole number from %d to %d", n, low, high)
		}
	}
	check("from", p.From, 0, maxShapeStitches)
	check("to", p.To, 0, maxShapeStitches)
	check("step", p.Step, -maxShapeStitches, maxShapeStitches)
	check("rounds", p.Rounds, 1, maxShapeRounds)
	check("gap", p.Gap, 1, maxShapeRounds)
	check("lead-in", p.LeadIn, 0, maxShapeRounds)
	check("lead-out", p.LeadOut, 0, maxShapeRounds)
	if first {
		check("first", p.First, 1, maxShapeRounds)
	}
	if p.Step == 0 {
		faults.Add("step", "is 0; write the stitches that one change makes, such as 2 or -4")
	}
	if p.Target != nil && len(p.Target) != p.Rounds {
		faults.Add("target", "has %d counts; write one for each of the %d rounds", len(p.Target), p.Rounds)
	}
}

// shapeFault turns what the solver says into a fault of the flag that stands
// in the way.
func shapeFault(err error) error {
	var no *shaping.Impossible
	if errors.As(err, &no) {
		return fault.Fields{{Path: no.Bound, Message: no.Message}}
	}
	return err
}

// scaled reads a decimal as a whole number of 1/scale, rounded half away
// from zero, between −most and most.
func scaled(name, text string, scale, most int64, faults *fault.Fields) int64 {
	value, ok := new(big.Rat), false
	if text = strings.TrimSpace(text); len(text) <= 40 && strings.Trim(text, "0123456789.-") == "" {
		_, ok = value.SetString(text)
	}
	if !ok {
		faults.Add(name, "is %q; write a number such as 8 or 0.5", text)
		return 0
	}
	if value.Cmp(big.NewRat(most, 1)) > 0 || value.Cmp(big.NewRat(-most, 1)) < 0 || (name == "lambda" && value.Sign() < 0) {
		faults.Add(name, "is %s; write a number from 0 to %d", text, most)
		return 0
	}
	value.Mul(value, big.NewRat(scale, 1))
	half := big.NewRat(int64(value.Sign()), 2)
	value.Add(value, half)
	return new(big.Int).Quo(value.Num(), value.Denom()).Int64()
}

func targets(text string, faults *fault.Fields) []int64 {
	parts := strings.Split(text, ",")
	if len(parts) > maxShapeRounds {
		faults.Add("target", "has %d counts; %d are the most", len(parts), maxShapeRounds)
		return nil
	}
	out := make([]int64, len(parts))
	for i, part := range parts {
		before := len(*faults)
		if out[i] = scaled("target", part, 10_000, maxShapeStitches, faults); len(*faults) > before {
			return nil
		}
	}
	return out
}

func printJSON(out interface{ Write([]byte) (int, error) }, v any) error {
	raw, err := json.Marshal(v)
	if err != nil {
		return fmt.Errorf("printJSON: %w", err)
	}
	_, err = out.Write(append(raw, '\n'))
	return err
}
