package view

import (
	"fmt"
	"slices"

	"thenar/internal/chart"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
	"thenar/internal/words"
)

// newTask returns a task with its words and its row of the chart.
func (n *Needles) newTask(out *project.Outputs, t tryon.Task, rows map[chart.Anchor]NeedleTask) NeedleTask {
	s := out.Mitt.Section(t.Part)
	of := len(s.Rounds)
	anchor := chart.Anchor{Section: t.Part, Round: min(max(t.Round, 1), of)}
	one := NeedleTask{
		Section: string(t.Part), Part: t.Part.Words(), Noun: s.Noun(), Round: t.Round, IsRound: t.IsRound(), Knitted: t.Knitted, Press: "Round done",
		First: []string{}, Then: []string{},
		OnNeedle: t.IsRound() || t.Round == tryon.Ending,
		View:     rows[anchor].View, Row: rows[anchor].Row, Wide: rows[anchor].Wide, WideRow: rows[anchor].WideRow,
	}
	if !one.IsRound {
		one.opens(out, s, spoken(n.said, s.Part, 0))
		one.Name, one.Say = lower(one.Title), shaped(one.Words)
		return one
	}
	r := s.Rounds[t.Round-1]
	one.Before, one.After = r.In(), r.Out()
	one.Changed, one.Note = out.Changed.Has(t.Part, t.Round), out.Charts.Marks[anchor].Note
	one.Counts = counts(t.Part, r)
	one.Name, one.Place = fmt.Sprintf("%s %d", one.Noun, t.Round), fmt.Sprintf("of %d · %s", of, t.Part.Words())
	one.Title = capital(one.Name)
	if title := named(r); title != "" {
		one.Title, one.Place, one.Name = title, one.Name+" "+one.Place, lower(title)
	}
	if r.Row() {
		one.Place, one.Press = one.Place+" · "+r.Side.Words(), "Row done: turn"
	}
	told := spoken(n.said, t.Part, t.Round)
	if yarns := n.yarnsIn(out, t.Part, t.Round); len(yarns) == len(r.Ops) {
		one.Words, one.Say = coloured(t.Part, r, yarns)
	} else {
		one.Words, one.Say = told.of, large(told.of)
	}
	one.First = append(one.First, told.just...)
	if first := told.first; t.Round == 1 {
		if s.Opens() {
			first = first[min(1, len(first)):] // casting on is a task of its own
		}
		one.First = append(one.First, first...)
	}
	for _, c := range n.catches[t.Part][t.Round] {
		one.First = append(one.First, catchWords(c, out.Charts))
	}
	return one
}

// catchWords says that the strand of a yarn is to be caught in a round.
func catchWords(c chart.Catch, of chart.Source) string {
	return fmt.Sprintf("%s isn’t used for up to %s: catch it at least every %s.", capital(of.Palette.Or(c.Yarn).Name), words.Plural(c.Length, "stitch"), words.Ordinal(of.Rules.Float))
}

// counts says how many stitches a round finds and leaves.
func counts(part stitch.Part, r stitch.Round) string {
	text := fmt.Sprintf("%d in, %d out", r.In(), r.Out())
	if r.In() == r.Out() {
		text = words.Plural(r.Out(), "stitch")
	}
	if part.Marked() {
		text += fmt.Sprintf(", %d in the %s", r.LeadOut(), part.Words())
	}
	return text
}

// named returns what a round is called that divides the mitt, takes up the thumb or
// brings it into the hand, else "".
func named(r stitch.Round) string {
	switch {
	case slices.Contains(r.Ops, stitch.Waste):
		return "Waste yarn"
	case slices.Contains(r.Ops, stitch.Take):
		return "Join the thumb"
	case r.Held() > 0:
		return "Divide"
	case slices.Contains(r.Ops, stitch.PickUp):
		return "Pick up"
	}
	return ""
}

// opens fills in a task that opens or ends a part.
func (n *NeedleTask) opens(out *project.Outputs, s *stitch.Section, told sentences) {
	first := told.first
	switch n.Round {
	case tryon.Woven:
		n.Title, n.Place, n.Press = "Weave in", "the "+s.Part.Words(), "Woven in"
		n.Words, n.Then = told.then[0], told.then[1:]
		return
	case tryon.Ending:
		count := s.Finish.In()
		n.Before, n.Words, n.Then = count, told.last, told.then
		if len(s.Rounds) == 0 && len(first) > 1 { // all of it is its end
			n.First, n.Words, n.Then = first[:1], first[1], first[2:]
		}
		n.Title, n.Place = ends(s.Finish), "the "+s.Part.Words()
		n.Press = map[string]string{"Bind off": "All %d bound off", "Draw up": "All %d drawn up", "Graft": "All %d grafted", "Put aside": "All %d put aside"}[n.Title]
		if s.OfFinger() {
			n.Then = []string{} // a task of its own
		}
		n.Title, n.Press = out.Terms.Say(n.Title), out.Terms.Say(fmt.Sprintf(n.Press, count))
		return
	}
	n.Before, n.After = s.Rounds[0].In(), s.Rounds[0].In()
	if len(first) > 0 {
		n.Words = first[0]
	}
	switch {
	case s.CastOn > 0:
		n.Before, n.After = 0, s.CastOn
		n.Title, n.Place, n.Press = "Cast on", words.Plural(s.CastOn, "stitch"), fmt.Sprintf("All %d cast on", s.CastOn)
	case slices.ContainsFunc(s.From, stitch.Set.Lies):
		n.Title, n.Place, n.Press = "Take out the waste yarn", words.Plural(n.After, "loop"), fmt.Sprintf("All %d on the needles", n.After)
	case len(s.From) > 0:
		n.Title, n.Place, n.Press = "Put the "+s.Part.Words()+" on the needles", words.Plural(n.After, "held stitch"), fmt.Sprintf("All %d on the needles", n.After)
	case s.Part.Over() == stitch.OverDigit:
		n.Title, n.Place, n.Press = "On to the "+s.Part.Words(), "with the yarn of the hand", "The round begins there"
	default:
		n.Title, n.Place, n.Press = "Begin at the side", s.Part.Words(), "The round begins there"
	}
}

// ends says what is done at the end of a part.
func ends(finish stitch.Round) string {
	switch finish.Ops[0] {
	case stitch.DrawUp:
		return "Draw up"
	case stitch.Graft:
		return "Graft"
	}
	if slices.Contains(finish.Ops, stitch.Hold) { // of a thumb in rows all but its edges
		return "Put aside"
	}
	return "Bind off"
}

// sentences are what the instructions of a part say beside its rounds, and of one of them.
type sentences struct {
	first []string // before its first round
	just  []string // right before the round, if it is a later one; and where to stop, if it is the last
	of    string   // of the round
	last  string   // at its end
	then  []string // after that
}

// spoken returns what the instructions say of a part, and of one of its rounds.
func spoken(passages []words.Passage, part stitch.Part, round int) sentences {
	one := sentences{then: []string{}}
	for _, p := range passages {
		if p.Part != part {
			continue
		}
		begun, last, stop := false, 0, ""
		var since []string // after the last round, so far
		for _, s := range p.Steps {
			switch {
			case s.From > 0:
				if s.From <= round && round <= s.To {
					one.of = s.Text
				}
				if stop != "" && s.From == round {
					one.just = append(one.just, stop)
				}
				if begun && s.From == round {
					one.just = append(one.just, since...)
				}
				begun, last, stop, since = true, s.To, "", nil
			case s.Stop:
				stop = s.Text
			case !begun:
				one.first = append(one.first, s.Text)
			default:
				since = append(since, s.Text)
			}
		}
		if stop != "" && last == round {
			one.just = append(one.just, stop)
		}
		if len(since) > 0 {
			one.last, one.then = since[0], append(one.then, since[1:]...)
		}
	}
	return one
}

// TaskWords says in a few words what a task is.
func TaskWords(m stitch.Mitt, t tryon.Task, in words.Terms) string {
	s := m.Section(t.Part)
	switch {
	case t.IsRound():
		return fmt.Sprintf("%s %d of the %s", s.Noun(), t.Round, t.Part.Words())
	case t.Round == tryon.Woven:
		return "weave in the ends of the " + t.Part.Words()
	case t.Round == tryon.Ending:
		return in.Say(lower(ends(s.Finish))) + " the " + t.Part.Words()
	case s.CastOn > 0:
		return "cast on"
	case len(s.From) > 0:
		return "put the " + s.Part.Words() + " on the needles"
	case s.Part.Over() == stitch.OverDigit:
		return "go on to the " + s.Part.Words()
	}
	return "begin the " + t.Part.Words() + " at the side"
}
