package app

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/gauge"
	"thenar/internal/likeness"
	"thenar/internal/sheet"
	"thenar/internal/tally"
	"thenar/internal/units"
	"thenar/internal/yarn"
)

// Measures are what is known of the fabric and the yarn of written instructions, as it is
// typed: stitches and rounds on 10 cm, and a ball as on its band. Each may be empty.
type Measures struct{ Stitches, Rounds, BallGrams, BallMetres string }

// fabric is what was typed, once it is read.
type fabric struct {
	sts, rds float64 // on 10 cm; 0: not told
	ball     yarn.Ball
}

// read reads what was typed.
func (m Measures) read(faults *fault.Fields) (f fabric) {
	f.sts, f.rds = per10(faults, "stitches", m.Stitches), per10(faults, "rounds", m.Rounds)
	f.ball.Mass = ofBall(faults, "ball_grams", m.BallGrams, "50")
	f.ball.Length = units.Length(math.Round(ofBall(faults, "ball_metres", m.BallMetres, "175") * float64(units.Metre)))
	return f
}

// ofBall reads the grams or metres of a ball; 0: it isn't told.
func ofBall(faults *fault.Fields, path, text, such string) float64 {
	if text = strings.TrimSpace(text); text == "" {
		return 0
	}
	n, ok := sheet.Count(text)
	if !ok || n < 1 || n > 5_000 {
		faults.Add(path, "is %q; write a number from 1 to 5000, such as %s", text, such)
		return 0
	}
	return n
}

// gauge returns the gauge, with the doubt of one count on 10 cm; ok is false if no stitches
// are told.
func (f fabric) gauge(flat bool) (g gauge.Gauge, ok bool) {
	if f.sts == 0 {
		return g, false
	}
	const over = 100 * units.Millimetre
	s := gauge.Swatch{Stitches: f.sts, Width: over, Washed: true, CountedTo: 0.5, Flat: flat, ForFlat: flat}
	if f.rds > 0 {
		s.Rounds, s.Height = f.rds, over
	}
	g, err := gauge.Of([]gauge.Swatch{s}, gauge.HandVariation, "gauge")
	return g, err == nil
}

// CheckedYarn is the yarn of one size.
type CheckedYarn struct {
	Size      string
	Open      string // why nobody knows; empty: it is known
	One, Pair yarn.Amount
	Ball      yarn.Ball
}

// yarnOf returns the yarn that each size takes, and what it is worked out from; nothing
// without a gauge. A pair is both hands where the text tells them apart, else twice the one.
func (f fabric) yarnOf(text string, r *tally.Report) (list []CheckedYarn, from string) {
	flat := slices.ContainsFunc(r.Sizes, func(s tally.Size) bool { return s.Edges.Rows })
	g, ok := f.gauge(flat)
	if !ok {
		return nil, ""
	}
	lines := likeness.LinesOf(text)
	for i := 0; i < len(r.Sizes); i++ {
		s := &r.Sizes[i]
		y := CheckedYarn{Size: s.Name, Open: uncounted(s, lines, g.Rounds), Ball: f.ball}
		e := countsOf(s, lines, g.Rounds).Estimate(&g, yarn.Request{Ball: f.ball})
		y.One, y.Pair = e.One, e.Pair
		if i+1 < len(r.Sizes) && r.Sizes[i+1].Name == s.Name && s.Hand != "" {
			i++
			other := countsOf(&r.Sizes[i], lines, g.Rounds).Estimate(&g, yarn.Request{Ball: f.ball})
			y.Pair = yarn.Amount{Mean: e.One.Mean + other.One.Mean, Low: e.One.Low + other.One.Low, High: e.One.High + other.One.High}
			if y.Open == "" {
				y.Open = uncounted(&r.Sizes[i], lines, g.Rounds)
			}
		}
		list = append(list, y)
		from = fmt.Sprintf("From %s, with edges and tails; give or take %.0f %%.", e.From.Words(), e.Half*100)
	}
	if flat {
		from += " Seams are not in it."
	}
	return list, from
}

// uncounted says why the yarn of a size is open; empty if everything in it was counted, or is
// told by a length that is so many rounds.
func uncounted(s *tally.Size, lines likeness.Lines, perMM float64) string {
	if _, ok := lines.Rounds(s.Long, perMM); !ok {
		return "some rounds are told by length only"
	}
	switch {
	case s.Open, len(s.Rounds) == 0, slices.ContainsFunc(s.Rounds, func(r tally.Round) bool { return r.After < 0 }):
		return "not everything was counted"
	}
	return ""
}

func countsOf(s *tally.Size, lines likeness.Lines, perMM float64) (c yarn.Counts) {
	c = yarn.Counts{CastOn: s.Edges.CastOn, CastOff: s.Edges.CastOff, Ends: s.Edges.Ends}
	for _, r := range s.Rounds {
		c.Loops += max(0, r.After)
	}
	extra, _ := lines.Rounds(s.Long, perMM)
	for i, n := range extra {
		c.Loops += n * max(0, s.Long[i].Stitches)
	}
	return c
}

// Line is the yarn of a size in one line.
func (y CheckedYarn) Line() string {
	text := "yarn: "
	if y.Size != "" {
		text += "size " + y.Size + ": "
	}
	if y.Open != "" {
		return text + "open: " + y.Open
	}
	text += amountText(y.One, y.Ball) + "; a pair " + amountText(y.Pair, y.Ball)
	return text
}

// amountText is an amount in metres, and in grams if the ball is known.
func amountText(a yarn.Amount, b yarn.Ball) string {
	mean, low, high := a.Metres().Rounded()
	text := fmt.Sprintf("%d m (%d to %d)", mean, low, high)
	if g := a.Grams(b); g.Mean > 0 {
		mean, low, high = g.Rounded()
		text += fmt.Sprintf(", %d g (%d to %d)", mean, low, high)
	}
	return text
}

// checkedJSON is a report as JSON, with the yarn of each size if a gauge is told.
type checkedJSON struct {
	tally.File
	Yarn []yarnJSON `json:"yarn,omitempty"`
}

type yarnJSON struct {
	Size string      `json:"size"`
	Open string      `json:"open"`
	One  *amountJSON `json:"one"`
	Pair *amountJSON `json:"pair"`
}

type amountJSON struct {
	Metres float64  `json:"metres"`
	Low    float64  `json:"low"`
	High   float64  `json:"high"`
	Grams  *float64 `json:"grams"`
}

// JSON returns what was found as thenar/check@1: see testdata/check.schema.json.
func (c Checked) JSON() any {
	out := checkedJSON{File: c.Report.JSON()}
	for _, y := range c.Yarn {
		one := yarnJSON{Size: y.Size, Open: y.Open}
		if y.Open == "" {
			one.One, one.Pair = amountOf(y.One, y.Ball), amountOf(y.Pair, y.Ball)
		}
		out.Yarn = append(out.Yarn, one)
	}
	return out
}

func amountOf(a yarn.Amount, b yarn.Ball) *amountJSON {
	m := a.Metres()
	out := amountJSON{Metres: m.Mean, Low: m.Low, High: m.High}
	if g := a.Grams(b).Mean; g > 0 {
		out.Grams = &g
	}
	return &out
}
