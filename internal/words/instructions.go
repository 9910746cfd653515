package words

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Step is one line of the instructions, for rounds From to To of its section
// (0: for none).
type Step struct {
	From, To int
	Text     string
	Rows     bool        // they are rows
	Side     stitch.Side // the side of a single row
	Stop     bool        // it says where on the hand the section ends
	Dyed     bool        // it is a round of several yarns
	In       string      // the yarn of a round that goes on in that of the one before, and doesn’t name it
}

// Label is "Round 3", "Rounds 4–6", "Row 2 (wrong side)", or nothing.
func (s Step) Label() string {
	if s.From == 0 {
		return ""
	}
	text := capital(s.named())
	if s.Side != stitch.AllRound {
		text += " (" + s.Side.Words() + ")"
	}
	return text
}

// named is "round 3", "rows 4–6".
func (s Step) named() string {
	named := noun(s.Rows)
	if s.From != s.To {
		named += "s"
	}
	return named + " " + s.Numbers()
}

// Numbers is "3", "4–6", or nothing.
func (s Step) Numbers() string {
	switch {
	case s.From == 0:
		return ""
	case s.From == s.To:
		return fmt.Sprint(s.From)
	default:
		return fmt.Sprintf("%d–%d", s.From, s.To)
	}
}

// Passage is the instructions for one section.
type Passage struct {
	Part  stitch.Part
	Title string
	Steps []Step
}

// Instructions returns the rounds of a mitt in words, section by section,
// including painted stitches. m must be as it is knitted: mirrored for a left
// hand, and with operations named for a knitter from left to right.
func Instructions(m stitch.Mitt, by Hands) []Passage {
	passages := make([]Passage, 0, len(m.Sections)+1)
	bridge, boundOff, ends := bridgeOf(m), stitch.Part(""), 0
	var dye *dyer
	if by.Dyed != nil {
		dye = &dyer{Dyed: by.Dyed, refers: map[[2]int]bool{}, told: map[[2]int]bool{}, wide: map[[2]int]bool{}}
	}
	for i := range m.Sections {
		s := &m.Sections[i]
		passage := Passage{Part: s.Part, Title: inRows(s.Part.Title(), s)}
		var below *stitch.Section
		if i > 0 {
			below = &m.Sections[i-1]
			passage.Steps = append(passage.Steps, toAndFro(below, s)...)
		}
		by.yarns = dye.begin(below, s)
		passage.Steps = append(passage.Steps, before(s, bridge, by)...)
		worked := rounds(*s, dye)
		passage.Steps = append(passage.Steps, dye.before(s, i == 0)...)
		by.yarns.boundOff = dye.boundOff()
		passage.Steps = append(passage.Steps, worked...)
		passage.Steps = append(passage.Steps, after(s, by, boundOff)...)
		if boundOff == "" && len(s.Finish.Ops) > 0 && s.Finish.Ops[0] == stitch.BindOff && count(s.Finish, stitch.Hold) == 0 {
			boundOff = s.Part
		}
		if ends += tied(s); s.OfFinger() {
			passage.Steps, ends = append(passage.Steps, finished(s, ends)...), 0
		}
		if i == len(m.Sections)-1 {
			passage.Steps = append(passage.Steps, by.sewing(m)...)
			passage.Steps = append(passage.Steps, Step{Text: "Weave in the ends; no loose thread stays inside."})
		}
		for i, s := range passage.Steps {
			passage.Steps[i].Text = by.Terms.Say(s.Text)
		}
		passages = append(passages, passage)
	}
	return passages
}

// before returns the steps before round 1 of a section.
func before(s *stitch.Section, bridge bridge, by Hands) []Step {
	var steps []Step
	say := func(text string) { steps = append(steps, Step{Text: text}) }
	if s.CastOn > 0 {
		say(by.castOn(s))
		if s.Seam > 0 {
			say(bothEdges)
			for _, text := range tipInRows(s) {
				say(text)
			}
		}
	}
	for _, text := range edges(s) {
		say(inRows(text, s))
	}
	if s.JoinsSets() {
		return append(steps, Step{Text: by.gapWaits(s)})
	}
	for _, text := range onWaste(s) {
		say(text)
	}
	freed := by.freed(s)
	for _, text := range freed {
		say(text)
	}
	if len(s.From) > 0 && s.Seam > 0 && freed == nil {
		say(fmt.Sprintf("Put the %s back on the needles. Join the yarn in the middle of the bridge%s.", taken(s), by.leaving(by.Tails.End)))
		say(by.rowAlong(bridge.stitches))
		say("The first and the last stitch picked up go into the thumb’s seam: draw both out of the middle.")
	} else if len(s.From) > 0 && freed == nil {
		picked := count(s.Rounds[0], stitch.PickUp)
		told := by.along(s, bridge.stitches, picked)
		say(tookUp(s) + " " + told[0])
		for _, text := range told[1:] {
			say(text)
		}
	}
	if onFabric(s) {
		for _, text := range by.pickedUpOn(s) {
			say(text)
		}
	}
	if s.About.Inside {
		say("The thumb lies inside. " + by.pair())
	}
	if s.About.Below {
		say("It ends below the thumb, so that the whole hand is free. " + by.pair())
	}
	switch {
	case len(s.Rounds) == 0:
	case s.Part.Marked() && s.Seam > 0:
		say(by.across("the gusset", s))
		say(rowMarkers(s.Rounds[0].Before, s.Rounds[0].LeadIn(), s.Down))
	case s.Part.Marked():
		say(by.round("with the first stitch of the gusset. After the gusset", s))
		say(secondMarker(s.Rounds[0].LeadIn(), s.Down))
	case s.About.Ends > 0:
		say(by.rows(s))
	case s.Part.Over() == stitch.OverMound && s.Seam > 0:
		say(by.across("the thumb’s place", s))
	case s.Part.Over() == stitch.OverMound:
		say(by.round("where the thumb will be. From there", s))
	}
	if s.OfFinger() {
		for _, text := range by.finger(s) {
			say(text)
		}
		return steps
	}
	switch {
	case len(s.Rounds) == 0 || count(s.Rounds[0], stitch.Hold) == 0 || s.Down:
	case s.Seam > 0:
		say(rowDivides(count(s.Rounds[0], stitch.CastOn)))
	default:
		say(divides(count(s.Rounds[0], stitch.CastOn)))
	}
	if s.Shift != 0 && len(s.From) == 0 {
		say(by.shift(s, bridge))
	}
	if by := s.About.Shaping; by != nil {
		say(inRows(scheduleOf(s), s))
		switch {
		case by.Closed && s.Seam > 0:
			say(closesRows)
		case by.Closed:
			say(closes)
		}
	}
	return steps
}

// taken returns the stitches that a section takes up: "9 held stitches", "6
// stitches held for the index".
func taken(s *stitch.Section) string {
	n, of := s.Rounds[0].In(), whose(s)
	if of == "" {
		return Plural(n, "held stitch")
	}
	return Plural(n, "stitch") + " held" + of
}

// whose says for what the stitches that a section takes up were held: " for the index"; ""
// where that has no name.
func whose(s *stitch.Section) (text string) {
	for i, set := range s.From {
		if i > 0 && set.For() != "" {
			text += " and"
		}
		text += set.For()
	}
	return text
}

// Hands says which hand a mitt is for, and how it is knitted.
type Hands struct {
	Left     bool // whether the mitt is for the left hand
	FromLeft bool // whether it is knitted from left to right
	Pair     Pair
	Terms    Terms
	Tails    Tails
	Unit     units.Unit // that lengths are told in first
	Dyed     *Dyed      // nil: it is all in one colour
	yarns    sectionYarns
}

// Tails are the lengths of yarn in mm that edges and ends take; 0: as one likes.
type Tails struct {
	CastOn float64 // for a cast-on worked with the tail
	Hand   float64 // to bind off the hand
	Thumb  float64 // to bind off the thumb
	End    float64 // at all other starts and ends
	Seam   float64 // to sew the seam of a flat piece, up to an opening that is left in it

	SeamAbove float64 // and above that
	ThumbSeam float64 // and that of its thumb

	Fingers [len(mitt.Fingers{}.Each)]float64 // to bind off each finger
}

// leaving says how long a tail is left.
func (h Hands) leaving(mm float64) string {
	if mm == 0 {
		return ", leaving a tail"
	}
	return ", leaving a tail of " + Tail(mm, h.Unit)
}

// round returns where the round begins and how it goes on. Beside a gusset in the palm,
// or a thumb without one, lie some stitches of the palm by themselves, towards the side
// line. A mitt from the fingertips hangs the other way up while it is worked, so its round
// goes the other way.
func (h Hands) round(begins string, s *stitch.Section) string {
	inset, down := s.About.Inset, s.Down
	hand, first, then := "right", "palm", "back"
	if h.Left {
		hand = "left"
	}
	if (h.Left != h.FromLeft) != down {
		first, then = then, first
	}
	way := fmt.Sprintf("the %s, then the %s", first, then)
	switch {
	case inset > 0 && first == "palm":
		way += ", then the palm’s last " + few(inset)
	case inset > 0:
		way = fmt.Sprintf("the palm’s first %s, then the back, then the palm", few(inset))
	}
	return fmt.Sprintf("The round begins %s the %s hand’s round crosses %s. %s", begins, hand, way, h.pair())
}

// few follows "the first" or "the last": "stitch", "2 stitches".
func few(n int) string {
	if n == 1 {
		return "stitch"
	}
	return Plural(n, "stitch")
}

func all(n int) string {
	if n == 1 {
		return "the 1 stitch"
	}
	return fmt.Sprintf("all %d stitches", n)
}

// rounds returns the steps of a section, with rounds that read alike as one.
func rounds(s stitch.Section, dye *dyer) []Step {
	var steps []Step
	last := ""
	for i, r := range s.Rounds {
		text, dyed, in := dye.round(s.Part, i+1, r, last)
		if n := len(steps); n > 0 && text == last {
			steps[n-1].To, steps[n-1].Side = i+1, stitch.AllRound
			continue
		}
		if slices.Contains(r.Ops, stitch.Take) {
			steps = append(steps, Step{Text: inRows(joinsThumb(r), &s)})
		}
		if i+1 == fitsRib(&s) {
			steps = append(steps, Step{Text: fmt.Sprintf("The next %s brings the stitches to a multiple of %d%s, for the ribbing.", r.Noun(), s.About.Rib, besides(&s))})
		}
		if by := s.About.Shaping; by != nil && i+1 == lastShaped(&s) && r.In() == by.To && r.Out() != by.To {
			steps = append(steps, Step{Text: fmt.Sprintf("The next %s brings the stitches to the hand’s %d%s.", r.Noun(), s.Around(r.Out()), besides(&s))})
		}
		if by := s.About.Shaping; by != nil && s.Down && i == 0 && r.In() != by.From && r.Out() == by.From {
			steps = append(steps, Step{Text: fmt.Sprintf("The next %s brings the stitches to the wrist’s %d%s.", r.Noun(), s.Around(r.Out()), besides(&s))})
		}
		steps = append(steps, Step{From: i + 1, To: i + 1, Text: text, Rows: r.Row(), Side: r.Side, Dyed: dyed, In: in})
		last = text
	}
	return steps
}

// Round returns one round in words as the hands work it, with its count where that
// changes.
func Round(part stitch.Part, r stitch.Round) string {
	r = r.AsWorked()
	if plain(r.Ops) {
		return fmt.Sprintf("Knit %s.", counted(part, r))
	}
	if len(r.Ops) == count(r, stitch.Purl) {
		return fmt.Sprintf("Purl %s.", counted(part, r))
	}
	if part.Marked() && r.Lead > 0 && r.Lead < len(r.Ops) {
		list := []string{phrase(cut(r, r.Before, r.Before+r.Lead)), strings.TrimSpace(rest(cut(r, r.Before+r.Lead, len(r.Ops))))}
		if r.Before > 0 {
			list = append([]string{phrase(cut(r, 0, r.Before))}, list...)
		}
		return fmt.Sprintf("%s %s.", opening(strings.Join(list, " | ")), counted(part, r))
	}
	return fmt.Sprintf("%s %s.", opening(phrase(r)), counted(part, r))
}

// counted returns the count after a round: "(40)", or "(40, of which 7 in the
// gusset)" for a part whose block is counted by itself.
func counted(part stitch.Part, r stitch.Round) string {
	if part.Marked() && (plain(r.Ops) || r.Row() && r.Lead > 0 || r.Lead > 0 && r.Lead < len(r.Ops)) {
		return fmt.Sprintf("(%d, of which %d in the %s)", r.Out(), r.LeadOut(), part.Words())
	}
	return fmt.Sprintf("(%d)", r.Out())
}

// cut is the operations of a round from one up to another.
func cut(r stitch.Round, from, to int) stitch.Round {
	r.Ops = r.Ops[from:to]
	if r.Aside != nil {
		r.Aside = r.Aside[from:to]
	}
	return r
}

// rest is the hand's part of a gusset round.
func rest(r stitch.Round) string {
	if plain(r.Ops) {
		return "knit to the end"
	}
	if len(r.Ops) == count(r, stitch.Purl) {
		return "purl to the end"
	}
	return phrase(r)
}

func plain(ops []stitch.Op) bool {
	for _, op := range ops {
		if op != stitch.Knit {
			return false
		}
	}
	return true
}
