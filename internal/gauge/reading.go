package gauge

import "math"

// reading is a value per mm with its linear dependence on the reading errors:
// errors[2i] is that of the count of swatch i, errors[2i+1] that of the ruler,
// each the half-width of a rectangle as a share of the value. The same count
// over the same width was rounded alike, so it has its error but once.
//
// other is a standard deviation that no count shows, as a share; apart is one
// that only says how little a swatch tells of the work on the needles.
type reading struct {
	value        float64
	errors       []float64
	other, apart float64
}

// variance is that of a value as a share: a rectangle of half-width a has
// the variance a²/3.
func (r reading) variance() (v float64) {
	v = r.other * r.other
	for _, a := range r.errors {
		v += a * a / 3
	}
	return v
}

// times multiplies by another value to the power of p, ±1: shares of error
// add up with their signs.
func (r reading) times(o reading, p float64) reading {
	out := reading{
		value: r.value * math.Pow(o.value, p), errors: make([]float64, len(r.errors)),
		other: math.Hypot(r.other, o.other), apart: math.Hypot(r.apart, o.apart),
	}
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
	out := reading{errors: make([]float64, len(list[0].errors))}
	total := 0.0
	for _, r := range list {
		w := 1 / (r.value * r.value * (r.variance() + r.apart*r.apart))
		total += w
		out.value += w * r.value
		out.other = math.Hypot(out.other, w*r.value*r.other)
		for i, e := range r.errors {
			out.errors[i] += w * r.value * e
		}
	}
	for i := range out.errors {
		out.errors[i] /= out.value
	}
	out.other /= out.value
	out.value /= total
	return out
}
