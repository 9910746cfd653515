package view

import (
	"net/url"
	"strings"

	"github.com/a-h/templ"

	"thenar/internal/chart"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// explainer returns what explains the terms of the instructions, each where it
// is first used.
func (a Answer) explainer() *words.Explainer {
	return words.NewExplainer(a.Out.Terms, words.InInstructions()...)
}

// chartOf returns the address of the chart of a part.
func (a Answer) chartOf(part stitch.Part) templ.SafeURL {
	at := strings.TrimSuffix(string(a.Fit), string(FitDesk)) + string(ChartDesk)
	return templ.SafeURL(at + "?" + url.Values{"view": {string(chart.ViewOf(part))}}.Encode())
}
