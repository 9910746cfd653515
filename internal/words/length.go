package words

import (
	"fmt"
	"math"
	"strings"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Length is the length of a section: in rounds, in mm by the gauge, and by
// where it ends on the hand, which is more reliable than either.
type Length struct {
	Part   stitch.Part
	Rounds int
	MM     float64
	Until  string // where it ends on the hand
}

// Words returns a length as in "19 rounds, about 6 cm / 2⅜ in; stop when it
// reaches where the thumb parts".
func (l Length) Words() string {
	text := Plural(l.Rounds, "round") + ", about " + Both(l.MM)
	if l.Until != "" {
		text += "; " + l.stop()
	}
	return text
}

// Stop returns where the section ends as a sentence.
func (l Length) Stop() string { return capital(l.stop()) + "." }

// stop says where to stop; or of a tip, whose decreases have a number of rounds,
// what it covers then.
func (l Length) stop() string {
	if strings.HasPrefix(l.Until, "covers ") {
		return "closed, it " + l.Until
	}
	return "stop when it " + l.Until
}

// Both returns a length in mm in centimetres and inches: "6 cm / 2⅜ in".
func Both(mm float64) string {
	l := units.FromMM(mm)
	return l.With(units.CM) + " / " + l.With(units.IN)
}

// Tail returns a length in mm that is only to be long enough, up to the next 5 cm,
// and as many whole inches: "135 cm / 53 in".
func Tail(mm float64) string {
	cm := 5 * math.Ceil(mm/50)
	return fmt.Sprintf("%.0f cm / %.0f in", cm, max(math.Ceil(mm/units.Inch.MM()), math.Round(10*cm/units.Inch.MM())))
}

// Lengths returns the lengths of a mitt's sections, in the order knitted.
func Lengths(p *mitt.Plan, m stitch.Mitt) []Length {
	list := make([]Length, 0, len(m.Sections))
	for i := range m.Sections {
		s := &m.Sections[i]
		rounds := len(s.Rounds)
		list = append(list, Length{s.Part, rounds, float64(rounds) / p.Gauge.Rounds, until(s)})
	}
	return list
}

// until returns where on the hand a section ends.
func until(s *stitch.Section) string {
	switch about := s.About; {
	case about.Until == "":
		return ""
	case about.Short > 0:
		return fmt.Sprintf("ends %s below %s", Both(about.Short), about.Until)
	case s.Closed():
		return "covers " + about.Until
	default:
		return "reaches " + about.Until
	}
}
