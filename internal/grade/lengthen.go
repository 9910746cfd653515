package grade

import (
	"strings"

	"thenar/internal/fault"
	"thenar/internal/sheet"
	"thenar/internal/units"
)

// lengths begins the paths of the lengths of a sheet's parts.
const lengths = "length."

// ownLength returns the length of the hand that the design's lengths are for; 0 if
// no length changes from size to size.
func (d *Design) ownLength() (units.Length, error) {
	given := false
	for path := range d.Sheet {
		given = given || strings.HasPrefix(path, lengths) && d.Sheet.Given(path) != ""
	}
	if !given || d.Rules.Length == FixedLengths {
		return 0, nil
	}
	h, err := d.Sheet.Hand()
	if err != nil {
		return 0, fault.Fields{{Path: "sheet.hand", Message: "is missing or wrong; lengths in proportion need the hand that they are for. Or write fixed for rules.length"}}
	}
	h, _ = h.Fill()
	return h.Length, nil
}

// lengthen makes the lengths of a sheet, which are for a hand of length own, those
// for its own hand, in proportion to both hands' lengths. A text that is no length
// stays; the sheet's request says why it can't be used.
func lengthen(s sheet.Sheet, own units.Length) {
	h, err := s.Hand()
	if err != nil {
		return
	}
	h, _ = h.Fill()
	for path, text := range s {
		if !strings.HasPrefix(path, lengths) {
			continue
		}
		if l, err := units.Parse(text, s.Unit()); err == nil {
			s[path] = units.FromMM(l.MM() * h.Length.MM() / own.MM()).Exact(s.Unit())
		}
	}
}
