package paper

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/units"
)

// The ease is what a reader finds who takes the hand's figure from the mitt's: positive
// where the mitt is looser. A cuff of 15 cm on a wrist of 15.4 is 0.4 closer, the thumb of
// 7.5 on 6.3 is 1.2 looser (worked by hand).
func TestEaseIsTheDifferenceOfWhatIsPrinted(t *testing.T) {
	for i, want := range []string{"−1.1 +0.4 −0.4 +1.2", "+0.5 +0.8 −0.2 +1.1", "−¼ +⅛ −⅜ +½"} {
		s := derived(t, project.Samples()[i], nil)
		var ease []string
		for _, r := range newHandout(&s, Usual()).measureRows()[0] {
			ease = append(ease, r.ease)
		}
		assert.Equal(t, want, strings.Join(ease, " "))
	}
}

// The mitt's whole length, which has the cuff in it, stands apart from the hand's.
func TestWholeLengthStandsApartFromTheHands(t *testing.T) {
	s := derived(t, project.Samples()[1], nil)
	for _, r := range newHandout(&s, Usual()).measureRows()[1] {
		assert.False(t, r.name == "hand" && r.mitt != "" || r.name == "whole mitten" && r.hand != "", "%v", r)
	}
	assert.Contains(t, onPages(Handout(s, Usual())), compact("whole mitten"))
}

// Heights say once from where they are measured, and an inch sheet gives inches first, in
// ordinary and in large print.
func TestHeightsAndUnitsOfTheFirstPage(t *testing.T) {
	for _, large := range []bool{false, true} {
		s := derived(t, project.Samples()[2], nil)
		o := Usual()
		o.Large, o.Pieces = large, []Piece{Plan}
		all := onPages(Handout(s, o))
		assert.Equal(t, 1, strings.Count(all, compact("from the cast-on:")))
		assert.Contains(t, all, compact("103 yd / 94 m"))
		assert.Contains(t, all, compact("22 stitches and 30 rounds over 4 in (21.7"))
		assert.NotContains(t, all, compact("3 cm / 1"), "centimetres stand behind inches")
	}
}

// A line goes from what is said of the thumb to the tip of the drawn thumb,
// unless it would lie over bare fingers.
func TestThumbsWordsPointToTheThumb(t *testing.T) {
	for k, doc := range project.Samples()[:2] {
		for _, side := range []project.Side{project.Left, project.Right} {
			doc.Side = side
			sheet := derived(t, doc, nil)
			h := newHandout(&sheet, Usual())
			f := figure{handout: h, wide: h.width(), hand: picture.NewDressed(h.Out.Plan, h.handOptions())}
			require.True(t, f.lay(h.newLadder(), 0.4))
			const x, foot, scale = 70.0, 120.0, 0.4
			var s draw.Scene
			f.drawLeader(&s, x, foot, scale)
			if k == 0 && side == project.Left {
				assert.Empty(t, s.Items, "no line over the fingers")
				continue
			}
			require.Len(t, s.Items, 1)
			var ends []float64
			draw.Walk(s.Items[0].Path, func(_ byte, n []float64) { ends = n })
			right, above := f.hand.Thumb()
			assert.InDeltaSlice(t, []float64{x + right*scale, foot - above*scale}, ends, 0.01, fmt.Sprint(k, side))
			assert.Equal(t, side == project.Left, right < f.hand.Width()/2, "the thumb is on its side")
		}
	}
}

// Every hand has its drawing on the first page of an ordinary handout, a huge one on Letter
// too: there it is drawn smaller.
func TestHugeHandStaysOnTheFirstPage(t *testing.T) {
	for _, cm := range []float64{20, 25, 27} {
		doc := project.Samples()[0]
		doc.Sheet = doc.Sheet.Clone()
		doc.Sheet["hand.hand_circumference"], doc.Sheet["hand.hand_length"] = fmt.Sprint(cm), fmt.Sprint(cm)
		for _, f := range []string{"wrist_circumference", "thumb_circumference", "gusset_length", "thumb_length", "wrist_to_crotch"} {
			delete(doc.Sheet, "hand."+f)
		}
		pages := Handout(derived(t, doc, nil), Options{Paper: Letter, Pieces: []Piece{Plan, Own}})
		assert.Contains(t, onPages(pages[:1]), compact("palm towards you"), units.FromMM(10*cm).With(units.CM))
		pages = Handout(derived(t, doc, nil), Options{Paper: A4, Pieces: []Piece{Plan, Own}})
		assert.Len(t, pages, 1, "on A4 the knitter's own numbers have room too: %v cm", cm)
	}
}
