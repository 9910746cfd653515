package tally

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
	"thenar/internal/written"
)

func worked(text string) *Report { return Work(written.Read(text)) }

// The report as JSON keeps its schema, read by an independent library.
func TestReportKeepsItsSchema(t *testing.T) {
	schema := testenv.Schema(t, "check.schema.json")
	for _, dir := range []string{"corpus", "cases"} {
		for _, name := range files(t, dir) {
			_, text := caseOf(t, name)
			raw, err := json.Marshal(worked(text).JSON())
			require.NoError(t, err)
			require.NoError(t, testenv.Validate(t, schema, raw), name)
		}
	}
	raw, err := json.Marshal(struct{ Format string }{"thenar/check@1"})
	require.NoError(t, err)
	require.Error(t, testenv.Validate(t, schema, raw))
}

// A round that doesn't come out is told with the smallest change that would make it.
func TestCures(t *testing.T) {
	for text, want := range map[string]string{
		"CO 30 sts.\nRnd 1: K10, m1, k22.":                      "With k20 in place of k22 it comes out.",
		"CO 30 sts.\nRnd 1: K10, m1, k18.":                      "With k20 in place of k18 it comes out.",
		"CO 20 sts.\nRnd 1: (K2tog) 9 times.":                   "With 10 times in place of 9 it comes out.",
		"CO 42 sts.\nRnd 1: *K2, p2; rep from * to end.":        "It comes out with 2 fewer or 2 more.",
		"CO 30 sts.\nRnd 1: K10, prul 20.":                      "Is purl meant?",
		"CO 30 sts.\nRnd 1: K10, k2tgo, k18.":                   "Is k2tog meant?",
		"CO 30 sts.\nRnd 1: *K1, p1; rpe from * to end.":        "Is rep meant?",
		"CO 30 sts.\nRnd 1: K1, slip 12 sts to a hodler, k 17.": "",
	} {
		r := worked(text)
		require.NotEmpty(t, r.Findings, text)
		if want != "" {
			assert.Equal(t, want, r.Findings[0].Cure, text)
		}
	}
}

// What hangs on something that was not understood is open, until a count is stated: nothing
// after it is guessed.
func TestWhatIsNotUnderstoodLeavesTheRestOpen(t *testing.T) {
	r := worked("CO 30 sts.\nRnd 1: K10, flurb 3, k to end.\nRnd 2: K12.\nRnd 3: Knit. 33 sts.\nRnd 4: K34.\n")
	require.Len(t, r.Findings, 2)
	assert.Equal(t, Unread, r.Findings[0].Kind)
	assert.Equal(t, written.Spot{Line: 2, Column: 13}, r.Findings[0].At)
	assert.Equal(t, Short, r.Findings[1].Kind, "round 4 is counted again")
	assert.Equal(t, 5, r.Findings[1].At.Line)
	assert.True(t, r.Sizes[0].Open)
	assert.Equal(t, []int{-1, -1, 33}, []int{r.Sizes[0].Rounds[0].After, r.Sizes[0].Rounds[1].After, r.Sizes[0].Rounds[2].After})
}

// Of a stated count that is not what the stitches come to, what follows shows which is the
// slip: it is told once.
func TestASlipIsToldOnce(t *testing.T) {
	for _, text := range []string{
		"CO 40 sts.\nRnd 1: K20, m1, k20. 42 sts.\nRnd 2: K41.\nRnd 3: (K1) 41 times. 41 sts.",
		"CO 40 sts.\nRnd 1: K20, m1, k20. 42 sts.\nRnd 2: K42.\nRnd 3: (K2) 21 times. 42 sts.",
	} {
		r := worked(text)
		require.Len(t, r.Findings, 1, text)
		assert.Equal(t, 2, r.Findings[0].At.Line)
	}
}

// BenchmarkWork works a pattern of 2,000 lines.
func BenchmarkWork(b *testing.B) {
	var text strings.Builder
	text.WriteString("CO 60 sts and join.\n")
	for n := 1; n < 2000; n++ {
		fmt.Fprintf(&text, "Rnd %d: *K3, p2, (k1, yo, k2tog) twice, k2tog, m1, k2; rep from * 3 more times. 60 sts.\n", n)
	}
	all := text.String()
	require.Empty(b, worked(all).Findings)
	b.ReportAllocs()
	for b.Loop() {
		worked(all)
	}
}
