// Package yarn estimates how much yarn a mitt takes, as an interval.
package yarn

import (
	"math"

	"thenar/internal/gauge"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Ball is a ball as its band describes it. Zero means not known.
type Ball struct {
	Length units.Length
	Mass   float64 // g
}

// hasBoth reports whether length and mass are known, so that each can be converted
// into the other.
func (b Ball) hasBoth() bool { return b.Length > 0 && b.Mass > 0 }

// Swatch is a whole piece of stocking stitch that was weighed or unravelled, with
// its cast-on and cast-off edges, without tails.
type Swatch struct {
	Stitches, Rounds float64      // of the whole piece
	Mass             float64      // g; 0: not weighed
	Unravelled       units.Length // 0: not unravelled
	Kept             bool         // its yarn is not reused for the mitts
}

// Request is what is known about the yarn. Everything may be missing.
type Request struct {
	Ball   Ball
	Swatch Swatch
}

// Source says from what the length of a loop was computed.
type Source int

// The sources, from the least to the most certain.
const (
	Geometry Source = iota
	WeighedSwatch
	UnravelledSwatch
)

// Words returns the source in words.
func (s Source) Words() string {
	return [...]string{
		"the gauge, by loop geometry (Munden 1959; the constant from memory, fitted to machine knitting)",
		"the weighed swatch and the ball’s band", "the unravelled swatch",
	}[s]
}

// Amount is an amount of yarn with its interval, in mm unless one of its methods
// converted it.
type Amount struct{ Mean, Low, High float64 }

// times returns a multiplied by n.
func (a Amount) times(n float64) Amount { return Amount{a.Mean * n, a.Low * n, a.High * n} }

func (a Amount) plus(b Amount) Amount { return Amount{a.Mean + b.Mean, a.Low + b.Low, a.High + b.High} }

// Rounded returns the amount in whole units, as it is told everywhere: the mean to
// the nearest, the interval outward, so that nobody runs short by what was cut off.
func (a Amount) Rounded() (mean, low, high int) {
	return int(math.Round(a.Mean)), int(math.Floor(a.Low)), int(math.Ceil(a.High))
}

// Metres returns the amount in metres.
func (a Amount) Metres() Amount { return a.times(1e-3) }

// Yards returns the amount in yards of 0.9144 m.
func (a Amount) Yards() Amount { return a.times(1 / 914.4) }

// Grams returns the amount in grams of the ball's yarn, zero if that is not known.
func (a Amount) Grams(b Ball) Amount {
	if !b.hasBoth() {
		return Amount{}
	}
	return a.times(b.Mass / b.Length.MM())
}

// Estimate is the yarn of one mitt and of the pair.
type Estimate struct {
	One, Pair, Swatch Amount  // Swatch is the yarn of a kept swatch, which Pair includes
	Loop              float64 // mm of yarn in a stitch
	Loops             int     // stitches of one mitt
	Half              float64 // half-width of the interval, as a share
	From              Source  // of Loop
	Unlikely          bool    // the swatch's loop is above 1½ times the gauge's, or below ⅔ of it
	Balls             int     // whole balls for the upper end of Pair; 0 if the ball is not known
}

// The allowances: an edge takes a number of its widths (a yarn shop's rule for a
// row of cast-on or cast-off edge); the tail and the least interval are common
// practice, no source.
const (
	castOnWidths  = 3.0
	castOffWidths = 6.0
	seamWidths    = 2.0   // a seam takes of its length, in mattress stitch (common practice, no source)
	tail          = 200.0 // mm, at every start and end
	minHalf       = 0.10
)

// Munden's constant Ks of plain knitting, without a unit (from memory, as widely
// quoted; fitted to fine machine knitting).
const (
	wetRelaxed = 21.6 // washed and dried flat
	dryRelaxed = 19.0 // not washed
)

// Of estimates the yarn of a plan and its rounds m:
//
//	loops × l + 3 × cast-on widths + 6 × cast-off widths + 2 × seams + 200 mm × starts and ends
//
// with the loop length l from an unravelled swatch, else from a weighed one
// (by the ball's length and mass), else √(Ks/(g·q)) with g and q the stitches and
// rounds per mm. A section that is cast on, taken up or picked up has a start, and one that
// is finished has an end. The pair takes twice that, and a kept swatch. The
// interval is at least ±10 % (common practice, no source).
func Of(p *mitt.Plan, m stitch.Mitt, r Request) Estimate {
	c := edges(m)
	for i := range m.Sections {
		rounds := m.Sections[i].Rounds
		for r := range rounds {
			c.Loops += rounds[r].Out()
		}
	}
	s := seamsOf(p, m)
	return c.estimate(&p.Gauge, r, sewn(s.hand)+sewn(s.above)+sewn(s.thumb))
}

// Counts are what of a piece takes yarn: its stitches, those of its edges, and the ends that
// are left where the yarn is joined or cut.
type Counts struct{ Loops, CastOn, CastOff, Ends int }

// Estimate estimates the yarn of what was counted at a gauge as Of does; seams aren't in it.
func (c Counts) Estimate(g *gauge.Gauge, r Request) Estimate { return c.estimate(g, r, 0) }

// estimate adds the yarn of seams in mm.
func (c Counts) estimate(g *gauge.Gauge, r Request, sewing float64) Estimate {
	e := Estimate{Loops: c.Loops}
	e.Loop, e.Half, e.From = byGeometry(g)
	if l, half, from, ok := bySwatch(g, r); ok {
		e.Unlikely = l < e.Loop/1.5 || l > e.Loop*1.5
		e.Loop, e.Half, e.From = l, half, from
	}
	edges := sewing + (castOnWidths*float64(c.CastOn)+castOffWidths*float64(c.CastOff))/g.Stitches + tail*float64(c.Ends)
	e.One = e.interval(float64(e.Loops)*e.Loop + edges)
	e.Pair = e.One.times(2)
	if s := r.Swatch; s.Kept && s.Stitches > 0 && s.Rounds > 0 {
		e.Swatch = e.interval(s.Stitches*s.Rounds*e.Loop + s.Stitches*(castOnWidths+castOffWidths)/g.Stitches)
		e.Pair = e.Pair.plus(e.Swatch)
	}
	e.Balls = r.Ball.balls(e.Pair)
	return e
}

// balls returns the whole balls for the upper end of an amount; 0 if the length
// of a ball is not known.
func (b Ball) balls(a Amount) int {
	if b.Length <= 0 {
		return 0
	}
	return int(math.Ceil(a.High / b.Length.MM()))
}

func (e *Estimate) interval(mm float64) Amount {
	return Amount{mm, mm * (1 - e.Half), mm * (1 + e.Half)}
}

// edges counts what is cast on and cast off, and the ends.
func edges(m stitch.Mitt) (c Counts) {
	for i := range m.Sections {
		s := &m.Sections[i]
		c.CastOn += s.CastOn
		for r := range s.Rounds {
			c.CastOn += count(s.Rounds[r].Ops, stitch.CastOn)
		}
		c.CastOff += count(s.Finish.Ops, stitch.BindOff)
		if s.CastOn > 0 || len(s.From) > 0 || len(s.Rounds) > 0 && s.Rounds[0].In() == 0 {
			c.Ends++
		}
		if len(s.Finish.Ops) > 0 {
			c.Ends++
		}
	}
	return c
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
