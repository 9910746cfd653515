package picture

import (
	"cmp"
	"fmt"
	"slices"

	"thenar/internal/draw"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Bench is a hand with its mitt, and what stands beside it round by round, all in one frame: as
// high as each other, in mm of the hand, with the cast-on at the same height. Shown equally high,
// they line up whatever the size of the window.
type Bench struct {
	Hand   *draw.Scene
	Height float64 // of the frame, mm
	Foot   float64 // distance of the cast-on from the frame's upper edge, mm

	p       *mitt.Plan
	tubes   []tube
	parting float64 // height of the thumb's first round above the cast-on, mm
}

// Room above the finger tips and below the cast-on, and the least height of a frame, in mm. A
// child's hand is shown smaller than its parents'.
const (
	benchAbove  = 8.0
	benchNames  = 12.0 // for two lines above each finger's curves
	benchBelow  = 20
	benchBeside = 2
	benchLeast  = 210
)

// NewBench draws the hand of a plan as Hand does, but for what stands beside it: the tapes are
// taken where a page can show them, and the rounds have no spine of their own.
func NewBench(p *mitt.Plan, o HandOptions) *Bench {
	f := posed(p)
	m := newFabric(p, f)
	f.room = m.room(f)
	b := &Bench{p: p, tubes: m.tubes}
	foot, top := m.foot().y, f.long
	if p.Thumbed() {
		b.parting = m.thumb().from / p.Gauge.Rounds
	}
	for _, t := range m.digits() {
		top = max(top, foot+t.from/p.Gauge.Rounds+float64(t.rounds())/p.Gauge.Rounds)
	}
	main := m.main()
	if last := &main[len(main)-1]; !last.closed {
		top = max(top, last.last().left.y)
	} else {
		top = max(top, last.last().left.y+0.42*length(last.last().out.plus(last.last().left.times(-1))))
	}
	top = max(top, m.capReach())
	above := benchAbove
	if m.spans != nil {
		above += benchNames
	}
	b.Height = max(above+top-foot+benchBelow, benchLeast)
	b.Foot = b.Height - benchBelow

	c := &canvas{sign: 1, letter: letterSize(&p.Hand), ground: cardColour}
	if o.Left {
		c.sign = -1
	}
	for range 2 { // first to find how broad it is
		left := benchBeside - c.drawn.left
		c.clear()
		c.dx += left
		c.dy = b.Foot + foot
		f.drawHand(c, foot-benchBelow)
		m.draw(c, o.Worn)
		m.drawBands(c, -1) // the ladder has its own
		c.s.Width, c.s.Height = c.drawn.right+benchBeside, b.Height
	}
	c.ribbons = true
	drawTapes(c, f.benchTapes(c.letter), o, filledFields(p.Filled))
	c.s.Label = fmt.Sprintf("%s hand to scale, palm towards you, %s round and %s long, with a %s on it: %s.", o.side(),
		p.Hand.Circumference.With(o.unit()), p.Hand.Length.With(o.unit()), p.Kind.Words(), m.words())
	b.Hand = c.s
	return b
}

// benchTapes returns the tapes of a hand that has little room beside it: without their names, and
// with the hand's length taken on the hand, along the middle finger.
func (f *figure) benchTapes(letter float64) []tape {
	list := f.tapes(letter)
	for i := range list {
		t := &list[i]
		t.named, t.label.over = false, true
		switch t.field {
		case hand.FieldThumb: // its label had its name above it
			t.label.at.y -= leading * letter
		case hand.FieldLength:
			x := f.fingers()[2].tip[2].x
			t.from, t.to = point{x, 0}, point{x, f.long}
			t.label = label{at: point{x, 0.78 * f.long}, anchor: draw.Middle, slide: point{0, -0.3 * letter}, over: true}
		}
	}
	return list
}

// Level returns how far below the frame's upper edge a height above the cast-on is, as a share of
// the frame's height.
func (b *Bench) Level(above float64) float64 { return (b.Foot - above) / b.Height }

// Rung is one round on the ladder.
type Rung struct {
	Part      stitch.Part
	Round     int
	Low, High float64 // levels of its lower and upper edge
	Last      bool    // a section ends with it
	Grows     bool    // it increases, or decreases
}

// Rungs returns the rounds of the hand from the cast-on up, and those of the thumb, which stands
// upright on the division.
func (b *Bench) Rungs() (hand, thumb []Rung) {
	for i := range b.tubes {
		switch t := &b.tubes[i]; {
		case t.over != stitch.OverDigit:
			hand = append(hand, b.rungs(t)...)
		case t.part.OnThumb():
			thumb = b.rungs(t)
		}
	}
	return hand, thumb
}

// FingerRungs returns the rounds of each finger, in the order worked; each stands upright where
// it begins.
func (b *Bench) FingerRungs() (list [][]Rung) {
	for i := range b.tubes {
		if t := &b.tubes[i]; t.over == stitch.OverDigit && !t.part.OnThumb() {
			list = append(list, b.rungs(t))
		}
	}
	return list
}

// rungs returns the rounds of a section.
func (b *Bench) rungs(t *tube) (list []Rung) {
	shaped := map[stitch.Part][]int{stitch.Gusset: b.p.Gusset.IncreaseRounds, stitch.Thumb: b.p.Thumb.DecreaseRounds}
	if b.p.Top != nil {
		shaped[stitch.Top] = b.p.Top.DecreaseRounds
	}
	if f, ok := mitt.FingerOf(t.part); ok {
		shaped[t.part] = b.p.Fingers.Each[f].DecreaseRounds
	}
	grows := map[int]bool{}
	for _, r := range shaped[t.part] {
		grows[r] = true
	}
	for r := 1; r <= t.rounds(); r++ {
		below, at := t.up(float64(r-1))/b.p.Gauge.Rounds, t.up(float64(r))/b.p.Gauge.Rounds
		list = append(list, Rung{t.part, t.worked(r), b.Level(below), b.Level(at), r == t.rounds(), grows[r]})
	}
	return list
}

// Mark is where a number of the plan happens on the ladder.
type Mark struct {
	Of    mitt.Number
	Level float64
	Thumb bool // on the thumb's ladder
}

// Marks returns the given numbers, which the plan has, from the cast-on up, each at the height where it happens: a
// count of rounds in the middle of its rounds, a count of stitches at the round that it is for.
func (b *Bench) Marks(numbers []mitt.Number) []Mark {
	marks := make([]Mark, 0, len(numbers))
	for _, n := range numbers {
		above, thumb := b.height(n)
		marks = append(marks, Mark{n, b.Level(above), thumb})
	}
	slices.SortStableFunc(marks, func(a, b Mark) int { return cmp.Compare(b.Level, a.Level) })
	return marks
}

// height returns how far above the cast-on a number happens, in mm, and whether on the thumb.
func (b *Bench) height(n mitt.Number) (above float64, thumb bool) {
	g, round := &b.p.Gusset, func(part stitch.Part, r float64) float64 {
		for i := range b.tubes {
			if t := &b.tubes[i]; t.part == part {
				return t.up(min(r, float64(t.rounds()))) / b.p.Gauge.Rounds
			}
		}
		return b.parting
	}
	middle := func(part stitch.Part) float64 { return (round(part, 0) + round(part, 1e6)) / 2 }
	increase := func(k int) float64 {
		return round(stitch.Gusset, float64(g.IncreaseRounds[min(k, len(g.IncreaseRounds)-1)]))
	}
	if part := b.p.PartOf(n); part.Over() == stitch.OverDigit && !part.OnThumb() {
		if n.Measure() == mitt.InRounds {
			return middle(part), false
		}
		return round(part, 0), false
	}
	switch n {
	case mitt.CastOn:
		return 0, false
	case mitt.LittleLowerRounds:
		return middle(stitch.UpperHand), false
	case mitt.CuffRounds:
		return middle(stitch.Cuff), false
	case mitt.CuffPlainRounds:
		return middle(stitch.CuffPlain), false
	case mitt.HandStitches:
		return round(b.p.PartOf(n), 0), false
	case mitt.GussetBase:
		return round(stitch.Gusset, 0.5), false
	case mitt.FirstIncrease:
		return increase(0), false
	case mitt.Rhythm:
		return increase(1), false
	case mitt.Increases:
		return increase(len(g.IncreaseRounds) / 2), false
	case mitt.IncreaseRounds:
		return increase(len(g.IncreaseRounds)), false
	case mitt.GussetRounds:
		return middle(b.p.PartOf(n)), false
	case mitt.RoundsAboveGusset:
		return middle(stitch.Hand), false
	case mitt.TopRounds:
		return middle(stitch.Top), false
	case mitt.ThumbRounds:
		return middle(stitch.Thumb), true
	case mitt.ThumbStitches, mitt.ThumbDecreases:
		return round(stitch.Thumb, 2), true
	case mitt.PickedUp:
		return round(stitch.Thumb, 0), true
	}
	return b.parting, false // what is done where hand and thumb part
}

// Spread moves levels, given from the lower edge up, so that none is nearer to another than a
// distance (or as far as all have room), with the least sum of squared moves that keeps them between two levels. Clamping what
// is left of each after its place in the row is taken off gives the best bounded answer, since
// that rises with the row (isotonic regression with bounds).
func Spread(levels []float64, apart, top, bottom float64) []float64 {
	apart = min(apart, (bottom-top)/float64(max(len(levels)-1, 1)))
	want, size := make([]float64, len(levels)), make([]float64, len(levels))
	for i, l := range levels {
		want[i], size[i] = -l, apart
	}
	out := spread(want, size)
	for i, at := range out {
		place := float64(i) * apart
		rest := min(max(at-place, -bottom), -top-float64(len(out)-1)*apart)
		out[i] = -(rest + place)
	}
	return out
}
