package mitt

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
)

func aGlove() *Request {
	return request(Glove, per10(28, 38), hand.Hand{Circumference: 190 * mm})
}

// A tip of too few rounds is told first of all, with the least that closes it; with that
// many nothing is said.
func TestOpenTipsAreTold(t *testing.T) {
	r := aGlove()
	for f := range r.Pins.Fingers {
		r.Pins.Fingers[f].Rounds = Fix(1)
	}
	r.Pins.ThumbRounds = Fix(2)
	p := must(t, r)
	for i, part := range []stitch.Part{stitch.Index, stitch.Middle, stitch.Ring, stitch.Little, stitch.Thumb} {
		var name string
		var rounds, left, least int
		w := p.Warnings[i]
		require.Equal(t, "tip_open", w.Code)
		format, pin := "The %s finger isn’t closed in %d round: the yarn would be drawn through %d stitches. Give it %d or more.", &r.Pins.ThumbRounds
		if part == stitch.Thumb {
			format = "The %s isn’t closed in %d rounds: the yarn would be drawn through %d stitches. Give it %d or more."
		} else {
			pin = &r.Pins.Fingers[i].Rounds
		}
		_, err := fmt.Sscanf(w.Message, format, &name, &rounds, &left, &least)
		require.NoError(t, err, w.Message)
		assert.Equal(t, left, p.Mitt().Section(part).Finish.In(), w.Message)
		*pin = Fix(least - 1)
		assert.Contains(t, codes(must(t, r)), "tip_open", "%s of %d", name, least-1)
		*pin = Fix(least)
	}
	assert.NotContains(t, codes(must(t, r)), "tip_open")
}

// What nobody fixed has room for its edging and its tip, and is as long as the finger.
func TestChosenFingersHaveRoom(t *testing.T) {
	rng := rand.New(rand.NewPCG(24, 12))
	pl := New()
	open := 0
	for range testenv.Cases(400, 4000) {
		r := likely(rng)
		gloved(rng, r)
		r.Lengths, r.Pins, r.Progress = Lengths{}, Pins{}, nil
		p, err := pl.Plan(r)
		if err != nil {
			continue
		}
		for _, code := range []string{"tip_open", "finger_long", "finger_wide", "edging_rounds"} {
			require.NotContains(t, codes(p), code, "%+v\n%v", r, p.Warnings)
		}
		if r.Make.ThumbEnd == OpenFinger {
			open++
		}
	}
	require.NotZero(t, open)
}

// What is fixed far off the finger is told, whatever it is.
func TestFingersFarOffAreTold(t *testing.T) {
	for code, c := range map[string]struct {
		change func(*Request)
		says   string
	}{
		"finger_wide": {func(r *Request) { r.Pins.Fingers[hand.Index].Stitches = Fix(28) }, "The index finger is wide with its fixed 28 stitches: glove 100 mm, finger "},
		"finger_long": {func(r *Request) { r.Pins.Fingers[hand.Ring].Rounds = Fix(1000) }, "The ring finger is 2632 mm long in 1000 rounds, and the finger "},
		"finger_few": {func(r *Request) {
			r.Gauge = per10(14, 20)
			r.Hand.Circumference, r.Hand.Length = 130*mm, 104*mm
			r.Pins.Fingers[hand.Little].Palm, r.Pins.Fingers[hand.Little].Back = Fix(1), Fix(2)
		}, "The little finger gets 1 of the palm’s stitches and 2 of the back’s"},
		"make_without_effect": {func(r *Request) {
			r.Lengths.Edging, r.Lengths.ThumbEdging = 20*mm, 20*mm
			r.Make.Construction, r.Stitch.OneSided = Straight, true
		}, "the fingers’ edging, the thumb’s edging, increases at one edge"},
		"pins_without_effect": {func(r *Request) {
			r.Make.Level, r.Pins.LowerRounds = true, Fix(3)
		}, "pins.little_lower_rounds is kept without use while the fingers part at one height (fingers.little_lower is false)"},
		"top_rounds": {func(r *Request) {
			r.Make.Fingers = [4]FingerEnd{HalfFinger, HalfFinger, HalfFinger, HalfFinger}
			r.Make.Cap, r.Pins.TopRounds = true, Fix(12)
		}, "The cap’s top is fixed with pins.cap_top_rounds."},
	} {
		r := aGlove()
		assert.NotContains(t, codes(must(t, r)), code)
		c.change(r)
		p := must(t, r)
		if assert.Contains(t, codes(p), code, "%v", p.Warnings) {
			assert.Contains(t, fmt.Sprint(said(p, code)), c.says)
		}
	}
	r := aGlove()
	r.Hand.Circumference = 50 * mm
	_, err := New().Plan(r)
	var faults fault.Fields
	require.ErrorAs(t, err, &faults)
	assert.Contains(t, faults.Error(), "measure hand.hand_length")
	r = aGlove()
	r.Pins.Fingers[hand.Index] = FingerPins{Palm: Fix(8), Back: Fix(8), Stitches: Fix(28)}
	_, err = New().Plan(r)
	require.ErrorContains(t, err, "write 22, or fix a wider bridge beside it")
	r.Pins.FingerBridges[0] = Fix(12)
	must(t, r)
}
