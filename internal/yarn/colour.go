package yarn

import (
	"cmp"
	"math"
	"slices"

	"thenar/internal/mitt"
)

// Share is what of a mitt is worked in one yarn.
type Share struct {
	ID       string
	Stitches int
	Passed   int // stitches behind which its strands pass
}

// Colour is the yarn of one colour for one mitt and for the pair.
type Colour struct {
	ID        string
	One, Pair Amount
}

// Colours divides an estimate among the yarns of a chart. The first one is the
// main yarn, which also takes the edges, the mitt's tails and a kept swatch:
//
//	main:   one − loops of the others × l + passed × w
//	others: loops × l + passed × w + 2 × 200 mm
//
// with the loop length l and the width of a stitch w = 1/g. A strand is as long as
// the stitches that it passes are wide, and every other yarn begins and ends once
// (common practice, no source). The interval is the estimate's.
func Colours(p *mitt.Plan, e Estimate, shares []Share) []Colour {
	if len(shares) < 2 {
		return nil
	}
	width := 1 / p.Gauge.Stitches
	main := e.One.Mean + float64(shares[0].Passed)*width
	list := make([]Colour, len(shares))
	for i, s := range shares[1:] {
		loops := float64(s.Stitches) * e.Loop
		main -= loops
		list[i+1] = e.colour(s.ID, loops+float64(s.Passed)*width+2*tail)
	}
	list[0] = e.colour(shares[0].ID, main)
	list[0].Pair = list[0].Pair.plus(e.Swatch)
	return list
}

func (e *Estimate) colour(id string, mm float64) Colour {
	one := e.interval(max(mm, 0))
	return Colour{id, one, one.times(2)}
}

// InColours returns the estimate of a mitt that is worked in several yarns: one
// mitt and the pair take what the yarns take, strands and their tails included.
func (e Estimate) InColours(list []Colour, b Ball) Estimate {
	if len(list) == 0 {
		return e
	}
	e.One, e.Pair = Amount{}, Amount{}
	for _, c := range list {
		e.One, e.Pair = e.One.plus(c.One), e.Pair.plus(c.Pair)
	}
	e.Balls = b.balls(e.Pair)
	return e
}

// Whole returns the mean of each part in whole units, rounded so that together
// they make the rounded mean of all: those that lose most by rounding down get
// what is left over (the method of largest remainders).
func Whole(parts []Amount) []int {
	list, sum := make([]int, len(parts)), 0.0
	order := make([]int, len(parts))
	for i, a := range parts {
		list[i], order[i] = int(math.Floor(a.Mean)), i
		sum += a.Mean
	}
	left := int(math.Round(sum))
	for _, n := range list {
		left -= n
	}
	rest := func(i int) float64 { return parts[i].Mean - math.Floor(parts[i].Mean) }
	slices.SortStableFunc(order, func(i, j int) int { return cmp.Compare(rest(j), rest(i)) })
	for _, i := range order[:max(left, 0)] {
		list[i]++
	}
	return list
}
