package picture

import (
	"slices"

	"thenar/internal/draw"
	"thenar/internal/stitch"
)

// down reports whether the mitt is worked from the fingertips to the cuff.
func (m *fabric) down() bool { return len(m.tubes) > 0 && m.tubes[0].down }

// downTo returns a mitt that is worked from the fingertips with its first so many
// rounds, at least its first edge.
func (m *fabric) downTo(knitted int) *fabric {
	done := &fabric{p: m.p, stopped: true}
	for i, t := range m.inOrder() {
		all := t.rounds()
		n := max(min(knitted, all), 0)
		if i > 0 && n == 0 {
			break
		}
		knitted -= all
		t.ribbed, t.below = min(t.ribbed, n), all-n
		t.edges = t.edges[all-n:]
		done.tubes = append(done.tubes, t)
	}
	done.upwards()
	return done
}

// upwards puts the tubes into the order in which they lie on the hand.
func (m *fabric) upwards() {
	slices.SortStableFunc(m.tubes, func(a, b tube) int { return int(a.over) - int(b.over) })
}

// inOrder returns the tubes of a mitt in the order worked.
func (m *fabric) inOrder() []tube {
	list := slices.Clone(m.tubes)
	slices.SortStableFunc(list, func(a, b tube) int { return stitch.Order(a.part, m.down()) - stitch.Order(b.part, m.down()) })
	return list
}

// stop returns the edge at which the knitting of a mitt that is on the needles stopped.
func (m *fabric) stop() edge {
	if n := len(m.caps); n > 0 {
		return m.caps[n-1].last()
	}
	list := m.inOrder()
	last := &list[len(list)-1]
	if !m.down() {
		return last.last()
	}
	return last.edges[0]
}

// drawBelow draws the contour of what is still to be knitted of a mitt that is worked
// from the fingertips: both sides of each tube, and the cuff's edge.
func (m *fabric) drawBelow(c *canvas, at Progress, style draw.Style) {
	p := c.pen()
	for i := range m.tubes {
		t := &m.tubes[i]
		left := t.rounds() - t.roundsKnitted(at)
		if left == 0 {
			continue
		}
		p.move(t.edges[left].left)
		for _, e := range slices.Backward(t.edges[:left]) {
			p.line(e.left)
		}
		if i == 0 {
			p.bow(t.edges[0].left, t.edges[0].out, nearEdge)
		} else {
			p.move(t.edges[0].out)
		}
		for _, e := range t.edges[1 : left+1] {
			p.line(e.out)
		}
		if left == t.rounds() && m.ends(i) {
			p.move(t.last().left)
			m.drawEnd(p, t)
		}
	}
	p.path(style)
}
