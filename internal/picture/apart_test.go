package picture

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
)

// Places that are far enough apart stay; others move to where the sum of squared moves is
// least: no small move of what moves together makes it smaller (the condition of an optimum
// of a convex problem, checked by trying).
func TestApartMovesAsLittleAsCanBe(t *testing.T) {
	assert.Equal(t, []float64{0, 10, 30}, Apart([]float64{0, 10, 30}, []float64{5, 5}))
	assert.InDeltaSlice(t, []float64{-1, 3, 30}, Apart([]float64{0, 2, 30}, []float64{4, 5}), 1e-9)
	rng := rand.New(rand.NewPCG(22, 7))
	for range 200 {
		n := 1 + rng.IntN(7)
		want, gaps := make([]float64, n), make([]float64, n)
		for i := range want {
			if want[i] = rng.Float64() * 20; i > 0 {
				want[i] += want[i-1]
			}
			gaps[i] = rng.Float64() * 25
		}
		got := Apart(want, gaps[:n-1])
		cost := func(x []float64) (sum float64) {
			for i := range x {
				sum += (x[i] - want[i]) * (x[i] - want[i])
			}
			return sum
		}
		for from := range n {
			if from > 0 {
				assert.GreaterOrEqual(t, got[from]-got[from-1], gaps[from-1]-1e-9)
			}
			for to := from; to < n; to++ {
				for _, move := range []float64{-0.01, 0.01} {
					other := append([]float64(nil), got...)
					fits := true
					for i := range other {
						if i >= from && i <= to {
							other[i] += move
						}
						fits = fits && (i == 0 || other[i]-other[i-1] >= gaps[i-1])
					}
					assert.True(t, !fits || cost(other) >= cost(got)-1e-9, "%v %v", want, gaps)
				}
			}
		}
	}
}
