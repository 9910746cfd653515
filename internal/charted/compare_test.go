package charted

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const fromText = `Cuff
CO 8 sts and join.
Rnds 1-2: *K1, p1; rep from * around.

Hand
Rnd 1: K2, m1l, k4, m1r, k2. 10 sts.
Rnd 2: Knit.
Rnd 3: K2, k2tog, k2, ssk, k2. 8 sts.
Rnd 4: Knit.
BO all sts.`

// told returns what a table tells beside a text.
func compared(t *testing.T, text, table, section string) (c Comparison, said string) {
	t.Helper()
	read, err := ReadTable([]byte(table))
	require.NoError(t, err)
	c = Compare(chartsOf(t, text).List, read, section)
	for _, d := range c.Differences {
		said += d.Section + ": " + d.Message + "\n"
	}
	return c, said
}

// A chart of the same stitches agrees, in whichever section it stands; each round in which it
// doesn't is told once, with what is where.
func TestCompare(t *testing.T) {
	const hand = `k,k,.,k,k,k,k,.,k,k,4
k,k,.,ssk,k,k,k2tog,.,k,k,3
k,k,k,k,k,k,k,k,k,k,2
k,k,m1r,k,k,k,k,M1L,k,k,1
`
	table := strings.ReplaceAll(hand, ".", "")
	c, said := compared(t, fromText, table, "")
	assert.Empty(t, said)
	assert.Equal(t, 4, c.Alike)
	assert.Equal(t, []string{"The chart’s rounds 1 to 4: compared with “Hand” in the text."}, c.How)

	_, said = compared(t, fromText, strings.Replace(table, "k2tog", "ssk/red", 1), "hand")
	assert.Equal(t, "Hand: Round 3: stitch 3 is ssk on the chart, k2tog in the text.\n", said)
	_, said = compared(t, fromText, strings.Replace(table, "k,k,k,k,k,k,k,k,k,k,2", ",k,k,p,k,k,k,k,k,k,2", 1), "")
	assert.Equal(t, "Hand: Round 2: the chart has 9 stitches, the text 10. First, stitch 7 is p on the chart, k in the text.\n", said)

	_, said = compared(t, fromText, "k,k,,k,k,k,k,,k,k,5\n"+table, "")
	assert.Equal(t, "Hand: Only the chart has round 5.\n", said)
	c, said = compared(t, fromText, table[strings.Index(table, "\n")+1:]+"p,k,p,k,p,k,p,k,,,2\np,k,p,k,p,k,p,k,,,1\n", "")
	assert.Equal(t, "Hand: Only the text has round 4.\n", said)
	assert.Equal(t, 5, c.Alike)
	_, said = compared(t, fromText, table, "Cuff")
	assert.Contains(t, said, "Cuff: Only the chart has rounds 3 to 4.\n")

	c, said = compared(t, strings.Replace(fromText, "Rnd 2: Knit.", "Rnd 2: Frobnicate 2 sts. 10 sts.", 1), table, "")
	assert.Empty(t, said)
	assert.Contains(t, c.How, "Round 2 of “Hand” isn’t compared: nobody knows its stitches.")
}

// A chart may be read from the left, begin elsewhere, or show a part of each round: that is
// found out, and told.
func TestHowAChartIsRead(t *testing.T) {
	c, said := compared(t, fromText, "k,k,k,k,M1L,k,k,k,k,M1R,1\n", "hand")
	assert.Equal(t, "Hand: Only the text has rounds 2 to 4.\n", said)
	assert.Contains(t, c.How, "Its rounds begin at column 4 from the right edge.")
	c, said = compared(t, strings.Replace(fromText, "K2, m1l, k4, m1r, k2", "K1, k2tog, k1, m1l, k4", 1), "k,k2tog,k,M1R,k,k,k,k,1\n", "hand")
	assert.Equal(t, "Hand: Only the text has rounds 2 to 4.\n", said)
	assert.Contains(t, c.How, "The chart is read from left to right.")
	c, said = compared(t, fromText, "ssk,k,k,k2tog,,,3\nk,k,k,k,k,k,2\nM1R,k,k,k,k,M1L,1\n", "hand")
	assert.Equal(t, "Hand: Only the text has round 4.\n", said)
	assert.Contains(t, c.How, "It shows a part of each round: 4 stitches are left out, and not compared.")
}

// In rows it is compared which side faces, and stitches are counted as they are worked.
func TestCompareRows(t *testing.T) {
	const text = "CO 4 sts.\nRow 1 (RS): Knit.\nRow 2 (WS): P3, k1.\nBO all sts."
	_, said := compared(t, text, "k,k,k,p,2 wrong side\nk,k,k,k,1 right side\n", "")
	assert.Empty(t, said)
	_, said = compared(t, text, "k,p,k,p,2 wrong side\nk,k,k,k,1 right side\n", "")
	assert.Equal(t, "piece: Row 2: stitch 2 is p on the chart, k in the text, seen on the right side.\n", said)
	_, said = compared(t, text, "k,k,k,p,2\nk,k,k,k,1 right side\n", "")
	assert.Equal(t, "piece: Row 2 is a round on the chart, and a wrong-side row in the text.\n", said)
}

// What is no table of a chart is refused, and it is told where.
func TestTablesAreReadStrictly(t *testing.T) {
	for table, said := range map[string]string{
		"":                                 "is empty; send a chart’s table, one row for each round",
		"k,k,2\nk,k2tgo,1\n":               "row 2, field 2: \"k2tgo\" is no stitch; is k2tog meant?",
		"k,k,2\nk,=1+1,1\n":                "row 2, field 2: \"=1+1\" is no stitch; write its abbreviation, such as k or ssk",
		"k,k,2\nk,1\n":                     "row 2 has 2 fields, and the first 3: each row needs as many",
		"k,k,top\n":                        "row 1: its last field is \"top\"; write the round’s number there, such as 12 or 2 wrong side",
		"k,k,1\nk,k,2\n":                   "row 1: round 1 stands above round 2; the last round comes first",
		"k,k,2\n,,1\n":                     "row 2 has no stitch; write one in each field, such as k",
		"k,k,2\nk,\"k,1\n":                 "row 2: its quotes don’t close; save it as CSV anew",
		"{\"unit\": \"cm\"}\n":             "row 1: its quotes don’t close; save it as CSV anew",
		"k,k,1,6x3,hand\n":                 "row 1: this is a boxed chart; download it whole, without boxes",
		strings.Repeat("k,", 1001) + "1\n": "row 1: over 1000 fields; a round has fewer",
		strings.Repeat("k,1\n", 61):        "row 1: over 60 sections; send the table of one mitt",
	} {
		_, err := ReadTable([]byte(table))
		assert.EqualError(t, err, said, "%.40q", table)
	}
	_, err := ReadTable([]byte("\uFEFFK,K tbl/rust,2 not read\r\n,c6f,1\r\n"))
	assert.NoError(t, err)
}

func FuzzReadTable(f *testing.F) {
	f.Add([]byte("k,k,,2\nk,M1L,k,1\n"))
	f.Add([]byte("k,k,2 wrong side\nk,k/rust,1 right side\n"))
	f.Add([]byte("k,between\nk,1\n"))
	f.Fuzz(func(t *testing.T, raw []byte) {
		table, err := ReadTable(raw)
		if err != nil {
			return
		}
		if c := Compare(chartsOf(t, fromText).List, table, ""); len(c.How) == 0 && len(table.rounds) > 0 && c.Alike > 0 {
			t.Fatal("it isn't told how it was aligned")
		}
	})
}
