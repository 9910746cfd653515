package hand_test

import (
	"encoding/csv"
	"os"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"thenar/internal/hand"
	"thenar/internal/units"
)

// surveyed has the measurements of one sex in mm, person by person, from the
// individual data of ANSUR II (Gordon et al. 2014, NATICK/TR-15/007).
type surveyed struct{ breadth, girth, length, wrist []float64 }

// column returns one measurement of all persons.
type column func(*surveyed) []float64

func breadth(s *surveyed) []float64 { return s.breadth }
func girth(s *surveyed) []float64   { return s.girth }
func length(s *surveyed) []float64  { return s.length }
func wrist(s *surveyed) []float64   { return s.wrist }

func survey(t *testing.T) map[hand.Reference]*surveyed {
	f, err := os.Open("../../testdata/ansur2-hand.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	women, men := &surveyed{}, &surveyed{}
	by := map[string]*surveyed{"female": women, "male": men}
	for _, row := range rows[1:] {
		s := by[row[0]]
		s.breadth = append(s.breadth, number(t, row[1]))
		s.girth = append(s.girth, number(t, row[2]))
		s.length = append(s.length, number(t, row[3]))
		s.wrist = append(s.wrist, number(t, row[5]))
	}
	return map[hand.Reference]*surveyed{hand.Women: women, hand.Men: men}
}

func number(t *testing.T, s string) float64 {
	n, err := strconv.ParseFloat(s, 64)
	require.NoError(t, err)
	return n
}

// The survey's own counts and means: 1,986 women 186.55 mm round the hand,
// 4,082 men 212.28 mm.
func TestSurvey(t *testing.T) {
	by := survey(t)
	assert.Len(t, by[hand.Women].girth, 1986)
	assert.Len(t, by[hand.Men].girth, 4082)
	assert.InDelta(t, 186.55, stat.Mean(by[hand.Women].girth, nil), 0.005)
	assert.InDelta(t, 212.28, stat.Mean(by[hand.Men].girth, nil), 0.005)
}

// The estimates from one measurement in mm, all of adult hands. The wrist is that
// of a hand whose length can't be a small child's.
var (
	girthOf = func(who hand.Reference, breadth float64) float64 {
		h, _ := hand.Hand{Reference: who, Breadth: units.FromMM(breadth)}.Fill()
		return h.Circumference.MM()
	}
	lengthOf = func(who hand.Reference, girth float64) float64 {
		h, _ := hand.Hand{Reference: who, Circumference: units.FromMM(girth)}.Fill()
		return h.Length.MM()
	}
	wristOf = func(who hand.Reference, girth float64) float64 {
		h, _ := hand.Hand{Reference: who, Circumference: units.FromMM(girth), Length: 180 * mm}.Fill()
		return h.Wrist.MM()
	}
	girthOfLength = func(who hand.Reference, length float64) float64 {
		h, _ := hand.Hand{Reference: who, Length: units.FromMM(length)}.Fill()
		return h.Circumference.MM()
	}
)

// The plain ratios are the mean of the two sexes' mean ratios, person by person,
// to within 0.003 (2.397 is used as 2.40, 0.941 as 0.94).
func TestRatiosAgainstSurvey(t *testing.T) {
	by := survey(t)
	ratio := func(over, under column) float64 {
		var mean float64
		for _, s := range by {
			var sum float64
			for i, x := range under(s) {
				sum += over(s)[i] / x
			}
			mean += sum / float64(len(under(s))) / 2
		}
		return mean
	}
	assert.InDelta(t, ratio(girth, breadth), girthOf(hand.Both, 80)/80, 0.0035)
	assert.InDelta(t, ratio(length, girth), lengthOf(hand.Both, 200)/200, 0.0015)
	assert.InDelta(t, ratio(wrist, girth), wristOf(hand.Both, 200)/200, 0.0005)
}

// The lines of women and men are least squares on the survey, by a
// general-purpose library (gonum stat.LinearRegression). Slopes agree to half
// their last digit, 0.0005, offsets to 0.05 mm. Each line is taken from two
// points that are rounded to micrometres.
func TestLinesAgainstSurvey(t *testing.T) {
	for who, s := range survey(t) {
		for name, c := range map[string]struct {
			fill   func(hand.Reference, float64) float64
			xs, ys []float64
		}{
			"girth by breadth": {girthOf, s.breadth, s.girth},
			"length by girth":  {lengthOf, s.girth, s.length},
			"wrist by girth":   {wristOf, s.girth, s.wrist},
			"girth by length":  {girthOfLength, s.length, s.girth},
		} {
			offset, slope := stat.LinearRegression(c.xs, c.ys, nil, false)
			low, high := c.fill(who, 160), c.fill(who, 260)
			got := (high - low) / 100
			assert.InDelta(t, slope, got, 0.00055, "%s, slope, %s", name, who)
			assert.InDelta(t, offset, low-160*got, 0.055, "%s, offset, %s", name, who)
		}
	}
}

// The errors of filling the 6,068 hands of the survey, as mean and sample
// standard deviation of filled minus measured in mm, each to 0.06 mm. The lines
// are unbiased for the hands to which they were fitted, and their spread is the
// standard error of estimate; the ratios of Both are biased for each sex. The
// girth from the length is the least accurate.
func TestErrorsOfFilling(t *testing.T) {
	by := survey(t)
	for _, c := range []struct {
		name         string
		who, of      hand.Reference // whose averages fill whose hands
		fill         func(hand.Reference, float64) float64
		xs, ys       column
		mean, spread float64
	}{
		{"girth by breadth", hand.Women, hand.Women, girthOf, breadth, girth, 0, 4},
		{"girth by breadth", hand.Both, hand.Women, girthOf, breadth, girth, 1.0, 4.2},
		{"girth by breadth", hand.Men, hand.Men, girthOf, breadth, girth, 0.1, 4},
		{"girth by breadth", hand.Both, hand.Men, girthOf, breadth, girth, -0.5, 4.1},
		{"length by girth", hand.Women, hand.Women, lengthOf, girth, length, 0, 8.3},
		{"length by girth", hand.Both, hand.Women, lengthOf, girth, length, -5.7, 8.7},
		{"length by girth", hand.Men, hand.Men, lengthOf, girth, length, 0, 8},
		{"length by girth", hand.Both, hand.Men, lengthOf, girth, length, 6.3, 8.9},
		{"wrist by girth", hand.Women, hand.Women, wristOf, girth, wrist, 0.1, 5.3},
		{"wrist by girth", hand.Both, hand.Women, wristOf, girth, wrist, 0, 5.5},
		{"wrist by girth", hand.Men, hand.Men, wristOf, girth, wrist, 0, 5.7},
		{"wrist by girth", hand.Both, hand.Men, wristOf, girth, wrist, 0.3, 5.9},
		{"girth by length", hand.Women, hand.Women, girthOfLength, length, girth, 0, 7.3},
		{"girth by length", hand.Both, hand.Women, girthOfLength, length, girth, 6.1, 9.3},
		{"girth by length", hand.Men, hand.Men, girthOfLength, length, girth, 0, 8.3},
		{"girth by length", hand.Both, hand.Men, girthOfLength, length, girth, -6.7, 9.4},
	} {
		s := by[c.of]
		var off []float64
		for i, x := range c.xs(s) {
			off = append(off, c.fill(c.who, x)-c.ys(s)[i])
		}
		mean, spread := stat.MeanStdDev(off, nil)
		assert.InDelta(t, c.mean, mean, 0.06, "%s, %q on %s", c.name, c.who, c.of)
		assert.InDelta(t, c.spread, spread, 0.06, "%s, %q on %s", c.name, c.who, c.of)
	}
}
