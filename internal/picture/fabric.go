package picture

import (
	"math"

	"thenar/internal/draw"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// fabric is the mitt over a hand, in the hand's coordinates.
type fabric struct {
	f    *frame
	p    *mitt.Plan
	s    *draw.Scene
	half float64 // of the hand's tube
	foot float64 // height of the cast-on
}

// part draws one section as a group that can be lit, and its border as a
// closed line through the points.
func (m *fabric) part(part stitch.Part, from, to float64, rounds int, points [][2]float64, ribs string) {
	low, high := m.f.Y(from), m.f.Y(to)
	m.s.Group("fabric", draw.Attr{Name: "data-section", Value: string(part)},
		draw.Attr{Name: "data-rounds", Value: number(rounds)},
		draw.Attr{Name: "data-bottom", Value: decimal(low)}, draw.Attr{Name: "data-top", Value: decimal(high)})
	p := &pen{f: m.f}
	for i, pt := range points {
		if i == 0 {
			p.move(pt[0], pt[1])
		} else {
			p.line(pt[0], pt[1])
		}
	}
	p.Close()
	m.s.Path(p.String(), draw.Style{Class: "cloth", Fill: groundColour, Stroke: "#2F4B7C", Width: 0.6})
	if ribs != "" {
		m.s.Path(ribs, draw.Style{Class: "ribs", Stroke: "#2F4B7C", Width: 0.25})
	}
	m.s.End()
}

// draw draws the mitt from the cuff up, the thumb last.
func (m *fabric) draw() {
	p, g, q := m.p, m.p.Gauge.Stitches, m.p.Gauge.Rounds
	base := m.f.base
	cuff := flat(float64(p.Cuff.CastOn.N)/g) / 2
	plainFoot := base - float64(p.Cuff.PlainRounds)/q
	if p.Cuff.Rounds > 0 {
		m.part(stitch.Cuff, m.foot, plainFoot, p.Cuff.Rounds, box(-cuff, cuff, m.foot, plainFoot), m.ribs(-cuff, cuff, m.foot, plainFoot, p.Cuff.CastOn.N))
	}
	if p.Cuff.PlainRounds > 0 {
		m.part(stitch.CuffPlain, plainFoot, base, p.Cuff.PlainRounds, [][2]float64{{-cuff, plainFoot}, {-m.half, base}, {m.half, base}, {cuff, plainFoot}}, "")
	}
	m.gusset()
	m.thumb()
	m.hand()
}

func box(left, right, low, high float64) [][2]float64 {
	return [][2]float64{{left, low}, {left, high}, {right, high}, {right, low}}
}

// ribs are upright lines, one for each pair of stitches on this side.
func (m *fabric) ribs(left, right, low, high float64, stitches int) string {
	p := &pen{f: m.f}
	n := max(stitches/4, 2)
	for i := 1; i < n; i++ {
		x := left + (right-left)*float64(i)/float64(n)
		p.move(x, low)
		p.line(x, high)
	}
	return p.String()
}

// gusset grows on the thumb's side, a step at each increase round.
func (m *fabric) gusset() {
	p, g, q := m.p, m.p.Gauge.Stitches, m.p.Gauge.Rounds
	base := m.f.base
	points := [][2]float64{{-m.half, base}, {-m.half, base + float64(p.Gusset.Rounds.N)/q}}
	edge := make([][2]float64, 0, p.Gusset.Rounds.N)
	for r := 1; r <= p.Gusset.Rounds.N; r++ {
		count := p.Body.Stitches.N - p.Gusset.Base + p.Gusset.Count(r)
		edge = append(edge, [2]float64{-m.half + flat(float64(count)/g), base + (float64(r)-0.5)/q})
	}
	top := [2]float64{edge[len(edge)-1][0], base + float64(p.Gusset.Rounds.N)/q}
	points = append(points, top)
	for i := len(edge) - 1; i >= 0; i-- {
		points = append(points, edge[i])
	}
	points = append(points, [2]float64{m.half, base})
	m.part(stitch.Gusset, base, top[1], p.Gusset.Rounds.N, points, m.seams(top[1]))
}

// seams are the two lines of increases, from the base to the parting.
func (m *fabric) seams(top float64) string {
	p := &pen{f: m.f}
	width := flat(float64(m.p.Gusset.Stitches) / m.p.Gauge.Stitches)
	right := -m.half + flat(float64(m.p.Body.Stitches.N-m.p.Gusset.Base+m.p.Gusset.Stitches)/m.p.Gauge.Stitches)
	p.move(m.half-flat(float64(m.p.Gusset.Base)/m.p.Gauge.Stitches), m.f.base)
	p.line(right-width*0.75, top)
	return p.String()
}

// thumb is the tube on the thumb, from the parting along it.
func (m *fabric) thumb() {
	t := &m.p.Thumb
	long := float64(t.Rounds) / m.p.Gauge.Rounds
	r := round(float64(t.Stitches.N)/m.p.Gauge.Stitches) / 2
	mid := m.f.thumbR
	at := func(along, out float64) [2]float64 {
		x, y := m.f.thumbAt(along, mid+out)
		return [2]float64{x, y}
	}
	points := [][2]float64{at(0, -r), at(long, -r), at(long, r), at(0, r)}
	if m.p.Kind == mitt.Mitten {
		points = [][2]float64{at(0, -r), at(long-r, -r)}
		for i := 1; i < 8; i++ {
			a := math.Pi * float64(i) / 8
			points = append(points, at(long-r+r*math.Sin(a), -r*math.Cos(a)))
		}
		points = append(points, at(long-r, r), at(0, r))
	}
	ribs := &pen{f: m.f}
	if t.EdgingRounds > 0 {
		low := long - float64(t.EdgingRounds)/m.p.Gauge.Rounds
		for i := -2; i <= 2; i++ {
			a, b := at(low, r*float64(i)/3), at(long, r*float64(i)/3)
			ribs.move(a[0], a[1])
			ribs.line(b[0], b[1])
		}
	}
	_, high := m.f.thumbAt(long, 0)
	m.part(stitch.Thumb, m.f.crotch, high, t.Rounds, points, ribs.String())
}

// hand goes from the division to the edging, or through the top.
func (m *fabric) hand() {
	p, g, q := m.p, m.p.Gauge.Stitches, m.p.Gauge.Rounds
	low := m.f.base + float64(p.Gusset.Rounds.N)/q
	half := flat(float64(p.Bridge.HandAfter)/g) / 2
	high := low + float64(p.Body.RoundsAbove)/q
	ribs := ""
	if p.Body.EdgingRounds > 0 {
		ribs = m.ribs(-half, half, high-float64(p.Body.EdgingRounds)/q, high, p.Body.EdgingStitches)
	}
	m.part(stitch.Hand, low, high, p.Body.RoundsAbove, box(-half, half, low, high), ribs)
	if p.Top == nil {
		return
	}
	var left, right [][2]float64
	n := p.Top.Stitches
	next := 0
	for r := 0; r <= p.Top.Rounds; r++ {
		if next < len(p.Top.DecreaseRounds) && p.Top.DecreaseRounds[next] == r {
			n -= 4
			next++
		}
		w, y := flat(float64(n)/g)/2, high+float64(r)/q
		left = append(left, [2]float64{-w, y})
		right = append([][2]float64{{w, y}}, right...)
	}
	m.part(stitch.Top, high, high+float64(p.Top.Rounds)/q, p.Top.Rounds, append(left, right...), "")
}
