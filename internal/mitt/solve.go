package mitt

import (
	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/shaping"
)

// The limits of a schedule (common practice, no source): increase rounds are
// at least two apart and never in the last round.
const (
	gussetGap     = 2
	gussetLeadOut = 1
	topGap        = 1
)

// The fewest and most stitches round a hand that make a mitt.
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

// New gives a Planner.
func New() *Planner { return &Planner{} }

// Plan computes the plan of one request. A request that can't be made into a
// plan is refused with fault.Fields naming the numbers that are in the way
// and the nearest that work.
func (pl *Planner) Plan(req *Request) (*Plan, error) {
	w := newWork(req)
	if err := w.check(); err != nil {
		return nil, err
	}
	w.measure()
	if err := w.tubes(); err != nil {
		return nil, err
	}
	if err := w.parts(pl); err != nil {
		return nil, err
	}
	if err := w.above(pl); err != nil {
		return nil, err
	}
	if err := w.keepsWorked(); err != nil {
		return nil, err
	}
	w.plan.Pins = req.Pins
	w.listDefaults()
	w.residuals()
	w.offs()
	w.warn()
	return &w.plan, nil
}

// parts plans gusset and thumb, of a mitt that has them.
func (w *work) parts(pl *Planner) error {
	if !w.plan.Thumbed() {
		return w.withoutThumb()
	}
	if err := w.gusset(pl); err != nil {
		return err
	}
	w.thumb()
	return nil
}

// work is one plan while it is being made.
type work struct {
	req    *Request
	pins   *Pins   // what is fixed, by the person or by being knitted
	worked *Worked // what is knitted; nil: nothing
	plan   Plan
	len    lengths
	g, q   float64

	freeHand int // the hand's count where none is fixed
}

// newWork begins a plan. What is knitted has its own rib and edges, and fixes
// its numbers.
func newWork(req *Request) *work {
	if req.Worked == nil {
		return &work{req: req, pins: &req.Pins}
	}
	own, pins := *req, req.Pins
	own.Stitch.Rib, own.Stitch.OneSided = req.Worked.Rib, req.Worked.OneSided
	req.Worked.hold(&pins)
	return &work{req: &own, pins: &pins, worked: req.Worked}
}

// check refuses what no other part has looked at yet.
func (w *work) check() error {
	faults := w.req.Hand.Check()
	checkEase("ease.hand", w.req.Ease.Hand, &faults)
	checkEase("ease.cuff", w.req.Ease.Cuff, &faults)
	checkEase("ease.gusset", w.req.Ease.Gusset, &faults)
	checkEase("ease.palm", w.req.Ease.Palm, &faults)
	w.checkWorked(&faults)
	w.req.checkSchedule(&faults)
	checkMultiple("stitch.repeat", w.req.Stitch.Repeat, &faults)
	checkMultiple("stitch.rib", w.req.Stitch.Rib, &faults)
	w.req.Pins.check(&faults)
	return faults.Err()
}

func checkMultiple(field string, n int, faults *fault.Fields) {
	if n < 1 || n > maxStitches {
		faults.Add(field, "is %d; write a whole number from 1 to %d", n, maxStitches)
	}
}

func checkEase(field string, e *float64, faults *fault.Fields) {
	if e != nil && !(*e > -0.5 && *e < 1) {
		faults.Add(field, "is %g; write fabric over body minus one, above -0.5 and below 1: -0.05, typed also as -5 %%, is 5 %% smaller", *e)
	}
}

// measure fills the hand, the eases and the lengths.
func (w *work) measure() {
	r := w.req
	w.g, w.q = r.Gauge.Stitches, r.Gauge.Rounds
	h, filled := r.Hand.Fill()
	w.len = r.lengths(&h)
	w.plan = Plan{
		Kind: r.Kind, Gauge: r.Gauge, Hand: h, Stitch: r.Stitch, Filled: filled,
		Ease: Eases{Hand: r.handEase(&h), Cuff: r.cuffEase(), Gusset: r.gussetEase(&h), Palm: r.palmEase(&h), ThumbAdded: r.thumbAdded(&h)},
	}
	if w.worked != nil {
		w.plan.Knitted, w.plan.BaseAbove = w.worked, w.worked.BaseAbove
	}
}

// tubes chooses the counts of hand and cuff and their rounds.
func (w *work) tubes() error {
	p, st := &w.plan, w.req.Stitch
	exact := w.g * p.Hand.Circumference.MM() * (1 + p.Ease.Hand)
	if err := w.sizeFits(exact); err != nil {
		return err
	}
	n := nearestIn(exact, st.Repeat, st.Offset)
	for n < fewestStitches {
		n += st.Repeat
	}
	if n > maxStitches {
		return fault.Fields{{Path: "stitch.repeat", Message: "leaves no count for the hand between 8 and 1000; write a smaller repeat"}}
	}
	n = w.joins(n)
	w.freeHand = n
	p.Body.Stitches = Count{N: n, Exact: exact, Below: n - st.Repeat, Above: n + st.Repeat}
	p.Body.Stitches.pin(w.pins.HandStitches)
	p.Body.Stitches.Knitted = w.worked.joined()
	w.cuff()
	return w.cuffJoins()
}

// sizeFits refuses a hand of too few or too many stitches.
func (w *work) sizeFits(exact float64) error {
	h := w.plan.Hand
	if exact < fewestStitches/2 || exact > maxStitches || w.q*h.Length.MM() > maxRounds {
		return fault.Fields{{Path: hand.FieldCircumference, Message: sizeMessage(h, w.g, w.q, exact)}}
	}
	return nil
}

// pin sets a pinned number in the place of the chosen one.
func (c *Count) pin(p Pin) {
	if p.On {
		c.N, c.Pinned = p.N, true
	}
}

func ceilTo(n, step int) int { return (n + step - 1) / step * step }
