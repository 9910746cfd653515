package picture

import (
	"fmt"
	"math"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Progress is how far a mitt is knitted: up to and with a round of a part.
type Progress struct {
	Part  stitch.Part
	Round int
}

// Onward draws how a mitt goes on: the knitted part as cloth on the hand, and above it
// the contour as it was planned, dashed, and as it will be. Both plans are aligned at
// the last knitted round.
func Onward(was, is *mitt.Plan, at Progress, o HandOptions) *draw.Scene {
	f := posed(is)
	now := newFabric(is, f)
	before := alignedFabric(was, f, now, at)
	letter := letterSize(&is.Hand)
	c := fitCanvas(o.Left, letter, letter, letter, func(c *canvas) {
		c.ground = cardColour
		f.drawHand(c, min(now.foot().y, before.foot().y)-0.10*f.long)
		now.drawKnitted(c, at, o.Worn)
		before.drawAhead(c, at, draw.Style{Class: "as-planned", Stroke: bastingColour, Width: c.letter / 6, Dash: strings.TrimSpace(draw.Number(c.letter/2) + " " + draw.Number(c.letter/3))})
		now.drawAhead(c, at, draw.Style{Class: "as-it-will-be", Stroke: chalkColour, Width: c.letter / 5, Round: true})
	})
	c.caption("Dashed: as it was planned. Line: as it will be. " + heightDifference(before, now, o.unit()))
	knitted := "not begun"
	if at.Round > 0 {
		knitted = fmt.Sprintf("knitted up to %s %d of the %s", is.Mitt().Noun(at.Part), at.Round, at.Part.Words())
	}
	c.s.Label = fmt.Sprintf("%s hand, palm towards you, with the mitt %s. Above it: as it was planned, dashed, and as it will be.", o.side(), knitted)
	return c.s
}

// alignedFabric returns the fabric of a plan, moved so that its last knitted round is
// at the height of the other's.
func alignedFabric(p *mitt.Plan, f *figure, other *fabric, at Progress) *fabric {
	return newFabric(p, f.moved(other.heightAt(at)-newFabric(p, f).heightAt(at)))
}

// heightDifference says how much higher or lower the hand ends than it was planned.
func heightDifference(before, now *fabric, u units.Unit) string {
	what, last := "hand", func(m *fabric) float64 { main := m.main(); return main[len(main)-1].last().left.y }
	if now.down() {
		what, last = "cuff", func(m *fabric) float64 { return m.foot().y }
	}
	off := last(now) - last(before)
	size := units.FromMM(math.Abs(off)).With(smallUnit(u))
	switch {
	case math.Abs(off) < 0.5:
		return "The " + what + " ends where it was planned."
	case off > 0:
		return "The " + what + " ends " + size + " higher."
	}
	return "The " + what + " ends " + size + " lower."
}

// smallUnit returns the unit for short lengths: mm in place of cm.
func smallUnit(u units.Unit) units.Unit {
	if u == units.CM {
		return units.MM
	}
	return u
}

// moved returns the figure for a mitt that sits higher on the hand by up mm.
func (f *figure) moved(up float64) *figure {
	g := *f
	g.lift += up
	g.crotch.y += up
	g.root.y += up
	return &g
}

// heightAt returns the height of the last knitted round; once the thumb is begun, that
// of the division, and once a finger is, that at which it begins.
func (m *fabric) heightAt(at Progress) float64 {
	for _, t := range m.fingers() {
		if t.part == at.Part {
			return t.edges[0].left.y
		}
	}
	for _, t := range m.main() {
		if t.part == at.Part {
			n := min(at.Round, t.rounds())
			if t.down {
				n = t.rounds() - n
			}
			return t.edges[n].left.y
		}
		if at.Part.Over() >= stitch.OverDigit && t.over == stitch.OverHand {
			return t.edges[0].left.y
		}
	}
	return m.foot().y
}

// roundsKnitted returns the number of the tube's rounds that are knitted.
func (t *tube) roundsKnitted(at Progress) int {
	switch {
	case stitch.Order(t.part, t.down) < stitch.Order(at.Part, t.down):
		return t.rounds()
	case t.part == at.Part:
		return min(at.Round, t.rounds())
	}
	return 0
}

// drawKnitted draws what is knitted, in the colours that it wears if there are any.
func (m *fabric) drawKnitted(c *canvas, at Progress, w *Worn) {
	rounds := 0
	for i := range m.tubes {
		rounds += m.tubes[i].roundsKnitted(at)
	}
	c.s.Group("mitt")
	defer c.s.End()
	if rounds == 0 {
		return
	}
	done := m.upTo(rounds + m.capRounds(at))
	outline := func(s draw.Style) {
		p := c.pen()
		for i := range done.tubes {
			done.tubes[i].draw(p, done)
		}
		p.path(s)
	}
	if w != nil {
		done.wear(c, w, outline)
	} else {
		outline(draw.Style{Class: "cloth", Fill: cardColour, Stroke: inkColour, Width: c.letter / 10, Round: true})
	}
	m.hold(c, done)
	m.drawCap(c, done.caps, sheer(w, capCloth))
}

// drawAhead draws the contour of what is still to be knitted: both sides of each tube,
// and the upper edge of the last.
func (m *fabric) drawAhead(c *canvas, at Progress, style draw.Style) {
	if m.down() {
		m.drawBelow(c, at, style)
		return
	}
	p := c.pen()
	for i := range m.tubes {
		m.tubes[i].drawAhead(p, at, m, m.ends(i))
	}
	for i := range m.caps {
		m.caps[i].drawAhead(p, at, m, i == len(m.caps)-1)
	}
	p.path(style)
}

// drawAhead draws both sides of a tube above what is knitted of it, and its end if it has
// one of its own.
func (t *tube) drawAhead(p *pen, at Progress, m *fabric, ends bool) {
	n := t.roundsKnitted(at)
	if n == t.rounds() {
		return
	}
	p.move(t.edges[n].left)
	for _, e := range t.edges[n+1:] {
		p.line(e.left)
	}
	if ends {
		m.drawEnd(p, t)
	} else {
		p.move(t.last().out)
	}
	for r := t.rounds() - 1; r >= n; r-- {
		p.line(t.edges[r].out)
	}
}
