package mitt

import (
	"math"

	"thenar/internal/stitch"
)

// cuffInfo is everything in which one kind of cuff differs from another. The rest of
// the package asks these fields, never the kind itself. All is common practice, no
// source, but where it is said.
type cuffInfo struct {
	ribbed, folded bool
	flares         bool    // it begins wider on the arm
	deep           bool    // its length is asked for as its depth
	said           string  // what the cuff is called, and its rounds before theirs
	fabric         string  // what its fabric is called; empty: by its rib
	gives          float64 // how far it stretches, stretched girth over its own; 0: by its rib
	length         portion // of the fabric, or how deep it is folded; none: the kind of mitt's
	reach          float64 // how far it reaches up, over its length; 0: all of it
}

// cuffs is the table of cuffs. A rolled edge takes about two thirds of its length into
// its roll.
var cuffs = map[CuffKind]*cuffInfo{
	RibCuff:    {said: "ribbing", ribbed: true},
	GarterCuff: {said: "garter stitch", fabric: "garter stitch", gives: passageStockinette},
	RolledCuff: {said: "rolled edge", fabric: "stockinette", gives: passageStockinette, length: shortCuff, reach: 1.0 / 3},
	HemCuff:    {said: "hem", fabric: "a hem", gives: passageStockinette, length: shortCuff, folded: true, deep: true},
	Gauntlet:   {said: "gauntlet", fabric: "stockinette", gives: passageStockinette, length: portion{0.33, 0, "0.33 × hand length"}, flares: true, deep: true},
}

var shortCuff = portion{0.12, 0, "0.12 × hand length"}

// info returns the cuff's line of the table.
func (k CuffKind) info() *cuffInfo {
	if c := cuffs[k]; c != nil {
		return c
	}
	return cuffs[RibCuff]
}

// Words returns what the cuff is called: "ribbing", "hem".
func (k CuffKind) Words() string { return k.info().said }

// Ribbed reports whether the cuff is a rib, whose multiple its count keeps.
func (p *Plan) Ribbed() bool { return p.Make.Cuff.info().ribbed }

// CuffRib returns the knits and purls of the cuff's rib; without purls it is plain.
func (p *Plan) CuffRib() (knits, purls int) { return p.Stitch.ribPattern(p.Cuff.Rib) }

// garterRows is the number of rounds of garter stitch that are as high as a stitch is
// wide: a stitch of it is half as high as wide, as teaching pages of charts say.
const garterRows = 2

// cuffPerMM returns the rounds over a mm of the cuff's fabric.
func (r *Request) cuffPerMM() float64 {
	if r.Make.Cuff == GarterCuff {
		return garterRows * r.Gauge.Stitches
	}
	return r.Gauge.Rounds
}

// cuffLengths returns the length of the cuff's fabric, or how deep it is folded, and
// the length of the plain rounds above it, in mm, for a hand of length l. A cuff that
// is shorter than the usual rib leaves the rest to the plain rounds.
func (r *Request) cuffLengths(l float64) (cuff, plain float64) {
	how, kind := r.Make.Cuff.info(), r.Kind.info()
	usual := kind.ribbing.of(l)
	cuff, plain = usual, kind.plainCuff.of(l)
	if how.length.share > 0 {
		cuff = how.length.of(l)
	}
	switch {
	case how.deep && r.Make.CuffDepth != 0:
		cuff = r.Make.CuffDepth.MM()
	case r.Lengths.Cuff != 0:
		cuff = r.Lengths.Cuff.MM()
	}
	if how.length.share > 0 {
		plain += math.Max(0, usual-cuff*how.reaches())
	}
	if r.Lengths.CuffPlain != 0 {
		plain = r.Lengths.CuffPlain.MM()
	}
	return cuff, plain
}

func (c *cuffInfo) reaches() float64 {
	if c.reach > 0 {
		return c.reach
	}
	return 1
}

// listCuff lists the lengths of the cuff that the person left open.
func (d *draft) listCuff() {
	how, kind, given := d.req.Make.Cuff.info(), d.plan.Kind.info(), d.req.Lengths
	path, from, plain := "length.cuff", kind.ribbing.from, kind.plainCuff.from
	if how.length.share > 0 {
		from = how.length.from
		plain += "; and what the cuff is shorter than ribbing"
	}
	if d.req.Construction() == Slit {
		plain += "; and what the opening is shorter than from wrist bone to thumb"
	}
	if how.deep {
		path = PathCuffDepth
	}
	d.length(path, given.Cuff == 0 && d.req.Make.CuffDepth == 0, d.len.cuff, from)
	d.length(PathUpperGirth, how.flares && d.req.Make.UpperGirth == 0, d.req.upperGirth(d.plan.Hand.Wrist), "1.4 × wrist circumference, so that it goes over a sleeve")
	d.length("length.cuff_plain", given.CuffPlain == 0, d.len.cuffPlain, plain)
}

// cuffRoundsFree returns the cuff's rounds when none are fixed, with plain rounds above
// it. Garter has an even number, so that it ends with a knit round. A hem has as many
// rounds inside as outside, and one that turns it.
func (d *draft) cuffRoundsFree(plain int) int {
	exact := d.req.cuffPerMM() * d.len.cuff
	switch {
	case d.req.Make.Cuff == GarterCuff:
		return max(2, nearestIn(exact, 2, 0))
	case d.req.Make.Cuff.info().folded:
		return 2*max(1, nearest(exact)) + 1 + d.afterHem(plain)
	case d.req.Make.Cuff.info().flares:
		return d.flareRounds(d.len.cuff)
	}
	return d.req.Make.pace().nearest(exact)
}

// afterHem returns the rounds of a hem after the one that joins it: one, if the change
// to the hand's count has no other round. In rows the one that joins it is on the right
// side, and so is that of the change.
func (d *draft) afterHem(plain int) int {
	pace := d.req.Make.pace()
	return pace.rest() + pace.takes(boolInt(plain == 0 && !d.req.Kind.info().both))
}

// facing returns the rounds of a hem of so many rounds that lie inside; once it is
// turned, those that are knitted.
func (d *draft) facing(rounds, plain int) int {
	switch k := d.progress; {
	case !d.req.Make.Cuff.info().folded:
		return 0
	case k.turnedHem() && k.Down:
		return max(0, rounds-(k.CuffRounds-k.Facing)) // what follows the turn lies inside
	case k.turnedHem():
		return k.Facing
	}
	return max(0, (rounds-1-d.afterHem(plain))/2)
}

// turnedHem reports whether the round that turns a hem is knitted.
func (k *Progress) turnedHem() bool {
	if k == nil || !k.Cuff.info().folded {
		return false
	}
	before := k.Facing
	if k.Down {
		before = k.CuffRounds - 1 - k.Facing
	}
	return k.past(stitch.Cuff) || k.in(stitch.Cuff) > before
}

// cuffOnward returns the least number of rounds of a cuff that is begun. Garter ends
// with a knit round; a hem that is turned keeps its rounds, and one that isn't has at
// least as many outside as are knitted.
func (d *draft) cuffOnward(plain int) int {
	k := d.progress
	at := k.in(stitch.Cuff)
	switch how := d.req.Make.Cuff.info(); {
	case at == 0:
		return 0
	case how.folded && k.turnedHem() && k.Down:
		return max(at, k.CuffRounds)
	case how.folded && k.turnedHem():
		return d.req.Make.pace().up(max(at, 2*k.Facing+1+d.afterHem(plain)))
	case how.folded && k.Down: // from the hand the rounds outside come first, those after the facing among them
		return 2*at + 1 - d.afterHem(plain)
	case how.folded:
		return 2*at + 1 + d.afterHem(plain)
	case d.req.Make.Cuff == GarterCuff:
		return at + at%2
	}
	return d.req.Make.pace().up(at)
}

// cuffGives returns how far the cuff stretches, and what its fabric is called.
func (p *Plan) cuffGives() (stretch float64, what string) {
	if how := p.Make.Cuff.info(); how.gives > 0 {
		return how.gives, how.fabric
	}
	switch knits, purls := p.Stitch.ribPattern(p.Cuff.Rib); {
	case purls == 0:
		return passageStockinette, "stockinette"
	case knits == 1 && purls == 1:
		return passageRib1x1, "1×1 rib"
	case knits == 2 && purls == 2:
		return passageRib2x2, "2×2 rib"
	}
	return passageRib2x2, "this rib"
}

// cuffFabric returns round r of the cuff over n stitches, from 1.
func (p *Plan) cuffFabric(r, n int) []stitch.Op {
	switch how := p.Make.Cuff.info(); {
	case p.Cuff.Flare != nil:
		return p.Cuff.Flare.fabric(r, n, &p.Make)
	case how.ribbed:
		return p.Stitch.ribbing(n, p.Cuff.Rib)
	case how.folded && r == p.hemTurn(), p.Make.Cuff == GarterCuff && p.purls(r) != p.Make.Flat:
		return times(nil, stitch.Purl, n)
	case how.folded && p.Cuff.Facing > 0 && r == 2*p.Cuff.Facing+1:
		return times(nil, stitch.JoinHem, n)
	}
	return allKnit(n)
}

// hemTurn returns the round that turns a hem, before or after which, as it is worked, lie
// those of its facing.
func (p *Plan) hemTurn() int {
	if p.Down() {
		return p.Make.pace().turned(p.Cuff.Rounds, p.Cuff.Rounds-p.Cuff.Facing)
	}
	return p.Cuff.Facing + 1
}

// purls reports whether round r of garter stitch is purled: every other one, the first
// from a cast-on and the second from the hand.
func (p *Plan) purls(r int) bool {
	if p.Down() {
		return (p.Cuff.Rounds-r)%2 == 1
	}
	return r%2 == 1
}

// cuffAbout says how the cuff's rounds lie on the wrist.
func (p *Plan) cuffAbout() stitch.About {
	how := p.Make.Cuff.info()
	if how.ribbed {
		return stitch.About{Ribbed: p.Cuff.Rounds, Rib: p.Cuff.Rib, Knits: p.Stitch.knits(p.Cuff.Rib)}
	}
	if f := p.Cuff.Flare; f != nil {
		about := stitch.About{Edge: f.Edge, Around: f.Girth}
		if f.Edge > 0 {
			about.PerMM = f.EdgePerMM
		}
		if len(f.Rounds) > 0 {
			about.Shaping = &stitch.Shaping{Rounds: f.Rounds, From: p.Cuff.CastOn.N, To: p.Cuff.Wrist.N, Step: -f.Step}
		}
		return about
	}
	return stitch.About{Folded: p.Cuff.Facing, PerMM: p.Cuff.PerMM, Rolls: p.Make.Cuff == RolledCuff}
}
