package picture

import (
	"fmt"
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/units"
)

var allTapes = []string{
	hand.FieldCircumference, hand.FieldWrist, hand.FieldThumb, hand.FieldLength,
	hand.FieldGussetLength, hand.FieldThumbLength, hand.FieldWristToCrotch, hand.FieldPalm,
}

// From the women's mean girth and length of Greiner 1991 (NATICK/TR-92/011) the figure gets
// the mean breadths and heights of finger tips, in mm.
func TestTheFigureHasTheProportionsOfHands(t *testing.T) {
	h, _ := hand.Hand{Circumference: 186_500, Wrist: 151_400, Thumb: 63_000, Length: 180_700, WristToCrotch: 62_800}.Fill()
	f := newFigure(&h)
	within := func(want, got, share float64, what string) { assert.InDelta(t, want, got, share*want, what) }
	within(79.5, 2*f.palm, 0.03, "hand breadth")
	within(57.0, 2*f.wrist, 0.01, "wrist breadth")
	within(24.0*63.0/72.3, 2*f.thumb, 0.01, "thumb breadth, by the men's ratio")
	f.leans = leans{} // upright, as they were measured
	fingers := f.fingers()
	for i, want := range []float64{145.5, 168.9, 178.4, 169.9} { // little, ring, middle, index tip to wrist crease
		within(want, fingers[i].tip[2].y, 0.015, fmt.Sprint("finger ", i))
	}
	within(87.9, fingers[0].web.y, 0.01, "crotch of ring and little finger")
	within(100.5, fingers[2].web.y, 0.01, "crotch of index and middle finger")
	assert.InDelta(t, 62.8, f.crotch.y, 1e-9)
}

// A tape is as long as what it measures, and a round is as wide as its
// stitches are at the gauge.
func TestTheHandIsToScale(t *testing.T) {
	p := adult(t)
	list := elements(t, Hand(p, HandOptions{Unit: units.CM}))
	long := extent(t, inside(list, hand.FieldLength)[0].attr["d"])
	assert.InDelta(t, 180, long.bottom-long.top, 0.01)
	cuff := having(having(list, "data-section", "cuff"), "data-from", "5")
	require.Len(t, cuff, 1)
	points := numbers.FindAllString(cuff[0].attr["d"], -1)
	width := num(t, points[2]) - num(t, points[0])
	assert.InDelta(t, float64(p.Cuff.CastOn.N)/p.Gauge.Stitches/2*(57.0/75.7), width, 0.01, "wrist: 57.0 mm broad, 151.4 round (Greiner 1991)")
}

// inside returns the paths of one tape.
func inside(list []element, field string) []element {
	var out []element
	within := false
	for _, e := range list {
		if e.name == "g" {
			within = e.attr["data-field"] == field
		} else if within && e.name == "path" {
			out = append(out, e)
		}
	}
	return out
}

// The gusset ends where the thumb parts, every section is as tall as its
// rounds, and every round has one band.
func TestSectionsStandAtTheirHeights(t *testing.T) {
	for _, p := range []*mitt.Plan{adult(t), child(t)} {
		for _, left := range []bool{false, true} {
			list := elements(t, Hand(p, HandOptions{Left: left, Unit: units.CM}))
			wristCrease := extent(t, inside(list, hand.FieldLength)[0].attr["d"]).bottom
			foot := math.NaN()
			for _, s := range p.Mitt().Sections {
				group := having(having(list, "class", "section"), "data-section", string(s.Part))
				require.Len(t, group, 1)
				top, bottom := num(t, group[0].attr["data-top"]), num(t, group[0].attr["data-bottom"])
				assert.Equal(t, strconv.Itoa(len(s.Rounds)), group[0].attr["data-rounds"])
				bands := having(having(list, "class", "band"), "data-section", string(s.Part))
				require.Len(t, bands, len(s.Rounds))
				for i, b := range bands {
					assert.Equal(t, strconv.Itoa(i+1), b.attr["data-from"])
					assert.Equal(t, "0", b.attr["fill-opacity"])
				}
				if s.Part == stitch.Thumb {
					continue
				}
				assert.InDelta(t, float64(len(s.Rounds))/p.Gauge.Rounds, bottom-top, 0.01, string(s.Part))
				if !math.IsNaN(foot) {
					assert.InDelta(t, foot, bottom, 0.01, "sections stand on each other")
				}
				foot = top
				if s.Part == stitch.Gusset {
					assert.InDelta(t, p.Hand.WristToCrotch.MM(), wristCrease-top, 0.01)
				}
			}
		}
	}
}

// A right hand whose palm is towards the viewer has its thumb at the right.
func TestTheThumbIsOnTheRightSide(t *testing.T) {
	for _, left := range []bool{false, true} {
		list := elements(t, Hand(adult(t), HandOptions{Left: left, Unit: units.CM}))
		thumb := extent(t, inside(list, hand.FieldThumb)[0].attr["d"])
		wrist := extent(t, inside(list, hand.FieldWrist)[0].attr["d"])
		assert.Equal(t, left, thumb.left < wrist.left)
		spine := having(list, "class", "spine")
		require.Len(t, spine, 1)
		assert.Less(t, extent(t, spine[0].attr["d"]).right, min(thumb.left, wrist.left), "the spine stays at the left")
		assert.Contains(t, list[0].attr["aria-label"], map[bool]string{false: "Right hand", true: "Left hand"}[left])
	}
}

func TestEveryMeasurementHasItsTape(t *testing.T) {
	p := adult(t)
	for _, s := range []*draw.Scene{Hand(p, HandOptions{Unit: units.CM}), Bare(p.Hand, p.Filled, HandOptions{Unit: units.CM})} {
		list := elements(t, s)
		for _, field := range allTapes {
			assert.Len(t, having(list, "data-field", field), 1, field)
			assert.Len(t, inside(list, field), 1, field)
		}
	}
	list := elements(t, Hand(p, HandOptions{Unit: units.IN}))
	assert.Len(t, having(list, "class", "tape filled"), len(p.Filled))
	values := map[string]bool{}
	for _, e := range list {
		values[e.chars] = true
	}
	assert.True(t, values["7½ in"], "190 mm")
	assert.True(t, values["≈ "+p.Hand.Wrist.With(units.IN)], "the wrist was not measured")
}

// Texts are on the page and cover no other, for hands of 100 to 250 mm, both sides, both
// kinds, coarse and fine yarn, long and short mitts.
func TestLabelsAreReadable(t *testing.T) {
	for _, girth := range testenv.Some(3, []units.Length{100, 125, 150, 175, 200, 225, 250}) {
		for _, long := range []float64{0.85, 0.94, 1.05} { // of the girth (ANSUR II: 0.84 to 1.05)
			h := hand.Hand{Circumference: girth * mm, Length: units.FromMM(float64(girth) * long)}
			for _, kind := range []mitt.Kind{mitt.Fingerless, mitt.Mitten} {
				for _, g := range []float64{18, 26, 34} {
					p := planned(t, kind, g, 1.36*g, h)
					for _, left := range []bool{false, true} {
						for _, u := range []units.Unit{units.MM, units.CM, units.IN} {
							readable(t, Hand(p, HandOptions{Left: left, Unit: u}))
							readable(t, Bare(p.Hand, p.Filled, HandOptions{Left: left, Unit: u}))
						}
					}
				}
			}
		}
	}
}

// In a mitten without a thumb the thumb is tucked in: three tapes, no gusset, no thumb, and
// both sides alike.
func TestAThumbTuckedIn(t *testing.T) {
	for girth := units.Length(80); girth <= 220; girth += 35 {
		h := hand.Hand{Circumference: girth * mm, Length: units.FromMM(0.9 * float64(girth))}
		for _, g := range []float64{18, 26, 34} {
			p := planned(t, mitt.Thumbless, g, 1.36*g, h)
			for _, left := range []bool{false, true} {
				s := Hand(p, HandOptions{Left: left, Unit: units.CM})
				readable(t, s)
				list := elements(t, s)
				for _, field := range allTapes {
					has := field == hand.FieldCircumference || field == hand.FieldWrist || field == hand.FieldLength
					assert.Equal(t, has, len(having(list, "data-field", field)) == 1, field)
				}
				assert.Empty(t, having(list, "data-section", string(stitch.Gusset)))
				assert.Empty(t, having(list, "data-section", string(stitch.Thumb)))
				assert.NotEmpty(t, having(list, "data-section", string(stitch.Top)))
				cloth := having(list, "class", "cloth")
				require.Len(t, cloth, 1)
				at, wrist := extent(t, cloth[0].attr["d"]), extent(t, inside(list, hand.FieldWrist)[0].attr["d"])
				assert.InDelta(t, wrist.left+wrist.right, at.left+at.right, 0.02, "no tube of a thumb at either side")
				readable(t, Small(p, SmallOptions{Left: left}))
			}
		}
	}
}

// An example names its tapes and gives no values.
func TestAnExampleShowsWhereTheTapesGo(t *testing.T) {
	for _, left := range []bool{false, true} {
		s := Bare(Example(), nil, HandOptions{Left: left, Example: true})
		readable(t, s)
		list := elements(t, s)
		assert.Len(t, having(list, "class", "tape filled"), len(allTapes))
		said := map[string]bool{}
		for _, e := range list {
			said[e.chars] = true
			assert.NotContains(t, e.chars, "≈")
		}
		for _, name := range []string{"hand", "wrist", "thumb", "hand length", "gusset length", "thumb length", "to thumb", "with thumb"} {
			assert.True(t, said[name], name)
		}
	}
}

// Hands with extreme measurements are drawn, too.
func TestOddHandsAreDrawn(t *testing.T) {
	for name, h := range map[string]hand.Hand{
		"low thumb":     {Circumference: 190 * mm, WristToCrotch: 30 * mm, GussetLength: 70 * mm},
		"high thumb":    {Circumference: 190 * mm, Length: 180 * mm, WristToCrotch: 90 * mm},
		"wide wrist":    {Circumference: 190 * mm, Wrist: 200 * mm},
		"thick thumb":   {Circumference: 190 * mm, Thumb: 110 * mm},
		"long thumb":    {Circumference: 190 * mm, ThumbLength: 120 * mm},
		"narrow hand":   {Circumference: 120 * mm, Length: 220 * mm},
		"short fingers": {Circumference: 240 * mm, Length: 140 * mm},
	} {
		t.Run(name, func(t *testing.T) {
			filled, _ := h.Fill()
			for _, left := range []bool{false, true} {
				readable(t, Bare(filled, nil, HandOptions{Left: left}))
				readable(t, Hand(planned(t, mitt.Fingerless, 24, 32, h), HandOptions{Left: left}))
			}
		})
	}
}

func TestDrawingIsRepeatable(t *testing.T) {
	for _, p := range []*mitt.Plan{adult(t), child(t)} {
		assert.Equal(t, Hand(p, HandOptions{Left: true, Unit: units.CM}), Hand(p, HandOptions{Left: true, Unit: units.CM}))
		assert.Equal(t, Small(p, SmallOptions{Left: true}), Small(p, SmallOptions{Left: true}))
	}
}

// Small pictures share one scale, life size in mm: the frame is as large as the mitt.
func TestSmallPicturesCanBeCompared(t *testing.T) {
	heights := map[string]float64{}
	for name, p := range map[string]*mitt.Plan{"adult": adult(t), "child": child(t)} {
		for _, left := range []bool{false, true} {
			s := Small(p, SmallOptions{Left: left})
			a := extent(t, having(elements(t, s), "class", "cloth")[0].attr["d"])
			assert.InDelta(t, a.right-a.left+2*smallMargin, s.Width, 0.1)
			assert.InDelta(t, a.bottom-a.top+2*smallMargin, s.Height, 0.1)
			heights[name] = a.bottom - a.top
		}
	}
	p := adult(t)
	want := float64(p.Cuff.Rounds+p.Cuff.PlainRounds+p.Gusset.Rounds.N+p.Body.RoundsAbove) / p.Gauge.Rounds
	assert.InDelta(t, want, heights["adult"], 10, "cast-on to edge, and the sag of the opening")
}

// On the needles, the cloth reaches as high as the rounds that are knitted, and the
// picture keeps its foot, where the cast-on is.
func TestSmallShowsWhatIsKnitted(t *testing.T) {
	for _, p := range []*mitt.Plan{adult(t), planned(t, mitt.Mitten, 24, 32, hand.Hand{Circumference: 190 * mm})} {
		before := 0.0
		all := 0
		for _, s := range p.Mitt().Sections {
			if s.Part != stitch.Thumb {
				all += len(s.Rounds)
			}
		}
		for knitted := 0; knitted <= all; knitted += 4 {
			s := Small(p, SmallOptions{Needles: true, Knitted: knitted, Yarn: "#B9562F"})
			readable(t, s)
			list := elements(t, s)
			require.Len(t, having(list, "class", "to-come"), 1, "the rest is dashed")
			a := extent(t, having(list, "class", "dyed")[0].attr["d"])
			assert.InDelta(t, s.Height-smallMargin, a.bottom, 6, "its foot is at the lower edge")
			assert.InDelta(t, float64(knitted)/p.Gauge.Rounds, a.bottom-a.top, 12, "%d rounds", knitted)
			assert.GreaterOrEqual(t, a.bottom-a.top, before-0.01, "%d rounds", knitted)
			before = a.bottom - a.top
		}
	}
}

// The least sums of squares were worked out by hand: of two labels of height 2 at 0 and 1,
// each moves by half.
func TestSpreadMovesLabelsAsLittleAsItCan(t *testing.T) {
	assert.Equal(t, []float64{0, 5}, spread([]float64{0, 5}, []float64{2, 2}))
	assert.Equal(t, []float64{-0.5, 1.5}, spread([]float64{0, 1}, []float64{2, 2}))
	assert.Equal(t, []float64{-2, 0, 2, 9}, spread([]float64{0, 0, 0, 9}, []float64{2, 2, 2, 2}))
	got := spread([]float64{0, 1, 1.5}, []float64{1, 3, 1})
	assert.InDelta(t, 2, got[1]-got[0], 1e-9)
	assert.InDelta(t, 2, got[2]-got[1], 1e-9)
	assert.InDelta(t, 2.5/3, (got[0]+got[1]+got[2])/3, 1e-9, "a block keeps its mean")
}

// A hand to lay one's own on is as large as the hand of the example is: 178 mm round, which
// is drawn as broad as such a hand is (ANSUR II: 2.40 × the breadth), and 171 mm from the
// wrist to the tip, above a piece of forearm.
func TestLifeSize(t *testing.T) {
	s := LifeSize()
	list := elements(t, s)
	tape := extent(t, having(list, "class", "tape-ribbon")[0].attr["d"])
	assert.InDelta(t, 178/2.40, tape.right-tape.left, 1.5)
	assert.InDelta(t, 1.1*171, s.Height, 6)
}
