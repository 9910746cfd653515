package division

// sides says which stitches of each h_i are the palm's and which the back's. An even
// one is halved. Odd ones, from the index finger on, take their extra stitch in turn
// from the back, the palm, the back … (common practice: so does the glove of 1918 in
// testdata/gloves.json). Fixed f_i and k_i are kept: then the fewest fingers leave
// their turn, and these as near to the little finger as can be. It returns false if
// the pins leave no way in which the palm has its ⌊N′/2⌋ stitches.
func (p *Problem) sides(both [Fingers]int) (palm, back [Fingers]int, ok bool) {
	var turn [Fingers]int // stitches of the back more than of the palm
	sign := 1
	for i, h := range both {
		if h%2 != 0 {
			turn[i] = sign
			sign = -sign
		}
	}
	fewest := Fingers + 1
	for flips := range 1 << Fingers { // bit 3 turns the index finger round, bit 0 the little one
		var f, k [Fingers]int
		turned, inPalm, keeps := 0, 0, true
		for i, h := range both {
			more := turn[i]
			if flips>>(Fingers-1-i)&1 != 0 {
				keeps = keeps && more != 0
				more = -more
				turned++
			}
			f[i], k[i] = (h-more)/2, (h+more)/2
			inPalm += f[i]
			keeps = keeps && allows(p.Pins.Palm[i], f[i]) && allows(p.Pins.Back[i], k[i])
		}
		if keeps && inPalm == p.Stitches/2 && turned < fewest {
			palm, back, ok, fewest = f, k, true, turned
		}
		if fewest == 0 {
			break
		}
	}
	return palm, back, ok
}

// allows reports whether a pin leaves a number as it is.
func allows(pin, n int) bool { return pin == 0 || pin == n }

// byParity finds the best division if the pins of palm and back leave none for the
// best h_i. It says beforehand of each h_i whether it is even or odd, and of one
// with a fixed side also which side has more; that settles an h_i with a fixed side.
// Of the free ones as many must be odd as make palm and back come out.
func (s *search) byParity() {
	was, pins := s.bounds, &s.p.Pins
	s.step = 2
	for code := range 81 {
		missing, odd, settled := s.p.Stitches%2, 0, true
		s.bounds = was
		for i := range Fingers {
			more := code%3 - 1 // k_i − f_i where a side is fixed, else 1 for odd
			code /= 3
			f, k := pins.Palm[i], pins.Back[i]
			h := &s.bounds.both[i]
			switch {
			case f != 0:
				h.cut(2*f+more, 2*f+more)
				missing -= more
			case k != 0:
				h.cut(2*k-more, 2*k-more)
				missing -= more
			case more < 0:
				settled = false
			default:
				odd += more
				h.low += (h.low + more) % 2
			}
			settled = settled && h.low <= h.high
		}
		if settled && max(missing, -missing) <= odd && (odd-missing)%2 == 0 {
			s.walk()
		}
	}
	s.bounds = was
}
