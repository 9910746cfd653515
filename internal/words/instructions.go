package words

import (
	"fmt"
	"strings"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Step is one line of the instructions: what is done in rounds From … To of
// its section (0: no round of its own).
type Step struct {
	From, To int
	Text     string
}

// Label is "Round 3", "Rounds 4–6", or nothing.
func (s Step) Label() string {
	switch {
	case s.From == 0:
		return ""
	case s.From == s.To:
		return fmt.Sprintf("Round %d", s.From)
	}
	return fmt.Sprintf("Rounds %d–%d", s.From, s.To)
}

// Passage is the instructions for one section.
type Passage struct {
	Part  stitch.Part
	Title string
	Steps []Step
}

// Instructions puts the rounds of a mitt into words, section by section.
// What was painted in the chart is in the rounds, so it is in the words. The
// mitt is given as it is knitted: mirrored already, and its operations named
// already for who knits from left to right.
func Instructions(p *mitt.Plan, m stitch.Mitt, by Hands) []Passage {
	passages := make([]Passage, 0, len(m.Sections)+1)
	for _, s := range m.Sections {
		passage := Passage{Part: s.Part, Title: title(p, s.Part)}
		passage.Steps = append(passage.Steps, before(p, s, by)...)
		passage.Steps = append(passage.Steps, rounds(s)...)
		passage.Steps = append(passage.Steps, after(p, s)...)
		passages = append(passages, passage)
	}
	return passages
}

// Select is the instructions for rounds from … to of one section, which stand
// by themselves: what is said before and after the rounds is left out. It is
// empty where there are no such rounds.
func Select(passages []Passage, part stitch.Part, from, to int) []Passage {
	for _, p := range passages {
		if p.Part != part {
			continue
		}
		var steps []Step
		for _, s := range p.Steps {
			if s.From > 0 && s.From <= to && s.To >= from {
				s.From, s.To = max(s.From, from), min(s.To, to)
				steps = append(steps, s)
			}
		}
		if len(steps) > 0 {
			return []Passage{{p.Part, p.Title, steps}}
		}
	}
	return nil
}

func title(p *mitt.Plan, part stitch.Part) string {
	switch part {
	case stitch.Cuff:
		return "Cuff"
	case stitch.CuffPlain:
		return "Plain rounds"
	case stitch.Gusset:
		return "Thumb gusset"
	case stitch.Hand:
		return "Hand"
	case stitch.Top:
		return "Top"
	}
	return "Thumb"
}

// before is what is said before round 1 of a section.
func before(p *mitt.Plan, s stitch.Section, by Hands) []Step {
	var steps []Step
	if s.CastOn > 0 {
		steps = append(steps, Step{Text: fmt.Sprintf("Cast on %s with a stretchy cast-on, leaving a tail of 20 cm. Join to work in the round, without a twist.", Plural(s.CastOn, "stitch"))})
	}
	switch s.Part {
	case stitch.Hand:
		if !p.Thumbed() {
			steps = append(steps, Step{Text: "The thumb lies inside. " + by.pair()})
		}
	case stitch.Gusset:
		steps = append(steps, Step{Text: by.round()}, Step{Text: capital(Schedule(p.Gusset.IncreaseRounds, p.Gusset.Base, p.Gusset.Stitches, p.Gusset.Step, p.Gusset.Rounds.N))})
	case stitch.Top:
		if s.Shift != 0 {
			steps = append(steps, Step{Text: shift(s.Shift)})
		}
		if len(p.Top.DecreaseRounds) > 0 {
			steps = append(steps, Step{Text: Schedule(p.Top.DecreaseRounds, p.Top.Stitches, p.Top.End, -4, p.Top.Rounds)})
		}
	case stitch.Thumb:
		steps = append(steps, Step{Text: fmt.Sprintf("Put the %s back on the needles. Join the yarn with a 20 cm tail; it closes the last hole.", Plural(p.Thumb.Held, "held stitch"))})
	}
	return steps
}

// Hands say for which hand a mitt is, and how its knitter works.
type Hands struct {
	Left     bool // the mitt is for the left hand
	FromLeft bool // it is knitted from left to right
	Alike    bool // the other hand is worked alike, round for round
}

// pair tells how the other hand is worked.
func (h Hands) pair() string {
	if h.Alike {
		return "Both hands are alike: make two."
	}
	return "The other hand differs, and has words of its own."
}

// round tells where the round begins and where it goes on.
func (h Hands) round() string {
	hand, first, then := "right", "palm", "back"
	if h.Left {
		hand = "left"
	}
	if h.Left != h.FromLeft {
		first, then = then, first
	}
	return fmt.Sprintf("The round begins with the first stitch of the gusset; after it the %s hand's round crosses the %s, then the %s. %s", hand, first, then, h.pair())
}

func shift(n int) string {
	if n < 0 {
		return fmt.Sprintf("The round now begins %s earlier, at the side line.", Plural(-n, "stitch"))
	}
	return fmt.Sprintf("Knit %d more: the round now begins at the side line, in the middle of the bridge.", n)
}

// after is the finish of a section, and the caution that belongs to it.
func after(p *mitt.Plan, s stitch.Section) []Step {
	if len(s.Finish.Ops) == 0 {
		return nil
	}
	text := capital(Phrase(s.Finish.Ops)) + "."
	switch s.Finish.Ops[0] {
	case stitch.BindOff:
		text = fmt.Sprintf("Bind off %s loosely, with a stretchy bind-off.", all(s.Finish.In()))
	case stitch.DrawUp:
		text = fmt.Sprintf("Cut the yarn, draw it through the %s that are left, pull tight and fasten off inside.", Plural(s.Finish.In(), "stitch"))
	}
	steps := []Step{{Text: text}}
	if s.Part == stitch.Thumb || !p.Thumbed() {
		steps = append(steps, Step{Text: "Weave in the ends; no loose thread stays inside, above all for a small child."})
	}
	return steps
}

func all(n int) string {
	if n == 1 {
		return "the 1 stitch"
	}
	return fmt.Sprintf("all %d stitches", n)
}

// rounds groups rounds that read alike.
func rounds(s stitch.Section) []Step {
	var steps []Step
	last := ""
	for i, r := range s.Rounds {
		text := Round(s.Part, r)
		if n := len(steps); n > 0 && text == last {
			steps[n-1].To = i + 1
			continue
		}
		steps = append(steps, Step{From: i + 1, To: i + 1, Text: text})
		last = text
	}
	return steps
}

// Round is one round in words, with its count where it changes.
func Round(part stitch.Part, r stitch.Round) string {
	if plain(r.Ops) {
		if part == stitch.Gusset {
			return fmt.Sprintf("Knit (%d, of which %d in the gusset).", r.Out(), r.LeadOut())
		}
		return fmt.Sprintf("Knit (%d).", r.Out())
	}
	text := capital(Phrase(r.Ops))
	if part == stitch.Gusset && r.Lead > 0 && r.Lead < len(r.Ops) {
		text = capital(Phrase(r.Ops[:r.Lead])) + " | " + strings.TrimSpace(rest(r.Ops[r.Lead:]))
		return fmt.Sprintf("%s (%d, of which %d in the gusset).", text, r.Out(), r.LeadOut())
	}
	return fmt.Sprintf("%s (%d).", text, r.Out())
}

// rest is the hand's part of a gusset round.
func rest(ops []stitch.Op) string {
	if plain(ops) {
		return "knit to the end"
	}
	return Phrase(ops)
}

func plain(ops []stitch.Op) bool {
	for _, op := range ops {
		if op != stitch.Knit {
			return false
		}
	}
	return true
}
