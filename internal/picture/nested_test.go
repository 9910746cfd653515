package picture

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
)

// sizesOf plans a kind for hands of these circumferences in cm.
func sizesOf(t *testing.T, kind string, girths ...float64) []NestedSize {
	t.Helper()
	var list []NestedSize
	for _, g := range girths {
		req, err := sheet.Sheet{"kind": kind, "gauge.swatches[0].stitches": "26", "gauge.swatches[0].width": "10", "hand.hand_circumference": fmt.Sprint(g)}.Request()
		require.NoError(t, err)
		p, err := mitt.New().Plan(req)
		require.NoError(t, err)
		list = append(list, NestedSize{fmt.Sprint(g), p})
	}
	return list
}

// Sizes over each other: one outline a size, every name once, none covering another, on
// both hands and for every kind; and the picture is as wide and high as its largest size
// needs at most.
func TestNestedSizes(t *testing.T) {
	for _, kind := range []string{"fingerless", "mitten", "mitten_without_thumb", "glove"} {
		for _, left := range []bool{false, true} {
			sizes := sizesOf(t, kind, 15, 17, 19, 21, 23)
			s := Nested(sizes, left, 5)
			names, outlines := map[string]int{}, 0
			var places []float64
			for _, i := range s.Items {
				switch {
				case i.Kind == draw.TextItem:
					names[i.Text]++
					places = append(places, i.Y)
				case i.Style.Class == "nested-size" || i.Style.Class == "cloth":
					outlines++
				}
			}
			require.Len(t, names, 5)
			require.GreaterOrEqual(t, outlines, 5)
			for i, y := range places {
				for _, other := range places[:i] {
					require.Greater(t, max(y-other, other-y), 4.0, "%s: names cover each other", kind)
				}
			}
			alone := Nested(sizes[4:], left, 5)
			require.InDelta(t, alone.Height, s.Height, 12, "%s: the largest is as high alone", kind)
			require.Contains(t, s.Label, "sizes 15, 17, 19, 21, 23 over each other")
		}
	}
}
