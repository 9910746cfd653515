package words

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/stitch"
)

// Rounds whose words can be read off the stitches: each run with its yarn, what
// comes again in brackets, one yarn said once (common practice, no source).
func TestColoured(t *testing.T) {
	const k, p = stitch.Knit, stitch.Purl
	ops := func(list ...stitch.Op) []stitch.Op { return list }
	yarns := func(of string) []string {
		var list []string
		for _, c := range of {
			list = append(list, map[rune]string{'r': "rust", 'c': "cream"}[c])
		}
		return list
	}
	for _, c := range []struct {
		part stitch.Part
		r    stitch.Round
		in   string
		want string
	}{
		{stitch.Hand, stitch.Round{Ops: ops(k, k, k, k, k, k, k, k)}, "rrrccccc", "k3 rust, k5 cream (8)."},
		{stitch.Hand, stitch.Round{Ops: ops(k, k, k, k, k, k)}, "rcrcrc", "(k1 rust, k1 cream) 3 times (6)."},
		{stitch.Hand, stitch.Round{Ops: ops(k, k, k, k)}, "cccc", "In cream: knit (4)."},
		{stitch.Cuff, stitch.Round{Ops: ops(k, p, k, p)}, "rrrr", "In rust: (k1, p1) twice (4)."},
		{stitch.Cuff, stitch.Round{Ops: ops(k, p, k, p)}, "rcrc", "(k1 rust, p1 cream) twice (4)."},
		{
			stitch.Gusset,
			stitch.Round{Ops: ops(k, stitch.M1L, k, k, stitch.M1R, k, k, k), Lead: 6},
			"crccrccc",
			"k1 cream, M1L rust, k2 cream, M1R rust, k1 cream | knit cream to the end (8, of which 6 in the gusset).",
		},
		{stitch.Gusset, stitch.Round{Ops: ops(k, k, k, k), Lead: 2}, "rrrc", "k2 rust | k1 rust, k1 cream (4, of which 2 in the gusset)."},
		{
			stitch.Hand,
			stitch.Round{Ops: ops(k, stitch.Hold, stitch.Hold, stitch.CastOn, stitch.CastOn, k), Lead: 5},
			"rcrrrc",
			"k1 rust, slip 2 to waste yarn, cast on a bridge of 2 backward loops in rust, k1 cream (4).",
		},
		{stitch.Top, stitch.Round{Ops: ops(stitch.K2tog, stitch.K2tog, k)}, "rrc", "(k2tog rust) twice, k1 cream (3)."},
	} {
		assert.Equal(t, c.want, Coloured(c.part, c.r, yarns(c.in)))
	}
}
