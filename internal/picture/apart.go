package picture

// Apart moves places, given in rising order, so that each is at least a gap after the
// one before, with the least sum of squared moves. What would be too near moves together
// (the pool-adjacent-violators algorithm of isotonic regression, on the places less the
// gaps before them).
func Apart(want, gaps []float64) []float64 {
	type pool struct {
		sum float64
		n   int
	}
	var pools []pool
	before := make([]float64, len(want)) // gaps before each
	for i, w := range want {
		if i > 0 {
			before[i] = before[i-1] + gaps[i-1]
		}
		last := pool{w - before[i], 1}
		for n := len(pools); n > 0 && pools[n-1].sum*float64(last.n) > last.sum*float64(pools[n-1].n); n-- {
			last = pool{pools[n-1].sum + last.sum, pools[n-1].n + last.n}
			pools = pools[:n-1]
		}
		pools = append(pools, last)
	}
	out := make([]float64, 0, len(want))
	for _, p := range pools {
		for range p.n {
			out = append(out, p.sum/float64(p.n)+before[len(out)])
		}
	}
	return out
}
