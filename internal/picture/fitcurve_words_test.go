package picture

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/fit"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/units"
)

// Labels are on the page and cover no other, for hands of 100 to 250 mm, both kinds, coarse
// and fine yarn, every unit, long and short runs of bands.
func TestTheCurveIsReadable(t *testing.T) {
	for _, girth := range testenv.Some(3, []units.Length{100, 125, 150, 175, 200, 225, 250}) {
		h := hand.Hand{Circumference: girth * mm}
		for _, kind := range []mitt.Kind{mitt.Fingerless, mitt.Mitten} {
			for _, g := range []float64{14, 26, 40} {
				p := planned(t, kind, g, 1.36*g, h)
				rows := fitRows(t, p)
				for _, u := range []units.Unit{units.MM, units.CM, units.IN} {
					for _, half := range []float64{0, 0.03, 0.15} {
						for _, each := range []int{1, 4, 20} {
							readable(t, FitCurve(banded(rows, each), p, FitOptions{Unit: u, Half: half, Other: rows, Tolerance: 5}))
						}
					}
				}
			}
		}
	}
}

// Hands with extreme measurements are drawn, too, even the longest thumb within the page.
func TestCurvesOfOddHands(t *testing.T) {
	for name, h := range map[string]hand.Hand{
		"low thumb":     {Circumference: 190 * mm, WristToCrotch: 30 * mm, GussetLength: 70 * mm},
		"high thumb":    {Circumference: 190 * mm, Length: 180 * mm, WristToCrotch: 90 * mm},
		"wide wrist":    {Circumference: 190 * mm, Wrist: 200 * mm},
		"thick thumb":   {Circumference: 190 * mm, Thumb: 110 * mm},
		"long thumb":    {Circumference: 190 * mm, ThumbLength: 140 * mm},
		"narrow hand":   {Circumference: 120 * mm, Length: 220 * mm},
		"short fingers": {Circumference: 240 * mm, Length: 140 * mm},
	} {
		t.Run(name, func(t *testing.T) {
			for _, kind := range []mitt.Kind{mitt.Fingerless, mitt.Mitten} {
				p := planned(t, kind, 24, 32, h)
				s := FitCurve(fitRows(t, p), p, FitOptions{Half: 0.05})
				readable(t, s)
				list := elements(t, s)
				said := map[string]bool{}
				for _, e := range list {
					said[e.chars] = true
				}
				assert.True(t, said["thumb"], "the thumb's panel is named")
				for _, e := range having(list, "class", "fit-fabric") {
					assert.GreaterOrEqual(t, extent(t, e.attr["d"]).top, 0.0)
				}
			}
		})
	}
}

var starts = regexp.MustCompile(`M ([0-9.]+) ([0-9.]+)`)

// The bands differ without colour: a tighter band has at least three lines where the next
// looser one has two.
func TestBandsDifferWithoutColour(t *testing.T) {
	p := adult(t)
	distances := map[string]float64{}
	for _, e := range elements(t, FitCurve(fitRows(t, p), p, FitOptions{})) {
		if class, ok := strings.CutPrefix(e.attr["class"], "fit-hatch "); ok {
			if starts := starts.FindAllStringSubmatch(e.attr["d"], 2); len(starts) == 2 {
				along := func(i int) float64 { return num(t, starts[i][1]) + num(t, starts[i][2]) }
				distances[class] = along(1) - along(0) // x + y is one along a line at 45°
			}
		}
	}
	order := []string{"stretch-too-loose", "stretch-easy", "stretch-snug", "stretch-too-tight"}
	require.Len(t, distances, len(order), "the key shows all four")
	for i, class := range order[1:] {
		assert.Greater(t, distances[order[i]], 1.5*distances[class], class)
	}
	assert.Greater(t, distances["stretch-too-tight"], 2.0*letterSize(&p.Hand)/14, "the densest still has gaps as wide as its lines")
}

// A run of equal bands is named once, unless it is lower than the word.
func TestEveryRunIsNamedOnce(t *testing.T) {
	p := adult(t)
	rows := fitRows(t, p)
	count := func(rows []fit.Row) map[string]int {
		said := map[string]int{}
		for _, e := range elements(t, FitCurve(rows, p, FitOptions{})) {
			said[e.chars]++
		}
		return said
	}
	long := banded(rows, len(rows))
	for i := range long {
		if long[i].Section == stitch.Hand {
			long[i].Band = fit.Snug
		}
	}
	said := count(long)
	assert.Equal(t, 1+2, said["too loose"], "the key, one run below the parting and the thumb")
	assert.Equal(t, 1+1, said["snug"])
	assert.Equal(t, 1, said["easy"], "the key alone")
	assert.Equal(t, 1, count(banded(rows, 1))["too tight"], "no round is as high as a word")
}

func TestARoundInWords(t *testing.T) {
	c := fitCurve{unit: units.CM, o: FitOptions{Half: 0.9 / 19.8, Tolerance: 5}}
	r := fit.Row{Section: stitch.Gusset, Round: 7, Fabric: 198, Body: 201, Stretch: 201.0/198 - 1, Wanted: 200, Band: fit.Snug}
	assert.Equal(t, "gusset round 7: fabric 19.8 cm ± 0.9, hand 20.1 cm, snug, stretched 0.3 cm", c.says(r))
	r.Wanted = 192
	assert.Equal(t, "gusset round 7: fabric 19.8 cm ± 0.9, hand 20.1 cm, snug, stretched 0.3 cm, 0.6 cm wider than wanted", c.says(r))
	c.o.Half = 0
	thumb := fit.Row{Section: stitch.Thumb, Round: 1, Fabric: 75, Body: 65, Stretch: 65.0/75 - 1, Wanted: 81, Band: fit.TooLoose}
	assert.Equal(t, "thumb round 1: fabric 7.5 cm, thumb 6.5 cm, too loose, 1 cm of room, 0.6 cm narrower than wanted", c.says(thumb))
	thumb.Fabric = 65.4
	assert.Contains(t, c.says(thumb), "too loose, just as wide")
}

// An interval is never understated: 1 % of 25.4 mm is 0.254 mm, which is rounded up to the
// next millimetre or eighth of a tape (JCGM 100:2008, 7.2.6).
func TestAnIntervalIsRoundedUp(t *testing.T) {
	for u, want := range map[units.Unit]string{units.MM: "1", units.CM: "0.1", units.IN: "⅛"} {
		c := fitCurve{unit: u, o: FitOptions{Half: 0.01}}
		assert.Equal(t, want, c.half(25.4))
	}
	c := fitCurve{unit: units.MM, o: FitOptions{Half: 0.04}}
	assert.Equal(t, "8", c.half(200), "exactly 8 mm")
}

// The values at the ends of sections are those of their last rounds.
func TestSectionsEndWithTheirGirth(t *testing.T) {
	p := adult(t) // 24 stitches over 10 cm: 44 are 183.3 mm, 56 are 233.3 mm
	said := map[string]bool{}
	s := FitCurve(fitRows(t, p), p, FitOptions{Half: 0.0435})
	for _, e := range elements(t, s) {
		said[e.chars] = true
	}
	for _, want := range []string{"18.3 ± 0.8 cm", "23.3 ± 1.1 cm", "7.5 ± 0.4 cm", "cuff", "gusset", "hand", "thumb", "fabric", "its 95 % interval", "girth, cm"} {
		assert.True(t, said[want], want)
	}
	assert.False(t, said["second thought"], "there is none")
	assert.Contains(t, s.Label, "Fit curve of the right hand")
	assert.Contains(t, s.Label, "Gusset, 19 rounds: fabric 19.2 cm to 23.3 cm, hand ")
	assert.Contains(t, s.Label, "Thumb, 11 rounds: fabric 7.9 cm to 7.5 cm, thumb 6.5 cm; ")
}

// The curve of a left hand is the right hand's, with other words.
func TestTheCurveIsNotMirrored(t *testing.T) {
	p := adult(t)
	rows := fitRows(t, p)
	height, foot := Frame(p, HandOptions{})
	right := FitCurve(rows, p, FitOptions{Height: height, Foot: foot})
	left := FitCurve(rows, p, FitOptions{Left: true, Height: height, Foot: foot})
	assert.Equal(t, right.Items, left.Items)
	assert.Contains(t, left.Label, "left hand")
	assert.Equal(t, right, FitCurve(rows, p, FitOptions{}), "the frame is the hand's")
	assert.Equal(t, height, right.Height)
}

// Girths are split only after a gusset; without one they are one run.
func TestCurveWithoutAThumb(t *testing.T) {
	p := planned(t, mitt.Thumbless, 24, 32, hand.Hand{Circumference: 105 * mm, Length: 90 * mm})
	rows := fitRows(t, p)
	assert.Len(t, profiles(rows), 1)
	parting, _, _ := splitDigits(fitRows(t, adult(t)))
	assert.Len(t, profiles(parting), 2)
	s := FitCurve(rows, p, FitOptions{Half: 0.05})
	readable(t, s)
	assert.NotContains(t, s.Label, "Thumb")
	assert.NotContains(t, s.Label, "Gusset")
}

// Without rounds nothing is drawn, and without a thumb there is no panel for it.
func TestCurvesWithoutRounds(t *testing.T) {
	p := adult(t)
	assert.Empty(t, FitCurve(nil, p, FitOptions{}).Items)
	hand, digits, _ := splitDigits(fitRows(t, p))
	thumb := digits[0]
	require.NotEmpty(t, thumb)
	s := FitCurve(hand, p, FitOptions{Half: 0.05})
	readable(t, s)
	for _, item := range s.Items {
		assert.False(t, item.Kind == draw.TextItem && item.Text == "thumb")
	}
}
