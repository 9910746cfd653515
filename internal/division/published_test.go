package division

import (
	"encoding/json"
	"fmt"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// glove is a published glove. 0 stands for what its source doesn't tell.
type glove struct {
	Name, Source   string
	Hand           int
	Palm, Back     [Fingers]int
	Bridge         [Bridges]int
	Stitches       [Fingers]int
	AfterDecreases [Fingers]int `json:"after_decreases"`
}

func published(t *testing.T, name string) glove {
	t.Helper()
	text, err := os.ReadFile("testdata/gloves.json")
	require.NoError(t, err)
	var list []glove
	require.NoError(t, json.Unmarshal(text, &list))
	for _, g := range list {
		if g.Name == name {
			return g
		}
	}
	t.Fatalf("no %s in testdata/gloves.json", name)
	return glove{}
}

// problem returns the division of a glove's hand, with nothing fixed. The sources tell
// no measurements: the hand is as wide as its stitches at an ease, and its fingers
// have the usual shares of it.
func (g *glove) problem(t *testing.T, ease float64) Problem {
	t.Helper()
	p := Problem{Stitches: g.Hand}
	for i, ratio := range girthOverHand(t) {
		p.Wanted[i] = wanted(ratio*float64(g.Hand)/(1+ease), 1) // in stitches: one to the mm
	}
	return p
}

func solved(t *testing.T, p Problem) Division {
	t.Helper()
	d, err := Solve(&p)
	require.NoError(t, err)
	return d
}

// The glove of 1918: with its bridges and fingers fixed, palm and back come out finger
// by finger, and with all of its numbers fixed, too.
func TestGloveOf1918(t *testing.T) {
	g := published(t, "plain glove, 1918")
	free := g.problem(t, handEase)
	for name, pins := range map[string]Pins{
		"bridges and fingers": {Bridge: g.Bridge, Stitches: g.Stitches},
		"palm and fingers":    {Palm: g.Palm, Stitches: g.Stitches},
		"palm, back, bridges": {Palm: g.Palm, Back: g.Back, Bridge: g.Bridge},
		"all":                 {Palm: g.Palm, Back: g.Back, Bridge: g.Bridge, Stitches: g.Stitches},
	} {
		p := free
		p.Pins = pins
		d := solved(t, p)
		assert.Equal(t, g.Palm, d.Palm, name)
		assert.Equal(t, g.Back, d.Back, name)
		assert.Equal(t, g.Bridge, d.Bridge, name)
		assert.Equal(t, g.Stitches, d.Stitches, name)
	}

	// Free, index and little finger are wider than the book's, the ring finger narrower.
	d := solved(t, free)
	assert.Equal(t, [Fingers]int{18, 19, 17, 16}, d.Stitches)
	compareWith(t, &g, &free, &d)
}

// compareWith logs a division beside the published one, for a hand of 190 mm.
func compareWith(t *testing.T, g *glove, p *Problem, d *Division) {
	t.Helper()
	gauge := float64(g.Hand) / (1 + handEase) / 190
	theirs := Division{Stitches: g.Stitches}
	mm := func(off [Fingers]int64) (list [Fingers]string) {
		for i, o := range off {
			list[i] = fmt.Sprintf("%+.1f", float64(o)/PerStitch/gauge)
		}
		return list
	}
	t.Logf("%s: published %v off %v mm, chosen %v with bridges %v, palm %v, back %v, off %v mm; all fingers together %.1f mm nearer",
		g.Name, g.Stitches, mm(theirs.Off(p)), d.Stitches, d.Bridge, d.Palm, d.Back, mm(d.Off(p)),
		float64(theirs.sumOff(p)-d.sumOff(p))/PerStitch/gauge)
}

// The worked example of the percentages is the choice for a usual hand at the ease
// that it states, 10 % smaller, without anything fixed.
func TestPercentagesExample(t *testing.T) {
	g := published(t, "percentages")
	free := g.problem(t, -0.1)
	d := solved(t, free)
	assert.Equal(t, g.Stitches, d.Stitches)
	assert.Equal(t, g.Bridge, d.Bridge)
	assert.Equal(t, g.Stitches, byPercentages(48/0.9))

	p := g.problem(t, handEase) // and of any other hand by its fingers alone
	p.Pins.Stitches = g.Stitches
	assert.Equal(t, g.Bridge, solved(t, p).Bridge)
}

// The little finger of the ladies' glove comes out in a hand of any size: 8 of the palm
// and 8 of the back, with the bridge of 6. The sources tell nothing of the others.
func TestLadiesGlove(t *testing.T) {
	g := published(t, "ladies' glove, 1918")
	for g.Hand = 56; g.Hand <= 72; g.Hand++ {
		p := g.problem(t, handEase)
		p.Pins = Pins{Palm: g.Palm, Back: g.Back, Bridge: g.Bridge}
		d := solved(t, p)
		assert.Equal(t, g.Stitches[Little], d.Stitches[Little])
	}
}

// Ten a finger is a division, and bridges of up to 5 are what 58 stitches are given.
func TestPublishedHands(t *testing.T) {
	g := published(t, "ten a finger")
	p := g.problem(t, handEase)
	free := solved(t, p)
	p.Pins = Pins{Both: [Fingers]int{10, 10, 10, 10}}
	d := solved(t, p)
	assert.Equal(t, g.Palm, d.Palm)
	assert.Equal(t, g.Back, d.Back)
	g.Stitches = d.Stitches
	compareWith(t, &g, &p, &free)

	g = published(t, "58 stitches")
	p = g.problem(t, handEase)
	d = solved(t, p)
	for _, x := range d.Bridge {
		assert.LessOrEqual(t, x, 5)
	}
	t.Logf("58 stitches: %+v", d)
}

// The gloves of about 1840: with fingers and bridges fixed the hand is divided.
func TestGlovesOf1840(t *testing.T) {
	g := published(t, "gentlemen's gloves, about 1840")
	free := g.problem(t, handEase)
	p := free
	p.Pins = Pins{Bridge: g.Bridge, Stitches: g.Stitches}
	d := solved(t, p)
	assert.Equal(t, g.Stitches, d.Stitches)
	sum := 0
	for i := range Fingers {
		sum += d.Both(i)
	}
	assert.Equal(t, g.Hand, sum)
	best := solved(t, free)
	compareWith(t, &g, &free, &best)
}
