package words

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/readback"
	"thenar/internal/stitch"
)

// A round in one yarn names it where a knitter would go on with another: after a round of
// several, and where another part begins with new yarn; so do a stitch knitted on and the
// binding off. A strand over too many stitches is told once a round (common practice, no
// source).
func TestTheYarnIsNamedWhereItChanges(t *testing.T) {
	round := stitch.Round{Ops: ops(t, "8*k"), Even: true}
	m := stitch.Mitt{Sections: []stitch.Section{
		{Part: stitch.Cuff, CastOn: 8, Rounds: []stitch.Round{round, round, round, round, round, round}},
		{Part: stitch.Hand, Shift: 1, Rounds: []stitch.Round{round, round}, Finish: stitch.Round{Ops: ops(t, "8*bo")}},
	}}
	inYarns := map[stitch.Part]map[int]*RoundDyed{
		stitch.Cuff: {
			2: {Yarns: strings.Fields("rust cream cream cream cream cream cream rust"), Catch: []string{"rust"}},
			4: {Yarns: strings.Fields("rust rust rust rust rust rust rust rust")},
			6: {Yarns: strings.Fields("rust cream rust cream rust cream rust cream")},
		},
		stitch.Hand: {2: {Yarns: strings.Fields("cream cream rust rust cream cream rust rust")}},
	}
	dyed := Dyed{Yarns: []string{"cream", "rust"}, Every: 5, Round: func(part stitch.Part, n int) *RoundDyed { return inYarns[part][n] }}
	passages := Instructions(m, Hands{Dyed: &dyed})
	var b strings.Builder
	require.NoError(t, Write(&b, passages))
	assert.Equal(t, `Cuff
Cast on 8 stitches in cream with a stretchy cast-on, leaving a tail. Place a marker and join in the round, without a twist.
Yarns: cream, rust. Where no yarn is named, go on in the one before.
“Catching” a yarn: wherever it isn’t used for more than 5 stitches, catch it at least every 5th. Cross it there with the working yarn, behind a stitch.
Round 1: Knit (8).
Round 2: Catching rust: k1 rust, k6 cream, k1 rust (8).
Round 3: In cream: knit (8).
Round 4: In rust: knit (8).
Round 5: In cream: knit (8).
Round 6: (k1 rust, k1 cream) 4 times (8).

Hand
Knit 1 more in rust: the round now begins at the side line. Move the marker there.
Round 1: In cream: knit (8).
Round 2: (k2 cream, k2 rust) twice (8).
Bind off all 8 stitches in cream: work 2, *slip both back, k2tog, work 1; repeat from *. Cut the yarn, draw it through the last. Marker off.
Weave in the ends; no loose thread stays inside.
`, b.String())
	read, err := readback.Read(b.String())
	require.NoError(t, err)
	assert.Equal(t, []string{"rust"}, read.Parts[0].Rounds[1].Caught)
	for _, broken := range [][2]string{{"Knit 1 more in rust", "Knit 1 more"}, {"Round 1: In cream: knit", "Round 1: Knit"}, {"Round 3: In cream: knit", "Round 3: Knit"}} {
		text := strings.Replace(b.String(), broken[0], broken[1], 1)
		if _, err = readback.Read(text); broken[0][0] == 'R' && strings.Contains(broken[0], "Round 1") {
			require.NoError(t, err, "after a stitch in rust it would be in rust")
		} else {
			require.Error(t, err, broken[1])
		}
	}
	assert.Equal(t, "In cream: knit (8).", Select(passages, stitch.Cuff, 1, 1)[0].Steps[0].Text, "a round by itself names its yarn")
}

// Some rounds by themselves come with what explains them, wherever that is told, and without
// what explains others.
func TestSelectedRoundsAreExplained(t *testing.T) {
	catching, first, third := Step{Text: catchTold(5)}, Step{Text: "Motif 1, row 1: k9 rust."}, Step{Text: "Motif 1 (birds), row 10: k9 rust."}
	passages := []Passage{
		{stitch.Gusset, "Gusset", []Step{catching, first, third, {From: 1, To: 1, Text: "Catching rust: k8."}}},
		{stitch.Hand, "Hand", []Step{
			{From: 1, To: 1, Text: "Knit."}, {From: 2, To: 3, Text: "Catching rust: k3, row 10 of motif 1."}, {From: 4, To: 4, Text: "(row 1 of motif 1) twice."},
		}},
	}
	for _, c := range []struct {
		from, to int
		want     []Step
	}{
		{1, 1, nil},
		{3, 3, []Step{catching, third}},
		{4, 4, []Step{first}},
		{1, 4, []Step{catching, first, third}},
	} {
		steps := Select(passages, stitch.Hand, c.from, c.to)[0].Steps
		require.Greater(t, len(steps), len(c.want))
		assert.Equal(t, c.want, append([]Step(nil), steps[:len(c.want)]...))
		assert.Equal(t, c.from, steps[len(c.want)].From)
	}
	assert.Empty(t, Select(passages, stitch.Hand, 5, 9))
}

// A purl in another yarn than the stitch below shows a bump of both, as on the ribs of the
// hand that has the mirror image: it is said once (common practice, no source).
func TestBumpsOfTwoColoursAreTold(t *testing.T) {
	rib := stitch.Round{Ops: ops(t, "k p k p k p k p"), Even: true}
	told := func(yarns string) int {
		m := stitch.Mitt{Sections: []stitch.Section{{Part: stitch.Cuff, CastOn: 8, Rounds: []stitch.Round{rib, rib, rib}}}}
		dyed := Dyed{Yarns: []string{"cream", "rust"}, Every: 5, Round: func(_ stitch.Part, n int) *RoundDyed {
			return map[int]*RoundDyed{2: {Yarns: strings.Fields(yarns)}}[n]
		}}
		var b strings.Builder
		require.NoError(t, Write(&b, Instructions(m, Hands{Dyed: &dyed})))
		return strings.Count(b.String(), "A purl in another yarn than the stitch below shows a bump of both.")
	}
	assert.Equal(t, 1, told("cream rust cream rust cream rust cream rust"))
	assert.Equal(t, 1, told("rust cream rust cream rust cream rust rust"))
	assert.Zero(t, told("cream cream cream cream cream cream cream cream"))
	assert.Zero(t, told("rust cream rust cream rust cream rust cream"), "only knit ribs")
}
