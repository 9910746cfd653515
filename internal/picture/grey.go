package picture

import (
	"math"
	"slices"

	"thenar/internal/chart"
)

// Tone returns the grey of a relative luminance from 0 to 1 (WCAG 2.2).
func Tone(l float64) string {
	two := hexPair(l)
	return "#" + two + two + two
}

// Greys returns the palette for a copier. The used yarns get greys in the order of
// their lightness, with equal contrast between neighbours. Among n ≤ 8 yarns it is
//
//	(L₁ + 0.05)/(L₂ + 0.05) = 21^(1/(n − 1)),  at most 2
//
// (WCAG 2.2), that is 1.54 for eight. The textures stay.
func Greys(p chart.Palette, used []chart.Yarn) chart.Palette {
	list := slices.Clone(used)
	light := func(y chart.Yarn) float64 {
		if l, ok := Luminance(y.Fill); ok {
			return l
		}
		return 1
	}
	slices.SortStableFunc(list, func(a, b chart.Yarn) int {
		switch la, lb := light(a), light(b); {
		case la > lb:
			return -1
		case la < lb:
			return 1
		}
		return 0
	})
	ratio := 2.0
	if n := len(list); n > 1 {
		ratio = min(ratio, math.Pow(21, 1/float64(n-1)))
	}
	out := slices.Clone(p)
	for i, y := range list {
		y.Fill = Tone(1.05/math.Pow(ratio, float64(i)) - 0.05)
		if at := slices.IndexFunc(out, func(o chart.Yarn) bool { return o.ID == y.ID }); at >= 0 {
			out[at].Fill = y.Fill
		} else {
			out = append(out, y)
		}
	}
	return out
}
