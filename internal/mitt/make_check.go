package mitt

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/stitch"
)

// works appends a fault with the nearest choice that works.
func works(faults *fault.Fields, path, nearest, format string, args ...any) {
	*faults = append(*faults, fault.Field{Path: path, Message: fmt.Sprintf(format, args...), Works: nearest})
}

// checkMake refuses ways of making that don't go together, each at its field and
// with the nearest that does.
func (r *Request) checkMake(faults *fault.Fields) {
	r.checkThumbMake(faults)
	r.checkPieceMake(faults)
}

func (r *Request) checkThumbMake(faults *fault.Fields) {
	m := &r.Make
	how := or(m.Construction, ByGusset)
	switch closed := r.Kind.info().topped; {
	case !r.Kind.info().parts && m.Construction != "" && how != NoThumb:
		works(faults, PathConstruction, string(NoThumb), "is %s, but the mitten is without a thumb; write none, or choose a mitten", how)
	case how == Slit && r.Kind.Fingered():
		works(faults, PathConstruction, string(Straight), "is slit, but a glove covers the thumb; write straight")
	case how == NoThumb && r.Kind.Fingered():
		works(faults, PathConstruction, string(ByGusset), "is none, but a glove has a thumb; write gusset or straight")
	case how == Slit && closed:
		works(faults, PathConstruction, string(Straight), "is slit, but a mitten covers the thumb; write straight")
	}
	if n := r.Pins.GussetRounds; r.Construction() == Slit && n.On && n.N%2 == 1 {
		works(faults, GussetRounds.Path(), Fix(n.N+1).text(), "is %d, but an opening has an even number of rows; write %d", n.N, n.N+1)
	}
	if m.Inset.On && how != Straight && m.Place != InPalm {
		works(faults, PathInset, "", "has no use at the side; leave it out, or write palm for the place")
	}
	r.checkIncreaseMake(faults)
}

// checkIncreaseMake refuses an increase that a gusset at one edge, or with the
// fixed base, can't have.
func (r *Request) checkIncreaseMake(faults *fault.Fields) {
	m, pins := &r.Make, &r.Pins
	if m.Increase == InCentre && r.Stitch.OneSided {
		works(faults, PathIncrease, string(MakeOne), "is centre, which grows to both sides; write m1 for increases at one edge")
	}
	if r.Progress.begun(stitch.Gusset) || or(m.Construction, ByGusset) != ByGusset {
		return
	}
	switch base := pins.GussetBase; {
	case m.Increase == FrontAnd && base.On && base.N < leastFrontAnd:
		works(faults, GussetBase.Path(), "3", "is %d; knit front and back needs a base of 3 or more", base.N)
	case m.Increase == InCentre && base.On && base.N%2 == 0:
		works(faults, GussetBase.Path(), fmt.Sprint(base.N-1), "is %d, which has no middle stitch to grow from; write %d", base.N, base.N-1)
	}
	if kept := pins.KeptOnHand; m.Increase == InCentre && kept.On && kept.N > 0 {
		works(faults, KeptOnHand.Path(), "0", "is %d, but the stitches made in the centre all belong to the thumb; write 0", kept.N)
	}
}

func (r *Request) checkPieceMake(faults *fault.Fields) {
	m := &r.Make
	if r.Kind.Fingered() {
		r.checkGloveMake(faults)
		return
	}
	if m.Direction != Down {
		return
	}
	switch how := or(m.Construction, ByGusset); {
	case how == Slit || how == Straight:
		works(faults, PathDirection, string(Up), "is down, which a %s thumb can't be; write up", how)
	case how == ByGusset && or(m.Increase, MakeOne) != MakeOne:
		works(faults, PathIncrease, string(MakeOne), "is %s, but from the fingertips down the gusset is decreased; write m1", m.Increase)
	}
}

// checkGloveMake refuses what a glove can't be made with.
func (r *Request) checkGloveMake(faults *fault.Fields) {
	m := &r.Make
	if m.Direction == Down {
		works(faults, PathDirection, string(Up), "is down, but a glove is worked from the cuff to its fingers; write up")
	}
	if m.Flat {
		works(faults, PathFlat, "false", "is true, but the fingers of a glove are worked in the round; write false")
	}
	r.checkCap(faults)
	ends := [...]struct {
		path string
		end  FingerEnd
	}{
		{PathFinger(hand.Index), m.Fingers[0]},
		{PathFinger(hand.Middle), m.Fingers[1]},
		{PathFinger(hand.Ring), m.Fingers[2]},
		{PathFinger(hand.Little), m.Fingers[3]},
		{PathThumbEnd, m.ThumbEnd},
	}
	for _, one := range ends {
		switch or(one.end, FullFinger) {
		case FullFinger, HalfFinger, OpenFinger:
		default:
			works(faults, one.path, string(FullFinger), "is %q; write full, half or open", one.end)
		}
	}
}

// unused lists, by what they are called, the choices that have no use beside the others.
func (r *Request) unused() []string {
	m, topped := &r.Make, r.Kind.info().topped || r.Kind.Fingered() && r.Make.Cap
	cuff, top := or(m.Cuff, RibCuff), or(m.Top, RoundedTop)
	how := or(m.Construction, ByGusset)
	parts, grows := r.Kind.info().parts, r.Gusseted()
	var list []string
	for _, one := range []struct {
		said  string
		given bool
		use   bool
	}{
		{"the thumb’s place", m.Place == InPalm, parts && how != Slit},
		{"how the gusset grows", m.Increase != "", grows},
		{"the cuff’s upper girth", m.UpperGirth != 0, cuff == Gauntlet},
		{"the cuff’s depth", m.CuffDepth != 0, cuff == Gauntlet || cuff == HemCuff},
		{"how the top is closed", m.Top != "", topped},
		{"the stitches of a band", m.Band.On, topped && top == BandedTop},
		{"the wedges of the top", m.Wedges.On, topped && top == WedgesTop},
		{"how far the fingers are covered", m.Fingers != [4]FingerEnd{} || m.ThumbEnd != "", r.Kind.Fingered()},
		{"that the fingers part at one height", m.Level, r.Kind.Fingered()},
		{"a cap over the fingers", m.Cap, r.Kind.Fingered()},
		{"the fingers’ edging", r.Lengths.Edging != 0, !r.Kind.Fingered() || slices.Contains(m.Fingers[:], HalfFinger)},
		{"the thumb’s edging", r.Lengths.ThumbEdging != 0, !r.Kind.Fingered() || !m.ThumbEnd.closed()},
		{"increases at one edge", r.Stitch.OneSided, !r.Kind.Fingered() || grows},
	} {
		if one.given && !one.use {
			list = append(list, one.said)
		}
	}
	return list
}

// warnUnused names the choices that have no use beside the others.
func (d *draft) warnUnused() {
	d.plan.Unused = d.asked.unused()
	if list := d.plan.Unused; len(list) > 0 {
		d.plan.say(MakeWithoutEffect, "These have no use here; they are kept: %s.", strings.Join(list, ", "))
	}
}
