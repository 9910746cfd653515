package makeup

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// FuzzLay lays pieces of any numbers, and of the same numbers reduced to sizes that
// can be laid. Each byte is one number; all is refused, or all is laid.
func FuzzLay(f *testing.F) {
	f.Add([]byte{100, 0, 1, 3, 0, 1, 0, 2, 40, 0, 0, 0, 1, 1, 60, 2, 9, 1, 2, 0}, false)
	f.Add([]byte{255, 90, 0, 0, 1, 2, 1, 1, 200, 0, 0, 0, 0, 0, 2, 1, 150, 0, 0, 0, 0, 0}, true)
	rng := rand.New(rand.NewPCG(1, 2))
	long := make([]byte, 600)
	for i := range long {
		long[i] = byte(rng.IntN(256))
	}
	f.Add(long, false)
	f.Add(long, true)
	f.Fuzz(func(t *testing.T, raw []byte, wild bool) {
		next := func(below int) int {
			if len(raw) == 0 {
				return 0
			}
			n := int(raw[0])
			if raw = raw[1:]; !wild {
				n %= below
			}
			return n
		}
		area := Area{Page: 1 + next(200), First: next(200), BothSides: next(2) == 1}
		var pieces []Piece
		for len(raw) > 0 && len(pieces) < 80 {
			p := Piece{Name: "piece", Above: next(6), WithNext: next(3) == 1}
			chart, words := next(3), next(3)
			for range 1 + next(3) {
				w := Way{Shrunk: next(5)}
				for k := range 1 + next(5) {
					part := Part{Height: 1 + next(90), Again: next(9), Keep: next(3) == 1, Chart: chart, Words: words}
					if k > 0 {
						part.Above = next(9)
					}
					w.Parts = append(w.Parts, part)
				}
				p.Ways = append(p.Ways, w)
			}
			pieces = append(pieces, p)
		}
		got, err := Lay(pieces, area)
		if err != nil {
			require.True(t, wild || len(pieces) > maxChoices, err)
			return
		}
		if len(pieces) > 0 {
			checkLayout(t, pieces, area, got)
		}
	})
}
