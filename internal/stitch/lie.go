package stitch

import "slices"

// Lies returns the number, from the section's lower edge on the hand, of the round that
// is worked as number r; and as well the number in which the rth round from there is
// worked.
func (s *Section) Lies(r int) int {
	if s.Down {
		return len(s.Rounds) + 1 - r
	}
	return r
}

// Above returns the stitches at the upper edge, on the hand, of the round that is
// worked as number r.
func (s *Section) Above(r int) int {
	if s.Down {
		return s.Around(s.Rounds[r-1].In())
	}
	return s.Around(s.Rounds[r-1].Out())
}

// Below returns the stitches at the lower edge, on the hand, of the round that is worked
// as number r.
func (s *Section) Below(r int) int {
	if s.Down {
		return s.Around(s.Rounds[r-1].Out())
	}
	return s.Around(s.Rounds[r-1].In())
}

// Joins returns the set of stitches at which the section joins the rest of the mitt: that
// it takes up, or that its end puts aside for another; "" if there is none.
func (s *Section) Joins() Set {
	for _, set := range s.From {
		if !set.Lies() {
			return set
		}
	}
	for i := range s.Finish.Ops {
		if set := s.Finish.SetAt(i); s.Down && set != "" && set != GapOfThumb {
			return set
		}
	}
	return ""
}

// SeamOpen reports whether the seam is left open along the section: the thumb comes out
// between the ends of its rows.
func (s *Section) SeamOpen() bool { return s.Seam > 0 && s.About.Ends > 0 }

// SeamByThumb reports whether the seam lies on the thumb's side, where the thumb comes out
// of it; else it lies on the little finger's.
func (m Mitt) SeamByThumb() bool {
	return slices.ContainsFunc(m.Sections, func(s Section) bool { return s.SeamOpen() })
}

// AfterJoin returns the first round that lies below where what was set aside comes into the
// section: the plain row after that of the join. Without a join it is past the last round.
func (s *Section) AfterJoin() int {
	at := slices.IndexFunc(s.Rounds, func(r Round) bool { return slices.Contains(r.Ops, Take) })
	if at < 0 {
		return len(s.Rounds) + 1
	}
	return at + 2
}

// Upward returns the sections with rounds as they lie on the hand: from the cuff's edge
// up, what covers a thumb or finger after them, and last a cap.
func (m Mitt) Upward() []*Section {
	var tube, digits, caps []*Section
	for i := range m.Sections {
		switch s := &m.Sections[i]; {
		case len(s.Rounds) == 0:
		case s.Part.Over() == OverDigit:
			digits = append(digits, s)
		case s.Part.Over() == OverCap:
			caps = append(caps, s)
		default:
			tube = append(tube, s)
		}
	}
	if m.Down() {
		slices.Reverse(tube)
	}
	return append(append(tube, digits...), caps...)
}

// Down reports whether the mitt is worked from the fingertips to the cuff.
func (m Mitt) Down() bool {
	return slices.ContainsFunc(m.Sections, func(s Section) bool { return s.Down })
}

// Order returns a part's place in the order worked, from 1; 0 if the mitt has no such
// part.
func (m Mitt) Order(p Part) int {
	return 1 + slices.IndexFunc(m.Sections, func(s Section) bool { return s.Part == p })
}

// Order returns the part's place in the order worked, from 1, or 0 if the part is not
// in the table or can't be worked so. From the fingertips down the thumb comes first, then
// what lies highest; the fingers of a glove are never worked so.
func Order(p Part, down bool) int {
	at := p.Order()
	switch {
	case p == Gap:
		return len(parts) + 1
	case !down || at == 0:
		return at
	}
	if p == Thumb {
		return 1
	}
	if at >= Little.Order() {
		return 0
	}
	return Little.Order() - at + 1
}
