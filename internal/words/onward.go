package words

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/mitt"
)

// Onward returns in one line how the rest of a mitt, past round after of the
// gusset, differs from the earlier plan. If the gusset is knitted, after is its
// last round.
//
//	Instead of every 3rd round: every 2nd round twice, then every 3rd.
//	7 increase rounds instead of 6.
func Onward(was, is *mitt.Plan, after int) string {
	return is.Make.InRows(onward(was, is, after))
}

func onward(was, is *mitt.Plan, after int) string {
	var here []string
	if is.Gusseted() && was.Gusseted() {
		of := func(p *mitt.Plan) string {
			text := onwardRhythm(p.FromBase(p.Gusset.Rounds.N, p.Gusset.IncreaseRounds), after)
			return strings.ReplaceAll(text, "increase", changeWord(p))
		}
		before, now := of(was), of(is)
		if before != now {
			here = append(here, fmt.Sprintf("instead of %s: %s", before, now))
		}
		here = append(here, differing(onwardGusset(was, is))...)
	}
	further := differing(onwardNumbers(was, is))
	if t := is.Top; t != nil && was.Top != nil && !slices.Equal(t.DecreaseRounds, was.Top.DecreaseRounds) {
		further = append(further, fmt.Sprintf("the top decreases in %s %s", strings.ToLower(roundWord(len(t.DecreaseRounds))), List(t.DecreaseRounds)))
	}
	sentence := func(parts []string) string { return capital(strings.Join(parts, "; ")) + "." }
	switch {
	case len(here) == 0 && len(further) == 0:
		return "Nothing changes: go on as planned."
	case len(here) == 0:
		return sentence(further)
	case len(further) == 0:
		return sentence(here)
	}
	return sentence(here) + " Further: " + strings.Join(further, "; ") + "."
}

// differing returns the numbers that changed, in words.
func differing(list []onwardNumber) []string {
	var parts []string
	for _, n := range list {
		if n.was != n.is {
			parts = append(parts, fmt.Sprintf("%s%s instead of %d", Plural(n.is, n.noun), n.rest, n.was))
		}
	}
	return parts
}

// onwardRhythm returns the intervals of the increases after a round, starting
// at the last increase made. The last interval has no number of times.
func onwardRhythm(rounds []int, after int) string {
	first := 0
	for first < len(rounds) && rounds[first] <= after {
		first++
	}
	left := rounds[first:]
	if len(left) == 0 {
		return "no more increase rounds"
	}
	from := rounds[max(first-1, 0):]
	if len(from) == 1 {
		return fmt.Sprintf("one in round %d", from[0])
	}
	groups := intervals(from)
	lead := ""
	if first == 0 && rounds[0] > 1 {
		lead = fmt.Sprintf("from round %d on ", rounds[0])
	}
	parts := make([]string, len(groups))
	for i, g := range groups {
		parts[i] = g.words()
		if i == len(groups)-1 {
			parts[i] = everyWords(g.every)
		}
	}
	return lead + strings.Join(parts, ", then ")
}

// onwardNumber is a number in both plans.
type onwardNumber struct {
	was, is    int
	noun, rest string // "round", " of ribbing"
}

// edging returns the rounds and stitches of an edging in both plans. What ends in none has
// no stitches of it.
func edging(was, is [2]int, of string) []onwardNumber {
	for _, e := range []*[2]int{&was, &is} {
		if e[0] == 0 {
			e[1] = 0
		}
	}
	wider := ""
	if was[0] > 0 && is[0] > was[0] {
		wider = ", now wider,"
	}
	return []onwardNumber{{was[0], is[0], "round", of + wider}, {was[1], is[1], "stitch", of}}
}

func onwardGusset(was, is *mitt.Plan) []onwardNumber {
	return []onwardNumber{
		{was.Gusset.Increases, is.Gusset.Increases, changeWord(is) + " round", ""},
		{was.Gusset.Rounds.N, is.Gusset.Rounds.N, "round", " of gusset"},
	}
}

// changeWord names what a gusset does in the rounds that change its count.
func changeWord(p *mitt.Plan) string {
	if p.Down() {
		return "decrease"
	}
	return "increase"
}

// castOnOr says where the cuff's stitches are: cast on, or bound off.
func castOnOr(p *mitt.Plan) string {
	if p.Down() {
		return " at the cuff"
	}
	return " cast on"
}

func onwardNumbers(was, is *mitt.Plan) []onwardNumber {
	list := []onwardNumber{
		{was.Cuff.CastOn.N, is.Cuff.CastOn.N, "stitch", castOnOr(is)},
		{was.Cuff.Rounds, is.Cuff.Rounds, "round", " of " + is.Make.Cuff.Words()},
		{was.Cuff.PlainRounds, is.Cuff.PlainRounds, "plain round", " of cuff"},
		{was.Body.Stitches.N, is.Body.Stitches.N, "stitch", " of the hand"},
	}
	switch {
	case is.Thumb.OnWaste > 0:
		list = append(list,
			onwardNumber{was.Gusset.Rounds.N, is.Gusset.Rounds.N, "round", " to the thumb"},
			onwardNumber{was.Thumb.Held, is.Thumb.Held, "stitch", " with waste yarn"})
	case is.Thumbed():
		list = append(list,
			onwardNumber{was.Thumb.Held, is.Thumb.Held, "stitch", " held"},
			onwardNumber{was.Bridge.CastOn, is.Bridge.CastOn, "stitch", " of bridge"},
			onwardNumber{was.Bridge.HandAfter, is.Bridge.HandAfter, "stitch", " above the gusset"})
	}
	list = append(list, onwardNumber{was.Body.RoundsAbove, is.Body.RoundsAbove, "round", " of hand"})
	list = append(list, edging([2]int{was.Body.EdgingRounds, was.Body.EdgingStitches}, [2]int{is.Body.EdgingRounds, is.Body.EdgingStitches}, " of the hand’s edging")...)
	if was.Top != nil && is.Top != nil {
		list = append(list, onwardNumber{was.Top.Rounds, is.Top.Rounds, "round", " of top"})
	}
	list = append(list, onwardFingers(was, is)...)
	if is.Gusseted() {
		list = append(list, onwardNumber{was.Thumb.PickedUp, is.Thumb.PickedUp, "stitch", " picked up"})
	}
	if is.Thumbed() {
		list = append(list,
			onwardNumber{was.Thumb.Decreased, is.Thumb.Decreased, "stitch", " decreased at the thumb’s corners"},
			onwardNumber{was.Thumb.Stitches.N, is.Thumb.Stitches.N, "stitch", " of thumb"},
			onwardNumber{was.Thumb.Rounds, is.Thumb.Rounds, "round", " of thumb"})
		list = append(list, edging([2]int{was.Thumb.EdgingRounds, was.Thumb.EdgingStitches}, [2]int{is.Thumb.EdgingRounds, is.Thumb.EdgingStitches}, " of the thumb’s edging")...)
	}
	return list
}

// onwardFingers returns the numbers of a glove's fingers, in the order worked.
func onwardFingers(was, is *mitt.Plan) (list []onwardNumber) {
	if !was.Fingered() || !is.Fingered() {
		return nil
	}
	for _, part := range fingerParts {
		f, _ := mitt.FingerOf(part)
		a, b, of := &was.Fingers.Each[f], &is.Fingers.Each[f], " of the "+part.Words()
		list = append(list,
			onwardNumber{a.Palm, b.Palm, "stitch", " of the palm for the " + part.Words()},
			onwardNumber{a.Back, b.Back, "stitch", " of the back for the " + part.Words()},
			onwardNumber{a.FirstRound, b.FirstRound, "stitch", of},
			onwardNumber{a.Decreased, b.Decreased, "stitch", " decreased at the corners" + of},
			onwardNumber{a.Rounds, b.Rounds, "round", of})
		list = append(list, edging([2]int{a.EdgingRounds, a.EdgingStitches}, [2]int{b.EdgingRounds, b.EdgingStitches}, " of edging"+of)...)
		if b.PickedUp == 0 { // the first, which is lower
			list = append(list, onwardNumber{was.Fingers.Lower, is.Fingers.Lower, "round", " of the upper hand"})
		}
		if f > 0 {
			list = append(list, onwardNumber{was.Fingers.Bridge[f-1], is.Fingers.Bridge[f-1], "stitch", " of the " + mitt.OfBridge(int(f)-1).Said()})
		}
	}
	return list
}

// Ranges returns rounds with consecutive ones as ranges: "rounds 10–14, 17".
func Ranges(rounds []int) string {
	return strings.ToLower(roundWord(len(rounds))) + " " + Spans(rounds)
}

// Spans returns rising numbers with consecutive ones as ranges: "10–14, 17".
func Spans(rounds []int) string {
	var parts []string
	for i := 0; i < len(rounds); {
		last := i
		for last+1 < len(rounds) && rounds[last+1] == rounds[last]+1 {
			last++
		}
		if last == i {
			parts = append(parts, fmt.Sprint(rounds[i]))
		} else {
			parts = append(parts, fmt.Sprintf("%d–%d", rounds[i], rounds[last]))
		}
		i = last + 1
	}
	return strings.Join(parts, ", ")
}
