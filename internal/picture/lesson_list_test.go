package picture

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// notDrawn says why a lesson draws none of these operations. A new operation is drawn, or
// has its reason here.
var notDrawn = map[stitch.Op]string{
	stitch.NoStitch: "nothing is worked",
	stitch.Marker:   "nothing is worked",
	stitch.Knit:     "every knitter knows it",
	stitch.Purl:     "every knitter knows it",
	stitch.KnitTBL:  "the second step of the make one and of the closed yarn over; by itself the words tell it",
	stitch.PurlTBL:  "k tbl as it is worked on the wrong side; the words tell it",
	stitch.Slip:     "the words tell it",
	stitch.M1:       "the words tell it: it may lean either way",
	stitch.CastOn:   "the bridge is drawn with the thumb and its corners",
	stitch.Take:     "every knitter knows it: kept stitches are knitted",
	stitch.Hold:     "it is drawn with the thumb and its corners",
	stitch.PickUp:   "it is drawn with the thumb and its corners",
	stitch.K2tog:    "the words tell it; both corners draw it",
	stitch.SSK:      "the words tell it; both corners draw it",
	stitch.P2tog:    "the words tell it in a line",
	stitch.SSP:      "the words tell it in a line",
	stitch.K3tog:    "the words tell it in a line",
	stitch.SK2P:     "the words tell it in a line",
	stitch.S2KP:     "the words tell it in a line",
	stitch.BindOff:  "the words tell it, stitch by stitch; of two edges together it is drawn beside the graft",
	stitch.DrawUp:   "the words tell it in a line",
	stitch.JoinHem:  "the words tell it in a line",
}

// Every operation of the table is drawn, or has a reason why not.
func TestEveryOperationIsDrawnOrNeedsNoLesson(t *testing.T) {
	for _, op := range stitch.All() {
		drawn := slices.ContainsFunc(lessons, func(g lessonGroup) bool { return slices.Contains(g.ops, op) })
		assert.Equal(t, notDrawn[op] == "", drawn, "%s is drawn, or notDrawn says why not", op)
		for _, fromLeft := range []bool{false, true} {
			rows := Lesson(LessonOptions{Width: 182, Letter: 4.23, Ops: opSet(op), FromLeft: fromLeft})
			assert.Equal(t, drawn, len(rows) > 0, "%s", op)
		}
	}
}

// A mitt is taught what its rounds hold, and nothing else: each set of operations with the
// titles that they call for, in order.
func TestLessonGoesByTheRounds(t *testing.T) {
	thumb := []stitch.Op{stitch.Hold, stitch.CastOn, stitch.PickUp, stitch.GapK2tog, stitch.GapSSK}
	const ofThumb = "Bridge over the gap|Pick up for the thumb|Close both corners"
	for _, c := range []struct {
		ops      []stitch.Op
		fromLeft bool
		want     string
	}{
		{[]stitch.Op{stitch.LLI, stitch.RLI}, false, "Lifted, leaning left (LLI)|Lifted, leaning right (RLI)|" + ofThumb},
		{[]stitch.Op{stitch.LLI, stitch.RLI}, true, "Lifted, leaning right (RLI)|Lifted, leaning left (LLI)|" + ofThumb},
		{[]stitch.Op{stitch.M1L}, false, "Make one leaning left (M1L)|" + ofThumb},
		{[]stitch.Op{stitch.M1L}, true, "Make one leaning left (M1L)|" + ofThumb},
		{[]stitch.Op{stitch.YarnOver, stitch.KnitTBL}, false, "Yarn over (yo), closed|" + ofThumb},
		{[]stitch.Op{stitch.YarnOver}, false, "Yarn over (yo)|" + ofThumb},
		{[]stitch.Op{stitch.KFB}, false, "Knit front and back (kfb)|" + ofThumb},
		{[]stitch.Op{stitch.Waste, stitch.CornerM1}, false, ofThumb + "|Thumb on waste yarn"},
		{[]stitch.Op{stitch.Graft}, false, ofThumb + "|Graft (the front needle is drawn below)"},
	} {
		s := lessonOf(opSet(append(c.ops, thumb...)...), c.fromLeft, 4.23)
		assert.Equal(t, c.want, strings.Join(titlesOf(s), "|"))
		has := slices.Contains(c.ops, stitch.M1R) || c.fromLeft && slices.Contains(c.ops, stitch.M1L)
		assert.Equal(t, has, strings.Contains(words(s), "as for M1"), "the corners name a make one only if it is drawn")
	}
}

// A mitt that begins at a tip is shown its closed cast-on: out of a ring, or if the stitches
// are many, wound round two needles.
func TestLessonOfATip(t *testing.T) {
	for n, want := range map[int]string{8: "Lay the yarn in a ring", stitch.MostInRing: "Lay the yarn in a ring", stitch.MostInRing + 1: "Wind the yarn round two needles"} {
		s := &draw.Scene{}
		for _, row := range Lesson(LessonOptions{Width: 182, Letter: 4.23, Tips: []int{n}}) {
			s.Add(row, 0, 0, 1)
		}
		assert.Contains(t, words(s), want)
		assert.Equal(t, []string{"Closed cast-on"}, titlesOf(s))
	}
	assert.Empty(t, Lesson(LessonOptions{Width: 182, Letter: 4.23}))
}

// What is worked by no operation of a round is drawn where the mitt has it: the gap that is
// bound off with a third needle instead of grafted, in the person's terms, and the seam.
func TestLessonOfAGapAndASeam(t *testing.T) {
	drawn := func(o LessonOptions) *draw.Scene {
		o.Width, o.Letter = 182, 4.23
		s := &draw.Scene{}
		for _, row := range Lesson(o) {
			s.Add(row, 0, 0, 1)
		}
		return s
	}
	graft := opSet(stitch.Graft)
	assert.Equal(t, []string{"Graft (the front needle is drawn below)"}, titlesOf(drawn(LessonOptions{Ops: graft})), "a tip is only grafted")
	gap := drawn(LessonOptions{Ops: graft, Gap: true, Say: func(text string) string { return strings.ReplaceAll(text, "bind off", "cast off") }})
	assert.Equal(t, []string{"Graft (the front needle is drawn below)", "Or cast off together"}, titlesOf(gap))
	assert.Contains(t, words(gap), "third needle")
	seam := drawn(LessonOptions{Seam: true})
	assert.Equal(t, []string{"Mattress stitch"}, titlesOf(seam))
	assert.Contains(t, words(seam), "under two strands")
	waste := opSet(stitch.Waste, stitch.CornerM1)
	assert.Equal(t, []string{"Thumb on waste yarn", "Cast on for the thumb’s seam", "Mattress stitch"}, titlesOf(drawn(LessonOptions{Ops: waste, Seam: true})))
	assert.Equal(t, []string{"Thumb on waste yarn"}, titlesOf(drawn(LessonOptions{Ops: waste})), "in the round there is no seam")
	yarnOver := opSet(stitch.YarnOver, stitch.KnitTBL)
	assert.Contains(t, words(drawn(LessonOptions{Ops: yarnOver, Seam: true})), "In the next row purl it")
	assert.Contains(t, words(drawn(LessonOptions{Ops: yarnOver})), "In the next round knit it")
}

// Every lesson fits its page in both sizes of print: nothing leaves it, and no word lies on
// another.
func TestEveryLessonFits(t *testing.T) {
	for _, letter := range []float64{4.23, 6.35} {
		for _, fromLeft := range []bool{false, true} {
			s := lessonOf(opSet(stitch.All()...), fromLeft, letter)
			keepApart(t, s)
			for _, row := range Lesson(LessonOptions{Width: 182, Letter: letter, FromLeft: fromLeft, Gap: true, Seam: true}) {
				s.Add(row, 0, s.Height, 1)
				s.Height += row.Height
			}
			keepApart(t, s)
			for _, title := range titlesOf(s) {
				assert.NotContains(t, title, "…", "no title is cut")
			}
		}
	}
}

// Rows are as few as can be, and their widest is the least: against all ways to break up to
// nine widths.
func TestRowsAreFewAndEven(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 1))
	for range 300 {
		widths := make([]float64, 1+r.IntN(9))
		for i := range widths {
			widths[i] = []float64{40, 66, 80, 120}[r.IntN(4)]
		}
		const room = 186
		fewest, least := len(widths)+1, 0.0
		for cuts := range 1 << (len(widths) - 1) {
			rows, sum, most := 1, 0.0, 0.0
			for i, w := range widths {
				if i > 0 && cuts>>(i-1)&1 == 1 {
					rows, sum = rows+1, 0
				}
				sum += w
				most = max(most, sum)
			}
			if most <= room && (rows < fewest || rows == fewest && most < least) {
				fewest, least = rows, most
			}
		}
		ends := evenRows(widths, room)
		require.Len(t, ends, fewest, "%v", widths)
		require.Equal(t, len(widths), ends[len(ends)-1])
		from, most := 0, 0.0
		for _, to := range ends {
			sum := 0.0
			for _, w := range widths[from:to] {
				sum += w
			}
			from, most = to, max(most, sum)
		}
		require.InDelta(t, least, most, 0, "%v", widths)
	}
	assert.Empty(t, evenRows(nil, 186))
	assert.Equal(t, []int{1, 2}, evenRows([]float64{200, 40}, 186), "what is wider than a row has one to itself")
}

// Every drawing stays within its panel, so that it doesn't reach into the words below it.
func TestDrawingsStayInTheirPanels(t *testing.T) {
	o := LessonOptions{Width: 182, Letter: 4.23, Ops: opSet(stitch.All()...), Tips: []int{8, 14}, Gap: true, Held: 15, Bridge: 3, PickedUp: 4}
	groups := append(o.groups(), LessonOptions{Seam: true}.groups()...)
	for _, g := range groups {
		for n, p := range g.panels(o, o.names()) {
			s := &draw.Scene{}
			p.draw(&sketch{s: s, width: p.width}, o)
			for _, i := range s.Items {
				if i.Kind == draw.PathItem {
					for _, at := range flat(i.Path) {
						require.True(t, at.y >= -0.5 && at.y <= p.height+0.1, "%s, panel %d: %.1f", g.name, n+1, at)
					}
				}
			}
		}
	}
}

// A hand that is divided is shown the bridge beside a finger, and how the next one is picked
// up along it, with the counts of the first; the others' bridges are listed.
func TestLessonOfFingers(t *testing.T) {
	p := glove(t, 190, mitt.Make{})
	shares := FingerShares(p.Mitt())
	for _, fromLeft := range []bool{false, true} {
		s := &draw.Scene{}
		for _, row := range Lesson(LessonOptions{Width: 182, Letter: 4.23, Ops: opSet(stitch.GapK2tog), FromLeft: fromLeft, Bridge: 3, PickedUp: 4, Held: 15, Fingers: shares}) {
			s.Add(row, 0, 0, 1)
		}
		assert.Subset(t, titlesOf(s), []string{"Bridge beside a finger", "Pick up along that bridge"})
		said := words(s)
		assert.Contains(t, said, fmt.Sprintf("%d, %d and %d, finger by finger", shares[0].Cast, shares[1].Cast, shares[2].Cast))
		assert.Equal(t, 2, strings.Count(said, fmt.Sprintf("%d wait", shares[0].Wait)))
		way := "from right to left, one in each loop"
		if fromLeft {
			way = "from left to right, one in each loop"
		}
		assert.Contains(t, said, way)
	}
	assert.Empty(t, Lesson(LessonOptions{Width: 182, Letter: 4.23, Fingers: FingerShares(plan(t, mitt.Mitten, 190).Mitt())}))
}

// The round of a left hand goes over the bridge from the palm to the back, as that of a right
// hand knitted from left to right does: the needle that the arrow leaves is drawn above.
func TestLessonOfFingersTurnsForTheLeftHand(t *testing.T) {
	o := LessonOptions{Fingers: FingerShares(glove(t, 190, mitt.Make{}).Mitt())}
	o.Fingers[0].Palm, o.Fingers[0].Back = 3, 5 // told apart by their stitches
	for _, left := range []bool{false, true} {
		for _, fromLeft := range []bool{false, true} {
			o.Left, o.FromLeft = left, fromLeft
			s := &draw.Scene{Width: 66, Height: low}
			drawBeside(&sketch{s: s, width: 66, mirrored: fromLeft, letter: 4}, o)
			at := map[string]float64{}
			stitches := map[float64]int{}
			for _, i := range s.Items {
				switch {
				case i.Kind == draw.TextItem:
					at[i.Text] = i.Y
				case i.Style.Fill == pale:
					stitches[pathTop(i)]++
				}
			}
			require.Len(t, stitches, 2)
			above := at["palm"] < at["back"]
			assert.Equal(t, left != fromLeft, above, "left hand %t, from the left %t", left, fromLeft)
			var rows []float64
			for y := range stitches {
				rows = append(rows, y)
			}
			slices.Sort(rows)
			want := []int{5, 3}
			if above {
				want = []int{3, 5}
			}
			assert.Equal(t, want, []int{stitches[rows[0]], stitches[rows[1]]}, "the stitches stand where they are named")
		}
	}
}

// pathTop returns the least y of a path.
func pathTop(i draw.Item) float64 {
	top := math.Inf(1)
	for _, at := range flat(i.Path) {
		top = min(top, at.y)
	}
	return math.Round(top*100) / 100
}

// Above a thumb on waste yarn the bridges and corners are those of the fingers, and nothing
// is picked up for the thumb; its own drawings tell how it is begun.
func TestLessonOfFingersAboveWasteYarn(t *testing.T) {
	m := glove(t, 190, mitt.Make{Construction: mitt.Straight}).Mitt()
	s := &draw.Scene{}
	for _, row := range Lesson(LessonOptions{Width: 182, Letter: 4.23, Ops: m.Ops(), Fingers: FingerShares(m), Held: 9, PickedUp: 10}) {
		s.Add(row, 0, 0, 1)
	}
	titles := titlesOf(s)
	assert.Subset(t, titles, []string{"A bridge of loops", "Close both corners beside a finger", "Thumb on waste yarn"})
	assert.NotContains(t, titles, "Pick up for the thumb")
	assert.NotContains(t, words(s), "Not needed")
}
