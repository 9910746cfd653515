package view

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
	"thenar/internal/units"
	"thenar/internal/words"
)

// Tries is the page of a mitt's tries.
type Tries struct {
	ID      int64
	Doc     project.Document
	Lacks   string // why nothing can be tried on yet
	Plan    *mitt.Plan
	Places  []tryon.Place
	Form    TryForm
	Entries []TryEntry // from the first on
	Pair    []TryEntry // two that are looked at side by side
	Habits  []Habit
	Back    bool // the mitt was just brought back
	TickTwo bool // other than two tries were ticked
}

// TryForm is a try that is being noted.
type TryForm struct {
	Try    tryon.Try
	Faults fault.Fields
}

// Fault is the message at a field.
func (f TryForm) Fault(path string) string {
	for _, one := range f.Faults {
		if one.Path == path {
			return one.Message
		}
	}
	return ""
}

// TryEntry is a try on the line of time.
type TryEntry struct {
	ID       int64
	Noted    time.Time
	At       string // the same in words
	Try      tryon.Try
	Photo    bool
	Unit     units.Unit
	Answered bool  // and its corrections stand in the mitt
	Back     bool  // it was answered, and taken back
	Before   int64 // the revision before its corrections
	Revision int64 // and after them
	Answer   tryon.Answer
}

// Habit is what was learned, and whether the mitt has use for it.
type Habit struct {
	tryon.Habit
	Usable bool
}

// HabitsFor says of each habit whether a mitt has use for it.
func HabitsFor(list []tryon.Habit, doc project.Document, p *mitt.Plan) []Habit {
	var out []Habit
	for _, h := range list {
		out = append(out, Habit{Habit: h, Usable: len(h.Edits(doc.Sheet, p)) > 0})
	}
	return out
}

// Beside picks the tries that are looked at side by side.
func (t *Tries) Beside(ids []string) {
	for _, e := range t.Entries {
		if slices.Contains(ids, strconv.FormatInt(e.ID, 10)) && len(t.Pair) < 2 {
			t.Pair = append(t.Pair, e)
		}
	}
	if len(t.Pair) < 2 || len(ids) > 2 {
		t.Pair, t.TickTwo = nil, true
	}
}

// Where says after which round a try was made.
func (e TryEntry) Where() string {
	return fmt.Sprintf("%s hand, after round %s of the %s", e.Try.Side, e.Try.Round, stitch.Part(e.Try.Section).Words())
}

// Line is a thing that was seen or felt, for a list or beside another.
type Line struct{ What, Text string }

// Lines are what was seen and felt.
func (e TryEntry) Lines() []Line {
	t, u := e.Try, " "+string(e.Unit)
	list := []Line{
		{"fabric, across", pair(t.Stitches, "stitches", t.Width, u)},
		{"fabric, upward", pair(t.Rounds, "rounds", t.Height, u)},
		{"base of the gusset", e.offset(t.Base)},
		{"top of the gusset", e.offset(t.Top)},
	}
	for _, zone := range tryon.Zones() {
		text := ""
		if n, err := strconv.Atoi(t.Feel[zone]); err == nil && n >= -2 && n <= 2 {
			text = tryon.FeelWords(n)
		}
		list = append(list, Line{zone.Words(), text})
	}
	list = append(list, Line{"note", t.Note})
	if e.Answered {
		list = append(list, Line{"led to", e.Answer.Line})
	}
	return list
}

func pair(n, what, over, unit string) string {
	if n == "" {
		return ""
	}
	return n + " " + what + " over " + over + unit
}

func (e TryEntry) offset(text string) string {
	if text == "" {
		return ""
	}
	return strings.Replace(text, "-", "−", 1) + " " + string(tryon.OffsetUnit(e.Unit))
}

// Parts are the parts of the mitt, to say where the work stands.
func (t Tries) Parts() []Choice {
	var list []Choice
	last := map[stitch.Part]int{}
	for _, p := range t.Places {
		last[p.Part] = p.Round
	}
	for _, part := range stitch.Parts() {
		if n := last[part]; n > 0 {
			list = append(list, Choice{string(part), fmt.Sprintf("%s, %d rounds", part.Words(), n)})
		}
	}
	return list
}

// TopHelp says how far the top of the gusset still is by the plan.
func (t Tries) TopHelp() string {
	what := "Above where the thumb parts; with a minus: below."
	n, err := strconv.Atoi(t.Form.Try.Round)
	if err != nil || t.Plan == nil || t.Form.Try.Section != string(stitch.Gusset) || n >= t.Plan.Gusset.Rounds.N {
		return what
	}
	left := float64(t.Plan.Gusset.Rounds.N-n) / t.Plan.Gauge.Rounds
	return fmt.Sprintf("By the plan the top comes %s above this round: hold the tape there. ", units.FromMM(left).With(t.offsetUnit())) + what
}

func (t Tries) offsetUnit() units.Unit { return tryon.OffsetUnit(t.Doc.Sheet.Unit()) }

// aside are the tries that were set aside, or the others; the newest first.
func (t Tries) aside(aside bool) []TryEntry {
	var list []TryEntry
	for _, e := range slices.Backward(t.Entries) {
		if e.Answer.Aside == aside {
			list = append(list, e)
		}
	}
	return list
}

// felt tells whether a zone is knitted, as far as the form knows.
func (t Tries) felt(zone tryon.Zone) bool {
	part := stitch.Part(t.Form.Try.Section)
	if parts := t.Parts(); part == "" && len(parts) > 0 {
		part = stitch.Part(parts[0].Value)
	}
	return t.Form.Try.Feel[zone] != "" || slices.Contains(tryon.Felt(part), zone)
}

// feltIn are the parts in which a zone is felt, for the script.
func feltIn(zone tryon.Zone) string {
	var parts []string
	for _, p := range stitch.Parts() {
		if slices.Contains(tryon.Felt(p), zone) {
			parts = append(parts, string(p))
		}
	}
	return strings.Join(parts, " ")
}

// zones are those that the mitt has.
func (t Tries) zones() []tryon.Zone {
	if t.Plan == nil || !t.Plan.Thumbed() {
		return []tryon.Zone{tryon.Cuff, tryon.Hand}
	}
	return tryon.Zones()
}

// feels are the steps of the scale.
var feels = []Choice{
	{"-2", "much too loose"}, {"-1", "a little loose"}, {"0", "right"}, {"1", "a little tight"}, {"2", "much too tight"},
}

// Suggested is a correction with whether it is accepted.
type Suggested struct {
	tryon.Correction
	Accepted bool
}

// Verdict is the page on which a try is answered.
type Verdict struct {
	ID          int64
	Doc         project.Document
	Entry       TryEntry
	Seen        tryon.Seen
	Corrections []Suggested
	Onward      project.Onward
	After       int64
	Key         string // of the answer, so that it is taken once
	GoneOn      bool   // the work was counted further since
	Pace        float64
	OwnPace     bool
}

// Accepted are the corrections that are.
func (v Verdict) Accepted() []tryon.Correction {
	var list []tryon.Correction
	for _, c := range v.Corrections {
		if c.Accepted {
			list = append(list, c.Correction)
		}
	}
	return list
}

// Answer is what is kept of the answer, where the mitt goes on from here.
func (v Verdict) Answer() tryon.Answer {
	a := tryon.Answer{
		Accepted: []string{}, Declined: []string{}, Section: v.Seen.Place.Part, Round: v.Seen.Place.Round,
		Line: v.Onward.Line, Ease: v.Onward.Ease,
	}
	for _, c := range v.Corrections {
		switch {
		case c.Accepted:
			a.Accepted = append(a.Accepted, c.Key)
		case c.Changes():
			a.Declined = append(a.Declined, c.Key)
		}
	}
	return a
}

// ChangedWords says which rounds are worked otherwise.
func (v Verdict) ChangedWords() string {
	var parts []string
	for _, part := range stitch.Parts() {
		var rounds []int
		for r := range v.Onward.Changed[part] {
			rounds = append(rounds, r)
		}
		if len(rounds) > 0 {
			slices.Sort(rounds)
			parts = append(parts, fmt.Sprintf("%s, %s", part.Words(), words.Ranges(rounds)))
		}
	}
	if len(parts) == 0 {
		return "No round is worked otherwise."
	}
	return "Worked otherwise: " + strings.Join(parts, "; ") + "."
}

// Idle tells whether corrections are accepted that change no round.
func (v Verdict) Idle() bool { return len(v.Accepted()) > 0 && v.Onward.Changed.Count() == 0 }

// SinceWords says where the work stands by now.
func (v Verdict) SinceWords() string {
	if v.Seen.Place.Nth == 0 {
		return "Since the try the work was ripped to its cast-on; the mitt is planned from there."
	}
	return fmt.Sprintf("Since the try the work has moved: round %d of the %s is knitted, and the rest is planned from there.",
		v.Seen.Place.Round, v.Seen.Place.Part.Words())
}

// RipWords says what ripping back costs.
func (v Verdict) RipWords() string {
	r := v.Onward.Rip
	to := "to the cast-on"
	if r.To.Nth > 0 {
		to = fmt.Sprintf("to round %d of the %s", r.To.Round, r.To.Part.Words())
	}
	whose := "a usual pace"
	if v.OwnPace {
		whose = "your own pace"
	}
	return fmt.Sprintf("Rip back %s, %s: %s to knit again, some %d minutes at %.0f a minute, %s.",
		words.Plural(r.Rounds, "round"), to, words.Plural(r.Stitches, "stitch"), r.Minutes(v.Pace), v.Pace, whose)
}

// SpoiltWords says what going on would leave too wide or too narrow.
func (v Verdict) SpoiltWords() string {
	return "If you go on from here, this stays further off the hand than in a mitt begun anew: " + strings.Join(v.Onward.Rip.Zones, ", ") + "."
}
