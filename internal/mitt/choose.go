package mitt

import "math"

// choice is one way to make gusset, bridge and thumb of a hand of n stitches.
type choice struct {
	b, k, o, c, p, d int
	t                int
	cost             int64 // in nano mm²
}

func (x choice) held(step int) int { return x.b + step*x.k - x.o }

// search holds the wishes and the limits by which a choice is made.
type search struct {
	g            float64 // stitches per mm
	n            int     // hand stitches before the gusset
	after        int     // hand stitches wanted above it
	made         int     // increase rounds that are knitted already
	step         int     // stitches made in an increase round
	maxIncreases int     // increase rounds that the gusset's rounds have room for
	maxCorners   int     // corner decreases that the thumb's rounds have room for
	thumbAt      int     // the round of the thumb after which decreases may begin
	thumbEnd     int     // its last, or the last below the wanted edging if it is open
	closed       bool    // the thumb is closed and has no edging
	cornered     bool    // the thumb's decreases are knitted
	palm         float64 // P(1 + max(e, 0)) in mm
	palmMeasured bool
	thumb        float64 // exact target of the thumb in stitches
	stitch       Stitches
	grow         *growth
	make         *Make
	pins         *Pins

	straight bool // without a gusset
	onPalm   int  // the palm's stitches, which a straight thumb may take

	topRounds, roundsAbove int // the greatest number that a mitten's top and hand may have

	every []choice // all that cheapest looked at, in its order, unless nil
}

// choose returns the cheapest choice. The hand's count comes first, then the
// thumb's, then the sum of the weights, and none gives way to a later one. So
// c = b − o, which brings the hand back to its count, is tried with the nearest
// thumb first, then with thumbs further off. If the gusset is on the needles
// and another count is wanted above it, c brings the hand as near to that as it
// can, a repeat at a time. Another c (1 … 10, giving an allowed count) is tried
// only if nothing else exists, and one that gives a count that is not allowed
// only if numbers are pinned.
//
// It returns false if the pins, or the rounds, leave no choice.
func (s *search) choose() (choice, bool) {
	for s.after != s.n { // what is knitted has another count than is wanted above it
		if best, ok := s.nearestThumb(handAgain, false); ok {
			return best, true
		}
		s.after = towards(s.after, s.n, s.stitch.Repeat)
	}
	for _, bridge := range []bridgeRule{handAgain, handAllowed, handAny} {
		if bridge == handAny && !s.pinned() {
			break
		}
		for even := 0; even < 2; even++ {
			if best, ok := s.nearestThumb(bridge, even == 1); ok {
				return best, true
			}
			if !s.pinned() {
				break // an odd thumb comes only by pins
			}
		}
	}
	return choice{}, false
}

// towards returns the number one step from from on the way to to, but not
// beyond it.
func towards(from, to, step int) int {
	if from < to {
		return min(from+step, to)
	}
	return max(from-step, to)
}

// bridgeRule says which bridge counts c are tried.
type bridgeRule int

const (
	handAgain   bridgeRule = iota // c = b − o, or what leads to the count wanted above
	handAllowed                   // another c that gives an allowed count
	handAny                       // whatever a pin asks for
)

func (s *search) pinned() bool {
	p := s.pins
	return p.GussetBase.On || p.Increases.On || p.KeptOnHand.On || p.Held.On || p.Bridge.On ||
		p.PickedUp.On || p.ThumbDecreases.On || len(p.IncreaseRounds) > 0 || p.ThumbStitches.On || s.topRounds < maxRounds || s.roundsAbove < maxRounds
}

// nearestThumb walks the thumb's counts of one parity outwards from the
// target until one can be made.
func (s *search) nearestThumb(bridge bridgeRule, odd bool) (choice, bool) {
	if s.pins.ThumbStitches.On {
		t := s.pins.ThumbStitches.N
		if (t%2 == 1) != odd {
			return choice{}, false
		}
		return s.cheapest(bridge, t)
	}
	first := nearestIn(s.thumb, 2, boolInt(odd))
	widest := 2*maxBase + s.step*s.maxIncreases + maxBridge + maxExtra
	for off := 0; off <= widest+first; off += 2 {
		// At equal distance the larger count comes first.
		pair := [2]int{first - off, first + off}
		if float64(first+off)-s.thumb <= s.thumb-float64(first-off)+tie {
			pair = [2]int{first + off, first - off}
		}
		for i, t := range pair {
			if t < 1 || t > widest || (off == 0 && i == 1) {
				continue
			}
			if best, ok := s.cheapest(bridge, t); ok {
				return best, true
			}
		}
	}
	return choice{}, false
}

// cheapest finds the best choice for a thumb of t stitches. The decreases keep
// to the rounds before its edging or end; only where nothing does, the edging
// or the closing rounds give way to them.
func (s *search) cheapest(bridge bridgeRule, t int) (choice, bool) {
	within := s.within(t)
	if best, ok := s.cheapestOf(bridge, t, within); ok || within == s.maxCorners {
		return best, ok
	}
	return s.cheapestOf(bridge, t, s.maxCorners)
}

// within returns the greatest number of decreases d for which a thumb of t
// stitches has room below its end. They take ⌈d/2⌉ rounds, and a change to the
// edging's count takes one more.
func (s *search) within(t int) int {
	end, pace := s.thumbEnd, s.make.pace()
	if s.closed {
		end -= pace.closing(t)
	} else if n, _ := edgingCount(t, s.stitch.Rib); n != t {
		end--
	}
	if s.cornered {
		return s.maxCorners
	}
	return min(s.maxCorners, pace.corners(s.thumbAt, end))
}

// cheapestOf finds the best choice for a thumb of t stitches with at most corners
// decreases. It tries all b, c, p and d; K follows from them:
// t = b + sK − o + p − d.
func (s *search) cheapestOf(bridge bridgeRule, t, corners int) (choice, bool) {
	best, found := choice{}, false
	for b := 1; b <= maxBase && b < s.n; b++ {
		o := s.pins.KeptOnHand.Or(0)
		if !s.pins.GussetBase.Allows(b) || !s.grow.allows(b, o) {
			continue
		}
		low, high := s.bridges(bridge, b, o)
		for c := low; c <= high; c++ {
			if s.bridgeFits(bridge, b, o, c) {
				s.tryBridge(choice{b: b, o: o, c: c, t: t}, corners, &best, &found)
			}
		}
	}
	return best, found
}

// bridges returns the range of c to try under a rule.
func (s *search) bridges(bridge bridgeRule, b, o int) (low, high int) {
	if bridge == handAgain {
		c := s.after - s.n + b - o
		return c, c
	}
	if s.pins.Bridge.On {
		return s.pins.Bridge.N, s.pins.Bridge.N
	}
	return 1, maxBridge
}

// bridgeFits reports whether the rule allows c. There is no bridge at all only
// if it is pinned so, or if the stitches kept on the hand replace the base.
func (s *search) bridgeFits(bridge bridgeRule, b, o, c int) bool {
	if c < 0 || c > maxBridge || !s.pins.Bridge.Allows(c) {
		return false
	}
	if c == 0 && !s.pins.Bridge.On && o != b {
		return false
	}
	after := s.n - b + o + c
	return s.closes(b, after) && (bridge != handAllowed || s.stitch.allows(after))
}

// closes reports whether a mitten with after stitches above the bridge can be
// closed in the rounds that its hand and top may have.
func (s *search) closes(b, after int) bool {
	c, pace := s.make.closes(after), s.make.pace()
	if c.even > 0 && s.roundsAbove == int(pace) && s.n-b < 2*c.even {
		return false
	}
	return pace.takes(c.k) <= s.topRounds
}

// tryBridge tries every number of stitches picked up and decreased with one
// bridge.
func (s *search) tryBridge(x choice, corners int, best *choice, found *bool) {
	fixed := bridgeCost(float64(x.c) / s.g)
	for x.p = x.c; x.p <= x.c+maxExtra; x.p++ {
		if !s.pins.PickedUp.Allows(x.p) {
			continue
		}
		for x.d = 0; x.d <= corners; x.d++ {
			made := x.t + x.d - x.p - x.b + x.o
			if made < s.step || made%s.step != 0 || x.t < leastThumb(x.d) || !s.pins.ThumbDecreases.Allows(x.d) {
				continue
			}
			x.k = made / s.step
			m := x.held(s.step)
			if x.k > s.maxIncreases || x.k < s.made || x.o > made || m < 1 || !s.pins.Increases.Allows(x.k) || !s.pins.Held.Allows(m) {
				continue
			}
			x.cost = fixed + s.crotch(x.k) + shapeCost(x.b, x.c, x.p, x.d) + shareCost(m, s.n)
			if s.every != nil {
				s.every = append(s.every, x)
			}
			if !*found || x.before(*best) {
				*best, *found = x, true
			}
		}
	}
}

// leastThumb returns the least count that d decreases can leave: a decrease at
// each corner works four stitches into two.
func leastThumb(d int) int {
	if d > 0 && d%maxInOneRound == 0 {
		return 2
	}
	return 1
}

// crotch returns the cost, where the thumb parts, of k increase rounds.
func (s *search) crotch(k int) int64 {
	return crotchCost(float64(s.n+s.step*k)/s.g-s.palm, s.palmMeasured)
}

// before reports whether x is a better choice than y: cheaper, or at the same
// cost with the smaller |b − 3|, |p − c − 1|, d, K or b, in this order.
func (x choice) before(y choice) bool {
	for _, pair := range [][2]int64{
		{x.cost, y.cost},
		{int64(abs(x.b - 3)), int64(abs(y.b - 3))},
		{int64(abs(x.p - x.c - 1)), int64(abs(y.p - y.c - 1))},
		{int64(x.d), int64(y.d)},
		{int64(x.k), int64(y.k)},
		{int64(x.b), int64(y.b)},
	} {
		if pair[0] != pair[1] {
			return pair[0] < pair[1]
		}
	}
	return false
}

// allows reports whether a hand may have n stitches.
func (st Stitches) allows(n int) bool {
	return n > 0 && mod(n-st.Offset, st.Repeat) == 0
}

// nearestIn returns the number ≡ offset (mod repeat) nearest to exact, the larger
// at equal distance, and never below 0.
func nearestIn(exact float64, repeat, offset int) int {
	offset = mod(offset, repeat)
	n := nearest((exact-float64(offset))/float64(repeat))*repeat + offset
	for n < 0 {
		n += repeat
	}
	return n
}

// tie is the distance from half-way within which a target counts as half-way.
// Targets are products of measurements, whose floating-point error is far
// smaller.
const tie = 1e-9

// nearest returns the whole number nearest to exact, the larger at equal distance.
func nearest(exact float64) int { return int(math.Floor(exact + 0.5 + tie)) }

func abs(n int) int {
	if n < 0 {
		return -n
	}
	return n
}

func boolInt(b bool) int {
	if b {
		return 1
	}
	return 0
}

// palmTarget returns the girth in mm wanted round the palm where the thumb
// parts: P(1 + e), e by default max(e_hand, 0).
func (p *Plan) palmTarget() float64 { return p.Hand.Palm.MM() * (1 + p.Ease.Palm) }
