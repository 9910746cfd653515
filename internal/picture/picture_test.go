package picture

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

func plan(t *testing.T, kind mitt.Kind, circumference int) *mitt.Plan {
	t.Helper()
	p, err := mitt.New().Plan(&mitt.Request{
		Kind: kind, Gauge: gauge.Gauge{Stitches: 0.24, Rounds: 0.32, Treated: true},
		Hand: hand.Hand{Circumference: units.Length(circumference) * units.Millimetre}, Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
	})
	require.NoError(t, err)
	return p
}

func svg(t *testing.T, s *draw.Scene) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, draw.WriteSVG(&b, s, false))
	return b.String()
}

// Every operation except knit, no stitch and marker has a symbol of its own, within its cell, of
// M, L, C and Z only.
func TestEveryOperationHasASymbol(t *testing.T) {
	seen := map[string]stitch.Op{}
	for _, op := range stitch.All() {
		path := Trade.Symbol(op)
		if op == stitch.Knit || op == stitch.NoStitch || op == stitch.Marker {
			assert.Empty(t, path)
			continue
		}
		require.NotEmpty(t, path, op)
		other, twice := seen[path]
		assert.False(t, twice, "%s and %s look alike", op, other)
		seen[path] = op
		for _, word := range strings.Fields(path) {
			if n, err := strconv.ParseFloat(word, 64); err == nil {
				assert.True(t, n >= 0 && n <= 100, "%s leaves its cell: %s", op, word)
			} else {
				assert.Contains(t, "MLCZ", word, "%s", op)
			}
		}
	}
}

func grid(p *mitt.Plan, marks chart.Marks, left bool) chart.Grid {
	return chart.Source{Mitt: p.Mitt(), Base: p.Gusset.Base, Marks: marks, Mirrored: left}.Prepare().Grid(chart.Options{})
}

// A cell's height over its width is stitches over rounds of a length, and every cell is inside
// the picture.
func TestChartGeometry(t *testing.T) {
	p := plan(t, mitt.Fingerless, 190)
	g := grid(p, nil, false)
	s, at := Chart(g, Look{Cell: 6, Gauge: p.Gauge})
	assert.InDelta(t, 6, at.CellWidth, 1e-9)
	assert.InDelta(t, 6*24.0/32, at.CellHeight, 1e-9)
	for _, row := range g.Rows {
		for _, c := range row.Shown() {
			assert.GreaterOrEqual(t, at.x(c.X), 0.0)
			assert.Less(t, at.x(c.X+1), s.Width)
			assert.GreaterOrEqual(t, at.y(row.Round), 0.0)
		}
	}
	assert.Less(t, at.Bottom, s.Height)
	text := svg(t, s)
	for _, layer := range []string{"colour", "knit", "fifth", "edge", "symbol", "painted", "fault", "note", "float", "needles", "cursor"} {
		assert.Contains(t, text, `data-layer="`+layer+`"`)
	}
	for r := 1; r <= len(g.Rows); r++ {
		assert.Equal(t, 7, strings.Count(text, fmt.Sprintf(`data-row="%d"`, r)), "a place in each layer")
	}
	assert.NotContains(t, text, "style=")
}

// Marks are drawn: the yarn in one run, the symbol, the basting stitch, the frame of the
// round that doesn't add up.
func TestMarksAreDrawn(t *testing.T) {
	p := plan(t, mitt.Fingerless, 190)
	marks := chart.Marks{}
	marks.Apply([]chart.Edit{
		{Section: "gusset", Round: 5, Column: "B1", Layer: chart.Colours, Value: "c"},
		{Section: "gusset", Round: 5, Column: "A2", Layer: chart.Colours, Value: "c"},
		{Section: "gusset", Round: 6, Column: "B2", Layer: chart.Stitches, Value: "k2tog"},
	})
	s, _ := Chart(grid(p, marks, false), Look{Cell: 6, Gauge: p.Gauge})
	text := svg(t, s)
	assert.Equal(t, 1, strings.Count(text, `"yarn yarn-c"`), "one path a row")
	assert.Zero(t, strings.Count(text, `"texture texture-c"`), "no copier")
	assert.Regexp(t, `class="fault"[^>]*data-row="6" d="M`, text)
	assert.Regexp(t, `class="painted"[^>]*data-row="6" d="M`, text)
	key := svg(t, Key(grid(p, marks, false), Look{Symbols: Trade}, 100))
	for _, words := range []string{">k2tog<", "knit two together", ">M1L<", "make one leaning left", "blue"} {
		assert.Contains(t, key, words)
	}
}

// Hands from a baby's to a very large one, both sides, both kinds: texts are inside the picture
// and cover no other, and all eight tapes are there.
func TestHandIsLegible(t *testing.T) {
	for _, kind := range []mitt.Kind{mitt.Fingerless, mitt.Mitten} {
		for circumference := 100; circumference <= 250; circumference += 30 {
			for _, left := range []bool{false, true} {
				for _, u := range []units.Unit{units.CM, units.MM, units.IN} {
					s := Hand(plan(t, kind, circumference), HandOptions{Left: left, Unit: u})
					checkTexts(t, s)
					text := svg(t, s)
					assert.Equal(t, 8, strings.Count(text, `data-field="`))
					assert.Equal(t, 7, strings.Count(text, `"tape filled"`), "one was measured")
					assert.Contains(t, text, `data-section="gusset"`)
				}
			}
		}
	}
	h, _ := hand.Hand{Circumference: 190 * units.Millimetre}.Fill()
	checkTexts(t, Bare(h, nil, HandOptions{Unit: units.CM}))
}

func checkTexts(t *testing.T, s *draw.Scene) {
	t.Helper()
	type box struct {
		l, r, top, low float64
		text           string
	}
	var boxes []box
	for _, i := range s.Items {
		if i.Kind != draw.TextItem {
			continue
		}
		w := draw.Measure(i.Text, i.Letter.Size, i.Letter.Face)
		l := i.X
		switch i.Letter.Anchor {
		case draw.End:
			l -= w
		case draw.Middle:
			l -= w / 2
		}
		b := box{l, l + w, i.Y - 0.75*i.Letter.Size, i.Y, i.Text}
		assert.True(t, b.l >= 0 && b.r <= s.Width && b.top >= 0 && b.low <= s.Height, "%q leaves the picture: %+v of %.0f × %.0f", b.text, b, s.Width, s.Height)
		for _, o := range boxes {
			if b.l < o.r && o.l < b.r && b.top < o.low && o.top < b.low {
				assert.Fail(t, "overlap", "%q lies on %q", b.text, o.text)
			}
		}
		boxes = append(boxes, b)
	}
	assert.NotEmpty(t, boxes)
	assert.NotContains(t, fmt.Sprint(boxes), "NaN")
}

// The same plan gives the same bytes, and a larger mitt is drawn larger.
func TestSmallIsToScale(t *testing.T) {
	p := plan(t, mitt.Mitten, 150)
	assert.Equal(t, svg(t, Small(p, SmallOptions{})), svg(t, Small(p, SmallOptions{})))
	assert.Less(t, Small(plan(t, mitt.Fingerless, 150), SmallOptions{}).Width, Small(plan(t, mitt.Fingerless, 230), SmallOptions{}).Width)
}

// Numbers of rounds that have no room for all stand at every round that changes the
// count, and don't touch; with room for all, all stand.
func TestLargeNumbersDoNotTouch(t *testing.T) {
	p := plan(t, mitt.Fingerless, 190)
	g := grid(p, nil, false)
	for _, c := range []struct {
		numbers float64
		all     bool
	}{{0, true}, {6.35, false}} {
		look := Look{Cell: 6.5, Gauge: p.Gauge, Numbers: c.numbers}
		s, at := Chart(g, look)
		said, before := map[int]bool{}, math.Inf(1)
		for _, i := range s.Items {
			if i.Kind != draw.TextItem || i.Y > at.Bottom || i.Y < at.y(len(g.Rows)) {
				continue
			}
			n, err := strconv.Atoi(i.Text)
			require.NoError(t, err)
			said[n] = true
			assert.Greater(t, before-i.Y, 0.72*i.Letter.Size, "the number of round %d", n)
			before = i.Y
		}
		for _, row := range g.Rows {
			changes := len(row.Shown()) > 0 && slices.ContainsFunc(row.Cells, func(c chart.Cell) bool { return c.Op == stitch.M1L || c.Op == stitch.M1R })
			assert.True(t, said[row.Round] || !changes && !c.all, "round %d", row.Round)
		}
		assert.Equal(t, c.all, len(said) == len(g.Rows))
	}
}
