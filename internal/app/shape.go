package app

import (
	"errors"
	"math"
	"math/big"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/shaping"
	"thenar/internal/words"
)

// The limits of a shaping, far beyond anything knitted.
const (
	maxShapeStitches = 100_000
	maxShapeRounds   = 2_000
	maxLambda        = 1_000_000
)

// Shaping asks for changes of Step stitches each to be spread over rounds.
type Shaping struct {
	From, To, Step  int // stitches before the first change, after the last, and gained by each
	Rounds          int
	Gap             int    // the fewest rounds from one change to the next
	LeadIn, LeadOut int    // the fewest plain rounds at the beginning and at the end
	First           *int   // round of the first change; nil if any will do
	Quicken         bool   // no interval is longer than the one before it
	Only            string // "odd" or "even": changes stand in such rounds only; empty: in any
	Lambda          string // price of a change of rhythm, in stitches²
	Target          string // the ideal stitch count after each round, comma-separated; empty for a straight line
}

// Schedule is the rounds of the changes and their cost: stitches² plus the
// price of changed rhythms, rounded to six decimals.
type Schedule struct {
	Rounds []int   `json:"rounds"`
	Cost   float64 `json:"cost"`
	Words  string  `json:"words"`
}

// Shape returns the cheapest schedule. faults are those the caller found
// already; they are reported together with those found here.
func Shape(ask Shaping, faults fault.Fields) (Schedule, error) {
	p := shaping.Problem{
		From: ask.From, To: ask.To, Step: ask.Step, Rounds: ask.Rounds, Gap: ask.Gap, LeadIn: ask.LeadIn, LeadOut: ask.LeadOut, Quicken: ask.Quicken,
	}
	if ask.First != nil {
		p.First = *ask.First
	}
	p.Only = parity(ask.Only, &faults)
	p.Lambda = scaled("lambda", ask.Lambda, 1_000, maxLambda, &faults)
	if ask.Target != "" {
		p.Target = targets(ask.Target, &faults)
	}
	checkShape(p, ask.First != nil, &faults)
	if err := faults.Err(); err != nil {
		return Schedule{}, err
	}
	found, err := shaping.Solve(p)
	if err != nil {
		return Schedule{}, shapeFault(err)
	}
	return Schedule{
		append([]int{}, found.Rounds...), math.Round(found.Cost.Float()*1e6) / 1e6,
		words.Schedule(found.Rounds, p.From, p.To, p.Step, p.Rounds),
	}, nil
}

// parity reads in which rounds changes may stand.
func parity(text string, faults *fault.Fields) shaping.Parity {
	switch text {
	case "":
		return shaping.EveryRound
	case "odd":
		return shaping.OddRounds
	case "even":
		return shaping.EvenRounds
	}
	faults.Add("only", "is %.20q; write odd or even", text)
	return shaping.EveryRound
}

// checkShape adds a fault for each flag that is out of range. What is in range
// but can't be scheduled is for the solver to say.
func checkShape(p shaping.Problem, fixed bool, faults *fault.Fields) {
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
	if fixed {
		check("first", p.First, 1, maxShapeRounds)
	}
	if p.Step == 0 {
		faults.Add("step", "is 0; write the stitches that one change makes, such as 2 or -4")
	}
	if p.Target != nil && len(p.Target) != p.Rounds {
		faults.Add("target", "has %d counts; write one for each of the %d rounds", len(p.Target), p.Rounds)
	}
}

// shapeFault turns the solver's error into a fault of the flag that stands in
// the way.
func shapeFault(err error) error {
	var no *shaping.Impossible
	if errors.As(err, &no) {
		return fault.Fields{{Path: no.Bound, Message: no.Message}}
	}
	return err
}

// scaled reads a decimal between −limit and limit as a whole number of 1/scale,
// rounded half away from zero.
func scaled(name, text string, scale, limit int64, faults *fault.Fields) int64 {
	value, ok := new(big.Rat), false
	if text = strings.TrimSpace(text); len(text) <= 40 && strings.Trim(text, "0123456789.-") == "" {
		_, ok = value.SetString(text)
	}
	if !ok {
		faults.Add(name, "is %q; write a number such as 8 or 0.5", text)
		return 0
	}
	if value.Cmp(big.NewRat(limit, 1)) > 0 || value.Cmp(big.NewRat(-limit, 1)) < 0 || (name == "lambda" && value.Sign() < 0) {
		faults.Add(name, "is %s; write a number from 0 to %d", text, limit)
		return 0
	}
	value.Mul(value, big.NewRat(scale, 1))
	half := big.NewRat(int64(value.Sign()), 2)
	value.Add(value, half)
	return new(big.Int).Quo(value.Num(), value.Denom()).Int64()
}

// targets reads the ideal counts, as whole numbers of 1/10 000 stitch.
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
