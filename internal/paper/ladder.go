package paper

import (
	"fmt"
	"slices"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// rung is a height of the mitt at which something happens.
type rung struct {
	above float64 // the cast-on, in mm
	says  []string
}

// stage is what is knitted between two rungs, or the thumb.
type stage struct {
	part   stitch.Part
	rounds int
	noun   string // what they are called
	fixed  bool   // their number is
	mm     float64
	notes  []string
	rows   bool // its rounds are rows
}

// title returns the part's name.
func (s stage) title() string {
	if s.rows {
		return stitch.InRows(s.part.Title())
	}
	return s.part.Title()
}

// unit names what is counted: "rounds", "rows", or "round (fixed)".
func (s stage) unit() string {
	unit := s.noun + "s"
	if s.rounds == 1 {
		unit = s.noun
	}
	if s.rows {
		unit = stitch.InRows(unit)
	}
	if s.fixed {
		unit += fixedMark
	}
	return unit
}

// fixedMark stands after a number that the person fixed.
const fixedMark = " (fixed)"

// ladder is every number of a plan by where it lies on the mitt: stage i stands between
// the rungs i and i+1. The thumb stands by itself; it has no rounds in a mitt without one.
// So do fingers, whose numbers have a table of their own, and a cap over them.
type ladder struct {
	rungs    []rung
	stages   []stage
	thumb    stage
	fingered []stage
}

// climb sets up the ladder of a plan.
type climb struct {
	*handout
	ladder
	ends   bool // it says where on the hand each part ends
	placed map[mitt.Number]bool
	joined bool // the change of the count towards the hand is said
}

// newLadder returns the ladder of the handout's plan. A number that has no place of its
// own in it stands at the end of its part. In large print the words alone say where on the
// hand a part ends, if they are printed.
func (h *handout) newLadder() ladder {
	c := &climb{handout: h, ends: !h.o.Large || !h.o.Has(Words), placed: map[mitt.Number]bool{}}
	at := 0.0
	for _, s := range h.Out.Mitt.Upward() {
		if s.Part.Over() == stitch.OverDigit {
			if s.OfFinger() {
				c.fingered = append(c.fingered, c.fingerStage(s))
			} else {
				c.thumb = c.thumbStage(s)
			}
			continue
		}
		if s.Part.Over() == stitch.OverCap { // it lies over the others
			c.fingered = append(c.fingered, c.stage(s, append(c.begin(s.Part), c.notes(s)...)))
			continue
		}
		says := c.begin(s.Part)
		if s.About.Share > 0 {
			says = []string{c.besideFinger(s)}
		}
		c.rungs = append(c.rungs, rung{at, says})
		c.stages = append(c.stages, c.stage(s, c.notes(s)))
		at += c.mm(s)
	}
	c.rungs = append(c.rungs, rung{at, c.end()})
	c.placeRest()
	if c.Out.Plan.Make.Flat {
		c.inRows()
	}
	return c.ladder
}

// inRows says the notes of a ladder as they are said of rows.
func (c *climb) inRows() {
	for i := range c.stages {
		c.stages[i].inRows()
	}
	c.thumb.inRows()
}

func (s *stage) inRows() {
	s.rows = true
	for i := range s.notes {
		s.notes[i] = stitch.InRows(s.notes[i])
	}
}

// mm returns how far a section reaches up.
func (c *climb) mm(s *stitch.Section) float64 { return s.Reach(c.Out.Plan.Gauge.Rounds) }

// say returns a text that gives a number, and remembers that it is placed.
func (c *climb) say(n mitt.Number, text string) string {
	c.placed[n] = true
	if c.Out.Plan.Pins.Fixed(n) {
		return text + fixedMark
	}
	return text
}

// counts names the number that counts the rounds of a part.
var counts = map[stitch.Part]mitt.Number{
	stitch.Cuff: mitt.CuffRounds, stitch.CuffPlain: mitt.CuffPlainRounds, stitch.BelowThumb: mitt.GussetRounds, stitch.Opening: mitt.GussetRounds, stitch.Gusset: mitt.GussetRounds,
	stitch.Hand: mitt.RoundsAboveGusset, stitch.UpperHand: mitt.LittleLowerRounds, stitch.Top: mitt.TopRounds, stitch.Thumb: mitt.ThumbRounds,
	stitch.Cap: mitt.CapRounds, stitch.CapTop: mitt.CapTopRounds,
}

// stage returns a section with notes on it. Its number of rounds is the plan's, if that is
// the same.
func (c *climb) stage(s *stitch.Section, notes []string) stage {
	st := stage{part: s.Part, rounds: len(s.Rounds), noun: s.Noun(), mm: c.mm(s), notes: notes}
	if n, found := counts[s.Part]; found && c.Out.Plan.Count(n) == st.rounds {
		c.placed[n], st.fixed = true, c.Out.Plan.Pins.Fixed(n)
	}
	return st
}

// begin says what happens where a part begins.
func (c *climb) begin(part stitch.Part) []string {
	p := c.Out.Plan
	begins, castOn := "begins", "cast on "
	if p.Down() {
		begins, castOn = "ends", c.Out.Terms.Say("bind off")+" "
	}
	if part.Marked() {
		return c.join([]string{c.say(mitt.GussetBase, "gusset "+begins+" on "+words.Plural(p.Gusset.Base, "stitch"))})
	}
	switch part.Over() {
	case stitch.OverWrist:
		return []string{c.say(mitt.CastOn, castOn+stitchesOn(p, p.Cuff.CastOn.N))}
	case stitch.OverHeel:
		return c.join(nil)
	case stitch.OverMound:
		return c.join([]string{"base of the thumb"})
	case stitch.OverCap:
		if first := c.Out.Mitt.Section(part).Rounds[0]; first.In() == 0 {
			return []string{fmt.Sprintf("pick up %d along the back, cast on %d", p.Fingers.Cap.Back, p.Fingers.Cap.Palm)}
		}
		return []string{"top begins on " + stitchesOn(p, p.Fingers.Cap.Top.Stitches)}
	case stitch.OverTips:
		return []string{"top " + begins + " on " + stitchesOn(p, p.Top.Stitches)}
	}
	if !p.Parted() {
		return c.join(nil)
	}
	return c.part()
}

// join puts the hand's count before a list, once.
func (c *climb) join(list []string) []string {
	if c.joined {
		return list
	}
	c.joined = true
	p := c.Out.Plan
	text := "the hand has " + stitchesOn(p, p.Body.Stitches.N)
	if p.Cuff.Change != 0 {
		text = onNeedles(p, p.Cuff.Wrist.N) + " → " + stitchesOn(p, p.Body.Stitches.N)
		if p.Down() {
			text = onNeedles(p, p.Body.Stitches.N) + " → " + stitchesOn(p, p.Cuff.Wrist.N)
		}
	}
	return append([]string{c.say(mitt.HandStitches, text)}, list...)
}

// part says what happens where the thumb parts from the hand.
func (c *climb) part() []string {
	p := c.Out.Plan
	if w := p.Thumb.OnWaste; w > 0 {
		return []string{c.say(mitt.Held, fmt.Sprintf("knit %d with waste yarn, then again", w))}
	}
	switch {
	case p.Thumbed():
	case c.Out.Mitt.SeamByThumb():
		return []string{"the opening ends"}
	default:
		return []string{"join in the round again"}
	}
	if p.Down() {
		return []string{
			c.say(mitt.Held, fmt.Sprintf("%d of the thumb come into the hand", p.Thumb.Held)),
			c.say(mitt.BridgeStitches, fmt.Sprintf("%d of each wait for the gap", p.Bridge.CastOn)),
		}
	}
	list := []string{c.say(mitt.Held, "hold "+words.Plural(p.Thumb.Held, "stitch"))}
	if p.Gusset.Kept > 0 || p.Pins.Fixed(mitt.KeptOnHand) {
		list = append(list, c.say(mitt.KeptOnHand, words.Plural(p.Gusset.Kept, "stitch")+" of the gusset left on the hand"))
	}
	over := fmt.Sprintf("cast on %d over the gap", p.Bridge.CastOn)
	if p.Bridge.CastOn == 0 {
		over = "nothing is cast on over the gap"
	}
	list = append(list, c.say(mitt.BridgeStitches, over))
	if p.Bridge.HandAfter != p.Body.Stitches.N {
		list = append(list, "then the hand has "+stitchesOn(p, p.Bridge.HandAfter))
	}
	return list
}

// end says what happens at the upper edge.
func (c *climb) end() []string {
	p := c.Out.Plan
	n := p.Body.Stitches.N
	edge := c.Out.Terms.Say("bind off ")
	if p.Down() {
		edge = "cast on "
	}
	switch {
	case p.Top != nil && p.Down() && p.SeamStitches() > 0:
		return []string{"cast on " + stitchesOn(p, p.Top.End)}
	case p.Top != nil && p.Down():
		return []string{"cast on " + words.Plural(p.Top.End, "stitch") + ", closed"}
	case p.Top != nil && grafted(c.Out.Mitt.Section(stitch.Top)):
		return []string{"graft the last " + stitchesOn(p, p.Top.End)}
	case p.Top != nil:
		return []string{"draw the yarn through " + stitchesOn(p, p.Top.End)}
	case c.Out.Mitt.Fingered():
		return []string{c.fingersPart()}
	case p.Body.EdgingRounds > 0:
		n = p.Body.EdgingStitches
	case p.Parted():
		n = p.Bridge.HandAfter
	}
	return []string{edge + stitchesOn(p, n)}
}

// grafted reports whether a section's last stitches are grafted.
func grafted(s *stitch.Section) bool {
	return s != nil && len(s.Finish.Ops) > 0 && s.Finish.Ops[0] == stitch.Graft
}

// notes returns what is to be known of a part: its ribbing or increases, and where on the
// hand it ends.
func (c *climb) notes(s *stitch.Section) []string {
	var list []string
	if to := c.to(s); to != "" && c.ends {
		list = append(list, to)
	}
	p := c.Out.Plan
	switch {
	case s.Part.Over() == stitch.OverWrist:
		list = append(list, edge(p, s))
	case s.Part.Marked():
		list = append(list, c.increases()...)
	case s.About.Ribbed > 0:
		list = append(list, lastRibbed(s))
	}
	return list
}

// increases says where the gusset grows.
func (c *climb) increases() []string {
	g := &c.Out.Plan.Gusset
	if c.Out.Plan.Down() {
		return c.decreases(g)
	}
	value := map[mitt.Number]string{}
	for _, r := range c.Out.Reasons {
		value[r.Of] = r.Value
	}
	return []string{
		c.say(mitt.Increases, words.Plural(g.Increases, "increase round")) + ", " + c.say(mitt.FirstIncrease, "the first in "+value[mitt.FirstIncrease]) +
			", " + c.say(mitt.Rhythm, value[mitt.Rhythm]) + ": " + c.say(mitt.IncreaseRounds, value[mitt.IncreaseRounds]),
		"to " + words.Plural(g.Stitches, "stitch"),
	}
}

// edge says how the cuff's own rounds are worked, and how many of a hem lie inside.
func edge(p *mitt.Plan, s *stitch.Section) string {
	switch {
	case p.Ribbed():
		return ribbing(&s.About)
	case s.About.Folded > 0:
		return fmt.Sprintf("a hem, %d folded inside", s.About.Folded)
	}
	if by := s.About.Shaping; by != nil {
		return fmt.Sprintf("gauntlet, %s → %s", onNeedles(p, s.Around(by.From)), stitchesOn(p, s.Around(by.To)))
	}
	return p.Make.Cuff.Words()
}

// ribbing names the ribbing of a part: "k1, p1 ribbing".
func ribbing(of *stitch.About) string {
	if of.Knits >= of.Rib {
		return "knit, without a rib"
	}
	return fmt.Sprintf("k%d, p%d ribbing", of.Knits, of.Rib-of.Knits)
}

// to says where on the hand a section ends.
func (c *climb) to(s *stitch.Section) string {
	switch about := &s.About; {
	case about.Until == "":
		return ""
	case about.Short > 0:
		return fmt.Sprintf("to %s below %s", words.Both(about.Short, c.Out.Unit), about.Until)
	case s.Closed():
		return "to cover " + about.Until
	default:
		return "to " + about.Until
	}
}

// thumbStage returns the thumb: what is held, picked up and decreased, and how it ends.
func (c *climb) thumbStage(s *stitch.Section) stage {
	t := &c.Out.Plan.Thumb
	if s.Down {
		return c.thumbFirst(s)
	}
	count := fmt.Sprintf("%d held, ", t.Held) + c.say(mitt.PickedUp, onNeedles(c.Out.Plan, t.PickedUp)+" picked up")
	if t.OnWaste > 0 {
		count = fmt.Sprintf("%d below the waste yarn, %d above, 1 at each corner", t.OnWaste, t.OnWaste-1)
	}
	if t.Decreased > 0 || c.Out.Plan.Pins.Fixed(mitt.ThumbDecreases) {
		count += ", " + c.say(mitt.ThumbDecreases, fmt.Sprintf("%d decreased at the corners", t.Decreased))
	}
	count += ": " + c.say(mitt.ThumbStitches, stitchesOn(c.Out.Plan, t.Stitches.N))
	if t.EdgingRounds > 0 && t.EdgingStitches != t.Stitches.N {
		count += fmt.Sprintf(", then %s for the ribbing", onNeedles(c.Out.Plan, t.EdgingStitches))
	}
	list := []string{count}
	if to := c.to(s); to != "" && c.ends {
		list = []string{to, count}
	}
	switch {
	case s.About.Ribbed > 0:
		list = append(list, lastRibbed(s))
	case s.Closed():
		list = append(list, "draw the yarn through "+stitchesOn(c.Out.Plan, s.Above(len(s.Rounds))))
	}
	return c.stage(s, list)
}

// placeRest puts the numbers that are printed and have no place yet at the end of their
// part, or of the first.
func (c *climb) placeRest() {
	for _, r := range c.reasons() {
		if _, finger := mitt.FingerOf(r.Part); c.placed[r.Of] || finger {
			continue
		}
		text := r.Name + ": " + valueText(r)
		if of := slices.IndexFunc(c.fingered, func(st stage) bool { return st.part == r.Part }); of >= 0 {
			c.fingered[of].notes = append(c.fingered[of].notes, text)
			continue
		}
		at := 0
		for i := range c.stages {
			if c.stages[i].part == r.Part {
				at = i
			}
		}
		if r.Part == c.thumb.part && c.thumb.rounds > 0 {
			c.thumb.notes = append(c.thumb.notes, text)
			continue
		}
		c.stages[at].notes = append(c.stages[at].notes, text)
	}
}
