package words

import (
	"strings"
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
		{stitch.Gusset, stitch.Round{Ops: ops(stitch.M1L, k, stitch.M1R, k), Lead: 3}, "rrrr", "In rust: M1L, k1, M1R | knit to the end (4, of which 3 in the gusset)."},
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
			"k1 rust, slip 2 to waste yarn, cast on a bridge of 2 backward loops, k1 cream (4).",
		},
		{
			stitch.Hand,
			stitch.Round{Ops: ops(k, stitch.Hold, stitch.CastOn, stitch.CastOn, stitch.CastOn, k), Lead: 5},
			"ccrrcc",
			"k1 cream, slip 1 to waste yarn, cast on a bridge of 3 backward loops: 2 rust, 1 cream, k1 (5).",
		},
		{stitch.Hand, stitch.Round{Ops: ops(k, k, stitch.M1, k, k, stitch.M1, k)}, "ccccccr", "(k2 cream, M1) twice, k1 rust (7)."},
		{stitch.Hand, stitch.Round{Ops: ops(k, k, k, k, k, k, k, k, k, k)}, "crccrccrcc", "k1 cream, (k1 rust, k2 cream) 3 times (10)."},
		{stitch.Hand, stitch.Round{Ops: ops(k, k, k, k, k, k, k, k, k)}, "crccrccrc", "(k1 cream, k1 rust, k1 cream) 3 times (9)."},
		{stitch.Top, stitch.Round{Ops: ops(stitch.KnitTBL, stitch.KnitTBL, k)}, "rrc", "(k tbl rust) twice, k1 cream (3)."},
		{stitch.Top, stitch.Round{Ops: ops(stitch.K2tog, stitch.K2tog, k)}, "rrc", "(k2tog rust) twice, k1 cream (3)."},
	} {
		assert.Equal(t, c.want, Coloured(c.part, c.r, yarns(c.in)))
	}
}

// A long round refers to the rows of its motif; what stands before and after them is told as in
// the whole round: the thumb's second corner is the second (common practice, no source).
func TestCornersBesideTheRowsOfAMotif(t *testing.T) {
	r := stitch.Round{Ops: []stitch.Op{stitch.PickUp, stitch.GapK2tog}}
	of := RoundDyed{Yarns: []string{"cream", "cream"}, Motif: []int{0, 0}, Row: []int{0, 0}}
	var row []Worked
	for _, yarn := range strings.Fields("rust cream cream blue rust blue cream rust rust blue cream rust blue blue rust") {
		row = append(row, Worked{stitch.Knit, yarn})
		r.Ops, of.Yarns = append(r.Ops, stitch.Knit), append(of.Yarns, yarn)
		of.Motif, of.Row = append(of.Motif, 1), append(of.Row, 1)
	}
	r.Ops, of.Yarns = append(r.Ops, stitch.GapSSK), append(of.Yarns, "cream")
	of.Motif, of.Row = append(of.Motif, 0), append(of.Row, 0)
	d := dyer{Dyed: &Dyed{Motifs: []MotifRows{{Rows: [][]Worked{row}}}}, refers: map[[2]int]bool{}, wide: map[[2]int]bool{}}
	assert.Equal(t, "Pick up and knit 1 in cream, k2tog with the strand at corner 1, row 1 of motif 1, ssk with the strand at corner 2 in cream (18).",
		d.coloured(stitch.Thumb, r, of))
}
