// Package yarn estimates how much yarn a mitt takes, with an interval.
package yarn

import (
	"math"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Ball is a ball as its band describes it; zero is not known.
type Ball struct {
	Length units.Length
	Mass   float64 // g
}

// known tells whether length and mass can be turned into each other.
func (b Ball) known() bool { return b.Length > 0 && b.Mass > 0 }

// Swatch is a piece of stocking stitch with all its stitches and rounds, that
// was weighed or unravelled, cast-on and cast-off edge included, tails not.
type Swatch struct {
	Stitches, Rounds float64
	Mass             float64      // g; 0: not weighed
	Unravelled       units.Length // 0: not unravelled
	Kept             bool         // its yarn does not go into the mitts
}

// Request is what is known of the yarn. Everything may be missing.
type Request struct {
	Ball   Ball
	Swatch Swatch
}

// Source says what a loop's length was taken from.
type Source int

// The sources, from the least sure to the surest.
const (
	Geometry Source = iota
	WeighedSwatch
	UnravelledSwatch
)

// Words is what a loop's length was taken from.
func (s Source) Words() string {
	return [...]string{
		"the gauge, by loop geometry (Munden 1959; the constant from memory, fitted to machine knitting)",
		"the weighed swatch and the ball’s band", "the unravelled swatch",
	}[s]
}

// Amount is an amount of yarn with the ends of its interval: in mm, or in what
// one of its methods turned it into.
type Amount struct{ Mean, Low, High float64 }

// times is the amount n times over.
func (a Amount) times(n float64) Amount { return Amount{a.Mean * n, a.Low * n, a.High * n} }

func (a Amount) plus(b Amount) Amount { return Amount{a.Mean + b.Mean, a.Low + b.Low, a.High + b.High} }

// Metres, Yards and Grams are the same amount otherwise; 1 yd is 0.9144 m.
func (a Amount) Metres() Amount { return a.times(1e-3) }

// Yards is the amount in yards.
func (a Amount) Yards() Amount { return a.times(1 / 914.4) }

// Grams is the amount in grams by a ball; zero where the ball is not known.
func (a Amount) Grams(b Ball) Amount {
	if !b.known() {
		return Amount{}
	}
	return a.times(b.Mass / b.Length.MM())
}

// Estimate is the yarn of one mitt and of the pair. Pair has a kept swatch in
// it, whose yarn stands under Swatch.
type Estimate struct {
	One, Pair, Swatch Amount
	Loop              float64 // mm of yarn in a stitch
	Loops             int     // stitches of one mitt
	Half              float64 // half the interval, as a share
	From              Source
	Odd               bool // the swatch's loop is far from the one that the gauge gives
	Balls             int  // whole balls for the pair at its most; 0: the ball is not known
}

// The allowances (a yarn shop's rule for a row of cast-on or cast-off edge in
// widths; the tail is common practice, no source).
const (
	castOnWidths  = 3.0
	castOffWidths = 6.0
	tail          = 200.0 // mm, at every start and end
	leastHalf     = 0.10
)

// wetRelaxed is Munden's constant Ks of plain knitting that was washed and
// dried flat, without a unit; 19.0 if it was not washed (from memory, as
// widely quoted; fitted to fine machine knitting).
const (
	wetRelaxed = 21.6
	dryRelaxed = 19.0
)

// Of estimates the yarn of a plan and its rounds m:
//
//	loops × l + 3 × cast-on widths + 6 × cast-off widths + 200 mm × starts and ends
//
// with the loop length l from an unravelled swatch, else from a weighed one
// (by the ball's length and mass), else √(Ks/(g·q)), g and q the stitches and
// rounds per mm. Whatever is cast on or taken up has a start, and
// whatever is finished an end. The pair is
// twice that, and the swatch if it is kept. The interval is never less than
// ±10 % (common practice, no source).
func Of(p *mitt.Plan, m stitch.Mitt, r Request) Estimate {
	e := Estimate{}
	e.Loop, e.Half, e.From = geometry(p)
	if l, half, from, ok := counted(p, r); ok {
		e.Odd = l < e.Loop/1.5 || l > e.Loop*1.5
		e.Loop, e.Half, e.From = l, half, from
	}
	for _, s := range m.Sections {
		for _, round := range s.Rounds {
			e.Loops += round.Out()
		}
	}
	e.One = e.within(float64(e.Loops)*e.Loop + edges(p, m))
	e.Pair = e.One.times(2)
	if s := r.Swatch; s.Kept && s.Stitches > 0 && s.Rounds > 0 {
		e.Swatch = e.within(s.Stitches*s.Rounds*e.Loop + s.Stitches*(castOnWidths+castOffWidths)/p.Gauge.Stitches)
		e.Pair = e.Pair.plus(e.Swatch)
	}
	if r.Ball.Length > 0 {
		e.Balls = int(math.Ceil(e.Pair.High / r.Ball.Length.MM()))
	}
	return e
}

func (e *Estimate) within(mm float64) Amount {
	return Amount{mm, mm * (1 - e.Half), mm * (1 + e.Half)}
}

// edges is the yarn of cast-on and cast-off edges and of the tails, in mm.
func edges(p *mitt.Plan, m stitch.Mitt) float64 {
	on, off, tails := 0, 0, 0
	for i := range m.Sections {
		s := &m.Sections[i]
		on += s.CastOn
		for _, r := range s.Rounds {
			on += count(r.Ops, stitch.CastOn)
		}
		off += count(s.Finish.Ops, stitch.BindOff)
		if s.CastOn > 0 || len(s.From) > 0 {
			tails++
		}
		if len(s.Finish.Ops) > 0 {
			tails++
		}
	}
	return (castOnWidths*float64(on)+castOffWidths*float64(off))/p.Gauge.Stitches + tail*float64(tails)
}

func count(ops []stitch.Op, op stitch.Op) int {
	n := 0
	for _, o := range ops {
		if o == op {
			n++
		}
	}
	return n
}
