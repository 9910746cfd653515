package picture_test

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/picture"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/units"
)

var ends = []mitt.FingerEnd{mitt.FullFinger, mitt.HalfFinger, mitt.OpenFinger}

// anyGlove plans a glove for a random hand.
func anyGlove(t *testing.T, rng *rand.Rand) *mitt.Plan {
	t.Helper()
	r := &mitt.Request{
		Kind: mitt.Glove, Gauge: gauge.Gauge{Stitches: .16 + .25*rng.Float64(), Rounds: .22 + .3*rng.Float64()},
		Hand:   hand.Hand{Circumference: units.FromMM(150 + 90*rng.Float64())},
		Stitch: mitt.Stitches{Repeat: 2, Rib: 2}, Make: mitt.Make{Level: rng.IntN(2) == 0, ThumbEnd: ends[rng.IntN(3)]},
	}
	if rng.IntN(3) == 0 {
		r.Make.Place = mitt.InPalm
	}
	for i := range r.Make.Fingers {
		r.Make.Fingers[i] = ends[rng.IntN(3)]
		if rng.IntN(4) == 0 {
			r.Pins.Fingers[i].Decreases = mitt.Fix(1 + rng.IntN(2))
		}
	}
	p, err := mitt.New().Plan(r)
	require.NoError(t, err)
	return p
}

func sourceOf(p *mitt.Plan, left bool) chart.Source {
	return chart.Source{Mitt: p.Mitt(), Base: p.Gusset.Base, Mirrored: left, Rules: chart.Rules{Colours: 2, Float: 5}}.Prepare()
}

// Whatever the glove: on both hands, in every view and layout, a chart has a cell for each
// operation, no two at one place, and adds up. A finger's shows all but what waits, and
// says how much that is.
func TestChartsOfRandomGloves(t *testing.T) {
	rng := rand.New(rand.NewPCG(24, 7))
	for range testenv.Cases(20, 1000) {
		p := anyGlove(t, rng)
		for _, left := range []bool{false, true} {
			s := sourceOf(p, left)
			m := p.Mitt()
			if left {
				m = stitch.Mirror(m)
			}
			for _, view := range s.Views() {
				for _, layout := range []chart.Layout{chart.Wedge, chart.Columns} {
					for _, middle := range []string{"", "P1", "H9"} {
						g := s.Grid(chart.Options{View: view, Layout: layout, Middle: middle})
						require.Empty(t, g.Faults(), view.Words())
						for _, row := range g.Rows {
							checkRow(t, g, row, m.Section(row.Section))
						}
					}
				}
			}
		}
	}
}

func checkRow(t *testing.T, g chart.Grid, row chart.Row, s *stitch.Section) {
	t.Helper()
	ops := s.Rounds[row.Round-1].Ops
	require.Len(t, row.Cells, len(ops))
	at, hidden := map[int]bool{}, 0
	for j, c := range row.Cells {
		switch {
		case ops[j] != c.Op:
			t.Fatalf("operation %d of round %d of the %s is %s", j, row.Round, row.Section.Words(), c.Op.Code())
		case !c.Shown() && !g.View.Cut() && c.Op != stitch.Hold:
			t.Fatalf("operation %d of round %d of the %s is not shown", j, row.Round, row.Section.Words())
		case !c.Shown():
			hidden++
		case at[c.X] || c.X >= g.Width:
			t.Fatalf("two cells at %d of %d in round %d of the %s", c.X, g.Width, row.Round, row.Section.Words())
		}
		at[c.X] = c.Shown()
	}
	if g.View.Cut() {
		return
	}
	waits := 0
	for _, w := range row.Waiting(false) {
		waits += w.Count
	}
	require.Equal(t, hidden, waits)
	if s.Part.Over() == stitch.OverDigit {
		require.Equal(t, s.Rounds[row.Round-1].Held(), waits)
		require.Len(t, row.Shown(), len(ops)-waits)
		if g.Layout == chart.Wedge {
			require.Empty(t, row.Gaps())
		}
	}
}

// In its first round a finger has as many stitches of palm and back as the plan gives it,
// and its bridges beside them; both hands have every column on the same side, and so has
// the chart of the hand below it.
func TestSidesOfFingers(t *testing.T) {
	rng := rand.New(rand.NewPCG(24, 8))
	for range testenv.Cases(60, 2000) {
		p := anyGlove(t, rng)
		right, left := sourceOf(p, false), sourceOf(p, true)
		hand := sidesOf(right, chart.TubeView, stitch.Hand)
		require.Equal(t, hand, sidesOf(left, chart.TubeView, stitch.Hand))
		for i, f := range p.Fingers.Each {
			part := mitt.PartOfFinger(handFinger(i))
			view := chart.ViewOf(part)
			of := sidesOf(right, view, part)
			require.Equal(t, of, sidesOf(left, view, part), part.Words())
			count := map[string]int{}
			for column, side := range of {
				count[side]++
				if below, known := hand[column]; known && below != chart.BridgeArea && below != chart.PickedArea && (side == chart.PalmArea || side == chart.BackArea) {
					require.Equal(t, below, side, "%s of the %s", column, part.Words())
				}
			}
			require.Equal(t, f.Palm, count[chart.PalmArea], part.Words())
			require.Equal(t, f.Back, count[chart.BackArea], part.Words())
			require.Equal(t, f.FirstRound-f.Palm-f.Back, count[chart.BridgeArea]+count[chart.PickedArea], part.Words())
		}
		if p.Fingers.Lower > 0 {
			of := sidesOf(right, chart.UpperHandView, stitch.UpperHand)
			require.Equal(t, of, sidesOf(left, chart.UpperHandView, stitch.UpperHand))
			ring := sidesOf(right, chart.RingView, stitch.Ring)
			for column, side := range of {
				if ring[column] == chart.PalmArea || ring[column] == chart.BackArea {
					require.Equal(t, ring[column], side, column)
				}
			}
		}
	}
}

// sidesOf returns on which side a chart says that the columns lie with which a section
// begins.
func sidesOf(s chart.Source, view chart.View, part stitch.Part) map[string]string {
	g := s.Grid(chart.Options{View: view, Layout: chart.Wedge})
	of := map[string]string{}
	for i, row := range g.Rows {
		if row.Section != part || row.Round > 2 {
			continue
		}
		j := 0
		for _, a := range g.Page().Rows[i].Areas {
			for range a.Count {
				if _, known := of[row.Cells[j].Column]; !known {
					of[row.Cells[j].Column] = a.Words
				}
				j++
			}
		}
	}
	return of
}

func handFinger(i int) hand.Finger { return hand.Finger(i) }

// What is seen of a finger from its palm is its part of the palm and half of each bridge:
// never more than half a stitch from half of the round.
func TestPalmOfFingers(t *testing.T) {
	rng := rand.New(rand.NewPCG(24, 9))
	for range testenv.Cases(60, 2000) {
		p := anyGlove(t, rng)
		palm, other := sourceOf(p, false).Palm(), sourceOf(p, true).Palm()
		assert.Equal(t, palm, other)
		for i, f := range p.Fingers.Each {
			part := mitt.PartOfFinger(handFinger(i))
			first := palm[part][0].Hand
			assert.InDelta(t, float64(f.FirstRound)/2, float64(len(first)), 1.5, part.Words())
			for r, round := range palm[part] {
				assert.NotEmpty(t, round.Hand, "round %d of the %s", r+1, part.Words())
			}
		}
	}
}

// The chart of a finger says how many stitches wait beside its first round, and is drawn as
// high as it is measured.
func TestChartSaysWhatWaits(t *testing.T) {
	p := anyGlove(t, rand.New(rand.NewPCG(24, 10)))
	look := picture.Look{Cell: 5, Gauge: p.Gauge}
	for _, left := range []bool{false, true} {
		g := sourceOf(p, left).Grid(chart.Options{View: chart.LittleView})
		s, _ := picture.Chart(g, look)
		width, height := picture.ChartSize(g, look)
		assert.InDelta(t, s.Width, width, 10)
		assert.InDelta(t, s.Height, height, 1e-9)
		waits := p.Bridge.HandAfter - p.Fingers.Each[hand.Little].Palm - p.Fingers.Each[hand.Little].Back
		var svg bytes.Buffer
		require.NoError(t, draw.WriteSVG(&svg, s, true))
		assert.Contains(t, svg.String(), fmt.Sprintf("%d stitches wait here", waits))
	}
}

// A cap's chart has what is picked up on the back and what is cast on on the palm, and so
// has its top, on both hands.
func TestSidesOfACap(t *testing.T) {
	half := mitt.HalfFinger
	p, err := mitt.New().Plan(&mitt.Request{
		Kind: mitt.Glove, Gauge: gauge.Gauge{Stitches: .24, Rounds: .32}, Hand: hand.Hand{Circumference: units.FromMM(190)},
		Stitch: mitt.Stitches{Repeat: 2, Rib: 2}, Make: mitt.Make{Cap: true, Fingers: [4]mitt.FingerEnd{half, half, half, half}},
	})
	require.NoError(t, err)
	for _, left := range []bool{false, true} {
		s := sourceOf(p, left)
		of := sidesOf(s, chart.CapView, stitch.Cap)
		count := map[string]int{}
		for _, side := range of {
			count[side]++
		}
		assert.Equal(t, map[string]int{chart.BackArea: p.Fingers.Cap.Back, chart.PalmArea: p.Fingers.Cap.Palm}, count)
		top := sidesOf(s, chart.CapTopView, stitch.CapTop)
		assert.NotEmpty(t, top)
		for column, side := range top {
			assert.Equal(t, of[column], side, column)
		}
	}
}
