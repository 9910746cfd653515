package mitt

import (
	"slices"
	"strings"

	"thenar/internal/stitch"
)

// Names says which numbers a mitt has that is made in one way, what they are called and
// what they count. Pages and paper ask it, with a plan or without one. The zero value is
// the usual way.
type Names struct {
	Kind Kind
	Make Make
}

// Names returns what the numbers of the plan are called.
func (p *Plan) Names() Names { return Names{p.Kind, p.Make} }

// called is what a number is called: on pages, in reasons before its value, on the ladder
// before the bare number, at the head of a column; and what may be written for it. What is empty is as usual.
type called struct{ label, said, rung, head, help string }

// naming is what numbers are called in mitts of which is holds.
type naming struct {
	is    func(Names) bool
	calls map[Number]called
}

// namings are the ways in which numbers are called otherwise than in the table; the first
// that holds and says something counts. From the fingertips rounds of the gusset are
// counted up from the cuff, as it is planned, so that a fixed one stays what it is
// whichever way the mitt is worked.
var namings = []naming{
	{Names.down, map[Number]called{
		CastOn:         {label: "Bind off", said: "bind off", rung: "bind off", head: "bind off"},
		Increases:      {label: "Decrease rounds", said: "decrease rounds", rung: "decrease rounds", head: "decreases"},
		FirstIncrease:  {label: "Last decrease round", said: "last decrease", rung: "last decrease", help: "counted up from the cuff; left out: 1, unless the hand’s shape is followed"},
		Rhythm:         {said: "from one decrease round to the next"},
		IncreaseRounds: {label: "Decreases in rounds", said: "decreases in", rung: "decreases in", help: "all of them, counted up from the cuff: 1, 4, 7"},
		Held:           {label: "Thumb into the hand", said: "into the hand", rung: "into the hand", head: "into hand"},
		BridgeStitches: {label: "Gap", said: "gap", rung: "gap", head: "gap"},
	}},
	{Names.opens, map[Number]called{
		GussetRounds:      {label: "Opening, rows", said: "opening", rung: "opening rows", head: "opening"},
		RoundsAboveGusset: {label: "Above the opening, rounds", said: "above the thumb"},
	}},
	{Names.onWaste, map[Number]called{
		GussetRounds:      {label: "To the thumb, rounds", said: "to the thumb", rung: "rounds to thumb", head: "to thumb"},
		Held:              {label: "With waste yarn", said: "with waste yarn", rung: "waste yarn", head: "waste yarn"},
		RoundsAboveGusset: {label: "Above the thumb, rounds", said: "above the thumb"},
	}},
	{func(w Names) bool { return !w.parted() }, map[Number]called{
		RoundsAboveGusset: {label: "Above the cuff, rounds", said: "above the cuff"},
	}},
}

func (w Names) construction() Construction { return w.Kind.construction(w.Make.Construction) }
func (w Names) capped() bool               { return w.Kind.info().fingered && w.Make.Cap }
func (w Names) down() bool                 { return w.Make.Direction == Down }
func (w Names) opens() bool                { return w.construction() == Slit }
func (w Names) onWaste() bool              { return w.construction() == Straight }
func (w Names) parted() bool               { return w.construction() != NoThumb }

// cuffCalled is what the rounds of a cuff are called.
func (w Names) cuffCalled() called {
	c := w.Make.Cuff
	if c.info().ribbed {
		return called{said: c.Words()}
	}
	short, _, _ := strings.Cut(c.Words(), " ")
	return called{label: strings.ToUpper(c.Words()[:1]) + c.Words()[1:] + ", rounds", said: c.Words(), rung: short + " rounds"}
}

// call returns one of the names of n, or what is usual.
func (w Names) call(n Number, of func(called) string, usual string) string {
	if n == CuffRounds {
		if text := of(w.cuffCalled()); text != "" {
			return w.Make.InRows(text)
		}
	}
	for _, one := range namings {
		if one.is(w) && of(one.calls[n]) != "" {
			return w.Make.InRows(of(one.calls[n]))
		}
	}
	return w.Make.InRows(usual)
}

// Label returns what pages call n.
func (w Names) Label(n Number) string {
	return w.call(n, func(c called) string { return c.label }, n.Label())
}

// Said returns what reasons call n, before its value.
func (w Names) Said(n Number) string {
	return w.call(n, func(c called) string { return c.said }, n.Said())
}

// Rung returns the short name of n on the ladder, before the bare number.
func (w Names) Rung(n Number) string {
	return w.call(n, func(c called) string { return c.rung }, n.Rung())
}

// Help returns what may be written for n; it is empty for a single whole number.
func (w Names) Help(n Number) string {
	return w.call(n, func(c called) string { return c.help }, n.Help())
}

// Words returns what n is called within a sentence: its key, unless the label is another
// than usual.
func (w Names) Words(n Number) string {
	label := w.Label(n)
	if label == n.Label() || n.Label() == "" {
		return n.Words()
	}
	return strings.ToLower(label[:1]) + strings.ReplaceAll(label[1:], ",", "")
}

// Noun returns what n counts, or at which it stands: "stitch", "round", "row"; empty for
// what is counted in times.
func (w Names) Noun(n Number) string {
	switch {
	case n.Measure() == InStitches:
		return "stitch"
	case n.Measure() == InTimes:
		return ""
	case n == GussetRounds && w.opens():
		return w.NounOf(stitch.Opening)
	}
	return w.NounOf(n.Part())
}

// NounOf returns what the rounds of a part are called.
func (w Names) NounOf(part stitch.Part) string {
	if w.Make.Flat || part == stitch.Opening {
		return stitch.RightSide.Noun()
	}
	return stitch.AllRound.Noun()
}

// InRows returns a text about rounds as it is said of a mitt that is made so.
func (w Names) InRows(text string) string { return w.Make.InRows(text) }

// Step returns how far a number that counts rounds is from the next that is possible: rows
// come in pairs.
func (w Names) Step(n Number) int {
	if n.Measure() == InRounds && w.Noun(n) == stitch.RightSide.Noun() {
		return int(toAndFro)
	}
	return int(allRound)
}

// Has reports whether a mitt that is made so has n.
func (w Names) Has(n Number) bool {
	how := w.construction()
	switch table[n].needs {
	case whereParted:
		return w.parted()
	case withGusset:
		return how.gussets() && !w.without(n)
	case withThumb:
		return how.thumbs() && !w.without(n)
	case withTop:
		return w.Kind.info().topped
	case withAnyTop:
		return w.Kind.info().topped || w.capped()
	case withCap:
		return w.capped()
	case withFingers:
		return w.Kind.info().fingered && (n != LittleLowerRounds || !w.Make.Level)
	}
	return true
}

// fromCuff are the numbers that only a mitt has whose thumb is worked on held stitches.
var fromCuff = []Number{KeptOnHand, PickedUp, ThumbDecreases}

// without reports whether a mitt lacks n because of where it is begun.
func (w Names) without(n Number) bool { return w.down() && slices.Contains(fromCuff, n) }

// Rung returns the short name of n on the ladder of this plan, before the bare number.
func (p *Plan) Rung(n Number) string { return p.Names().Rung(n) }

// Said returns what the reasons of this plan call n, before its value.
func (p *Plan) Said(n Number) string { return p.Names().Said(n) }

// has reports whether the plan has n.
func (p *Plan) has(n Number) bool { return p.Names().Has(n) }

// PartOf returns the section of this plan with which pages show n. Without a gusset its
// numbers belong to the hand that takes its place.
func (p *Plan) PartOf(n Number) stitch.Part {
	part := n.Part()
	switch {
	case !part.Marked() || p.Gusseted():
		return part
	case p.Parted():
		return p.Mound()
	}
	return stitch.Hand
}
