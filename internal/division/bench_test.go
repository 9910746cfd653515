package division

import "testing"

// anAdult is a hand of 66 stitches at 30 over 10 cm: 235 mm round, its fingers by the
// ratios of testdata/ratios.json.
var anAdult = Problem{Stitches: 66, Wanted: [Fingers]int64{248_993, 251_869, 236_050, 210_876}}

func benchmark(b *testing.B, p Problem) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Solve(&p); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkSolve(b *testing.B)       { benchmark(b, anAdult) }
func BenchmarkSolveFixed(b *testing.B)  { benchmark(b, anAdult.With(Number{OfFinger, Middle}, 24)) }
func BenchmarkSolveBySide(b *testing.B) { benchmark(b, bySide()) }

// bySide is anAdult with stitches of palm and back fixed so that the best h_i don't
// come out: the rare way through byParity.
func bySide() Problem {
	return anAdult.With(Number{OfPalm, Index}, 8).With(Number{OfBoth, Index}, 17).With(Number{OfPalm, Ring}, 7).With(Number{OfBoth, Ring}, 15)
}
