package view

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/app"
	"thenar/internal/chart"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
	"thenar/internal/words"
)

// Needles is the page of a mitt on the needles: the present task of one hand of
// a pair, and all the others, so that the page can go on without the server.
type Needles struct {
	ID       int64
	Doc      project.Document
	Side     string // the hand that is knitted
	Nth      int    // the number of tasks done
	Tasks    []NeedleTask
	Strips   []Strip
	Progress []Progress // of each part
	Other    string     // where the other hand stands, in words
	Lacks    string     // why there is nothing to knit yet
	Ahead    string     // says which is the first round ahead that the last try changed; empty if there is none
	Second   string     // how this hand is worked while only the other one is on the needles: "alike" or "anew"

	inWork map[chart.Anchor][]chart.Yarn // the yarns of rounds, as far as they were asked for
	said   []words.Passage               // the instructions, with where each part ends

	catches map[stitch.Part]map[int][]chart.Catch // strands to catch, by part and round
}

// NeedleTask is a round, or what opens or ends a part of the mitt, as it is
// read while knitting.
type NeedleTask struct {
	Section  string   `json:"section"`
	Part     string   `json:"part"`      // the section in words
	Noun     string   `json:"noun"`      // what its rounds are called
	Round    int      `json:"round"`     // the number of a round, or tryon.Opening, Ending, Woven
	IsRound  bool     `json:"is_round"`  // only a round has notes, and a row in the chart
	OnNeedle bool     `json:"on_needle"` // its row's stitches are on the needle
	Knitted  int      `json:"knitted"`   // rounds of the mitt knitted once this is done
	Title    string   `json:"title"`     // in large words
	Place    string   `json:"place"`
	Before   int      `json:"before"`
	After    int      `json:"after"` // stitches on the needles before and after it
	Counts   string   `json:"counts"`
	Words    string   `json:"words"`
	Say      []Said   `json:"say"`   // the words, by yarns
	Name     string   `json:"name"`  // within a sentence: "round 12", "bind off"
	First    []string `json:"first"` // instructions that come before it
	Then     []string `json:"then"`  // and after it
	Press    string   `json:"press"` // the words on the button that goes on
	Changed  bool     `json:"changed"`
	Note     string   `json:"note"`
	Terms    []string `json:"terms"` // of the trade, that it uses
	View     string   `json:"view"`
	Row      int      `json:"row"`  // in the view, counted from the foot
	Wide     string   `json:"wide"` // the view of the whole round, for a wide page; empty if View has it
	WideRow  int      `json:"wide_row"`
}

// secondOf returns how a hand that is not begun is worked, "alike" or "anew",
// or "" if neither hand is on the needles.
func secondOf(d project.Document, side string) string {
	if _, own, ok := d.Sheet.For(side).Progress(); ok && own == side || d.Sheet.Given(sheet.PathSection) == "" {
		return ""
	}
	if d.Sheet.Given(sheet.PathSecond) == sheet.Anew {
		return sheet.Anew
	}
	return "alike"
}

// NewNeedles returns the page of the hand that is knitted.
func NewNeedles(hand app.Needles) Needles {
	n, out := NewTasks(hand), hand.Out
	if out == nil {
		n.Lacks = "There is no plan to knit by yet: its measures have still to be filled."
		return n
	}
	n.Other = otherWords(hand.Other)
	for i := range out.Mitt.Sections {
		n.Progress = append(n.Progress, n.progressOf(out, &out.Mitt.Sections[i]))
	}
	for _, t := range n.Tasks[n.Nth:] {
		if t.Changed {
			n.Ahead = fmt.Sprintf("Replanned after the last try, from %s %d of the %s on.", t.Noun, t.Round, stitch.Part(t.Section).Words())
			break
		}
	}
	n.Second = secondOf(n.Doc, n.Side)
	n.show()
	return n
}

// NewTasks returns the tasks of a hand, which draw nothing; none if it has no plan.
func NewTasks(hand app.Needles) Needles {
	n, out := Needles{ID: hand.ID, Doc: hand.Doc, Side: string(hand.Doc.Side)}, hand.Out
	if out == nil {
		return n
	}
	rows := map[chart.Anchor]NeedleTask{} // only views and rows
	for _, v := range out.Charts.Views() {
		n.addView(out, v, rows)
	}
	n.inWork, n.said, n.catches = map[chart.Anchor][]chart.Yarn{}, out.WithStops(), out.Charts.Catches()
	for _, t := range tryon.Tasks(out.Mitt) {
		one := n.newTask(out, t, rows)
		one.Terms = termsUsed(out.Terms, append(append([]string{one.Words}, one.First...), one.Then...))
		n.Tasks = append(n.Tasks, one)
	}
	n.Nth = min(max(hand.Done, 0), len(n.Tasks))
	if now := n.Now(); now != nil && hand.Rip != nil {
		steps := hand.Rip.Steps(out.Words)
		for i := range steps {
			steps[i] = out.Terms.Say(steps[i])
		}
		now.First = append(steps, now.First...)
	}
	return n
}

// termsUsed returns which terms that are explained stand in some texts.
func termsUsed(in words.Terms, texts []string) []string {
	e := words.NewExplainer(in, knitTerms...)
	e.Cut(strings.Join(texts, " "))
	list := []string{}
	for _, t := range knitTerms {
		if !e.Wants(t) {
			list = append(list, string(t))
		}
	}
	return list
}

// yarnsIn returns the yarns of a round in the order in which they are worked, and
// works them out once.
func (n *Needles) yarnsIn(out *project.Outputs, part stitch.Part, round int) []chart.Yarn {
	at := chart.Anchor{Section: part, Round: round}
	yarns, known := n.inWork[at]
	if !known {
		yarns = out.Charts.InWork(part, round)
		n.inWork[at] = yarns
	}
	return yarns
}

// otherWords says where the other hand of the pair stands.
func otherWords(o app.OtherHand) string {
	switch {
	case !o.Planned:
		return "no plan"
	case !o.Begun:
		return "not begun"
	case o.Ended:
		return "done"
	}
	return fmt.Sprintf("%d of %d rounds", o.Knitted, o.Rounds)
}

// Now returns the task to do next, or nil if the mitt is done.
func (n *Needles) Now() *NeedleTask {
	if n.Nth >= len(n.Tasks) {
		return nil
	}
	return &n.Tasks[n.Nth]
}

// Last returns the task done last, or nil before the cast-on.
func (n *Needles) Last() *NeedleTask {
	if n.Nth == 0 || n.Nth > len(n.Tasks) {
		return nil
	}
	return &n.Tasks[n.Nth-1]
}

// Then returns what follows the end of a part that is worked now; once all is done, that
// of the last one. A round has nothing of the kind.
func (n *Needles) Then() []string {
	at := n.Now()
	if at == nil {
		at = n.Last()
	}
	if at == nil {
		return nil
	}
	return at.Then
}

// Made says how much of the mitt is knitted, or which of its rounds is next.
func (n *Needles) Made() string {
	knitted, all := 0, 0
	if last := n.Last(); last != nil {
		knitted = last.Knitted
	}
	if len(n.Tasks) > 0 {
		all = n.Tasks[len(n.Tasks)-1].Knitted
	}
	if now := n.Now(); now != nil && now.IsRound {
		return fmt.Sprintf("%s %d of %d", n.noun(), now.Knitted, all)
	}
	return fmt.Sprintf("%d of %d %s knitted", knitted, all, plural(n.noun()))
}

// noun is what the rounds of the mitt are called as a whole.
func (n *Needles) noun() string { return n.Doc.Sheet.Names().NounOf(stitch.Hand) }

// MadeOf says what a stitch on the strip of progress stands for.
func (n *Needles) MadeOf() string {
	at := n.Now()
	if at == nil {
		at = n.Last()
	}
	if at == nil {
		return ""
	}
	return "each stitch: a " + at.Noun + " of the " + at.Part
}

// uses reports whether the present task, or the next one, uses a term.
func (n *Needles) uses(t words.Term) bool {
	for _, of := range n.Tasks[n.Nth:min(n.Nth+2, len(n.Tasks))] {
		if slices.Contains(of.Terms, string(t)) {
			return true
		}
	}
	return false
}

// Onward says what comes after the present task.
func (n *Needles) Onward() string {
	switch {
	case n.Now() == nil:
		return ""
	case n.Nth+1 == len(n.Tasks):
		return "then this hand is done"
	}
	next := n.Tasks[n.Nth+1]
	if !next.IsRound {
		return "then " + next.Name
	}
	return fmt.Sprintf("then %s, %s", next.Name, words.Plural(next.After, "stitch"))
}

// Backward says to what the other button goes back.
func (n *Needles) Backward() string {
	if last := n.Last(); last != nil {
		return "to " + last.Name
	}
	return ""
}

// Later returns the next tasks after the present one.
func (n *Needles) Later() []NeedleTask {
	from := min(n.Nth+1, len(n.Tasks))
	return n.Tasks[from:min(from+laterTasks, len(n.Tasks))]
}

// laterTasks is how many tasks stand quietly below the present one.
const laterTasks = 2

// Pinned returns the next note ahead, with its round, or "".
func (n *Needles) Pinned() string {
	for _, t := range n.Tasks[min(n.Nth+1, len(n.Tasks)):] {
		if t.Note != "" {
			return fmt.Sprintf("%s %d of the %s: %s", capital(t.Noun), t.Round, stitch.Part(t.Section).Words(), t.Note)
		}
	}
	return ""
}

// sides are the two hands of a pair.
var sides = []Choice{{"right", "right hand"}, {"left", "left hand"}}
