package view

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/repeat"
	"thenar/internal/sheet"
	"thenar/internal/words"
)

// changedRepeats returns the motifs to look at: those that came out otherwise, and those that
// lie nowhere though they are not turned off.
func (a Answer) changedRepeats() []project.Laid {
	var list []project.Laid
	for _, l := range a.Out.Repeats {
		if !l.Off && (l.Since() != "" || l.Came.Nowhere != "") {
			list = append(list, l)
		}
	}
	return list
}

// motifsLie says how many motifs lie otherwise than before.
func motifsLie(n int) string {
	if n == 1 {
		return "a motif lies differently now"
	}
	return words.Plural(n, "motif") + " lie differently now"
}

// motifsSaid says what became of the motifs, in one sentence, and whether they are to be looked
// at; empty without any.
func (a Answer) motifsSaid() (said string, look bool) {
	if n := len(a.Out.Drifted); n > 0 {
		said, look = saidOf(n, driftedOne, driftedSome), true
	}
	if n := len(a.changedRepeats()); n > 0 {
		return strings.TrimSpace(motifsLie(n) + ". " + said), true
	}
	if look {
		return said, true
	}
	const few = 3
	var list []string
	for _, l := range a.Out.Repeats {
		if !l.Off {
			list = append(list, repeatName(l))
		}
	}
	switch n := len(list); {
	case n == 0:
		return "", false
	case n > few:
		return words.Plural(n, "motif") + " lie as they did.", false
	case n > 1:
		return capital(words.Listed(list)) + " lie as they did.", false
	}
	return capital(list[0]) + " lies as it did.", false
}

// repeatName returns what a motif is called in a sentence: its name, or its number.
func repeatName(l project.Laid) string {
	if l.Name != "" {
		return "“" + l.Name + "”"
	}
	return l.Called(l.Place)
}

// cameWords says what a motif came to: "“birds”: 6 → 7 times. 7 times, 4 times up."
func (a Answer) cameWords(l project.Laid) string {
	text := repeatName(l) + ": "
	if since := l.Since(); since != "" && l.Came.Nowhere == "" {
		text += since + ". Now "
	}
	return text + l.Words(a.Chart.noun()) + "."
}

// setOf returns the value of a button that sets a field of a repeat.
func setOf(at int, key, text string) string { return sheet.RepeatPath(at, key) + "=" + text }

// repeatCures returns what sets a changed motif right at a press.
func (a Answer) repeatCures(l project.Laid) []Choice {
	var list []Choice
	if l.Came.Plain() > 1 && l.Set != repeat.Centred && l.Over != repeat.Gusset {
		list = append(list, Choice{setOf(l.At, "set", string(repeat.Centred)), "share them at both ends"})
	}
	if counts := a.Out.Counts[l.At]; l.Came.Plain() > 0 {
		best, ok := nearestCount(counts.List)
		switch {
		case counts.Kept != nil && l.Set != repeat.KeptMultiple:
			list = append(list, a.keepHand(l, *counts.Kept))
		case ok && !best.Now:
			text := fmt.Sprintf("fix the %s at %s: %s", countedPart(l), words.Plural(best.Stitches, "stitch"), a.offWanted(best))
			list = append(list, Choice{keptAt(best), text})
		}
	}
	if l.Came.Nowhere != "" {
		return append(list, Choice{setOf(l.At, "off", "true"), "turn it off"})
	}
	return append(list, Choice{setOf(l.At, "was", ""), "fine as it is"})
}

// nearestCount returns the count that fits best.
func nearestCount(list []project.WholeCount) (best project.WholeCount, ok bool) {
	for _, c := range list {
		if c.Why == "" && (!ok || math.Abs(c.Off) < math.Abs(best.Off)) {
			best, ok = c, true
		}
	}
	return best, ok
}

// keepHand keeps the hand to the multiple of a motif, at what that comes to.
func (a Answer) keepHand(l project.Laid, kept project.WholeCount) Choice {
	text := fmt.Sprintf("keep the hand to a multiple of %d: %d, %s", l.Motif.Wide, kept.Stitches, a.offWanted(kept))
	return Choice{setOf(l.At, "set", string(repeat.KeptMultiple)), text}
}

// offWanted says how far a count is off what was wanted.
func (a Answer) offWanted(c project.WholeCount) string {
	return a.offWords(c.Off, "tighter than wanted", "looser than wanted")
}

// keptAt returns the value of a button that fixes a count.
func keptAt(c project.WholeCount) string { return fmt.Sprintf("%s=%d", c.Number.Path(), c.Stitches) }

// countedPart returns the part of which the count says how often a motif goes round.
func countedPart(l project.Laid) string {
	if l.OnHand() {
		return "hand"
	}
	return l.Section.Words()
}

// countWords says what a count comes to.
func (a Answer) countWords(c project.WholeCount) string {
	if c.Why != "" {
		return c.Why
	}
	text := words.Times(c.Times) + ", " + a.offWanted(c)
	if c.Base > 0 {
		text += fmt.Sprintf("; gusset %d → %d", c.Base, c.Gusset)
	}
	if c.Top > 0 {
		text += "; top " + strconv.Itoa(c.Top) + " rounds"
	}
	if c.Now {
		text += " (now)"
	}
	return text
}

// strip draws how a motif meets itself.
func (a Answer) strip(s repeat.Strip) *draw.Scene {
	return picture.MotifStrip(s, a.Out.Charts.Palette)
}

// symmetryWords says with which offset a motif is the same on both sides of the back.
func symmetryWords(s repeat.Strip, offset int) string {
	same := fmt.Sprintf("%d of %d pairs of stitches are", s.Same, s.Of)
	if s.Same == s.Of {
		same = "every stitch is"
	}
	if s.Best == offset {
		return fmt.Sprintf("It lies best so: on both sides of the middle of the back %s the same.", same)
	}
	return fmt.Sprintf("Moved on by %d, %s the same on both sides of the middle of the back.", s.Best, same)
}
