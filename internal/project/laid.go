package project

import (
	"thenar/internal/chart"
	"thenar/internal/repeat"
	"thenar/internal/sheet"
)

// Laid is a repeat with what became of it on the plan.
type Laid struct {
	sheet.Numbered
	Came repeat.Came
}

// laidOn returns the repeats with what became of them on a chart.
func laidOn(list []sheet.Numbered, s chart.Source) []Laid {
	laid := make([]Laid, len(list))
	for i, came := range s.Came() {
		laid[i] = Laid{list[i], came}
	}
	return laid
}
