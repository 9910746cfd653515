package wale

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/stitch"
)

// section returns a gusset of rounds written as codes; "|" ends the leading
// block.
func section(t *testing.T, rounds ...string) stitch.Section {
	t.Helper()
	s := stitch.Section{Part: stitch.Gusset}
	for _, text := range rounds {
		var r stitch.Round
		for _, word := range strings.Fields(text) {
			if word == "|" {
				r.Lead = len(r.Ops)
				continue
			}
			op, ok := stitch.ByCode(word)
			require.True(t, ok, word)
			r.Ops = append(r.Ops, op)
		}
		s.Rounds = append(s.Rounds, r)
	}
	return s
}

func gusset(s stitch.Section, base int) [][]string {
	return Mitt(stitch.Mitt{Sections: []stitch.Section{s}}, base)[stitch.Gusset]
}

// The hand goes on with the gusset's columns and has new ones for the bridge; the
// thumb takes up the held ones; the top begins at the side line.
func TestColumnsOfAllSections(t *testing.T) {
	g := section(t, "k m1l k m1r k | k k k k")
	hand := section(t, "hold hold hold hold hold co co co | k k k k", "k k k | k k k k")
	hand.Part = stitch.Hand
	hand.Rounds[0].Keep(stitch.ThumbSet)
	top := section(t, "k ssk k k2tog k")
	top.Part, top.Shift, top.Across = stitch.Top, 1, 1
	thumb := section(t, "pick pick | gapk2tog k k k gapssk")
	thumb.Part, thumb.From = stitch.Thumb, []stitch.Set{stitch.ThumbSet}
	names := Mitt(stitch.Mitt{Sections: []stitch.Section{g, hand, top, thumb}}, 3)
	row := func(p stitch.Part, i int) string { return strings.Join(names[p][i], " ") }
	assert.Equal(t, "B1 A1 B2 Z1 B3 C1 C2 C3 H1 H2 H3 H4", row(stitch.Hand, 0))
	assert.Equal(t, "C1 C2 C3 H1 H2 H3 H4", row(stitch.Hand, 1))
	assert.Equal(t, "C2 C3 H2 H4 C1", row(stitch.Top, 0), "ssk goes on with its first stitch, k2tog with its last")
	assert.Equal(t, "P1 P2 B1 A1 B2 Z1 B3", row(stitch.Thumb, 0))
}

func TestColumnsOfGusset(t *testing.T) {
	for name, c := range map[string]struct {
		base   int
		rounds []string
		want   []string
	}{
		"base of three": {
			3,
			[]string{"k m1l k m1r k | k k", "k k k k k | k k", "k m1l k k k m1r k | k k"},
			[]string{"B1 A1 B2 Z1 B3 H1 H2", "B1 A1 B2 Z1 B3 H1 H2", "B1 A2 A1 B2 Z1 Z2 B3 H1 H2"},
		},
		"base of one":               {1, []string{"m1l k m1r | k", "k m1l k m1r k | k"}, []string{"A1 B1 Z1 H1", "A1 A2 B1 Z2 Z1 H1"}},
		"lifted from a base of one": {1, []string{"rli k lli | k", "k lli k rli k | k"}, []string{"A1 B1 Z1 H1", "A1 A2 B1 Z2 Z1 H1"}},
		"beside the middle": {
			3,
			[]string{"k m1r k m1l k | k", "k k m1r k m1l k k | k"},
			[]string{"B1 A1 B2 Z1 B3 H1", "B1 A1 A2 B2 Z2 Z1 B3 H1"},
		},
		"yarn overs, closed": {
			3,
			[]string{"k yo k yo k | k", "k ktbl k ktbl k | k", "k yo k k k yo k | k"},
			[]string{"B1 A1 B2 Z1 B3 H1", "B1 A1 B2 Z1 B3 H1", "B1 A2 A1 B2 Z1 Z2 B3 H1"},
		},
		"front and back": {
			3,
			[]string{"kfb kfb k | k", "k k k k k | k", "kfb k k kfb k | k", "k k k k k k k | k"},
			[]string{"B1 B2 B3 H1", "B1 A1 B2 Z1 B3 H1", "B1 A1 B2 Z1 B3 H1", "B1 A2 A1 B2 Z1 Z2 B3 H1"},
		},
		"front and back, one-sided": {3, []string{"kfb k k | k", "k k k k | k"}, []string{"B1 B2 B3 H1", "B1 A1 B2 B3 H1"}},
		"lifted, one-sided":         {1, []string{"k lli | k"}, []string{"B1 A1 H1"}},
		"one-sided":                 {2, []string{"k m1l k | k", "k m1l k k | k"}, []string{"B1 A1 B2 H1", "B1 A2 A1 B2 H1"}},
	} {
		t.Run(name, func(t *testing.T) {
			var got []string
			for _, round := range gusset(section(t, c.rounds...), c.base) {
				got = append(got, strings.Join(round, " "))
			}
			assert.Equal(t, c.want, got)
		})
	}
}

// The third column made at the first edge is A3 whatever the rounds of the
// increases, and no name stands twice in a round.
func TestNamesDoNotDependOnTheSchedule(t *testing.T) {
	early := section(t, "k m1l k m1r k | k", "k m1l k k k m1r k | k", "k k k k k k k | k")
	late := section(t, "k k k | k", "k m1l k m1r k | k", "k m1l k k k m1r k | k")
	a, b := gusset(early, 3), gusset(late, 3)
	assert.Equal(t, a[2], b[2])
	for _, round := range a {
		seen := map[string]bool{}
		for _, name := range round {
			require.False(t, seen[name], name)
			seen[name] = true
		}
	}
}

// The other hand has the right hand's columns in the opposite order, also in
// rounds that both work alike: ribbing has the columns of the round below,
// increases and decreases are counted from the other end, and the thumb's
// stitches come back as they were put aside.
func TestMirror(t *testing.T) {
	g := section(t, "k m1l k m1r k | k k k k")
	hand := section(t, "hold hold hold hold hold co co co | k k k k", "k p k p k p k", "k k m1 k k m1 k k k", "k k2tog k k k2tog k k", "k k k k k k k")
	hand.Part = stitch.Hand
	hand.Rounds[0].Keep(stitch.ThumbSet)
	for i := 1; i < 5; i++ {
		hand.Rounds[i].Even = true
	}
	thumb := section(t, "pick pick | gapk2tog k k k gapssk")
	thumb.Part, thumb.From = stitch.Thumb, []stitch.Set{stitch.ThumbSet}
	names := Mirror(stitch.Mitt{Sections: []stitch.Section{g, hand, thumb}}, 3)
	row := func(p stitch.Part, i int) string { return strings.Join(names[p][i], " ") }
	assert.Equal(t, "B3 Z1 B2 A1 B1 H4 H3 H2 H1", row(stitch.Gusset, 0))
	assert.Equal(t, "B3 Z1 B2 A1 B1 C3 C2 C1 H4 H3 H2 H1", row(stitch.Hand, 0))
	assert.Equal(t, "C3 C2 C1 H4 H3 H2 H1", row(stitch.Hand, 1))
	assert.Equal(t, "C3 C2 M2 C1 H4 M1 H3 H2 H1", row(stitch.Hand, 2))
	// On the right C2 goes into M1, and M2 into H2.
	assert.Equal(t, "C3 M1 C1 H4 H2 H3 H1", row(stitch.Hand, 3))
	assert.Equal(t, "C3 C1 H4 M1 H3 H2 H1", row(stitch.Hand, 4))
	assert.Equal(t, "P2 P1 B3 Z1 B2 A1 B1", row(stitch.Thumb, 0))
}

// Where a gusset grows by knitting front and back, the other hand works that in the
// neighbouring columns; what it leaves is in mirror.
func TestMirrorOfFrontAndBack(t *testing.T) {
	mirrored := func(round int, rounds ...string) string {
		m := stitch.Mitt{Sections: []stitch.Section{section(t, rounds...)}}
		return strings.Join(Mirror(m, 4)[stitch.Gusset][round], " ")
	}
	assert.Equal(t, "B4 Z1 B3 B2 A1 B1 H2 H1", mirrored(1, "kfb k kfb k | k k", "k k k k k k | k k"))
	assert.Equal(t, "B4 B3 B2 A1 B1 H2 H1", mirrored(1, "kfb k k k | k k", "k k k k k | k k"))
	assert.Equal(t, "B3 B4 B1 B2 H2 H1", mirrored(0, "kfb k kfb k | k k"), "kfb, k, kfb, k have the right hand's names of these")
}

// A finger that takes up a part of the thumb's bridge and casts on one of its
// own counts on from it: no name stands twice in a round.
func TestTakenColumnsAreCountedOnFrom(t *testing.T) {
	hand := section(t, "hold hold hold co co co | k k k k", "hold hold k | k k hold hold")
	hand.Part = stitch.Hand
	hand.Rounds[0].Keep(stitch.ThumbSet)
	hand.Rounds[1].Keep("index")
	finger := section(t, "k k co co k k", "k k k m1 k k k")
	finger.Part, finger.From = "index", []stitch.Set{"index"}
	names := Mitt(stitch.Mitt{Sections: []stitch.Section{hand, finger}}, 3)
	assert.Equal(t, "C1 C2 C3 C4 H6 H7", strings.Join(names["index"][0], " "))
	assert.Equal(t, "C1 C2 C3 M1 C4 H6 H7", strings.Join(names["index"][1], " "))
}
