package picture

import (
	"math"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/stitch"
)

// empty holds the operations with an empty cell: knit is an empty square in charts of the trade
// (from memory), the others are no stitches.
var empty = []stitch.Op{stitch.NoStitch, stitch.Knit, stitch.Marker}

var symbolData = regexp.MustCompile(`^M( -?[0-9.]+){2}( [ML]( -?[0-9.]+){2}| C( -?[0-9.]+){6}| Z)+$`)

func TestEveryOperationHasASymbolOfItsOwn(t *testing.T) {
	for _, by := range Conventions {
		everySymbol(t, by)
	}
}

func everySymbol(t *testing.T, by Convention) {
	seen := map[string]stitch.Op{}
	for _, op := range stitch.All() {
		d := by.Symbol(op)
		if slices.Contains(empty, op) {
			assert.Empty(t, d, op.Code())
			continue
		}
		assert.Regexp(t, symbolData, d, op.Code())
		assert.NotContains(t, seen, d, "%s and %s look alike", op.Code(), seen[d].Code())
		seen[d] = op
		a := extent(t, d)
		assert.True(t, a.left >= 0 && a.top >= 0 && a.right <= 100 && a.bottom <= 100, "%s leaves its cell", op.Code())
		assert.Greater(t, max(a.right-a.left, a.bottom-a.top), 9.0, "%s can't be seen", op.Code())
	}
}

// points returns the points of path data, mirrored on demand.
func points(t *testing.T, d string, mirrored bool) [][2]float64 {
	t.Helper()
	var out [][2]float64
	all := numbers.FindAllString(d, -1)
	for i := 0; i+1 < len(all); i += 2 {
		x, y := num(t, all[i]), num(t, all[i+1])
		if mirrored {
			x = 100 - x
		}
		out = append(out, [2]float64{math.Round(x*100) / 100, y})
	}
	slices.SortFunc(out, func(a, b [2]float64) int { return slices.Compare(a[:], b[:]) })
	return slices.Compact(out)
}

// The symbol of a stitch's twin for the other hand is the mirror image of its own.
func TestTwinsAreMirrorImages(t *testing.T) {
	for _, op := range stitch.All() {
		if op.Twin() == op {
			continue
		}
		for _, by := range Conventions {
			assert.Equal(t, points(t, by.Symbol(op), true), points(t, by.Symbol(op.Twin()), false), "%s, %s", by, op.Code())
		}
	}
}

// In both conventions, from memory, k2tog rises to the right, ssk to the left.
func TestDecreasesSlant(t *testing.T) {
	line := func(op stitch.Op) (x1, y1, x2, y2 float64) {
		n := numbers.FindAllString(Trade.Symbol(op), 4)
		return num(t, n[0]), num(t, n[1]), num(t, n[2]), num(t, n[3])
	}
	x1, y1, x2, y2 := line(stitch.K2tog)
	assert.Negative(t, (x2-x1)*(y2-y1), "y grows downwards")
	x1, y1, x2, y2 = line(stitch.SSK)
	assert.Positive(t, (x2-x1)*(y2-y1))
	for _, op := range []stitch.Op{stitch.P2tog, stitch.K3tog, stitch.GapK2tog} {
		assert.True(t, strings.HasPrefix(Trade.Symbol(op), Trade.Symbol(stitch.K2tog)), op.Code())
	}
}

func TestASymbolKeepsItsProportionsInItsCell(t *testing.T) {
	a := extent(t, symbolInCell(Trade.Symbol(stitch.YarnOver), 10, 20, 8, 6))
	assert.InDelta(t, a.right-a.left, a.bottom-a.top, 0.01, "a circle stays round")
	assert.InDelta(t, 14, (a.left+a.right)/2, 0.01)
	assert.InDelta(t, 23, (a.top+a.bottom)/2, 0.01)
	assert.Empty(t, symbolInCell("", 0, 0, 1, 1))
}
