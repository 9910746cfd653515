package sheet

import (
	"thenar/internal/gauge"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

// What a sheet means that leaves these out.
const (
	DefaultKind   = mitt.Fingerless
	DefaultUnit   = units.CM
	DefaultRepeat = 2
	DefaultRib    = 2
)

// Unit returns the unit in which the lengths are typed.
func (s Sheet) Unit() units.Unit {
	if u := units.Unit(s.Given(PathUnit)); u.Size() != 0 {
		return u
	}
	return DefaultUnit
}

// Kind returns the kind of mitt as typed, or the default, made as its thumb is.
func (s Sheet) Kind() mitt.Kind {
	kind := DefaultKind
	if k := s.Given(PathKind); k != "" {
		kind = mitt.Kind(k)
	}
	return kind.By(mitt.Construction(s.Given(mitt.PathConstruction)))
}

// Names says what the numbers of the mitt are called, as far as the sheet says how it is
// made: a choice that can't be read is as if it were left out.
func (s Sheet) Names() mitt.Names { return mitt.Names{Kind: s.Kind(), Make: s.reader().made()} }

// Request turns the typed texts into what a plan is made from. Every text that
// can't be used is a fault of its own, in the order of the sheet; texts of
// Settings are checked too.
func (s Sheet) Request() (*mitt.Request, error) {
	r := s.reader()
	r.choices()
	swatches := r.gauge()
	req := r.decisions()
	if err := r.faults.Err(); err != nil {
		return nil, err
	}
	var err error
	req.Gauge, err = swatches.combined()
	return req, err
}

// At returns the request at a given gauge, in stitches and rounds per mm, which
// takes the place of the swatches.
func (s Sheet) At(stitches, rounds float64) (*mitt.Request, error) {
	r := s.reader()
	r.choices()
	r.variation()
	req := r.decisions()
	if err := r.faults.Err(); err != nil {
		return nil, err
	}
	req.Gauge = gauge.Gauge{Stitches: stitches, Rounds: rounds, Treated: true}
	return req, nil
}

// decisions reads all sections but the gauge.
func (r *reader) decisions() *mitt.Request {
	req := &mitt.Request{Kind: r.sheet.Kind(), Make: r.made(), Hand: r.hand(), Ease: r.eases(), Lengths: r.lengths(), Stitch: r.stitches()}
	req.Follow, req.Lambda = r.schedule()
	req.Pins, req.Progress = r.pins(), r.progress()
	r.settings()
	r.multiples(r.repeats(), &req.Stitch)
	r.knitted("right")
	r.knitted("left")
	return req
}

// maxWhole is the greatest count of stitches that may be given.
const maxWhole = 1_000

// Choices checks the choices of format, kind, unit, terms and second mitt.
func (s Sheet) Choices() error {
	r := s.reader()
	r.choices()
	return r.faults.Err()
}

func (r *reader) choices() {
	for _, path := range []string{"format", PathKind, PathUnit, PathTerms, PathSecond} {
		r.choice(path, tree.find(path))
	}
}

func (r *reader) eases() mitt.Ease {
	return mitt.Ease{
		Hand: r.ease("ease.hand"), Cuff: r.ease("ease.cuff"), Gusset: r.ease("ease.gusset"), Palm: r.ease("ease.palm"), Cap: r.ease(mitt.PathCapEase),
		ThumbAdded: r.length("ease.thumb_girth_added"),
	}
}

func (r *reader) lengths() mitt.Lengths {
	return mitt.Lengths{
		Cuff: r.length("length.cuff"), CuffPlain: r.length("length.cuff_plain"),
		AboveGusset: r.length("length.above_gusset"), Edging: r.length("length.edging"),
		Thumb: r.length("length.thumb"), ThumbEdging: r.length("length.thumb_edging"), Cap: r.length(mitt.PathCapLength),
	}
}

func (r *reader) stitches() mitt.Stitches {
	st := mitt.Stitches{
		Repeat:   r.wholeOr("stitch.repeat", 1, maxWhole, DefaultRepeat),
		Offset:   r.wholeOr("stitch.offset", -maxWhole, maxWhole, 0),
		OneSided: !r.flag("stitch.both_edges", true),
	}
	st.Rib, st.Knits = r.rib()
	return st
}

func (r *reader) schedule() (mitt.Follow, *float64) {
	const follows = "schedule.follows"
	return mitt.Follow(r.choice(follows, find(follows))), r.amount("schedule.lambda", mitt.MaxLambda)
}
