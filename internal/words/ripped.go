package words

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/stitch"
)

// Ripping is a rip-back: of a mitt that was knitted up to some round of a part From, back to
// a round of the part To.
type Ripping struct {
	Was, Is stitch.Mitt // as it was knitted, and as it goes on
	From    stitch.Part
	At      int // the round of From
	To      stitch.Part
	Round   int  // of To, the last that stays
	Rounds  int  // ripped
	Alone   bool // only the part To is ripped, which is a finger: the work is further on
}

// Steps says what is undone, what comes back onto the needles, and where the round begins
// then. Of a finger that is ripped by itself it says all that is knitted anew, too, given
// the instructions of the mitt.
func (r *Ripping) Steps(told []Passage) []string {
	s := r.Is.Section(r.To)
	if s == nil || r.Round < 1 || r.Round > len(s.Rounds) {
		return nil
	}
	ravel := fmt.Sprintf("avel %s, to %s %d", Plural(r.Rounds, s.Noun()), s.Noun(), r.Round)
	on := Plural(s.Rounds[r.Round-1].Out(), "stitch") + " on the needles."
	if r.Alone {
		list := []string{
			fmt.Sprintf("Before you go on, the %s alone: undo its end, and r%s.", r.To.Words(), ravel),
			capital(on) + marker(s),
			fmt.Sprintf("Knit it on to round %d, and end it as before:", len(s.Rounds)),
		}
		return append(append(list, onFrom(told, r.To, r.Round)...), "Then go on where you were.")
	}
	var list []string
	if ended := r.ended(); len(ended) > 0 {
		list = append(list, fmt.Sprintf("First undo the end, where it is worked: %s.", Listed(ended)))
	}
	list = append(list, fmt.Sprintf("R%s of the %s.", ravel, r.To.Words()))
	list = append(list, r.waiting()...)
	return append(list, "Ripped back: "+on+marker(s))
}

// ripped returns the sections as they were of which any round is ripped.
func (r *Ripping) ripped() []stitch.Section {
	order := func(p stitch.Part) int { return stitch.Order(p, r.Was.Down()) }
	var list []stitch.Section
	for _, s := range r.Was.Sections {
		if order(s.Part) >= order(r.To) && order(s.Part) <= order(r.From) && len(s.Rounds) > 0 {
			list = append(list, s)
		}
	}
	return list
}

// ended returns the parts whose end may be worked.
func (r *Ripping) ended() []string {
	var names []string
	for _, s := range r.ripped() {
		if len(s.Finish.Ops) > 0 && (s.Part != r.From || r.At >= len(s.Rounds)) {
			names = append(names, s.Part.Words())
		}
	}
	return names
}

// waiting says what comes back from waste yarn, and what goes back onto it. What was set
// aside in a round that is ripped comes back, unless it was taken up since: then it is there.
// What was taken up since, and set aside before, waits again.
func (r *Ripping) waiting() []string {
	var list []string
	aside := map[stitch.Set]bool{}
	back := 0
	for _, s := range r.ripped() {
		if n := len(s.From); n > 0 && s.Part != r.To && !slices.ContainsFunc(s.From, func(set stitch.Set) bool { return aside[set] }) {
			list = append(list, fmt.Sprintf("Put the stitches that the %s took up back onto waste yarn.", s.Part.Words()))
		}
		for i, round := range s.Rounds {
			if s.Part == r.To && i < r.Round {
				continue
			}
			if back == 0 {
				back = round.Held()
			}
			for at := range round.Ops {
				aside[round.SetAt(at)] = true
			}
		}
	}
	if back > 0 {
		list = append(list, fmt.Sprintf("The %s that were set aside since come back onto the needles.", Plural(back, "stitch")))
	}
	return list
}

// marker says where the round of a section begins, or "".
func marker(s *stitch.Section) string {
	switch {
	case s.Noun() == "row":
		return ""
	case s.Part.Marked():
		return " The marker goes before the gusset’s first stitch."
	case s.Part.Over() == stitch.OverHand && !s.Part.BelowFingers() && s.Rounds[0].Held() > 0 && s.Rounds[0].Before == 0:
		return " The marker goes before the bridge’s first stitch."
	case s.OfFinger() && goesOn(s):
		return " The marker goes at the end of its bridge."
	case s.Rounds[0].Lead > 0 && s.Part.Over() != stitch.OverMound:
		return " The marker goes before the first stitch picked up."
	}
	return " The marker goes back to where the round began."
}

// onFrom returns what the instructions of a part say from a round on.
func onFrom(told []Passage, part stitch.Part, round int) []string {
	var list []string
	for _, p := range told {
		begun := false
		for _, s := range p.Steps {
			begun = begun || s.From > 0 && s.To > round
			if p.Part == part && begun {
				list = append(list, strings.TrimSpace(s.Text))
			}
		}
	}
	return list
}
