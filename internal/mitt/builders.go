package mitt

import "thenar/internal/stitch"

// builder turns a plan's numbers into the rounds of one section. Which builders
// a mitt has, and in which order they are worked, stands in the table of kinds
// and nowhere else: a new construction is a file with builders and a line there.
type builder func(*Plan) stitch.Section

// Mitt turns the plan into rounds, always as the right hand, by the builders of
// its kind. A part without rounds is left out; what is cast on then stands with
// the part that comes first.
//
// The round begins with the gusset's first stitch. Worked right to left on
// the outside, a right hand's round crosses the palm and then the back.
func (p *Plan) Mitt() stitch.Mitt {
	builders := p.Kind.info().builders
	m := stitch.Mitt{Sections: make([]stitch.Section, 0, len(builders))}
	for _, build := range builders {
		if s := build(p); len(s.Rounds) > 0 {
			m.Sections = append(m.Sections, s)
		}
	}
	m.Sections[0].CastOn = p.Cuff.CastOn.N
	return m
}
