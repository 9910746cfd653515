package view

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/fit"
	"thenar/internal/mitt"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/units"
	"thenar/internal/words"
)

// Bench is what stands side by side on the Fit desk, equally high: the ladder
// with the plan's numbers, the hand with its mitt, the fit curves.
type Bench struct {
	Hand    string // SVG
	Rungs   []picture.Rung
	Thumb   []picture.Rung // of the thumb's short ladder
	Numbers []ladderNumber // from the top down
	Panels  []benchPanel
	Fingers []fingerPanel // above the hand's panel, from the little finger on

	OfFingers []mitt.Number // those of the fingers that are fixed
}

// Distances of neighbouring numbers on the ladder, as shares of its height: on
// a wide page, where it is at least 560 px high, and on a phone, where it is at
// least 392. A line of type needs 24 px.
const (
	apartWide = 24.0 / 560
	apartSlim = 24.0 / 392
	apartEnds = 38.0 / 400 // two lines
)

// ladderNumber is a number of the plan on the ladder, with those that stand in
// its slip. Levels are shares of the ladder's height from its upper edge.
type ladderNumber struct {
	words.Reason
	Level      float64 // of its round
	Wide, Slim float64 // of the number itself, spread so that each can be read
	Above      [2]float64
	OnThumb    bool
	More       []words.Reason
}

// Low reports whether the number is in the lower half of the ladder, so that
// its slip lies upwards of it.
func (n ladderNumber) Low() bool { return n.Wide > 0.5 }

// benchPanel is the fit curve of the hand or of the thumb.
type benchPanel struct {
	picture.Panel
	SVG   string
	Ticks []string   // girths along its foot, in the sheet's unit
	Words []endLabel // from the top down
}

// fingerPanel is the fit curve of a finger, with what it says above it.
type fingerPanel struct {
	SVG, Name, Girth string
	Top              float64
}

// newFingerPanel lays out the fit curve of a finger: its girth is that of the fabric below
// its tip.
func newFingerPanel(p picture.Panel, rows []fit.Row, u units.Unit) fingerPanel {
	name, _, _ := strings.Cut(p.Part().Words(), " ")
	return fingerPanel{SVG(p.Scene, false), name, bare(picture.BelowTip(rows, p.Part()).Fabric, u), p.Top}
}

// endLabel is what a fit curve says of a section, at its height.
type endLabel struct {
	picture.End
	Above float64 // its distance from the one above it, as a share of the height
}

// newPanel lays out a fit curve. What is said of the sections is spread so that
// it can be read; what is said of the thumb stands above it.
func newPanel(p picture.Panel, u units.Unit) benchPanel {
	one := benchPanel{Panel: p, SVG: SVG(p.Scene, false)}
	for girth := p.Low; girth <= p.High+0.5; girth += p.Step {
		one.Ticks = append(one.Ticks, bare(girth, u))
	}
	levels := make([]float64, len(p.Ends))
	for i, e := range p.Ends {
		levels[i] = e.Level
	}
	if p.Thumb() {
		levels[0] = p.Top
	}
	levels = picture.Spread(levels, apartEnds, 0.05, 0.95)
	before := 0.0
	for i := len(levels) - 1; i >= 0; i-- {
		one.Words = append(one.Words, endLabel{p.Ends[i], levels[i] - before})
		before = levels[i]
	}
	return one
}

// newBench lays out the Fit desk of a plan.
func newBench(out *project.Outputs, o picture.HandOptions) *Bench {
	at := picture.NewBench(out.Plan, o)
	b := &Bench{Hand: SVG(at.Hand, false)}
	b.Rungs, b.Thumb = at.Rungs()
	b.Thumb = slices.DeleteFunc(b.Thumb, func(r picture.Rung) bool { // fingers have lines of their own
		_, finger := mitt.FingerOf(r.Part)
		return finger
	})
	b.Numbers = ladderOf(out, at)
	for _, r := range out.Reasons {
		if r.Fixed && ofFingers(r.Of) {
			b.OfFingers = append(b.OfFingers, r.Of)
		}
	}
	options := picture.FitOptions{Left: o.Left, Unit: o.Unit, Half: out.Summary.Half, Tolerance: out.Tolerance}
	for _, p := range at.Curves(out.Fit, out.Bands, options) {
		b.Panels = append(b.Panels, newPanel(p, o.Unit))
	}
	for _, p := range at.FingerCurves(out.Fit, out.Bands, options) {
		b.Fingers = append(b.Fingers, newFingerPanel(p, out.Fit, o.Unit))
	}
	return b
}

// ladderOf places the numbers of a plan on its ladder, from the top down.
func ladderOf(out *project.Outputs, at *picture.Bench) []ladderNumber {
	reasons := map[mitt.Number]words.Reason{}
	more := map[mitt.Number][]words.Reason{}
	var own []mitt.Number
	for _, r := range out.Reasons {
		if ofFingers(r.Of) {
			continue // they have lines of their own
		}
		reasons[r.Of] = r
		if of, with := r.Of.With(); with && !r.Fixed {
			more[of] = append(more[of], r)
		} else {
			own = append(own, r.Of)
		}
	}
	marks := at.Marks(own)
	levels := make([]float64, len(marks))
	for i, m := range marks {
		levels[i] = m.Level
	}
	const top, bottom = 0.03, 0.97
	wide, slim := picture.Spread(levels, apartWide, top, bottom), picture.Spread(levels, apartSlim, top, bottom)
	list := make([]ladderNumber, len(marks))
	for i, m := range marks {
		list[i] = ladderNumber{Reason: reasons[m.Of], Level: m.Level, Wide: wide[i], Slim: slim[i], OnThumb: m.Thumb, More: more[m.Of]}
	}
	slices.Reverse(list)
	var before [2]float64
	for i := range list {
		n := &list[i]
		n.Above = [2]float64{n.Wide - before[0], n.Slim - before[1]}
		before = [2]float64{n.Wide, n.Slim}
	}
	return list
}

// roundsOf returns the rounds of its section that a number is about: all of them
// for a number of rounds, and for what is done throughout the gusset.
func (a Answer) roundsOf(r words.Reason) (from, to int) {
	switch r.Of {
	case mitt.Increases, mitt.Rhythm, mitt.IncreaseRounds:
		return 1, a.Out.Plan.Gusset.Rounds.N
	}
	if r.Of.Measure() == mitt.InRounds {
		return 1, a.Out.Plan.Count(r.Of)
	}
	return r.Round, r.Round
}

// onLadder returns the name and the bare value of a number, as they stand on
// the ladder.
func (a Answer) onLadder(r words.Reason) (name, value string) {
	switch r.Of {
	case mitt.Rhythm:
		value = strings.TrimPrefix(r.Value, "every ")
		for _, noun := range []string{" rounds", " round", " rows", " row"} {
			value = strings.TrimSuffix(value, noun)
		}
		if value == "one increase" {
			return "increase", "once"
		}
		return a.Out.Plan.Rung(r.Of), strings.Replace(value, " to ", "–", 1)
	case mitt.IncreaseRounds:
		return a.Out.Plan.Rung(r.Of), firstAndLast(r.Number)
	}
	if r.Of == mitt.CastOn {
		return a.Out.Plan.Rung(r.Of), castOn(a.Out.Plan)
	}
	return a.Out.Plan.Rung(r.Of), r.Number
}

// firstAndLast shortens a list of rounds to its ends: "1…16".
func firstAndLast(list string) string {
	rounds := strings.FieldsFunc(list, func(r rune) bool { return r == ',' || r == ' ' })
	if len(rounds) < 2 {
		return list
	}
	return rounds[0] + "…" + rounds[len(rounds)-1]
}

// slipID is the id of the slip of a number on Fit.
func slipID(n mitt.Number) string { return "at-" + n.Key() }

// fixed returns the fixed numbers, from the top of the ladder down.
func (b *Bench) fixed() []mitt.Number {
	list := slices.Clone(b.OfFingers)
	for _, n := range b.Numbers {
		if n.Fixed {
			list = append(list, n.Of)
		}
	}
	return list
}

// fixedCount says how many numbers are fixed.
func fixedCount(n int) string {
	if n == 1 {
		return "1 number is fixed:"
	}
	return fmt.Sprintf("%d numbers are fixed:", n)
}

// share writes a share of a height as SVG takes it.
func share(of float64) string { return fmt.Sprintf("%.2f%%", 100*of) }

// placeWords names what a section of the fit curve lies on.
func placeWords(part stitch.Part) string {
	switch part.Over() {
	case stitch.OverWrist:
		return "wrist"
	case stitch.OverHeel:
		return "plain rounds"
	case stitch.OverMound:
		return "palm"
	}
	return part.Words()
}

// endWords says how a section lies: "palm, easy", or "plain rounds, easy, then snug".
func endWords(e picture.End) string {
	text := placeWords(e.Section) + ", " + e.Bands[0].Words()
	if last := e.Bands[len(e.Bands)-1]; last != e.Bands[0] {
		text += ", then " + last.Words()
	}
	return text
}

// fitHeadline says in a sentence where the mitt is snug, where easy, and where
// it is neither as it should be: "Snug at wrist and hand, easy round the palm."
func (a Answer) fitHeadline() string {
	var order []fit.Band
	at := map[fit.Band][]string{}
	for _, s := range a.Out.Summary.Sites {
		band := a.Out.Bands.Of(s.Body/s.Fabric - 1)
		if len(at[band]) == 0 {
			order = append(order, band)
		}
		at[band] = append(at[band], siteWords(s))
	}
	a.gatherFingers(at)
	var parts []string
	for _, band := range order {
		parts = append(parts, band.Words()+whereWords(at[band]))
	}
	if len(order) == 1 {
		parts[0] = order[0].Words() + " all over"
	}
	text := strings.Join(parts, ", ")
	return capital(text) + "."
}

// whereWords joins places to the end of a sentence: " round the palm".
func whereWords(places []string) string {
	word := " at "
	if places[0] == "palm" {
		word = " round "
	}
	if len(places) == 1 {
		return word + "the " + places[0]
	}
	return word + words.Listed(places)
}
