package mitt

// straight chooses a thumb without a gusset. At the height where the thumb parts, w
// stitches are knitted with waste yarn. It is taken out later, and leaves w loops below,
// w − 1 whole ones above, and at each corner half a loop with its strand, which makes one
// (common practice, no source). So with d ≤ 2 decreased at the corners the thumb has
//
//	t = 2w + 1 − d
//
// and w = ⌊t/2⌋, as long as nothing else is fixed.
func (d *draft) straight() error {
	d.gussetRounds()
	s := d.search()
	best, ok := s.chooseStraight()
	if !ok {
		return d.conflict(s)
	}
	d.takeStraight(best, s)
	return d.inset()
}

// widestStraight is the greatest number of corner decreases of a straight thumb.
const widestStraight = 2

// chooseStraight returns the choice whose thumb is nearest to its target. Its even
// counts come first; an odd one comes only by fixed numbers, or where nothing else
// exists.
func (s *search) chooseStraight() (choice, bool) {
	for odd := range 2 {
		if best, ok := s.nearestStraight(odd == 1); ok {
			return best, true
		}
	}
	return choice{}, false
}

// nearestStraight walks the thumb's counts of one parity outwards from the target.
func (s *search) nearestStraight(odd bool) (choice, bool) {
	if s.pins.ThumbStitches.On {
		t := s.pins.ThumbStitches.N
		if (t%2 == 1) != odd {
			return choice{}, false
		}
		return s.straightOf(t)
	}
	first := nearestIn(s.thumb, 2, boolInt(odd))
	widest := 2*s.onPalm + 1
	for off := 0; off <= widest+first; off += 2 {
		pair := [2]int{first - off, first + off}
		if float64(first+off)-s.thumb <= s.thumb-float64(first-off)+tie {
			pair = [2]int{first + off, first - off} // at equal distance the larger comes first
		}
		for _, t := range pair {
			if best, ok := s.straightOf(t); ok {
				return best, true
			}
		}
	}
	return choice{}, false
}

// straightOf returns the choice for a thumb of t stitches with the fewest decreases. They
// keep to the rounds before its edging or end; only where nothing does, those give way.
func (s *search) straightOf(t int) (choice, bool) {
	if t < 1 {
		return choice{}, false
	}
	for _, corners := range [2]int{s.within(t), s.maxCorners} {
		for x := (choice{t: t}); x.d <= min(corners, widestStraight); x.d++ {
			w := (t + x.d - 1) / 2
			if (t+x.d)%2 == 0 || w < 1 || w > s.onPalm || !s.closes(w, s.n) || t < leastThumb(x.d) || !s.pins.ThumbDecreases.Allows(x.d) || !s.pins.Held.Allows(w) {
				continue
			}
			x.c = w
			return x, true
		}
	}
	return choice{}, false
}

// takeStraight writes what a search has chosen into the plan.
func (d *draft) takeStraight(x choice, s *search) {
	p := &d.plan
	w := x.c
	p.Thumb.Held, p.Thumb.OnWaste, p.Thumb.PickedUp, p.Thumb.Closed = w, w, w+1, s.closed
	p.Thumb.FirstRound, p.Thumb.Decreased = 2*w+1, x.d
	p.Thumb.Stitches = Count{N: x.t, Exact: s.thumb, Below: x.t - 2, Above: x.t + 2, Pinned: d.pins.ThumbStitches.On}
	d.withoutGusset()
}

// withoutGusset keeps the hand on its count N beside the base of the thumb. There, with P
// the palm with the thumb laid in and g stitches over a mm, it stretches by P·g/N − 1.
func (d *draft) withoutGusset() {
	p := &d.plan
	p.Bridge.HandAfter = p.Body.Stitches.N
	p.MoundStretch = p.Hand.Palm.MM()*d.g/float64(p.Body.Stitches.N) - 1
}

// mostOverMound is the stretch over the base of the thumb up to which nothing is said
// (common practice, no source).
const mostOverMound = 0.15

// warnMound says that a hand without a gusset stretches much over the thumb's base.
func (d *draft) warnMound() {
	p := &d.plan
	if p.MoundStretch > mostOverMound+1e-9 {
		least := p.Hand.Palm.MM() * d.g / (1 + mostOverMound)
		need := nearestIn(least, p.Stitch.Repeat, p.Stitch.Offset)
		if float64(need) < least-tie {
			need += p.Stitch.Repeat
		}
		p.say("mound_stretch", "The hand stretches by %.1f\u00a0%% over the thumb’s base, which may pull: %d stitches would do, or a gusset.",
			p.MoundStretch*100, need)
	}
}
