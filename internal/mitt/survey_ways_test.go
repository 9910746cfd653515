package mitt

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/stitch"
	"thenar/internal/testenv"
)

// surveyed are the ways of making that are fitted to the survey, beside the usual one.
var surveyed = []struct {
	name string
	way  func(r *Request)
}{
	{"in the palm", func(r *Request) { r.Make.Place = InPalm }},
	{"at one edge", func(r *Request) { r.Stitch.OneSided = true }},
	{"at one edge in the palm", func(r *Request) { r.Make.Place, r.Stitch.OneSided = InPalm, true }},
	{"lifted", func(r *Request) { r.Make.Increase = Lifted }},
	{"yarn overs", func(r *Request) { r.Make.Increase = YoClosed }},
	{"front and back", func(r *Request) { r.Make.Increase = FrontAnd }},
	{"from the centre", func(r *Request) { r.Make.Increase = InCentre }},
	{"flat", inRows},
	{"flat in the palm", func(r *Request) { inRows(r); r.Make.Place = InPalm }},
	{"on waste yarn", func(r *Request) { r.Make.Construction = Straight }},
	{"flat on waste yarn", func(r *Request) { r.Make.Construction = Straight; inRows(r) }},
	{"from the fingertips", func(r *Request) { r.Make.Direction = Down }},
	{"flat from the fingertips", func(r *Request) { inRows(r); r.Make.Direction = Down }},
	{"from the fingertips at one edge", func(r *Request) { r.Make.Direction, r.Stitch.OneSided = Down, true }},
}

// The hands of ANSUR II (Gordon et al. 2014) by every way of making a thumb, at five
// gauges: each plan is sound by the ledger, and hand, thumb and gusset length lie within
// half an admissible step of what was wanted, or a warning says which bound is in the
// way.
func TestTheSurveyByEveryWay(t *testing.T) {
	t.Parallel()
	hands, pl := testenv.Some(60, ansur(t)), New()
	for _, w := range surveyed {
		for _, g := range gauges {
			warned := 0
			for i, h := range hands {
				r := request([]Kind{Fingerless, Mitten}[i%2], g, h)
				w.way(r)
				p, err := pl.Plan(r)
				require.NoError(t, err, "%s, hand %d", w.name, i)
				require.Empty(t, stitch.Ledger(p.Mitt()), "%s, hand %d", w.name, i)
				checkNearest(t, p, &warned)
			}
			t.Logf("%s, %.0f stitches over 10 cm: %d of %d plans warn of a bound", w.name, g.Stitches*100, warned, len(hands))
			assert.LessOrEqual(t, warned, len(hands)/20, "a bound is in the way of few")
		}
	}
}
