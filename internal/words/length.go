package words

import (
	"fmt"
	"math"
	"slices"
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
	Until  string  // where it ends on the hand
	End    int     // the round that is begun there, if its end is worked otherwise; 0: none
	How    string  // how that end is worked: "the ribbing"
	Whole  float64 // from the lower edge to its end in mm, if that is what fixes it; 0: no

	unit units.Unit // that is told first
	rows bool       // its rounds are rows
	edge string     // where Whole is measured from
	from float64    // from where its tube was begun above it to its end in mm; 0: it begins there
	tip  bool       // that is a tip
	room float64    // that a closed tube leaves over the thumb or finger inside, in mm
}

// Words returns a length as in "19 rounds, about 6 cm / 2⅜ in; stop when it
// reaches where the thumb parts".
func (l Length) Words() string {
	text := Plural(l.Rounds, noun(l.rows)) + ", about " + Both(l.MM, l.unit)
	if l.Until != "" {
		text += "; " + l.stop()
	}
	return text
}

// Stop returns where the section ends as a sentence.
func (l Length) Stop() string { return capital(l.stop()) + "." }

// stop says where to stop, or which round is begun there; or of a tip, whose decreases
// have a number of rounds, what it covers then.
func (l Length) stop() string {
	text := l.place()
	if l.from == 0 {
		return text
	}
	at, began := ", about", "the cast-on"
	if l.End > 0 { // which says much already
		at = ". That is about"
	}
	if l.tip {
		began = "the tip"
	}
	return fmt.Sprintf("%s%s %s from %s", text, at, Both(l.from, l.unit), began)
}

// place is that without how far it is from where the tube was begun.
func (l Length) place() string {
	switch {
	case l.Whole > 0:
		return fmt.Sprintf("knit until it is %s from %s: %s", Both(l.Whole, l.unit), l.edge, l.Until)
	case l.How != "":
		return fmt.Sprintf("begin %s %d, %s, %s", noun(l.rows), l.End, l.How, l.Until)
	case l.End > 0:
		return fmt.Sprintf("try it on before %s %d: it should %s", noun(l.rows), l.End, l.Until)
	case strings.HasPrefix(l.Until, "has "):
		return "closed, it " + l.Until
	}
	return "stop when it " + l.Until
}

// Both returns a length in mm in centimetres and inches, the unit of a sheet first:
// "6 cm / 2⅜ in", "2⅜ in / 6 cm". Both are of the length to a whole millimetre, so that
// one can be worked out from the other.
func Both(mm float64, first units.Unit) string {
	l := units.FromMM(math.Round(mm))
	return inOrder(l.With(units.CM), l.With(units.IN), first)
}

// inOrder joins a length in centimetres and in inches, the unit of a sheet first.
func inOrder(cm, in string, first units.Unit) string {
	if first == units.IN {
		cm, in = in, cm
	}
	return cm + " / " + in
}

// UpTo returns a length in mm in both units as Both does, each rounded up to its finest
// step: "0.6 cm / ¼ in".
func UpTo(mm float64, first units.Unit) string {
	l := units.FromMM(mm)
	up := func(u units.Unit) string { return l.RoundUp(u).With(u) }
	return inOrder(up(units.CM), up(units.IN), first)
}

// Tail returns a length in mm that is only to be long enough, up to the next 5 cm,
// and the whole inches that are no shorter: "135 cm / 54 in".
func Tail(mm float64, first units.Unit) string {
	cm := 5 * math.Ceil(mm/50)
	return inOrder(fmt.Sprintf("%.0f cm", cm), fmt.Sprintf("%.0f in", math.Ceil(10*cm/units.Inch.MM())), first)
}

// Lengths returns the lengths of a mitt's sections, in the order knitted, in the unit of
// a sheet first.
func Lengths(p *mitt.Plan, m stitch.Mitt, first units.Unit) []Length {
	list := make([]Length, 0, len(m.Sections))
	whole, tip := 0.0, false
	for i := range m.Sections {
		s := &m.Sections[i]
		if len(s.Rounds) == 0 {
			continue
		}
		l := Length{Part: s.Part, Rounds: len(s.Rounds), MM: s.Reach(p.Gauge.Rounds), unit: first, rows: s.Noun() == "row", edge: LowerEdge(m), room: roomOver(p)}
		if s.CastOn > 0 {
			whole, tip = 0, s.About.Tip
		}
		whole += l.MM
		if s.Part.Over() == stitch.OverHeel && s.About.Until != "" {
			l.Whole, l.Until = whole, plainUntil(p)
		} else {
			l.ends(s, p.Gauge.Rounds)
			l.began(s, whole, tip, p.Gauge.Rounds)
		}
		list = append(list, l)
	}
	return list
}

// LowerEdge returns what the lower edge of a finished mitt is called, from which heights
// are measured. The cast-on of a hem lies inside.
func LowerEdge(m stitch.Mitt) string {
	switch {
	case slices.ContainsFunc(m.Sections, func(s stitch.Section) bool { return s.About.Folded > 0 }):
		return "the hem’s edge"
	case m.Down():
		return "the cuff’s edge"
	}
	return "the cast-on"
}

// plainUntil returns what begins on the hand above the plain rounds. The end of the
// forearm's bone stands out as a knob on the little finger's side of the wrist.
func plainUntil(p *mitt.Plan) string {
	switch {
	case !p.Parted():
		return "the hand begins there"
	case p.Construction() == mitt.Slit:
		return "the opening begins a little above the knob outside the wrist"
	case !p.Gusseted():
		return "that is at the knob outside the wrist"
	}
	return "the gusset begins at the knob outside the wrist"
}

// began fills in how far the end of a section that is worked down is from where its tube was
// begun. The round that brings a thumb in is begun where the thumb parts.
func (l *Length) began(s *stitch.Section, whole float64, tip bool, rounds float64) {
	if !s.Down || l.Until == "" {
		return
	}
	if n := len(s.Rounds); slices.Contains(s.Rounds[n-1].Ops, stitch.Take) {
		l.End, l.Until = n, strings.Replace(l.Until, "reaches ", "reach ", 1)
		whole -= 1 / rounds
	}
	if s.CastOn == 0 {
		l.from, l.tip = whole, tip
	}
}

// ends fills in where a section of so many rounds per mm ends on the hand.
func (l *Length) ends(s *stitch.Section, rounds float64) {
	switch begun := ending(s); {
	case begun == 0:
		l.Until = l.until(s)
	case s.Closed():
		l.End, l.Until = begun, "reach "+s.About.Until
		if below := float64(l.Rounds-begun+1)/rounds - l.room; below >= leastBelow {
			l.Until = fmt.Sprintf("end %s below %s", Both(below, l.unit), s.About.Until)
		}
	default:
		l.End, l.How = begun, "the ribbing"
		if fitsRib(s) > 0 {
			l.How = "for the ribbing"
		}
		l.Until = fmt.Sprintf("%s below %s", Both(float64(l.Rounds-begun+1)/rounds, l.unit), s.About.Until)
	}
}

// A closed thumb is thumbRoom mm longer than the thumb inside, in a glove, as its fingers,
// fingerRoom mm; a tip that is nearer than leastBelow mm is reached (common practice, no
// source).
const thumbRoom, fingerRoom, leastBelow = 4.0, 2.0, 2.0

func roomOver(p *mitt.Plan) float64 {
	if p.Fingered() {
		return fingerRoom
	}
	return thumbRoom
}

// ending returns the round with which a section begins to end: its ribbing, with the
// round that fits the stitches to it, or the decreases that close a thumb. It is 0 if a
// section ends as it goes on, or wholly so.
func ending(s *stitch.Section) int {
	n := len(s.Rounds)
	switch inside := s.About.Digit; {
	case s.About.Until == "" || s.Down:
		return 0
	case s.Closed() && inside != nil:
		for i, r := range s.Rounds {
			if i > 0 && r.In() == inside.Stitches && r.Out() < r.In() {
				return i + 1
			}
		}
	case s.About.Ribbed > 0 && s.About.Ribbed < n:
		if fits := fitsRib(s); fits > 0 {
			return fits
		}
		return n - s.About.Ribbed + 1
	}
	return 0
}

// fitsRib returns the round before a section's ribbing if it brings the stitches to a
// multiple of the rib; 0 if none does.
func fitsRib(s *stitch.Section) int {
	before := len(s.Rounds) - s.About.Ribbed
	if s.About.Ribbed > 0 && !s.Down && before > 1 && s.Rounds[before-1].Even && s.Rounds[before-1].In() != s.Rounds[before-1].Out() {
		return before
	}
	return 0
}

// until returns where on the hand a section ends.
func (l *Length) until(s *stitch.Section) string {
	switch about := s.About; {
	case about.Until == "":
		return ""
	case about.Short > 0:
		return fmt.Sprintf("ends %s below %s", Both(about.Short, l.unit), about.Until)
	case s.Closed() && !s.Down:
		room := mitt.TipRoom
		if about.Digit != nil {
			room = l.room
		}
		return fmt.Sprintf("has %s of room over %s", Both(room, l.unit), about.Until)
	default:
		return "reaches " + about.Until
	}
}
