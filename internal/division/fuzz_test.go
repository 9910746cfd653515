package division

import (
	"math/rand/v2"
	"testing"
)

// FuzzSolve divides hands of any count and wishes, with any numbers fixed, and the same
// reduced to sizes that have a division.
func FuzzSolve(f *testing.F) {
	f.Add(66, int64(248_988), int64(251_865), int64(236_045), int64(210_876), uint64(0))
	f.Add(8, int64(0), int64(0), int64(0), int64(0), uint64(1))
	f.Add(-5, int64(-1<<63), int64(1<<63-1), int64(7), int64(-7), uint64(2))
	f.Add(10_000, int64(100_000_000), int64(-100_000_000), int64(0), int64(50_000_000), uint64(3))
	f.Fuzz(func(t *testing.T, stitches int, a, b, c, d int64, seed uint64) {
		p := Problem{Stitches: stitches, Wanted: [Fingers]int64{a, b, c, d}}
		rng := rand.New(rand.NewPCG(seed, 9))
		checkDivision(t, &p)
		if seed%2 == 0 {
			p.Pins.Palm[rng.IntN(Fingers)] = int(rng.Int64())
			p.Pins.Bridge[rng.IntN(Bridges)] = -int(rng.Int64())
			checkDivision(t, &p)
			p.Pins = Pins{}
		}
		p.Stitches = LeastHand + stitches&0xff
		for i := range p.Wanted {
			p.Wanted[i] %= int64(2*p.Stitches) * PerStitch
		}
		checkDivision(t, &p)
		p.Pins = somePins(rng, &p)
		checkDivision(t, &p)
	})
}

// checkDivision checks a division against every bound and its cost against the definition.
// Bridges a stitch wider or narrower, with stitches given by one finger to another, are
// no better. What has no division is refused by at least one number.
func checkDivision(t *testing.T, p *Problem) {
	t.Helper()
	d, err := Solve(p)
	if err != nil {
		if e, ok := err.(*Impossible); !ok || len(e.Faults) == 0 || e.Error() == "" {
			t.Fatalf("%+v: %v", p, err)
		}
		return
	}
	if !keeps(p, &d) {
		t.Fatalf("%+v breaks a bound of %+v", d, p)
	}
	if d.Cost != costOf(p, &d) {
		t.Fatalf("%+v: cost %d, stated %d", d, costOf(p, &d), d.Cost)
	}
	for j := range Bridges {
		for by := -1; by <= 1; by++ {
			for from := range Fingers {
				for to := range Fingers {
					for _, sides := range [3][2]int{{1, 0}, {0, 1}, {1, 1}} {
						other := moved(p, &d, j, by, from, to, sides)
						if keeps(p, &other) && other.before(&d) {
							t.Fatalf("%+v is better than %+v: %+v", other, d, p)
						}
					}
				}
			}
		}
	}
}

// moved returns a division with bridge j changed and stitches of palm and back given by
// one finger to another.
func moved(p *Problem, d *Division, j, by, from, to int, sides [2]int) Division {
	o := *d
	o.Bridge[j] += by
	o.Palm[from] -= sides[0]
	o.Palm[to] += sides[0]
	o.Back[from] -= sides[1]
	o.Back[to] += sides[1]
	x := o.Bridge
	o.Stitches = [Fingers]int{o.Both(0) + x[0], o.Both(1) + x[0] + x[1], o.Both(2) + x[1] + x[2], o.Both(3) + x[2]}
	o.Cost = costOf(p, &o)
	return o
}

// keeps reports whether a division keeps to the bounds and pins, and its n_i follow from
// the rest.
func keeps(p *Problem, d *Division) bool {
	x, n := d.Bridge, d.Stitches
	palm, back, ok := 0, 0, true
	for i := range Fingers {
		apart := d.Back[i] - d.Palm[i]
		palm, back = palm+d.Palm[i], back+d.Back[i]
		ok = ok && -1 <= apart && apart <= 1 && d.Both(i) >= 2 && n[i] >= 6 &&
			allows(p.Pins.Palm[i], d.Palm[i]) && allows(p.Pins.Back[i], d.Back[i]) &&
			allows(p.Pins.Both[i], d.Both(i)) && allows(p.Pins.Stitches[i], n[i])
	}
	for j := range x {
		ok = ok && x[j] >= 1 && x[j] <= max(6, p.Pins.Bridge[j]) && allows(p.Pins.Bridge[j], x[j])
	}
	ok = ok && n == [Fingers]int{d.Both(0) + x[0], d.Both(1) + x[0] + x[1], d.Both(2) + x[1] + x[2], d.Both(3) + x[2]}
	return ok && palm == p.Stitches/2 && palm+back == p.Stitches
}

// costOf returns the cost of a division by its definition.
func costOf(p *Problem, d *Division) Cost {
	cost := unequal(d.Bridge)
	for _, off := range d.Off(p) {
		cost += Cost(off * off)
	}
	return cost
}
