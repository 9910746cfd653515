package written

import "slices"

// ofBothSides are words by which a number is that of each side of a graft.
var ofBothSides = []string{"each", "both", "sets", "per"}

// grafts reads "Graft the thumb's 4 to the hand's 4": both sets end. Its items are the two
// sides, if both are told: "two sets of 8", "8 on each needle".
func (p *parser) grafts(s *Statement) bool {
	var sides []Number
	each := false
	for p.at < len(p.t) {
		each = each || slices.Contains(ofBothSides, p.peek().low)
		if one, ok := p.number(false); ok {
			if low := p.peek().low; low != "sets" && low != "-" && low != "needle" && low != "needles" {
				sides = append(sides, one)
			}
			continue
		}
		p.at++
	}
	s.Kind, s.All, s.Name = Finish, true, "graft"
	if len(sides) == 0 {
		return true
	}
	if s.Many = sides[0]; each && len(sides) == 1 {
		sides = append(sides, sides[0])
	}
	if len(sides) > 1 {
		s.Items = []Item{{Does: Hold, Times: sides[0]}, {Does: Hold, Times: sides[1]}}
	}
	return true
}

// fastens reads that the yarn is fastened off, or drawn through, without what: "Break wool and
// fasten off", "Cut yarn and pull through".
func (p *parser) fastens(s *Statement) bool {
	first, last := p.t[0].low, p.t[len(p.t)-1].low
	p.at = 0
	off := p.until("fasten")
	switch {
	case first == "fasten" && len(p.t) > 3, first != "fasten" && first != "break" && first != "cut" && first != "snip":
		return false
	case first != "fasten" && p.until("yarn", "wool", "thread", "cotton", "tail") > 3:
		return false // it may be one of several colours
	case last != "through" && (off+1 >= len(p.t) || p.t[off+1].low != "off"):
		return false
	}
	s.Kind, s.All, s.Name = Finish, true, "draw"
	return true
}
