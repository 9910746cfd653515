package gauge

import "math"

// reading is a value per mm that depends linearly on the reading errors. Swatches
// alike in count, width and fineness were rounded alike, so they share one error
// of the count.
type reading struct {
	value  float64
	errors []float64 // half-widths, as shares of value: [2i] of the count of swatch i, [2i+1] of the ruler over it
	other  float64   // standard deviation of what no count shows, as a share
	apart  float64   // standard deviation by which the mitt differs from this swatch, as a share; only for weights
}

// variance returns the variance of the value as a share of it. A rectangle of
// half-width a has the variance a²/3.
func (r reading) variance() (v float64) {
	v = r.other * r.other
	for _, a := range r.errors {
		v += a * a / 3
	}
	return v
}

// times returns r · o^p, with p = ±1. Errors, as shares, add up with their
// signs.
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

// weighted returns the mean weighted by inverse variance. A single value is
// returned unchanged, free of rounding errors.
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
