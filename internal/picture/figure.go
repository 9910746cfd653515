package picture

import (
	"math"

	"thenar/internal/hand"
	"thenar/internal/mitt"
)

// Flatness factors. A girth g is drawn with the breadth
//
//	g/2 · f,  f = breadth / (girth/2)
//
// where f is below 1 since a hand is thick. Hand: girth is 2.40 × breadth (ANSUR II,
// Gordon et al. 2014); wrist: 57.0 mm broad and 151.4 mm round; thumb at its joint: 24.0
// and 72.3 mm; index finger: 19.9 and 61.2 mm (means of Greiner 1991, NATICK/TR-92/011).
// Fabric is drawn with the factor of what it covers, so that the two can be compared.
const (
	flatHand   = 2 / 2.40
	flatWrist  = 2 * 57.0 / 151.4
	flatThumb  = 2 * 24.0 / 72.3
	flatFinger = 2 * 19.9 / 61.2
)

// finger is a finger as it is drawn, in mm: the height of its root, its length, and its
// girth at the middle joint.
type finger struct{ root, long, girth float64 }

// drawnOrder are the fingers as they are drawn, from the little finger.
var drawnOrder = [...]hand.Finger{hand.Little, hand.Ring, hand.Middle, hand.Index}

// proportions are the four fingers of a hand, as measured or filled, in the order drawn, and
// the heights of the three crotches between them.
type proportions struct {
	fingers [len(drawnOrder)]finger
	crotch  [len(drawnOrder) - 1]float64
}

// proportionsOf returns the fingers of a hand. A middle finger that was not measured ends
// where the hand does.
func proportionsOf(h *hand.Hand) (of proportions) {
	bare := *h
	bare.Fingers = hand.Fingers{}
	usual, _ := bare.FillFingers()
	filled, _ := h.FillFingers()
	for i, f := range drawnOrder {
		tip := filled.Tip(f).MM()
		long := filled.Length[f].MM()
		root := tip - long
		if f == hand.Middle && filled.Length[f] == usual.Length[f] {
			long = h.Length.MM() - root
		}
		of.fingers[i] = finger{root, long, filled.Girth[f].MM()}
	}
	for i := range of.crotch {
		of.crotch[i] = filled.Crotch[drawnOrder[i+1]].MM()
	}
	return of
}

// leans holds the slants of the fingers in degrees towards the thumb (our judgement): at
// ease, with the tips together in a mitten, or apart in a glove.
type leans [len(drawnOrder)]float64

var (
	atEase   = leans{-10, -3.5, 0.5, 5.5}
	inMitten = leans{8, 2, -1, -11}
	inGlove  = leans{-15, -5, 1.5, 9} // apart, so that each finger of cloth is seen
)

// thumbLean is the angle between thumb and hand in radians (our judgement: a
// hand at ease).
const thumbLean = 34 * math.Pi / 180

// figure is a hand as it is drawn, in mm.
type figure struct {
	h      *hand.Hand
	long   float64 // the hand's length
	palm   float64 // half its breadth
	wrist  float64 // half the breadth of the wrist
	crotch point   // where the thumb parts
	root   point   // of the thumb's axis, beside the crotch
	along  point   // the thumb's direction, of length 1
	across point   // square to it, away from the hand
	thumb  float64 // half the thumb's breadth at the joint
	leans  leans
	of     proportions
	tucked bool // the thumb lies along the palm, inside the mitt
	lying  bool // no hand is in the mitt

	fingered bool   // its fingers are measured by themselves
	apart    bool   // and nothing else is
	bone     string // what the tape from the bone at the wrist to the thumb is called
	room     room
	lift     float64 // how much higher than usual the mitt sits
}

// room is how far hand and mitt reach at the places of tapes, in mm.
type room struct {
	base  float64 // from the middle, at the base of the gusset
	thumb float64 // from the thumb's axis, at its root
	tip   float64 // up the thumb
}

// posed returns the figure of the hand in the pose that its mitt asks for.
func posed(p *mitt.Plan) *figure {
	f := newFigure(&p.Hand)
	switch f.tucked, f.fingered = p.Tucked(), p.Fingered(); {
	case f.fingered:
		f.leans = gloved(p)
	case p.Kind.Closed():
		f.leans = inMitten
	}
	if !p.Gusseted() {
		f.bone = "bone to thumb"
	}
	return f
}

// newFigure returns the figure of a hand whose measurements are all known or filled.
func newFigure(h *hand.Hand) *figure {
	sin, cos := math.Sincos(thumbLean)
	f := &figure{
		h: h, long: h.Length.MM(),
		palm: h.Circumference.MM() / 4 * flatHand, wrist: h.Wrist.MM() / 4 * flatWrist,
		thumb: h.Thumb.MM() / 4 * flatThumb,
		along: point{sin, cos}, across: point{cos, -sin}, leans: atEase, of: proportionsOf(h), bone: "gusset length",
	}
	f.crotch = point{0.95 * f.palm, h.WristToCrotch.MM()}
	f.root = f.crotch.plus(f.across.times(rootWidth * f.thumb))
	f.room = room{f.wrist, rootWidth * f.thumb, h.ThumbLength.MM()}
	return f
}

// rootWidth is how much wider the thumb is at its root than at its joint.
const rootWidth = 1.12

// onThumb returns the point so many mm up the thumb from the crotch and so many mm out
// from its axis.
func (f *figure) onThumb(up, out float64) point {
	return f.root.plus(f.along.times(up)).plus(f.across.times(out))
}

// flatness returns the flatness factor at a height: the wrist's up to the crease, then
// rising evenly to the hand's at a quarter of the hand's length.
func (f *figure) flatness(y float64) float64 {
	share := min(max(y/(0.25*f.long), 0), 1)
	return flatWrist + share*(flatHand-flatWrist)
}

func unit(p point) point {
	if n := length(p); n > 0 {
		return p.times(1 / n)
	}
	return p
}

func length(p point) float64 { return math.Hypot(p.x, p.y) }
