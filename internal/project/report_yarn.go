package project

import (
	"thenar/internal/words"
	"thenar/internal/yarn"
)

// reportYarn is the yarn of one mitt, and of the pair.
type reportYarn struct {
	reportAmount
	Pair  reportAmount `json:"pair"`
	Loop  float64      `json:"loop_mm"`
	Loops int          `json:"loops"`
	Half  float64      `json:"half_interval"`
	From  string       `json:"from"`
	Balls *int         `json:"balls"`
}

type reportAmount struct {
	Metres float64  `json:"metres"`
	Low    float64  `json:"low"`
	High   float64  `json:"high"`
	Yards  float64  `json:"yards"`
	Grams  *float64 `json:"grams"`
}

func reportYarnOf(e yarn.Estimate, ball yarn.Ball, t words.Terms) reportYarn {
	r := reportYarn{
		reportAmount: reportAmountOf(e.One, ball), Pair: reportAmountOf(e.Pair, ball),
		Loop: e.Loop, Loops: e.Loops, Half: e.Half, From: t.Say(e.From.Words()),
	}
	if e.Balls > 0 {
		r.Balls = &e.Balls
	}
	return r
}

func reportAmountOf(a yarn.Amount, ball yarn.Ball) reportAmount {
	m := a.Metres()
	r := reportAmount{Metres: m.Mean, Low: m.Low, High: m.High, Yards: a.Yards().Mean}
	if g := a.Grams(ball).Mean; g > 0 {
		r.Grams = &g
	}
	return r
}
