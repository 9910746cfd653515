package repeat

import (
	"fmt"
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
	m, wrong := Drawn(rows, nil)
	require.Zero(t, wrong)
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
	assert.Equal(t, "bcccbcccbcccbcccbcccbccc", seen(t, tube(24, 1), r, false)[0], "the middle of one lies on the middle")
	r.Motif = motif(t, "bcccccccccc")
	assert.Equal(t, ".bccccccccccbcccccccccc.", seen(t, tube(24, 1), r, false)[0])
	r.Set = CentredPalm
	assert.Equal(t, ".bccccccccccbcccccccccc.", seen(t, tube(24, 1), r, false)[0])
}

// Over the back alone, or the palm, what is centred there leaves as many plain stitches on
// both sides, the odd one first, whether a motif stands on the middle or two beside it.
func TestCentredOnItsOwnHalf(t *testing.T) {
	for _, c := range []struct{ stitches, wide, before, after int }{
		{40, 7, 3, 3}, {28, 5, 2, 2}, {46, 8, 4, 3}, {48, 5, 2, 2}, {42, 6, 2, 1}, {42, 7, 0, 0}, {40, 8, 2, 2}, {40, 19, 1, 0}, {40, 20, 0, 0},
	} {
		r := Usual(motif(t, strings.Repeat("b", c.wide)))
		for over, set := range map[Over]Set{Back: CentredBack, Palm: CentredPalm} {
			r.Over, r.Set = over, set
			came := Lay([]Repeat{r}, tube(c.stitches, 1)).Came[0]
			assert.Equal(t, [2]int{c.before, c.after}, [2]int{came.Before, came.After}, "%s of %d, %d wide", over, c.stitches, c.wide)
			assert.Equal(t, c.stitches/2/c.wide, came.Across)
		}
	}
	r := Usual(motif(t, "bbbbbbb"))
	r.Over, r.Set, r.Between = Columns, CentredBack, [2]string{"H23", "H38"}
	came := Lay([]Repeat{r}, tube(40, 1)).Came[0]
	assert.Equal(t, [3]int{2, 1, 1}, [3]int{came.Across, came.Before, came.After}, "also over columns that are all the back's")
}

// Where motifs fit exactly round the hand, none is lost to the middle of the back: one goes on
// over the beginning of the round. Otherwise it says that one more would find room.
func TestAnExactFitLosesNoMotif(t *testing.T) {
	r := Usual(motif(t, "cbbbb"))
	r.Set = CentredBack // whose middle is the line after 34 of 45 stitches
	hand := func(stitches int) Fabric {
		f := tube(stitches, 1)
		for j, name := range f.Names[stitch.Hand][0] {
			f.Areas[stitch.Hand][name] = map[bool]string{true: palmArea, false: backArea}[j >= 3 && j < 24]
			if j < 3 {
				f.Areas[stitch.Hand][name] = "gusset"
			}
		}
		return f
	}
	f := hand(45)
	l := Lay([]Repeat{r}, f)
	came := l.Came[0]
	assert.Equal(t, Came{Stitches: 45, Across: 9, Rounds: 1, Up: 1}, came)
	stands, ok := l.Stands(0)
	assert.True(t, ok)
	assert.Equal(t, Stands{Stitches: 45, Whole: 9}, stands)
	row := seen(t, f, r, false)[0]
	assert.Equal(t, "bbb"+strings.Repeat("cbbbb", 8)+"cb", row, "the 35th stitch, the back's middle, is the middle of one")
	assert.Equal(t, "cbbbb", row[45-37:45-32])

	r.Motif = motif(t, "cbbbbb")
	came = Lay([]Repeat{r}, f).Came[0]
	assert.Equal(t, Came{Stitches: 45, Across: 7, Before: 2, After: 1, Rounds: 1, Up: 1}, came, "half a stitch before the middle seven find room")
	r.Motif = motif(t, "cbbbbbbbb")
	came = Lay([]Repeat{r}, hand(46)).Came[0] // 5 × 9 and 1
	assert.Equal(t, Came{Stitches: 46, Across: 4, Before: 4, After: 6, Rounds: 1, Up: 1, Fewer: 1}, came)
	r.Motif = motif(t, strings.Repeat("b", 40))
	assert.Equal(t, "it has no room with its middle there", Lay([]Repeat{r}, f).Came[0].Nowhere)
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
	m, wrong := Drawn([]string{"..a.", ".a.h"}, []string{"p...", "..t."})
	require.Zero(t, wrong)
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
		{[]string{"é"}, nil, "has é in a row"},
		{[]string{"a🐦", "aa"}, nil, "has 🐦 in a row"},
		{[]string{"a"}, []string{"x"}, "stitches: has x in a row"},
		{[]string{"a"}, []string{"kk"}, "stitches: has rows of different lengths"},
		{[]string{"a", "aa"}, []string{"k", "k"}, "yarns: has rows of different lengths"},
		{[]string{".."}, nil, "sets nothing"},
		{[]string{"a."}, []string{"k.", ".."}, "other rows"},
		{nil, []string{"b"}, "has b in a row; write k, p, t or s"},
		{[]string{strings.Repeat("a", MaxSide+1)}, nil, "is too large"},
	} {
		_, wrong := Drawn(c.yarns, c.stitches)
		assert.Contains(t, map[bool]string{true: "stitches: ", false: "yarns: "}[wrong.Stitches]+wrong.Why, c.why)
	}
}

// A motif of 3 that is alike on both sides can't stand on the middle of a gusset that is even
// where it is widest; one that is mirrored, follows the edges, is moved or isn't alike on both
// sides has nothing to be told.
func TestBesideTheMiddleOfAGusset(t *testing.T) {
	s := stitch.Section{Part: stitch.Gusset}
	for _, in := range []int{2, 4, 6} {
		r := stitch.Round{Lead: in + 2}
		for j := range 10 + in {
			op := stitch.Knit
			if j == 1 {
				r.Ops = append(r.Ops, stitch.M1L)
			}
			if j == in-1 {
				r.Ops = append(r.Ops, stitch.M1R)
			}
			r.Ops = append(r.Ops, op)
		}
		s.Rounds = append(s.Rounds, r)
	}
	f := Fabric{Mitt: stitch.Mitt{Sections: []stitch.Section{s}}, Areas: map[stitch.Part]map[string]string{}}
	f.Names, f.Edges = wale.Trace(f.Mitt, 2, false)
	for name, c := range map[string]struct {
		rows   string
		over   Over
		gusset InGusset
		offset int
		want   bool
	}{
		"3 wide":          {"bcb", Gusset, StaysOut, 0, true},
		"through it":      {"bcb", Round, Grows, 0, true},
		"plain there":     {"bcb", Round, StaysOut, 0, false},
		"2 wide":          {"bb", Gusset, Grows, 0, false},
		"mirrored":        {"bcb", Gusset, Mirrored, 0, false},
		"along its edges": {"bcb", Round, Follows, 0, false},
		"moved":           {"bcb", Gusset, Grows, 1, false},
		"not alike":       {"bcc", Gusset, Grows, 0, false},
	} {
		r := Usual(motif(t, c.rows))
		r.Over, r.Gusset, r.Offset = c.over, c.gusset, c.offset
		came := Lay([]Repeat{r}, f).Came[0]
		assert.Empty(t, came.Nowhere, name)
		assert.Equal(t, c.want, came.Beside, name)
	}
}

// In the gusset alone a motif is counted and begun in its rounds, whatever lies below and
// above; its rounds are still counted over the whole hand.
func TestRoundsOfTheGussetAlone(t *testing.T) {
	plain := func(part stitch.Part, n, rounds int) stitch.Section {
		s := stitch.Section{Part: part}
		for range rounds {
			s.Rounds = append(s.Rounds, stitch.Round{Ops: make([]stitch.Op, n)})
			for j := range n {
				s.Rounds[len(s.Rounds)-1].Ops[j] = stitch.Knit
			}
		}
		return s
	}
	gusset := plain(stitch.Gusset, 10, 7)
	for i := range gusset.Rounds {
		gusset.Rounds[i].Lead = 3
	}
	f := Fabric{Mitt: stitch.Mitt{Sections: []stitch.Section{plain(stitch.CuffPlain, 10, 5), gusset, plain(stitch.Hand, 10, 9)}}, Areas: map[stitch.Part]map[string]string{}}
	f.Names, f.Edges = wale.Trace(f.Mitt, 3, false)
	r := Usual(motif(t, "b", "c", "c"))
	r.Over = Gusset
	for _, c := range []struct {
		from, to, rounds, up, left int
		first                      int // its first round of the gusset
	}{{1, -1, 7, 2, 1, 1}, {8, -1, 5, 1, 2, 3}, {1, 10, 5, 1, 2, 1}, {1, -10, 7, 2, 1, 1}, {8, 10, 3, 1, 0, 3}} {
		r.From, r.To = c.from, c.to
		l := Lay([]Repeat{r}, f)
		assert.Equal(t, Came{Stitches: 3, Across: 1, Rounds: c.rounds, Up: c.up, Left: c.left}, l.Came[0])
		for i := range 7 {
			up := -1
			l.Cells(stitch.Gusset, i, f.Names[stitch.Gusset][i], func(_ int, cell Cell) { up = cell.Up })
			if k := i + 1 - c.first; k >= 0 && k < 3*c.up {
				assert.Equal(t, k%3, up, "round %d of %+v", i+1, c)
			} else {
				assert.Equal(t, -1, up, "round %d of %+v", i+1, c)
			}
		}
	}
	for n, want := range map[int]string{1: "cuff_plain 1", 5: "cuff_plain 5", 6: "gusset 1", 12: "gusset 7", 13: "hand 1", 21: "hand 9", -1: "hand 9", -10: "gusset 7", 22: " 0", -22: " 0", 0: " 0"} {
		part, round := RoundAt(f.Mitt, n)
		assert.Equal(t, want, fmt.Sprintf("%s %d", part, round), "round %d", n)
	}
	r.From, r.To = 13, -1
	assert.Equal(t, "there is no gusset in these rounds", Lay([]Repeat{r}, f).Came[0].Nowhere)
}

// What is compared is what is seen: a plain stitch beside the main colour is the same.
func TestBestOffsetComparesWhatIsSeen(t *testing.T) {
	for drawn, m := range map[string]Motif{"main colour": motif(t, "baab"), "left free": motif(t, "b..b")} {
		r := Usual(m)
		r.Over, r.Set = Back, Begin // 10 stitches: 2 motifs and 2 plain ones
		s, ok := StripOf(r, tube(20, 1))
		require.True(t, ok)
		assert.Equal(t, [3]int{-1, 5, 5}, [3]int{s.Best, s.Same, s.Of}, drawn)
	}
}
