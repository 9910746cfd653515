package words

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/readback"
	"thenar/internal/stitch"
)

// ops returns operations by their stable names, each with a number before it or not.
func ops(t *testing.T, text string) []stitch.Op {
	t.Helper()
	var list []stitch.Op
	for _, word := range strings.Fields(text) {
		times, code, found := strings.Cut(word, "*")
		if !found {
			times, code = "1", word
		}
		op, ok := stitch.ByCode(code)
		require.True(t, ok, code)
		for range atoi(t, times) {
			list = append(list, op)
		}
	}
	return list
}

func atoi(t *testing.T, digits string) int {
	t.Helper()
	n := 0
	for _, d := range digits {
		n = 10*n + int(d-'0')
	}
	return n
}

// opened is a made-up tube with an opening of rows in it.
func opened(t *testing.T) stitch.Mitt {
	t.Helper()
	round := stitch.Round{Ops: ops(t, "12*k"), Even: true}
	right := stitch.Round{Ops: ops(t, "12*k"), Side: stitch.RightSide}
	wrong := stitch.Round{Ops: ops(t, "2*p 8*k 2*p"), Side: stitch.WrongSide}
	odd := stitch.Round{Ops: ops(t, "2*k sl k2tog yo m1l k3tog p ssk k yo"), Side: stitch.WrongSide}
	rows := []stitch.Round{right, wrong, right, wrong, right, wrong, right, odd}
	return stitch.Mitt{Sections: []stitch.Section{
		{Part: stitch.Cuff, CastOn: 12, Rounds: []stitch.Round{round}},
		{Part: stitch.CuffPlain, Rounds: rows},
		{Part: stitch.Hand, Rounds: []stitch.Round{{Ops: ops(t, "11*k"), Even: true}}, Finish: stitch.Round{Ops: ops(t, "11*bo")}},
	}}
}

// Rows are said as the hands work them, with the side that faces; right and wrong side in
// turn are told once where a page lists them. Read back they are the rows as they look.
func TestRowsInWords(t *testing.T) {
	m := opened(t)
	require.Empty(t, stitch.Ledger(m))
	passages := Instructions(m, Hands{})
	var all, told strings.Builder
	require.NoError(t, Write(&all, passages))
	require.NoError(t, Write(&told, Told(passages)))
	assert.Contains(t, told.String(), `Plain rows
Take the marker off. From here on work to and fro: turn at the end of every row.
Row 1 (right side): Knit (12).
Row 2 (wrong side): k2, p8, k2 (12).
Rows 3–7: Work rows 1–2 twice more, then row 1 (12).
Row 8 (wrong side): yo, p1, ssp, k1, k3tog as seen from the right side, M1L as seen from the right side, yo, p2tog, sl1 with the yarn in front, p2 (11).

Hand
Join in the round again: turn, put the marker here, and pull the first stitch of the next round snug.
Round 1: Knit (11).
`)
	for _, text := range []string{all.String(), told.String()} {
		read, err := readback.Read(text)
		require.NoError(t, err, text)
		for i, r := range m.Sections[1].Rounds {
			var codes []string
			for _, op := range r.Ops {
				codes = append(codes, op.Abbr())
			}
			assert.Equal(t, codes, read.Parts[1].Rounds[i].Ops, "row %d", i+1)
		}
	}
	assert.Equal(t, "Wrong side: k2, p8, k2", passages[1].Rows()[2].Bare)
	assert.Equal(t, "Right side: knit", passages[1].Rows()[1].Bare)
	yarns := strings.Split("a a b a a a a a a a a", " ")
	assert.Equal(t, "yo a, p1, ssp, k1, k3tog as seen from the right side, M1L as seen from the right side, yo, p2tog, sl1 with the yarn in front in b, p2 a (11).",
		Coloured(stitch.Hand, m.Sections[1].Rounds[7], yarns))
}

// A piece that is cast on for rows is not joined.
func TestRowsAreNotJoined(t *testing.T) {
	m := stitch.Mitt{Sections: []stitch.Section{{Part: stitch.Hand, CastOn: 12, Rounds: opened(t).Sections[1].Rounds[:2], Finish: stitch.Round{Ops: ops(t, "12*bo")}}}}
	var b strings.Builder
	require.NoError(t, Write(&b, Instructions(m, Hands{})))
	assert.NotContains(t, b.String(), "join")
	_, err := readback.Read(b.String())
	require.NoError(t, err, b.String())
}

// Numbers that would stand side by side have a comma between them.
func TestRowsAgainAreReadable(t *testing.T) {
	var steps []Step
	for r := range 9 {
		text := []string{"Knit (8).", "Purl (8)."}[r%2]
		steps = append(steps, Step{From: r + 1, To: r + 1, Text: text, Rows: true})
	}
	last := again(steps)[2]
	assert.Equal(t, "Rows 3–9: Work rows 1–2, 3 times more, then row 1 (8).", last.Label()+": "+last.Text)
}

// A flat piece with an opening says where its seam lies, where it stays open and from
// where it is sewn again, and is told apart from one whose seam is sewn all along.
func TestAnOpeningInASeamIsTold(t *testing.T) {
	row := func(text string, side stitch.Side) stitch.Round {
		return stitch.Round{Ops: ops(t, text), Even: true, Side: side}
	}
	plain := []stitch.Round{row("12*k", stitch.RightSide), row("12*k", stitch.WrongSide)}
	m := stitch.Mitt{Sections: []stitch.Section{
		{Part: stitch.Cuff, CastOn: 12, Seam: 1, Rounds: plain},
		{Part: stitch.Opening, Seam: 1, About: stitch.About{Ends: 2}, Rounds: []stitch.Round{plain[0], row("2*p 8*k 2*p", stitch.WrongSide)}},
		{Part: stitch.Hand, Seam: 1, Rounds: plain, Finish: stitch.Round{Ops: ops(t, "12*bo")}},
	}}
	var b strings.Builder
	require.NoError(t, Write(&b, Instructions(m, Hands{Tails: Tails{Seam: 500, SeamAbove: 450}})))
	text := b.String()
	for _, want := range []string{
		"The seam stays open here: the thumb comes out between the two ends of the rows.\nThe first and the last 2 stitches of every row are knitted",
		"A row begins at the seam, on the thumb’s side. Right-side rows cross the palm, then the back.",
		"Hand\nHere the opening ends: from here on the edges go into the seam again.\n",
		"one stitch of each edge goes inside. Take 50 cm / 20 in of yarn below the opening and 45 cm / 18 in above it.\nLeave the 2 rows of the opening open for the thumb.",
	} {
		assert.Contains(t, text, want)
	}
	_, err := readback.Read(text)
	require.NoError(t, err, text)
	_, err = readback.Read(strings.Replace(text, "Leave the 2 rows", "Leave the 3 rows", 1))
	require.ErrorContains(t, err, "2 rows are those of an opening")
	_, err = readback.Read(strings.Replace(text, "Leave the 2 rows of the opening open for the thumb. ", "", 1))
	require.ErrorContains(t, err, "was to stay open along 2 rows")
}

// A cuff in garter stitch is told in a line where a page lists its rounds, and read back it
// is the same; four rounds of an edge stay as they are.
func TestGarterIsToldInALine(t *testing.T) {
	garter := func(rounds int) stitch.Mitt {
		s := stitch.Section{Part: stitch.Cuff, CastOn: 12, Finish: stitch.Round{Ops: ops(t, "12*bo")}}
		for r := range rounds {
			s.Rounds = append(s.Rounds, stitch.Round{Ops: ops(t, []string{"12*p", "12*k"}[r%2]), Even: true})
		}
		return stitch.Mitt{Sections: []stitch.Section{s}}
	}
	for rounds, want := range map[int]int{4: 4, 38: 3, 39: 3} {
		told := Told(Instructions(garter(rounds), Hands{}))
		lines := 0
		for _, s := range told[0].Steps {
			if s.From > 0 {
				lines++
			}
		}
		assert.Equal(t, want, lines, "%d rounds", rounds)
		var b strings.Builder
		require.NoError(t, Write(&b, told))
		m, err := readback.Read(b.String())
		require.NoError(t, err, b.String())
		require.Len(t, m.Parts[0].Rounds, rounds)
		assert.Equal(t, strings.Fields("p p p p p p p p p p p p"), m.Parts[0].Rounds[rounds-2+rounds%2].Ops)
	}
}
