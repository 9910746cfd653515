package picture

import (
	"math"
	"slices"
	"strconv"

	"thenar/internal/draw"
	"thenar/internal/stitch"
)

// draw draws the mitt: its cloth, through which the hand shows faintly, and the lines on it;
// or, where it has colours, its stitches.
func (m *fabric) draw(c *canvas, w *Worn) {
	c.s.Group("mitt")
	defer c.s.End()
	defer m.drawCap(c, m.caps, sheer(w, capCloth)) // over the fingers
	if w != nil {
		m.drawWorn(c, w)
		return
	}
	m.lay(c, draw.Style{Class: "cloth", Fill: cardColour, Stroke: inkColour, Width: c.letter / 7, Round: true},
		draw.Attr{Name: "fill-opacity", Value: "0.85"})
	m.ribs(c, "")
	m.seams(c)
	m.sewn(c)
}

// outline returns the mitt's contour: up the little finger's side, over the upper edge, down
// to the crotch, round the thumb and down to the cast-on.
func (m *fabric) outline(c *canvas) *pen {
	p := c.pen()
	foot := m.tubes[0].edges[0]
	p.move(foot.left)
	main, fingered := m.main(), len(m.fingers()) > 0
	for i, t := range main {
		if m.spans[t.part].from > 0 { // it lies beyond a finger
			break
		}
		for r, e := range t.edges {
			if r > 0 || i == 0 {
				p.line(e.left)
			}
		}
	}
	if fingered {
		m.overFingers(p)
	} else {
		m.drawEnd(p, &main[len(main)-1])
	}
	if m.besides() {
		m.thumbOutline(p)
	}
	for i := len(main) - 1; i >= 0; i-- {
		if t := m.tubes[i]; !m.besides() || t.over < stitch.OverHand {
			for r := t.rounds(); r >= 0; r-- {
				p.line(t.edges[r].out)
			}
		}
	}
	p.bow(foot.out, foot.left, nearEdge)
	p.Close()
	return p
}

// thumbOutline draws from the hand's upper edge down to the crotch and round the thumb.
func (m *fabric) thumbOutline(p *pen) {
	p.line(m.valley()...)
	m.overThumb(p)
}

// overThumb draws over the end of the thumb and down its outer side.
func (m *fabric) overThumb(p *pen) {
	thumb := m.thumb()
	m.drawEnd(p, thumb)
	for i := thumb.rounds(); i >= 0; i-- {
		p.line(thumb.edges[i].out)
	}
}

// valley returns the line down the hand's thumb side and up the thumb's inner side, without
// the pieces of either that lie inside the other.
func (m *fabric) valley() []point {
	thumb := m.thumb()
	inner := thumb.edges[0].left
	across := thumb.edges[1].out.plus(thumb.edges[1].left.times(-1))
	var down []point
	for _, t := range m.main() {
		for _, e := range t.edges[1:] {
			way := e.out.plus(inner.times(-1))
			if t.over >= stitch.OverHand && way.x*across.x+way.y*across.y <= 0 {
				down = append(down, e.out)
			}
		}
	}
	slices.Reverse(down)
	for _, e := range thumb.edges {
		if len(down) == 0 || e.left.x >= down[len(down)-1].x || e.left.y >= down[len(down)-1].y {
			down = append(down, e.left)
		}
	}
	return down
}

// drawEnd draws across the end of a tube: the near edge of an opening, or a round cap.
func (m *fabric) drawEnd(p *pen, t *tube) {
	last := t.last()
	if !t.closed {
		p.bow(last.left, last.out, -nearEdge)
		return
	}
	before := t.edges[max(t.rounds()-2, 0)]
	reach := tipCap * length(last.out.plus(last.left.times(-1)))
	left := unit(last.left.plus(before.left.times(-1))).times(reach)
	right := unit(last.out.plus(before.out.times(-1))).times(reach)
	p.curve(last.left.plus(left), last.out.plus(right), last.out)
}

// tipCap is how far a drawn cap reaches above the last round, as a share of its width: the
// yarn drawn through the last stitches adds next to nothing to the mitt's length.
const tipCap = 0.1

// nearEdge is how far the near edge of an opening sags, as a share of its
// width: a hint that the mitt is round.
const nearEdge = 0.06

// bow draws an arc from a, where the pen is, to b. It rises to the left of the way by a share
// of its length.
func (p *pen) bow(a, b point, rise float64) {
	way := b.plus(a.times(-1))
	up := point{-way.y, way.x}.times(rise * 4 / 3)
	p.curve(a.to(b, 0.2).plus(up), a.to(b, 0.8).plus(up), b)
}

// ribs draws the edges of the knit ribs in ribbed rounds: on the cloth of a yarn as its
// furrows, or faintly on undyed cloth.
func (m *fabric) ribs(c *canvas, yarn string) {
	p := c.pen()
	for i := range m.tubes {
		t := &m.tubes[i]
		rib := t.rib
		if t.ribbed == 0 || rib < 2 {
			continue
		}
		knit := float64(t.knits) / float64(rib)
		low, high := t.edges[t.rounds()-t.ribbed], t.last()
		across := t.stitches / 2 / float64(rib)
		for n := 0.0; n < across; n++ {
			for _, x := range []float64{n, n + knit} {
				if share := x / across; share > 0.01 && share < 0.99 {
					p.move(sagging(low, share, t.over == stitch.OverWrist)).line(sagging(high, share, t.over != stitch.OverWrist))
				}
			}
		}
	}
	style := draw.Style{Class: "ribs", Stroke: gridColour, Width: c.letter / 16}
	if yarn != "" {
		style = draw.Style{Class: "ribs-dyed", Stroke: Furrow(yarn), Width: c.letter / 6}
	}
	p.path(style)
}

// sagging returns the point at a share of an edge; the edge of an opening sags.
func sagging(e edge, share float64, open bool) point {
	at := e.left.to(e.out, share)
	if !open {
		return at
	}
	way := e.out.plus(e.left.times(-1))
	return at.plus(point{way.y, -way.x}.times(4 * nearEdge * share * (1 - share)))
}

// seams draws the lines on the mitt: ends of sections, the gusset's inner line with a dot at
// every increase, the bridge.
func (m *fabric) seams(c *canvas) {
	thin := draw.Style{Class: "seam", Stroke: pencilColour, Width: c.letter / 14, Round: true}
	p, dots := c.pen(), c.pen()
	for i, t := range m.main() {
		low := t.edges[0]
		switch {
		case t.part.Marked():
			p.move(low.left).line(low.in)
			p.move(low.in)
			for _, e := range t.edges {
				p.line(e.in)
			}
			for r := 1; r < len(t.seam); r++ {
				p.move(t.seam[r-1]).line(t.seam[r])
			}
			for _, r := range m.p.Gusset.IncreaseRounds {
				r = min(r, t.rounds())
				e := t.edges[r]
				if m.p.Gusset.Step > 1 {
					dots.dot(e.in, c.letter/9)
				}
				if t.seam != nil {
					e.out = t.seam[r]
				}
				dots.dot(e.out, c.letter/9)
			}
		case t.over == stitch.OverHand:
			p.move(low.left).line(low.in)
		case i > 0 && t.over != stitch.OverMound: // without a gusset the hand goes on as it was
			p.move(low.left).line(low.out)
		}
		if t.ribbed > 0 && t.ribbed < t.rounds() {
			e := t.edges[t.rounds()-t.ribbed]
			p.move(e.left).line(e.out)
		}
	}
	for _, t := range m.digits() {
		p.move(t.edges[0].left).line(t.edges[0].out)
		if r := t.ribbed; r > 0 && r < t.rounds() {
			e := t.edges[t.rounds()-r]
			p.move(e.left).line(e.out)
		}
	}
	p.path(thin)
	dots.path(draw.Style{Class: "increase", Fill: inkColour})
}

// dot draws a small disc.
func (p *pen) dot(at point, radius float64) {
	const k = 0.5523
	r := func(x, y float64) point { return at.plus(point{x, y}.times(radius)) }
	p.move(r(1, 0)).curve(r(1, k), r(k, 1), r(0, 1)).curve(r(-k, 1), r(-1, k), r(-1, 0)).
		curve(r(-1, -k), r(-k, -1), r(0, -1)).curve(r(k, -1), r(1, -k), r(1, 0))
	p.Close()
}

// drawBands lays an invisible band for the page's script over every round and, except for the
// thumb, over its tick on the spine at x, if there is one: x is not below 0.
func (m *fabric) drawBands(c *canvas, x float64) {
	attr := func(name string, value float64) draw.Attr {
		return draw.Attr{Name: "data-" + name, Value: strconv.FormatFloat(math.Round(value*1000)/1000, 'f', -1, 64)}
	}
	for _, t := range slices.Concat(m.caps, m.tubes) { // what lies under a cap can still be pointed at
		part := draw.Attr{Name: "data-section", Value: string(t.part)}
		bottom, top := c.y(t.edges[0].left), c.y(t.last().left)
		if t.over == stitch.OverDigit {
			bottom, top = max(bottom, c.y(t.edges[0].out)), min(top, c.y(t.last().out))
		}
		c.s.Group("section", part, attr("rounds", float64(t.rounds())), attr("top", top), attr("bottom", bottom))
		for r := 1; r <= t.rounds(); r++ {
			low, high := t.edges[r-1], t.edges[r]
			p := c.pen()
			p.move(low.left).line(low.in, low.out, high.out, high.in, high.left)
			p.Close()
			if t.over < stitch.OverDigit && x >= 0 {
				p.Rect(x-0.4*c.letter, c.y(high.left), 0.8*c.letter, c.y(low.left)-c.y(high.left))
			}
			p.path(draw.Style{Class: "band", Fill: inkColour}, draw.Attr{Name: "fill-opacity", Value: "0"}, part, attr("from", float64(t.worked(r))), attr("to", float64(t.worked(r))))
		}
		c.s.End()
	}
}
