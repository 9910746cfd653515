package yarn

import (
	"math"

	"thenar/internal/mitt"
)

// Weight is a class of yarn by its gauge.
type Weight struct {
	Number       int
	Name         string
	Fewest, Most int    // stitches of stocking stitch over 4 in
	Needle       string // in mm
	NeedleUS     string
}

// weights are those of the trade body's standard yarn weight system (Craft
// Yarn Council; several pages that quote its table agree). The body calls
// them the most common ranges, guidelines only.
var weights = []Weight{
	{0, "lace", 33, 40, "1.5–2.25 mm", "US 000–1"},
	{1, "super fine", 27, 32, "2.25–3.25 mm", "US 1–3"},
	{2, "fine", 23, 26, "3.25–3.75 mm", "US 3–5"},
	{3, "light", 21, 24, "3.75–4.5 mm", "US 5–7"},
	{4, "medium", 16, 20, "4.5–5.5 mm", "US 7–9"},
	{5, "bulky", 12, 15, "5.5–8 mm", "US 9–11"},
	{6, "super bulky", 7, 11, "8–12.75 mm", "US 11–17"},
	{7, "jumbo", 1, 6, "12.75 mm and larger", "US 17 and larger"},
}

// WeightOf is the class of yarn that is usually knitted at so many stitches
// per mm; of two that share a gauge, the finer one. Finer than all is lace.
func WeightOf(stitches float64) Weight {
	n := int(math.Round(stitches * 101.6))
	for _, w := range weights {
		if n >= w.Fewest {
			return w
		}
	}
	return weights[len(weights)-1]
}

// Tails are the lengths of yarn in mm that a knitter leaves before the
// cast-on and keeps for the last edges.
type Tails struct {
	CastOn float64 // for a cast-on that uses its tail: 3 widths of the edge, and what is woven in
	Hand   float64 // to bind off the hand: 6 widths, and what is woven in; 0 for a closed top
	Thumb  float64 // the same of the thumb
	End    float64 // every other start and end
}

// TailsOf are the tails of a plan, by the same allowances as the estimate.
func TailsOf(p *mitt.Plan) Tails {
	width := func(n int) float64 { return float64(n) / p.Gauge.Stitches }
	t := Tails{CastOn: castOnWidths*width(p.Cuff.CastOn.N) + tail, End: tail}
	if p.Top == nil {
		t.Hand = castOffWidths*width(p.Body.EdgingStitches) + tail
		t.Thumb = castOffWidths*width(p.Thumb.EdgingStitches) + tail
	}
	return t
}
