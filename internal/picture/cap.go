package picture

import (
	"math"
	"slices"

	"thenar/internal/draw"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// underCap is how the fingers of a glove with a cap are drawn: side by side, so that the cap
// goes over them and each finger of cloth is still seen (our judgement).
var underCap = leans{-2, -1, 0, 1}

// gloved returns the slants of the fingers in a glove.
func gloved(p *mitt.Plan) leans {
	if p.Fingers.Cap != nil {
		return underCap
	}
	return inGlove
}

// capOver lays a mitten's cap over the fingers, where it shows how far it reaches beyond
// them: so many rounds below where the first finger begins, and as wide as its stitches.
func (m *fabric) capOver(sections []*stitch.Section, f *figure) {
	if m.p.Fingers == nil || m.p.Fingers.Cap == nil {
		return
	}
	q, counts := m.p.Gauge.Rounds, []float64{float64(m.p.Fingers.Cap.Stitches())}
	for _, s := range sections {
		if s.Part.Over() != stitch.OverCap {
			continue
		}
		for r := range s.Rounds {
			counts = append(counts, float64(s.Above(s.Lies(r+1))))
		}
		m.caps = append(m.caps, newTube(s, 0, q))
	}
	counts = smoothed(counts, smoothTimes)
	y, at := m.fingers()[0].edges[0].left.y-float64(m.p.Fingers.Cap.Below)/q, 0
	for i := range m.caps {
		t := &m.caps[i]
		for r := range t.ups {
			up := y + float64(at+r)/q
			half := counts[at+r] / m.p.Gauge.Stitches / 4 * f.flatness(up)
			t.edges = append(t.edges, edge{point{-half, up}, point{half, up}, point{half, up}})
		}
		at += t.rounds()
	}
}

// capTo returns as much of the cap as so many of its rounds make.
func (m *fabric) capTo(knitted int) (list []tube) {
	for _, t := range m.caps {
		n := min(knitted, t.rounds())
		if n <= 0 {
			break
		}
		knitted -= n
		t.above = t.rounds() - n
		t.edges = t.edges[:n+1]
		list = append(list, t)
	}
	return list
}

// capRounds returns how many rounds of the cap are knitted.
func (m *fabric) capRounds(at Progress) (n int) {
	for i := range m.caps {
		n += m.caps[i].roundsKnitted(at)
	}
	return n
}

// drawCap draws a cap, or as much of it as there is, over the fingers: so thin that they
// are seen through it, with a thin edge and the ribs of its palm. It has no dashes: those
// stand for what is not knitted yet.
func (m *fabric) drawCap(c *canvas, caps []tube, cloth draw.Style) {
	if len(caps) == 0 {
		return
	}
	c.s.Group("cap")
	m.capOutline(c, caps).path(cloth, draw.Attr{Name: "fill-opacity", Value: "0.5"})
	m.capRibs(c, &caps[0])
	m.capOutline(c, caps).path(draw.Style{Class: "cap-edge", Stroke: pencilColour, Width: c.letter / 9, Round: true})
	c.s.End()
}

// capOutline returns the contour of a cap, or of as much of it as there is.
func (m *fabric) capOutline(c *canvas, caps []tube) *pen {
	p, foot := c.pen(), caps[0].edges[0]
	p.move(foot.left)
	for _, t := range caps {
		for _, e := range t.edges[1:] {
			p.line(e.left)
		}
	}
	if last := &caps[len(caps)-1]; last.closed && last.above == 0 {
		m.drawEnd(p, last)
	} else {
		p.line(last.last().out)
	}
	for _, t := range slices.Backward(caps) {
		for _, e := range slices.Backward(t.edges[:t.rounds()]) {
			p.line(e.out)
		}
	}
	p.bow(foot.out, foot.left, nearEdge)
	p.Close()
	return p
}

// capRibs draws the edges of the ribs with which the palm of a cap begins.
func (m *fabric) capRibs(c *canvas, t *tube) {
	of := m.p.Fingers.Cap
	low, high := t.edges[0], t.edges[min(of.Ribbed, t.rounds())]
	ribs := c.pen()
	for n := 2; n < of.Palm; n += 2 {
		share := float64(n) / float64(of.Palm)
		ribs.move(sagging(low, share, true)).line(high.left.to(high.out, share))
	}
	ribs.path(draw.Style{Class: "ribs", Stroke: gridColour, Width: c.letter / 16})
}

// capCloth is the cloth of an undyed cap on a page.
var capCloth = draw.Style{Class: "cap-cloth", Fill: cardColour}

// sheer is the cloth of a cap: in the colour that a mitt wears, or undyed.
func sheer(w *Worn, undyed draw.Style) draw.Style {
	if w == nil {
		return undyed
	}
	return clothTone.area("worn", w.main())
}

// capWords says in a caption how a cap is drawn; "" without one.
func (m *fabric) capWords() string {
	if len(m.caps) == 0 {
		return ""
	}
	return " Thin: the cap, over the fingers."
}

// capReach returns how far a cap reaches above the wrist crease, or 0 if there is none.
func (m *fabric) capReach() float64 {
	if len(m.caps) == 0 {
		return 0
	}
	last := m.caps[len(m.caps)-1].last()
	return last.left.y + tipCap*math.Abs(last.out.x-last.left.x)
}
