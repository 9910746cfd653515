package mitt

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/stitch"
)

// What doesn't go together is refused at its field, with the nearest that does.
func TestWaysThatDontGoTogether(t *testing.T) {
	for name, c := range map[string]struct {
		kind        Kind
		make        func(r *Request)
		path, works string
	}{
		"a slit in a mitten":        {Mitten, func(r *Request) { r.Make.Construction = Slit }, PathConstruction, "straight"},
		"a gusset without a thumb":  {Thumbless, func(r *Request) { r.Make.Construction = ByGusset }, PathConstruction, "none"},
		"a straight thumb down":     {Fingerless, func(r *Request) { r.Make.Construction, r.Make.Direction = Straight, Down }, PathDirection, "up"},
		"a slit down":               {Fingerless, func(r *Request) { r.Make.Construction, r.Make.Direction = Slit, Down }, PathDirection, "up"},
		"lifted increases down":     {Fingerless, func(r *Request) { r.Make.Increase, r.Make.Direction = Lifted, Down }, PathIncrease, "m1"},
		"the centre at one edge":    {Fingerless, func(r *Request) { r.Make.Increase, r.Stitch.OneSided = InCentre, true }, PathIncrease, "m1"},
		"front and back from two":   {Mitten, func(r *Request) { r.Make.Increase, r.Pins.GussetBase = FrontAnd, Fix(2) }, "pins.gusset_base", "3"},
		"the centre of four":        {Mitten, func(r *Request) { r.Make.Increase, r.Pins.GussetBase = InCentre, Fix(4) }, "pins.gusset_base", "3"},
		"the centre on the hand":    {Mitten, func(r *Request) { r.Make.Increase, r.Pins.KeptOnHand = InCentre, Fix(2) }, "pins.kept_on_hand", "0"},
		"an inset at the side":      {Mitten, func(r *Request) { r.Make.Inset = Fix(3) }, PathInset, ""},
		"a thumb that isn't there":  {Thumbless, func(r *Request) { r.Make.Construction = Straight }, PathConstruction, "none"},
		"a mitten kind by the palm": {Thumbless, func(r *Request) { r.Make.Inset = Fix(2) }, PathInset, ""},
	} {
		t.Run(name, func(t *testing.T) {
			r := request(c.kind, per10(24, 32), hand.Hand{Circumference: 190 * mm})
			c.make(r)
			_, err := New().Plan(r)
			var fields fault.Fields
			require.True(t, errors.As(err, &fields), "%v", err)
			require.Equal(t, c.path, fields[0].Path, "%v", err)
			assert.Equal(t, c.works, fields[0].Works)
			assert.NotEmpty(t, fields[0].Message)
		})
	}
}

// What has no use beside the rest is kept and named, and changes nothing.
func TestChoicesWithoutUse(t *testing.T) {
	for name, c := range map[string]struct {
		kind Kind
		make func(m *Make)
		said string
	}{
		"the girth of a rib":       {Mitten, func(m *Make) { m.UpperGirth = 200 * mm }, "the cuff’s upper girth"},
		"the depth of a rib":       {Mitten, func(m *Make) { m.CuffDepth = 20 * mm }, "the cuff’s depth"},
		"a top on an open mitt":    {Fingerless, func(m *Make) { m.Top = PointedTop }, "how the top is closed"},
		"a band on an open mitt":   {Fingerless, func(m *Make) { m.Band = Fix(3) }, "the stitches of a band"},
		"a band on a rounded top":  {Mitten, func(m *Make) { m.Band = Fix(2) }, "the stitches of a band"},
		"wedges of a rounded top":  {Mitten, func(m *Make) { m.Wedges = Fix(5) }, "the wedges of the top"},
		"increases without gusset": {Thumbless, func(m *Make) { m.Increase = Lifted }, "how the gusset grows"},
		"a palm without a thumb":   {Thumbless, func(m *Make) { m.Place = InPalm }, "the thumb’s place"},
	} {
		t.Run(name, func(t *testing.T) {
			r := request(c.kind, per10(24, 32), hand.Hand{Circumference: 190 * mm})
			was := must(t, r)
			assert.NotContains(t, codes(was), "make_without_effect")
			c.make(&r.Make)
			is := must(t, r)
			assert.Equal(t, was.Mitt(), is.Mitt())
			for _, w := range is.Warnings {
				if w.Code == "make_without_effect" {
					assert.Equal(t, "These have no use here; they are kept: "+c.said+".", w.Message)
				}
			}
			assert.Contains(t, codes(is), "make_without_effect")
		})
	}
}

// A choice that is written out as it is by default makes the same mitt, but for what
// it says of itself.
func TestUsualWaysWrittenOut(t *testing.T) {
	for _, kind := range []Kind{Fingerless, Mitten, Thumbless} {
		r := request(kind, per10(24, 32), hand.Hand{Circumference: 190 * mm})
		was := must(t, r)
		r.Make = Make{Place: AtSide, Increase: MakeOne, Direction: Up, Cuff: RibCuff}
		if kind == Mitten {
			r.Make.Construction, r.Make.Top = ByGusset, RoundedTop
		}
		is := must(t, r)
		assert.Equal(t, was.Mitt(), is.Mitt())
	}
}

// A rib has its own knits and purls in every repeat, at the cuff and at the edgings;
// where 1 × 1 rib takes its place, that has its own.
func TestRibsByKnitsAndPurls(t *testing.T) {
	r := request(Fingerless, per10(24, 32), hand.Hand{Circumference: 190 * mm, Length: 180 * mm, Thumb: 65 * mm})
	for _, c := range []struct {
		knits, purls int
		repeat       string
	}{{2, 2, "k2 p2"}, {3, 1, "k3 p1"}, {1, 3, "k p3"}, {2, 1, "k2 p"}, {1, 2, "k p2"}, {5, 2, "k5 p2"}} {
		r.Stitch.Rib, r.Stitch.Knits = c.knits+c.purls, c.knits
		p := must(t, r)
		m := p.Mitt()
		hand, thumb := m.Section(stitch.Hand), m.Section(stitch.Thumb)
		ribbed := []stitch.Round{m.Sections[0].Rounds[0], hand.Rounds[len(hand.Rounds)-1]}
		require.Equal(t, p.Stitch.Rib, p.Body.EdgingRib)
		if p.Thumb.EdgingRib == p.Stitch.Rib {
			ribbed = append(ribbed, thumb.Rounds[len(thumb.Rounds)-1])
		} else {
			assert.Equal(t, typed(t, "k p k p").Ops, thumb.Rounds[len(thumb.Rounds)-1].Ops[:4])
		}
		for _, round := range ribbed {
			require.Zero(t, len(round.Ops)%p.Stitch.Rib)
			for i := 0; i < len(round.Ops); i += p.Stitch.Rib {
				require.Equal(t, typed(t, c.repeat).Ops, round.Ops[i:i+p.Stitch.Rib], "%v", c)
			}
		}
		on := *r
		on.Stitch.Rib, on.Stitch.Knits = 2, 0
		on.Progress = p.ProgressAt(stitch.Cuff, 3)
		again := must(t, &on)
		assert.Equal(t, ribbed[0], again.Mitt().Sections[0].Rounds[0], "what is knitted stays")
	}
	r.Stitch.Rib, r.Stitch.Knits = 4, 4
	_, err := New().Plan(r)
	require.ErrorContains(t, err, "cuff.knits: is 4 of a rib of 4; write a number below that")
}
