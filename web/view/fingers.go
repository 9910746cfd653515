package view

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/fit"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// fingerLine is what a plan says of one finger, or of the upper hand between two of them.
type fingerLine struct {
	Name    string
	Key     string
	Along   string         // stitches along the finger before
	Numbers []words.Reason // of the heads in order; the zero one where there is none
	Fit     string         // how far off it is, and how sure
	Tight   bool
}

// shortEnds say of a finger that is not covered to its tip how far it is.
var shortEnds = map[mitt.FingerEnd]string{mitt.HalfFinger: ", half", mitt.OpenFinger: ", open"}

// fingerHeads are the heads of the lines, as the form has them.
var fingerHeads = pinTable().Heads

// fingerLines returns the fingers of a plan in the order worked; none without fingers.
func (a Answer) fingerLines() []fingerLine {
	if a.Out == nil || !a.Out.Plan.Fingered() {
		return nil
	}
	reasons := map[mitt.Number]words.Reason{}
	for _, r := range a.Out.Reasons {
		reasons[r.Of] = r
	}
	var list []fingerLine
	for _, f := range asWorked {
		part := mitt.PartOfFinger(f)
		line := fingerLine{Name: fingerName(f) + shortEnds[a.Out.Plan.Fingers.Each[f].End], Key: string(part)}
		for _, n := range numbersOf(f) {
			line.Numbers = append(line.Numbers, reasons[n])
		}
		line.Fit, line.Tight = a.fingerFit(f)
		each := &a.Out.Plan.Fingers.Each[f]
		if n := each.FirstRound - each.Palm - each.Back - bridgeAfter(a.Out.Plan, f); n > 0 {
			line.Along = fmt.Sprint(n)
		}
		list = append(list, line)
		if f == hand.Little {
			list = a.lineOfRounds(list, reasons, mitt.LittleLowerRounds, mitt.PlaceUpperHand)
		}
	}
	list = a.lineOfRounds(list, reasons, mitt.CapRounds, mitt.PlaceCapLength)
	return a.lineOfRounds(list, reasons, mitt.CapTopRounds, mitt.PlaceTop)
}

// bridgeAfter returns how many stitches a finger casts on for the one after it.
func bridgeAfter(p *mitt.Plan, f hand.Finger) int {
	if f == hand.Index {
		return 0
	}
	return p.Fingers.Bridge[f-1]
}

// lineOfRounds appends the line of what is no finger, and has its rounds alone; nothing where
// the plan has none of it.
func (a Answer) lineOfRounds(list []fingerLine, reasons map[mitt.Number]words.Reason, n mitt.Number, long mitt.Place) []fingerLine {
	r, on := reasons[n]
	if !on {
		return list
	}
	line := fingerLine{Name: capital(r.Part.Words()), Key: string(r.Part), Numbers: make([]words.Reason, len(fingerHeads))}
	line.Numbers[len(fingerHeads)-1] = r
	if long != mitt.PlaceTop { // of which a cap's has no wish of its own
		line.Fit = "Length " + a.offWords(a.Out.Plan.Off[long], "shorter", "longer") + "."
	}
	if n == mitt.CapRounds {
		line.Fit = "Girth " + a.offWords(a.Out.Plan.Off[mitt.PlaceCap], "tighter", "looser") + ", " + lower(line.Fit)
	}
	return append(list, line)
}

// fingerFit says how far a finger's tube is off what was wanted, round and long.
func (a Answer) fingerFit(f hand.Finger) (says string, tight bool) {
	girth, length := mitt.PlacesOfFinger(f)
	off := &a.Out.Plan.Off
	says = "Girth " + a.offWords(off[girth], "tighter", "looser") + ", length " + a.offWords(off[length], "shorter", "longer")
	for _, s := range a.allSure() {
		if s.Section == mitt.PartOfFinger(f) {
			sure := s.Says
			if s.Chance >= likely { // else it says when to try it on
				sure = "Fit: " + lower(sure)
			}
			return strings.TrimSpace(says + ". " + sure + " " + s.unmeasured()), a.Out.Bands.Of(s.Body/s.Fabric-1) == fit.TooTight
		}
	}
	return says + ".", false
}

// gatherFingers takes the four fingers together in what is said of bands: where all lie
// alike, or lie well, they need no names.
func (a Answer) gatherFingers(at map[fit.Band][]string) {
	if !a.Out.Plan.Fingered() {
		return
	}
	names := map[string]bool{}
	for _, f := range eachFinger {
		names[mitt.PartOfFinger(f).Words()] = true
	}
	for band, places := range at {
		if slices.Contains(places, stitch.Hand.Words()) {
			places = slices.DeleteFunc(places, func(p string) bool { return p == stitch.UpperHand.Words() })
			at[band] = places
		}
		n := 0
		for _, p := range places {
			if names[p] {
				n++
			}
		}
		if n < 2 || n < len(names) && (band == fit.TooTight || band == fit.TooLoose) {
			continue
		}
		together := "fingers"
		if n < len(names) {
			together = fmt.Sprintf("%s fingers", inLetters(n))
		}
		first := slices.IndexFunc(places, func(p string) bool { return names[p] })
		rest := slices.DeleteFunc(slices.Clone(places), func(p string) bool { return names[p] })
		at[band] = slices.Insert(rest, first, together)
	}
}

// present returns the numbers of a line that the plan has.
func (l fingerLine) present() []words.Reason {
	return slices.DeleteFunc(slices.Clone(l.Numbers), func(r words.Reason) bool { return r.Number == "" })
}

// fixed reports whether a number of the line is fixed.
func (l fingerLine) fixed() bool {
	return slices.ContainsFunc(l.Numbers, func(r words.Reason) bool { return r.Fixed })
}

// numberShown is a number of the line as the table has it. Most fingers have none decreased.
func numberShown(r words.Reason) string {
	if r.Number == "0" {
		return "–"
	}
	return r.Number
}

// said is the line in words: "along 5, palm 5, back 5, bridge 4, in all 19, fewer 0, rounds 24".
func (l fingerLine) said() string {
	text := ""
	if l.Along != "" {
		text = fmt.Sprintf(" along %s,", l.Along)
	}
	for i, r := range l.Numbers {
		if r.Number != "" {
			text += fmt.Sprintf(" %s %s,", lower(fingerHeads[i]), r.Number)
		}
	}
	return text
}

// divided says how the hand is divided.
func (a Answer) divided() string {
	p := a.Out.Plan
	palm, back, bridges := 0, 0, 0
	for i := range p.Fingers.Each {
		palm, back = palm+p.Fingers.Each[i].Palm, back+p.Fingers.Each[i].Back
	}
	for _, x := range p.Fingers.Bridge {
		bridges += x
	}
	return fmt.Sprintf("The hand’s %s, %d of the palm and %d of the back, become four fingers. Bridges of %s stand between them.", words.Plural(palm+back, "stitch"), palm, back, words.Plural(bridges, "stitch"))
}
