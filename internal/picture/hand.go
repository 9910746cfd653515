package picture

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

// HandOptions says how a hand is shown.
type HandOptions struct {
	Left    bool       // the left hand
	Unit    units.Unit // of the labels; cm if it is unknown
	Example bool       // an example of where the tapes go, without values
	Named   bool       // each tape bears its name beside its value
	Worn    *Worn      // what the mitt is knitted in; nil: undyed
	Fingers bool       // a hand without a plan: its fingers are measured, too
	Apart   bool       // of such a hand the fingers alone are measured, and it spreads them
	Letter  float64    // size of the letters in mm of the drawing; 0: a share of the hand
}

func (o HandOptions) unit() units.Unit {
	if o.Unit.Size() == 0 {
		return units.CM
	}
	return o.Unit
}

// side returns the hand's side as it begins a sentence.
func (o HandOptions) side() string {
	if o.Left {
		return "Left"
	}
	return "Right"
}

// letterSize returns the size of the letters in mm, a fixed share of the drawing whatever the
// size of the hand.
func letterSize(h *hand.Hand) float64 {
	return 0.042 * min(h.Length.MM(), h.Circumference.MM())
}

// Hand draws the hand to scale in mm, palm towards the viewer, so that a right hand has its
// thumb at the right. On it is the mitt of the plan, by the girths and lengths of its fabric,
// with the gusset's last round where the thumb parts. At the left is the spine, with a tick for
// every round and the end of every section. Every measurement has its tape.
//
// For a page's script, each section is a group of class "section" with its part in
// data-section, its rounds, and its upper and lower edge on the page. In it is an invisible
// path of class "band" for each round.
func Hand(p *mitt.Plan, o HandOptions) *draw.Scene {
	c, m := handPage(p, o)
	c.s.Label = fmt.Sprintf("%s hand to scale, palm towards you, %s round and %s long, with a %s on it: %s.", o.side(),
		p.Hand.Circumference.With(o.unit()), p.Hand.Length.With(o.unit()), p.Kind.Words(), m.words())
	return c.s
}

// Frame returns the height in mm of the page on which Hand draws the plan, and the distance foot
// of the cast-on from its upper edge. Round r ends at foot − r / (rounds per mm). A picture drawn
// in this frame and shown at the same height lines up with the hand.
func Frame(p *mitt.Plan, o HandOptions) (height, foot float64) {
	c, m := handPage(p, o)
	return c.s.Height, c.y(m.foot())
}

// handPage draws the hand with its mitt, spine and caption.
func handPage(p *mitt.Plan, o HandOptions) (*canvas, *fabric) {
	f := posed(p)
	m := newFabric(p, f)
	f.room = m.room(f)
	letter := o.Letter
	if letter == 0 {
		letter = letterSize(&p.Hand)
	}
	sp := newSpine(m, o.unit(), letter)
	c := fitCanvas(o.Left, letter, sp.width(), letter, func(c *canvas) {
		c.ground, c.even = cardColour, o.Letter > 0
		f.drawHand(c, m.foot().y-0.10*f.long)
		m.draw(c, o.Worn)
		m.drawBands(c, sp.x) // under the tapes, so that those can be clicked
		f.drawTapes(c, o, filledFields(p.Filled))
		sp.keepRoom(c)
		m.keepDigitRoom(c)
	})
	sp.draw(c)
	c.caption(o.side() + " hand, palm towards you." + m.capWords() + dottedWords(p.Filled))
	return c, m
}

// filledFields returns the set of measurements that were filled.
func filledFields(filled []hand.Filled) map[string]bool {
	list := map[string]bool{}
	for _, f := range filled {
		list[f.Field] = true
	}
	return list
}

// dottedWords explains the dotted lines, if there are any.
func dottedWords(filled []hand.Filled) string {
	if len(filled) == 0 {
		return ""
	}
	return " Dotted: not measured, filled in."
}

// keepDigitRoom makes the page high enough for thumb and fingers set upright where they begin,
// with lines of text above them, since the fit curve draws them so in the same frame. Only
// a very long thumb, or a finger, needs more room than the hand.
func (m *fabric) keepDigitRoom(c *canvas) {
	for _, t := range m.digits() {
		end, lines := m.foot().y+t.up(float64(t.rounds()))/m.p.Gauge.Rounds, 2*leading
		if !t.part.OnThumb() {
			lines = fingerRoom
		}
		c.drawn.top = min(c.drawn.top, c.y(point{0, end})-lines*c.letter)
	}
}

// Bare draws a hand with its tapes and no mitt, for a form that has no plan yet. The missing
// measurements of h are filled; filled lists them.
func Bare(h hand.Hand, filled []hand.Filled, o HandOptions) *draw.Scene {
	f := newFigure(&h)
	if f.fingered = o.Fingers; f.fingered {
		of, more := h.FillFingers()
		h.Fingers = of
		if !o.Example { // of which nothing is measured
			filled = slices.Concat(filled, more)
		}
	}
	if f.apart = o.Apart; f.apart {
		f.leans = inGlove
	}
	letter := o.Letter
	if letter == 0 {
		letter = letterSize(&h)
	}
	c := fitCanvas(o.Left, letter, letter, letter, func(c *canvas) {
		c.ground, c.even = skinColour, o.Letter > 0
		f.drawHand(c, -0.28*f.long)
		f.drawTapes(c, o, filledFields(filled))
	})
	caption := o.side() + " hand, palm towards you." + dottedWords(filled)
	if o.Example {
		caption = "Where the tapes go, on a " + strings.ToLower(caption)
	}
	c.caption(caption)
	c.s.Label = fmt.Sprintf("%s hand to scale, palm towards you, %s round and %s long, with the tapes that measure it.", o.side(),
		h.Circumference.With(o.unit()), h.Length.With(o.unit()))
	if o.Example {
		c.s.Label = fmt.Sprintf("%s hand, palm towards you: an example of where the tapes go.", o.side())
	}
	return c.s
}

// Example returns the hand of MeasureHand: size 7 of EN 420, 178 mm round and 171 mm long (from
// secondary sources), the rest filled.
func Example() hand.Hand {
	h, _ := hand.Hand{Circumference: 178 * units.Millimetre, Length: 171 * units.Millimetre}.Fill()
	return h
}

// caption writes a text under the drawing and sets the size of the page.
func (c *canvas) caption(text string) {
	c.s.Width = c.drawn.right + c.letter
	y, x, below := c.drawn.bottom+0.8*c.letter, c.letter, 0.8*c.letter
	if c.even { // larger letters have the whole width
		x, below = 0, 0.35*c.letter
	}
	for _, line := range draw.Wrap(text, c.s.Width-2*x, c.soft(), draw.Regular) {
		y += leading * c.letter
		c.s.Text(x, y, line, draw.TextStyle{Class: "soft", Size: c.soft()})
	}
	c.s.Height = y + below
}

// words lists the sections with their rounds: "cuff 10 rounds, …".
func (m *fabric) words() string {
	list := make([]string, 0, len(m.tubes)+len(m.caps))
	for _, t := range slices.Concat(m.tubes, m.caps) {
		list = append(list, fmt.Sprintf("%s %d %ss", t.part.Words(), t.rounds(), t.noun))
	}
	return strings.Join(list, ", ")
}
