package tally

import (
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/testenv"
	"thenar/internal/written"
)

// Texts that nobody would knit are worked within bounds: what they ask for is told once, few
// rounds are kept, less than 100 MB are taken, even if none of it were given back, and none of
// them takes the program down or its time away.
func TestWorkIsBounded(t *testing.T) {
	size := testenv.Cases(1<<14, written.MostBytes)
	filled := func(head, unit string) string { return head + strings.Repeat(unit, (size-len(head))/len(unit)) }
	const sizes = "Sizes: 1 (2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20)\nCO 9 sts.\n"
	const numbers = "9 (9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9, 9)"
	for name, text := range map[string]string{
		"brackets that grow":   "CO 9 sts.\nRnd 1: (((m1 5000 times) 5000 times) 400 times), k to end.",
		"rounds that double":   "CO 9 sts.\n" + strings.Repeat("Next rnd: kfb to end.\n", 60),
		"wide cables":          "CO 99999 sts.\nRnd 1: (c6f, k1) to end.\nRep Rnd 1 4999 times.\nRep Rnd 1 4999 times.",
		"rounds again":         filled("CO 9 sts.\nRnd 1: Knit.\n", "Rep last rnd 5000 times.\n"),
		"rounds between":       filled("CO 9 sts.\nRnd 1: Knit.\nEvery other rnd: Knit.\n", "Rnd 99999: Knit.\nRnd 1: Knit.\n"),
		"markers":              filled("CO 5000 sts.\nRnd 1: (k1, pm) 5000 times.\n", "Next rnd: Knit.\n"),
		"turns":                "CO 5000 sts.\nRnd 1: (k20, pm) 200 times, k to end.\nRow 1: ((k2, turn, p1) 5000 times) 5000 times.",
		"held sets":            filled("CO 99999 sts.\nRnd 1: (slip 1 st to waste yarn) 5000 times, k to end.\n", "Next rnd: Knit.\n"),
		"bound off and on":     "CO 9 sts.\nRnd 1: ((CO 5000 sts, bind off 5000 sts) 5000 times) 5000 times.",
		"commas":               filled("Rnd 1: k1", ",1"),
		"open brackets":        filled("Rnd 1: ", "("),
		"counts":               filled("Rnd 1: k1 ", "(1)"),
		"a paragraph":          filled("Rnd 1: k1,\n", "k1, p1, k1, p1, k1, p1, k1,\n"),
		"a clause":             filled("Rnd 1: ", "slip "),
		"repeats of repeats":   filled("Rnd 1: k1, * k1", " rep from *"),
		"asterisks":            filled("Rnd 1: k1", " * k1"),
		"yarns":                "Yarns: " + filled("", "a b, ") + "c.\nCO 9 sts.\n" + filled("", "Rnd 1: k1 z, k1 z, k1 z, k1 z.\n"),
		"motifs":               "CO 9 sts.\n" + filled("", "Motif 1, row 1: k1.\n") + filled("", "Next rnd: row 1 of motif 1, row 1 of motif 1.\n"),
		"words without a word": filled("CO 9 sts.\n", "Next rnd: flurbx.\n"),
		"short sentences":      filled("CO 9 sts.\n", "Knit. "),
		"shorter sentences":    filled("CO 9 sts.\n", "a. "),
		"full stops":           filled("", "."),
		"long sentences":       filled("CO 9 sts.\n", strings.Repeat("k ", 990)+". "),
		"many items":           filled("CO 9 sts.\n", "Rnd 1: ((k)(k)(k)(k)(k))\n"),
		"marks":                filled("CO 9 sts.\n", strings.Repeat("|", 25)+"\n"),
		"lists":                filled("CO 9 sts.\n", "Rnds 1-1000, 2: k.\n"),
		"lists with a gap":     filled("CO 9 sts.\n", "Rnds 1-998 and 3: k.\n"),
		"lists of shaping":     filled("CO 9 sts.\n6 increase rounds, 3 → 15 stitches.\n", "Rounds 1-999.\n"),
		"paces":                filled("CO 9 sts.\nInc rnd: k.\n", "Work it in round 1"+strings.Repeat(", then in every 4th round 5000 times", 3)+".\n"),
		"all sizes":            filled(sizes, "Next rnd: Knit.\n"),
		"all sizes in rounds":  filled(sizes, "Rnds 1-5000: k.\n"),
		"numbers of all sizes": filled(sizes, "Rnd 1: k "+numbers+". "+numbers+" sts.\n"),
		"miscounts":            filled(sizes, "Rnd 3: k7. 5 sts.\n"),
		"markers, just so":     filled("CO 5000 sts.\nRnd 1: (k1, pm) 190 times, k to end.\n", "Next rnd: Knit.\n"),
	} {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		r := worked(text)
		runtime.ReadMemStats(&after)
		assert.Less(t, (after.TotalAlloc-before.TotalAlloc)/1e6, uint64(100), name)
		assert.LessOrEqual(t, len(r.Findings), mostFindings+20, name) // one statement may find several
		rounds, over := 0, 0
		for _, s := range r.Sizes {
			rounds += len(s.Rounds)
		}
		for _, f := range r.Findings {
			if strings.Contains(f.Message, "more than anybody knits: check") {
				over++
			}
		}
		assert.LessOrEqual(t, rounds, mostSteps/roundSteps+2*written.MostLines, name) // a line may keep one between, and its own
		assert.LessOrEqual(t, over, 1, name)
	}
}

// Of a row of a motif that is told again, what was told last is worked, in each size its own.
func TestRowsOfMotifsToldAgain(t *testing.T) {
	r := worked("Sizes: S (M)\nCO 3 (4) sts.\nMotif 1, row 1: k1.\nSize M only: Motif 1, row 1: k2.\nRnd 1: row 1 of motif 1, k2. 3 (4) sts.\nBO 3 (4) sts.")
	assert.Empty(t, r.Findings)
}
