package sheet

import (
	"strings"

	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

// Defaults of a sheet that leaves them out.
const (
	DefaultKind   = mitt.Fingerless
	DefaultUnit   = units.CM
	DefaultRepeat = 2
	DefaultRib    = 2
)

// Unit is the unit in which the lengths are typed.
func (s Sheet) Unit() units.Unit {
	if u := units.Unit(s.Given(PathUnit)); u.Size() != 0 {
		return u
	}
	return DefaultUnit
}

// Kind is the kind of mitt, as typed.
func (s Sheet) Kind() mitt.Kind {
	if k := s.Given(PathKind); k != "" {
		return mitt.Kind(k)
	}
	return DefaultKind
}

// Request turns the typed texts into what a plan is made from. Every text
// that can't be used is a fault of its own, in the order of the sheet, those
// of Settings among them.
func (s Sheet) Request() (*mitt.Request, error) {
	r := reader{sheet: s, unit: s.Unit()}
	r.words()
	req := &mitt.Request{Kind: s.Kind()}
	swatches, variation := r.swatches(), r.variation()
	req.Hand = r.hand()
	req.Ease = mitt.Ease{
		Hand: r.ease("ease.hand"), Cuff: r.ease("ease.cuff"), Gusset: r.ease("ease.gusset"), Palm: r.ease("ease.palm"),
		ThumbAdded: r.length("ease.thumb_girth_added"),
	}
	req.Lengths = mitt.Lengths{
		Cuff: r.length("length.cuff"), CuffPlain: r.length("length.cuff_plain"),
		AboveGusset: r.length("length.above_gusset"), Edging: r.length("length.edging"),
		Thumb: r.length("length.thumb"), ThumbEdging: r.length("length.thumb_edging"),
	}
	req.Stitch = mitt.Stitches{
		Repeat:   r.wholeOr("stitch.repeat", 1, maxWhole, DefaultRepeat),
		Offset:   r.wholeOr("stitch.offset", -maxWhole, maxWhole, 0),
		Rib:      r.wholeOr("stitch.rib", 1, maxWhole, DefaultRib),
		OneSided: !r.flag("stitch.both_edges", true),
	}
	req.Follow = mitt.Follow(r.choice("schedule.follows", tree.find("schedule").find("follows")))
	req.Lambda = r.amount("schedule.lambda", mitt.MaxLambda)
	r.pins(&req.Pins)
	req.Worked = r.worked()
	r.settings()
	if err := r.faults.Err(); err != nil {
		return nil, err
	}
	var err error
	req.Gauge, err = gauge.Of(swatches, variation, "gauge.swatches")
	return req, err
}

// maxWhole bounds every count of stitches.
const maxWhole = 1_000

// words checks the choices that stand at the top of the sheet.
func (r *reader) words() {
	for _, path := range []string{"format", PathKind, PathUnit, PathSecond} {
		r.choice(path, tree.find(path))
	}
	if r.sheet.Given(PathKind) == "glove" {
		r.faults.Add(PathKind, "is glove, which can't be planned yet; write fingerless, mitten or mitten_without_thumb")
	}
}

func (r *reader) hand() hand.Hand {
	h := hand.Hand{
		Circumference: r.circumference(),
		Wrist:         r.length(hand.FieldWrist), Thumb: r.length(hand.FieldThumb),
		Length: r.length(hand.FieldLength), GussetLength: r.length(hand.FieldGussetLength),
		ThumbLength: r.length(hand.FieldThumbLength), WristToCrotch: r.length(hand.FieldWristToCrotch),
		Palm: r.length(hand.FieldPalm), Breadth: r.length(hand.FieldBreadth),
		Size: r.number(hand.FieldSize, ""),
	}
	if ref := r.choice(hand.FieldReference, tree.find("hand").find("reference")); ref != "both" {
		h.Reference = hand.Reference(ref)
	}
	h.Profile = r.points(hand.FieldProfile, "the base of the gusset")
	h.Above = r.points(hand.FieldAbove, "where the thumb parts")
	return h
}

// circumference must be measured, unless something else is meant to give it:
// a size, a breadth, or, where it is said whose averages to take, the length.
func (r *reader) circumference() units.Length {
	given := func(path string) bool { return r.sheet.Given(path) != "" }
	if given(hand.FieldSize) || given(hand.FieldBreadth) || given(hand.FieldReference) && given(hand.FieldLength) {
		return r.length(hand.FieldCircumference)
	}
	return r.required(hand.FieldCircumference, "measure round the knuckles without the thumb")
}

func (r *reader) swatches() []gauge.Swatch {
	const path = "gauge.swatches"
	var swatches []gauge.Swatch
	members := tree.find("gauge").find("swatches")
	for i := range r.sheet.Rows(path) {
		at := row(path, i)
		swatches = append(swatches, gauge.Swatch{
			Stitches:  r.number(at+".stitches", "count the stitches over the width"),
			Width:     r.required(at+".width", "give the width over which the stitches were counted"),
			Rounds:    r.number(at+".rounds", ""),
			Height:    r.length(at + ".height"),
			Flat:      r.choice(at+".worked", members.find("worked")) == "flat",
			Washed:    r.flag(at+".washed", false),
			OnNeedles: r.flag(at+".on_needles", false),
			CountedTo: r.numberOr(at+".counted_to", 0.5),
			Piece:     r.sheet.Given(at + ".piece"),
		})
		r.date(at + ".date")
	}
	return swatches
}

// variation is how unevenly the hand knits, as a standard deviation.
func (r *reader) variation() float64 {
	const path = "gauge.hand_variation"
	v := r.share(path)
	if v == nil {
		return gauge.HandVariation
	}
	if *v < 0 || *v > 0.2 {
		r.faults.Add(path, "is %g; write a share from 0 to 0.2, or a percentage: 1.5 %%", *v)
	}
	return *v
}

// pins reads the fixed numbers; mitt knows their names and ranges.
func (r *reader) pins(pins *mitt.Pins) {
	for _, m := range tree.find("pins").members {
		path := join("pins", m.key)
		text := r.sheet.Given(path)
		switch {
		case text == "":
		case m.kind == rhythm:
			pins.Rhythm = r.rhythm(path, text)
		case m.kind == rounds:
			pins.IncreaseRounds = r.rounds(path)
		default:
			n, ok := wholeOf(text)
			if low, high := mitt.PinRange(m.key); !ok || n < low || n > high {
				r.faults.Add(path, "is %s; write a whole number from %d to %d", clip(text), low, high)
				continue
			}
			pins.Set(m.key, n)
		}
	}
}

func (r *reader) rhythm(path, text string) []int {
	var intervals []int
	for _, part := range strings.Split(text, ",") {
		n, ok := wholeOf(strings.TrimSpace(part))
		if !ok || n < mitt.ShortestInterval {
			r.faults.Add(path, "is %s; write the rounds from one increase round to the next, 2 or more: 3, or 2, 3 to take turns", clip(text))
			return nil
		}
		intervals = append(intervals, n)
	}
	if len(intervals) > maxProfile {
		r.faults.Add(path, "has %d intervals; %d are the most", len(intervals), maxProfile)
		return nil
	}
	return intervals
}

// Hand is the hand alone, as far as it can be read, for a drawing before the
// rest of the sheet is right; ok is false while it can't be drawn.
func (s Sheet) Hand() (hand.Hand, bool) {
	r := reader{sheet: s, unit: s.Unit()}
	h := r.hand()
	return h, len(r.faults) == 0 && len(h.Check()) == 0
}
