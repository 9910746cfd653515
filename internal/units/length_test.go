package units_test

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/units"
)

// 1 in = 25.4 mm exactly: international yard and pound agreement, 1959.
func TestParse(t *testing.T) {
	cases := []struct {
		text string
		unit units.Unit
		want units.Length
	}{
		{"1", units.IN, 25_400},
		{"7 1/2", units.IN, 190_500},
		{"7½", units.IN, 190_500},
		{"7 ½", units.IN, 190_500},
		{"7.5", units.IN, 190_500},
		{"7,5", units.IN, 190_500},
		{"1/2", units.IN, 12_700},
		{"½", units.IN, 12_700},
		{"3/8", units.IN, 9_525},
		{"⅓", units.MM, 333},
		{"⅔", units.MM, 667},
		{"2⅝", units.IN, 66_675},
		{".5", units.CM, 5_000},
		{"5.", units.CM, 50_000},
		{" 19 ", units.CM, 190_000},
		{"0.0005", units.MM, 1}, // half a micrometre, away from zero
		{"200", units.CM, units.MaxLength},
		{"2000", units.MM, units.MaxLength},
	}
	for _, c := range cases {
		got, err := units.Parse(c.text, c.unit)
		require.NoError(t, err, c.text)
		assert.Equal(t, c.want, got, c.text)
	}
}

func TestParseRefuses(t *testing.T) {
	cases := map[string]error{
		"": units.ErrEmpty, "  ": units.ErrEmpty,
		"abc": units.ErrNumber, "1e3": units.ErrNumber, "-3": units.ErrNumber, "+3": units.ErrNumber,
		"NaN": units.ErrNumber, "Inf": units.ErrNumber, "0x13": units.ErrNumber, "1_9": units.ErrNumber,
		"19 cm": units.ErrNumber, "1.2.3": units.ErrNumber, "1,234.5": units.ErrNumber, ".": units.ErrNumber,
		"1/2/3": units.ErrNumber, "7 1/": units.ErrNumber, "½7": units.ErrNumber, "7.5 1/2": units.ErrNumber,
		"٣": units.ErrNumber, "7 1/0": units.ErrFraction,
		"0": units.ErrZero, "0.0": units.ErrZero, "0.00001": units.ErrZero,
		"201": units.ErrTooLong, "99999999999999999999999999": units.ErrTooLong,
		fmt.Sprintf("%060d", 1): units.ErrNumber,
	}
	for text, want := range cases {
		_, err := units.Parse(text, units.CM)
		assert.ErrorIs(t, err, want, "%q", text)
	}
}

func TestFormat(t *testing.T) {
	assert.Equal(t, "19", (190 * units.Millimetre).Format(units.CM))
	assert.Equal(t, "15.7", (157 * units.Millimetre).Format(units.CM))
	assert.Equal(t, "157", (157 * units.Millimetre).Format(units.MM))
	assert.Equal(t, "7½", units.Length(190_500).Format(units.IN))
	assert.Equal(t, "⅜", units.Length(9_525).Format(units.IN))
	assert.Equal(t, "0", units.Length(10).Format(units.IN))
	assert.Equal(t, "−1⅛", (-units.Length(28_575)).Format(units.IN))
	assert.Equal(t, "7½ in", units.Length(190_500).With(units.IN))
	assert.Equal(t, "2.5 mm", units.Length(2_500).String())
	assert.Equal(t, "15.73", units.Length(157_300).Exact(units.CM))
}

func TestFromMM(t *testing.T) {
	assert.Equal(t, units.Length(1500), units.FromMM(1.5))
	assert.Equal(t, units.Length(-2), units.FromMM(-0.0015)) // half away from zero
	assert.Equal(t, units.Length(0), units.FromMM(math.NaN()))
	assert.Equal(t, units.Length(math.MaxInt64), units.FromMM(math.Inf(1)))
	assert.Equal(t, units.Length(math.MinInt64), units.FromMM(math.Inf(-1)))
}

// Whatever Parse accepts lies in range, and Parse reads its exact millimetres
// back as the same length.
func FuzzParse(f *testing.F) {
	for _, s := range []string{"19", "7 1/2", "7½", "1e9", "0", "-1", "1/3", "٣"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for _, u := range []units.Unit{units.MM, units.CM, units.IN} {
			l, err := units.Parse(s, u)
			if err != nil {
				continue
			}
			if l <= 0 || l > units.MaxLength {
				t.Fatalf("%q in %s gives %d", s, u, l)
			}
			back, err := units.Parse(l.Exact(units.MM), units.MM)
			if err != nil || back != l {
				t.Fatalf("%q: %d printed as %s comes back as %d, %v", s, l, l.Exact(units.MM), back, err)
			}
		}
	})
}

// Worked by hand.
func TestRoundUp(t *testing.T) {
	for _, c := range []struct {
		l    units.Length
		u    units.Unit
		want string
	}{{1, units.MM, "1 mm"}, {5_000, units.CM, "0.5 cm"}, {5_001, units.CM, "0.6 cm"}, {3_176, units.IN, "¼ in"}, {3_175, units.IN, "⅛ in"}, {0, units.CM, "0 cm"}} {
		if got := c.l.RoundUp(c.u).With(c.u); got != c.want {
			t.Errorf("%d rounded up in %s is %s, want %s", c.l, c.u, got, c.want)
		}
	}
}
