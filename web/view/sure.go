package view

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"thenar/internal/fit"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// sure is how sure the fit is at a place, in words.
type sure struct {
	fit.Site
	Place, Says, Why string
}

// Chances from which on a fit is called so (our own words for them). Below the
// last it is tried on before there is no easy way back.
const (
	almostCertain = 0.95
	veryLikely    = 0.8
	likely        = 0.5
)

// unmeasured repeats that a place's girth was filled in; nothing where it was measured.
func (s sure) unmeasured() string {
	if s.Why == filledInWords {
		return s.Why
	}
	return ""
}

// sure returns the places of the fit, the least sure first, but the fingers, which have
// lines of their own. What only follows from another place comes last, since nobody can
// change it by itself.
func (a Answer) sure() []sure {
	return slices.DeleteFunc(a.allSure(), func(s sure) bool {
		_, finger := mitt.FingerOf(s.Section)
		return finger
	})
}

func (a Answer) allSure() []sure {
	var list []sure
	for _, s := range a.Out.Summary.Sites {
		one := sure{Site: s, Place: siteWords(s), Why: a.unsureWords(s)}
		switch {
		case s.Chance >= almostCertain:
			one.Says = "Almost certain."
		case s.Chance >= veryLikely:
			one.Says = "Very likely."
		case s.Chance >= likely:
			one.Says = "Likely."
		default:
			one.Says = a.Out.Terms.Say("Try it on " + a.beforeWords(s.Section) + ".")
		}
		list = append(list, one)
	}
	slices.SortStableFunc(list, func(a, b sure) int {
		if by := follows(a) - follows(b); by != 0 {
			return by
		}
		return cmp.Compare(a.Chance, b.Chance)
	})
	return list
}

// follows returns 1 for a place that has the stitches of another, 0 for all others.
func follows(s sure) int {
	if s.Section.BelowFingers() {
		return 1
	}
	return 0
}

// siteWords returns what a place of the fit is called in a sentence.
func siteWords(s fit.Site) string { return strings.TrimSuffix(s.Name, " with thumb") }

// beforeWords says by when a place should be tried on.
func (a Answer) beforeWords(part stitch.Part) string {
	switch part.Over() {
	case stitch.OverWrist, stitch.OverHeel:
		if !a.Out.Plan.Gusseted() {
			return "before the hand"
		}
		return "before the gusset"
	case stitch.OverMound:
		switch {
		case a.Out.Mitt.SeamByThumb():
			return "before the opening ends"
		case a.Out.Plan.OpeningRows() > 0:
			return "before you join it again"
		}
		return "before the thumb"
	case stitch.OverDigit:
		return "before you fasten it off"
	}
	switch {
	case part.BelowFingers():
		return "before the other fingers"
	case a.Out.Plan.Fingered():
		return "before the fingers"
	}
	return "before you bind off"
}

const filledInWords = "Filled in, not measured."

// girthField returns the field of the girth that a part goes round.
func girthField(part stitch.Part) string {
	if f, ok := mitt.FingerOf(part); ok {
		return f.FieldGirth()
	}
	return map[stitch.Over]string{
		stitch.OverWrist: hand.FieldWrist, stitch.OverMound: hand.FieldPalm, stitch.OverHand: hand.FieldCircumference, stitch.OverDigit: hand.FieldThumb,
	}[part.Over()]
}

// unsureWords says what the plan knows least of at a place: that it was not
// measured, or that whole stitches do not allow it to be nearer.
func (a Answer) unsureWords(s fit.Site) string {
	field := girthField(s.Section)
	for _, f := range a.Out.Plan.Filled {
		if f.Field == field {
			return filledInWords
		}
	}
	off := s.Fabric - s.Wanted
	if s.Section.BelowFingers() {
		text := "It has the hand’s stitches without the little finger’s"
		if math.Abs(off) >= 1.5 {
			text += ": " + a.offWords(off, "tighter than wanted", "looser than wanted")
		}
		return text + "."
	}
	if math.Abs(off) >= 1.5 {
		return capital(a.offWords(off, "tighter than wanted.", "looser than wanted."))
	}
	return ""
}
