package picture

import (
	"math"

	"thenar/internal/draw"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// span is a part of the palm as shares of its breadth, from the little finger's side.
type span struct{ from, to float64 }

// on returns an edge's part. A bridge lies in the depth between two fingers, so the palm
// shows none of it.
func (s span) on(e edge) edge {
	return edge{e.left.to(e.out, s.from), e.left.to(e.out, s.to), e.left.to(e.out, s.to)}
}

// within returns the span as shares of another that it is a part of.
func (s span) within(of span) span {
	wide := of.to - of.from
	return span{(s.from - of.from) / wide, (s.to - of.from) / wide}
}

// spansOf returns which part of the palm each finger stands on, and which the hand beside
// a finger goes on with. In the order worked each takes what is left beside the one before.
func spansOf(knit stitch.Mitt) map[stitch.Part]span {
	all := 0
	for i := range knit.Sections {
		if d := knit.Sections[i].About.Digit; d != nil {
			all += d.Palm
		}
	}
	if all == 0 {
		return nil
	}
	spans, taken := map[stitch.Part]span{}, 0
	for i := range knit.Sections {
		s := &knit.Sections[i]
		from := float64(taken) / float64(all)
		switch d := s.About.Digit; {
		case d != nil && d.Palm > 0:
			taken += d.Palm
			spans[s.Part] = span{from, float64(taken) / float64(all)}
		case s.Part.Over() == stitch.OverHand:
			spans[s.Part] = span{from, 1}
		}
	}
	return spans
}

// under returns how many rounds at the gauge above the cast-on a finger begins, and the edge
// that it grows out of.
func (m *fabric) under(s *stitch.Section) (rounds float64, base edge) {
	of := m.spans[s.Part]
	main := m.main()
	for i := len(main) - 1; i >= 0; i-- {
		t := &main[i]
		if on, ok := m.spans[t.part]; ok && on.from <= of.from {
			return t.up(float64(t.rounds())), of.within(on).on(t.last())
		}
	}
	return 0, base
}

// settles is how far up a finger of cloth has taken the place and the breadth of its own, as
// a share of the hand's length (our judgement).
const settles = 0.09

// fingerEdges returns the edges of a finger's rounds. It begins on a part of the edge of
// what it grows out of, and soon lies round the drawn finger, square to it.
func (m *fabric) fingerEdges(s *stitch.Section, base edge, on drawnFinger, f *figure) []edge {
	var counts []float64
	for r := range s.Rounds {
		n := float64(s.Above(s.Lies(r + 1)))
		if r == 0 {
			counts = append(counts, n)
		}
		counts = append(counts, n)
	}
	middle := base.left.to(base.out, 0.5)
	low := (middle.y - on.root.y) / on.along.y
	across := point{on.along.y, -on.along.x}
	edges := make([]edge, 0, len(counts))
	for r, n := range m.tipped(s, counts) {
		up, half := float64(r)/m.p.Gauge.Rounds, n/m.p.Gauge.Stitches/4*flatFinger
		share := min(up/(settles*f.long), 1)
		share *= share * (3 - 2*share)
		centre := on.root.plus(on.along.times(low + up))
		rise := point{0, up}
		out := base.out.plus(rise).to(centre.plus(across.times(half)), share)
		edges = append(edges, edge{base.left.plus(rise).to(centre.plus(across.times(-half)), share), out, out})
	}
	return edges
}

// tipped returns the widths of a digit's rounds in stitches, smoothed. Where a mitt has
// fingers, its closed tips are round: stitches halved within a few rounds draw the fabric
// together, and a finger fills it.
func (m *fabric) tipped(s *stitch.Section, counts []float64) []float64 {
	d := s.About.Digit
	if m.spans == nil || d == nil || !s.Closed() {
		return smoothed(counts, smoothTimes)
	}
	full := len(counts) - 1
	for full > 1 && counts[full] < float64(d.Stitches) {
		full--
	}
	widths := append(smoothed(counts[:full+1], smoothTimes), counts[full+1:]...)
	for r := full + 1; r < len(widths); r++ {
		share := float64(r-full) / (float64(len(widths)-1-full) + domed)
		widths[r] = widths[full] * math.Sqrt(1-share*share)
	}
	return widths
}

// domed is how many rounds above its last one a round tip would close.
const domed = 0.7

// fingers returns the four fingers of the mitt as far as it has them, from the little
// finger on.
func (m *fabric) fingers() (list []*tube) {
	for i := range m.tubes {
		if t := &m.tubes[i]; t.over == stitch.OverDigit && !t.part.OnThumb() {
			list = append(list, t)
		}
	}
	return list
}

// digits returns the fingers and the thumb.
func (m *fabric) digits() []tube { return m.tubes[len(m.main()):] }

// ends reports whether a tube has an end of its own, an opening or a tip: fingers end what
// they grow out of.
func (m *fabric) ends(i int) bool {
	return m.tubes[i].over == stitch.OverDigit || i == len(m.main())-1 && len(m.fingers()) == 0
}

// drawnOf returns the finger of the drawn hand that a section covers.
func (f *figure) drawnOf(part stitch.Part) (on drawnFinger, ok bool) {
	of, ok := mitt.FingerOf(part)
	if !ok {
		return on, false
	}
	return f.fingers()[hand.Little-of], true
}

// overFingers draws from the hand's upper edge on the little finger's side over all fingers
// to where the index finger ends on the thumb's side.
func (m *fabric) overFingers(p *pen) {
	list := m.fingers()
	var before []point // the side of the finger before
	for i, t := range list {
		side := m.risingTo(i, list)
		from := 0
		if before != nil {
			at, down, up := meeting(before, side)
			for k := len(before) - 1; k > down; k-- {
				p.line(before[k])
			}
			p.line(at)
			from = up
		}
		p.line(side[from:]...)
		m.drawEnd(p, t)
		before = before[:0:0]
		for _, e := range t.edges {
			before = append(before, e.out)
		}
	}
	for k := len(before) - 1; k >= 0; k-- {
		p.line(before[k])
	}
}

// risingTo returns the side of a finger towards the little finger, from where it leaves the
// finger before it.
func (m *fabric) risingTo(i int, list []*tube) (side []point) {
	foot := list[i].edges[0].left
	for _, t := range m.main() {
		if i > 0 && t.over == stitch.OverHand && t.edges[0].left == list[i-1].edges[0].out && t.last().left == foot {
			for _, e := range t.edges[:t.rounds()] {
				side = append(side, e.left)
			}
		}
	}
	for _, e := range list[i].edges {
		side = append(side, e.left)
	}
	return side
}

// meeting returns the highest point at which two sides that rise side by side meet, the
// number of the last point of the first that lies below it, and that of the first point of
// the second above it.
func meeting(one, other []point) (at point, below, above int) {
	for i := len(one) - 2; i >= 0; i-- {
		for k := len(other) - 2; k >= 0; k-- {
			if at, ok := crossing(one[i], one[i+1], other[k], other[k+1]); ok {
				return at, i, k + 1
			}
		}
	}
	return one[0], 0, 0
}

// crossing returns where two stretches cross.
func crossing(a, b, c, d point) (point, bool) {
	u, v, w := b.plus(a.times(-1)), d.plus(c.times(-1)), c.plus(a.times(-1))
	area := u.x*v.y - u.y*v.x
	if math.Abs(area) < 1e-9 {
		return point{}, false
	}
	s, t := (w.x*v.y-w.y*v.x)/area, (w.x*u.y-w.y*u.x)/area
	return a.to(b, s), s >= 0 && s <= 1 && t >= 0 && t <= 1
}

// littleSide reports whether a digit stands on the little finger's half of the palm.
func (m *fabric) littleSide(t *tube) bool {
	on, ok := m.spans[t.part]
	return ok && on.from+on.to < 1
}

// waits returns the edges along which stitches wait for digits that are not begun, in a mitt
// that is knitted so far: behind the last finger, and at the foot of the thumb. Only a mitt
// with fingers shows them.
func (m *fabric) waits(done *fabric) (list []edge) {
	worked := done.inOrder()
	if m.spans == nil || len(worked) == 0 {
		return nil
	}
	if last := m.tube(worked[len(worked)-1].part); last.over == stitch.OverDigit && m.spans[last.part].to < 1 && !last.part.OnThumb() {
		end := m.main()[0].last()
		for _, t := range m.main() {
			if t.edges[0].left.y < last.edges[0].left.y {
				end = t.last()
			}
		}
		list = append(list, edge{last.edges[0].out, end.out, end.out})
	}
	if begun := done.tube(stitch.Thumb); begun != nil || !m.besides() {
		return list
	}
	for _, t := range done.tubes {
		if t.over == stitch.OverHand && t.rounds() > 0 {
			return append(list, m.thumb().edges[0])
		}
	}
	return list
}

// hold draws the threads on which stitches wait: a thread through their loops, knotted at
// both ends.
func (m *fabric) hold(c *canvas, done *fabric) {
	list := m.waits(done)
	if len(list) == 0 {
		return
	}
	c.s.Group("holders")
	for _, e := range list {
		way := unit(e.out.plus(e.left.times(-1)))
		up := point{-way.y, way.x}
		wide := length(e.out.plus(e.left.times(-1)))
		n := max(int(wide*m.p.Gauge.Stitches/2), 2)
		loops, thread := c.pen(), c.pen()
		for i := range n {
			at := func(share, rise float64) point {
				return e.left.to(e.out, (float64(i)+share)/float64(n)).plus(up.times(rise * wide / float64(n)))
			}
			loops.move(at(0.2, 0)).curve(at(0.2, 1.5), at(0.8, 1.5), at(0.8, 0))
		}
		rise := up.times(0.5 * wide / float64(n))
		from, to := e.left.plus(rise), e.out.plus(rise)
		thread.move(from).line(to)
		loops.path(draw.Style{Class: "held", Stroke: inkColour, Width: c.letter / 8, Round: true})
		thread.path(draw.Style{Class: "holder", Stroke: bastingColour, Width: c.letter / 5, Round: true})
		knots := c.pen()
		knots.dot(from, c.letter/4)
		knots.dot(to, c.letter/4)
		knots.path(draw.Style{Class: "holder-end", Fill: bastingColour})
	}
	c.s.End()
}
