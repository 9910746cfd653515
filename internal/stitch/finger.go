package stitch

import "slices"

// OfPalm returns how many stitches of the palm a section has that covers a finger, or that
// is divided into fingers with others set aside; 0 for any other section.
func (m Mitt) OfPalm(s *Section) int {
	switch {
	case s.About.Digit != nil:
		return s.About.Digit.Palm
	case s.Part != UpperHand:
		return 0
	}
	n := 0
	for i := m.Order(s.Part); i < len(m.Sections); i++ {
		if d := m.Sections[i].About.Digit; d != nil {
			n += d.Palm
		}
	}
	return n
}

// OfFinger reports whether the section covers one of the four fingers.
func (s *Section) OfFinger() bool { return s.About.Digit != nil && s.About.Digit.Palm > 0 }

// Fingered reports whether the hand is divided into fingers.
func (m Mitt) Fingered() bool {
	return slices.ContainsFunc(m.Sections, func(s Section) bool { return s.OfFinger() })
}
