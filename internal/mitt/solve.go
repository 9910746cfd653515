package mitt

import (
	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/shaping"
	"thenar/internal/stitch"
)

// The limits of a schedule in rounds (common practice, no source).
const (
	gussetGap     = 2 // the least from one increase round to the next
	gussetLeadOut = 1 // plain rounds that end the gusset
	topGap        = 1 // the least from one decrease round of the top to the next
)

// The least and greatest number of stitches round a hand, and the greatest number
// of rounds of a part.
const (
	fewestStitches = 8
	maxStitches    = 1_000
	maxRounds      = 1_500
)

// Planner makes plans. It keeps the solver's scratch from plan to plan, so
// one Planner serves one goroutine.
type Planner struct {
	solver shaping.Solver
	target []int64
}

// New returns a Planner.
func New() *Planner { return &Planner{} }

// Plan computes the plan of one request. If there is none, it returns
// fault.Fields that name the numbers in the way and the nearest that work.
func (pl *Planner) Plan(req *Request) (*Plan, error) {
	d := newDraft(req)
	if err := d.check(); err != nil {
		return nil, d.inRows(err)
	}
	p, err := pl.make(d)
	return p, d.inRows(err)
}

// make makes the plan of a draft that is checked.
func (pl *Planner) make(d *draft) (*Plan, error) {
	d.measure()
	if err := d.tubes(pl); err != nil {
		return nil, err
	}
	if err := d.parts(pl); err != nil {
		return nil, err
	}
	if err := d.above(pl); err != nil {
		return nil, err
	}
	if err := d.keepsWorked(); err != nil {
		return nil, err
	}
	d.plan.Pins = d.asked.Pins
	d.listDefaults()
	d.residuals()
	d.offs()
	d.warn()
	return &d.plan, nil
}

// parts plans the gusset and the thumb of a mitt that has them.
func (d *draft) parts(pl *Planner) error {
	if !d.plan.Parted() {
		return d.withoutThumb()
	}
	make := d.straight
	switch d.plan.Construction() {
	case ByGusset:
		make = func() error { return d.gusset(pl) }
	case Slit:
		return d.slit()
	}
	if err := make(); err != nil {
		return err
	}
	d.thumb()
	return nil
}

// draft is one plan while it is being made.
type draft struct {
	asked    *Request
	req      *Request  // as asked, but made as what is knitted
	pins     *Pins     // what is fixed, by the person or by being knitted
	progress *Progress // what is knitted; nil: nothing
	plan     Plan
	len      lengths
	g, q     float64 // stitches and rounds per mm

	freeHand int // the hand's count when none is fixed
}

// newDraft begins a plan. If some of it is knitted, its cuff, its rib, its
// one-sided gusset, the way in which that grows, and its numbers are those of the
// knitting.
func newDraft(req *Request) *draft {
	pins := &req.Pins
	if req.Make.Direction == Down || req.Progress != nil {
		own := req.Pins
		pins = &own
	}
	if req.Make.Direction == Down {
		for _, n := range fromCuff {
			pins.clear(n)
		}
	}
	if req.Progress == nil {
		return &draft{asked: req, req: req, pins: pins}
	}
	own := *req
	own.Make.Direction, own.Make.Flat = "", req.Progress.Flat
	if req.Progress.Down {
		own.Make.Direction = Down
	}
	if req.Progress.cuffed() || !req.Kind.info().topped {
		own.Stitch.Rib, own.Stitch.Knits = req.Progress.Rib, req.Progress.Knits
	}
	if req.Progress.cuffed() {
		own.Make.Cuff = req.Progress.Cuff
	}
	if req.Progress.begun(stitch.Gusset) || req.Progress.Down && req.Progress.GussetBase > 0 {
		own.Stitch.OneSided, own.Make.Increase = req.Progress.OneSided, req.Progress.Increase
	}
	if c := req.Progress.Construction; c == Straight && req.Progress.begun(stitch.Hand) {
		own.Make.Place, own.Make.Inset = req.Progress.Place, Fix(req.Progress.Inset) // where the waste yarn lies
	}
	if req.Progress.fingered() && req.Kind.Fingered() {
		req.Progress.holdEnds(&own.Make)
	}
	if req.Progress.topSettled() {
		m := req.Progress.madeTop()
		own.Make.Top, own.Make.Band, own.Make.Wedges = m.Top, m.Band, m.Wedges
	}
	if req.Progress.placed() {
		own.Make.Place, own.Make.Inset = req.Progress.Place, Fix(req.Progress.Inset)
	}
	req.Progress.hold(pins)
	return &draft{asked: req, req: &own, pins: pins, progress: req.Progress}
}

// check refuses what is out of range or contradicts what is knitted.
func (d *draft) check() error {
	faults := d.req.Hand.Check()
	checkEase("ease.hand", d.req.Ease.Hand, &faults)
	checkEase("ease.cuff", d.req.Ease.Cuff, &faults)
	checkEase("ease.gusset", d.req.Ease.Gusset, &faults)
	checkEase("ease.palm", d.req.Ease.Palm, &faults)
	checkEase(PathCapEase, d.req.Ease.Cap, &faults)
	d.checkWorked(&faults)
	d.req.checkSchedule(&faults)
	checkMultiple("stitch.repeat", d.req.Stitch.Repeat, &faults)
	checkMultiple("stitch.rib", d.req.Stitch.Rib, &faults)
	if st := d.req.Stitch; d.progress == nil && (st.Knits < 0 || st.Knits > 0 && st.Knits >= st.Rib) {
		faults.Add(PathKnits, "is %d of a rib of %d; write a number below that", st.Knits, st.Rib)
	}
	d.req.Pins.check(&faults)
	d.req.checkRows(&faults)
	d.asked.checkMake(&faults)
	return faults.Err()
}

func checkMultiple(field string, n int, faults *fault.Fields) {
	if n < 1 || n > maxStitches {
		faults.Add(field, "is %d; write a whole number from 1 to %d", n, maxStitches)
	}
}

func checkEase(field string, e *float64, faults *fault.Fields) {
	if e != nil && !(*e > -0.5 && *e < 1) {
		faults.Add(field, "is %g; write a share above -0.5 and below 1, such as -0.05, which is 5\u00a0%% smaller", *e)
	}
}

// measure fills the hand, the eases and the lengths.
func (d *draft) measure() {
	r := d.req
	d.g, d.q = r.Gauge.Stitches, r.Gauge.Rounds
	h, filled := r.Hand.Fill()
	if r.Kind.Fingered() {
		var more []hand.Filled
		h.Fingers, more = h.FillFingers()
		filled = append(filled, more...)
	}
	d.len = r.lengths(&h)
	d.plan = Plan{
		Kind: r.Kind, Make: r.Make, Gauge: r.Gauge, Hand: h, Stitch: r.Stitch, Filled: filled,
		Ease: Eases{Hand: r.handEase(&h), Cuff: r.cuffEase(), Gusset: r.gussetEase(&h), Palm: r.palmEase(&h), Cap: r.capEase(), ThumbAdded: r.thumbAdded(&h)},
	}
	if d.progress != nil {
		d.plan.Progress, d.plan.BaseAbove = d.progress, d.progress.BaseAbove
	}
}

// tubes chooses the counts of the hand and the cuff, and the cuff's rounds.
func (d *draft) tubes(pl *Planner) error {
	p, st := &d.plan, d.req.Stitch
	if err := d.bigEnough(); err != nil {
		return err
	}
	exact := d.g * p.Hand.Circumference.MM() * (1 + p.Ease.Hand)
	if err := d.sizeFits(exact); err != nil {
		return err
	}
	n := nearestIn(exact, st.Repeat, st.Offset)
	for n < fewestStitches {
		n += st.Repeat
	}
	if n > maxStitches {
		return fault.Fields{{Path: "stitch.repeat", Message: "leaves no count for the hand between 8 and 1000; write a smaller repeat"}}
	}
	n = d.joins(n)
	d.freeHand = n
	p.Body.Stitches = Count{N: n, Exact: exact, Below: n - st.Repeat, Above: n + st.Repeat}
	p.Body.Stitches.pin(d.pins.HandStitches)
	p.Body.Stitches.Knitted = d.progress.joined()
	return d.cuff(pl)
}

// sizeFits refuses a hand of too few or too many stitches, or too many rounds.
func (d *draft) sizeFits(exact float64) error {
	h := d.plan.Hand
	if exact < fewestStitches/2 || exact > maxStitches || d.q*h.Length.MM() > maxRounds {
		return fault.Fields{{Path: hand.FieldCircumference, Message: sizeMessage(h, d.g, d.q, exact)}}
	}
	return nil
}

// pin replaces the chosen number with a pinned one.
func (c *Count) pin(p Pin) {
	if p.On {
		c.N, c.Pinned = p.N, true
	}
}

func ceilTo(n, step int) int { return (n + step - 1) / step * step }
