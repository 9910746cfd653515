package tryon

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/units"
	"thenar/internal/words"
)

// easeStep is the change of a zone's ease for one step of the scale, as a share
// of the girth (common practice, no source): a girth that is a little tight
// becomes 2.5 % wider, one that is much too tight 5 %.
const easeStep = 0.025

// FeelWords returns the words for a step from −2 to 2.
func FeelWords(step int) string {
	return [...]string{"much too loose", "a little loose", "right", "a little tight", "much too tight"}[step+2]
}

// felt corrects the ease of a zone by what was felt, less what the measured
// gauge corrects already: with s the step and n the share by which the fabric
// came out narrower than planned (negative: wider),
//
//	change = max(easeStep·s − n, 0) for s > 0, min(easeStep·s − n, 0) for s < 0
//
// So a narrow fabric that felt tight is not corrected twice, and a wide one
// that felt tight all the same becomes wider still.
func (c *corrector) felt(zone Zone) {
	switch {
	case zone.finger():
		c.feltFinger(zone)
	case zone == UpperHand:
		c.feltUpperHand()
	case zone == Cap:
		c.feltCap()
	case c.oneCount() && zone == Hand:
		c.feltInAll()
	case c.hasZone(zone):
		c.eased(zone, c.try.Steps[zone], "")
	}
}

// eased corrects the ease of a zone by a step, and says why, with what else it means.
func (c *corrector) eased(zone Zone, step int, means string) {
	if step == 0 {
		return
	}
	change := easeStep * float64(step)
	because := fmt.Sprintf("it is planned %s and felt %s: %s for each step of the scale", c.againstHand(zone), FeelWords(step), percent(easeStep))
	if change > 0 {
		change = max(change-c.narrower, 0)
	} else {
		change = min(change-c.narrower, 0)
	}
	because += c.gaugeToo(easeStep * float64(step))
	if math.Abs(change) < 0.0005 {
		c.explained(zone, because)
		return
	}
	because += means
	zone = c.settles(zone)
	if fixed := Pinned(c.sheet, zone); len(fixed) > 0 {
		names := make([]string, len(fixed))
		for i, n := range fixed {
			names[i] = "“" + c.plan.Names().Words(n) + "”"
		}
		because += fmt.Sprintf("; you fixed %s", strings.Join(names, ", "))
	}
	if zone == Thumb {
		c.thumb(change, because)
		return
	}
	path, was, later := c.easeOf(zone)
	edits := []Edit{{path, typedEase(was + change)}}
	more, why := c.companions(zone, step, change)
	edits, because = append(edits, more...), because+why
	c.add(Correction{
		Key: string(zone), Name: "room for the hand (ease), " + zone.Words(), Was: signedPercent(was), Is: signedPercent(was + change),
		Because: because, Edits: edits, Later: later,
	})
}

// gaugeToo says how the measured gauge bears on a felt change.
func (c *corrector) gaugeToo(change float64) string {
	switch {
	case math.Abs(c.narrower) < 0.0005:
		return ""
	case c.narrower*change > 0:
		return fmt.Sprintf("; the measured gauge explains %s of it", percent(min(math.Abs(c.narrower), math.Abs(change))))
	case change > 0:
		return fmt.Sprintf("; and the fabric is %s wider than planned as it is", percent(-c.narrower))
	}
	return fmt.Sprintf("; and the fabric is %s narrower than planned as it is", percent(c.narrower))
}

// againstHand says how the planned fabric of a zone compares with the body.
func (c *corrector) againstHand(zone Zone) string {
	if zone == Thumb {
		return "for the room below"
	}
	_, ease, _ := c.easeOf(zone)
	switch {
	case ease > 0.0005:
		return percent(ease) + " larger than the hand there"
	case ease < -0.0005:
		return percent(-ease) + " smaller than the hand there"
	}
	return "as large as the hand there"
}

// companions returns further edits, which keep the zones beside a changed zone
// as they are or make them follow it, and says why.
func (c *corrector) companions(zone Zone, step int, change float64) (edits []Edit, why string) {
	if !c.plan.Gusseted() {
		return nil, ""
	}
	path, palm, knitted := c.easeOf(Parting)
	switch {
	case zone == Gusset:
		edits, why = c.followHand(change), "; the increases follow the hand from here, up to where the thumb parts"
		if step == 2 || step == -2 {
			edits = append(edits, Edit{"schedule.lambda", "2"})
			why += ", closely"
		}
	case zone == Hand && !knitted && c.try.Steps[Gusset] == 0 && c.try.Steps[Parting] == 0:
		edits, why = []Edit{{path, typedEase(palm)}}, "; where the thumb parts it stays as wide as it is planned"
	case zone == Parting:
		why = "; the thumb’s own stitches come first, and may keep the gusset as it is"
	}
	return edits, why
}

// followHand makes the increases follow the hand from half-way up the gusset to
// the parting, with the same change there. Otherwise the increases above would
// take back what was changed below.
func (c *corrector) followHand(change float64) []Edit {
	path, palm, _ := c.easeOf(Parting)
	return []Edit{{path, typedEase(palm + change)}, {"schedule.follows", string(mitt.FollowProfile)}}
}

// typedEase writes an ease as a person would type it.
func typedEase(e float64) string { return strconv.FormatFloat(100*e, 'f', 1, 64) + " %" }

// explained adds a correction without edits: the measured gauge accounts for all
// that was felt.
func (c *corrector) explained(zone Zone, because string) {
	ease := c.plan.Ease.ThumbAdded / max(c.plan.Hand.Thumb.MM(), 1)
	if zone != Thumb {
		_, ease, _ = c.easeOf(zone)
	}
	c.add(Correction{
		Key: string(zone), Name: "room for the hand (ease), " + zone.Words(), Was: signedPercent(ease), Is: signedPercent(ease),
		Because: because + ": nothing more is changed",
	})
}

// easeOf returns the sheet's path for the ease of a zone, the ease that the
// planned counts come to, and whether the zone is knitted already. The ease is
// that of the planned fabric, since this is what was felt, not the ease that was
// asked for.
func (c *corrector) easeOf(zone Zone) (path string, was float64, knitted bool) {
	p, at := c.plan, c.try.Place
	ease := func(stitches int, body units.Length) float64 {
		return float64(stitches)/p.Gauge.Stitches/body.MM() - 1
	}
	switch zone {
	case Cuff:
		return "ease.cuff", ease(p.Cuff.CastOn.N, p.Hand.Wrist), at.past(stitch.Cuff)
	case Gusset:
		return "ease.gusset", c.halfwayEase(), at.past(stitch.Gusset)
	case Parting:
		return "ease.palm", ease(p.Body.Stitches.N+p.Gusset.Stitches-p.Gusset.Base, p.Hand.Palm), at.counted(stitch.Gusset)
	}
	settled := stitch.Hand
	if c.oneCount() {
		settled = stitch.CuffPlain // what follows has the hand's count
	}
	return "ease.hand", ease(p.Bridge.HandAfter, p.Hand.Circumference), at.counted(settled)
}

// halfwayEase returns the ease of the planned fabric half-way up the gusset.
func (c *corrector) halfwayEase() float64 {
	p := c.plan
	girths, err := p.Hand.Girths()
	if err != nil {
		return p.Ease.Gusset // a hand with a plan has girths
	}
	height := p.Hand.GussetLength.MM() / 2
	round := int((height - p.BaseAbove.MM()) * p.Gauge.Rounds)
	n := p.Body.Stitches.N - p.Gusset.Base + p.Gusset.Count(round)
	return float64(n)/p.Gauge.Stitches/girths.At(height) - 1
}

// hasZone reports whether the mitt has a zone.
func (c *corrector) hasZone(zone Zone) bool {
	switch zone {
	case Cuff, Hand:
		return true
	case Thumb:
		return c.plan.Thumbed()
	case UpperHand:
		return c.plan.Fingered() && c.plan.Fingers.Lower > 0
	case Cap:
		return c.plan.Fingered() && c.plan.Fingers.Cap != nil
	}
	if zone.finger() {
		return c.plan.Fingered()
	}
	return c.plan.Gusseted()
}

// thumb corrects the ease of the thumb, a length that is added to its girth.
func (c *corrector) thumb(change float64, because string) {
	u := c.sheet.Unit()
	was := units.FromMM(float64(c.plan.Thumb.Stitches.N)/c.plan.Gauge.Stitches - c.plan.Hand.Thumb.MM())
	is := max(was+units.FromMM(change*c.plan.Hand.Thumb.MM()), units.Millimetre/10)
	c.add(Correction{
		Key: string(Thumb), Name: "room in the thumb", Was: words.Size(was.MM(), u), Is: words.Size(is.MM(), u),
		Because: because, Edits: []Edit{{"ease.thumb_girth_added", typedLength(is, u)}},
	})
}

func percent(e float64) string {
	return strings.TrimSuffix(strconv.FormatFloat(100*e, 'f', 1, 64), ".0") + "\u00a0%"
}

func signedPercent(e float64) string {
	if e < -0.0005 {
		return "−" + percent(-e)
	}
	if e < 0.0005 {
		return "0\u00a0%"
	}
	return "+" + percent(e)
}

// Pinned returns the fixed numbers that keep a correction of the zone from
// having any effect: a fixed number wins over the ease.
func Pinned(s sheet.Sheet, zone Zone) []mitt.Number {
	var fixed []mitt.Number
	if f, ok := mitt.FingerOf(stitch.Part(zone)); ok {
		return fixedOfFinger(s, f)
	}
	for _, n := range map[Zone][]mitt.Number{
		Cuff: {mitt.CastOn}, Gusset: {mitt.Rhythm, mitt.IncreaseRounds}, Parting: {mitt.Increases, mitt.IncreaseRounds},
		Hand: {mitt.HandStitches, mitt.BridgeStitches}, Thumb: {mitt.ThumbStitches, mitt.ThumbDecreases},
	}[zone] {
		if s.Given(n.Path()) != "" {
			fixed = append(fixed, n)
		}
	}
	return fixed
}
