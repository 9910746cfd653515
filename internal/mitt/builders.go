package mitt

import "thenar/internal/stitch"

// builder turns a plan's numbers into the rounds of one section. Only the table
// of kinds says which builders a mitt has and in which order: a new
// construction is a file of builders and a list there.
type builder func(*Plan) stitch.Section

// Mitt turns the plan into rounds, always those of the right hand, with the
// builders of its kind and construction. A part without rounds is left out; the cast-on belongs
// to whichever part comes first.
//
// The round begins with the gusset's first stitch. Seen from the outside it is
// worked right to left, so on a right hand it crosses the palm, then the back.
func (p *Plan) Mitt() stitch.Mitt {
	builders := p.Kind.info().builders[p.Construction()]
	if p.Down() && p.Thumbed() {
		builders = builders[:len(builders)-1] // the thumb is worked first: see fromTip
	}
	m := stitch.Mitt{Sections: make([]stitch.Section, 0, len(builders))}
	for _, build := range builders {
		if s := build(p); len(s.Rounds) > 0 {
			m.Sections = append(m.Sections, s)
		}
	}
	if p.Down() {
		m.Sections = p.fromTip(m.Sections)
		return m
	}
	if p.Make.Flat {
		m = p.flat(m)
	}
	m.Sections[0].CastOn = p.OnNeedles()
	return m
}
