package division

// span is the whole numbers from low to high, none if high is less than low.
type span struct{ low, high int }

func (s span) has(n int) bool { return s.low <= n && n <= s.high }

// cut leaves what both spans have.
func (s *span) cut(low, high int) { s.low, s.high = max(s.low, low), min(s.high, high) }

// bounds are the spans in which the numbers of a division lie.
type bounds struct {
	both, stitches [Fingers]span // h_i, n_i
	bridge         [Bridges]span // x_j
}

// maxOfFinger is more than n_i can be.
const maxOfFinger = 3 * MaxStitches

// bounds returns the spans that the pins leave. A fixed f_i leaves 2f_i − 1 …
// 2f_i + 1 for h_i, since palm and back of a finger differ by at most one; a fixed
// k_i likewise.
func (p *Problem) bounds() bounds {
	var b bounds
	for i := range Fingers {
		b.both[i] = span{fewestOfHand, p.Stitches - (Fingers-1)*fewestOfHand}
		b.stitches[i] = span{fewestStitches, maxOfFinger}
		f, k := p.Pins.Palm[i], p.Pins.Back[i]
		for _, half := range [2]int{f, k} {
			if half != 0 {
				b.both[i].cut(2*half-1, 2*half+1)
			}
		}
		if f != 0 && k != 0 {
			b.both[i].cut(f+k, f+k)
		}
		if n := p.Pins.Both[i]; n != 0 {
			b.both[i].cut(n, n)
		}
		if n := p.Pins.Stitches[i]; n != 0 {
			b.stitches[i].cut(n, n)
		}
	}
	for j, x := range p.Pins.Bridge {
		b.bridge[j] = span{narrowestBridge, WidestBridge}
		if x != 0 {
			b.bridge[j] = span{max(x, narrowestBridge), x}
		}
	}
	return b
}

// ofFinger returns the span of each n_i with bridges that have from low to high
// stitches: h_i, with the bridges beside it, must be within bounds, too.
func (b *bounds) ofFinger(low, high [Bridges]int) (spans [Fingers]span) {
	least, most := besides(low), besides(high)
	for i := range Fingers {
		spans[i] = b.stitches[i]
		spans[i].cut(b.both[i].low+least[i], b.both[i].high+most[i])
	}
	return spans
}

// inRange reports whether all numbers are small enough to be reckoned with.
func (p *Problem) inRange() bool {
	ok := LeastHand <= p.Stitches && p.Stitches <= MaxStitches
	for i := range Fingers {
		ok = ok && -MaxStitches*PerStitch <= p.Wanted[i] && p.Wanted[i] <= MaxStitches*PerStitch
		for _, n := range [4]int{p.Pins.Palm[i], p.Pins.Back[i], p.Pins.Both[i], p.Pins.Stitches[i]} {
			ok = ok && 0 <= n && n <= MaxStitches
		}
	}
	for _, x := range p.Pins.Bridge {
		ok = ok && 0 <= x && x <= MaxStitches
	}
	return ok
}
