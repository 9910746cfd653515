package view

import (
	"fmt"
	"slices"
	"strconv"
	"time"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/picture"
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
	Worn    *picture.Worn // what it is knitted in; nil: no colour
	Places  []tryon.Place
	Form    TryForm
	Entries []TryEntry // from the first on
	Pair    []TryEntry // the two that are shown side by side
	Habits  []Habit
	Back    bool // the answer to a try was just taken back
	TickTwo bool // asks to tick two, since more or fewer were ticked
}

// NewTries returns the page of a mitt's tries. faults are those of the try in
// the form.
func NewTries(t app.Tries, faults fault.Fields) Tries {
	page := Tries{ID: t.ID, Doc: t.Doc, Plan: t.Plan, Worn: t.Worn, Places: t.Places, Form: TryForm{Try: t.Form, Faults: faults}}
	if t.Plan == nil {
		page.Lacks = "There is no plan to try on yet: its measures have still to be filled."
	} else {
		page.Habits = HabitsFor(t.Habits, t.Doc, t.Plan)
	}
	for _, e := range t.Tries {
		page.Entries = append(page.Entries, newTryEntry(e, t.Doc.Sheet.Names()))
	}
	return page
}

// TryForm is the form of a new try.
type TryForm struct {
	Try     tryon.Try
	Faults  fault.Fields
	Instead int64 // the noted try that this one is put in the place of; 0: none
}

// Fault returns the message at a field, or "".
func (f TryForm) Fault(path string) string { return f.Faults.Of(path) }

// end returns how far an end of the gusset is off its place, and to which side.
func (f TryForm) end(name string) (length string, way tryon.Way) {
	if name == "base" {
		return tryon.Unsided(f.Try.Base, f.Try.BaseWay)
	}
	return tryon.Unsided(f.Try.Top, f.Try.TopWay)
}

// TryEntry is a try in the list of those noted.
type TryEntry struct {
	app.TryEntry
	At    string // when it was noted, in words
	names mitt.Names
}

func newTryEntry(e app.TryEntry, w mitt.Names) TryEntry {
	return TryEntry{e, Clock(e.Noted, time.Now()), w}
}

// Beside picks the tries that are shown side by side.
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
	return fmt.Sprintf("%s hand, after %s %s of the %s", e.Try.Side, e.names.NounOf(stitch.Part(e.Try.Section)), e.Try.Round, stitch.Part(e.Try.Section).Words())
}

// Observation is one thing that was seen or felt at a try.
type Observation struct{ What, Text string }

// Observations returns what was seen and felt, with an empty text for what was
// not.
func (e TryEntry) Observations() []Observation {
	t, u := e.Try, " "+string(e.Unit)
	list := []Observation{
		{"fabric, across", pair(t.Stitches, "stitches", t.Width, u)},
		{"fabric, upward", pair(t.Rounds, e.names.InRows("rounds"), t.Height, u)},
		{"base of the " + sitsOf(e.names), e.offset(t.Base)},
		{"top of the " + sitsOf(e.names), e.offset(t.Top)},
	}
	glove := e.names.Has(mitt.OfFinger(mitt.FingerStitches, hand.Index))
	for _, zone := range tryon.Zones() {
		if zone.Fingered() && !glove && t.Feel[zone] == "" {
			continue
		}
		text := ""
		if n, err := strconv.Atoi(t.Feel[zone]); err == nil && n >= -2 && n <= 2 {
			text = tryon.FeelWords(n)
		}
		list = append(list, Observation{zone.Words(), text})
	}
	for _, zone := range tryon.Measured() {
		if glove || t.Ends[zone] != "" {
			list = append(list, Observation{"length, " + zone.Words(), e.length(t.Ends[zone])})
		}
	}
	list = append(list, Observation{"note", t.Note})
	if e.Answered {
		list = append(list, Observation{"led to", e.Answer.Line})
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
	length, way := tryon.Unsided(text, "")
	if way == "" {
		return "right"
	}
	return length + " " + string(tryon.OffsetUnit(e.Unit)) + " " + way.Words()
}

// Parts returns the parts of the mitt, to choose where the work stands.
func (t Tries) Parts() []Choice {
	var list []Choice
	last := map[stitch.Part]int{}
	for _, p := range t.Places {
		last[p.Part] = p.Round
	}
	for _, part := range stitch.Parts() {
		if n := last[part]; n > 0 {
			list = append(list, Choice{string(part), part.Words() + ", " + words.Plural(n, t.Plan.Names().NounOf(part))})
		}
	}
	return list
}

// Tops says after each round of the gusset, from 0 on, how far the plan puts
// its top above. After the last round there is nothing to say.
func (t Tries) Tops() []string {
	list := []string{}
	for left := t.Plan.Gusset.Rounds.N; left > 0; left-- {
		ahead := units.FromMM(float64(left) / t.Plan.Gauge.Rounds)
		list = append(list, fmt.Sprintf("By the plan the top comes %s above this %s: hold the tape there.", ahead.With(t.offsetUnit()), t.Plan.Names().NounOf(t.Plan.Mound())))
	}
	return list
}

// ahead returns the one of tops for the round in the form, or "".
func (t Tries) ahead(tops []string) string {
	n, err := strconv.Atoi(t.Form.Try.Round)
	if err != nil || n < 1 || n >= len(tops) || stitch.Part(t.Form.Try.Section).Over() != stitch.OverMound {
		return ""
	}
	return tops[n]
}

func (t Tries) offsetUnit() units.Unit { return tryon.OffsetUnit(t.Doc.Sheet.Unit()) }

// aside returns the tries that were set aside, or the others, newest first.
func (t Tries) aside(aside bool) []TryEntry {
	var list []TryEntry
	for _, e := range slices.Backward(t.Entries) {
		if e.Answer.Aside == aside {
			list = append(list, e)
		}
	}
	return list
}

// pulls says where the tape of each zone lies on the drawing. Those of four fingers would
// lie over one another, so fingers have none.
var pulls = map[tryon.Zone]picture.Pull{
	tryon.Cuff:    {Part: stitch.Cuff, At: 0.4},
	tryon.Gusset:  {Part: stitch.Gusset, At: 0.45},
	tryon.Parting: {Part: stitch.Gusset, At: 1}, // or of what lies in its place
	tryon.Hand:    {Part: stitch.Hand, At: 0.9},
	tryon.Thumb:   {Part: stitch.Thumb, At: 0.9},
	tryon.Cap:     {Part: stitch.Cap, At: 0.9},
}

// Drawing draws the hand with what is knitted, and a tape round each zone. That
// of the thumb, or of a cap, takes room, so it is there only once that is.
func (t Tries) Drawing() string {
	var list []picture.Pull
	for _, zone := range t.zones() {
		if one, has := pulls[zone]; has && (zone != tryon.Thumb && zone != tryon.Cap || t.felt(zone)) {
			if one.Name = string(zone); one.Part.Over() == stitch.OverMound {
				one.Part = t.Plan.Mound()
			}
			list = append(list, one)
		}
	}
	round, _ := strconv.Atoi(t.Form.Try.Round) // 0 is not begun
	at := picture.Progress{Part: stitch.Part(t.Form.Try.Section), Round: round}
	o := picture.HandOptions{Left: t.Form.Try.Side == string(project.Left), Unit: t.Doc.Sheet.Unit(), Worn: t.Worn}
	return SVG(picture.Tried(t.Plan, at, list, t.seats(), o), false)
}

// seats are the ends of the gusset on the drawing, once it is begun.
func (t Tries) seats() []picture.Seat {
	if !t.Plan.Parted() || !t.seated() {
		return nil
	}
	top := picture.Seat{Name: "top", Part: t.Plan.Mound(), At: 1}
	if t.down() {
		return []picture.Seat{top} // its base is knitted last
	}
	return []picture.Seat{{Name: "base", Part: t.Plan.Mound(), At: 0}, top}
}

// Stands says where the work stands, as far as the form knows: "right hand,
// after round 12 of the gusset".
func (t Tries) Stands() string {
	text := t.Form.Try.Side + " hand"
	if t.Form.Try.Round != "" {
		text += fmt.Sprintf(", after %s %s of the %s", t.Doc.Sheet.Names().NounOf(stitch.Part(t.Form.Try.Section)), t.Form.Try.Round, stitch.Part(t.Form.Try.Section).Words())
	}
	return text
}

// asksWhere reports whether the form has to ask where the work stands.
func (t Tries) asksWhere() bool {
	f := t.Form
	return f.Try.Round == "" || f.Try.Count != "" || f.Fault("side")+f.Fault("section")+f.Fault("round")+f.Fault("count") != ""
}

// feels returns the steps of the scale in the order in which they lie on the
// tapes of the drawing: the tight end is away from the hand.
func (t Tries) feels() []Choice {
	list := slices.Clone(feels)
	if t.Form.Try.Side != string(project.Left) {
		slices.Reverse(list)
	}
	return list
}

// down reports whether the mitt is worked from the fingertips.
func (t Tries) down() bool { return t.Plan != nil && t.Plan.Down() }

// last returns the last round of a part, or 0 if the mitt has no such part.
func (t Tries) last(part stitch.Part) (round int) {
	for _, p := range t.Places {
		if p.Part == part {
			round = p.Round
		}
	}
	return round
}

// sits is what the ends of the part beside the thumb's base belong to.
func (t Tries) sits() string {
	return sitsOf(t.Plan.Names())
}

// sitsOf is what the ends belong to in a mitt that is made so.
func sitsOf(w mitt.Names) string {
	switch {
	case w.Has(mitt.Increases):
		return "gusset"
	case w.Has(mitt.Held):
		return "thumb’s base"
	}
	return "opening"
}

// seated reports whether the gusset is begun, so that one can see where it
// sits.
func (t Tries) seated() bool {
	f := t.Form
	return t.felt(tryon.Gusset) || f.Try.Base != "" || f.Try.Top != ""
}

// feels are the steps of the scale for how a zone feels.
var feels = []Choice{
	{"-2", "much too loose"}, {"-1", "a little loose"}, {"0", "right"}, {"1", "a little tight"}, {"2", "much too tight"},
}

// inRows says a text about rounds as it is said of this mitt.
func (t Tries) inRows(text string) string { return t.Doc.Sheet.Names().InRows(text) }

// tryWhen says when the mitt is best tried on.
func (t Tries) tryWhen() string {
	switch w := t.Doc.Sheet.Names(); {
	case w.Has(mitt.Increases):
		return "Try the mitt on half-way up the gusset, and where the thumb parts."
	case w.Has(mitt.GussetRounds):
		return "Try the mitt on over the base of the thumb, and where the thumb parts."
	}
	return "Try the mitt on once it lies round the knuckles."
}
