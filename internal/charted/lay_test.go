package charted

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/tally"
	"thenar/internal/written"
)

func chartsOf(t *testing.T, text string) Charts {
	t.Helper()
	trace, ok := tally.TraceOf(written.Read(text), "", "")
	require.True(t, ok)
	return Of(trace)
}

// drawn writes a chart as it looks, the last round first: a dot for a place without a stitch.
func drawn(c Chart) (list []string) {
	for i := len(c.Grid.Rows) - 1; i >= 0; i-- {
		row := c.Grid.Rows[i]
		line := make([]string, c.Grid.Width)
		for x := range line {
			line[x] = "."
		}
		for _, cell := range row.Shown() {
			line[cell.X] = sign{cell.Op, cell.Said}.name()
		}
		if row.Unread != "" {
			line = []string{"(" + row.Unread + ")"}
		}
		list = append(list, strings.TrimSpace(strings.Join(strings.Fields(fmt.Sprint(strings.Join(line, " "), " ", row.Round, " ", row.Side.Words(), " ", row.Said)), " ")))
	}
	return list
}

// A stitch that is made has its place between its neighbours in all rounds; of those that are
// worked together the one on top goes on; rib goes on as it lies.
func TestColumnsLast(t *testing.T) {
	c := chartsOf(t, `CO 6 sts and join.
Rnd 1: *K1, p1; rep from * around.
Rnd 2: Work even.
Rnd 3: K1, m1l, k4, m1r, k1.
Rnd 4: Knit.
Rnd 5: K2tog, k4, ssk.
Rnd 6: K1, sl1, k2tog, psso, k2.
Rnd 7: S2kp, k1.`)
	require.Len(t, c.List, 1)
	assert.Equal(t, []string{
		". k . . . s2kp . . 7",
		". k k . . sk2p k . 6",
		". ssk k k k k k2tog . 5",
		"k k k k k k k k 4",
		"k M1R k k k k M1L k 3",
		"p . k p k p . k 2",
		"p . k p k p . k 1",
	}, drawn(c.List[0]))
}

// Wrong-side rows stand as they look on the right side; what is picked up, cast on, put aside
// and made in one stitch has its place.
func TestRowsAndEdges(t *testing.T) {
	c := chartsOf(t, `CO 6 sts.
Row 1 (RS): K2, kfb, k3.
Row 2 (WS): P2tog, p4, k1.
Row 3 (RS): K1, slip 2 to waste yarn, cast on 3 sts, k3.
Row 4 (WS): P3, m1p, p4.`)
	require.Len(t, c.List, 1)
	assert.Equal(t, []string{
		"k . k k M1P k k k . . k 4 wrong side",
		"k . k k . CO CO CO hold hold k 3 right side",
		"k2tog . k k . . . . k k p 2 wrong side",
		"k k k . . . . . kfb k k 1 right side",
	}, drawn(c.List[0]))
}

// A round that was not understood is blank, and what hangs on it; once a count is stated the
// rounds after it are a chart of their own. Nothing is made up.
func TestNothingIsMadeUp(t *testing.T) {
	c := chartsOf(t, `CO 6 sts and join.
Rnd 1: Knit.
Rnd 2: K1, frobnicate 2 sts, k1.
Rnd 3: Knit.
Rnd 4: Knit. (5 sts)
Rnd 5: K2tog, k3.
Rnd 6: K2.
Slip the next 2 sts to waste yarn.
Next rnd: K2.
Put the 2 held sts back on the needles.
Rnd 1: K2.
Knit every rnd until it measures 5 cm.`)
	require.Len(t, c.List, 3)
	assert.Equal(t, []string{"(open) 4", "(open) 3", "(not read) 2", "k k k k k k 1"}, drawn(c.List[0]))
	assert.Equal(t, []string{"k k . . . 7", ". . hold hold . 0 between", "? ? k k . 6", "k k k k2tog . 5"}, drawn(c.List[1]))
	assert.Equal(t, []string{"k k 0 as told", "k k 1"}, drawn(c.List[2]))
	assert.Equal(t, []int{2, 3, 4, 5}, c.List[0].Lines)
	assert.Equal(t, []string{"“Not read” was not understood.", "“Open” hangs on a count that isn’t known."}, Said(c.List[:1]))
	assert.Equal(t, []string{"“As told” is worked over and over, as long as the text says."}, Said(c.List[2:]))
}

// What is more than anybody knits isn't drawn.
func TestChartIsBounded(t *testing.T) {
	c := chartsOf(t, "CO 500 sts.\nRnds 1-1000: (K1, p1) 250 times.")
	assert.True(t, c.Cut)
	cells := 0
	for _, one := range c.List {
		for _, row := range one.Grid.Rows {
			cells += len(row.Cells)
		}
	}
	assert.LessOrEqual(t, cells, mostCells+500)
	assert.Equal(t, 500, c.List[0].Grid.Width)
	assert.Equal(t, chart.View("piece"), c.List[0].Grid.View)
}

// What is told by the fabric only is drawn as far as that says what it is: rib goes on as rib,
// stockinette is knit, and of a pattern that may change from round to round nothing is made up.
func TestFabricsAreNotMadeUp(t *testing.T) {
	for told, want := range map[string]string{
		"Work even for 1 round.":                                                      "p k p k",
		"Rnd 3: Work in established pattern.":                                         "p k p k",
		"Rnd 3: Work in rib to end.":                                                  "p k p k",
		"Knit every round until it measures 5 cm.":                                    "k k k k",
		"Work in stockinette until it measures 5 cm.":                                 "k k k k",
		"Work in garter stitch until it measures 5 cm.":                               "k p k p",
		"Rnd 3: *P1, k1; rep from * around.\nRnd 4: Work in pattern.":                 "… … … …",
		"Rnd 3: Work in moss st to end.":                                              "… … … …",
		"Slip 4 sts to waste yarn.\nPlace the 4 held sts on dpns.\nRnd 1: Work even.": "p k p k",
	} {
		c := chartsOf(t, "CO 4 sts and join.\nRnds 1-2: *K1, p1; rep from * around.\n"+told)
		last := drawn(c.List[len(c.List)-1])
		assert.Equal(t, want, strings.Join(strings.Fields(last[0])[:4], " "), "%s: %v", told, last)
	}
	fresh := drawn(chartsOf(t, "CO 4 sts and join.\nWork in rib for 3 cm.\nBO all sts.").List[0])
	assert.Equal(t, []string{"… … … … 0 as told"}, fresh)
	rows := drawn(chartsOf(t, "CO 3 sts.\nRow 1 (RS): Knit.\nRow 2 (WS): Work in stockinette.\nRow 3 (RS): Work in garter st to end.\nRow 4 (WS): Work in garter st to end.").List[0])
	assert.Equal(t, []string{"p p p 4 wrong side", "k k k 3 right side", "k k k 2 wrong side", "k k k 1 right side"}, rows)
}
