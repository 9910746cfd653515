package mitt

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
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
		"knits of a hem":            {Mitten, func(r *Request) { r.Make.Cuff, r.Make.Knits, r.Make.Purls = HemCuff, Fix(2), Fix(2) }, PathKnits, ""},
		"knits without purls":       {Mitten, func(r *Request) { r.Make.Knits = Fix(3) }, PathKnits, ""},
		"purls without knits":       {Mitten, func(r *Request) { r.Make.Purls = Fix(3) }, PathPurls, ""},
		"the girth of a rib":        {Mitten, func(r *Request) { r.Make.UpperGirth = 200 * mm }, PathUpperGirth, ""},
		"the depth of garter":       {Mitten, func(r *Request) { r.Make.Cuff, r.Make.CuffDepth = GarterCuff, 20*mm }, PathCuffDepth, ""},
		"a top on an open mitt":     {Fingerless, func(r *Request) { r.Make.Top = PointedTop }, PathTop, ""},
		"a band on a rounded top":   {Mitten, func(r *Request) { r.Make.Band = Fix(2) }, PathBand, ""},
		"wedges of a gathered top":  {Mitten, func(r *Request) { r.Make.Top, r.Make.Wedges = GatheredTop, Fix(5) }, PathWedges, ""},
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
