package paper

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// The bars of a handout: pages of the longest, and the share of its paper that is
// empty but for its last page, in ordinary print upright; pages of the longest in
// large print, upright. A bar that is not reached yet is marked so, and only logged.
const (
	mostOrdinary = 4
	mostEmpty    = 0.12
	mostLarge    = 7

	emptyReached = true  // 9.4 % on A4, 8.9 % on Letter
	largeReached = false // 8 pages for a few on both papers
)

// setKind is a way in which the set of fourteen is printed.
type setKind struct {
	name string
	o    Options
}

// setKinds returns all ways, the one that most classes use first.
func setKinds() []setKind {
	var list []setKind
	for _, way := range []struct {
		name                  string
		large, grey, sideways bool
	}{{"ordinary", false, false, false}, {"large", true, false, false}, {"grey", false, true, false}, {"sideways", false, false, true}, {"large, sideways", true, false, true}} {
		for _, size := range Papers() {
			for _, double := range []bool{true, false} {
				o := Usual()
				o.Paper, o.Double, o.Large, o.Grey, o.Sideways = size, double, way.large, way.grey, way.sideways
				sides := "one side"
				if double {
					sides = "both sides"
				}
				list = append(list, setKind{fmt.Sprintf("%s, %s, %s", size.Words(), way.name, sides), o})
			}
		}
	}
	return list
}

// The set of fourteen takes no more paper than before pages were made up as a whole:
// testdata/fourteen-before.txt has the figures of then, measured as these are.
func TestPaperOfTheSetOfFourteen(t *testing.T) {
	raw, err := os.ReadFile("testdata/fourteen-before.txt")
	require.NoError(t, err)
	before := map[string]string{}
	for line := range strings.Lines(string(raw)) {
		name, figures, _ := strings.Cut(strings.TrimSpace(line), ": ")
		before[name] = figures
	}
	f := newFourteen(t)
	kinds := setKinds()
	for _, k := range kinds[:testenv.Cases(1, len(kinds))] {
		now := useOf(f.set(t, k.o), k.o)
		t.Logf("%-35s %s (before: %s)", k.name, now, before[k.name])
		was := use{}
		_, err := fmt.Sscanf(before[k.name], "%d pages, %d sheets, at most %d a handout, %d under 40 %%, %f %% empty, %f %% at the foot", &was.pages, &was.sheets, &was.most, &was.under, &was.empty, &was.foot)
		require.NoError(t, err, k.name)
		assert.Equal(t, 15, now.handouts, k.name)
		assert.LessOrEqual(t, now.pages, was.pages, k.name)
		assert.LessOrEqual(t, now.sheets, was.sheets, k.name)
		assert.LessOrEqual(t, now.most, was.most, k.name)
		assert.LessOrEqual(t, now.under, was.under, k.name)
		assert.LessOrEqual(t, now.emptyPages(), use{pages: was.pages, handouts: 15, empty: was.empty / 100}.emptyPages()+0.5, k.name)
		switch {
		case k.o.Sideways:
		case k.o.Large && largeReached:
			assert.LessOrEqual(t, now.most, mostLarge, k.name)
		case !k.o.Large:
			assert.LessOrEqual(t, now.most, mostOrdinary, k.name)
			if emptyReached {
				assert.LessOrEqual(t, now.empty, mostEmpty, k.name)
			}
		}
	}
}
