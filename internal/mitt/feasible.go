package mitt

// feasible reports whether choose would find anything. It is quicker, since it
// need not look for the best: for each base, bridge, pick-up and number of
// decreases it only asks whether the pins leave any K.
func (s *search) feasible() bool {
	if s.straight {
		_, ok := s.chooseStraight()
		return ok
	}
	o := s.pins.KeptOnHand.Or(0)
	for b := 1; b <= maxBase && b < s.n; b++ {
		if !s.pins.GussetBase.Allows(b) || !s.grow.allows(b, o) {
			continue
		}
		for c := 0; c <= maxBridge; c++ {
			if !s.bridgeFits(handAny, b, o, c) || (!s.pinned() && !s.stitch.allows(s.n-b+o+c)) {
				continue
			}
			for p := c; p <= c+maxExtra; p++ {
				if s.pins.PickedUp.Allows(p) && s.increasesExist(b, o, p) {
					return true
				}
			}
		}
	}
	return false
}

// increasesExist reports whether any number of increases and decreases goes with
// a base b, with o stitches kept on the hand and p picked up.
func (s *search) increasesExist(b, o, p int) bool {
	for d := 0; d <= s.maxCorners; d++ {
		if !s.pins.ThumbDecreases.Allows(d) {
			continue
		}
		// The least K leaves a held stitch, a thumb, and what is to be kept.
		low := max(1, s.made, ceilDiv(max(o, o-b+1, leastThumb(d)+d-p-b+o), s.step))
		high := s.maxIncreases
		ok := s.only(&low, &high, s.pins.Increases, 0, 1) &&
			s.only(&low, &high, s.pins.Held, b-o, s.step) &&
			s.only(&low, &high, s.pins.ThumbStitches, b-o+p-d, s.step)
		if ok && low <= high {
			return true
		}
	}
	return false
}

// only narrows low … high to the K for which plus + step·K is the pinned number.
// It returns false if no whole K makes it.
func (s *search) only(low, high *int, pin Pin, plus, step int) bool {
	if !pin.On {
		return true
	}
	made := pin.N - plus
	if made%step != 0 {
		return false
	}
	k := made / step
	*low, *high = max(*low, k), min(*high, k)
	return true
}

func ceilDiv(n, by int) int {
	if n <= 0 {
		return 0
	}
	return (n + by - 1) / by
}
