package project

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/readback"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/wale"
	"thenar/internal/words"
)

// motif purls some stitches of the hand in every nth round, each time the same.
func motif(rng *rand.Rand, m stitch.Mitt, names wale.Names) chart.Marks {
	marks := chart.Marks{}
	hand := m.Section(stitch.Hand)
	nth := 2 + rng.IntN(3)
	for r := 1 + rng.IntN(3); r < len(hand.Rounds); r += nth {
		for i, op := range hand.Rounds[r].Ops {
			if op == stitch.Knit && i%(3+nth) == 0 {
				marks[chart.Anchor{Section: stitch.Hand, Round: r + 1, Column: names[stitch.Hand][r][i]}] = chart.Mark{Stitch: "p"}
			}
		}
	}
	return marks
}

// merged returns the instructions as they are printed, as plain text.
func merged(t *testing.T, out *Outputs) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, words.Write(&b, words.Merged(out.Words)))
	return b.String()
}

// The printed words, in which rounds that read alike stand once, are the same mitt,
// round for round; every round is named in its order, and each that changes the count
// has a line of its own. Of several motifs one is told again by its numbers.
func TestMergedWordsAreTheSameMitt(t *testing.T) {
	rng := rand.New(rand.NewPCG(22, 3))
	pl := NewPlanner()
	again := 0
	for range testenv.Cases(60, 1000) {
		d, p := anyMitt(rng, pl)
		m := p.Plan.Mitt()
		out, err := pl.Derive(d, motif(rng, m, wale.Mitt(m, p.UnderThumb())))
		require.NoError(t, err)
		text := merged(t, out)
		read, err := readback.Read(text)
		require.NoError(t, err, text)
		require.NoError(t, differs(read, out.Mitt), text)
		again += strings.Count(text, ": Work rounds ")
		require.Equal(t, text, fromRows(words.Merged(out.Words)), "the table of rows says the same")
		lines := map[stitch.Part]map[int]bool{}
		for _, passage := range words.Merged(out.Words) {
			lines[passage.Part] = map[int]bool{}
			next := 1
			for _, s := range passage.Steps {
				if s.From > 0 {
					require.Equal(t, next, s.From, text)
					next = s.To + 1
				}
				lines[passage.Part][s.From] = s.From > 0 && s.From == s.To
			}
		}
		for _, s := range out.Mitt.Sections {
			for i, r := range s.Rounds {
				if r.In() != r.Out() {
					require.True(t, lines[s.Part][i+1], "%s, round %d\n%s", s.Part, i+1, text)
				}
			}
		}
	}
	assert.Positive(t, again)
}

// fromRows writes the instructions anew from their rows: a count that is not told is
// that of the row above.
func fromRows(passages []words.Passage) string {
	var b strings.Builder
	for i, p := range passages {
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(p.Title + "\n")
		var all, inside int
		for _, r := range p.Rows() {
			if r.From == 0 {
				b.WriteString(r.Bare + "\n")
				continue
			}
			if r.All > 0 {
				all, inside = r.All, r.Inside
			}
			of := ""
			if inside > 0 {
				of = fmt.Sprintf(", of which %d in the gusset", inside)
			}
			fmt.Fprintf(&b, "%s: %s (%d%s).\n", r.Label(), r.Bare, all, of)
		}
	}
	return b.String()
}

// A motif that was worked out by hand: purls in rounds 2, 4 … 8 of 11.
func TestMotifIsToldOnce(t *testing.T) {
	steps := []words.Step{
		{From: 1, To: 1, Text: "k4, M1 (5)."},
		{From: 2, To: 2, Text: "k1, p1, k3 (5)."},
		{From: 3, To: 3, Text: "Knit (5)."},
		{From: 4, To: 4, Text: "k1, p1, k3 (5)."},
		{From: 5, To: 5, Text: "Knit (5)."},
		{From: 6, To: 6, Text: "k1, p1, k3 (5)."},
		{From: 7, To: 7, Text: "Knit (5)."},
		{From: 8, To: 8, Text: "k1, p1, k3 (5)."},
		{From: 9, To: 11, Text: "Knit (5)."},
		{Text: "Bind off all 5 stitches."},
	}
	var got []string
	for _, s := range words.Merged([]words.Passage{{Part: stitch.Hand, Title: "Hand", Steps: steps}})[0].Steps {
		got = append(got, s.Label()+": "+s.Text)
	}
	assert.Equal(t, []string{
		"Round 1: k4, M1 (5).", "Round 2: k1, p1, k3 (5).", "Round 3: Knit (5).",
		"Rounds 4–8: Work rounds 2–3 twice more, then round 2 (5).", "Rounds 9–11: Knit (5).", ": Bind off all 5 stitches.",
	}, got)
	waves := []words.Step{
		{From: 1, To: 1, Text: "k4, M1 (5)."}, {From: 2, To: 2, Text: "k2tog, k3 (4)."}, {From: 3, To: 3, Text: "k4, M1 (5)."}, {From: 4, To: 4, Text: "k2tog, k3 (4)."},
	}
	assert.Equal(t, waves, words.Merged([]words.Passage{{Part: stitch.Hand, Steps: waves}})[0].Steps, "each change of the count keeps its line")
	gusset := words.Passage{Part: stitch.Gusset, Title: "Gusset", Steps: []words.Step{
		{From: 1, To: 1, Text: "k1, M1L, k1 | knit to the end (9, of which 3 in the gusset)."},
		{From: 2, To: 3, Text: "Knit (9, of which 3 in the gusset)."},
		{From: 4, To: 4, Text: "k1, M1L, k2 | knit to the end (10, of which 4 in the gusset)."},
	}}
	got = nil
	for _, r := range gusset.Rows() {
		got = append(got, fmt.Sprintf("%s: %s, %d, %d", r.Numbers(), r.Bare, r.Inside, r.All))
	}
	assert.Equal(t, []string{"1: k1, M1L, k1 | knit to the end, 3, 9", "2–3: Knit, 0, 0", "4: k1, M1L, k2 | knit to the end, 4, 10"}, got)
}
