package mitt

import (
	"math"

	"thenar/internal/fault"
	"thenar/internal/stitch"
)

// cuffShare is the least share of the hand's count that a cuff may have.
const cuffShare = 0.78

// cuff plans the cuff. Its cast-on is the multiple of the rib, or another cuff's any
// count, nearest to g·W·(1 + e), never over the hand's count and never under 0.78 of it unless
// pinned. Counts are in stocking-stitch gauge; the rib draws in by itself. If
// there is no round between cast-on and gusset, the cast-on is the hand's count.
//
// A gauntlet has that count at the wrist and a wider cast-on, see flare.
//
// The hand of a mitten without a thumb is wider, since the thumb lies inside,
// but the cuff still has to grip. So its floor is 0.78 g·H, and at least half
// the hand's count, which one round can still double.
func (d *draft) cuff(pl *Planner) error {
	p := &d.plan
	n := p.Body.Stitches.N
	exact := d.g * p.Hand.Wrist.MM() * (1 + p.Ease.Cuff)
	least := int(math.Ceil(cuffShare*float64(n) - tie))
	if p.Tucked() {
		least = max(int(math.Ceil(cuffShare*d.g*p.Hand.Circumference.MM()-tie)), (n+1)/2)
	}
	rounds, plain := d.cuffRounds()
	multiple := 1
	if d.req.Make.Cuff.info().ribbed {
		multiple = d.req.Stitch.Rib
	}
	count, rib := cuffCount(exact, n, min(least, n), multiple)
	if rounds+plain == 0 {
		count = n
	}
	if d.progress.cuffed() {
		rib = d.progress.cuffRib()
	} else if d.pins.CastOn.On {
		rib = multiple
	}
	c := Count{N: count, Exact: exact, Below: count - rib, Above: count + rib}
	k := d.progress
	knitted := k.past(stitch.Cuff) || k.joined()
	if k != nil && k.Down {
		knitted = k.handDone()
	}
	flares := d.req.Make.Cuff.info().flares && rounds > 0
	if !flares {
		c.pin(d.pins.CastOn)
		if c.Knitted = k.cuffed(); c.Knitted && k.flaresDown() { // it has no rounds
			c.N = k.wrist()
		}
	}
	p.Cuff = Cuff{
		CastOn: c, Wrist: c, Rounds: rounds, PlainRounds: plain, Rib: rib,
		JoinsAbove: p.Tucked() && plain == 0 && rounds > 0 && (!knitted || k.JoinsAbove),
		Facing:     d.facing(rounds, plain),
		PerMM:      d.req.cuffPerMM() / d.req.Make.Cuff.info().reaches(),
	}
	if flares {
		if err := d.flare(pl, min(least, n), n); err != nil {
			return err
		}
	}
	p.Cuff.Change = n - p.Cuff.Wrist.N
	p.Cuff.Passage = p.Hand.Passage() * p.Hand.Circumference.MM() / (float64(min(p.Cuff.CastOn.N, p.Cuff.Wrist.N)) / d.g)
	return d.cuffJoins()
}

// cuffRounds returns the numbers of the cuff's rounds and of plain ones, no fewer than
// are knitted. If there is no plain round to bring the cuff to the hand's count, at
// least one round of the cuff is still to come and does it.
func (d *draft) cuffRounds() (rounds, plain int) {
	pace := d.req.Make.pace()
	if d.len.cuffPlain > 0 {
		plain = pace.nearest(d.q * d.len.cuffPlain)
	}
	plain = d.pins.CuffPlainRounds.Or(pace.up(max(plain, d.progress.plainLeast())))
	rounds = max(d.pins.CuffRounds.Or(d.cuffRoundsFree(plain)), d.cuffOnward(plain))
	if k := d.progress; k != nil && k.Down && (k.turnedHem() || k.edgedFlare()) && !d.pins.CuffRounds.On {
		rounds = k.CuffRounds
	}
	if k := d.progress; k != nil && !k.Down && plain == 0 && !k.joined() && rounds-pace.rest() <= k.in(stitch.Cuff) && !d.req.Kind.info().both {
		rounds = pace.up(k.in(stitch.Cuff) + 1 + pace.rest())
	}
	return rounds, plain
}

// cuffCount returns the count from least to n nearest to exact that is a multiple
// of the rib, and the rib it is a multiple of. If there is none, 1 × 1 rib takes
// the rib's place: an even count exists whenever n is 8 or more and least is no
// more than 0.78 n.
func cuffCount(exact float64, n, least, rib int) (count, of int) {
	for _, of := range [2]int{rib, oneByOne} {
		low, high := ceilTo(least, of), n/of*of
		if low <= high && high > 0 {
			return min(max(nearestIn(exact, of, 0), low), high), of
		}
	}
	return n, 1
}

// cuffJoins refuses a fixed cast-on that one round can't bring to the hand's
// count: a round doubles every stitch, or works every pair together, at most.
func (d *draft) cuffJoins() error {
	c, n := &d.plan.Cuff, d.plan.Body.Stitches.N
	most := d.maxJoined(n)
	var faults fault.Fields
	switch {
	case c.Change != 0 && c.Rounds+c.PlainRounds == 0:
		faults.Add(CastOn.Path(), "is %d, but without a round of cuff the cast-on is the hand's %d", c.CastOn.N, n)
		faults.Add(CuffRounds.Path(), "is 0 beside 0 plain rounds; one round is needed to bring %d to %d stitches", c.CastOn.N, n)
		faults.Add(CuffPlainRounds.Path(), "is 0 beside 0 rounds of %s; write at least 1 for one of them", d.plan.Make.Cuff.Words())
		d.alsoHand(&faults, c.CastOn.N, c.CastOn.N)
	case c.Wrist.N > most || n > 2*c.Wrist.N:
		faults.Add(CastOn.Path(), "is %d; one round can bring %d to %d stitches to the hand's %d", c.CastOn.N, (n+1)/2, most, n)
		d.alsoHand(&faults, (c.Wrist.N+1)/2, 2*c.Wrist.N)
	}
	return faults.Err()
}

// maxJoined returns the greatest cuff count that one round can bring down to n.
// Without a thumb that may be the only round below the top, which takes off what the
// top can't use as well.
func (d *draft) maxJoined(n int) int {
	if d.req.Kind.info().both {
		n -= d.req.Make.closes(n).even
	}
	return 2 * n
}

// joins returns n, or the count nearest to it to which one round can bring the
// cuff that is on the needles.
func (d *draft) joins(n int) int {
	if d.progress == nil || d.progress.Down || d.progress.joined() {
		return n
	}
	count := d.progress.wrist()
	for n > 2*count && n > fewestStitches {
		n -= d.req.Stitch.Repeat
	}
	if d.req.Make.Cuff.info().flares && !d.progress.past(stitch.Cuff) {
		count = min(count, n) // it narrows further
	}
	for d.maxJoined(n) < count || n < fewestStitches {
		n += d.req.Stitch.Repeat
	}
	return n
}

// alsoHand adds a fault for the hand's count beside the cast-on's, if the hand's
// is fixed too.
func (d *draft) alsoHand(faults *fault.Fields, low, high int) {
	if n := d.pins.HandStitches; n.On {
		faults.Add(HandStitches.Path(), "is %d; beside a cast-on of %d it can be %d to %d", n.N, d.plan.Cuff.CastOn.N, low, high)
	}
}

// Length returns how far the cuff's rounds reach up, in mm; what a hem folds inside
// reaches nowhere.
func (c *Cuff) Length() float64 {
	if f := c.Flare; f != nil {
		return float64(f.Edge)/f.EdgePerMM + float64(c.Rounds-f.Edge)/c.PerMM
	}
	return float64(max(0, c.Rounds-c.Facing)) / c.PerMM
}
