package mitt

import (
	"errors"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/units"
)

// fingersOnly are the parts that only a glove has.
var fingersOnly = []stitch.Part{stitch.Little, stitch.UpperHand, stitch.Ring, stitch.Middle, stitch.Index, stitch.Cap, stitch.CapTop}

// may reports whether the random pins of a request may fix n.
func (r *Request) may(n Number) bool { return r.Kind.Fingered() || table[n].needs != withFingers }

// halfGlove asks for a glove with half fingers, one of them decreased.
func halfGlove(h hand.Hand) *Request {
	r := request(Glove, per10(24, 32), h)
	r.Make.Fingers = [4]FingerEnd{HalfFinger, HalfFinger, HalfFinger, OpenFinger}
	r.Make.ThumbEnd, r.Make.Cap = HalfFinger, true
	for i := range r.Pins.Fingers {
		r.Pins.Fingers[i].Decreases = Fix(1 + i%3)
	}
	return r
}

// gloved makes a random request one for a glove.
func gloved(rng *rand.Rand, r *Request) {
	r.Kind, r.Make.Top, r.Make.Band, r.Make.Wedges, r.Make.Flat, r.Make.Direction = Glove, "", Pin{}, Pin{}, false, ""
	if r.Make.Construction == Slit || r.Make.Construction == NoThumb {
		r.Make.Construction = Straight
	}
	if rng.IntN(2) == 0 {
		r.Make.Level = rng.IntN(3) == 0
		for i := range r.Make.Fingers {
			r.Make.Fingers[i] = []FingerEnd{"", FullFinger, HalfFinger, OpenFinger}[rng.IntN(4)]
		}
		r.Make.ThumbEnd = []FingerEnd{"", HalfFinger, OpenFinger}[rng.IntN(3)]
		if rng.IntN(2) == 0 {
			r.Make.Cap, r.Make.Fingers = true, [4]FingerEnd{HalfFinger, HalfFinger, OpenFinger, HalfFinger}
			r.anyTopOf(rng)
		}
	}
	if rng.IntN(3) == 0 {
		for i := range r.Hand.Fingers.Girth {
			r.Hand.Fingers.Girth[i] = units.FromMM(r.Hand.Circumference.MM() * (0.25 + 0.1*rng.Float64()))
		}
	}
	if rng.IntN(4) == 0 {
		r.Pins.Fingers[rng.IntN(4)].Decreases = Fix(rng.IntN(4))
	}
}

// Random gloves are sound on both hands, and the left one is the right one turned over.
func TestGlovesAreSound(t *testing.T) {
	rng := rand.New(rand.NewPCG(24, 9))
	pl := New()
	made, fixed := 0, 0
	for range testenv.Cases(600, 10_000) {
		r := likely(rng)
		if rng.IntN(4) == 0 {
			r = wild(rng)
		}
		gloved(rng, r)
		p, err := pl.Plan(r)
		if err != nil {
			var fields fault.Fields
			require.True(t, errors.As(err, &fields), "%v", err)
			fixed++
			continue
		}
		made++
		requireGlove(t, p, r)
	}
	t.Logf("made %d, refused %d", made, fixed)
	require.Greater(t, made, 4*fixed)
}

func requireGlove(t *testing.T, p *Plan, about any) {
	t.Helper()
	m := p.Mitt()
	require.Empty(t, stitch.Ledger(m), "%+v", about)
	left := stitch.Mirror(m)
	require.Empty(t, stitch.Ledger(left), "%+v", about)
	require.Equal(t, m, stitch.Mirror(left), "%+v", about)
	palm, back := 0, 0
	for i, part := range fingerParts {
		f, s := &p.Fingers.Each[i], m.Section(part)
		palm, back = palm+f.Palm, back+f.Back
		require.Len(t, s.Rounds, f.Rounds, "%s: %+v", part, about)
		require.Equal(t, f.FirstRound, s.Rounds[0].Out(), "%s: %+v", part, about)
		if site := s.About.Site; site > 1 || f.Decreased == 0 {
			require.Equal(t, f.Stitches.N, s.Rounds[site-1].Out(), "%s, round %d: %+v", part, site, about)
		}
		require.Equal(t, f.End.closed(), s.Closed(), "%s: %+v", part, about)
	}
	require.Equal(t, []int{p.Bridge.HandAfter / 2, (p.Bridge.HandAfter + 1) / 2}, []int{palm, back}, "%+v", about)
}

// A glove is planned on from every round: what is knitted stays.
func TestWorkedGlovesStay(t *testing.T) {
	rng := rand.New(rand.NewPCG(24, 10))
	workedStays(t, testenv.Cases(500, 10_000), func(r *Request) { gloved(rng, r) }, stitch.Opening, stitch.Top, stitch.BelowThumb)
}

// What can't be divided says which fixed number is in the way, by its field, and what
// would work beside the others; a hand of too few stitches says how many there must be.
func TestDivisionFaults(t *testing.T) {
	r := request(Glove, per10(24, 32), hand.Hand{Circumference: 190 * mm, Length: 180 * mm})
	r.Pins.Fingers[hand.Index] = FingerPins{Palm: Fix(7), Back: Fix(9)}
	_, err := New().Plan(r)
	assert.ErrorContains(t, err, "pins.fingers.index.palm: is 7, which can't be beside pins.fingers.index.back; write 8")
	assert.ErrorContains(t, err, "pins.fingers.index.back: is 9, which can't be beside pins.fingers.index.palm; write 8")

	r = request(Glove, per10(5, 7), hand.Hand{Circumference: 150 * mm, Length: 180 * mm})
	r.Pins.HandStitches, r.Pins.GussetBase, r.Pins.Bridge = Fix(8), Fix(3), Fix(0)
	_, err = New().Plan(r)
	assert.ErrorContains(t, err, "pins.hand_stitches: makes 5 stitches above the thumb; four fingers need 8 or more")
	r.Pins.HandStitches = Pin{}
	_, err = New().Plan(r)
	assert.ErrorContains(t, err, "hand.hand_circumference: makes 5 stitches above the thumb; four fingers need 8 or more")
}

// What a glove can't be made with is refused at its field, with what works.
func TestGlovesRefused(t *testing.T) {
	for path, change := range map[string]func(*Request){
		PathConstruction:         func(r *Request) { r.Make.Construction = Slit },
		PathDirection:            func(r *Request) { r.Make.Direction = Down },
		PathFlat:                 func(r *Request) { r.Make.Flat = true },
		PathCap:                  func(r *Request) { r.Make.Cap = true },
		PathFinger(hand.Middle):  func(r *Request) { r.Make.Fingers[hand.Middle] = "long" },
		"kind":                   func(r *Request) { r.Hand.Length = 94 * mm },
		"pins.fingers.ring.palm": func(r *Request) { r.Pins.Fingers[hand.Ring].Palm = Fix(40) },
		"pins.fingers.index.stitches": func(r *Request) {
			r.Pins.Fingers[hand.Index] = FingerPins{Palm: Fix(6), Back: Fix(6), Stitches: Fix(12)}
		},
	} {
		r := request(Glove, per10(24, 32), hand.Hand{Circumference: 190 * mm, Length: 180 * mm})
		change(r)
		_, err := New().Plan(r)
		var fields fault.Fields
		require.ErrorAs(t, err, &fields, path)
		assert.True(t, fields.Has(path), "%v", err)
		for _, f := range fields {
			assert.NotEmpty(t, f.Works, "%v", f)
		}
	}
}

// A cap names all fingers that it can't go over at once, and what makes all of them half.
func TestACapNamesAllClosedFingers(t *testing.T) {
	for _, c := range []struct {
		ends         [4]FingerEnd
		says, offers string
	}{
		{[4]FingerEnd{FullFinger, HalfFinger, "", OpenFinger}, "but index and ring finger are full; write half for each", "fingers.index=half&fingers.ring=half"},
		{[4]FingerEnd{}, "but index, middle, ring and little finger are full", "fingers.index=half&fingers.middle=half&fingers.ring=half&fingers.little=half"},
		{[4]FingerEnd{HalfFinger, HalfFinger, OpenFinger, FullFinger}, "but the little finger is full; write half for it", "fingers.little=half"},
	} {
		r := request(Glove, per10(24, 32), hand.Hand{Circumference: 190 * mm, Length: 180 * mm})
		r.Make.Cap, r.Make.Fingers = true, c.ends
		_, err := New().Plan(r)
		var fields fault.Fields
		require.ErrorAs(t, err, &fields)
		require.Len(t, fields, 1)
		assert.Contains(t, fields[0].Message, c.says)
		assert.Equal(t, c.offers, fields[0].Works)
	}
}
