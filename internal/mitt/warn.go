package mitt

import (
	"fmt"
	"math"
	"strings"

	"thenar/internal/hand"
)

// residuals works out how far the fabric is off the wish at the places that
// matter most.
func (d *draft) residuals() {
	p := &d.plan
	p.Residual = Residuals{
		Hand: float64(p.Bridge.HandAfter)/d.g - p.Hand.Circumference.MM()*(1+p.Ease.Hand),
	}
	if !p.Parted() {
		return
	}
	p.Residual = Residuals{
		Hand:         p.Residual.Hand,
		GussetLength: float64(p.Gusset.Rounds.N)/d.q - d.moundLength(),
		Crotch:       float64(p.Body.Stitches.N+p.Gusset.Step*p.Gusset.Increases)/d.g - p.palmTarget(),
	}
	if p.Thumbed() {
		p.Residual.Thumb = float64(p.Thumb.Stitches.N)/d.g - p.Hand.Thumb.MM() - p.Ease.ThumbAdded
	}
	if p.Fingered() {
		for i := range p.Fingers.Each {
			p.Residual.Fingers[i] = float64(p.Fingers.Each[i].Stitches.N)/d.g - p.Hand.Fingers.Girth[i].MM() - p.fingerAdded(i)
		}
	}
}

// warn lists what the person should look at.
func (d *draft) warn() {
	p := &d.plan
	d.warnTips()
	if p.Fingered() {
		d.warnTightFingers()
	}
	for _, q := range d.req.Gauge.Queries {
		p.say("swatch_contradicts", "gauge.swatches[%d]: %s", q.Swatch, q.Message)
	}
	for _, q := range d.req.Hand.Queries() {
		p.say("measure_again", "%s: %s", q.Field, q.Message)
	}
	d.warnSwatch()
	d.warnBounds()
	if p.Fingered() {
		d.warnFingers()
		d.warnLongFingers()
	}
	d.warnMultiples()
	d.warnUnused()
	d.warnKnitted()
	if p.Gusseted() {
		d.warnShare()
		d.warnIncreases()
	}
	d.warnWithoutEffect()
	if !p.Gusseted() || p.Down() {
		d.warnMound()
	}
	d.warnEdgings()
	d.warnCuff()
	d.warnTight()
	d.warnSmall()
	for i := range p.Warnings {
		p.Warnings[i].Message = p.Make.InRows(p.Warnings[i].Message)
	}
}

// The codes of the warnings that name fixed numbers and choices that have no use.
const (
	PinsWithoutEffect = "pins_without_effect"
	MakeWithoutEffect = "make_without_effect"
)

func (p *Plan) say(code, format string, args ...any) {
	p.Warnings = append(p.Warnings, Warning{code, fmt.Sprintf(format, args...)})
}

func (d *draft) warnSwatch() {
	if !d.req.Gauge.Treated {
		how := "in the round"
		if d.req.Make.Flat {
			how = "flat"
		}
		d.plan.say("swatch", "The girths may be some 3\u00a0%% off: the swatch was not both worked %s and washed.", how)
	}
}

// warnBounds names what keeps a count further from the wanted one than half the
// distance between two allowed counts.
func (d *draft) warnBounds() {
	p := &d.plan
	n := p.Body.Stitches
	if math.Abs(float64(n.N)-n.Exact) > float64(p.Stitch.Repeat)/2+1e-9 && !n.Pinned {
		p.say("hand_count", "The hand gets %d stitches, not %.1f: with a repeat of %d a mitt has no fewer.",
			n.N, n.Exact, p.Stitch.Repeat)
	}
	if !p.Thumbed() {
		d.warnOpening()
		return
	}
	t := p.Thumb.Stitches
	if free := !d.pins.boundsThumb(); float64(t.N) < t.Exact-1-1e-9 && !t.Pinned && free && p.Gusseted() {
		p.say("thumb_count", "The thumb gets %d stitches, not %.1f: %d gusset rounds hold no more increases. A longer gusset would help.",
			t.N, t.Exact, p.Gusset.Rounds.N)
	} else if math.Abs(float64(t.N)-t.Exact) > 1+1e-9 && !t.Pinned {
		p.say("thumb_count", "The thumb gets %d stitches, not %.1f: the fixed numbers are in the way.", t.N, t.Exact)
	}
	r, begun := p.Gusset.Rounds, d.progress.begun(p.Mound())
	switch off := math.Abs(float64(r.N)-r.Exact) > float64(p.Make.pace())/2+1e-9; {
	case off && begun && d.req.Pins.Fixed(GussetRounds):
		p.say(GussetRounds.Key(), "The %s gets the fixed %d rounds, not %.1f. Let go of them to come nearer.", p.Mound().Words(), r.N, r.Exact)
	case off && begun:
		bound := "fewer"
		if float64(r.N) < r.Exact {
			bound = "more"
		}
		p.say(GussetRounds.Key(), "The %s gets %d rounds, not %.1f: with what is knitted there can be no %s.", p.Mound().Words(), r.N, r.Exact, bound)
	case off && !r.Pinned && p.Gusseted():
		p.say(GussetRounds.Key(), "The gusset gets %d rounds, not %.1f: an increase round and a plain one are the least.", r.N, r.Exact)
	}
}

// warnMultiples says where a count is not a multiple of its repeat or rib, and
// where fixed rounds of a top are not used.
func (d *draft) warnMultiples() {
	p := &d.plan
	if n := p.Body.Stitches; n.Pinned && !p.Stitch.allows(n.N) {
		p.say("repeat", "The fixed %d stitches of the hand don't fit the repeat of %d.", n.N, p.Stitch.Repeat)
	} else if !p.Stitch.allows(p.Bridge.HandAfter) {
		p.say("repeat", "After the bridge the hand's %d stitches don't fit the repeat of %d; a fixed number asks for it.", p.Bridge.HandAfter, p.Stitch.Repeat)
	} else if p.Bridge.HandAfter != p.Body.Stitches.N {
		p.say("hand_after", "After the bridge the hand has %d stitches, %d before the gusset.", p.Bridge.HandAfter, p.Body.Stitches.N)
	}
	if n := p.Cuff.Wrist; n.N%p.Cuff.Rib != 0 {
		p.say("rib", "The cast-on of %d stitches is no multiple of the rib (%d).", n.N, p.Cuff.Rib)
	}
	d.warnRibs()
	if !p.Kind.info().topped && d.pins.TopRounds.On {
		unused := fmt.Sprintf("A %s has no top; its fixed rounds are not used.", p.Kind.Words())
		if p.Fingered() && p.Fingers.Cap != nil {
			unused += fmt.Sprintf(" The cap’s top is fixed with %s.", CapTopRounds.Path())
		}
		p.say(TopRounds.Key(), "%s", unused)
	}
}

// warnRibs says where a rib other than the sheet's is worked.
func (d *draft) warnRibs() {
	p := &d.plan
	if p.Make.Cuff.info().ribbed && p.Cuff.Rib != p.Stitch.Rib && p.Cuff.Rounds > 0 {
		p.say("cuff_rib", "The cuff is in 1 × 1 rib: no multiple of %d fits between wrist and hand (%d stitches).", p.Stitch.Rib, p.Body.Stitches.N)
	}
	edging := func(name string, rib, n int) {
		if rib != p.Stitch.Rib {
			p.say("edging_rib", "The %s's edging is in 1 × 1 rib: a multiple of %d would narrow its %d stitches too much.", name, p.Stitch.Rib, n)
		}
	}
	edging("hand", p.Body.EdgingRib, p.Bridge.HandAfter)
	if p.Thumbed() {
		edging("thumb", p.Thumb.EdgingRib, p.Thumb.Stitches.N)
	}
	if p.Fingered() {
		for i := range p.Fingers.Each {
			f := &p.Fingers.Each[i]
			edging(fingerParts[i].Words(), f.EdgingRib, f.Stitches.N)
		}
	}
}

// warnKnitted names the fixed numbers that gave way to what is knitted.
func (d *draft) warnKnitted() {
	if d.progress == nil {
		return
	}
	for _, n := range d.req.Pins.fixed() {
		if n.List() || n == FirstIncrease {
			continue // warnIncreases says so of these
		}
		if fixed, now := d.req.Pins.Pin(n).N, d.pins.Pin(n).N; fixed != now {
			d.plan.say("knitted", "%s: %d is fixed, but what is on the needles makes it %d; that stays.", n.Path(), fixed, now)
		}
	}
}

func (d *draft) warnShare() {
	p := &d.plan
	share := float64(p.Thumb.Held) / float64(p.Body.Stitches.N)
	switch {
	case share > largestShare:
		p.say("gusset_share", "The thumb takes %d of %d stitches, %.0f\u00a0%%. Over 45\u00a0%% the palm gets narrow: measure the thumb again.",
			p.Thumb.Held, p.Body.Stitches.N, share*100)
	case share < smallestShare:
		p.say("gusset_share", "The thumb takes %d of %d stitches, %.0f\u00a0%%. Under 25\u00a0%% it may pull: measure thumb and gusset again.",
			p.Thumb.Held, p.Body.Stitches.N, share*100)
	}
}

// How far a cuff stretches, stretched girth over its own, by kind of rib (common
// practice, no source). A cuff that has to stretch further may not pass the hand.
const (
	passageStockinette = 1.25
	passageRib2x2      = 1.35
	passageRib1x1      = 1.45
)

// cuffPassage is the code of the warning that the hand may not pass through the cuff.
const cuffPassage = "cuff_passage"

// Passes says which count would let the hand pass through a cuff that doesn't stretch as a
// rib does; empty if it passes, or if the cuff is ribbed.
func (p *Plan) Passes() string {
	if p.Ribbed() {
		return ""
	}
	for _, w := range p.Warnings {
		if w.Code == cuffPassage {
			return w.Message
		}
	}
	return ""
}

func (d *draft) warnCuff() {
	p := &d.plan
	stretch, what := p.cuffGives()
	if p.Cuff.Passage > stretch {
		now, where := min(p.Cuff.CastOn.N, p.Cuff.Wrist.N), ""
		needs := ceilTo(int(math.Ceil(p.Cuff.Passage*float64(now)/stretch)), p.Cuff.Rib)
		if p.Cuff.Flare != nil {
			where = " at the wrist"
		}
		p.say(cuffPassage, "%d stitches%s would pass the hand, not %d: the cuff must stretch by %.0f\u00a0%%, and %s gives about %.0f\u00a0%%.",
			needs, where, now, math.Ceil((p.Cuff.Passage-1)*100-tie), what, (stretch-1)*100)
	}
	d.warnFlare()
	if c := p.Cuff.Wrist; !c.Pinned && float64(c.N) < c.Exact-float64(p.Cuff.Rib) {
		p.say("cuff_tight", "The cuff will be tight: %d stitches, not %.1f, for it is never wider than the hand (%d). Measure wrist and hand again, or fix the cast-on. Tingling, cold or pale fingers mean take it off. This is general caution, not medical advice.",
			c.N, c.Exact, p.Body.Stitches.N)
	}
}

// grips is the ease at the wrist above which stockinette, which doesn't draw in, hangs
// loose (common practice, no source).
const grips = 0.05

// warnFlare says where a gauntlet doesn't widen as was asked, and where it doesn't grip.
func (d *draft) warnFlare() {
	c := &d.plan.Cuff
	if c.Flare == nil {
		return
	}
	wide, wrist := float64(c.CastOn.N)/d.g, float64(c.Wrist.N)/d.g
	more, changes := "Cast on more stitches", "decreases"
	if d.plan.Down() {
		more, changes = "Make more stitches", "increases"
	}
	if c.CastOn.N <= c.Wrist.N {
		d.plan.say("gauntlet_girth", "The gauntlet is %.0f mm wide all the way. %s to widen its edge.", wide, more)
	} else if !c.CastOn.Pinned && math.Abs(float64(c.CastOn.N)-c.CastOn.Exact) > float64(max(c.Flare.Step, 2))/2+1e-9 {
		d.plan.say("gauntlet_girth", "The gauntlet’s edge gets %d stitches, not %.1f: %d rounds hold no more %s. A deeper one would help.",
			c.CastOn.N, c.CastOn.Exact, c.Rounds, changes)
	}
	if ease := wrist/d.plan.Hand.Wrist.MM() - 1; ease > grips {
		d.plan.say("cuff_grip", "The gauntlet is %.0f mm wider than the wrist, and stockinette doesn’t draw in. A ribbed cuff grips better.",
			wrist-d.plan.Hand.Wrist.MM())
	}
}

// muchSmaller is the ease, fabric over body minus one, below which the fabric is
// so much smaller than the hand that a caution is due (common practice, no
// source).
const muchSmaller = -0.10

// warnTight gives the usual caution where the fabric is much smaller than the
// hand, because of the ease asked for or because a fixed number or a multiple
// leaves so few stitches. A cuff is ribbed and stretches, so it is looked at only
// if its ease or its cast-on was asked for.
func (d *draft) warnTight() {
	p := &d.plan
	var where []string
	at := func(name string, n int, girth float64, asked bool) {
		if ease := float64(n)/d.g/girth - 1; ease < muchSmaller-1e-9 || asked {
			where = append(where, fmt.Sprintf("%s %.0f\u00a0%%", name, -100*ease))
		}
	}
	at("hand", min(p.Body.Stitches.N, p.Bridge.HandAfter), p.Hand.Circumference.MM(), p.Ease.Hand < muchSmaller)
	if p.Thumbed() {
		at("thumb", p.Thumb.Stitches.N, p.Hand.Thumb.MM(), false)
	}
	if c := p.Cuff.Wrist; c.Pinned || p.Ease.Cuff < muchSmaller {
		at("cuff", c.N, p.Hand.Wrist.MM(), p.Ease.Cuff < muchSmaller)
	}
	if len(where) > 0 {
		p.say("tight", "Much smaller than what was measured: %s. Tingling, cold or pale fingers mean that it is too tight: take it off. This is general caution, not medical advice.",
			strings.Join(where, ", "))
	}
}

// warnEdgings says where an edging has fewer rounds than it should, because the
// rounds below it leave too little room.
func (d *draft) warnEdgings() {
	p := &d.plan
	if p.Kind.info().topped || d.progress != nil {
		return
	}
	edging := func(name string, has, wanted int) {
		if wanted = max(1, wanted); has < wanted {
			p.say("edging_rounds", "The %s has room for %d of its edging's %d rounds; a few more rounds would help.", name, has, wanted)
		}
	}
	if p.Fingered() {
		d.fingerEdgings(edging)
		return
	}
	edging("hand", p.Body.EdgingRounds, nearest(d.q*d.len.edging))
	if p.Thumbed() {
		edging("thumb", p.Thumb.EdgingRounds, nearest(d.q*d.len.thumbEdging))
	}
}

// infant is the mean hand length at 2 to 3½ years (105.5 mm, Snyder et al.
// 1977); below it the cautions for babies are shown.
const infant = 105.5

func (d *draft) warnSmall() {
	p := &d.plan
	if p.Hand.Length < hand.BabyBelow && p.Parted() {
		p.say("thumbless", "Under 95 mm a mitten without a thumb is usual. Under 2 years the filled measurements have no source.")
	}
	if p.Hand.Length.MM() < infant {
		p.say("baby", "For a baby or small child: no loose ends or long strands inside, no tight elastic, no neck cord. Look at the hands often. This is general caution, not medical advice.")
	}
}

// sizeMessage says why a hand can't be knitted at a gauge.
func sizeMessage(h hand.Hand, g, q, exact float64) string {
	switch {
	case exact < fewestStitches:
		return fmt.Sprintf("of %s makes %.1f stitches; a mitt needs 8: use a finer yarn, or check swatch and tape", h.Circumference, exact)
	case exact > maxStitches:
		return fmt.Sprintf("of %s makes %.0f stitches; 1000 are the most: check swatch and tape", h.Circumference, exact)
	}
	return fmt.Sprintf("with a hand %s long makes %.0f rounds; 1500 are the most: check swatch and tape", h.Length, q*h.Length.MM())
}
