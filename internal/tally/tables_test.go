package tally

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const tabledGusset = `Sizes: 44 (48)
CO 44 (48) sts and join.
Gusset
Rnd 1: K22 (24), pm, m1, pm, k22 (24). 45 (49) sts.
`

// Tables that tell in which rounds it is shaped, or what there is then, are compared with the
// rounds, in each size its own, in several forms.
func TestTablesAreCompared(t *testing.T) {
	rounds := "Rnd 2: K to m, sm, m1, k to m, m1, sm, k to end.\nRnds 3 and 4: Knit.\nRnd 5: K to m, sm, m1, k to m, m1, sm, k to end.\nRnd 6: Knit.\n\nHand\nKnit 3 rnds.\nBO."
	for text, message := range map[string]string{
		"Round | 44 | 48\n2 | 47 | 51\n5 | 49 | 53\n":                               "",
		"Round | 44 | 48\n2 | 47 | 51\n5 | 49 | 54\n":                               "After it there are 53 stitches, not 54.",
		"| Increase | 44 | 48 |\n|---|---|---|\n| 1st | 2 | 2 |\n| 2nd | 5 | 6 |\n": "It is shaped in round 5, not 6.",
		"Size | Inc rnds\n44 | 2, 5\n48 | 2, 5, 8\n":                                "The table has 3 rounds of shaping here, and 2 are worked.",
		"Size | Number of inc rnds\n44 | 3\n48 | 3\n":                               "",
		"Size | Yarn\n44 | 50 g\n48 | 60 g\n":                                       "",
		"  increase  round   gusset  stitches\n  size      44, 48  44, 48  48\n  1st       2       3       51\n  2nd       5       6       53\n": "Between the markers there are then 5 stitches, not 6.",
	} {
		r := worked(tabledGusset + text + rounds)
		if message == "" {
			assert.Empty(t, r.Findings, text)
			continue
		}
		require.NotEmpty(t, r.Findings, text)
		assert.Equal(t, message, r.Findings[0].Message, text)
		assert.Equal(t, Listed, r.Findings[0].Kind)
	}
}

// Rounds that are listed, or told by a table, are worked there; how many there are said to be is
// compared.
func TestListedRoundsAreWorked(t *testing.T) {
	inc := "Inc rnd: K to m, sm, m1, k to m, m1, sm, k to end.\n"
	r := worked(tabledGusset + inc + "Work inc rnd on rnds 3, 6 and 9, knitting all other rnds. 51 (55) sts.\nBO 51 (55) sts.")
	assert.Empty(t, r.Findings)
	assert.Equal(t, []int{1, 2, 3, 4, 5, 6, 7, 8, 9}, numbersOf(r.Sizes[0].Rounds))
	r = worked(tabledGusset + inc + "Work inc rnd on rnds 3, 6 and 9 (4 increase rnds), knitting all other rnds. 51 (55) sts.\nBO 51 (55) sts.")
	require.Len(t, r.Findings, 1)
	assert.Equal(t, [2]int{3, 4}, [2]int{r.Findings[0].Found, r.Findings[0].Expected})
	r = worked(tabledGusset + "Size | Inc rnds\n44 | 3, 6\n48 | 3, 6, 9\n" + inc + "Work inc rnd on the rounds shown in the table. 49 (55) sts.\nBO 49 (55) sts.")
	assert.Empty(t, r.Findings)
	r = worked(tabledGusset + "Size | When\n44 | now\n48 | then\n" + inc + "Work inc rnd on the rounds shown in the table.\nKnit 1 rnd.")
	require.Len(t, r.Findings, 1)
	assert.Equal(t, Unread, r.Findings[0].Kind, "a table that was not understood, and stitches hang on it")
	r = worked(tabledGusset + inc + "Work inc rnd on rnds 3, 6 and 5. 51 (55) sts.")
	require.NotEmpty(t, r.Findings)
	assert.Equal(t, Misnumbered, r.Findings[0].Kind)
}

func numbersOf(list []Round) (numbers []int) {
	for _, one := range list {
		numbers = append(numbers, one.Number)
	}
	return numbers
}

// Shaping that is told by where and how often it comes is worked there, and keeps the markers.
func TestShapingIsWorkedWhereItIsMeant(t *testing.T) {
	gusset := "CO 44 sts. Join.\nRnd 1: K21, pm, k2, pm, k21.\n"
	for text, want := range map[string][2]int{ // stitches, and those between the markers
		gusset + "Inc 1 st each side of the gusset every 3rd rnd 3 times.":                                                                           {50, 8},
		gusset + "Increase 1 st after the first marker and before the second on next and every foll 4th rnd until there are 12 sts between markers.": {54, 12},
		gusset + "Inc 1 st each side of the markers on next rnd.":                                                                                    {48, 4},
		gusset + "Inc 1 st before first marker and 1 st after second marker on next rnd.":                                                            {46, 2},
		"CO 44 sts. Join.\nRnd 1: K17, pm, k10, pm, k17.\nDec 1 st each side of the markers on next 2 rnds.":                                         {36, 6},
		"CO 30 sts.\nRow 1: K10, pm, k10, pm, k10.\nInc 1 st at each end of next and every foll alt row twice.":                                      {36, 10},
		"CO 30 sts.\nRow 1: K10, pm, k10, pm, k10.\nDec 1 st at beg of next 2 rows.":                                                                 {28, 10},
	} {
		r := worked(text)
		assert.Empty(t, r.Findings, text)
		rounds := r.Sizes[0].Rounds
		assert.Equal(t, want[0], rounds[len(rounds)-1].After, text)
		if want[1] >= 0 {
			assert.Equal(t, want[1], rounds[len(rounds)-1].Inside, text)
		}
	}
	r := worked(gusset + "Inc 1 st each side on next rnd.\nRnd 3: K21, sm, k to end.")
	assert.Empty(t, r.Findings, "where the markers are then isn't known")
}
