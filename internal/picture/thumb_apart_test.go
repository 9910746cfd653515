package picture

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// parted is a mitt of a construction, and its part beside the base of the thumb as it is
// drawn on the hand.
func parted(t *testing.T, how mitt.Construction) (*mitt.Plan, *tube) {
	t.Helper()
	p, err := mitt.New().Plan(&mitt.Request{
		Kind: mitt.Fingerless, Make: mitt.Make{Construction: how}, Hand: hand.Hand{Circumference: 190 * units.Millimetre},
		Gauge: gauge.Gauge{Stitches: 0.24, Rounds: 0.32, Treated: true}, Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
	})
	require.NoError(t, err)
	m := newFabric(p, posed(p))
	for i := range m.tubes {
		if m.tubes[i].over == stitch.OverMound {
			return p, &m.tubes[i]
		}
	}
	t.Fatal("no part beside the thumb")
	return nil, nil
}

// Two fifths up the base of the thumb a gusset stands out at the thumb's side; without one
// the fabric is as wide there as at the other side, and at an opening less.
func TestWithoutAGussetNothingGrows(t *testing.T) {
	for how, sign := range map[mitt.Construction]int{mitt.ByGusset: 1, mitt.Straight: 0, mitt.Slit: -1} {
		_, tube := parted(t, how)
		e := tube.edges[tube.rounds()*2/5]
		more := e.out.x + e.left.x // the other side is at −x
		switch sign {
		case 1:
			assert.Greater(t, more, 3.0, "%s", how)
		case 0:
			assert.InDelta(t, 0, more, 0.1, "%s", how)
		default:
			assert.Less(t, more, -5.0, "%s", how)
		}
		for r := 1; r <= tube.rounds(); r++ { // the side is drawn upwards, without a hook
			assert.GreaterOrEqual(t, tube.edges[r].out.y, tube.edges[r-1].out.y-1e-9, "%s, round %d", how, r)
		}
	}
}

// As a mitt lies flat, a thumb on waste yarn stands on the palm, its foot as level as the
// yarn, and an opening shows the edge on the back.
func TestWhatLiesFlatShowsItsThumb(t *testing.T) {
	p, _ := parted(t, mitt.Straight)
	f := newFigure(&p.Hand)
	f.lying = true
	thumb := newFabric(p, f).thumb()
	foot := thumb.edges[0]
	assert.Equal(t, foot.left.y, foot.out.y)
	main := newFabric(p, f).main()
	side := main[len(main)-1].edges[0].out
	inset := float64(p.Gusset.Inset) / p.Gauge.Stitches * f.flatness(foot.out.y)
	assert.InDelta(t, side.x-inset, foot.out.x, 0.3, "set in from the side")
	assert.Greater(t, thumb.last().out.y, foot.out.y+10)

	svg := func(s *draw.Scene) string {
		var b strings.Builder
		require.NoError(t, draw.WriteSVG(&b, s, false))
		return b.String()
	}
	slit, _ := parted(t, mitt.Slit)
	whole, _ := parted(t, mitt.ByGusset)
	assert.Equal(t, strings.Count(svg(Small(whole, SmallOptions{})), `class="seam"`)+1, strings.Count(svg(Small(slit, SmallOptions{})), `class="seam"`))
}

// The tape from the bone to the thumb measures no gusset where there is none.
func TestTheTapeIsCalledByTheMitt(t *testing.T) {
	for how, name := range map[mitt.Construction]string{mitt.ByGusset: "gusset length", mitt.Straight: "bone to thumb", mitt.Slit: "bone to thumb"} {
		p, _ := parted(t, how)
		said := false
		for _, i := range Hand(p, HandOptions{Named: true}).Items {
			said = said || i.Text == name
		}
		assert.True(t, said, name)
	}
}
