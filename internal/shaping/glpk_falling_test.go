package shaping

import "fmt"

// falling adds the edges of a problem whose intervals never grow. A node n(k,r,d) is
// change k in round r, d rounds after the change before it; a step s(k,r,d) is change
// k in round r, after which d rounds or fewer may pass. From a node the unit goes on
// at the same distance, or pays λ to reach the step of one round less. The first
// distance is free.
func (w *network) falling() {
	p := w.p
	longest := p.Rounds
	step := func(i, r, d int) string { return fmt.Sprintf("s_%d_%d_%d", i, r, d) }
	for r := w.low(1); r <= w.high(1); r++ {
		if allowed(p.Only, r) {
			w.edge("source", step(1, r, longest), w.between(0, 1, r))
		}
	}
	for i := 1; i < w.k; i++ {
		for r := w.low(i); r <= w.high(i); r++ {
			if !allowed(p.Only, r) {
				continue
			}
			for d := longest; d >= p.Gap; d-- {
				if d > p.Gap {
					w.edge(step(i, r, d), step(i, r, d-1), 0)
				}
				if i > 1 && r-d >= w.low(i-1) && d > p.Gap {
					w.edge(w.node(i, r, d), step(i, r, d-1), float64(p.Lambda)/1000)
				}
				if next := r + d; next <= w.high(i+1) && allowed(p.Only, next) {
					cost := w.between(i, r, next)
					w.edge(step(i, r, d), w.node(i+1, next, d), cost)
					if i > 1 && r-d >= w.low(i-1) {
						w.edge(w.node(i, r, d), w.node(i+1, next, d), cost)
					}
				}
			}
		}
	}
	for r := w.low(w.k); r <= w.high(w.k); r++ {
		for d := p.Gap; allowed(p.Only, r) && r-d >= w.low(w.k-1); d++ {
			w.edge(w.node(w.k, r, d), "sink", w.between(w.k, r, p.Rounds+1))
		}
	}
}
