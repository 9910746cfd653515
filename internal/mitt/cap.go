package mitt

import (
	"fmt"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/stitch"
)

// Cap is a mitten's cap over the half fingers of a glove. It hangs on the back and folds
// back off the fingers.
type Cap struct {
	Back   int // B, picked up along the back, one of them beyond each side line
	Palm   int // cast on over the palm, 4j + 2, begun in rib
	Ribbed int // its first rounds, in which the palm is ribbed
	Rounds int // below its top
	Below  int // rounds of the hand below the lowest crotch, at which it is picked up
	Top    *Top
}

// Stitches returns how many go round.
func (c *Cap) Stitches() int { return c.Back + c.Palm }

// The ease and the length of a cap in a sheet.
const (
	PathCapEase   = "ease.cap"
	PathCapLength = "length.cap"
)

// usualCapEase is the ease of a cap, that of a mitten (common practice, no source).
const usualCapEase = 0.05

// capEase returns the ease of a cap, given or the usual.
func (r *Request) capEase() float64 {
	if r.Ease.Cap != nil {
		return *r.Ease.Cap
	}
	return usualCapEase
}

// CapStep is by how many stitches a cap becomes wider or narrower: its palm keeps to the
// rib that it begins with.
const CapStep = capRib

// A cap begins capBelow under the lowest crotch, so that the edges overlap, and its palm
// begins with capEdge of 2 × 2 rib, which lies flat (common practice, no source). Lengths
// are in mm.
const (
	capBelow = 10.0
	capEdge  = 20.0
	capRib   = 4
)

// capOver plans a mitten's cap over half fingers. With N′ stitches of the hand, B = back + 2
// are picked up and the smallest 4j + 2 not under (1 + e) g H − B are cast on for the palm,
// with the ease e of the cap.
// Its hand and its top are those of a mitten of that count.
func (d *draft) capOver(pl *Planner) error {
	p, k := &d.plan, d.progress
	if !d.req.Make.Cap {
		return nil
	}
	c := &Cap{Back: (p.Bridge.HandAfter+1)/2 + 2, Ribbed: max(1, nearest(d.q*capEdge)), Below: max(1, nearest(d.q*capBelow))}
	wide := d.g*p.Hand.Circumference.MM()*(1+p.Ease.Cap) - float64(c.Back)
	for c.Palm = 2; float64(c.Palm) < wide-tie; {
		c.Palm += capRib
	}
	if k.begun(stitch.Cap) {
		c.Back, c.Palm, c.Ribbed = k.Cap.Back, k.Cap.Palm, k.Cap.Ribbed
		if k.in(stitch.Cap) > 0 && k.in(stitch.Cap) < c.Ribbed {
			c.Ribbed = max(k.in(stitch.Cap), nearest(d.q*capEdge))
		}
	}
	p.Fingers.Cap = c
	own := *d.req
	own.Lengths, own.Progress = Lengths{}, nil
	sub := &draft{
		asked: &own, req: &own, pins: &Pins{TopRounds: d.pins.CapTopRounds, RoundsAboveGusset: d.pins.CapRounds},
		plan: *p.OverFingers(), len: lengths{above: d.len.cap, top: d.len.top}, g: d.g, q: d.q,
	}
	if err := sub.capCloses(c); err != nil {
		return err
	}
	if err := sub.top(pl); err != nil {
		return err
	}
	c.Top, c.Rounds = sub.plan.Top, sub.plan.Body.RoundsAbove
	evens := boolInt(c.Top.Odd > 0)
	if !d.pins.CapRounds.On {
		c.Rounds = max(c.Rounds, c.Ribbed+1+evens)
	}
	c.Rounds = max(c.Rounds, c.Ribbed+evens)
	d.capOnward(c, evens)
	return nil
}

// capOnward keeps what is knitted of a cap: once its last round below the top is, all of
// it.
func (d *draft) capOnward(c *Cap, evens int) {
	k := d.progress
	at := k.in(stitch.Cap)
	switch {
	case k.begun(stitch.CapTop), at > 0 && at >= k.Cap.Rounds:
		c.Rounds = k.Cap.Rounds
		c.Top.Rounds, c.Top.DecreaseRounds = k.Cap.TopRounds, k.Cap.Decreases
	case at > 0:
		c.Rounds = max(c.Rounds, at+evens)
	}
}

// capCloses refuses fixed rounds in which the cap can't be closed.
func (d *draft) capCloses(c *Cap) error {
	needs, pin := d.req.Make.closes(c.Stitches()).k, d.pins.TopRounds
	if !pin.On || pin.N >= needs {
		return nil
	}
	var faults fault.Fields
	works(&faults, CapTopRounds.Path(), fmt.Sprint(needs), "is %d; %d stitches close in no fewer than %d rounds", pin.N, c.Stitches(), needs)
	return faults
}

// capFrom returns how high above the wrist crease a cap is picked up, in mm.
func (p *Plan) capFrom() float64 {
	little, _ := p.Make.fingersFrom(&p.Hand)
	return little - capBelow
}

// OverFingers returns the plan of a mitten that has only the hand and the top of the cap,
// which must not be nil.
func (p *Plan) OverFingers() *Plan {
	c := p.Fingers.Cap
	q := &Plan{Kind: p.Kind, Make: p.Make, Gauge: p.Gauge, Hand: p.Hand, Stitch: p.Stitch, Top: c.Top}
	q.Bridge.HandAfter, q.Body.RoundsAbove = c.Stitches(), c.Rounds
	return q
}

// capSection builds the cap from its first round, which picks up along the back and casts
// on over the palm, to its top.
func (p *Plan) capSection() stitch.Section {
	s := stitch.Section{Part: stitch.Cap}
	if p.Fingers.Cap == nil {
		return s
	}
	c := p.Fingers.Cap
	s.About.Above = p.capAbove()
	rounds, where := "rounds", "the little finger parts"
	if c.Below == 1 {
		rounds = "round"
	}
	if p.Fingers.Lower == 0 {
		where = "the fingers part"
	}
	s.About.Along = fmt.Sprintf("the back, %d %s below where %s", c.Below, rounds, where)
	for r := 1; r <= c.Rounds; r++ {
		ops := times(nil, stitch.Knit, c.Stitches())
		switch {
		case r == 1:
			ops = times(times(nil, stitch.PickUp, c.Back), stitch.CastOn, c.Palm)
		case r <= c.Ribbed:
			copy(ops[c.Back:], Stitches{Rib: capRib}.ribbing(c.Palm, capRib))
		}
		s.Rounds = append(s.Rounds, stitch.Round{Ops: ops, Lead: c.Back})
	}
	p.OverFingers().belowTop(&s)
	return s
}

// capTop builds the top of the cap. Its side lines lie as far from both ends of what was
// picked up.
func (p *Plan) capTop() stitch.Section {
	if p.Fingers.Cap == nil {
		return stitch.Section{}
	}
	c := p.Fingers.Cap
	s := p.OverFingers().topOf(c.Back, 2, -1-(c.Top.Stitches/2-c.Back)/2)
	s.Part = stitch.CapTop
	s.About.Above = p.capAbove() + float64(c.Rounds)/p.Gauge.Rounds
	return s
}

// capAbove returns how far above the base of the thumb the cap is picked up, in mm.
func (p *Plan) capAbove() float64 {
	return p.capFrom() - (p.Hand.WristToCrotch.MM() - p.Hand.GussetLength.MM())
}

// CapWorked is what is recorded of a cap that is knitted.
type CapWorked struct {
	Back, Palm, Ribbed, Rounds, TopRounds int
	Decreases                             []int
}

// checkCap refuses a cap over fingers that are closed. It names them all, and what makes all
// of them half.
func (r *Request) checkCap(faults *fault.Fields) {
	if !r.Make.Cap {
		return
	}
	var closed, half []string
	for i, end := range r.Make.Fingers {
		if end.closed() {
			closed = append(closed, fingerNames[i])
			half = append(half, PathFinger(hand.Finger(i))+"="+string(HalfFinger))
		}
	}
	last, all := len(closed)-1, strings.Join(half, "&")
	switch {
	case last < 0:
	case last == 0:
		works(faults, PathCap, all, "goes over half fingers, but the %s finger is full; write half for it, or leave out the cap", closed[0])
	default:
		works(faults, PathCap, all, "goes over half fingers, but %s and %s finger are full; write half for each, or leave out the cap", strings.Join(closed[:last], ", "), closed[last])
	}
}

// boundsOfCap returns the bounds of what is knitted of a cap.
func (k *Progress) boundsOfCap() []bound {
	if !k.begun(stitch.Cap) {
		return nil
	}
	list := []bound{{capBack, 1, maxStitches}, {capPalm, 2, maxStitches}, {CapRounds, 1, maxRounds}, {capRibbed, 1, max(1, k.Cap.Rounds)}}
	if k.begun(stitch.CapTop) {
		n := k.madeTop().closes(k.Cap.Back + k.Cap.Palm).k
		list = append(list, bound{capDecreases, n, n})
	}
	return list
}
