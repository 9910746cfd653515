package division

// Number names a number of a division that can be fixed.
type Number struct {
	Of Part
	At int // the finger; of a bridge the one before it
}

// Part says what a number counts.
type Part int

// What is counted.
const (
	OfPalm     Part = iota // f_i
	OfBack                 // k_i
	OfBoth                 // h_i
	OfFinger               // n_i
	OfBridge               // x_j
	OfHand                 // N′, which is given, not fixed
	OfWish                 // t_i in whole stitches, which are given
	fixedParts = OfHand
)

var (
	fingerKeys = [Fingers]string{"index", "middle", "ring", "little"}
	bridgeKeys = [Bridges]string{"index_middle", "middle_ring", "ring_little"}
	partKeys   = [...]string{OfPalm: ".palm", OfBack: ".back", OfBoth: ".palm_and_back", OfFinger: ".stitches", OfWish: ".wanted"}
)

// Key returns the number's name in a plan: "index.palm", "ring_little".
func (n Number) Key() string {
	switch n.Of {
	case OfHand:
		return "hand_stitches"
	case OfBridge:
		return bridgeKeys[n.At]
	}
	return fingerKeys[n.At] + partKeys[n.Of]
}

// pin returns the pin of a number that can be fixed.
func (p *Pins) pin(n Number) *int {
	switch n.Of {
	case OfPalm:
		return &p.Palm[n.At]
	case OfBack:
		return &p.Back[n.At]
	case OfBoth:
		return &p.Both[n.At]
	case OfFinger:
		return &p.Stitches[n.At]
	}
	return &p.Bridge[n.At]
}

// fixed lists the numbers that are fixed.
func (p *Pins) fixed() []Number {
	var list []Number
	for of := range fixedParts {
		for at := range Fingers {
			if n := (Number{of, at}); (of != OfBridge || at < Bridges) && *p.pin(n) != 0 {
				list = append(list, n)
			}
		}
	}
	return list
}

// With returns the problem with one more number fixed, or with another value for it;
// 0 frees it.
func (p Problem) With(n Number, value int) Problem {
	*p.Pins.pin(n) = value
	return p
}

// Of returns a number of the division.
func (d *Division) Of(n Number) int {
	switch n.Of {
	case OfPalm:
		return d.Palm[n.At]
	case OfBack:
		return d.Back[n.At]
	case OfBoth:
		return d.Both(n.At)
	case OfFinger:
		return d.Stitches[n.At]
	}
	return d.Bridge[n.At]
}

// Rung is a value of a number, with all that gives way to it.
type Rung struct {
	Value    int
	Division Division // not set if the value can't be
	Can      bool     // whether it can
	// More is how much further off all fingers are together than without the change, in
	// 1/10 000 stitch: over PerStitch and the stitches in a mm, what it costs in mm.
	// Negative: nearer, since the bridges count, too.
	More int64
}

// Ladder appends the values of a number from reach below to reach above what it is
// in d, the best division of p. Other pins stay.
func Ladder(dst []Rung, p *Problem, d *Division, n Number, reach int) []Rung {
	for v := d.Of(n) - reach; v <= d.Of(n)+reach; v++ {
		r := Rung{Value: v}
		if v > 0 {
			q := p.With(n, v)
			if r.Division, r.Can = q.solve(); r.Can {
				r.More = r.Division.sumOff(p) - d.sumOff(p)
			}
		}
		dst = append(dst, r)
	}
	return dst
}

// sumOff returns how far all fingers are off together, in 1/10 000 stitch.
func (d *Division) sumOff(p *Problem) (sum int64) {
	for _, off := range d.Off(p) {
		sum += max(off, -off)
	}
	return sum
}
