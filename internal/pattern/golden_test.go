package pattern

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/project"
	"thenar/internal/readback"
	"thenar/internal/sheet"
	"thenar/internal/testenv"
)

// design returns the sizes of one sheet for hands of so many inches round.
func design(t *testing.T, more map[string]string, inches ...float64) []Size {
	t.Helper()
	s := sheet.Sheet{
		"unit": "cm", "gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10",
		"gauge.swatches[0].rounds": "32", "gauge.swatches[0].height": "10",
	}
	for path, text := range more {
		s[path] = text
	}
	sizes := make([]Size, len(inches))
	for i, inch := range inches {
		d := project.New("design")
		d.Sheet = s.Clone()
		d.Sheet["hand.hand_circumference"] = fmt.Sprint(math.Round(25.4*inch) / 10)
		out, err := project.NewPlanner().Derive(d, nil)
		require.NoError(t, err)
		sizes[i] = Size{fmt.Sprint(inch), out}
	}
	return sizes
}

// designs are three that a designer may sell: fingerless mitts in six sizes of which the
// larger ones grow faster, mittens in four and gloves in three.
func designs(t *testing.T) map[string][]Size {
	fingerless := design(t, map[string]string{"pins.rhythm": "4"}, 6, 7, 8)
	fingerless = append(fingerless, design(t, map[string]string{"pins.rhythm": "3"}, 9, 10, 11)...)
	return map[string][]Size{
		"fingerless": fingerless,
		"mitten":     design(t, map[string]string{"kind": "mitten"}, 6, 7, 8, 9),
		"glove":      design(t, map[string]string{"kind": "glove"}, 7, 8, 9),
	}
}

// The common designs read as they always did, and each size reads back.
func TestCommonDesigns(t *testing.T) {
	for name, sizes := range designs(t) {
		text, err := Of(sizes, Style{Rhythm: name == "fingerless"})
		require.NoError(t, err)
		all := written(t, text)
		testenv.Golden(t, filepath.Join("testdata", name+".txt"), []byte(all))
		for at, s := range sizes {
			its, err := readback.OfSize(all, text.Sizes, at)
			require.NoError(t, err)
			got, err := knitted(its)
			require.NoError(t, err)
			want, err := knitted(own(t, s.Out))
			require.NoError(t, err)
			require.NoError(t, differs(got, want, s.Out), its)
		}
	}
}

// Each size has a name that lists can be read by, and there are not too many of them.
func TestSizesThatAreRefused(t *testing.T) {
	one := design(t, nil, 8)[0]
	for _, names := range [][]string{{}, {"8", "8"}, {""}, {"8, 9"}, {"s and m"}, {"a: b"}, strings.Split(strings.Repeat("x", Most+1), "")} {
		var sizes []Size
		for _, name := range names {
			sizes = append(sizes, Size{name, one.Out})
		}
		_, err := Of(sizes, Style{})
		require.Error(t, err, "%q", names)
	}
	text, err := Of([]Size{one}, Style{})
	require.NoError(t, err)
	require.NotContains(t, written(t, text), "Size", "one size by itself needs no name")
}
