package picture

import (
	"math"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// edge is the upper edge of one round as it is drawn: from the side without the thumb (left)
// to the beginning of the gusset (in) and the outer line of the gusset (out). In rounds
// without a gusset, in and out are the same point.
type edge struct{ left, in, out point }

// tube is one section of the mitt as it is drawn.
type tube struct {
	part   stitch.Part
	over   stitch.Over
	edges  []edge    // its lower edge, then the upper edge of each round
	closed bool      // it ends in a tip
	noun   string    // what its rounds are called
	from   float64   // rounds from the cast-on to its lower edge, at the gauge
	ups    []float64 // rounds from there to each of its edges, at the gauge

	ribbed   int     // the number of its last rounds that are ribbed
	rib      int     // the repeat of that ribbing in stitches
	knits    int     // the knit stitches of it
	stitches float64 // the number of stitches in that ribbing
	down     bool    // it is worked from its last edge to its first
	above    int     // in a mitt knitted only so far, those of its rounds above the drawn ones
	below    int     // and those below them
	seam     []point // at each edge, the outer line of a gusset in the palm; nil at the side
}

// worked returns the number, as it is worked, of the drawn round r, from the lowest.
func (t *tube) worked(r int) int {
	if t.down {
		return t.above + t.rounds() + 1 - r
	}
	return t.below + r
}

// newTube returns the tube of a section, without its edges.
func newTube(s *stitch.Section, from, q float64) tube {
	t := tube{part: s.Part, over: s.Part.Over(), from: from, closed: s.Closed(), down: s.Down, noun: s.Noun(), ribbed: s.About.Ribbed, rib: s.About.Rib, knits: s.About.Knits}
	for r := range len(s.Rounds) + 1 {
		t.ups = append(t.ups, s.AtGauge(r, q))
	}
	if t.ribbed > 0 {
		t.stitches = float64(s.Below(s.Lies(len(s.Rounds) - t.ribbed + 1)))
	}
	return t
}

func (t *tube) rounds() int { return len(t.edges) - 1 }

// up returns how many rounds at the gauge its edge r is above the cast-on; r may lie
// between two edges.
func (t *tube) up(r float64) float64 {
	low := min(int(r), len(t.ups)-1)
	high := min(low+1, len(t.ups)-1)
	return t.from + t.ups[low] + (r-float64(low))*(t.ups[high]-t.ups[low])
}

func (t *tube) last() edge { return t.edges[len(t.edges)-1] }

// fabric is the mitt of a plan over a hand.
type fabric struct {
	p     *mitt.Plan
	tubes []tube // from the cuff up, then fingers as they are worked, the thumb last
	caps  []tube // a cap over the fingers and its top; nil without one

	spans map[stitch.Part]span // the palm's parts above which fingers stand; nil without fingers

	stopped bool // it is knitted only so far
	apart   bool // its thumb stands in the palm by itself
	byThumb bool // its seam lies on the thumb's side
}

// newFabric lays a plan's rounds over a hand. Every round is as wide as its stitches are at
// the gauge, by the flatness factor of what it covers. The gusset's last round is where the
// thumb parts; without a thumb, the cuff's last round is at the wrist.
func newFabric(p *mitt.Plan, f *figure) *fabric {
	m := &fabric{p: p, apart: f.lying && p.Thumbed() && !p.Gusseted()}
	knit := p.Mitt()
	m.byThumb, m.spans = knit.SeamByThumb(), spansOf(knit)
	sections := knit.Upward()
	counts := []float64{float64(p.Cuff.CastOn.N)}
	division, level := 0.0, f.crotch.y // so many rounds at the gauge above the cast-on is this height of the hand
	below := false                     // it ends where a gusset would begin
	if !p.Parted() {
		level = f.lift
	}
	at, reached := 0, 0.0
	for _, s := range sections {
		over := s.Part.Over()
		if over == stitch.OverDigit || over == stitch.OverCap {
			continue
		}
		joined := s.AfterJoin()
		for r := range s.Rounds {
			n := float64(s.Above(s.Lies(r + 1)))
			switch {
			case over == stitch.OverHand && s.Joins() != "": // the fingers before it belong to its breadth
				n = counts[len(counts)-1]
			case over == stitch.OverMound:
				n -= float64(p.Gusset.Count(r+1) - p.Gusset.Base)
			case s.Lies(r+1) >= joined:
				n -= float64(p.Gusset.Stitches - p.Gusset.Base)
			}
			counts = append(counts, n)
		}
		reached += s.AtGauge(len(s.Rounds), p.Gauge.Rounds)
		if over == stitch.OverMound || !p.Parted() && s.Part.Passing() {
			division = reached
		}
		below = below || s.About.Below
	}
	if below {
		division, level = reached, f.crotch.y-p.Hand.GussetLength.MM()
	}
	counts = smoothed(counts, smoothTimes)
	reached = 0
	for _, s := range sections {
		if s.Part.Over() == stitch.OverCap { // it lies over all others
			continue
		}
		t := newTube(s, reached, p.Gauge.Rounds)
		if t.over == stitch.OverDigit {
			if on, ok := f.drawnOf(t.part); ok {
				under, base := m.under(s)
				t.from, t.edges = under, m.fingerEdges(s, base, on, f)
			} else {
				t.from, t.edges = division, m.thumbEdges(s, f)
			}
			m.tubes = append(m.tubes, t)
			continue
		}
		for r := 0; r <= len(s.Rounds); r++ {
			y := level + (reached+t.ups[r]-division)/p.Gauge.Rounds
			half := counts[at+r] / p.Gauge.Stitches / 4 * f.flatness(y)
			t.edges = append(t.edges, edge{point{-half, y}, point{half, y}, point{half, y}})
		}
		switch {
		case t.over == stitch.OverHand && s.Joins() != "":
			for r, e := range t.edges {
				t.edges[r] = m.spans[t.part].on(e)
			}
		case t.over == stitch.OverHand && m.besides():
			inner, _ := m.parting(f)
			t.edges[0].in, t.edges[0].out = inner, inner
		case t.over == stitch.OverMound && p.Gusseted():
			m.widen(&t, f)
		case t.over == stitch.OverMound && m.besides():
			m.strain(&t, f)
		case t.over == stitch.OverMound && !p.Thumbed():
			m.gape(&t)
		}
		at += t.rounds()
		reached += t.ups[t.rounds()]
		m.tubes = append(m.tubes, t)
	}
	m.capOver(sections, f)
	return m
}

// besides reports whether the thumb grows out of the side of the palm as it is drawn.
func (m *fabric) besides() bool { return m.p.Thumbed() && !m.apart }

// parting returns the ends of the thumb's lower edge, which is square to the thumb and
// centred on it. The inner end is moved along the thumb towards the height of the crotch.
// Without a thumb of its own the mitt is open there: both ends lie in the crotch.
func (m *fabric) parting(f *figure) (inner, outer point) {
	if !m.p.Thumbed() {
		return f.crotch, f.crotch
	}
	half := float64(m.p.Thumb.FirstRound) / m.p.Gauge.Stitches / 4 * flatThumb
	inner = f.onThumb(0, -half)
	up := min((f.crotch.y-inner.y)/f.along.y, 0.9/m.p.Gauge.Rounds)
	inner = inner.plus(f.along.times(up))
	inner.x -= m.inPalm(inner.y, f)
	return inner, f.onThumb(0, half)
}

// inPalm returns how far onto the palm a thumb sits at a height.
func (m *fabric) inPalm(y float64, f *figure) float64 {
	return float64(m.p.Gusset.Inset) / m.p.Gauge.Stitches * f.flatness(y)
}

// widen adds the gusset's stitches on the thumb's side of its rounds. They turn from level
// at the base to square to the thumb at the parting, where the gusset is as wide as the
// thumb's first round. In between its width grows with its count of stitches. A gusset
// at the side shows half of its base from the palm, one in the palm all of it, and its
// outer line crosses the palm before it leaves the side.
func (m *fabric) widen(t *tube, f *figure) {
	g := &m.p.Gusset
	inner, outer := m.parting(f)
	low := t.edges[0].out
	base, inset := float64(g.Base)/m.p.Gauge.Stitches/2*f.flatness(low.y), m.inPalm(low.y, f)
	if m.p.Make.Place == mitt.InPalm {
		base *= 2
		t.seam = make([]point, len(t.edges))
	}
	top := length(outer.plus(inner.times(-1)))
	widths := make([]float64, len(t.edges))
	for r := range widths {
		share := float64(r) / float64(t.rounds())
		if made := g.Stitches - g.Base; made > 0 {
			share = float64(g.Count(r)-g.Base) / float64(made)
		}
		widths[r] = base + share*(top-base)
	}
	widths = smoothed(widths, smoothTimes*t.rounds()/max(g.Increases, 1))
	foot := point{low.x - inset - base, low.y}
	for r := range t.edges {
		share := float64(r) / float64(t.rounds())
		sin, cos := math.Sincos(thumbLean * share)
		t.edges[r].in = foot.to(inner, share)
		side := t.edges[r].out
		t.edges[r].out = t.edges[r].in.plus(point{cos, -sin}.times(widths[r]))
		if t.seam != nil {
			if t.seam[r] = t.edges[r].out; side.x > t.seam[r].x {
				t.edges[r].out = side
			}
		}
	}
}

// thumbEdges returns the edges of the thumb's rounds, square to it.
func (m *fabric) thumbEdges(s *stitch.Section, f *figure) []edge {
	counts := []float64{float64(m.p.Thumb.FirstRound)}
	for r := range s.Rounds {
		counts = append(counts, float64(s.Above(s.Lies(r+1))))
	}
	if m.apart {
		return m.palmThumb(m.tipped(s, counts), f)
	}
	edges := make([]edge, 0, len(counts))
	for r, n := range m.tipped(s, counts) {
		up, half := float64(r)/m.p.Gauge.Rounds, n/m.p.Gauge.Stitches/4*flatThumb
		out := f.onThumb(up, half)
		edges = append(edges, edge{f.onThumb(up, -half), out, out})
	}
	edges[0].left, _ = m.parting(f)
	return edges
}

// smoothTimes is how often the widths of a tube are smoothed; those of a gusset so
// often for every round between its increases.
const smoothTimes = 2

// smoothed takes the steps out of a list of numbers, as fabric does, by weighting each with
// its neighbours 1 : 2 : 1, so many times. The first and the last stay.
func smoothed(of []float64, times int) []float64 {
	for range times {
		next := append([]float64(nil), of...)
		for i := 1; i < len(of)-1; i++ {
			next[i] = (of[i-1] + 2*of[i] + of[i+1]) / 4
		}
		of = next
	}
	return of
}

// room returns how far hand and mitt together reach.
func (m *fabric) room(f *figure) room {
	r := f.room
	for _, t := range m.main() {
		if t.over == stitch.OverMound {
			r.base = max(r.base, t.edges[0].out.x)
		}
	}
	if !m.p.Thumbed() {
		return r
	}
	_, outer := m.parting(f)
	r.thumb = max(r.thumb, length(outer.plus(f.root.times(-1))))
	thumb := m.thumb()
	tip := float64(thumb.rounds()) / m.p.Gauge.Rounds
	if thumb.closed {
		tip += 0.5 * length(thumb.last().out.plus(thumb.last().left.times(-1)))
	}
	r.tip = max(r.tip, tip)
	return r
}

// foot returns the middle of the cast-on.
func (m *fabric) foot() point { return point{0, m.tubes[0].edges[0].left.y} }

// main returns the sections without the digits.
func (m *fabric) main() []tube {
	for i := range m.tubes {
		if m.tubes[i].over == stitch.OverDigit {
			return m.tubes[:i]
		}
	}
	return m.tubes
}

// thumb returns the last section of a mitt with a thumb.
func (m *fabric) thumb() *tube { return &m.tubes[len(m.tubes)-1] }
