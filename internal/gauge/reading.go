package gauge

import "math"

// reading is a value per mm with its linear dependence on the reading errors:
// errors[2i] is that of the count of swatch i, errors[2i+1] that of the ruler,
// each the half-width of a rectangle as a share of the value. The same count
// over the same width was rounded alike, so it has its error but once.
type reading struct {
	value  float64
	errors []float64
}

// variance is that of a value as a share: a rectangle of half-width a has
// the variance a²/3.
func (r reading) variance() (v float64) {
	for _, a := range r.errors {
		v += a * a / 3
	}
	return v
}

// times multiplies by another value to the power of p, ±1: shares of error
// add up with their signs.
func (r reading) times(o reading, p float64) reading {
	out := reading{r.value * math.Pow(o.value, p), make([]float64, len(r.errors))}
	for i := range out.errors {
		out.errors[i] = r.errors[i] + p*o.errors[i]
	}
	return out
}

// weighted is the inverse-variance mean. A single value is kept as it is,
// without the rounding of weighing.
func weighted(list []reading) reading {
	if len(list) == 1 {
		return list[0]
	}
	out := reading{0, make([]float64, len(list[0].errors))}
	total := 0.0
	for _, r := range list {
		w := 1 / (r.value * r.value * r.variance())
		total += w
		out.value += w * r.value
		for i, e := range r.errors {
			out.errors[i] += w * r.value * e
		}
	}
	for i := range out.errors {
		out.errors[i] /= out.value
	}
	out.value /= total
	return out
}
