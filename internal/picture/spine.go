package picture

import (
	"fmt"

	"thenar/internal/draw"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

// mark is a height of the spine with what is said beside it.
type mark struct {
	y    float64
	text string
}

// spine draws the line of rounds beside the hand: the cast-on at the foot,
// each border between sections with its length from the cast-on, and a small
// tick for every fifth round.
func spine(s *draw.Scene, f *frame, p *mitt.Plan, u units.Unit, letter float64) {
	q := p.Gauge.Rounds
	foot := f.base - float64(p.Cuff.Rounds+p.Cuff.PlainRounds)/q
	x := f.left - 1.5*letter
	at := func(rounds int, what string) mark {
		length := units.FromMM(float64(rounds) / q)
		return mark{foot + float64(rounds)/q, fmt.Sprintf("%s, %s", what, length.With(u))}
	}
	rounds := p.Cuff.Rounds
	marks := []mark{{foot, fmt.Sprintf("cast on %d", p.Cuff.CastOn.N)}}
	if p.Cuff.Rounds > 0 && p.Cuff.PlainRounds > 0 {
		marks = append(marks, at(rounds, "rib ends"))
	}
	rounds += p.Cuff.PlainRounds
	marks = append(marks, at(rounds, "gusset"))
	rounds += p.Gusset.Rounds.N
	marks = append(marks, at(rounds, fmt.Sprintf("hold %d", p.Thumb.Held)))
	rounds += p.Body.RoundsAbove
	if p.Top != nil {
		marks = append(marks, at(rounds, "top"))
		rounds += p.Top.Rounds
	}
	marks = append(marks, at(rounds, "end"))

	line := draw.Style{Class: "spine", Stroke: inkColour, Width: 0.4}
	high := foot + float64(rounds)/q
	s.Line(f.X(x), f.Y(foot), f.X(x), f.Y(high), line)
	var ticks draw.Pen
	for r := 5; r < rounds; r += 5 {
		y := f.Y(foot + float64(r)/q)
		ticks.Move(f.X(x), y).Line(f.X(x+0.4*letter), y)
	}
	s.Path(ticks.String(), draw.Style{Class: "spine", Stroke: inkColour, Width: 0.2})
	drawMarks(s, f, marks, x, letter)
}

// drawMarks writes the marks beside the spine, apart enough to be read.
func drawMarks(s *draw.Scene, f *frame, marks []mark, x, letter float64) {
	ys := make([]float64, len(marks))
	for i, m := range marks {
		ys[i] = f.Y(m.y)
	}
	places := apart(ys, 1.25*letter)
	for i, m := range marks {
		y := f.Y(m.y)
		s.Line(f.X(x-0.6*letter), y, f.X(x+0.6*letter), y, draw.Style{Class: "spine", Stroke: inkColour, Width: 0.4})
		s.Text(f.X(x-0.9*letter), places[i]+0.35*letter, m.text, draw.TextStyle{Size: letter * 0.85, Anchor: f.anchor(draw.End)})
	}
}

// apart moves heights, given from the foot of the page upwards, so that
// neighbours are at least gap apart, each as near to its own as the ones
// below it allow.
func apart(ys []float64, gap float64) []float64 {
	out := append([]float64(nil), ys...)
	for i := 1; i < len(out); i++ {
		out[i] = min(out[i], out[i-1]-gap)
	}
	return out
}
