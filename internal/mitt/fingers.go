package mitt

import (
	"thenar/internal/division"
	"thenar/internal/hand"
	"thenar/internal/stitch"
)

// FingerEnd is how far a finger of a glove, or its thumb, is covered.
type FingerEnd string

// The ends. The empty one is full.
const (
	FullFinger FingerEnd = "full" // to the tip, closed
	HalfFinger FingerEnd = "half" // 0.45 of its length, with an edging
	OpenFinger FingerEnd = "open" // bound off after openRounds
)

// closed reports whether the end is a tip.
func (e FingerEnd) closed() bool { return or(e, FullFinger) == FullFinger }

// Fingers is how the hand of a glove is divided into four, and what covers each.
type Fingers struct {
	Each   [division.Fingers]Finger // from the index on
	Bridge [division.Bridges]int    // x, cast on between one finger and the next
	Lower  int                      // rounds from the little finger to where the others part
	Cost   float64                  // of the division, in stitches²
	Cap    *Cap                     // over half fingers; nil: none
}

// Finger is one finger of a glove. Its FirstRound is n = f + k and the bridges beside it.
type Finger struct {
	Palm, Back int // f, k: what it takes of the palm and of the back
	End        FingerEnd
	Tube
}

// fingerParts are the sections of the fingers, from the index on.
var fingerParts = [division.Fingers]stitch.Part{stitch.Index, stitch.Middle, stitch.Ring, stitch.Little}

// inOrderWorked is the order in which fingers are worked: the little finger first.
var inOrderWorked = [division.Fingers]int{division.Little, division.Ring, division.Middle, division.Index}

// MostCorners is how many stitches may be decreased at the corners of a finger.
const MostCorners = maxDecreases

// FingerOf returns the finger that a section covers, and whether it covers one.
func FingerOf(part stitch.Part) (f hand.Finger, ok bool) {
	for i, p := range fingerParts {
		if p == part {
			return hand.Finger(i), true
		}
	}
	return 0, false
}

// PartOfFinger returns the section that covers a finger.
func PartOfFinger(f hand.Finger) stitch.Part { return fingerParts[f] }

// PathFinger is the path in a sheet of how far a finger is covered.
func PathFinger(f hand.Finger) string { return "fingers." + fingerNames[f] }

// Fingered reports whether the mitt has fingers of its own.
func (p *Plan) Fingered() bool { return p.Fingers != nil }

// Fingered reports whether a mitt of this kind has fingers of its own.
func (k Kind) Fingered() bool { return k.info().fingered }

// thumbClosed reports whether the thumb ends in a tip.
func (r *Request) thumbClosed() bool {
	kind := r.Kind.info()
	return kind.thumbClosed && (!kind.fingered || r.Make.ThumbEnd.closed())
}
