package picture

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/draw"
)

// chartsOf returns the charts of sizes put over each other.
func chartsOf(sizes []NestedSize, left bool) []chart.Sizes {
	sources := make([]chart.Source, len(sizes))
	for i, s := range sizes {
		sources[i] = chart.Source{Mitt: s.Plan.Mitt(), Base: s.Plan.UnderThumb(), Mirrored: left}.Prepare()
	}
	return chart.SizesCharts(sources)
}

// A chart of several sizes of every kind, on both hands: its texts lie within the picture and
// not over each other; each round that changes a count has its number on a grey tab, with
// the sizes that change it if not all do; each size that ends by itself says so; and the line
// of each size is as broad in every round as its gusset.
func TestChartOfSizes(t *testing.T) {
	shared := 0
	for name, of := range waysMade {
		sizes := sizesMade(t, of, 15, 17, 19, 21, 23)
		names := make([]string, len(sizes))
		for i, s := range sizes {
			names[i] = s.Name
		}
		for _, left := range []bool{false, true} {
			for _, c := range chartsOf(sizes, left) {
				l := SizesLook{Look: Look{Cell: 3.9, Gauge: sizes[0].Plan.Gauge}, Letter: 3.2, Names: names}
				s := SizesChart(&c, l)
				var placed []area
				said, tabs := []string{}, 0
				for _, i := range s.Items {
					if i.Kind == draw.PathItem && i.Style.Fill == bandColour {
						tabs += strings.Count(i.Path, "M")
					}
					if i.Kind != draw.TextItem {
						continue
					}
					wide, x := draw.Measure(i.Text, i.Letter.Size, i.Letter.Face), i.X
					switch i.Letter.Anchor {
					case draw.End:
						x -= wide
					case draw.Middle:
						x -= wide / 2
					}
					at := area{x, i.Y - 0.6*i.Letter.Size, x + wide, i.Y}
					require.True(t, at.left >= -0.01 && at.right <= s.Width+0.01 && at.top >= -0.01 && at.bottom <= s.Height+0.01, "%s: %q lies outside", name, i.Text)
					for k, other := range placed {
						require.False(t, at.meets(other), "%s: %q over %q", name, i.Text, said[k])
					}
					placed, said = append(placed, at), append(said, i.Text)
				}
				changing, ends := 0, map[int]bool{}
				for y, r := range c.Rows {
					if r.Changes() {
						changing++
						for i, size := range c.Of {
							if len(c.Of) > 1 && r.Works[i] && r.Others() {
								require.Regexp(t, `\b`+names[size]+`\b`, strings.Join(said, "|"), "%s, row %d", name, y+1)
							}
						}
					}
				}
				require.Equal(t, changing, tabs, name)
				for i := range c.Of {
					ends[c.Ends(i)] = true
				}
				told := 0
				for _, text := range said {
					if strings.HasSuffix(text, " ends") || strings.HasSuffix(text, " end") {
						told++
					}
				}
				if len(ends) == 1 {
					ends = nil
				}
				require.Len(t, ends, told, name)
				if len(c.Of) > 1 {
					shared++
				}
				chart := &sizesChart{c: &c, l: l, at: Geometry{CellWidth: 1, CellHeight: 1, Bottom: float64(len(c.Rows))}}
				for i, size := range c.Of {
					widths := map[int]float64{}
					draw.Walk(chart.outline(i), func(op byte, p []float64) {
						if op != 'Z' && p[1] == float64(int(p[1])) {
							y := int(p[1])
							widths[y] = max(widths[y], p[0])
						}
					})
					require.NotEmpty(t, widths)
					rounds := 0
					for y, r := range c.Rows {
						if r.Has(i) {
							rounds++
							require.GreaterOrEqual(t, widths[len(c.Rows)-y-1], float64(r.Spans[i][1]-c.Low+1)-0.001, "%s, size %d", name, size)
						}
					}
					require.Len(t, widths, rounds+1, "%s: the line of size %s", name, names[size])
				}
			}
		}
	}
	require.Positive(t, shared)
}
