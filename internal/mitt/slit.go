package mitt

import (
	"thenar/internal/hand"
	"thenar/internal/stitch"
)

// An opening for the thumb is worked to and fro, and then joined again; no thumb is
// knitted. A flat piece leaves it in its seam. Leaflets of 1914 to 1940 leave such an
// opening in a wristlet, in both ways.

// openingShare is the length of the opening as a share of the hand's length. Its top is
// where the thumb parts from the hand (common practice, no source).
const openingShare = 0.28

// fewestRows is the least number of rows of an opening: one of either side.
const fewestRows = 2

// openingLength returns the length of the opening in mm for a hand of length l.
func openingLength(l float64) float64 { return openingShare * l }

// The edges of an opening are knitted in every row, so that they lie flat: so many
// stitches of each, one where the hand has too few (common practice, no source).
const (
	edgeStitches = 2
	narrowHand   = 16
)

// OpeningEdge returns how many stitches at either end of the rows are the edge, with that
// which a seam takes above and below.
func (p *Plan) OpeningEdge() int {
	if p.Body.Stitches.N < narrowHand {
		return 1
	}
	return edgeStitches
}

// OpeningRows returns how many rows an opening for the thumb has; 0 if the mitt has none.
func (p *Plan) OpeningRows() int {
	if p.Construction() == Slit {
		return p.Gusset.Rounds.N
	}
	return 0
}

// slit plans the opening. It has an even number of rows, so that the round that joins
// it again goes on with the right side facing. With q rounds over a mm and L the length
// of the hand,
//
//	R = nearest even to q · (0.28 L − b)
//
// where b is how far its foot sits above its place on the hand.
func (d *draft) slit() error {
	d.openingRows()
	d.withoutGusset()
	d.unlist(hand.FieldThumbLength)
	return nil
}

// openingRows sets the number of rows: as fixed, or else as long as it should be, and no
// fewer than are knitted.
func (d *draft) openingRows() {
	exact := d.q * d.moundLength()
	n := max(fewestRows, nearestIn(exact, 2, 0), ceilTo(d.progress.in(stitch.Opening), 2))
	c := Count{N: n, Exact: exact, Below: n - 2, Above: n + 2, Knitted: d.progress.past(stitch.Opening)}
	if pin := d.pins.GussetRounds; pin.On {
		c.pin(Fix(ceilTo(pin.N, 2)))
		c.Pinned = d.req.Pins.GussetRounds.On
	}
	d.plan.Gusset.Rounds = c
}

// Noun returns what the rounds of the present part are called.
func (k *Progress) Noun() string {
	if k.Part == stitch.Opening {
		return stitch.RightSide.Noun()
	}
	return stitch.AllRound.Noun()
}

// moundLength returns how far the part beside the base of the thumb reaches up, in mm.
func (d *draft) moundLength() float64 {
	if d.plan.Construction() == Slit {
		return openingLength(d.plan.Hand.Length.MM()) - d.plan.BaseAbove.MM()
	}
	return d.gussetLength()
}

// warnOpening says where what is fixed or knitted makes an opening of another length.
func (d *draft) warnOpening() {
	r := d.plan.Gusset.Rounds
	if off := float64(r.N) - r.Exact; d.plan.Construction() == Slit && d.progress.begun(stitch.Opening) && (off > 1+tie || off < -1-tie) {
		d.plan.say(GussetRounds.Key(), "The opening gets %d rows, not %.1f, with what is knitted or fixed.", r.N, r.Exact)
	}
}

// holdOpening is hold above the plain cuff for a mitt with an opening.
func (k *Progress) holdOpening(p *Pins) {
	if p.GussetRounds.On {
		p.GussetRounds.N = max(p.GussetRounds.N, k.in(stitch.Opening))
	}
	if k.begun(stitch.Hand) {
		p.GussetRounds = Fix(k.GussetRounds)
	}
}
