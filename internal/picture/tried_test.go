package picture

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/stitch"
)

// A tape's end is drawn out away from the mitt, to the little finger's side on
// either hand and to the thumb's own; its stops are on the page, evenly apart,
// and so far that a finger finds each.
func TestTapesArePulledOutward(t *testing.T) {
	p := adult(t)
	pulls := []Pull{{"cuff", stitch.Cuff, 0.4}, {"gusset", stitch.Gusset, 0.45}, {"parting", stitch.Gusset, 1}, {"hand", stitch.Hand, 0.9}, {"thumb", stitch.Thumb, 0.5}}
	for _, left := range []bool{false, true} {
		s := Tried(p, Progress{Part: stitch.Thumb, Round: 10}, pulls, []Seat{{"base", stitch.Gusset, 0}, {"top", stitch.Gusset, 1}}, HandOptions{Left: left})
		out := map[bool]float64{false: -1, true: 1}[left] // the side of the little finger
		var names []string
		heights := map[string]float64{}
		for _, item := range s.Items {
			if item.Kind != draw.GroupItem || item.Style.Class != "pull" {
				continue
			}
			at, name := map[string]float64{}, ""
			for _, a := range item.Attrs {
				if a.Name == "data-name" {
					name = a.Value
					continue
				}
				n, err := strconv.ParseFloat(a.Value, 64)
				require.NoError(t, err)
				at[a.Name] = n
			}
			names = append(names, name)
			heights[name] = at["data-y"]
			way := out
			if name == "thumb" {
				way = -out
			}
			assert.Equal(t, way*pullStep, at["data-step"], name)
			assert.Positive(t, way*(at["data-x"]-at["data-from"]), name)
			last := at["data-x"] + at["data-step"]*(pullStops-1)
			assert.True(t, last > 0 && last < s.Width, "%s ends at %g of %g", name, last, s.Width)
			assert.True(t, at["data-y"] > 0 && at["data-y"] < s.Height, name)
		}
		assert.Equal(t, []string{"cuff", "gusset", "parting", "hand", "thumb"}, names)
		for i := 1; i < 4; i++ {
			assert.Greater(t, heights[names[i-1]]-heights[names[i]], 18.0, "room for a finger between %s and %s", names[i-1], names[i])
		}
	}
}

// Both ends of the gusset lie across the hand, as far apart as its rounds are high, with
// their handles on the page beyond the thumb.
func TestSeatsLieAtTheGussetsEnds(t *testing.T) {
	p := adult(t)
	for _, left := range []bool{false, true} {
		s := Tried(p, Progress{Part: stitch.Gusset, Round: 12}, nil, []Seat{{"base", stitch.Gusset, 0}, {"top", stitch.Gusset, 1}}, HandOptions{Left: left})
		at := map[string][2]float64{}
		for _, item := range s.Items {
			if item.Kind == draw.GroupItem && item.Style.Class == "seat" {
				x, errX := strconv.ParseFloat(item.Attrs[1].Value, 64)
				y, errY := strconv.ParseFloat(item.Attrs[2].Value, 64)
				require.NoError(t, errX)
				require.NoError(t, errY)
				at[item.Attrs[0].Value] = [2]float64{x, y}
				assert.True(t, x > 0 && x < s.Width, "%g of %g", x, s.Width)
			}
		}
		assert.InDelta(t, float64(p.Gusset.Rounds.N)/p.Gauge.Rounds, at["base"][1]-at["top"][1], 0.5)
		assert.Equal(t, left, at["top"][0] < s.Width/2, "on the thumb's side")
	}
}
