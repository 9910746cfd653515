package division

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"sync/atomic"
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/testenv"
)

// enumeration tries every division of a hand: every way to share out the palm, every way
// to share out the back, every three bridges. It shares nothing with the solver but
// the problem, and follows the definitions word by word.
type enumeration struct {
	p     *Problem
	found bool
	best  Division
}

func enumerate(p *Problem) (Division, bool) {
	en := enumeration{p: p}
	palm, back := p.Stitches/2, p.Stitches-p.Stitches/2
	var f, k [Fingers]int
	for f[0] = 0; f[0] <= palm; f[0]++ {
		for f[1] = 0; f[0]+f[1] <= palm; f[1]++ {
			for f[2] = 0; f[0]+f[1]+f[2] <= palm; f[2]++ {
				f[3] = palm - f[0] - f[1] - f[2]
				for k[0] = max(f[0]-1, 0); k[0] <= f[0]+1; k[0]++ {
					for k[1] = max(f[1]-1, 0); k[1] <= f[1]+1; k[1]++ {
						for k[2] = max(f[2]-1, 0); k[2] <= f[2]+1; k[2]++ {
							k[3] = back - k[0] - k[1] - k[2]
							en.bridges(f, k)
						}
					}
				}
			}
		}
	}
	return en.best, en.found
}

// bridges tries every bridge beside a division of palm and back.
func (en *enumeration) bridges(f, k [Fingers]int) {
	for i := range Fingers {
		apart := f[i] - k[i]
		if apart < -1 || apart > 1 || f[i] < 0 || k[i] < 0 || f[i]+k[i] < 2 {
			return
		}
		if en.breaks(en.p.Pins.Palm[i], f[i]) || en.breaks(en.p.Pins.Back[i], k[i]) || en.breaks(en.p.Pins.Both[i], f[i]+k[i]) {
			return
		}
	}
	for x1 := 1; x1 <= max(6, en.p.Pins.Bridge[0]); x1++ {
		for x2 := 1; x2 <= max(6, en.p.Pins.Bridge[1]); x2++ {
			for x3 := 1; x3 <= max(6, en.p.Pins.Bridge[2]); x3++ {
				n := [Fingers]int{f[0] + k[0] + x1, f[1] + k[1] + x1 + x2, f[2] + k[2] + x2 + x3, f[3] + k[3] + x3}
				en.note(Division{Palm: f, Back: k, Bridge: [Bridges]int{x1, x2, x3}, Stitches: n})
			}
		}
	}
}

func (en *enumeration) breaks(pin, n int) bool { return pin != 0 && pin != n }

// note keeps a division if it is allowed and comes before the best so far.
func (en *enumeration) note(d Division) {
	for j, x := range d.Bridge {
		if en.breaks(en.p.Pins.Bridge[j], x) {
			return
		}
	}
	var cost int64
	for i, n := range d.Stitches {
		if n < 6 || en.breaks(en.p.Pins.Stitches[i], n) {
			return
		}
		off := int64(n)*10_000 - en.p.Wanted[i]
		cost += off * off
	}
	a, b := int64(d.Bridge[0]-d.Bridge[1]), int64(d.Bridge[1]-d.Bridge[2])
	cost += (a*a + b*b) * 25_000_000 // ¼ of 10 000²
	d.Cost = Cost(cost)
	if !en.found || d.Cost < en.best.Cost || d.Cost == en.best.Cost && rank(&d, &en.best) < 0 {
		en.found, en.best = true, d
	}
}

// rank compares divisions of the same cost.
func rank(a, b *Division) int {
	sum := func(d *Division) int { return d.Bridge[0] + d.Bridge[1] + d.Bridge[2] }
	if c := sum(a) - sum(b); c != 0 {
		return c
	}
	if c := slices.Compare(b.Stitches[:], a.Stitches[:]); c != 0 {
		return c
	}
	if c := slices.Compare(a.Bridge[:], b.Bridge[:]); c != 0 {
		return c
	}
	out, in := outOfTurn(a), outOfTurn(b)
	if c := len(out) - len(in); c != 0 {
		return c
	}
	return -slices.Compare(out, in) // later fingers are better
}

// outOfTurn lists the fingers whose extra stitch is not where it is when back and palm
// take turns from the index finger on.
func outOfTurn(d *Division) (list []int) {
	backNext := true
	for i := range Fingers {
		if d.Palm[i] == d.Back[i] {
			continue
		}
		if backNext != (d.Back[i] > d.Palm[i]) {
			list = append(list, i)
		}
		backNext = !backNext
	}
	return list
}

// wishes returns targets for a hand: like a hand's, of equal parts, extreme, and such
// that many divisions cost the same.
func wishes(rng *rand.Rand, stitches int) [][Fingers]int64 {
	n := int64(stitches) * PerStitch
	spread := func(share float64) int64 {
		return int64(share*1.07*float64(n)*(1+0.06*rng.NormFloat64())) + 16_000
	}
	anything := func(to int64) int64 { return rng.Int64N(2*to+1) - to }
	halves := func() int64 { return PerStitch / 2 * rng.Int64N(int64(stitches)+12) }
	return [][Fingers]int64{
		{spread(0.324), spread(0.328), spread(0.306), spread(0.271)},
		{halves(), halves(), halves(), halves()},
		{anything(n), anything(n), anything(n), anything(n)},
		{n / 4, n / 4, n / 4, n / 4},
		{},
		{2 * n, 0, 0, 0},
		{0, 0, -n, 3 * n},
		{0, 2 * n, 2 * n, 0},
		{MaxStitches * PerStitch, MaxStitches * PerStitch, MaxStitches * PerStitch, MaxStitches * PerStitch},
		{-MaxStitches * PerStitch, MaxStitches * PerStitch, 0, 0},
	}
}

// All hands up to 36 stitches, with fingers of every kind wanted.
func TestEqualsEnumeration(t *testing.T) {
	for stitches := 1; stitches <= 36; stitches++ {
		t.Run(fmt.Sprint(stitches), func(t *testing.T) {
			t.Parallel()
			rng := rand.New(rand.NewPCG(24, uint64(stitches)))
			for range testenv.Cases(1, 20) {
				kinds := wishes(rng, stitches)
				if stitches > 24 { // which take long
					kinds = testenv.Some(2, kinds)
				}
				for _, wanted := range kinds {
					compare(t, &Problem{Stitches: stitches, Wanted: wanted})
				}
			}
		})
	}
}

func compare(t *testing.T, p *Problem) (possible bool) {
	t.Helper()
	want, possible := enumerate(p)
	got, err := Solve(p)
	if possible != (err == nil) {
		t.Fatalf("%+v: possible %v, but %v", p, possible, err)
	}
	if got != want {
		t.Fatalf("%+v:\nsolved     %+v\nenumerated %+v", p, got, want)
	}
	return possible
}

// Hands with numbers fixed at random: either both find the same division or neither
// finds one. Each number that the error names works when it is changed as
// it says, and no value nearer to the fixed one does.
func TestEqualsEnumerationWithPins(t *testing.T) {
	var solved, refused atomic.Int64
	t.Run("hands", func(t *testing.T) {
		for stitches := 8; stitches <= 36; stitches++ {
			t.Run(fmt.Sprint(stitches), func(t *testing.T) {
				t.Parallel()
				rng := rand.New(rand.NewPCG(25, uint64(stitches)))
				for range testenv.Cases(4, 600) {
					p := Problem{Stitches: stitches, Wanted: wishes(rng, stitches)[rng.IntN(4)]}
					p.Pins = somePins(rng, &p)
					if compare(t, &p) {
						solved.Add(1)
					} else {
						refused.Add(1)
						checkFaults(t, &p)
					}
				}
			})
		}
	})
	t.Logf("%d solved, %d refused", solved.Load(), refused.Load())
	assert.Less(t, solved.Load(), 4*refused.Load(), "both are tried")
	assert.Less(t, refused.Load(), 4*solved.Load(), "both are tried")
}

// somePins fixes some numbers: those of another hand's division, often moved a little.
func somePins(rng *rand.Rand, p *Problem) (pins Pins) {
	other := Problem{Stitches: p.Stitches, Wanted: wishes(rng, p.Stitches)[rng.IntN(5)]}
	d, err := Solve(&other)
	if err != nil {
		panic(err)
	}
	for range 1 + rng.IntN(7) {
		n := Number{Part(rng.IntN(int(fixedParts))), rng.IntN(Fingers)}
		if n.Of == OfBridge {
			n.At %= Bridges
		}
		v := d.Of(n)
		if rng.IntN(3) == 0 {
			v += rng.IntN(5) - 2
		}
		*pins.pin(n) = max(v, 0)
	}
	return pins
}

// checkFaults checks an error against the enumeration.
func checkFaults(t *testing.T, p *Problem) {
	t.Helper()
	_, err := Solve(p)
	e, ok := err.(*Impossible)
	if !ok || len(e.Faults) == 0 {
		t.Fatalf("%+v: %v names nothing", p, err)
	}
	can := func(q Problem) bool { _, ok := enumerate(&q); return ok }
	if e.Together {
		q := *p
		for _, f := range e.Faults {
			q = q.With(f.Number, f.Works)
		}
		if !can(q) {
			t.Fatalf("%+v: %v don't work together", p, e)
		}
		return
	}
	for _, f := range e.Faults {
		if !can(p.With(f.Number, f.Works)) {
			t.Fatalf("%+v: %v doesn't work", p, f)
		}
		for off := 1; off < max(f.Works-f.Value, f.Value-f.Works); off++ {
			for _, v := range [2]int{f.Value - off, f.Value + off} {
				if v > 0 && can(p.With(f.Number, v)) {
					t.Fatalf("%+v: %v, but %d is nearer", p, f, v)
				}
			}
		}
		alone := Problem{Stitches: p.Stitches, Wanted: p.Wanted}.With(f.Number, f.Value)
		for _, n := range f.With {
			alone = alone.With(n, *p.Pins.pin(n))
		}
		if can(alone) {
			t.Fatalf("%+v: %v stands beside those that are named", p, f)
		}
	}
}
