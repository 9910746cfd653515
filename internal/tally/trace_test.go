package tally

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/written"
)

// told writes a trace in one line a step, for a person to read.
func told(t Trace) (list []string) {
	for _, s := range t.Steps {
		var b strings.Builder
		fmt.Fprintf(&b, "%s %d", [...]string{"works", "casts", "takes", "shifts", "ends", "jumps"}[s.Does], s.Round)
		if s.Side != written.NoSide {
			b.WriteString([...]string{"", " right", " wrong"}[s.Side])
		}
		fmt.Fprintf(&b, ", line %d: %d to %d:", s.Line, s.Before, s.After)
		for _, r := range s.Runs {
			name := [...]string{r.Name, "", "hold", "co", "pick", "waste", "", "", "", "bo", "take", "stay", "", "?"}[r.Does]
			fmt.Fprintf(&b, " %s×%d", name, r.Times)
			if r.Set > 0 {
				fmt.Fprintf(&b, "(%d)", r.Set)
			}
			if r.Even {
				b.WriteString("=")
			}
		}
		if len(s.Markers) > 0 {
			fmt.Fprintf(&b, " |%v", s.Markers)
		}
		for _, one := range []struct {
			is   bool
			said string
		}{{s.Open, " open"}, {s.Failed, " failed"}, {s.Long, " long"}} {
			if one.is {
				b.WriteString(one.said)
			}
		}
		list = append(list, b.String())
	}
	return list
}

func traced(t *testing.T, text string) Trace {
	t.Helper()
	trace, ok := TraceOf(written.Read(text), "", "")
	require.True(t, ok)
	return trace
}

// What is worked is kept stitch by stitch, whatever way it is told in.
func TestTrace(t *testing.T) {
	assert.Equal(t, []string{
		"casts 0, line 1: 0 to 12: co×12",
		"works 1, line 2: 12 to 12: k×1 p×1 k×1 p×1 k×1 p×1 k×1 p×1 k×1 p×1 k×1 p×1",
		"works 2, line 3: 12 to 14: k×2 M1L×1 k×2 M1R×1 k×8 |[2 6]",
		"works 3, line 4: 14 to 14: k×14= |[2 6]",
		"works 0, line 5: 14 to 10: hold×4(1) stay×10 |[0 2]",
		"works 4, line 6: 10 to 11: k×1 k2tog×1 co×2 k×7 |[0 2]",
		"ends 0, line 7: 11 to 0: bo×11",
		"takes 0, line 8: 0 to 4: take×4(1)",
		"works 1, line 9: 4 to 5: k×4 pick×1",
		"works 0, line 10: 5 to 5: k×5= long",
		"ends 0, line 11: 5 to 0: bo×5",
	}, told(traced(t, `CO 12 sts and join.
Rnd 1: *K1, p1; rep from * around.
Rnd 2: K2, pm, m1l, k2, m1r, pm, k8.
Rnd 3: Work even.
Slip the next 4 sts to waste yarn.
Rnd 4: K1, k2tog, cast on 2 sts, k to end.
BO all 11 sts.
Put the 4 held sts back on the needles.
Next rnd: K4, pick up and knit 1.
Knit every rnd until the thumb measures 5 cm.
BO all sts.`)))
}

// Rows have their sides; a round that wasn't understood is open, and one that doesn't come
// out keeps what is left over.
func TestTraceOfSlips(t *testing.T) {
	assert.Equal(t, []string{
		"casts 0, line 1: 0 to 6: co×6",
		"works 1 right, line 2: 6 to 6: k×6",
		"works 2 wrong, line 3: 6 to 6: p×6",
		"works 3 right, line 4: 6 to 6: k×4 ?×2 failed",
		"works 4 wrong, line 5: -1 to 6: open failed",
		"works 5 right, line 6: 6 to 5: k2tog×1 k×4",
		"ends 0, line 7: 5 to 0: bo×5",
	}, told(traced(t, `CO 6 sts.
Row 1 (RS): Knit.
Row 2 (WS): Purl.
Row 3: K4.
Row 4: Frobnicate the next 3 sts. (6 sts)
Row 5: K2tog, k to end.
BO all sts.`)))
}

// A trace costs the work nothing that isn't asked for, and is bounded when it is.
func TestTraceIsBounded(t *testing.T) {
	text := "CO 1000 sts.\n" + strings.Repeat("Rnds 1-4000: (K1, p1) 500 times.\n", 20)
	trace := traced(t, text)
	assert.True(t, trace.Cut)
	runs := 0
	for _, s := range trace.Steps {
		runs += len(s.Runs)
	}
	assert.Less(t, runs, mostRuns)
	_, ok := TraceOf(written.Read(text), "48", "")
	assert.False(t, ok, "a size that the text doesn't have")
}
