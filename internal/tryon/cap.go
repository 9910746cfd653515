package tryon

import (
	"fmt"
	"math"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// feltCap corrects the ease of a cap by how it felt over the fingers. With s the step, n the
// share by which the measured fabric is narrower and N the cap's stitches, w = (easeStep·s −
// n) N stitches are wished more. Its palm keeps to its rib, so it changes by mitt.CapStep:
// wider, if it was tight at all; narrower, by the nearest of them, but by one at least where
// it was much too loose. It asks for half a stitch less than that, so that what is rounded up
// comes to it.
func (c *corrector) feltCap() {
	step := c.try.Steps[Cap]
	if step == 0 || !c.hasZone(Cap) {
		return
	}
	p := c.plan
	n, girth := p.Fingers.Cap.Stitches(), p.Hand.Circumference.MM()
	ease := func(stitches float64) float64 { return stitches/p.Gauge.Stitches/girth - 1 }
	sign := math.Copysign(1, float64(step))
	wished := max(sign*(easeStep*float64(step)-c.narrower)*float64(n), 0)
	steps := math.Round(wished / mitt.CapStep)
	switch {
	case wished < 0.05: // the measured gauge corrects it
		steps = 0
	case step > 0:
		steps = max(math.Ceil(wished/mitt.CapStep-1e-9), 1)
	case step == -2:
		steps = max(steps, 1)
	}
	by := int(sign * steps * mitt.CapStep)
	one := Correction{
		Key: string(Cap), Name: "room in the cap (ease)", Was: signedPercent(ease(float64(n))), Is: signedPercent(ease(float64(n))),
		Because: fmt.Sprintf("it has %s and felt %s: %s for each step of the scale", words.Plural(n, "stitch"), FeelWords(step), percent(easeStep)) +
			c.gaugeToo(easeStep*float64(step)),
		Later: c.try.Place.reached(stitch.Cap), // its stitches are picked up and cast on in its first round
	}
	if step > 0 {
		one.Caution = tightFinger
	}
	switch {
	case by != 0:
		is := ease(float64(n+by) - 0.5)
		one.Is, one.Edits = signedPercent(is), []Edit{{mitt.PathCapEase, typedEase(is)}}
		one.Because += fmt.Sprintf(". Its palm’s rib goes by %d stitches, so it gets %s", mitt.CapStep, words.Plural(n+by, "stitch"))
	case wished < 0.05:
		one.Because += ": nothing more is changed"
	default:
		one.Because += fmt.Sprintf(". Its palm’s rib goes by %d stitches, and that would be too much: it stays", mitt.CapStep)
	}
	c.add(one)
}

// capLength returns how long the planned cap is, in mm.
func (c *corrector) capLength() float64 {
	of := c.plan.Fingers.Cap
	return float64(of.Rounds+of.Top.Rounds) / c.plan.Gauge.Rounds
}

// capDone reports whether the length of a cap is settled: its last round below the top is
// knitted, and with it the top is.
func (c *corrector) capDone() bool {
	at := c.try.Place
	return at.past(stitch.Cap) || at.Part.Over() == stitch.OverCap && at.Round >= c.plan.Fingers.Cap.Rounds
}
