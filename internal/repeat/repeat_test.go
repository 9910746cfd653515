package repeat

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/stitch"
	"thenar/internal/wale"
)

// tube is a mitt without a thumb: so many plain stitches, so many rounds of the hand. The
// former half of a round is the palm's.
func tube(stitches, rounds int) Fabric {
	s := stitch.Section{Part: stitch.Hand, CastOn: stitches}
	for range rounds {
		s.Rounds = append(s.Rounds, stitch.Round{Ops: make([]stitch.Op, stitches)})
		for j := range stitches {
			s.Rounds[len(s.Rounds)-1].Ops[j] = stitch.Knit
		}
	}
	f := Fabric{Mitt: stitch.Mitt{Sections: []stitch.Section{s}}, Areas: map[stitch.Part]map[string]string{stitch.Hand: {}}}
	f.Names, f.Edges = wale.Trace(f.Mitt, 0, false)
	for j, name := range f.Names[stitch.Hand][0] {
		f.Areas[stitch.Hand][name] = map[bool]string{true: palmArea, false: backArea}[2*j < stitches]
	}
	return f
}

func motif(t *testing.T, rows ...string) Motif {
	t.Helper()
	m, why := Drawn(rows, nil)
	require.Empty(t, why)
	return m
}

// eight is a motif of 8 stitches and 2 rounds that is not its own mirror image.
func eight(t *testing.T) Motif { return motif(t, "b.......", "bb....c.") }

// seen returns what a repeat sets in the rounds of a tube, as it looks: from the top, and
// from the left.
func seen(t *testing.T, f Fabric, r Repeat, left bool) []string {
	t.Helper()
	if left {
		f.Left = &Hand{}
		f.Left.Names, f.Left.Edges = wale.Trace(f.Mitt, 0, true)
	}
	l := Lay([]Repeat{r}, f)
	names := f.Names[stitch.Hand]
	rows := make([]string, len(names))
	for i := range names {
		row := []byte(strings.Repeat(".", len(names[i])))
		l.Cells(stitch.Hand, i, names[i], func(j int, c Cell) { row[len(row)-1-j] = c.Yarn[0] })
		rows[len(rows)-1-i] = string(row)
	}
	return rows
}

// The two counts that the rule is told with: 56 stitches take 8 seven times, 53 six times,
// with 3 plain stitches before and 2 after.
func TestWhatIsLeftOver(t *testing.T) {
	r := Usual(eight(t))
	r.Set = Centred
	came := Lay([]Repeat{r}, tube(56, 5)).Came[0]
	assert.Equal(t, Came{Stitches: 56, Across: 7, Rounds: 5, Up: 2, Left: 1}, came)
	came = Lay([]Repeat{r}, tube(53, 5)).Came[0]
	assert.Equal(t, Came{Stitches: 53, Across: 6, Before: 3, After: 2, Rounds: 5, Up: 2, Left: 1}, came)
	assert.Equal(t, 5, came.Plain())
	r.Set = Begin
	came = Lay([]Repeat{r}, tube(53, 5)).Came[0]
	assert.Equal(t, [2]int{0, 5}, [2]int{came.Before, came.After})
}

func TestHowItLies(t *testing.T) {
	m := motif(t, ".c.", "bb.")
	for name, c := range map[string]struct {
		change func(*Repeat)
		want   []string
	}{
		"from the beginning":    {func(*Repeat) {}, []string{"........", "...c..c.", "..bb.bb."}},
		"cut":                   {func(r *Repeat) { r.Cut = true }, []string{"..bb.bb.", "...c..c.", "..bb.bb."}},
		"from round 2":          {func(r *Repeat) { r.From = 2 }, []string{"...c..c.", "..bb.bb.", "........"}},
		"to the last but one":   {func(r *Repeat) { r.To, r.Cut = -3, true }, []string{"........", "........", "..bb.bb."}},
		"moved on":              {func(r *Repeat) { r.Offset = 1 }, []string{"........", "..c..c..", "..b.bb.b"}},
		"shared by both ends":   {func(r *Repeat) { r.Set = Centred }, []string{"........", "..c..c..", ".bb.bb.."}},
		"over the back":         {func(r *Repeat) { r.Over = Back }, []string{"........", "..c.....", ".bb....."}},
		"over the palm":         {func(r *Repeat) { r.Over, r.Set = Palm, Centred }, []string{"........", ".....c..", "....bb.."}},
		"between two columns":   {func(r *Repeat) { r.Over, r.Between = Columns, [2]string{"H2", "H4"} }, []string{"........", ".....c..", "....bb.."}},
		"round the beginning":   {func(r *Repeat) { r.Over, r.Between = Columns, [2]string{"H8", "H2"} }, []string{"........", ".......c", "......bb"}},
		"off":                   {func(r *Repeat) { r.Off = true }, []string{"........", "........", "........"}},
		"higher than there is":  {func(r *Repeat) { r.From = 3 }, []string{"........", "........", "........"}},
		"wider than there is":   {func(r *Repeat) { r.Over, r.Between = Columns, [2]string{"H2", "H3"} }, []string{"........", "........", "........"}},
		"columns not there":     {func(r *Repeat) { r.Over, r.Between = Columns, [2]string{"H2", "B3"} }, []string{"........", "........", "........"}},
		"a section that is not": {func(r *Repeat) { r.Section = stitch.Top }, []string{"........", "........", "........"}},
	} {
		t.Run(name, func(t *testing.T) {
			r := Usual(m)
			c.change(&r)
			assert.Equal(t, c.want, seen(t, tube(8, 3), r, false))
			nowhere := Lay([]Repeat{r}, tube(8, 3)).Came[0].Nowhere != ""
			assert.Equal(t, !strings.Contains(strings.Join(c.want, ""), "b"), nowhere, "what lies nowhere says so")
		})
	}
}

// The back of 12 of 24 stitches has its middle between two stitches. An even motif stands
// with its middle there, an odd one half a stitch beside it; or two stand on either side of
// it, if that leaves fewer plain.
func TestCentredOnTheBack(t *testing.T) {
	r := Usual(motif(t, "bccc"))
	r.Set = CentredBack
	assert.Equal(t, "bcccbcccbcccbcccbcccbccc", seen(t, tube(24, 1), r, false)[0], "the edge between two lies on the middle")
	r.Motif = motif(t, "bcccccccccc")
	assert.Equal(t, ".bccccccccccbcccccccccc.", seen(t, tube(24, 1), r, false)[0])
	r.Set = CentredPalm
	assert.Equal(t, "..bccccccccccbcccccccccc", seen(t, tube(24, 1), r, false)[0])
}

// Where the thumb sits in the palm, the round begins in the palm, too: its middle is that of
// the whole palm, not that of the round.
func TestCentredOnAPalmRoundTheBeginning(t *testing.T) {
	f := tube(24, 1)
	for j, name := range f.Names[stitch.Hand][0] {
		f.Areas[stitch.Hand][name] = map[bool]string{true: palmArea, false: backArea}[j < 8 || j >= 20]
	}
	r := Usual(motif(t, "bccc"))
	r.Set = CentredPalm // from 4 before the beginning to 8 after it
	assert.Equal(t, strings.Repeat("bccc", 6), seen(t, f, r, false)[0], "its middle lies after 2 stitches")
	r.Over, r.Set = Palm, Begin
	assert.Equal(t, "bccc............bcccbccc", seen(t, f, r, false)[0])
	for j, name := range f.Names[stitch.Hand][0] {
		f.Areas[stitch.Hand][name] = map[bool]string{true: palmArea, false: backArea}[j < 3 || j > 12 && j < 20]
	}
	assert.Equal(t, ".......bccc.............", seen(t, f, r, false)[0], "of two pieces the longer one")
}

// The left hand has the mirror image, or the motif as drawn in the same places.
func TestOnTheLeftHand(t *testing.T) {
	r := Usual(motif(t, "bc."))
	right, mirrored := seen(t, tube(9, 1), r, false)[0], seen(t, tube(9, 1), r, true)[0]
	assert.Equal(t, right, mirrored, "its columns are the right hand's, mirrored")
	r.OnLeft = AsDrawn
	assert.Equal(t, ".cb.cb.cb", seen(t, tube(9, 1), r, true)[0])
}

func TestDrawn(t *testing.T) {
	m, why := Drawn([]string{"..a.", ".a.h"}, []string{"p...", "..t."})
	require.Empty(t, why)
	yarns, stitches := m.Rows()
	assert.Equal(t, []string{"..a.", ".a.h"}, yarns)
	assert.Equal(t, []string{"p...", "..t."}, stitches)
	yarn, op := m.At(0, 0)
	assert.Equal(t, "h", yarn)
	assert.Equal(t, stitch.NoStitch, op)
	for _, c := range []struct {
		yarns, stitches []string
		why             string
	}{
		{nil, nil, "is empty"},
		{[]string{"a.", "a"}, nil, "rows of different lengths"},
		{[]string{"i."}, nil, "has i in a row"},
		{[]string{"é"}, nil, "has ? in a row"},
		{[]string{".."}, nil, "sets nothing"},
		{[]string{"a."}, []string{"k.", ".."}, "other rows"},
		{nil, []string{"b"}, "has b in a row; write k, p, t or s"},
		{[]string{strings.Repeat("a", MaxSide+1)}, nil, "is too large"},
	} {
		_, why := Drawn(c.yarns, c.stitches)
		assert.Contains(t, why, c.why)
	}
}
