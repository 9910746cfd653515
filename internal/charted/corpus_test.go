package charted

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/tally"
	"thenar/internal/written"
)

// tableOf writes charts as one table.
func tableOf(t *testing.T, list []Chart) []byte {
	t.Helper()
	grids := make([]chart.Grid, len(list))
	for i := range list {
		grids[i] = list[i].Grid
	}
	var b bytes.Buffer
	require.NoError(t, chart.TableOf(&b, grids))
	return b.Bytes()
}

// What is drawn of any text of the corpus can be read as a table, and agrees with the text in
// every round whose stitches are known.
func TestCorpusAgreesWithItsCharts(t *testing.T) {
	files, err := filepath.Glob("../tally/testdata/corpus/*.txt")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	drawn := 0
	for _, file := range files {
		raw, err := os.ReadFile(file)
		require.NoError(t, err)
		_, words, _ := strings.Cut(string(raw), "\n---\n")
		text := written.Read(words)
		for _, size := range text.Sizes {
			for _, hand := range []string{"", "right", "left"} {
				trace, ok := tally.TraceOf(text, size, hand)
				if !ok {
					continue
				}
				c := Of(trace)
				known := 0
				for _, one := range c.List {
					for _, row := range one.Grid.Rows {
						if row.Round > 0 && row.Unread == "" && row.Said == "" {
							known++
						}
						for _, cell := range row.Cells {
							require.GreaterOrEqual(t, cell.X, 0, file)
							require.Less(t, cell.X, one.Grid.Width, file)
						}
					}
				}
				if len(c.List) == 0 {
					continue
				}
				table, err := ReadTable(tableOf(t, c.List))
				require.NoError(t, err, file)
				found := Compare(c.List, table, "")
				assert.Empty(t, found.Differences, "%s %s", file, size)
				assert.Equal(t, known, found.Alike, file)
				drawn += known
			}
		}
	}
	assert.Greater(t, drawn, 1000)
}

func FuzzOf(f *testing.F) {
	f.Add("CO 6 sts.\nRnd 1: *K1, m1; rep from * around.\nRnd 2: Sl 1, k2tog, psso, k to end.\nRep Rnds 1-2 until 20 sts.\nBO all sts.")
	f.Add("CO 8 sts.\nRow 1 (RS): K2, pm, kfb, yo, pm, k to end.\nRow 2: Purl.\nSlip 3 sts to waste yarn.\nNext row: CO 2, k5.\nPut the 3 held sts back on the needles.\nWork even for 3 rnds.")
	f.Fuzz(func(t *testing.T, raw string) {
		if len(raw) > 4000 || strings.Count(raw, "\n") > 80 {
			return
		}
		text := written.Read(raw)
		trace, ok := tally.TraceOf(text, text.Sizes[0], "")
		if !ok {
			return
		}
		c := Of(trace)
		for _, one := range c.List {
			if len(one.Lines) != len(one.Grid.Rows) {
				t.Fatalf("%d lines of %d rows", len(one.Lines), len(one.Grid.Rows))
			}
		}
		if len(c.List) == 0 {
			return
		}
		if table, err := ReadTable(tableOf(t, c.List)); err == nil {
			if found := Compare(c.List, table, ""); len(found.Differences) > 0 && !c.Cut {
				t.Fatalf("it differs from itself: %v", found.Differences)
			}
		}
	})
}
